import { beforeAll, describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { checkObjects } from '../../src/camera/objects.js';
import { type Kernel, loadKernel } from '../../src/geometry/kernel.js';
import type { Finding } from '../../src/model/finding.js';
import { prove } from '../../src/proof/prove.js';
import { woodRules } from '../../src/proof/wood-rules.js';
import { heron } from '../planted.js';
import { faults } from './faults.js';

/**
 * Faults planted in parts and placements of Heron, each found by the rule that should find it, and by no rule that has
 * nothing to do with it: what else is told must be named beside the fault as its consequence.
 */

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const { design, camera, build } = heron;

/** Half of the set-ups: the glass and both holders upright, and the deep holder lengthwise. */
const few: Build = {
  ...build,
  setups: build.setups.filter(
    ({ name, orientation }) => orientation === 'upright' || name === 'processing holder, lengthwise',
  ),
};

/** All that is said against a build, notes left out. */
const said = (of: Build): readonly Finding[] =>
  [...woodRules(design, of), ...checkObjects(camera.objects, of), ...prove(design, of, kernel).findings].filter(
    ({ level }) => level !== 'note',
  );

test('there is nothing to be said against Heron as it is', { timeout: 60_000 }, () => {
  expect(said(build)).toEqual([]);
});

describe(`${faults.length} faults`, { timeout: 60_000 }, () => {
  test('are forty or more, each of its own', () => {
    expect(faults.length).toBeGreaterThanOrEqual(40);
    expect(new Set(faults.map(({ what }) => what)).size).toBe(faults.length);
  });

  test.each(faults)('$what: $rule', ({ plant, rule, follows = [], says }) => {
    const found = said(plant(few));
    const told = found.filter((finding) => finding.rule === rule).map(({ message }) => message);
    expect(
      told.some((message) => says.test(message)),
      `${rule} says: ${told.join(' | ') || 'nothing'}`,
    ).toBe(true);
    const others = [...new Set(found.map((finding) => finding.rule))].filter((one) => one !== rule);
    expect(others.filter((one) => !follows.includes(one))).toEqual([]);
  });
});
