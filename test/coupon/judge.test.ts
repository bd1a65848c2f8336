import { describe, expect, test } from 'vitest';
import { judgeReadings } from '../../src/coupon/judge.js';
import type { CouponReadings } from '../../src/coupon/readings.js';
import { seeded } from '../../src/packing/random.js';
import { drawn, handleCoupon, misread, onTheScale, usualFits } from './builder.js';

const { coupon, sheet } = drawn();
const cut = { kerf: 0.15, thickness: 4.05, fits: usualFits, combSum: 80 };

/** A builder whose laser cuts just as the piece was drawn for. */
const plain: CouponReadings = {
  cut,
  comb: { x: [78.5], y: [78.5] },
  thickness: [4.05],
  slot: 4.05,
  fits: { ...usualFits },
};

const judge = (over: Partial<CouponReadings> = {}, fits = usualFits) =>
  judgeReadings({ ...plain, ...over }, { fits, marks: coupon.slots });

function resultOf(over: Partial<CouponReadings> = {}) {
  const judged = judge(over);
  if ('result' in judged) return judged.result;
  throw new Error(judged.findings.map(({ message }) => message).join('\n'));
}

function refusalOf(over: Partial<CouponReadings>, fits = usualFits) {
  const judged = judge(over, fits);
  if ('result' in judged) throw new Error('the readings were accepted');
  return judged.findings;
}

describe('the kerf', () => {
  test('is what the strips are short of, a cut each: 78.5 of 80 is 0.15 (as M6.06 [common practice, no source])', () =>
    expect(resultOf()).toMatchObject({ kerf: 0.15, x: expect.closeTo(0.15, 9), y: expect.closeTo(0.15, 9) }));

  test('is the mean of both directions, and strays by half of what they differ by, and the doubt of the caliper', () => {
    const { kerf, kerfUncertainty, interval } = resultOf({ comb: { x: [78.4], y: [78.6] }, fits: {} });
    expect(kerf).toBe(0.15); // 0.16 and 0.14
    expect(kerfUncertainty).toBeGreaterThanOrEqual(0.01 + interval);
    expect(kerfUncertainty).toBeLessThan(0.01 + interval + 0.001); // rounded up to the micrometre
  });

  test('strays more where pieces cut all over the bed differ more', () => {
    const { kerf, kerfUncertainty } = resultOf({ comb: { x: [78.5, 78.4], y: [78.5, 78.6] }, fits: {} });
    expect(kerf).toBe(0.15);
    expect(kerfUncertainty).toBeGreaterThanOrEqual(0.01); // 0.14 to 0.16
  });
});

describe('the fits are what the samples really were', () => {
  // a beam 0.02 wider than assumed makes the notch 0.02 wider and the tongue 0.02 narrower: M6.01 [verified: R45] has
  // both signs, 0.2 off the piece and 0.2 onto the hole
  test('with a wider beam each is looser than marked by twice the difference', () =>
    expect(resultOf({ comb: { x: [78.3], y: [78.3] }, slot: null }).fits).toEqual({
      press: expect.closeTo(0.02, 9),
      glueSlip: expect.closeTo(0.12, 9),
      slide: expect.closeTo(0.34, 9),
      dropIn: expect.closeTo(0.64, 9),
    }));
  test('as marked where the beam is as assumed', () => expect(resultOf().fits).toEqual(usualFits));
  test('only those that were read', () => expect(resultOf({ fits: { slide: 0.4 } }).fits).toEqual({ slide: 0.4 }));
});

