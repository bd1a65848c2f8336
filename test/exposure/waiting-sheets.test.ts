import { expect, test } from 'vitest';
import type { LoggedSheet, Series } from '../../src/exposure/logged-sheets.js';
import { meantSheet, stillWaiting } from '../../src/exposure/waiting-sheets.js';
import { settingEntry } from './entries.js';

const waiting = (sheet: number, more: Partial<Series> = {}): LoggedSheet => ({
  setting: settingEntry(sheet, { process: 'reversal', ...more }),
  result: null,
});

const one = waiting(1, { batch: 'one' });
const two = waiting(2, { batch: 'two' });
const negative = waiting(3, { process: 'negative' });
const all = [one, two, negative];

test.each([
  { process: 'reversal', batch: 'one', meant: one },
  { process: 'reversal', batch: 'two', meant: two },
  { process: 'negative', batch: null, meant: negative },
] as const)('the only one of its kind is meant: $process, $batch', ({ process, batch, meant }) => {
  expect(meantSheet(all, { process, paper: null, batch })).toBe(meant);
});

test.each([
  {
    process: 'reversal',
    paper: null,
    batch: null,
    says: /^Sheet 1 \(reversal, batch one\) and sheet 2 \(reversal, batch two\) wait/,
  },
  {
    process: 'reversal',
    paper: null,
    batch: 'three',
    says: /^No sheet of reversal, batch three waits for its result\. Sheet 1 /,
  },
  { process: 'negative', paper: 'x', batch: null, says: /^No sheet of negative, x waits/ },
] as const)('where none or several wait, those that do are named: $process, $paper, $batch', ({ says, ...asked }) => {
  expect(meantSheet(all, asked)).toMatchObject({ refused: expect.stringMatching(says) });
});

test('batches cannot tell sheets of one batch apart', () => {
  const twins = [one, waiting(2, { batch: 'one' })];
  expect(meantSheet(twins, { process: 'reversal', paper: null, batch: 'one' })).toMatchObject({
    refused: expect.stringContaining('by hand'),
  });
});

test('of many only the latest are named', () => {
  expect(
    stillWaiting(
      [1, 2, 3, 4, 5, 6].map((sheet) => waiting(sheet)),
      6,
    ),
  ).toEqual([
    '1 older one, sheet 2 (reversal), sheet 3 (reversal), sheet 4 (reversal) and sheet 5 (reversal) wait for their results, too.',
  ]);
  expect(stillWaiting([waiting(1)], 1)).toEqual([]);
});
