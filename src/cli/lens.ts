import { findingsPage, loadBench, parseMagnification, printProblem } from '../index.js';
import { changedKeys } from './changed-keys.js';
import { readTextFile, remnantsOf } from './read-design-file.js';
import { replaceFile } from './replace-file.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseOthers, writeDrawing } from './write-drawing.js';

export interface LensOptions {
  readonly at: readonly string[];
  readonly plot?: string;
  /** A design file that takes the figures. */
  readonly write?: string;
  readonly json?: boolean;
}

/** Two hundred readings are some ten kilobytes. */
const LARGEST_BYTES = 256 * 1024;

/** Stands in every drawing of residuals. */
const PLOT_MARK = 'readings less the line';

/** Focal length, flange distance and the rest of a lens from what was read on the bench. */
export async function lens(
  file: string,
  { at, plot, write, json = false }: LensOptions,
  terminal: Terminal,
): Promise<number> {
  const magnifications = at.map(magnificationOf);
  if (plot !== undefined) refuseOthers(plot, PLOT_MARK);
  const readings = readTextFile(file, { noun: 'list of readings', largest: LARGEST_BYTES });
  const design = write === undefined ? null : { file: write, ...readTextFile(write), find: remnantsOf(write) };
  const { takeLens, lensJson, lensPage, pageSvg } = await loadBench();
  const taken = takeLens({ file, text: readings.text }, { at: magnifications, design });
  if ('problems' in taken) throw new Stop(EXIT.wrongCall, taken.problems.map(printProblem).join('\n\n'));
  const notes: string[] = [];
  if (plot !== undefined) {
    writeDrawing(plot, pageSvg(taken.page), PLOT_MARK);
    notes.push(`Wrote ${plot}.`);
  }
  if (design !== null && taken.design !== null) {
    const { changed, text, findings } = taken.design;
    if (changed.length > 0) replaceFile(design.file, { before: design.bytes, after: new TextEncoder().encode(text) });
    notes.push(...changedKeys(design.file, changed), findingsPage(findings, terminal).trimEnd());
    if (taken.lens.outliers.length > 0)
      notes.push(
        `WARNING: reading ${taken.lens.outliers.join(', ')} does not belong to the line, and what was written rests on it. Settle it before you cut wood.`,
      );
  }
  const next = write ?? 'design.yaml';
  await terminal.out(
    json
      ? lensJson(taken.lens)
      : `${lensPage(taken.lens, terminal)}\n${write === undefined ? `Then: tailboard lens ${file} --write ${next}` : `Then: tailboard plan ${next}`}\n`,
  );
  const told = notes.filter((line) => line !== '');
  if (told.length > 0) await terminal.err(`${told.join('\n')}\n`);
  return EXIT.done;
}

function magnificationOf(words: string): number {
  const reading = parseMagnification(words);
  if ('reason' in reading) throw new Stop(EXIT.wrongCall, `--at: ${reading.reason} ${reading.accepted}`);
  return reading.value;
}
