import { describe, expect, test } from 'vitest';
import { stands } from '../../src/assembly/setups.js';
import { engrave } from '../../src/camera/engrave.js';
import { lettering } from '../../src/geometry/lettering.js';
import { flatten, inside, type Path, type Point } from '../../src/geometry/path.js';
import { apply } from '../../src/geometry/placement.js';
import type { FlatPart } from '../../src/model/part.js';
import { planCamera } from '../../src/pipeline.js';
import { markRules, seen } from '../../src/proof/marks.js';
import { blocksOf } from '../../src/proof/straight-line.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';

/** A camera of the kept designs with its parts before and after. */
function engraved(name: string) {
  const planned = planCamera(keptDesign(name));
  const { parts, findings } = engrave(planned.parts, planned);
  const marked = parts.flatMap((part, i) => {
    const before = planned.parts[i];
    if (part.kind !== 'flat' || before?.kind !== 'flat') return [];
    const words = before.marks.flatMap(({ text, height }) => lettering(text, height).strokes);
    // scales first, then the mark
    return [{ part, before, mark: part.engraving.slice(before.engraving.length + words.length) }];
  });
  return { ...planned, marked, findings };
}

describe.each(keptDesigns)('%s', { timeout: 60_000 }, (name) => {
  const { build, revision, marked, findings } = engraved(name);
  const carrying = marked.filter(({ mark }) => mark.length > 0);

  test('parts without a mark are named in one note, with the reason, and those only', () => {
    const bare = marked.filter(({ mark }) => mark.length === 0).map(({ part }) => part.id);
    expect(findings.map(({ rule, level, value }) => ({ rule, level, value }))).toEqual([
      { rule: 'small-mark', level: 'note', value: bare.length },
    ]);
    const named = [...(findings[0]?.message ?? '').matchAll(/\b[A-Z]{1,2}\d+[A-Z]?\b/g)].map(([id]) => id);
    expect(named.sort()).toEqual(bare.sort());
    // a triangle of 12 mm legs; blocks outside the front box; fences of 4.2 mm in thin ply; hooks that stand out behind, where their tongue has no room
    // of a holder: blocks of 15, and what lies outside on lid and slide; a mask has no side that is covered
    const small = ['F10', 'B3', 'D10', 'HB'];
    const seen = ['B5', 'F14', 'HT', 'HU', 'KU', 'MK'];
    const isOf = (ids: readonly string[], id: string) =>
      ids.some((one) => one === id || one === id.replace(/\d+$/, ''));
    const why = (id: string) => (isOf(seen, id) ? 'seen on the finished camera' : 'too small to be read');
    for (const id of bare)
      expect.soft(findings[0]?.message).toMatch(new RegExp(`${id}[^)]* \\(it would be ${why(id)}\\)`));
    expect(bare.filter((id) => !isOf([...small, ...seen], id))).toEqual([]);
  });

  test('every stroke lies in the wood, 1 mm or more from outline and holes', () => {
    for (const { part } of marked)
      for (const stroke of part.engraving)
        expect.soft(leastSolid(part, stroke), part.id).toBeGreaterThanOrEqual(1 - 1e-6);
  });

  test('a mark says the id and as a rule the revision, is read from the left to the right, and is 2.5 mm high or more', () => {
    const short = carrying.filter(({ part, mark }) => {
      const whole = readAs([part.id, revision], mark);
      const height = whole ?? readAs([part.id], mark);
      expect.soft(height, part.id).toBeGreaterThanOrEqual(2.5 - 1e-9);
      return whole === null;
    });
    // turn-buttons, their packings, bars that are half in sight and the tongues of hooks have no room for more
    expect(short.map(({ part }) => part.id).filter((id) => !['R6', 'R7', 'B5', 'C4'].includes(id))).toEqual([]);
  });

  test('an arrow points up where it says U, and to the lens where it says L', () => {
    const pointing = carrying.flatMap(({ part, mark }) => {
      const words = readAs([part.id, revision], mark) === null ? [part.id] : [part.id, revision];
      const [shaft, , ...letter] = mark.slice(words.flatMap((word) => lettering(word, 1).strokes).length);
      const [tail, tip] = shaft?.vertices ?? [];
      const matrix = part.placements[0]?.matrix;
      if (!tail || !tip || !matrix) return [];
      const [from, to] = [tail, tip].map(({ x, y }) => apply(matrix, { x, y, z: 0 })) as [P3, P3];
      const length = Math.hypot(tip.x - tail.x, tip.y - tail.y);
      const corners = (strokes: readonly Path[]) => strokes.map(({ vertices }) => vertices.length).join();
      const says = ['U', 'L'].find((text) => corners(lettering(text, 1).strokes) === corners(letter));
      return [{ id: part.id, says, up: (to.y - from.y) / length, ahead: (from.z - to.z) / length }];
    });
    expect(pointing.length).toBeGreaterThan(10);
    for (const { id, says, up, ahead } of pointing) expect.soft(says === 'U' ? up : ahead, id).toBeCloseTo(1, 6);
    expect(new Set(pointing.map(({ says }) => says))).toEqual(new Set(['U', 'L']));
  });

  test('marks and scales do not run into each other', () => {
    for (const { part, before, mark } of carrying.filter((one) => one.before.marks.length > 0)) {
      const scale = part.engraving.slice(0, part.engraving.length - mark.length);
      expect.soft(scale.length, part.id).toBeGreaterThan(before.engraving.length);
      for (const stroke of mark)
        for (const other of scale) expect.soft(apart(stroke, other), part.id).toBeGreaterThan(1);
    }
  });

  test('no stroke of a mark is seen straight on in the finished camera, in whatever set-up', () => {
    const blocks = blocksOf(build.parts);
    for (const { part, mark } of carrying)
      for (const setup of build.setups) {
        const here = blocks.filter(({ piece }) => stands(piece.placement, setup));
        for (const placement of part.placements.filter((one) => stands(one, setup))) {
          const others = here.filter(({ piece }) => piece.placement !== placement);
          const [low, high] = [0, 1].map((z) => apply(placement.matrix, { x: 0, y: 0, z })) as [P3, P3];
          const normal = { x: high.x - low.x, y: high.y - low.y, z: high.z - low.z };
          const shown = mark
            .flatMap(({ vertices }) => vertices)
            .filter(({ x, y }) => seen(apply(placement.matrix, { x, y, z: part.thickness }), normal, others));
          expect.soft(shown, `${part.id}, ${setup.name}`).toEqual([]);
        }
      }
  });

  test('faces that carry marks are those that do not show, and scales read right', () =>
    expect(markRules(build)).toEqual([]));
});

