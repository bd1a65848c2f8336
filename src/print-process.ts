import type { Problem } from './design/problem.js';
import { readProcess, readProcessToday } from './forms/read-process.js';
import type { PrintProcess, StepSheet, TankFigures } from './model/step-sheet.js';
import { stepSheet } from './step-sheet/sheet.js';

interface ProcessGiven {
  readonly file: string;
  readonly text: string;
  /** What is given for today, by the keys of the file, as it was typed. */
  readonly typed: Readonly<Record<string, string>>;
  /** Of a design; null where none is given. */
  readonly tank: TankFigures | null;
}

/**
 * The step sheet of a process file, or what is wrong with the file or with what was typed. What is typed goes before the
 * file, and the file, where somebody has timed the tank with water, before what its design says.
 */
export function processSheet({
  file,
  text,
  typed,
  tank,
}: ProcessGiven):
  | { readonly sheet: StepSheet }
  | { readonly problems: readonly Problem[] }
  | { readonly refused: string } {
  const read = readProcess(text, file);
  if ('problems' in read) return read;
  const asked = readProcessToday(typed);
  if ('refused' in asked) return asked;
  const { prints, fill, drain } = asked.today;
  const { process: inFile } = read;
  const laidOver: PrintProcess = {
    ...inFile,
    prints: prints ?? inFile.prints,
    tank: {
      fillSeconds: fill ?? inFile.tank.fillSeconds ?? tank?.fillSeconds ?? null,
      drainSeconds: drain ?? inFile.tank.drainSeconds ?? tank?.drainSeconds ?? null,
      workingVolume: inFile.tank.workingVolume ?? tank?.workingVolume ?? null,
      fullVolume: inFile.tank.fullVolume ?? tank?.fullVolume ?? null,
    },
  };
  return { sheet: stepSheet(laidOver) };
}
