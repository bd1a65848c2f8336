import { describe, expect, test } from 'vitest';
import { area, flatten, inside, type Point } from '../../src/geometry/path.js';
import type { Point3 } from '../../src/geometry/placement.js';
import { type Planned, planCamera } from '../../src/pipeline.js';
import { designOf } from '../design/reading.js';
import { bittern, heron } from '../design/worked-designs.js';
import { flatPart, inOwnFrame, lawsFrom, spanOf, withDesign } from './law.js';

const { lawOfSoundCameras } = lawsFrom(5);

/** Section 14 of the project's description of the camera: each cell of t³ at a corner of a box has exactly one owner. */

type OwnersOf = (point: Point3) => readonly string[];

/** Which of the plates hold a point of the camera. */
function ownersAmong(planned: Planned, ids: readonly string[]): OwnersOf {
  const plates = ids.map((id) => {
    const part = flatPart(planned, id);
    return { part, outline: flatten(part.outline), holes: part.holes.map((hole) => flatten(hole)) };
  });
  const holds = (outline: readonly Point[], holes: readonly (readonly Point[])[], at: Point) =>
    inside(outline, at) && !holes.some((hole) => inside(hole, at));
  return (point) =>
    plates.flatMap(({ part, outline, holes }) =>
      part.placements.flatMap((place) => {
        const own = inOwnFrame(place, point);
        return own.z > 0 && own.z < part.thickness && holds(outline, holes, own) ? [part.id] : [];
      }),
    );
}

const SIDES = [-1, 1] as const;

/** The boxes as they are placed: outer faces, and the planes that cells stand between. */
function measured(planned: Planned) {
  const t = flatPart(planned, 'F1').thickness;
  const [panel, top, foot] = [spanOf(planned, 'F1'), spanOf(planned, 'F3'), spanOf(planned, 'T1U')];
  const [wall, standard] = [spanOf(planned, 'R1R'), spanOf(planned, 'R3')];
  return {
    t,
    front: { half: panel.x[1], top: top.y[1], foot: foot.y[1], rear: top.z[1] },
    rear: { half: wall.x[1], front: wall.z[0], standard: standard.z },
  };
}

/** Eight points of a cell round its middle. */
const cellAt = (x: number, y: number, z: number, t: number): readonly Point3[] =>
  SIDES.flatMap((i) =>
    SIDES.flatMap((j) => SIDES.map((k) => ({ x: x + (i * t) / 4, y: y + (j * t) / 4, z: z + (k * t) / 4 }))),
  );

/** Middles of the cells in which three panels meet, or two and the end of a third. */
function cornerCells(planned: Planned) {
  const { t, front, rear } = measured(planned);
  const h = t / 2;
  const frontCells = SIDES.flatMap((side) => {
    const x = side * (front.half - h);
    return [
      { x, y: front.top - h, z: -h },
      { x, y: front.top - h, z: front.rear - h },
      { x, y: front.foot + h, z: -h },
    ];
  });
  const rearCells = SIDES.flatMap((i) =>
    SIDES.flatMap((j) =>
      [rear.front + h, rear.standard[0] - h, rear.standard[0] + h].map((z) => ({
        x: i * (rear.half - h),
        y: j * (rear.half - h),
        z,
      })),
    ),
  );
  return { t, frontCells, rearCells };
}

const FRONT = ['F1', 'F2L', 'F2R', 'F3', 'F4', 'F5'];
const REAR = ['R1L', 'R1R', 'R2T', 'R2F', 'R3'];

function eachCornerOwnedOnce(planned: Planned): void {
  const { t, frontCells, rearCells } = cornerCells(planned);
  for (const [ids, cells] of [
    [FRONT, frontCells],
    [REAR, rearCells],
  ] as const) {
    const owners = ownersAmong(planned, ids);
    for (const { x, y, z } of cells) {
      const found = cellAt(x, y, z, t).map(owners);
      expect(
        found.map((f) => f.length),
        `cell at ${x}, ${y}, ${z}: ${found.flat().join(' ')}`,
      ).toEqual(Array(8).fill(1));
      expect(new Set(found.flat()).size).toBe(1);
    }
  }
}

