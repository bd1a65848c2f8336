import { describe, expect, test } from 'vitest';
import * as program from '../../src/index.js';
import { heron } from '../design/worked-designs.js';
import { lookAtPlan } from './look.js';
import { chunkOf } from './soak-design.js';

test('designs of every kind are planned, refused or not read, and nothing is told that cannot be', () => {
  const fates = chunkOf(31, 0)
    .slice(0, 100)
    .map((text) => lookAtPlan(text, program));
  for (const fate of ['sound', 'refused', 'cannot be read'] as const)
    expect(fates.filter((one) => one === fate).length, fate).toBeGreaterThan(10);
});

describe('a soak sees', () => {
  const planned = (change: (plan: ReturnType<typeof program.planDesign>) => object) =>
    lookAtPlan(heron, {
      ...program,
      planDesign: (design) => {
        const plan = program.planDesign(design);
        return { ...plan, ...change(plan) };
      },
    });

  test('what is no number', () =>
    expect(() => planned(({ plan }) => ({ plan: { ...plan, camera: { ...plan.camera, width: Number.NaN } } }))).toThrow(
      'width is NaN',
    ));

  test('a finding that speaks of nothing, and one of no rule', () => {
    const found = { level: 'note', rule: 'shelf', message: 'The camera is undefined mm wide.' };
    expect(() => planned(() => ({ findings: [found] }))).toThrow('shelf says');
    expect(() => planned(() => ({ findings: [{ ...found, message: 'x', rule: 'no-such' }] }))).toThrow('of no rule');
  });

  test('a refusal without a word, and one at a place that is not there', () => {
    const refused = (problems: readonly object[]) =>
      lookAtPlan(heron, { ...program, readDesign: () => ({ problems: problems as program.Problem[] }) });
    expect(() => refused([])).toThrow('without a word');
    expect(() => refused([{ line: 4000, column: 1, what: 'is wrong' }])).toThrow('line 4000');
  });
});

test('the same seed draws the same designs, and another one others', () => {
  expect(chunkOf(31, 0)[5]).toBe(chunkOf(31, 0)[5]);
  expect(chunkOf(32, 0)[5]).not.toBe(chunkOf(31, 0)[5]);
});