describe('comb-reading: a comb that no laser can have left, or two that cannot be one kerf', () => {
  test.each([
    { what: 'a sum larger than drawn', x: 80.2, says: 'cannot measure 80.2 mm', hint: 'soot' },
    { what: 'a kerf below 0.03', x: 79.71, says: '0.029 mm', hint: 'measure again' },
    { what: 'a kerf above 0.5', x: 74.99, says: '0.501 mm', hint: '' },
    { what: 'a strip that is missing', x: 9 * 7.85, says: '70.65 mm', hint: '9 strips' },
    { what: 'the width of one strip instead of the sum', x: 7.85, says: '7.85 mm', hint: 'one strip' },
    { what: 'inches', x: 78.5 / 25.4, says: '3.091 mm', hint: '78.5 mm' },
    { what: 'the kerf instead of the sum', x: 0.15, says: '0.15 mm', hint: 'not the kerf itself' },
  ])('$what', ({ x, says, hint }) => {
    const [finding] = refusalOf({ comb: { x: [x], y: [78.5] } });
    expect(finding).toMatchObject({ rule: 'comb-reading', level: 'error', about: 'comb.x' });
    expect(finding?.message).toContain(says);
    expect(finding?.hint).toContain(hint);
  });

  test.each([79.7, 75])('just inside: %d mm is the least or the widest kerf that a laser leaves', (sum) =>
    expect(judge({ comb: { x: [sum], y: [sum] }, slot: null, thickness: [], fits: {} })).toHaveProperty('result'),
  );

  test('combs that differ by more than 0.03 mm: 0.15 and 0.181', () => {
    const [finding] = refusalOf({ comb: { x: [78.5], y: [78.19] } });
    expect(finding).toMatchObject({ rule: 'comb-reading', about: 'comb.y', limit: 0.03, unit: 'mm' });
    expect(finding?.value).toBeCloseTo(0.031, 9);
    expect(finding?.hint).toMatch(/misread.*more or fewer than 10.*not round/);
  });

  test('just inside: 0.15 and 0.18', () =>
    expect(judge({ comb: { x: [78.5], y: [78.2] }, slot: null, fits: {} })).toHaveProperty('result'));

  test('a sum divided by one cut too few is found beside the other comb where it matters: M6.07 again', () => {
    // in a piece of 0.33 mm kerf a tenth more is 0.033
    const [finding] = refusalOf({ comb: { x: [80 - 3.3], y: [80 - 3.3 * 1.1] } });
    expect(finding).toMatchObject({ rule: 'comb-reading', about: 'comb.y' });
  });

  test('readings of one comb that differ by more than 0.03 mm', () =>
    expect(refusalOf({ comb: { x: [78.6, 78.2], y: [78.4] } })[0]).toMatchObject({
      rule: 'comb-reading',
      about: 'comb.x',
    }));
});

describe('thickness-reading: the caliper against the slot', () => {
  test('a sheet too thick for the slot that it is said to enter', () => {
    const [finding] = refusalOf({ thickness: [4.12], slot: 4.05 });
    expect(finding).toMatchObject({ rule: 'thickness-reading', about: 'slot', value: 4.12 });
    expect(finding?.message).toContain('does not enter the slot marked 4.05 mm');
  });
  test('just inside: the caliper may be 0.02 mm out', () =>
    expect(judge({ thickness: [4.07], slot: 4.05 })).toHaveProperty('result'));
  test('a sheet that would have entered a narrower slot as well', () => {
    const [finding] = refusalOf({ thickness: [3.9], slot: 4.05 });
    expect(finding).toMatchObject({
      rule: 'thickness-reading',
      about: 'slot',
      value: 3.9,
      limit: expect.closeTo(4, 9),
    });
    expect(finding?.message).toContain('not the narrowest');
  });
  test('just inside: 3.98 may be 4.00, and 4.00 does not enter 4.00 for certain', () =>
    expect(judge({ thickness: [3.98], slot: 4.05 })).toHaveProperty('result'));
  test('the slots are as wide as the true beam left them: one of 0.2 mm makes the slot marked 4.05 take 4.10', () => {
    const comb = { x: [78], y: [78] };
    expect(judge({ comb, thickness: [4.1], slot: 4.05, fits: {} })).toHaveProperty('result');
    expect(refusalOf({ thickness: [4.1], slot: 4.05, fits: {} })).toHaveLength(1);
  });
  test('a sheet that is thin here and thick there contradicts nothing', () =>
    expect(judge({ thickness: [3.9, 4.2], slot: 4.05 })).toHaveProperty('result'));
  test('a slot that the piece does not have', () =>
    expect(refusalOf({ slot: 4.07 })[0]).toMatchObject({
      rule: 'thickness-reading',
      hint: expect.stringContaining('4.05, 4.1'),
    }));
  test('another sheet', () =>
    expect(refusalOf({ thickness: [6.4], slot: null })[0]).toMatchObject({
      rule: 'thickness-reading',
      about: 'thickness',
    }));
});

describe('fit-reading: fits in the order of their names, and from the ladder', () => {
  test('a slide tighter than the glue slip', () => {
    const [finding] = refusalOf({ fits: { ...usualFits, slide: 0.05 } });
    expect(finding).toMatchObject({ rule: 'fit-reading', about: 'fits.slide' });
    expect(finding?.message).toContain('tighter than the glue slip');
  });
  test('two fits that are one', () =>
    expect(refusalOf({ fits: { press: 0.08, glueSlip: 0.08 } })[0]?.message).toContain('no looser than'));
  test('a fit against one that was not read and stays', () => {
    const [finding] = refusalOf({ fits: { glueSlip: 0.4 } });
    expect(finding).toMatchObject({ rule: 'fit-reading', about: 'fits.glueSlip' });
    expect(finding?.message).toContain('stays as the design has it');
  });
  test('just inside: one sample looser is looser', () =>
    expect(judge({ fits: { ...usualFits, glueSlip: 0.11, slide: 0.2 } })).toHaveProperty('result'));
  test('a mark that the ladder does not have', () =>
    expect(refusalOf({ fits: { press: -0.03 } })[0]).toMatchObject({
      rule: 'fit-reading',
      about: 'fits.press',
      hint: expect.stringContaining('-0.06, -0.02'),
    }));
});

