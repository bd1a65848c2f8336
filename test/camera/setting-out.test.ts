import { describe, expect, test } from 'vitest';
import { type Figure, keyed } from '../../src/camera/figure.js';
import {
  type SettingOutGiven as Given,
  type LensClaims,
  setOut as rodOf,
  type SettingOut,
} from '../../src/camera/setting-out.js';

/** What the rod is given as plain numbers, each a key of its own name. */
type Plain<T> = T extends Figure ? number : T extends string | null ? T : { readonly [K in keyof T]: Plain<T[K]> };
type SettingOutGiven = Plain<Given>;

const setOut = (given: SettingOutGiven): SettingOut => rodOf(figured(given, 'given') as Given);

function figured(node: unknown, name: string): unknown {
  if (typeof node === 'number') return keyed(name, name, name, node);
  if (Array.isArray(node)) return node.map((own) => figured(own, name));
  if (typeof node !== 'object' || node === null) return node;
  return Object.fromEntries(Object.entries(node).map(([key, own]) => [key, figured(own, key)]));
}

/*
 * The two cameras worked out by hand in the project's description of the camera, section 17, here from their bare
 * figures: what a lens claims is reckoned beside it from sections 2, 3 and 10, not by the program's lens board. Printed
 * figures must agree to the last digit printed; sums that are not printed there stand beside their rows.
 */

/** Half a step of the last printed digit, and the last bits of the arithmetic. */
function toTheDigit(value: number, printed: string): void {
  const digits = printed.includes('.') ? printed.length - printed.indexOf('.') - 1 : 0;
  expect(Math.abs(value - Number(printed)), `${value} where ${printed} is printed`).toBeLessThanOrEqual(
    0.5 * 10 ** -digits + 1e-9,
  );
}

/** Bore 58.2, collar 74.2, bolt circle 88.2, flange 100.2; opening 104.2, board 132.2; grip 22 and rear 31 behind the seat. */
const clamped: LensClaims = { seat: 0, radiusBehindPanel: 50.1, reachBehindPanel: 53, board: 132.2 };

const heron: SettingOutGiven = {
  ply: 4.05,
  clearance: 1.5,
  railPlay: 0.25,
  focalLength: 210,
  flangeDistance: 203.5,
  nearest: 1 / 2.5,
  farthestFocus: 0,
  pastInfinity: 4,
  pastNearest: null,
  lens: clamped,
  // two plies and the collar of 22 ahead of the panel: −8.1 − 22; what is left behind it is the rear rim of 52
  otherSide: { seat: -30.1, radiusBehindPanel: 26, reachBehindPanel: 22.9, board: 132.2 },
  imageLong: 171.4,
  depths: [
    { of: 'paper holder', depth: 5.8 },
    { of: 'processing holder', depth: 24 },
  ],
  glassDepth: 5.8,
  holderWidth: 156,
  closedExtent: 105.7, // 171.4/2 + 20
};

const bittern: SettingOutGiven = {
  ...heron,
  ply: 5.9,
  focalLength: 240,
  flangeDistance: 226,
  nearest: 1 / 3,
  pastInfinity: 5,
  lens: { seat: 0, radiusBehindPanel: 50, reachBehindPanel: 44, board: 132 },
  // two plies ahead of the panel
  otherSide: { seat: -11.8, radiusBehindPanel: 38, reachBehindPanel: 32.2, board: 132 },
  imageLong: 247.6,
  depths: [
    { of: 'film holder', depth: 6.5 },
    { of: 'processing holder', depth: 27 },
  ],
  glassDepth: 6.5,
  holderWidth: 242,
  closedExtent: 143.8, // 247.6/2 + 20
};

