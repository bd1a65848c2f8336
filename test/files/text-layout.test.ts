import { describe, expect, test } from 'vitest';
import { type Column, table } from '../../src/files/text-layout.js';

const columns: readonly Column[] = [
  { title: 'figure', align: 'left' },
  { title: 'before', align: 'right' },
  { title: 'after', align: 'right' },
];

describe('a table that is too wide for the page', () => {
  const sentence = 'a fifth of the width of the rear box, so that it does not wobble';
  const { titles, rows } = table(
    columns,
    [
      ['optics.focalLength', '180', '210'],
      ['slide.limitedBy', sentence, 'the end of the slide as it was built'],
    ],
    80,
  );

  test('runs a sentence over several lines before it breaks a name', () => {
    expect(rows[0]).toHaveLength(1);
    expect(rows[0]?.[0]).toMatch(/^optics\.focalLength +180 +210$/);
    expect(rows[1]?.length).toBeGreaterThan(1);
    expect(rows[1]?.[0]).toMatch(/^slide\.limitedBy /);
  });

  test('keeps to the page', () => {
    for (const line of [...titles, ...rows.flat()]) expect(line.length).toBeLessThanOrEqual(80);
  });
});

test('breaks a word only where the page is narrower than the words', () => {
  const { rows } = table(columns, [['optics.focalLength', '180.25', '210.25']], 26);
  // two numbers of 6, and 2 between the columns: 10 are left of 18
  expect(rows[0]?.map((line) => line.slice(0, 10).trim())).toEqual(['optics.foc', 'alLength']);
});
