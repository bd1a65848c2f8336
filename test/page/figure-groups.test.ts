import { expect, test } from 'vitest';
import { figureGroups } from '../../src/page/trays/figures/groups.js';
import { heron } from '../files/heron-plan.js';

/** The row of the only spacer that Heron has, as it is read. */
function spacerRow(more: object): string {
  const spacers = heron.spacers.map((one) => (one.under === 'none' ? one : { ...one, ...more }));
  const rows = figureGroups({ ...heron, spacers }, 0.4).flatMap((group) => group.rows);
  const said = rows
    .filter(({ label }) => label === 'Spacer')
    .map((row) => row.said.map((one) => (typeof one === 'string' ? one : one.text)).join(''));
  return said.find((text) => text !== 'none needed') ?? '';
}

test('a spacer that nobody measured is told by its layers', () =>
  expect(spacerRow({})).toContain('18.2 mm under the ground glass: 4 plies of 4.05 mm + 4 shims of 0.5 mm, 0 mm'));

test.each([
  {
    measured: 17.9,
    remainder: 0.3,
    add: [0.25],
    takeOut: [],
    says: '17.9 mm as measured, 0.3 mm too thin: add 1 shim',
  },
  // 18.4 of 18.2: a thick shim out, a thinner one in
  {
    measured: 18.4,
    remainder: -0.2,
    add: [0.25],
    takeOut: [0.5],
    says: '18.4 mm as measured, 0.2 mm too thick: take out 1 shim of 0.5 mm, add 1 shim of 0.25 mm; ±',
  },
])('one that is $measured mm thick as measured says what mends it', ({ says, ...more }) => {
  expect(spacerRow(more)).toContain(says);
  expect(spacerRow(more)).not.toContain('plies');
});
