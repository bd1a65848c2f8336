import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { PlanDocument } from '../../src/model/plan.js';
import { figureGroups } from '../../src/page/trays/figures/groups.js';

const plan = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'output', 'heron', 'plan.json'), 'utf8'),
) as PlanDocument;

/** A row as it is read. */
function rowOf(of: PlanDocument, label: string): string {
  const row = figureGroups(of, of.optics.nearest.magnification)
    .flatMap(({ rows }) => rows)
    .find((one) => one.label === label);
  return (row?.said ?? []).map((one) => (typeof one === 'string' ? one : one.text)).join('');
}

const withSlack = (slack: number): PlanDocument => ({ ...plan, slide: { ...plan.slide, slack } });

// a draw of 13.9 mm more than is asked for is to spare; one of 3.2 mm less is short by 3.2 mm, and no builder reads a minus
test.each([
  [13.9, '13.9 mm of draw to spare'],
  [0, '0 mm of draw to spare'],
  [-3.2, '3.2 mm of draw short'],
])('a slack of %f mm is told as %s', (slack, told) => {
  const row = rowOf(withSlack(slack), 'Could reach');
  expect(row).toContain(`, ${told}; limited by `);
  expect(row).not.toMatch(/[-−]\d/);
});

test('boxes that do not close reach no focus', () => {
  const slide = { ...plan.slide, reachableMagnification: -3.3, reachableOtherSide: -3.4 };
  expect(rowOf({ ...plan, slide }, 'Could reach')).toMatch(/^no focus, not even infinity, /);
  expect(rowOf({ ...plan, slide }, 'Other side of board')).toMatch(/no focus$/);
});

test('packing that is thicker than its room is too thick, one that is thinner leaves it open', () => {
  const packed = (remainder: number) =>
    rowOf({ ...plan, groundGlass: { ...plan.groundGlass, remainder } }, 'Packing before it');
  expect(packed(-0.04)).toMatch(/, 0\.04 mm too thick$/);
  expect(packed(0.04)).toMatch(/, 0\.04 mm left open$/);
});
