import { describe, expect, test } from 'vitest';
import {
  angleOfRepose,
  cantileverSag,
  cantileverTilt,
  centreOfGravity,
  crossBandedModulus,
  overhangBend,
  ownWeightSag,
  plateSag,
  plateStiffness,
  pushNeeded,
  rackingLeast,
  rackingRatio,
  rootStress,
  secondMoment,
  sectionModulus,
  spanSag,
  supportLoads,
  tippingAngle,
  tippingLine,
  tippingPush,
  yaw,
  yawInGuide,
} from '../../src/assembly/statics.js';

const G = 9.80665;
const DEGREE = Math.PI / 180;

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

/** Rows marked "exact" may differ by floating point only. */
const exactly = (value: number, expected: number) => within(value, expected, 1e-9 * Math.max(1, Math.abs(expected)));

const on = (z: number) => ({ x: 0, y: 0, z });

describe('the centre of gravity', () => {
  const front = [
    { massKg: 1.2, at: on(150) },
    { massKg: 0.64, at: on(-20) },
    { massKg: 0.9, at: on(60) },
  ];
  const rear = (slid: number) => [
    { massKg: 1.1, at: on(260 + slid) },
    { massKg: 0.55, at: on(285 + slid) },
  ];

  test('of a camera closed and drawn out', () => {
    // M5.08, M5.09 [common practice, no source], 1e-4
    const closed = centreOfGravity([...front, ...rear(0)]);
    exactly(closed.massKg, 4.39);
    within(closed.at.z, 151.2415, 1e-4);
    const drawn = centreOfGravity([...front, ...rear(120)]);
    within(drawn.at.z, 196.344, 1e-4);
    within(drawn.at.z - closed.at.z, 45.1025, 1e-4);
  });

  test('of groups is that of their parts', () => {
    // a mean of means [common practice, no source]; floating point only
    const apart = centreOfGravity([centreOfGravity(front), centreOfGravity(rear(50)), centreOfGravity([])]);
    const whole = centreOfGravity([...front, ...rear(50)]);
    exactly(apart.massKg, whole.massKg);
    exactly(apart.at.z, whole.at.z);
  });

  test('lies away from a hole', () => {
    // M5.07 [common practice, no source], 1e-4: plate 200 x 150 with a hole of 80 at (120, 75); area for mass
    const { massKg, at } = centreOfGravity([
      { massKg: 200 * 150, at: { x: 100, y: 75, z: 0 } },
      { massKg: -Math.PI * 40 * 40, at: { x: 120, y: 75, z: 0 } },
    ]);
    within(massKg, 24973.452, 5e-4); // as printed, to half of its last digit
    within(at.x, 95.9745, 1e-4);
    exactly(at.y, 75);
  });

  test('of a square with half discs put on and taken off', () => {
    // M5.05 [verified: R43 data], 1e-3; centroid of a half disc 4r/3π
    const half = (r: number) => (Math.PI * r * r) / 2;
    const { massKg, at } = centreOfGravity([
      { massKg: 200 * 200, at: { x: 100, y: 100, z: 0 } },
      { massKg: half(100), at: { x: 200 + 400 / (3 * Math.PI), y: 100, z: 0 } },
      { massKg: -half(60), at: { x: 100, y: 240 / (3 * Math.PI), z: 0 } },
    ]);
    within(massKg, 50053.1, 5e-3);
    within(at.x, 144.702, 1e-3);
    within(at.y, 108.421, 1e-3);
  });

  test('of two uprights with a third across the top', () => {
    // M5.06 [verified: R44 data; value recomputed], exact: (4h + b)/6
    const { at } = centreOfGravity([
      { massKg: 2700, at: { x: 0, y: 45, z: 0 } },
      { massKg: 2700, at: { x: 60, y: 45, z: 0 } },
      { massKg: 2700, at: { x: 30, y: 105, z: 0 } },
    ]);
    exactly(at.y, 65);
  });
});