describe.each([
  {
    name: 'Heron, 5x7',
    given: heron,
    seat: ['175.5', '281.7', '106.2'],
    boxes: ['188.15', '196.25', '199.25', '207.35'],
    lengths: ['165.4', '161.35', '53.15', '39.25'],
    reach: { own: '2.15', wide: '4.3', front: '3.1' },
    back: ['232.25', '138.8', '359', '163', '10.5'],
    tooWide: 91.1, // 188.15/2 − 3 = 91.075 would just pass
  },
  {
    name: 'Bittern, 8x10',
    given: bittern,
    seat: ['194.0', '299.5', '105.5'],
    boxes: ['269.9', '281.7', '284.7', '296.5'],
    lengths: ['180.2', '174.3', '66.8', '56.3'],
    reach: { own: '2.65', wide: '4.6', front: '3.05' },
    back: ['317.7', '187.1', '373', '248', '10.5'],
    tooWide: 132, // 269.9/2 − 3 = 131.95 would just pass
  },
])('$name', ({ given, seat, boxes, lengths, reach, back, tooWide }) => {
  const all = (values: readonly number[], printed: readonly string[]) =>
    printed.forEach((digits, i) => {
      toTheDigit(values[i] ?? Number.NaN, digits);
    });

  test('holder seat: closest, farthest, travel', () => {
    const { closest, farthest, travel } = setOut(given);
    all([closest.value, farthest.value, travel], seat);
  });

  test('boxes, inside and outside', () => {
    const { rearInside, rearOutside, frontInside, frontOutside } = setOut(given);
    all([rearInside.value, rearOutside.value, frontInside.value, frontOutside.value], boxes);
  });

  test('boxes along the axis, overlap at full draw, overlap wanted', () => {
    const { frontLength, rearLength, overlapFarthest, overlapRequired } = setOut(given);
    all([frontLength.value, rearLength.value, overlapFarthest, overlapRequired.value], lengths);
  });

  test('back, axis, tailboard, sole, reserve', () => {
    const { backSide, axisHeight, tailboardLength, soleWidth, reserve } = setOut(given);
    all([backSide.value, axisHeight.value, tailboardLength.value, soleWidth.value, reserve], back);
  });

  test('how near it comes; were the lens too wide for the rear box; mounted from the other side', () => {
    const own = setOut(given);
    const wide = setOut({ ...given, lens: { ...given.lens, radiusBehindPanel: tooWide } });
    expect([own.passesInsideRearBox, wide.passesInsideRearBox]).toEqual([true, false]);
    toTheDigit(1 / own.reachable, reach.own);
    toTheDigit(1 / wide.reachable, reach.wide);
    toTheDigit(1 / own.reachableOtherSide, reach.front);
  });

  test('the three inequalities of the slide hold, the first two as equalities', () => {
    // section 7: clears the panel by d_f, the front box's rear edge by g_b, overlap at full draw
    const rod = setOut(given);
    const standardFront = rod.closest.value - rod.stackBehindBoxes.value;
    expect(standardFront - rod.rearLength.value).toBeCloseTo(rod.panelDead.value, 9);
    expect(standardFront - rod.frontLength.value).toBeCloseTo(rod.backGap, 9);
    expect(rod.overlapFarthest).toBeGreaterThanOrEqual(rod.overlapRequired.value);
  });
});

/** A camera in round figures: what it comes to stands beside each row, from the formulas of sections 6 to 9. */
const round: SettingOutGiven = {
  ply: 4,
  clearance: 1.5,
  railPlay: 0.25,
  focalLength: 150,
  flangeDistance: 140,
  nearest: 1 / 4,
  farthestFocus: 0,
  pastInfinity: 4,
  pastNearest: null,
  lens: { seat: 0, radiusBehindPanel: 30, reachBehindPanel: 40, board: 100 },
  otherSide: { seat: -8, radiusBehindPanel: 30, reachBehindPanel: 32, board: 100 },
  imageLong: 120,
  depths: [{ of: 'holder', depth: 10 }],
  glassDepth: 10,
  holderWidth: 100,
  closedExtent: 70,
};

const wideLens = { ...round.lens, radiusBehindPanel: 66 };

