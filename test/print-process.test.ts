import { expect, test } from 'vitest';
import { processSheet } from '../src/print-process.js';
import { changed } from './design/reading.js';
import { exampleText } from './step-sheet/processes.js';

const ofDesign = { fillSeconds: 5, drainSeconds: 6, workingVolume: 150, fullVolume: 400 };

function tankOfSheet(text: string, typed: Readonly<Record<string, string>> = {}) {
  const outcome = processSheet({ file: 'p.yaml', text, typed, tank: ofDesign });
  if ('sheet' in outcome) return outcome.sheet.tank;
  throw new Error(JSON.stringify(outcome));
}

test('what is typed goes before the file, and the file before the design: each figure by itself', () => {
  // the file: 8 s, 12 s, 120 ml, 330 ml
  expect(tankOfSheet(exampleText, { fill: '9 s' })).toEqual({
    fillSeconds: 9,
    drainSeconds: 12,
    workingVolume: 120,
    fullVolume: 330,
  });
  const without = changed(changed(exampleText, 'drain: 12 s\n', ''), 'workingVolume: 120 ml\n', '');
  expect(tankOfSheet(without)).toEqual({ fillSeconds: 8, drainSeconds: 6, workingVolume: 150, fullVolume: 330 });
});
