import { expect, test } from 'vitest';
import { madeUpCount } from '../../src/page/design/made-up.js';
import { markOf } from '../../src/page/mark-of.js';
import { firstState, type State } from '../../src/page/state.js';
import { verdictOn } from '../../src/page/verdict.js';
import type { PlacedFinding } from '../../src/page/worker/placed-finding.js';
import { reading } from '../../src/page/worker/reading.js';
import { heron } from '../design/worked-designs.js';

const KERF = /^(laser: \{ kerf: [\d.]+ mm \})$/m;
const FLANGE = /^( *flangeDistance: [\d.]+ mm).*$/m;

/** The page when a design has been proven, and this was found against it. */
async function proven(text: string, findings: readonly PlacedFinding[] = []): Promise<State> {
  const design = { file: 'heron.yaml', text, beside: {} };
  const read = await reading(design);
  if (read.problems !== null) throw new Error('the design is read');
  const { plan, drawable } = read;
  return {
    ...firstState(design),
    reading: read,
    shown: { of: design, plan, findings: [], drawable, reached: 0, solids: null, section: null },
    findings: {
      planned: null,
      shown: null,
      proof: { kind: 'done', of: markOf(design), findings, document: null, leaks: [], apart: null },
    },
  };
}

const found = (level: PlacedFinding['level']): PlacedFinding => ({
  rule: 'made for this test',
  level,
  message: 'Something.',
  parts: [],
  setup: null,
  rear: null,
});

const marked = (text: string, key: RegExp, mark: string): string => {
  if (!key.test(text)) throw new Error(`the design has no ${key}`);
  return text.replace(key, (_line, written: string) => `${written} # ${mark}`);
};

// as many as lines were marked here, by a builder who looks at the file
const one = marked(heron, KERF, 'PLACEHOLDER');
const two = marked(one, FLANGE, 'NOT MEASURED: off the maker’s sheet');

test('what is proven on measured figures will do', async () => {
  expect(verdictOn(await proven(heron))).toMatchObject({ words: 'It will do', level: 'good' });
});

test('what is proven on figures that nobody has measured will do if they hold, and is no good news', async () => {
  expect(verdictOn(await proven(one))).toMatchObject({
    words: 'It will do, if 1 made-up figure holds',
    level: 'warning',
  });
  expect(verdictOn(await proven(two))).toMatchObject({
    words: 'It will do, if 2 made-up figures hold',
    level: 'warning',
  });
});

test('warnings are told before what is made up, and an error makes that idle', async () => {
  expect(verdictOn(await proven(two, [found('warning')])).words).toBe(
    'It will do, with 1 warning, if 2 made-up figures hold',
  );
  expect(verdictOn(await proven(two, [found('error')]))).toMatchObject({
    words: 'It will not do: 1 error',
    level: 'error',
  });
});

test('before the proof nothing is promised', async () => {
  const state = { ...(await proven(two)), findings: firstState({ file: '', text: '', beside: {} }).findings };
  expect(verdictOn(state).words).not.toMatch(/will/);
});

test('figures are counted in words', () => {
  expect([1, 2, 8].map(madeUpCount)).toEqual(['1 made-up figure', '2 made-up figures', '8 made-up figures']);
});
