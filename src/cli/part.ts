import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type BuiltCamera, findingsPage, readSheetThickness, type SheetRemnant } from '../index.js';
import { work } from './in-worker.js';
import { refuseUnknownRules } from './known-rules.js';
import { lengthOf } from './length-of.js';
import { refuseInside, refuseOwnRemnants, refuseTwice } from './own-remnants.js';
import { readCamera } from './read-camera.js';
import { readDesignFile, readRemnantFile } from './read-design-file.js';
import { refuseBroken } from './refuse-broken.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseForeign, writeFolder } from './write-folder.js';

export interface PartOptions {
  /** A number, as it was typed. */
  readonly pieces?: string;
  readonly thickness?: string;
  /** A built folder, a plan or a design. */
  readonly since?: string;
  readonly remnant: readonly string[];
  readonly despite: readonly string[];
  readonly output?: string;
  readonly json?: boolean;
}

/** Figures, cut files and prints of single parts: another lens board, a mask, a replacement. */
export async function part(
  file: string,
  ids: readonly string[],
  options: PartOptions,
  terminal: Terminal,
): Promise<number> {
  const { pieces, thickness, remnant, despite } = options;
  refuseUnknownRules('--despite', despite);
  const design = readDesignFile(file);
  const since = await cameraThatStands(options.since, join('output', design.slug));
  refuseTwice(remnant);
  const wanted = {
    ids,
    despite,
    remnants: remnant.map((path): SheetRemnant => ({ ...readRemnantFile('--remnant', path), file: path })),
    ...(since === null ? {} : { since }),
    ...(pieces === undefined ? {} : { pieces: piecesOf(pieces) }),
    ...(thickness === undefined ? {} : { thickness: lengthOf('--thickness', thickness, readSheetThickness) }),
  };
  const folder = options.output ?? join('output', `${design.slug}-parts`);
  refuseOwnRemnants(file, design, folder);
  for (const path of remnant) refuseInside(folder, path, path);
  refuseForeign(folder);
  const outcome = await work({ kind: 'parts', design, wanted }, () => {});
  if ('refused' in outcome) throw new Stop(EXIT.wrongCall, `${file}: ${outcome.refused}`);
  const { document, files, findings, summary, several } = outcome;
  await terminal.err(findingsPage(findings, terminal));
  refuseBroken(findings, despite);
  await writeFolder(folder, files);
  if (options.json === true) {
    const written = files.map(({ path }) => join(folder, path));
    await terminal.out(`${JSON.stringify({ ...document, files: written }, null, 2)}\n`);
  } else {
    const fewer = several && pieces === undefined ? [`--pieces 1 cuts one${ids.length > 1 ? ' of each' : ''}.`] : [];
    await terminal.out([...summary, ...fewer, `Wrote ${files.length} files into ${folder}.`, ''].join('\n'));
  }
  return EXIT.done;
}

/** More would be a shop. */
const MOST_PIECES = 100;

function piecesOf(text: string): number {
  const pieces = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (pieces >= 1 && pieces <= MOST_PIECES) return pieces;
  throw new Stop(
    EXIT.wrongCall,
    `--pieces: ${text} is not a whole number from 1 to ${MOST_PIECES}. Write 1 for one of each, and leave it out for as many as the camera has.`,
  );
}

/** The camera that is named; else the one that `build` left in its usual place, if it is one that can be read. */
async function cameraThatStands(named: string | undefined, usual: string): Promise<BuiltCamera | null> {
  if (named !== undefined) return readCamera(named);
  if (!existsSync(join(usual, 'plan.json'))) return null;
  try {
    return await readCamera(usual);
  } catch (error) {
    // what nobody named need not be read
    if (error instanceof Stop) return null;
    throw error;
  }
}
