import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grown } from '../../src/geometry/clip.js';
import { area, type ClosedPath, flatten, length, polygon, reversed } from '../../src/geometry/path.js';
import { boxAt, circle, rectangle, rounded, slotAlongX, stepped } from '../../src/geometry/shapes.js';
import { cutLine, cutOnce, finishedEdge } from '../../src/sheets/cut-line.js';
import { plate } from './invented-camera.js';
import { departure, loopGap } from './measure.js';

const hole = reversed;
const rect = (w: number, h: number) => rectangle(boxAt(0, 0, w, h));
const widths = (path: ClosedPath) => {
  const [xs, ys] = [path.map(({ x }) => x), path.map(({ y }) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
};

describe('a finished piece or hole is drawn half a kerf wider or narrower on each side', () => {
  test.each([
    { what: 'M6.02 piece', edge: rect(2, 4), kerf: 0.2, drawn: [2.2, 4.2] }, // [verified: R45]
    { what: 'M6.02 hole', edge: hole(rect(2, 4)), kerf: 0.2, drawn: [1.8, 3.8] }, // [verified: R45]
    { what: 'M6.10, once', edge: rect(100, 60), kerf: 0.15, drawn: [100.15, 60.15] }, // [common practice, no source]
    { what: 'M6.11, M4 medium', edge: hole(circle(0, 0, 4.5)), kerf: 0.15, drawn: [4.35, 0] }, // [common practice, no source]
  ])('$what', ({ edge, kerf, drawn }) => {
    expect(widths(cutLine(edge, { kerf }))).toEqual(drawn.map((w) => expect.closeTo(w, 12)));
  });

  test.each([
    { what: 'M6.01 piece', line: rect(2, 4), finished: [1.8, 3.8] }, // [verified: R45]
    { what: 'M6.01 hole', line: hole(rect(2, 4)), finished: [2.2, 4.2] }, // [verified: R45]
  ])('$what: what a drawn line leaves standing', ({ line, finished }) => {
    expect(widths(finishedEdge(line, { kerf: 0.2 }))).toEqual(finished.map((w) => expect.closeTo(w, 12)));
  });
});

const triangle = polygon([
  [0, 0],
  [30, 0],
  [0, 40],
]);
const ell = polygon([
  [0, 0],
  [100, 0],
  [100, 40],
  [40, 40],
  [40, 90],
  [0, 90],
]);
const you = stepped({ left: 0, bottom: 0, right: 90, top: 60 }, { top: [{ from: 30, to: 60, depth: -40 }] });
const hexagon = polygon(
  [0, 1, 2, 3, 4, 5].map((i) => [50 * Math.cos((i * Math.PI) / 3), 50 * Math.sin((i * Math.PI) / 3)] as const),
);
const stadium = slotAlongX(0, 0, 80, 20);

describe('areas of offset outlines', () => {
  test.each([
    { what: 'M10.07 mitre', edge: rect(100, 60), by: 5, expected: 7700 }, // [verified: R88 formula]
    { what: 'M10.07 inward', edge: hole(rect(100, 60)), by: 5, expected: 4500 }, // [verified: R88 formula]
    { what: 'M10.08 mitre', edge: rect(100, 60), by: 0.075, expected: 6024.0225 }, // [verified: R88 formula]
    { what: 'M10.09 inward', edge: hole(triangle), by: 2, expected: 384 }, // [verified: R88 formula]
    { what: 'M10.10 mitre', edge: hexagon, by: 3, expected: 7426.367443 }, // [verified: R88 formula]
    { what: 'M10.11 mitre', edge: ell, by: 5, expected: 8000 }, // [common practice, no source], grid-checked
    { what: 'M10.12 mitre', edge: hole(ell), by: 5, expected: 4200 }, // [common practice, no source], grid-checked
    { what: 'M10.13 mitre', edge: you, by: 3, expected: 5376 }, // [common practice, no source], grid-checked
    { what: 'M10.14 outward', edge: stadium, by: 2, expected: 1514.159265 + 182.831853 * 2 + Math.PI * 4 }, // A, P [common practice, no source]; Steiner [verified: R88 formula]
    { what: 'M10.14 inward', edge: hole(stadium), by: 2, expected: 60 * 16 + Math.PI * 64 }, // plane geometry
    { what: 'M10.15 at the limit', edge: hole(rect(100, 60)), by: 30, expected: 0 }, // [common practice, no source]
    { what: 'M10.15 past it: empty, not turned over', edge: hole(rect(100, 60)), by: 31, expected: 0 }, // [common practice, no source]
  ])('$what', ({ edge, by, expected }) => {
    expect(Math.abs(area(cutLine(edge, { kerf: 2 * by })))).toBeCloseTo(expected, 5);
  });

  test('corners sharper than a mitre of 2 get the round locus of the beam', () => {
    // Steiner's terms for the two sharp corners (their turns add up to 270°), cot 45° = 1 for the right angle [verified: R88 formula]
    const expected = 600 + 120 * 2 + 2 * 2 * (1 + (3 * Math.PI) / 4);
    expect(area(cutLine(triangle, { kerf: 4 }))).toBeCloseTo(expected, 9);
  });
});

describe('arcs stay arcs', () => {
  test('a whole circle keeps two vertices of bulge 1, M7.13 [common practice, no source]', () => {
    const line = cutLine(circle(7, -2, 10), { kerf: 0.15 });
    expect(line.map(({ bulge }) => bulge)).toEqual([1, 1]);
    expect(area(line)).toBeCloseTo(Math.PI * 5.075 * 5.075, 9);
  });

  test('a round hole keeps its bulges of -1 and shrinks', () => {
    const line = cutLine(hole(circle(7, -2, 10)), { kerf: 0.15 });
    expect(line.map(({ bulge }) => bulge)).toEqual([-1, -1]);
    expect(area(line)).toBeCloseTo(-Math.PI * 4.925 * 4.925, 9);
  });

  test('rounded corners keep the bulge of a right angle, M7.10 [verified: R54 formula]', () => {
    const line = cutLine(rounded(boxAt(0, 0, 100, 60), 8), { kerf: 0.15 });
    expect(line.filter(({ bulge }) => bulge !== 0).map(({ bulge }) => bulge)).toEqual(
      [1, 2, 3, 4].map(() => expect.closeTo(0.4142135624, 10)),
    );
    expect(area(line)).toBeCloseTo(100.15 * 60.15 - (4 - Math.PI) * 8.075 * 8.075, 9); // plane geometry
  });

  test('an inner radius smaller than half a kerf becomes a corner', () => {
    const line = cutLine(hole(rounded(boxAt(0, 0, 20, 10), 0.05)), { kerf: 0.15 });
    expect(line).toHaveLength(4);
    expect(area(line)).toBeCloseTo(-19.85 * 9.85, 9); // plane geometry
  });

  test('nothing is left of a hole narrower than the cut', () => {
    expect(cutLine(hole(circle(0, 0, 0.14)), { kerf: 0.15 })).toEqual([]);
    expect(cutLine(hole(slotAlongX(0, 0, 20, 0.14)), { kerf: 0.15 })).toEqual([]);
    expect(cutLine(hole(rect(20, 0.14)), { kerf: 0.15 })).toEqual([]);
  });
});

/** Panels with fingers, rounded frames, slots, discs with a flat: what a camera is made of. */
const loops: fc.Arbitrary<ClosedPath> = fc.oneof(
  fc
    .record({
      w: fc.integer({ min: 40, max: 300 }),
      h: fc.integer({ min: 40, max: 300 }),
      from: fc.integer({ min: 3, max: 15 }),
      run: fc.integer({ min: 2, max: 14 }),
      depth: fc.constantFrom(-4.05, 4.05, -0.3, 6),
    })
    .map(({ w, h, from, run, depth }) => {
      const step = [{ from, to: from + run, depth }];
      return stepped({ left: 0, bottom: 0, right: w, top: h }, { left: step, top: step, right: step });
    }),
  fc
    .record({
      w: fc.integer({ min: 9, max: 200 }),
      h: fc.integer({ min: 9, max: 200 }),
      r: fc.double({ min: 0.5, max: 4, noNaN: true }),
    })
    .map(({ w, h, r }) => rounded(boxAt(0, 0, w, h), r)),
  fc
    .record({ length: fc.integer({ min: 12, max: 200 }), width: fc.integer({ min: 3, max: 10 }) })
    .map(({ length: l, width }) => slotAlongX(3, 4, l, width)),
  fc
    .record({ x: fc.double({ min: 10, max: 40, noNaN: true }), bulge: fc.double({ min: 0.3, max: 2.4, noNaN: true }) })
    .map(({ x, bulge }) => [
      { x: 0, y: 0, bulge: 0 },
      { x, y: 0, bulge },
    ]),
);
const sides = fc.constantFrom('outline', 'hole');
const turned = (loop: ClosedPath, side: string) => (side === 'hole' ? hole(loop) : loop);
const kerfs = fc.double({ min: 0.03, max: 0.5, noNaN: true });

describe('laws of the cut line', () => {
  test('kerf-once: what is offset back is the finished edge again', () =>
    fc.assert(
      fc.property(loops, sides, kerfs, (loop, side, kerf) => {
        const edge = turned(loop, side);
        const back = finishedEdge(cutLine(edge, { kerf }), { kerf });
        // the chords of both may stray by 1 µm
        expect(departure(flatten(back, 0.001), flatten(edge, 0.001))).toBeLessThan(0.002);
        expect(Math.abs(area(back) - area(edge))).toBeLessThan(1e-6 * length(edge));
        expect(back).toHaveLength(edge.length);
      }),
      { numRuns: 60, seed: 1906 },
    ));

  test('another offset, on an integer grid with mitred corners, draws the same line', () =>
    fc.assert(
      fc.property(loops, sides, kerfs, (loop, side, kerf) => {
        const edge = turned(loop, side);
        // the other offset grows what runs anticlockwise
        const [witness, ...more] = grown([flatten(loop, 0.0005)], side === 'hole' ? -kerf / 2 : kerf / 2, {
          corners: 'mitred',
        });
        expect(more).toEqual([]);
        const line = flatten(cutLine(edge, { kerf }), 0.0005);
        // sharp ends are squared off there and rounded here, within half a kerf; all else within the chords
        const gap = Math.max(...line.map((p) => loopGap(p, witness ?? [])));
        expect(gap).toBeLessThan(loop.length === 2 ? kerf / 2 : 0.002);
      }),
      { numRuns: 60, seed: 1906 },
    ));

  test('the line stands half a kerf from the edge all along, corners left out', () =>
    fc.assert(
      fc.property(loops, sides, kerfs, (loop, side, kerf) => {
        const edge = turned(loop, side);
        const fine = flatten(edge, 0.0005);
        const line = flatten(cutLine(edge, { kerf }), 0.0005);
        const middles = line.map((p, i) => {
          const q = line[(i + 1) % line.length] as (typeof line)[number];
          return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
        });
        for (const p of middles) {
          // a mitre may stand off by up to twice half a kerf, and only at a corner
          if (edge.some((v) => Math.hypot(v.x - p.x, v.y - p.y) < 2 * kerf)) continue;
          expect(Math.abs(loopGap(p, fine) - kerf / 2)).toBeLessThan(0.0015);
        }
      }),
      { numRuns: 60, seed: 1906 },
    ));
});

describe('the rule kerf-once', () => {
  const frame = plate('B1', rounded(boxAt(0, 0, 232, 232), 6), {
    holes: [hole(rect(100, 120)), hole(circle(90, 90, 4.5))],
  });
  const beam = { kerf: 0.15 };
  const edges = [frame.outline, ...frame.holes];
  const once = edges.map((edge) => cutLine(edge, beam));

  test('is silent where each line was offset once', () => expect(cutOnce(frame, once, beam)).toEqual([]));
  test('sees kerf that was forgotten', () => expect(cutOnce(frame, edges, beam)).toHaveLength(3));
  test('sees kerf that was allowed for twice', () =>
    expect(
      cutOnce(
        frame,
        once.map((line) => cutLine(line, beam)),
        beam,
      ),
    ).toHaveLength(3));
  test('sees a hole moved to the wrong side', () =>
    expect(
      cutOnce(
        frame,
        once.map((line, i) => (i === 1 ? finishedEdge(edges[1] ?? [], beam) : line)),
        beam,
      ),
    ).toEqual([
      expect.objectContaining({ rule: 'kerf-once', level: 'error', message: expect.stringContaining('hole 1') }),
    ]));
  test('names a hole narrower than the cut', () =>
    expect(
      cutOnce(
        frame,
        once.map((line, i) => (i === 2 ? [] : line)),
        beam,
      ),
    ).toEqual([
      expect.objectContaining({ rule: 'kerf-once', message: expect.stringContaining('hole 2 has a place narrower') }),
    ]));
});
