import { describe, expect, test } from 'vitest';
import { settingTheRegister } from '../../src/book/register.js';
import { registerOf, shimsToSpare } from '../../src/book-use.js';
import { planCamera } from '../../src/pipeline.js';
import { registerBudgets } from '../../src/proof/register.js';
import { bareHeron, keptDesign, keptDesigns } from '../designs/kept-design.js';
import { rowsOf, textOf } from './text-rows.js';

/** Two figures of a row are printed in hundredths, mm. */
const TWO_ROUNDINGS = 0.0101;

/** Sums of every choice of so many shims, tried one by one. */
function sumsOf(sizes: readonly number[], count: number): readonly number[] {
  if (count === 0) return [0];
  return sizes.flatMap((size, i) => sumsOf(sizes.slice(i), count - 1).map((sum) => sum + size));
}

/** The fewest shims whose sum comes so near to what is missing; null where twelve are not enough. */
function fewest(missing: number, sizes: readonly number[], within: number): number | null {
  for (let count = 0; count <= 12; count++)
    if (sumsOf(sizes, count).some((sum) => Math.abs(missing - sum) <= within + 1e-6)) return count;
  return null;
}

/** `2 × 0.5 + 1 × 0.25`, as the book prints it. */
function readShims(text: string): readonly number[] {
  if (text === 'nothing') return [];
  return text.split(' + ').flatMap((one) => {
    const [count, size] = one.split(' × ').map(Number);
    return Array.from({ length: count as number }, () => size as number);
  });
}

describe.each(keptDesigns.map((name) => ({ name })))('the shim tables of $name', ({ name }) => {
  const planned = planCamera(keptDesign(name));
  const given = registerOf(planned, null);
  const { blocks } = settingTheRegister(given);
  const printed = rowsOf(blocks).filter(
    ([first = '', , third = '']) => /^\d+\.\d\d(, as drawn)?$/.test(first) && third,
  );

  test('have the rows of every stack', () => {
    expect(printed.length).toBe(given.stacks.reduce((sum, { rows }) => sum + rows.length, 0));
    for (const { rows } of given.stacks) expect(rows.length).toBeGreaterThanOrEqual(9);
  });

  test('every row adds up, and takes no more shims than it must', () => {
    let row = 0;
    for (const { wanted, rows } of given.stacks)
      for (let i = 0; i < rows.length; i++, row++) {
        const [reading = '', missing = '', put = '', left = ''] = printed[row] ?? [];
        const plies = Number(reading.replace(', as drawn', ''));
        const lacks = Number(missing.replace('−', '-'));
        expect(Math.abs(plies + lacks - wanted)).toBeLessThan(TWO_ROUNDINGS);
        const least = fewest(lacks, given.shims, given.within);
        if (put.startsWith('too thick')) {
          expect(lacks).toBeLessThan(-given.within);
          continue;
        }
        if (put.startsWith('one ply')) {
          // more than four slide about, whatever sizes there are
          expect(least === null || least > 4).toBe(true);
          continue;
        }
        const shims = readShims(put);
        const remains = lacks - shims.reduce((sum, one) => sum + one, 0);
        expect(Math.abs(remains - Number(left.replace('−', '-')))).toBeLessThan(TWO_ROUNDINGS);
        expect(shims.length).toBe(least);
        expect(shims.length).toBeLessThanOrEqual(4);
        for (const one of shims) expect(given.shims).toContain(one);
      }
  });

  test('no row asks for a shim that is not on the list of what to buy', () => {
    const listed = new Map(given.shims.map((size) => [size, 0]));
    const put = (size: number, count: number) => listed.set(size, (listed.get(size) ?? 0) + count);
    const { groundGlassFrame, spacers } = planned.camera.objects;
    for (const size of [...groundGlassFrame.packing.shims, ...spacers.flatMap(({ spacer }) => spacer.made.shims)])
      put(size, 1);
    for (const { thickness, count } of shimsToSpare(planned)) put(thickness, count);
    let row = 0;
    // the worst row of each stack, all of them at once
    const asked = new Map<number, number>();
    for (const { rows } of given.stacks) {
      const most = new Map<number, number>();
      for (let i = 0; i < rows.length; i++, row++) {
        const [, , text = ''] = printed[row] ?? [];
        if (!/^\d/.test(text)) continue;
        for (const [, count, size] of text.matchAll(/(\d+) × ([\d.]+)/g))
          most.set(Number(size), Math.max(most.get(Number(size)) ?? 0, Number(count)));
      }
      for (const [size, count] of most) asked.set(size, (asked.get(size) ?? 0) + count);
    }
    expect(asked.size + given.shims.length).toBeGreaterThan(0);
    for (const [size, count] of asked)
      expect({ size, enough: (listed.get(size) ?? 0) > count }).toEqual({ size, enough: true });
  });

  test('no row lies beyond what the stack can stray at worst', () => {
    const worst = registerBudgets(planned.design, planned.build).map(({ worst: ends }) =>
      Math.max(...ends.map(Math.abs)),
    );
    for (const { drawn, rows } of given.stacks)
      for (const { reading } of rows) expect(Math.abs(reading - drawn)).toBeLessThanOrEqual(Math.max(...worst));
  });

  test('plies as drawn take what the plan takes', () => {
    const drawn = printed
      .filter(([reading = '']) => reading.endsWith('as drawn'))
      .map(([, , put = '']) => readShims(put));
    const { groundGlassFrame, spacers } = planned.camera.objects;
    const plan = [
      groundGlassFrame.packing.shims,
      ...spacers.flatMap(({ spacer: { made } }) => (made.plies.length > 0 ? [made.shims] : [])),
    ];
    expect(drawn).toEqual(plan);
  });
});

