import { expect, test } from 'vitest';
import { variablesOf } from '../../src/design/variables.js';
import { heron } from './worked-designs.js';

const variables = variablesOf(heron);

function variable(path: string, text = heron) {
  const found = (text === heron ? variables : variablesOf(text)).find((own) => own.path === path);
  if (!found) throw new Error(`${path} is no number of the design`);
  return found;
}

test('numbers that were written, and those left to a default', () => {
  expect(variable('lens.flangeDistance')).toMatchObject({ value: 203.5, unit: 'mm', typed: true });
  expect(variable('holders[1].filmDepth')).toMatchObject({ value: 24, unit: 'mm', typed: true });
  expect(variable('lens.barrel.mass')).toMatchObject({ value: 0.64, unit: 'kg' });
  expect(variable('lens.maxAperture')).toMatchObject({ value: 6.3, unit: 'f-number' });
  expect(variable('workshop.slideClearance')).toMatchObject({ value: 1.5, unit: 'mm', typed: false });
  expect(variable('workshop.modulus')).toMatchObject({ value: 7000, unit: 'N/mm²', typed: false });
  expect(variable('laser.cutSpeed')).toMatchObject({ value: 10, unit: 'mm/s', typed: false });
  expect(variable('laser.pierceTime')).toMatchObject({ value: 0.5, unit: 's', typed: false });
});

test('a change is one change', () => {
  const changed = variable('holders[1].filmDepth').changedBy(1);
  expect(changed?.holders.map(({ filmDepth }) => filmDepth)).toEqual([5.8, 25]);
  expect(changed?.lens.flangeDistance).toBe(203.5);
});

test('what follows from a key follows it', () => {
  const unmeasured = heron.replace(/^groundGlass:.*$/m, '');
  expect(variable('holders[0].filmDepth', unmeasured).changedBy(0.5)?.groundGlass.depth).toBeCloseTo(6.3, 12);
  const distance = heron.replace('nearest: 1:2.5', 'nearest: 0.735 m');
  expect(variable('focus.nearest', distance)).toMatchObject({ value: 735, unit: 'mm' });
  // m = f/(u − f): 210/525 as it was, and with f = 211 it is 211/524
  expect(variable('lens.focalLength', distance).changedBy(0)?.focus.nearest).toBeCloseTo(0.4, 12);
  expect(variable('lens.focalLength', distance).changedBy(1)?.focus.nearest).toBeCloseTo(211 / 524, 12);
});

test('all readings of a sheet move together', () => {
  const read = heron.replace('thickness: 4.05 mm, sheet', 'thickness: [4.02 mm, 4.05 mm], sheet');
  const thicker = variable('plywood.thickness', read).changedBy(0.1);
  expect(thicker?.plywood.thickness).toBeCloseTo(4.15, 12);
  expect(thicker?.plywood.readings[0]).toBeCloseTo(4.12, 12);
});

test('the image of a format that is named can be changed as well', () => {
  const named = heron.replace(/^format: .*$/m, 'format: 5x7');
  const sides = variablesOf(named).filter(({ path }) => path === 'format');
  expect(sides.map(({ what, value }) => [what, value])).toEqual([
    ['short side of the image', expect.closeTo(120.6, 9)], // 5x7 less 6.4 [common practice, no source]
    ['long side of the image', expect.closeTo(171.4, 9)],
  ]);
  expect(sides[1]?.changedBy(1)?.format.image.long).toBeCloseTo(172.4, 9);
});

test('what no design can be is none', () => {
  expect(variable('focus.pastInfinity').changedBy(-5)).toBeNull(); // 4 mm past infinity cannot become −1
  expect(variable('focus.nearest').changedBy(-0.4)).toBeNull(); // no nearer than infinity
});
