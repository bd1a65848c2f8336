import { describe, expect, test } from 'vitest';
import { disagreement } from '../../src/exposure/read-against-seen.js';
import type { Process, ResultEntry, SettingEntry } from '../../src/model/sitting-log.js';
import { resultEntry, settingEntry } from './entries.js';

const setting = (process: Process, strips: readonly number[] = []): SettingEntry =>
  settingEntry(2, { process, strips });

const result = (more: Partial<ResultEntry>): ResultEntry => resultEntry(2, more);

// the denser, the darker, on a negative and by reversal alike: trade, no source
describe.each(['negative', 'reversal'] as const)('what was seen and what was read, %s', (process) => {
  test.each([
    { looks: 'too dark', density: 0.9, opposite: true },
    { looks: 'too dark', density: 1.3, opposite: false },
    { looks: 'too light', density: 1.3, opposite: true },
    { looks: 'too light', density: 0.9, opposite: false },
    { looks: 'right', density: 1.3, opposite: false },
    // within what a densitometer is good for, 0.02
    { looks: 'too dark', density: 1.09, opposite: false },
    { looks: 'too light', density: 1.11, opposite: false },
  ] as const)('$looks at $density, where 1.1 is wanted: opposite $opposite', ({ looks, density, opposite }) => {
    const fault = disagreement(result({ looks, by: 1, density, wanted: 1.1 }), setting(process), []);
    expect(fault?.what.includes(`The eye says ${looks}`) ?? false).toBe(opposite);
  });
});

test('the density that is wanted may have been said before', () => {
  const read = result({ density: 0.9 });
  expect(disagreement(read, setting('reversal'), [])?.what).toContain('was never said');
  expect(disagreement(read, setting('reversal'), [result({ density: 1, wanted: 1.1 }), result({})])).toBeNull();
});

test.each([
  { process: 'negative', densities: [1.4, 1, 0.6], against: true },
  { process: 'negative', densities: [0.6, 1, 1.4], against: false },
  { process: 'reversal', densities: [0.6, 1, 1.4], against: true },
  { process: 'reversal', densities: [1.4, 1, 0.6], against: false },
] as const)('a strip against its process is asked about: $process, $densities', ({ process, densities, against }) => {
  const fault = disagreement(result({ densities, wanted: 1 }), setting(process, [-1, 0, 1]), []);
  expect(fault?.what.includes('contradict the process') ?? false).toBe(against);
});

test('what was not measured is not asked about', () =>
  expect(disagreement(result({ looks: 'too dark', by: 1 }), setting('reversal'), [])).toBeNull());
