import { describe, expect, test } from 'vitest';
import {
  boltPreload,
  gripOf,
  placeLensClamp,
  ringHold,
  screwAngles,
  screwPlaces,
  sizeLensClamp,
} from '../../../src/camera/lens-clamp/size.js';
import { boundsOf } from '../../../src/geometry/path.js';
import { apply } from '../../../src/geometry/placement.js';

const given = {
  barrelDiameter: 58,
  grip: 22,
  boreAllowance: 0.2,
  screws: 4,
  side: 'inside',
  lensMassKg: 0.64,
  ply: 4.05,
} as const;
const clamp = sizeLensClamp(given);

describe('a clamp for a barrel of 58', () => {
  // the trade's rules for clamps [common practice, no source]; the numbers are their sums
  test.each([
    { what: 'bore: barrel + 0.2', is: clamp.bore, should: 58.2 },
    { what: 'collar: 8 of wall all round', is: clamp.collarDiameter, should: 74.2 },
    { what: 'bolt circle: collar + 14', is: clamp.boltCircle, should: 88.2 },
    { what: 'flange: bolt circle + 12', is: clamp.flangeDiameter, should: 100.2 },
    { what: 'lugs: to half the collar + 12', is: clamp.lug.reach, should: 49.1 },
    { what: 'length: the grip', is: clamp.length, should: 22 },
  ])('$what', ({ is, should }) => expect(is).toBeCloseTo(should, 9));

  test('is no wider than its flange, which carries the lugs on the bed', () => {
    for (const barrelDiameter of [20, 40, 80, 120])
      for (const grip of [12, 60]) {
        const { greatestRadius, flangeDiameter } = sizeLensClamp({ ...given, barrelDiameter, grip });
        expect(greatestRadius).toBeCloseTo(flangeDiameter / 2, 9);
      }
  });

  test('has the mass of PETG', () => {
    const density = (clamp.massKg * 1000) / (clamp.volume / 1000); // g/cm³
    expect(density).toBeGreaterThanOrEqual(1.25); // M8.08 [verified: R64 to R66]
    expect(density).toBeLessThanOrEqual(1.29);
  });
});

describe('captive M4 nuts', () => {
  const nut = clamp.fasteners.flangeNuts;
  const size = (path: typeof nut.outline) => {
    const { left, right, bottom, top } = boundsOf(path);
    return { across: right - left, corners: top - bottom };
  };

  test('holes are ISO 273 medium', () => {
    expect(clamp.screwHole).toBe(4.5); // M3.02 [verified: R14]
    for (const hole of nut.holes) expect(boundsOf(hole).right - boundsOf(hole).left).toBeCloseTo(4.5, 9);
  });

  test('a nut of the greatest size of ISO 4032 goes in, with its corners', () => {
    expect(size(nut.outline).across).toBeCloseTo(7, 9); // M3.04 [verified: R15, R16]
    expect(nut.thickness).toBe(3.2); // M3.05 [verified: R15, R16]
    expect(size(nut.outline).corners).toBeCloseTo(8.0829, 4); // M3.08 [common practice, no source]
    expect(clamp.pocket.acrossFlats).toBeGreaterThan(7);
    expect(clamp.pocket.depth).toBeGreaterThan(3.2);
  });

  test('sinks wholly into the flange and leaves 3 or more under it', () =>
    expect(clamp.flangeThickness - clamp.pocket.depth).toBeGreaterThanOrEqual(3));
});

