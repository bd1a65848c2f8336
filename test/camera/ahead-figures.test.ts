import { describe, expect, test } from 'vitest';
import { aheadOfLensFigures } from '../../src/camera/ahead-figures.js';
import { planOf } from '../../src/pipeline.js';
import { AHEAD, heronWith } from './asked-for.js';

const planned = heronWith(...AHEAD);
const { filterHolder, shutter, hood, cap } = aheadOfLensFigures(planned.camera);

test('a plan has figures of what was asked for, and of nothing else', () => {
  expect(Object.keys(planOf(planned))).toEqual(expect.arrayContaining(['filterHolder', 'shutter', 'hood', 'cap']));
  const plain = planOf(heronWith());
  for (const key of ['filterHolder', 'shutter', 'hood', 'cap']) expect(key in plain).toBe(false);
  expect('shutter' in planOf(heronWith('filterHolder: {}'))).toBe(false);
});

describe('every formula gives its figure', () => {
  const figures = [filterHolder, shutter, hood, cap].flatMap((own) => Object.entries(own ?? {}));
  test.each(figures)('%s', (_, figure) => {
    if (figure.value === null || figure.from.kind !== 'formula') return;
    expect(figure.from.formula().value).toBeCloseTo(figure.value, 9);
  });
  test('of all four objects', () => expect(figures).toHaveLength(18));
});

test('the plan says of the shutter what the parts say', () => {
  const told = planned.findings.find(({ rule }) => rule === 'shutter-time');
  // the corners that are cut off the slide weigh nothing without elastic
  expect(planOf(planned).shutter?.time).toBeCloseTo(told?.value ?? 0, 6);
  // V5.23: 1/30 stands for 1/32, 0.093 stop
  expect(planOf(planned).shutter).toMatchObject({
    dial: expect.closeTo(1 / 30, 6),
    dialStops: expect.closeTo(0.093, 3),
  });
});

test('the plan says of the hood what its rule measures on its walls, and no light is lost', () => {
  const hooded = planOf(planned).hood;
  expect(hooded?.shade).toBeCloseTo(planned.findings.find(({ rule }) => rule === 'hood-shade')?.value ?? 0, 6);
  expect((hooded?.mouth ?? 0) - (hooded?.light ?? 0)).toBeGreaterThanOrEqual(2 - 1e-9);
});