type P3 = ReturnType<typeof apply>;

/**
 * Cap height of a mark that begins with these words, in one line or one below the other; null where it says something
 * else. All points of the first word must lie to its ends as in the letters: a mirrored mark turns the other way.
 */
function readAs(words: readonly string[], mark: readonly Path[]): number | null {
  const letters = words.flatMap((word) => lettering(word, 1).strokes);
  const first = lettering(words[0] as string, 1).strokes.length;
  if (mark.length < letters.length) return null;
  const alike = mark
    .slice(0, letters.length)
    .every((stroke, i) => stroke.vertices.length === letters[i]?.vertices.length);
  if (!alike) return null;
  const chain = (strokes: readonly Path[]): Chain => {
    const all = strokes.slice(0, first).flatMap(({ vertices }) => vertices);
    return { a: all[0] as Point, b: all.at(-1) as Point, all };
  };
  const [p, q] = [chain(mark), chain(letters)];
  const height = Math.hypot(p.b.x - p.a.x, p.b.y - p.a.y) / Math.hypot(q.b.x - q.a.x, q.b.y - q.a.y);
  const same = q.all.every(
    (point, i) => Math.abs(turn(p, p.all[i] as Point) - height * height * turn(q, point)) < 1e-6,
  );
  return same ? height : null;
}

interface Chain {
  readonly a: Point;
  readonly b: Point;
  readonly all: readonly Point[];
}

const turn = ({ a, b }: Chain, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** How much solid there is between a stroke and the nearest edge of its part, mm; negative where it leaves the wood. */
function leastSolid({ outline, holes }: FlatPart, { vertices, closed }: Path): number {
  const loops = [outline, ...holes].map((loop) => flatten(loop, 0.001));
  const [rim, ...gaps] = loops as [readonly Point[], ...(readonly Point[])[]];
  const astray = vertices.some((point) => !inside(rim, point) || gaps.some((gap) => inside(gap, point)));
  if (astray) return -1;
  const edges = loops.flatMap((loop) => loop.map((a, i): Segment => [a, loop[(i + 1) % loop.length] as Point]));
  let least = Infinity;
  for (const piece of segments(vertices, closed))
    for (const edge of edges) least = Math.min(least, between(piece, edge));
  return least;
}

type Segment = readonly [Point, Point];

const segments = (points: readonly Point[], closed: boolean): readonly Segment[] =>
  points.flatMap((a, i): readonly Segment[] =>
    i === points.length - 1 && !closed ? [] : [[a, points[(i + 1) % points.length] as Point]],
  );

const apart = (a: Path, b: Path): number =>
  Math.min(...segments(a.vertices, a.closed).flatMap((p) => segments(b.vertices, b.closed).map((q) => between(p, q))));

/** Distance of two segments. */
function between([a, b]: Segment, [c, d]: Segment): number {
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(toLine(a, [c, d]), toLine(b, [c, d]), toLine(c, [a, b]), toLine(d, [a, b]));
}

function toLine({ x, y }: Point, [a, b]: Segment): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / size));
  return Math.hypot(a.x + t * dx - x, a.y + t * dy - y);
}
