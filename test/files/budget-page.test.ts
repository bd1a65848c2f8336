import { describe, expect, test } from 'vitest';
import { budgetPage } from '../../src/files/budget-page.js';
import type { RegisterBudget } from '../../src/model/register-budget.js';

const asIs = (text: string): string => text;
const marked = (text: string): string => `<${text}>`;
const plain = { heading: asIs, faint: asIs, error: asIs, warning: asIs, note: asIs };

const ply = { name: '5 plies', half: 1.5, share: { variance: 0.9, worst: 0.75 }, measure: 'Measure the stack.' };
const glue = { name: '4 glue lines', half: 0.14, share: { variance: 0.1, worst: 0.25 }, measure: 'Measure the stack.' };
const reading = { name: 'a reading', half: 0.05, share: { variance: 1, worst: 1 }, measure: 'Read it again.' };
const budget: RegisterBudget = {
  holder: 'paper holder',
  at: 'centre',
  nominal: -0.05,
  tolerance: 0.22,
  worst: [-1.43, 1.85],
  interval95: [-0.5, 0.92],
  contributors: [ply, glue],
  measured: { worst: [-0.15, 0.15], interval95: [-0.084, 0.084], contributors: [reading] },
  toHalve: 'Measure the glued glass frame, and shim: that brings ±0.71 mm to ±0.08 mm.',
};

describe('the page of the register’s budget', () => {
  const lines = budgetPage([budget, { ...budget, at: 'edge', tolerance: 0.05 }], { width: 90, colour: plain }).split(
    '\n',
  );

  test('says what is allowed, what is to be expected, and whether it fits', () => {
    expect(lines).toContain('paper holder, in the middle of the picture');
    expect(lines).toContain('  drawn −0.05 mm; allowed ±0.22 mm, a quarter of the depth of focus at infinity');
    expect(lines.find((line) => line.includes('not measured'))).toMatch(
      /−0\.5 to \+0\.92 mm {2}−1\.43 to \+1\.85 mm {2}too far$/,
    );
    expect(lines.find((line) => line.includes('then shimmed'))).toMatch(/−0\.08 to \+0\.08 mm.* {2}fits$/);
    // 0.084 is more than 0.05
    expect(lines.filter((line) => line.endsWith('too far'))).toHaveLength(3);
  });

  test('gives each contributor its shares, and the number of its cure', () => {
    expect(lines.find((line) => line.includes('5 plies'))).toMatch(/1\.500 +90 % +75 % +1$/);
    expect(lines.find((line) => line.includes('4 glue lines'))).toMatch(/0\.140 +10 % +25 % +1$/);
    expect(lines.find((line) => line.includes('a reading'))).toMatch(/0\.050 +100 % +100 % +2$/);
  });

  test('says each cure once, at the end', () => {
    expect(lines.slice(-4)).toEqual(['What makes it smaller', '   1  Measure the stack.', '   2  Read it again.', '']);
    expect(lines).toContain(
      '  To halve it: measure the glued glass frame, and shim: that brings ±0.71 mm to ±0.08 mm.',
    );
  });

  test.each([60, 80, 120])('keeps within %d columns', (width) => {
    const page = budgetPage([budget], { width, colour: plain });
    expect(page.split('\n').filter((line) => line.length > width)).toEqual([]);
  });

  test('marks headings and what does not fit', () => {
    const page = budgetPage([budget], { width: 90, colour: { ...plain, heading: marked, warning: marked } });
    expect(page).toContain('<paper holder, in the middle of the picture>');
    expect(page).toContain('<too far>');
  });

  test('is empty without holders', () => expect(budgetPage([], { width: 80, colour: plain })).toBe(''));
});
