import { expect, test } from 'vitest';
import { changedFigures } from '../../src/compare/changed-figures.js';
import { readBuilt } from '../../src/forms/read-built.js';
import { planOf } from '../../src/pipeline.js';
import { AHEAD, heronWith } from '../camera/asked-for.js';

/** As `build` wrote it and a user opens it again. */
const writtenPlan = (...keys: readonly string[]): object => {
  const outcome = readBuilt(JSON.stringify(planOf(heronWith(...keys))), null);
  if ('what' in outcome) throw new Error(outcome.what);
  return outcome.plan;
};

test('nothing changes between a camera and itself, whatever is made for it', () =>
  expect(changedFigures(writtenPlan(...AHEAD), writtenPlan(...AHEAD))).toEqual([]));

test('what is made besides the camera has its figures, from nothing', () => {
  const changed = changedFigures(writtenPlan(), writtenPlan(...AHEAD));
  for (const section of ['filterHolder', 'shutter', 'hood', 'cap']) {
    const own = changed.filter(({ figure }) => figure.startsWith(`${section}.`));
    expect(own.length, section).toBeGreaterThan(0);
    expect(new Set(own.map(({ before }) => before)), section).toEqual(new Set([null]));
  }
});
