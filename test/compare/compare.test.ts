import { describe, expect, test } from 'vitest';
import { compareCameras, piecesToCut } from '../../src/compare/compare.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { partsJson } from '../../src/files/parts-json.js';
import { readBuilt } from '../../src/forms/read-built.js';
import type { BuiltCamera } from '../../src/model/built-camera.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

/** As a build would have left it: both documents written out and read back. */
function built(text: string): { readonly camera: BuiltCamera; readonly parts: readonly Written[] } {
  const planned = planCamera(designOf(text));
  const parts = partsJson(planned.build, planned.revision, new Map());
  const camera = readBuilt(JSON.stringify(planOf(planned)), parts);
  if ('what' in camera) throw new Error(camera.what);
  return { camera, parts: JSON.parse(parts).parts };
}

type Loop = readonly (readonly [number, number])[];
interface Written {
  readonly id: string;
  readonly kind: string;
  readonly count: number;
  readonly thickness: number;
  readonly outline: Loop;
  readonly holes: readonly Loop[];
}

/**
 * Whether two finished pieces are one, by their written corners alone: the same corners within `within`, in any order and
 * wherever the piece lies in its frame. Nothing of what is tested is used.
 */
function samePiece(a: Written, b: Written, within: number): boolean {
  if (Math.abs(a.thickness - b.thickness) > within || a.holes.length !== b.holes.length) return false;
  const cornersOf = ({ outline, holes }: Written) => {
    const [left, bottom] = [Math.min(...outline.map(([x]) => x)), Math.min(...outline.map(([, y]) => y))];
    return [outline, ...holes].flat().map(([x, y]) => [x - left, y - bottom] as const);
  };
  const [one, other] = [cornersOf(a), cornersOf(b)];
  const near = (p: readonly [number, number], all: readonly (readonly [number, number])[]) =>
    all.some((q) => Math.abs(p[0] - q[0]) <= within && Math.abs(p[1] - q[1]) <= within);
  return one.length === other.length && one.every((p) => near(p, other)) && other.every((p) => near(p, one));
}

const before = built(heron);
const variants = {
  'a sheet of 3.9 mm': changed(heron, 'thickness: 4.05 mm, sheet', 'thickness: 3.9 mm, sheet'),
  'a thinner processing holder': changed(heron, 'filmDepth: 24 mm', 'filmDepth: 22 mm'),
  'a lens of 180 mm': changed(
    changed(heron, 'focalLength: 210 mm', 'focalLength: 180 mm'),
    'flangeDistance: 203.5 mm',
    'flangeDistance: 172 mm',
  ),
  'a lens a hair longer': changed(heron, 'flangeDistance: 203.5 mm', 'flangeDistance: 203.51 mm'),
  'a wider kerf': changed(heron, 'kerf: 0.15 mm', 'kerf: 0.2 mm'),
};

describe.each(Object.entries(variants))('Heron with %s', (_, text) => {
  const after = built(text);
  const document = compareCameras(before.camera, after.camera);

  test('every part is either cut again or kept, and once', () => {
    expect([...document.recut, ...document.keeps].sort()).toEqual(after.camera.parts.map(({ id }) => id).sort());
    expect(Object.keys(document.why).sort()).toEqual([...document.recut].sort());
  });

  test('what is kept is the piece that lies there, what is cut again is another one', () => {
    for (const part of after.parts.filter(({ kind }) => kind === 'flat')) {
      const old = before.parts.find(({ id }) => id === part.id);
      const same = old !== undefined && samePiece(old, part, 0.02 + 1e-6);
      expect.soft(document.keeps.includes(part.id), part.id).toBe(same);
    }
  });

  test('the same is told of the designs, and of the plans alone where nothing is within the hundredths', () => {
    const { recut, keeps } = compareCameras(recordOfDesign(designOf(heron)), recordOfDesign(designOf(text)));
    expect({ recut, keeps }).toEqual({ recut: document.recut, keeps: document.keeps });
    const digests = (camera: BuiltCamera) => ({
      ...camera,
      parts: camera.parts.map((part) => ({ ...part, edges: null })),
    });
    const alone = compareCameras(digests(before.camera), digests(after.camera));
    // without outlines the hair's breadth is another shape; nothing that was another shape becomes the same
    for (const id of document.recut) expect(alone.recut).toContain(id);
  });

  test('pieces are counted as they are told', () => {
    const pieces = piecesToCut(before.camera, after.camera);
    expect([...pieces].filter(([, n]) => n > 0).map(([id]) => id)).toEqual(document.recut);
  });
});

