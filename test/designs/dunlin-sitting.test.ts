import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { exposeLogged } from '../../src/sitting-log.js';

const folder = join(import.meta.dirname, '..', '..', 'designs', 'dunlin');
const log = readFileSync(join(folder, 'sitting.yaml'), 'utf8');
const read = readDesign(readFileSync(join(folder, 'dunlin.yaml'), 'utf8'), 'dunlin.yaml');
if ('problems' in read) throw new Error('Dunlin cannot be read.');
const { design } = read;

const settings = [...log.matchAll(/^---\nsetting:\n[\s\S]*?^\.\.\.\n/gm)];

/** The clock is no part of it. */
const timeless = (entry: string) => entry.replace(/^ {2}at: .*\n/m, '');

test('there are four settings in the log of Dunlin', () => expect(settings).toHaveLength(4));

test.each(settings.map((found, index) => ({ sheet: index + 1, entry: found[0], before: log.slice(0, found.index) })))(
  'the program gives out sheet $sheet of the log of Dunlin as it stands there',
  ({ entry, before, sheet }) => {
    const next = exposeLogged(
      design,
      { subject: '1.1 m' },
      { file: 'sitting.yaml', text: sheet === 1 ? '' : before, at: '2026-10-03 15:00' },
      { result: {}, ...(sheet === 1 ? { batch: 'H 2207' } : {}) },
    );
    expect(next).toHaveProperty('append');
    if ('append' in next) expect(timeless(next.append)).toContain(timeless(entry));
  },
);

test('and then it is done', () => {
  const next = exposeLogged(
    design,
    { subject: '1.1 m' },
    { file: 'sitting.yaml', text: log, at: '2026-10-03 15:30' },
    { result: {} },
  );
  expect(next).toMatchObject({ dialling: { sheet: 4, done: true, change: 0, batch: 'H 2207' } });
});