/**
 * A thousand builders with a caliper of ±0.02 mm (an even spread) that shows hundredths, cutting the piece as it is
 * drawn. What is promised is at least 95 of 100: a caliper that errs alike on both combs takes all of the interval, one
 * that errs anew on each takes less, and so does a kerf whose sum stands on a line of the scale.
 */
describe('a thousand builders with a caliper of ±0.02 mm', () => {
  const builders = 1000;
  type Random = () => number;
  const held = (kerfOf: (random: Random) => number, errorOf: (random: Random) => () => number): number => {
    const random = seeded(20);
    let inside = 0;
    for (let i = 0; i < builders; i++) {
      const trueKerf = kerfOf(random);
      const truth = { kerfX: trueKerf, kerfY: trueKerf, thickness: 4.05, feels: usualFits };
      const { x, y } = handleCoupon(coupon, sheet, truth, errorOf(random));
      const { kerf, interval } = resultOf({ comb: { x: [x], y: [y] }, fits: {}, slot: null, thickness: [] });
      if (Math.abs(kerf - trueKerf) <= interval) inside++;
    }
    return inside / builders;
  };
  const alike = (random: Random) => {
    const error = misread(random);
    return () => error;
  };
  const anew = (random: Random) => () => misread(random);

  test('with any kerf, whose caliper errs alike on both combs: the interval holds the true one in 93 to 97 of 100', () => {
    const share = held((random) => 0.1 + 0.15 * random(), alike);
    expect(share).toBeGreaterThanOrEqual(0.93);
    expect(share).toBeLessThanOrEqual(0.97);
  });

  test.each([
    ['alike on both combs', alike],
    ['anew on each', anew],
  ])('with a kerf of 0.15, whose caliper errs %s: in 95 of 100 at the least', (_, errorOf) =>
    expect(held(() => 0.15, errorOf)).toBeGreaterThanOrEqual(0.95),
  );

  test('an interval of half the width would not do', () => {
    const random = seeded(20);
    let inside = 0;
    for (let i = 0; i < builders; i++) {
      const sum = onTheScale(78.5 + misread(random));
      const { kerf, interval } = resultOf({ comb: { x: [sum], y: [sum] }, fits: {}, slot: null, thickness: [] });
      if (Math.abs(kerf - 0.15) <= interval / 2) inside++;
    }
    expect(inside / builders).toBeLessThan(0.8);
  });
});

test.each([
  // beams wider and narrower than assumed, round and not quite; sheet thicker and thinner; hands that like it tight or loose
  { kerfX: 0.15, kerfY: 0.15, thickness: 4.05, feels: usualFits },
  { kerfX: 0.17, kerfY: 0.17, thickness: 4.0, feels: { press: 0.02, glueSlip: 0.1, slide: 0.3, dropIn: 0.6 } },
  { kerfX: 0.13, kerfY: 0.14, thickness: 4.12, feels: { press: -0.06, glueSlip: 0.04, slide: 0.25, dropIn: 0.55 } },
  { kerfX: 0.19, kerfY: 0.17, thickness: 3.93, feels: { press: 0.02, glueSlip: 0.12, slide: 0.4, dropIn: 0.7 } },
])('who measures well gets the fits that the hand wanted: $kerfX, $kerfY, $thickness', (truth) => {
  const read = handleCoupon(coupon, sheet, truth, () => 0);
  const result = resultOf({
    comb: { x: [read.x], y: [read.y] },
    thickness: [read.thickness],
    slot: read.slot,
    fits: read.fits,
  });
  expect(result.kerf).toBeCloseTo((truth.kerfX + truth.kerfY) / 2, 6);
  expect(result.thickness).toEqual([truth.thickness]);
  for (const name of ['press', 'glueSlip', 'slide', 'dropIn'] as const) {
    // half a step of the ladder there, and the rounding to hundredths
    const step = name === 'press' || name === 'glueSlip' ? 0.04 : 0.1;
    expect(Math.abs((result.fits[name] ?? Number.NaN) - truth.feels[name]), name).toBeLessThanOrEqual(step / 2 + 0.006);
  }
});