describe('what is told of a change', () => {
  const told = (text: string) => compareCameras(before.camera, built(text).camera);

  test('of none: nothing', () => {
    expect(told(heron)).toMatchObject({ changed: [], recut: [], lost: [], engraved: [], glued: [], left: [] });
  });

  test('a sheet of 3.9 mm leaves the printed clamp alone', () => {
    // camera.md section 12: everything but the clamp is cut from the sheet
    expect(told(variants['a sheet of 3.9 mm']).keeps).toEqual(['lens-clamp']);
  });

  test('a holder more, between the others in depth: its spacer, and a line on the sole', () => {
    const tin =
      '  - { name: tin box, filmDepth: 12.5 mm, depthTo: emulsion, width: 150 mm, length: 210 mm, thickness: 20 mm }\n';
    const paper = /^ *- \{ name: processing holder/m.exec(heron)?.[0] ?? '';
    const { recut, keeps, engraved, renamed, lost, inOldBoxes } = told(changed(heron, paper, `${tin}${paper}`));
    expect(recut).toEqual(['SP2T']);
    expect(keeps).toEqual(expect.arrayContaining(['SP3', 'SP3T', 'R4U']));
    // the processing holder is the third now, and its spacer the same
    expect(renamed).toEqual({ SP3: 'SP2', SP3T: 'SP2T' });
    expect(engraved).toContain('R4U');
    expect(lost).toEqual([]);
    // z_film = V + f·m = seat + T: seat from 175.5 to 281.7 and 10.5 of reserve (camera.md section 17)
    const box = inOldBoxes.find(({ holder }) => holder === 'tin box');
    expect(box).toMatchObject({ focuses: true, farthest: 0, spacer: { under: 'glass' } });
    expect(box?.nearest).toBeCloseTo((281.7 + 10.5 + 12.5 - 203.5) / 210, 5);
    expect(box?.spacer.thickness).toBeCloseTo(12.5 - 5.8, 9);
  });

  test('a lens of 180 mm in boxes made for 210: no infinity, by as much as it is short', () => {
    const { lost, inOldBoxes } = told(variants['a lens of 180 mm']);
    // the seat stands at 175.5 at least: film 175.5 + T behind the panel, and infinity wants it at 172
    const far = (depth: number) => (175.5 + depth - 172) / 180;
    expect(inOldBoxes.map(({ farthest }) => farthest)).toEqual([
      expect.closeTo(far(5.8), 5),
      expect.closeTo(far(24), 5),
    ]);
    const infinity = lost.filter(({ what }) => what.startsWith('infinity'));
    expect(infinity.map(({ why }) => /short/.test(why) && /9\.3 mm|27\.5 mm/.test(why))).toEqual([true, true]);
  });

  test('a lens of 230 mm: infinity stays, the nearest is told', () => {
    const long = changed(
      changed(
        changed(heron, 'focalLength: 210 mm', 'focalLength: 230 mm'),
        'flangeDistance: 203.5 mm',
        'flangeDistance: 225 mm',
      ),
      'nearest: 1:2.5',
      'nearest: 1:3',
    );
    const { lost, inOldBoxes } = told(long);
    expect(lost.some(({ what }) => what.startsWith('infinity'))).toBe(false);
    expect(inOldBoxes[0]?.nearest).toBeCloseTo((281.7 + 10.5 + 5.8 - 225) / 230, 5);
  });

  describe('a camera that was made for nothing farther than 1:10', () => {
    const portraits = changed(heron, 'pastInfinity', 'farthest: 1:10, pastInfinity');
    const lostBy = (text: string) => compareCameras(built(portraits).camera, built(text).camera).lost;

    test('a holder that is deeper than its slide takes', () => {
      const tin = '  - { name: tin box, filmDepth: 40 mm, width: 150 mm, length: 210 mm, thickness: 45 mm }\n';
      // film at 203.5 + 21 for 1:10, less 24 and 4: the seat goes to 196.5, and 196.5 + 40 is 12 too far: 33/210 past the film at infinity, 1:6.364
      expect(lostBy(`${changed(portraits, 'shims:', `${tin}shims:`)}`)).toEqual([
        {
          what: '1:10 with the tin box, in the boxes as they are',
          why: 'The slide ends 12 mm short; the farthest subject is at 1:6.36.',
        },
      ]);
    });

    test('a later one for nothing farther than 1:8', () => {
      const nearer = changed(
        changed(portraits, 'farthest: 1:10', 'farthest: 1:8'),
        ', pastInfinity: 4 mm',
        ', pastInfinity: 0 mm',
      );
      // the film of the paper holder lies 18.2 farther ahead, and 1:8 needs but 5.25 more than 1:10
      expect(lostBy(nearer).map(({ what }) => what)).toEqual(['1:10 with the processing holder']);
      expect(lostBy(portraits)).toEqual([]);
      // a hair is no loss
      expect(lostBy(changed(nearer, 'farthest: 1:8', 'farthest: 1:9.9'))).toEqual([]);
    });
  });

  test('a holder that is no longer there', () => {
    const line = /^ *- \{ name: processing holder.*\n/m.exec(heron)?.[0] ?? '';
    const { lost, left } = told(changed(heron, line, ''));
    expect(lost.map(({ what }) => what)).toContain('the processing holder');
    expect(left).toEqual(['SP2', 'SP2T']);
  });

  test('more of a part: as many as are missing', () => {
    const few = {
      ...before.camera,
      parts: before.camera.parts.map((part) => (part.id === 'R6' ? { ...part, count: 3 } : part)),
    };
    const document = compareCameras(few, before.camera);
    expect(document.recut).toEqual(['R6']);
    expect(document.why).toEqual({ R6: '1 more of it' });
    expect(piecesToCut(few, before.camera).get('R6')).toBe(1);
  });

  test('an edge that moved by 0.02 is the same, one that moved by 0.03 is not', () => {
    const moved = (by: number): BuiltCamera => ({
      ...before.camera,
      parts: before.camera.parts.map((part) =>
        part.id !== 'F3' || part.edges === null
          ? part
          : {
              ...part,
              shape: 'another',
              edges: { ...part.edges, outline: part.edges.outline.map(({ x, y }) => ({ x: x > 0 ? x + by : x, y })) },
            },
      ),
    });
    expect(compareCameras(before.camera, moved(0.02)).recut).toEqual([]);
    expect(compareCameras(before.camera, moved(0.03)).recut).toEqual(['F3']);
  });

  test('what is glued to a part that is cut again is told', () => {
    const { recut, glued } = told(variants['a thinner processing holder']);
    expect(recut).toContain('F3');
    // camera.md section 12: F1 has fingers to F3
    expect(glued).toContain('F1');
    expect(glued.filter((id) => recut.includes(id))).toEqual([]);
  });

  test('figures by their names in the plan', () => {
    const { changed: figures } = told(variants['a thinner processing holder']);
    // camera.md: s_min = V − p − T_max
    expect(figures).toContainEqual({ figure: 'slide.closest', before: 175.5, after: 177.5 });
    expect(figures).toContainEqual({ figure: 'holders.processing holder.filmDepth', before: 24, after: 22 });
    expect(figures.some(({ figure }) => figure.startsWith('optics'))).toBe(false);
  });
});

describe('a record that is none is refused with its reason', () => {
  const { plan } = before.camera;
  const parts = partsJson(planCamera(designOf(heron)).build, plan.revision, new Map());
  test.each([
    { text: 'no json', shapes: null, says: 'plan.json: It is not JSON' },
    { text: '[]', shapes: null, says: 'plan.json: It is not the plan of a camera' },
    { text: '{"schema": 1}', shapes: null, says: 'name is missing' },
    {
      text: JSON.stringify({ ...plan, slide: { ...plan.slide, closest: 'near' } }),
      shapes: null,
      says: 'slide.closest',
    },
    { text: JSON.stringify(plan), shapes: '{}', says: 'parts.json: schema is missing' },
    { text: JSON.stringify({ ...plan, revision: 'ABCDEF' }), shapes: parts, says: 'they are not of one build' },
  ])('$says', ({ text, shapes, says }) => {
    const read = readBuilt(text, shapes);
    expect('what' in read ? read.what : 'was read').toContain(says);
  });
});