/** The edges along which two panels meet, as lines through the middles of their cells. */
function edges(
  planned: Planned,
): readonly { readonly ids: readonly string[]; readonly from: Point3; readonly to: Point3 }[] {
  const { t, front, rear } = measured(planned);
  const h = t / 2;
  const line = (ids: readonly string[], from: Point3, to: Point3) => ({ ids, from, to });
  const [x, y] = [front.half - h, front.top - h];
  const r = rear.half - h;
  const [near, far] = [rear.front, rear.standard[0]];
  const notch = rear.standard[0] + h;
  return [
    line(FRONT, { x: -front.half, y, z: -h }, { x: front.half, y, z: -h }),
    ...SIDES.flatMap((s) => [
      line(FRONT, { x: s * x, y: front.foot, z: -h }, { x: s * x, y: front.top, z: -h }),
      line(FRONT, { x: s * x, y, z: 0 }, { x: s * x, y, z: front.rear }),
      line(REAR, { x: s * r, y: -rear.half, z: notch }, { x: s * r, y: rear.half, z: notch }),
      line(REAR, { x: -rear.half, y: s * r, z: notch }, { x: rear.half, y: s * r, z: notch }),
      ...SIDES.map((u) => line(REAR, { x: s * r, y: u * r, z: near }, { x: s * r, y: u * r, z: far })),
    ]),
  ];
}

/** Steps along an edge that do not fall in with the fingers. */
const STEP = 0.83;

function eachEdgeOwnedOnce(planned: Planned): void {
  const fit = planned.design.workshop.fits.glueSlip;
  for (const { ids, from, to } of edges(planned)) {
    const owners = ownersAmong(planned, ids);
    const [dx, dy, dz] = [to.x - from.x, to.y - from.y, to.z - from.z];
    const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
    const at = (s: number) => {
      const k = s / length;
      return owners({ x: from.x + k * dx, y: from.y + k * dy, z: from.z + k * dz });
    };
    for (let s = STEP / 2; s < length; s += STEP) {
      const found = at(s);
      expect(found.length, `${found.join(' and ')} share an edge`).toBeLessThanOrEqual(1);
      if (found.length === 1) continue;
      // nobody's: then it is the play of a joint, with another finger on each side of it
      const [before, after] = [at(s - fit), at(s + fit)];
      expect([before.length, after.length], `a hole in the edge of ${ids.join(' ')} at ${s}`).toEqual([1, 1]);
      expect(before).not.toEqual(after);
    }
  }
}

describe.each([
  { name: 'Heron', planned: planCamera(designOf(heron)) },
  { name: 'Bittern', planned: planCamera(designOf(bittern)) },
])('the boxes of $name', ({ planned }) => {
  test('have one owner for each corner cell', () => eachCornerOwnedOnce(planned));
  test('have one owner all along their edges, the play of the joints aside', () => eachEdgeOwnedOnce(planned));
});

test('every sound camera has one owner for each corner cell', () => lawOfSoundCameras(50, eachCornerOwnedOnce));

test('every sound camera has one owner all along the edges of its boxes', () =>
  lawOfSoundCameras(12, eachEdgeOwnedOnce));

/*
 * What fingers take from one panel they give to the other (rows M6.14 to M6.17 of the checks, identities): cut without
 * play, the panels of a box come to the volume of its plain shape, whatever the pattern.
 */
const withoutPlay = (planned: Planned): Planned => {
  const { workshop } = planned.design;
  return withDesign(planned.design, { workshop: { ...workshop, fits: { ...workshop.fits, glueSlip: 0 } } });
};

const netArea = (planned: Planned, id: string): number => {
  const { outline, holes } = flatPart(planned, id);
  return holes.reduce((sum, hole) => sum - Math.abs(area(hole)), Math.abs(area(outline)));
};

test('the walls of the rear box with their fingers in the standard come to a plain tube', () =>
  lawOfSoundCameras(40, (drawn) => {
    const planned = withoutPlay(drawn);
    const { t, rear } = measured(planned);
    const length = rear.standard[0] - rear.front;
    const [outside, within] = [2 * rear.half, 2 * rear.half - 2 * t];
    const walls = REAR.slice(0, 4).reduce((sum, id) => sum + netArea(planned, id) * t, 0);
    const notches = (Math.abs(area(flatPart(planned, 'R3').holes[0] ?? [])) - within * within) * t;
    expect(walls - notches).toBeCloseTo((outside * outside - within * within) * length, 3);
  }));

test('the panels of the front box with their tenons come to plain panels', () =>
  lawOfSoundCameras(40, (drawn) => {
    const planned = withoutPlay(drawn);
    const { t, front } = measured(planned);
    const opening = Math.abs(area(flatPart(planned, 'F1').holes[0] ?? []));
    const [w, h, length] = [2 * front.half, front.top - front.foot, front.rear];
    const plain = w * h + 2 * length * h + length * (w - 2 * t) + length * (w - 2 * t) - opening;
    const tenons = flatPart(planned, 'T1U')
      .holes.filter((hole) => hole.length === 4 && hole.every(({ bulge }) => bulge === 0))
      .reduce((sum, hole) => sum + Math.abs(area(hole)), 0);
    const panels = FRONT.slice(0, 5).reduce((sum, id) => sum + netArea(planned, id), 0);
    expect(panels - tenons).toBeCloseTo(plain, 3);
  }));