describe('sections', () => {
  test.each([
    { h: 9.2, I: 12978.133 },
    { h: 12, I: 28800 },
    { h: 18.4, I: 103825.067 }, // M4.09 [common practice, no source], 1e-3
  ])('200 x $h: $I mm⁴', ({ h, I }) => within(secondMoment(200, h), I, 1e-3));
});

describe('the modulus of plywood', () => {
  /** Veneers of 1.4, faces sanded to 1.1: M4.05, 1.4 [verified: R25]. */
  const layUp = (plies: number) => [1.1, ...Array.from({ length: plies - 2 }, () => 1.4), 1.1];
  const modulus = (plies: readonly number[], span: 'along' | 'across') =>
    crossBandedModulus({ plies, veneerModulus: 17500, span });

  test.each([
    { plies: 3, t: 3.6, along: 16471, across: 1029 },
    { plies: 5, t: 6.4, along: 12737, across: 4763 },
    { plies: 7, t: 9.2, along: 11395, across: 6105 },
    { plies: 9, t: 12, along: 10719, across: 6781 },
    { plies: 11, t: 14.8, along: 10316, across: 7184 },
    { plies: 13, t: 17.6, along: 10048, across: 7452 },
    { plies: 15, t: 20.4, along: 9858, across: 7642 },
    // M4.05, 1 N/mm² [from memory: Handbook of Finnish Plywood table]
  ])('$plies plies: $along along, $across across', ({ plies, t, along, across }) => {
    exactly(
      layUp(plies).reduce((sum, ply) => sum + ply, 0),
      t,
    );
    within(modulus(layUp(plies), 'along'), along, 1);
    within(modulus(layUp(plies), 'across'), across, 1);
  });

  test.each([[layUp(3)], [layUp(8)], [[1, 2, 0.5, 3]], [[4]]])('along and across add up: %j', (plies) => {
    // M4.06 [common practice, no source] identity, exact
    exactly(modulus(plies, 'along') + modulus(plies, 'across'), 17500);
  });

  test('three equal plies are 26 times as limp across', () => {
    // M4.08 [common practice, no source], exact
    exactly(modulus([1, 1, 1], 'along') / 17500, 26 / 27);
    exactly(modulus([1, 1, 1], 'across') / 17500, 1 / 27);
  });
});

describe('a board that runs out over its support', () => {
  const load = 3 * G;
  const board = secondMoment(200, 9.2);

  test('sags and tilts under 3 kg at 250', () => {
    // M4.10, 1e-5; formula [verified: R36]; number computed
    within(cantileverSag(load, 250, 11395, board), 1.03613, 1e-5);
    within(cantileverTilt(load, 250, 11395, board), 0.00621678, 1e-8);
    within(cantileverTilt(load, 250, 11395, board) / DEGREE, 0.3562, 1e-5);
  });

  test('the tilt moves a lens 150 above it along the axis', () => {
    // M4.11 [common practice, no source], 1e-5
    within(cantileverTilt(load, 250, 11395, board) * 150, 0.93252, 1e-5);
  });

  test('sags nearly twice as much with the face grain across', () => {
    // M4.12 [common practice, no source], 1e-5
    within(cantileverSag(load, 250, 6105, board), 1.93394, 1e-5);
    within(cantileverSag(load, 250, 6105, board) / cantileverSag(load, 250, 11395, board), 1.8665, 1e-5);
  });

  test('doubled and glued is four times as stiff as doubled and loose', () => {
    // M4.13, 1e-6; factor 4 [verified: R37]; numbers computed
    within(cantileverSag(load, 250, 11395, secondMoment(200, 18.4)), 0.129516, 1e-6);
    within(cantileverSag(load, 250, 11395, 2 * board), 0.518065, 1e-6);
  });

  test('over two supports sags more than its overhang alone', () => {
    // M4.14, 1e-5; formula [verified: R35]; numbers computed. A cantilever of 200 would say 0.530
    const bent = overhangBend({ load, span: 300, overhang: 200, E: 11395, I: board });
    within(bent.tip, 1.32625, 1e-5);
    within(bent.rise, 0.229713, 1e-6);
    within(bent.riseAt, 173.205, 5e-4);
    within(bent.slope, 0.00795748, 1e-8);
    within(cantileverSag(load, 200, 11395, board), 0.53, 5e-4);
  });

  test('sags under its own weight', () => {
    // M4.15, 1e-6; formula [verified: R38, w L^4/(8EI)]
    const weight = (200 * 9.2 * 680 * G) / 1e9;
    within(weight, 0.0122701, 5e-8);
    within(ownWeightSag(weight, 400, 11395, board), 0.265504, 1e-6);
  });

  test('is far from breaking', () => {
    // M4.16 [common practice, no source], 1e-5; 45.6 is the strength of M4.07
    const stress = rootStress(load, 250, sectionModulus(200, 9.2));
    within(stress, 2.60692, 1e-5);
    within(45.6 / stress, 17.49, 5e-3);
  });
});