describe('the longest claim governs, and is named', () => {
  const lengths = ['rearInside', 'overlapRequired', 'panelDead', 'backSide', 'axisHeight'] as const;
  test.each<{
    length: (typeof lengths)[number];
    change: Partial<SettingOutGiven>;
    value: number;
    because: string;
  }>([
    // 120 + 2 (2 + 0.3 + 6)
    { length: 'rearInside', change: {}, value: 136.6, because: 'long side of the image' },
    // 160 + 28.6 − 4·4 − 2·1.5
    { length: 'rearInside', change: { lens: { ...round.lens, board: 160 } }, value: 169.6, because: 'lens board' },
    // 2·15 + 5, while (136.6 + 8)/5 = 28.92
    { length: 'overlapRequired', change: {}, value: 35, because: 'felt bands' },
    // (200 + 16.6 + 8)/5
    { length: 'overlapRequired', change: { imageLong: 200 }, value: 44.92, because: 'wobble' },
    // t + 2
    { length: 'panelDead', change: {}, value: 6, because: 'passes inside' },
    // 40 + 2: 66 + 3 is more than 136.6/2
    { length: 'panelDead', change: { lens: wideLens }, value: 42, because: 'too wide' },
    // the same with nothing behind the panel: t + 2
    { length: 'panelDead', change: { lens: { ...wideLens, reachBehindPanel: 0 } }, value: 6, because: 'corner strips' },
    // 144.6 + 2·18
    { length: 'backSide', change: {}, value: 180.6, because: 'light trap' },
    // 2 (90 + 0.4 + 10)
    { length: 'backSide', change: { closedExtent: 90 }, value: 200.8, because: 'closed end' },
    // 150 + 63.2
    { length: 'backSide', change: { holderWidth: 150 }, value: 213.2, because: 'turn-buttons' },
    // W_fo = 136.6 + 8 + 3 + 8 = 155.6: 77.8 + 25 + 8 + 2, while 90.3 + 8 + 4 + 3.3 = 105.6
    { length: 'axisHeight', change: {}, value: 112.8, because: 'ribs' },
    // 213.2/2 + 8 + 4 + 3.3
    { length: 'axisHeight', change: { holderWidth: 150 }, value: 121.9, because: 'keepers' },
  ])('$length $value: $because', ({ length, change, value, because }) => {
    const claimed = setOut({ ...round, ...change })[length];
    expect(claimed.value).toBeCloseTo(value, 9);
    expect(claimed.because).toContain(because);
  });

  test('least overlap, felt, a fifth of the width: all three stay on record', () =>
    expect(setOut(round).overlapRequired.claims.map(({ value }) => Math.round(value * 100) / 100)).toEqual([
      30, 35, 28.92,
    ]));

  test('what follows from another length says from which', () => {
    const rod = setOut(round);
    expect(rod.rearOutside.because).toContain('rear box inside');
    expect(rod.frontInside.because).toContain('clearance');
    expect(rod.frontOutside.because).toContain('front box inside');
    expect(rod.stackBehindBoxes.because).toContain('standard and the back plate');
    expect(rod.rearLength.because).toContain('free depth behind the panel');
    expect(rod.frontLength.because).toContain('gap to the standard');
    expect(rod.soleWidth.because).toContain('rails');
    expect(rod.tailboardLength.because).toContain('end stop');
  });

  test('every claim on every length has a reason of its own', () => {
    for (const rod of [setOut(round), setOut({ ...round, lens: wideLens })])
      for (const length of Object.values(rod)) {
        if (typeof length !== 'object' || length === null || !('claims' in length)) continue;
        const reasons = length.claims.map(({ because }: { readonly because: string }) => because);
        for (const reason of reasons) expect(reason).toMatch(/\w+ \w+/);
        expect(new Set(reasons).size).toBe(reasons.length);
      }
  });

  test('the overlap that limits the reach is named', () => {
    expect(setOut(round).limitedBy).toContain('felt bands');
    expect(setOut({ ...round, imageLong: 200 }).limitedBy).toContain('wobble');
  });

  test('the ring is one and a half plies wide, and 6 at least', () => {
    // section 6: r = max(6, 1.5 t)
    expect(setOut({ ...round, ply: 6 }).ringWidth).toBe(9);
    expect(setOut({ ...round, ply: 3 }).ringWidth).toBe(6);
  });

  test('a lens that just leaves 3 of air all round passes inside the rear box', () => {
    // board 127 and 28.6 − 4·4 − 2·1.8 of retainers: 136 inside, so a radius of 65
    const given = { ...round, clearance: 1.8, imageLong: 100, lens: { ...round.lens, board: 127 } };
    const rod = (radiusBehindPanel: number) => setOut({ ...given, lens: { ...given.lens, radiusBehindPanel } });
    expect(rod(65).rearInside.value).toBe(136);
    expect(rod(65).passesInsideRearBox).toBe(true);
    expect(rod(65.001).passesInsideRearBox).toBe(false);
    // and with it 36 are lost, from t + 2 to 40 + 2
    expect((rod(65).reachable - rod(65.001).reachable) * 150).toBeCloseTo(36, 9);
  });

  test('what is the same for every camera is on the rod as well', () =>
    expect(setOut(round)).toMatchObject({
      ply: 4,
      clearance: 1.5,
      pastInfinity: 4,
      openingMargin: 2, // g
      ringSlip: 0.3, // e
      backGap: 2, // g_b
      soleThickness: 8, // t_s = 2t
      tailboardStart: -20,
    }));
});

