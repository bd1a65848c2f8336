import { expect, test } from 'vitest';
import { withProgress } from '../../src/cli/progress.js';

/** What reaches stderr while a job tells how far it is. */
async function drawn(
  showsProgress: boolean,
  steps: readonly { readonly stage: string; readonly done: number }[],
  fails = false,
) {
  let text = '';
  const err = async (more: string) => {
    text += more;
  };
  await withProgress({ err, showsProgress, width: 60 }, async (show) => {
    steps.forEach(show);
    if (fails) throw new Error('a mistake of ours');
  }).catch(() => {});
  return text;
}

test('nothing is drawn where nobody looks', async () => {
  expect(await drawn(false, [{ stage: 'solids', done: 0.5 }])).toBe('');
});

test('half the work is half the bar', async () => {
  const text = await drawn(true, [{ stage: 'solids', done: 0.5 }]);
  expect(text.match(/█/g)).toHaveLength((text.match(/░/g) ?? []).length);
  expect(text).toContain('solids');
});

test('a bar never grows beyond its ends, nor past the line', async () => {
  const text = await drawn(true, [
    { stage: 'before'.repeat(30), done: -1 },
    { stage: 'after', done: 2 },
  ]);
  for (const line of text.split('\r\u001b[K')) expect(line.length).toBeLessThan(60);
  expect(text).toMatch(/░{24} {2}before/);
  expect(text).toMatch(/█{24} {2}after/);
});

test.each([false, true])('the bar is wiped at the end (the job fails: %s)', async (fails) => {
  expect(await drawn(true, [{ stage: 'solids', done: 1 }], fails)).toMatch(/solids\r.\[K$/);
});