describe('beams of other books', () => {
  test('a fir cantilever of 1 m under 15 kN/m needs 28 846 153.8 mm⁴ to sag by 5', () => {
    // M4.17 [verified: R38 data], 0.1 mm⁴ of it
    within(ownWeightSag(15, 1000, 13000, 28846153.8), 5, (5 * 0.1) / 28846153.8);
  });

  test('steel over 6 m under 18 kN in the middle', () => {
    // M4.18 [verified: R39 data], 1e-5
    within(spanSag(18000, 6000, 200000, 85e6), 4.76471, 1e-5);
  });

  test('a steel cantilever of 2 m under 10 kN', () => {
    // M4.19 [verified: R39b data; E assumed here], exact
    exactly(cantileverSag(10000, 2000, 200000, secondMoment(100, 50)), 128);
  });

  test('a strip of measured sheet under 10 N', () => {
    // M4.20 [common practice, no source], 1e-6
    within(spanSag(10, 200, 12737, secondMoment(100, 4.05)), 0.236373, 1e-6);
  });
});

describe('a square plate under an even load', () => {
  // M4.21, 1 %: alpha [from memory: Timoshenko, plates]; the first re-summed there
  const stiffness = plateStiffness(8750, 6.4);
  test('its stiffness', () => within(stiffness, 210051.28, 5e-3));
  test.each([
    { edges: 'free', sag: 0.19241 },
    { edges: 'clamped', sag: 0.05971 },
  ] as const)('its edges $edges: $sag', ({ edges, sag }) =>
    within(plateSag(0.00622156, 200, stiffness, edges), sag, 0.01 * sag),
  );
});

describe('the slope on which a thing begins to slide', () => {
  test.each([
    { friction: 0.5, degrees: 26.565 },
    { friction: 0.3, degrees: 16.699 },
    { friction: 0.25, degrees: 14.036 }, // M4.24 [verified: R31 method], 1e-3
  ])('friction $friction: $degrees°', ({ friction, degrees }) =>
    within(angleOfRepose(friction) / DEGREE, degrees, 1e-3),
  );
});

describe('a slide pushed off its axis', () => {
  test('a bracket on a pipe grips from 12 in on', () => {
    // M4.25 [verified: R34], exact: contacts 6 apart, friction 0.25; the pipe's 3 in drop out
    exactly(rackingLeast(0.25, 12), 6);
    exactly(rackingRatio(6, 0.25, 12), 1);
  });

  test.each([
    { friction: 0.5, offAxis: 100, length: 100 },
    { friction: 0.3, offAxis: 100, length: 60 }, // M4.26 [common practice, no source], a drawer of 200 pulled at its edge
    { friction: 0.3, offAxis: 200, length: 120 },
    { friction: 0.5, offAxis: 120, length: 120 }, // M4.27 as M4.26
    { friction: 0.25, offAxis: 2, length: 1 }, // M4.29 [from memory: linear-bearing handbooks, the 2:1 rule]
  ])('friction $friction, $offAxis off the axis: jams at $length', ({ friction, offAxis, length }) => {
    exactly(rackingLeast(friction, offAxis), length);
    exactly(rackingRatio(length, friction, offAxis), 1);
  });

  test.each([
    { offAxis: 100, push: 10 },
    { offAxis: 40, push: 6.25 }, // M4.28 [common practice, no source], exact
  ])('a drag of 5 N, pushed $offAxis off the axis, takes $push N', ({ offAxis, push }) =>
    exactly(pushNeeded(5, 120, 0.3, offAxis), push),
  );

  test.each([200, 250])(
    'no push is enough %d off the axis',
    (offAxis) => expect(pushNeeded(5, 120, 0.3, offAxis)).toBe(Number.POSITIVE_INFINITY), // M4.28: infinite at 200
  );
});