describe('the slide', () => {
  test.each([
    // 140 − 4 − 10 and 140 + 37.5 − 10
    { name: 'one holder', change: {}, closest: 126, farthest: 167.5, by: ['holder', 'holder'] },
    // the glass alone: the same
    { name: 'no holder', change: { depths: [] }, closest: 126, farthest: 167.5, by: ['bare glass', 'bare glass'] },
    // 140 − 4 − 30 and 140 + 37.5 − 6: the deepest holds the closest end, the shallowest the farthest
    {
      name: 'three holders',
      change: {
        depths: [
          { of: 'paper holder', depth: 12 },
          { of: 'tank', depth: 30 },
          { of: 'plate holder', depth: 6 },
        ],
      },
      closest: 106,
      farthest: 171.5,
      by: ['tank', 'plate holder'],
    },
    // 140 + 37.5 − 5
    { name: 'a shallow glass', change: { glassDepth: 5 }, closest: 126, farthest: 172.5, by: ['holder', 'bare glass'] },
    // 140 − 4 − 15
    { name: 'a deep glass', change: { glassDepth: 15 }, closest: 121, farthest: 167.5, by: ['bare glass', 'holder'] },
  ])('$name: from $closest to $farthest', ({ change, closest, farthest, by }) => {
    const rod = setOut({ ...round, ...change });
    expect([rod.closest.value, rod.farthest.value, rod.travel]).toEqual([closest, farthest, farthest - closest]);
    expect(rod.closest.because).toContain(`infinity with ${by[0] === 'bare glass' ? 'the bare glass' : by[0]}`);
    expect(rod.farthest.because).toContain(`nearest focus with ${by[1] === 'bare glass' ? 'the bare glass' : by[1]}`);
  });

  test('where no infinity is asked, it begins at the farthest focus', () => {
    // section 19, the version for portraits: s_min from m_far, 140 + 15 − 4 − 10
    const { closest } = setOut({ ...round, farthestFocus: 0.1 });
    expect(closest.value).toBeCloseTo(141, 9);
    expect(closest.because).toContain('the farthest focus with holder');
  });

  test('reach and what is over', () => {
    // 140 − 2·4 − 2·10 + 10 − 8 − 6 − 2 − 35 = 71 of extension; less 37.5
    const rod = setOut(round);
    expect(rod.reachable * 150).toBeCloseTo(71, 9);
    expect(rod.slack).toBeCloseTo(33.5, 9);
    // the seat eight farther ahead
    expect(rod.reachableOtherSide * 150).toBeCloseTo(63, 9);
  });

  test.each<{ name: string; change: Partial<SettingOutGiven>; reserve: number }>([
    { name: 'a twentieth of the focal length', change: {}, reserve: 7.5 },
    { name: 'no more than is over', change: { nearest: 0.46 }, reserve: 2 }, // 71 − 69
    { name: 'none where nothing is over', change: { nearest: 0.5 }, reserve: 0 }, // 71 − 75
    { name: 'as much as is asked', change: { pastNearest: 3 }, reserve: 3 },
    { name: 'none where none is asked', change: { pastNearest: 0 }, reserve: 0 },
  ])('run past the nearest: $name', ({ change, reserve }) =>
    // p_n = max(0, min(slack, 0.05 f))
    expect(setOut({ ...round, ...change }).reserve).toBeCloseTo(reserve, 9),
  );

  test.each<{ name: string; given: SettingOutGiven }>([
    { name: 'Heron', given: heron },
    { name: 'Bittern', given: bittern },
    { name: 'one without infinity', given: { ...round, farthestFocus: 0.1 } },
    { name: 'one whose lens is too wide for the rear box', given: { ...round, lens: wideLens } },
  ])('at the nearest that it reaches, $name has just the overlap it needs', ({ given }) => {
    // inequality 3 of section 7 as an equality, from the boxes as they are cut
    const rod = setOut({ ...given, nearest: setOut(given).reachable });
    expect(rod.overlapFarthest).toBeCloseTo(rod.overlapRequired.value, 9);
    expect(rod.slack).toBeCloseTo(0, 9);
  });

  test('foot and tailboard', () => {
    const rod = setOut(round);
    expect(rod.soleWidth.value).toBeCloseTo(111.1, 9); // 147.6 − 2 (16 + 2 + 0.25)
    // rails of 2t in thick sheet: W_fi = 120 + 2 (2.3 + 13.5) + 18 + 3 = 172.6, less 2 (18 + 2 + 0.25)
    expect(setOut({ ...round, ply: 9 }).soleWidth.value).toBeCloseTo(132.1, 9);
    expect(rod.tailboardLength.value).toBeCloseTo(242, 9); // 20 + 167.5 + 7.5 − 8 + 45 + 10
  });
});
