import { readFileSync } from 'node:fs';
import { readProcess } from '../../src/forms/read-process.js';
import type { PrintProcess, ProcessStep } from '../../src/model/step-sheet.js';

/** The example that is shipped. */
export const exampleText = readFileSync('designs/dunlin/process.yaml', 'utf8');

export function processOf(text: string): PrintProcess {
  const read = readProcess(text, 'process.yaml');
  if ('process' in read) return read.process;
  throw new Error(`not read: ${JSON.stringify(read.problems)}`);
}

const step: ProcessStep = {
  name: 'bath',
  time: 90,
  volume: 150,
  temperature: null,
  agitation: null,
  light: null,
  fixes: false,
  serves: 1,
  caution: null,
};

/** A process about which nothing is found, with steps that differ from a plain bath in this. */
export const processWith = (
  steps: readonly Partial<ProcessStep>[],
  more: Partial<PrintProcess> = {},
): PrintProcess => ({
  name: 'trial',
  temperature: 24,
  prints: 4,
  timesFrom: 'pouring-in',
  carryOver: 4,
  tank: { fillSeconds: 8, drainSeconds: 12, workingVolume: 120, fullVolume: 330 },
  steps: steps.map((own) => ({ ...step, ...own })),
  ...more,
});