describe('screws of the flange', () => {
  test.each([3, 4, 5, 6])('%d stand clear of the lugs, with their nuts, whatever the barrel', (screws) => {
    for (const barrelDiameter of [20, 58, 120]) {
      const sized = sizeLensClamp({ ...given, barrelDiameter, screws });
      const nutRadius = sized.pocket.acrossFlats / Math.sqrt(3);
      const places = screwPlaces(sized);
      expect(places).toHaveLength(screws);
      for (const { x, y } of places) {
        expect(Math.abs(y) - nutRadius).toBeGreaterThan(sized.lug.width / 2);
        expect(Math.sqrt(x * x + y * y)).toBeCloseTo(sized.boltCircle / 2, 9);
      }
      places.forEach((a, i) => {
        for (const b of places.slice(i + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(3 * 4.5); // hole to hole at least 3 d
      });
    }
  });

  test.each([3, 4, 5, 6])('the pattern of %d is its own mirror image, left for right', (screws) => {
    const rounded = (angles: readonly number[]) =>
      angles.map((angle) =>
        `${Math.cos(angle).toFixed(6)} ${Math.sin(angle).toFixed(6)}`.replace('-0.000000', '0.000000'),
      );
    const mirrored = screwAngles(screws).map((angle) => Math.PI - angle);
    expect(rounded(mirrored).sort()).toEqual(rounded(screwAngles(screws)).sort());
  });

  test('reach from the front of the board through the nut', () => {
    const { length, at } = clamp.fasteners.flangeScrews;
    const start = apply(at[0] ?? [], { x: 0, y: 0, z: 0 }).z;
    const nutTop = clamp.flangeThickness - clamp.pocket.depth + 3.2;
    expect(start).toBeCloseTo(-8.1, 9); // board and plug, a ply each
    expect(start + length).toBeGreaterThanOrEqual(nutTop);
    expect(start + length).toBeLessThan(nutTop + 5);
  });
});

describe('how tight a clamp is', () => {
  test.each([
    { torqueNm: 1, torqueFactor: 0.2, diameter: 4, preload: 1250 }, // M3.20 [common practice, no source]
    { torqueNm: 1, torqueFactor: 0.15, diameter: 4, preload: 1666.7 }, // M3.20 [common practice, no source]
    { torqueNm: 20, torqueFactor: 0.2, diameter: 6, preload: 16666.7 }, // M3.21 [verified: R24 data]
    { torqueNm: 82.142, torqueFactor: 0.2, diameter: 12, preload: 34225.8 }, // M3.17 [verified: R23]
  ])('a bolt of $diameter at $torqueNm N m pulls $preload N', ({ preload, ...tightening }) =>
    expect(boltPreload(tightening)).toBeCloseTo(preload, 1),
  );

  test('a thin ring of one M6 bolt at 20 N m holds 20 944 N along its axis', () => {
    const preloadN = boltPreload({ torqueNm: 20, torqueFactor: 0.2, diameter: 6 });
    expect(ringHold({ friction: 0.2, bolts: 1, preloadN })).toBeCloseTo(20943.95, 2); // M3.22 [verified: R24b for the limit]
  });

  test('a lens of 640 g weighs 6.276 N against the tenth that creep leaves of two M4 bolts at 0.3 N m', () => {
    const { forceN, ratio } = gripOf({ lensMassKg: 0.64 });
    expect(forceN).toBeCloseTo(47.12, 2); // 2π · 0.2 · 375 N · 0.1 [common practice, no source]
    expect(forceN / ratio).toBeCloseTo(6.276, 3); // M3.23 [common practice, no source]
  });
});

describe('where the clamp stands', () => {
  const at = (side: 'inside' | 'front', seat: number, z: number) =>
    apply(placeLensClamp({ side, length: 22 }, seat), { x: 3, y: 5, z });

  test('inside: the flange on the seat, the collar towards the film', () => {
    expect(at('inside', 4.05, 0)).toEqual({ x: 3, y: 5, z: 4.05 });
    expect(at('inside', 4.05, 22).z).toBeCloseTo(26.05, 9);
  });

  test('in front: the flange on the board at -2t, the collar forward to the seat at -2t - length', () => {
    const seat = -8.1 - 22;
    expect(at('front', seat, 0)).toMatchObject({ x: -3, y: 5 });
    expect(at('front', seat, 0).z).toBeCloseTo(-8.1, 9);
    expect(at('front', seat, 22).z).toBeCloseTo(seat, 9);
  });

  test('both are rigid motions: no mirror image', () => {
    for (const side of ['inside', 'front'] as const) {
      const [a = 0, b = 0, c = 0, , d = 0, e = 0, f = 0, , g = 0, h = 0, i = 0] = placeLensClamp(
        { side, length: 22 },
        7,
      );
      expect(a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)).toBe(1);
    }
  });
});

test('a grip too short for the pinch bolts is told, and the clamp is as long as they need', () => {
  const short = sizeLensClamp({ ...given, grip: 8 });
  expect(short.grip).toBe(8);
  expect(short.length).toBe(short.leastGrip);
  // flange of web and nut, then a pocket corner to corner with solid over and under it
  expect(short.leastGrip).toBeGreaterThan(3 + 3.2 + 8.0829);
});