describe('a slide askew in its guide', () => {
  test.each([
    { length: 120, exact: 0.00418125, small: 0.0041667, degrees: 0.239568, atFilm: 0.53102 },
    { length: 60, exact: 0.484293 * DEGREE, small: 0.0083333, degrees: 0.484293, atFilm: 1.07346 },
    // M4.30 1e-6, M4.31 at 127 from the axis 1e-4 [common practice, no source]; small-angle to its printed digits
  ])('play 0.25 in a guide of 200 by $length', ({ length, exact, small, degrees, atFilm }) => {
    const q = yawInGuide({ width: 200, length, play: 0.25 });
    within(q, exact, 1e-6);
    within(q / DEGREE, degrees, 1e-6);
    within(yaw(0.25, length), small, 5e-8);
    within(127 * q, atFilm, 1e-4);
    within(200 * Math.cos(q) + length * Math.sin(q), 200.5, 1e-12); // the equation itself, section 0 of the checks
  });

  test('without play there is no yaw', () => expect(yawInGuide({ width: 200, length: 120, play: 0 })).toBe(0));

  test('too short a tongue turns right round', () => {
    // plane geometry [common practice, no source]: 60 by 10 has a diagonal of 60.83, less than the guide's 61
    expect(yawInGuide({ width: 60, length: 10, play: 0.5 })).toBe(Number.POSITIVE_INFINITY);
    expect(yawInGuide({ width: 60, length: 12, play: 0.5 })).toBeLessThan(Math.PI / 2);
  });
});

describe('standing', () => {
  test.each([
    // M5.03 [verified: R41], g 9.8, exact
    { kg: 1800, g: 9.8, span: 1800, at: 1050, first: 3675, second: 5145, tolerance: 1e-6 },
    // M5.04 [verified: R42], g 9.81, half of the last digit
    { kg: 961, g: 9.81, span: 3270, at: 615, first: 3827.18, second: 886.52, tolerance: 5e-3 },
  ])('a car of $kg kg: $first N on each front wheel, $second N on each rear one', (row) => {
    const [first, second] = supportLoads(row.kg * row.g, row.span, row.at);
    within(first / 2, row.first, row.tolerance);
    within(second / 2, row.second, row.tolerance);
  });

  test('a block pushed with 60 lb at 60 in neither slides nor tips', () => {
    // M5.01 [verified: R40]: 250 lb, 32 wide, friction 0.3: slides at 75 lb, tips above 66.67 in, half of the last digit
    expect(60).toBeLessThan(0.3 * 250);
    expect(60).toBeLessThan(tippingPush(250, 16, 60));
    within(tippingPush(250, 16, 66.67), 60, 5e-3);
  });

  test('the same block pushed at 66 in tips before it slides', () => {
    // M5.02 [verified: R40b]; value computed, 1e-3; it would slide at 0.4 x 250
    within(tippingPush(250, 16, 66), 60.606, 1e-3);
    expect(tippingPush(250, 16, 66)).toBeLessThan(0.4 * 250);
  });

  test('a tripod tips over a line at half the radius of its feet', () => {
    // M5.10 [common practice, no source], exact
    exactly(tippingLine(400), 200);
    exactly(tippingLine(400, 4), 400 / Math.SQRT2); // a square of feet, plane geometry
  });

  test('a camera 1300 above that floor', () => {
    // M5.11 [common practice, no source], 1e-4
    within(tippingAngle(200, 1300) / DEGREE, 8.7462, 1e-4);
    within(tippingPush(5 * G, 200, 1300), 7.5436, 1e-4);
  });
});