test('the tape that proves the register: a shift along the axis is the square of the magnification at the film', () => {
  // Newton, x x' = f² (V1.07 has a pair of it): the tape a millimetre nearer, at 1:2.5 of a lens of 210 mm
  const x = 210 / 0.4;
  const film = (210 * 210) / (x - 1) - (210 * 210) / x;
  expect(film).toBeCloseTo(0.16, 2);
  const text = textOf(settingTheRegister(registerOf(planCamera(bareHeron()), null)).blocks);
  expect(text).toContain('the shim is 0.16 mm thick');
});

test('the frosted side is told for what the design says, and a window of a holder is measured without it', () => {
  const heron = planCamera(bareHeron());
  const given = registerOf(heron, null);
  const said = (frosted: 'lens' | 'eye') =>
    textOf(settingTheRegister({ ...given, glass: { ...given.glass, frosted } }).blocks);
  expect(said('lens')).toContain('The frosted side faces the lens.');
  expect(said('lens')).toContain('The mark must face your eye.');
  expect(said('eye')).toContain('The frosted side faces your eye.');
  expect(said('eye')).toContain('The mark must face the lens.');
  // V1.23: 1.5 of glass of n = 1.5 moves the focus by 0.5
  const window = { thickness: 1.5 };
  const [first, ...others] = heron.design.holders;
  if (first === undefined) throw new Error('Heron has holders');
  const design = {
    ...heron.design,
    groundGlass: { ...heron.design.groundGlass, refractiveIndex: 1.5 },
    holders: [{ ...first, window }, ...others],
  };
  expect(registerOf({ ...heron, design }, null).holders[0]?.measuredDepth).toBeCloseTo(5.8 + 0.5, 9);
});

test('a spacer of shims alone is told, and what lies under the holder is corrected the other way', () => {
  // 7.65 less 5.65, of the shims of 1 mm that Teal has
  const text = textOf(settingTheRegister(registerOf(planCamera(keptDesign('teal')), null)).blocks);
  expect(text).toContain('Spacer for the film holder: shims alone, 2 × 1,');
  expect(text).toContain('The film holder stands on a spacer itself');
  const heron = textOf(settingTheRegister(registerOf(planCamera(bareHeron()), null)).blocks);
  expect(heron).not.toContain('shims alone');
  expect(heron).not.toContain('on a spacer itself');
});
