import { expect, test } from 'vitest';
import { asksForLog } from '../../src/cli/expose-log.js';
import { designJsonSchema } from '../../src/design/json-schema.js';
import { keyTable } from '../../src/design/key-table.js';
import { runHere } from './run-here.js';

/** Keys that are too long to type: lists that the card is made of. */
const FILE_ONLY = ['filterSets', 'distances'];

/** Flags that say how the command speaks and where it writes, not how a sitter is exposed. */
const OF_THE_COMMAND = ['json', 'help', 'card'];

test('each flag of expose has its key in the sitting, and each key its flag', async () => {
  const { out } = await runHere('expose', '--help');
  const flags = [...out.matchAll(/^ {2}(?:-\w, )?--([a-z-]+)/gm)].map(([, flag = '']) =>
    flag.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase()),
  );
  const keys = keyTable(designJsonSchema())
    .map(({ path }) => /^sitting\.(\w+)$/.exec(path)?.[1])
    .filter((key) => key !== undefined);
  expect(keys.length).toBeGreaterThan(20);
  const exposing = flags.filter((flag) => !OF_THE_COMMAND.includes(flag) && !asksForLog({ [flag]: '' }));
  expect(exposing.sort()).toEqual(keys.filter((key) => !FILE_ONLY.includes(key)).sort());
});
