import { join } from 'node:path';
import {
  type Design,
  findingsPage,
  loadSpacer,
  newHolderTrouble,
  planDesign,
  readFilmDepth,
  readSheetThickness,
  type SheetRemnant,
  type SpacerWanted,
  slugOf,
} from '../index.js';
import { lengthOf } from './length-of.js';
import { refuseInside, refuseOwnRemnants, refuseTwice } from './own-remnants.js';
import { readDesignFile, readRemnantFile } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseForeign, writeFolder } from './write-folder.js';

export interface SpacerOptions {
  readonly holder?: string;
  readonly depth?: string;
  readonly name?: string;
  readonly thickness?: string;
  readonly remnant: readonly string[];
  readonly output?: string;
  readonly json?: boolean;
}

/** Figures and cut files of one spacer alone. */
export async function spacer(file: string, options: SpacerOptions, terminal: Terminal): Promise<number> {
  const design = readDesignFile(file);
  const { thickness, remnant } = options;
  refuseTwice(remnant);
  const wanted = {
    remnants: remnant.map((path): SheetRemnant => ({ ...readRemnantFile('--remnant', path), file: path })),
    ...whichSpacer(design, options),
    ...(thickness === undefined ? {} : { thickness: lengthOf('--thickness', thickness, readSheetThickness) }),
  };
  const folder = options.output ?? join('output', `${design.slug}-spacer-${slugOf(wanted.name)}`);
  refuseOwnRemnants(file, design, folder);
  for (const path of remnant) refuseInside(folder, path, path);
  refuseForeign(folder);
  // quicker done than a second thread is started
  const { remnantsUnfit, spacerAlone } = await loadSpacer();
  const unfit = remnantsUnfit(design, wanted);
  if (unfit !== null) throw wrong(unfit);
  const { spacer: figures, index, files, findings, summary } = spacerAlone(design, wanted);
  await terminal.err(findingsPage(findings, terminal));
  if (findings.some(({ level }) => level === 'error')) throw new Stop(EXIT.ruleBroken, 'Not built, nothing written.');
  if (files.length > 0) await writeFolder(folder, files);
  if (options.json === true) {
    const document = { ...figures, index, files: files.map(({ path }) => join(folder, path)) };
    await terminal.out(`${JSON.stringify(document, null, 2)}\n`);
  } else {
    const end =
      files.length > 0
        ? `Wrote ${files.length} ${files.length === 1 ? 'file' : 'files'} into ${folder}.`
        : 'Nothing to cut.';
    await terminal.out([...summary, end, ''].join('\n'));
  }
  return EXIT.done;
}

/** The spacer that is meant: by its holder, by a depth, or the only one that the design needs. */
function whichSpacer(design: Design, { holder, depth, name }: SpacerOptions): SpacerWanted {
  if (holder !== undefined && depth !== undefined) throw wrong('Give --holder or --depth, not both.');
  if (depth !== undefined)
    return { name: newName(design, name ?? 'holder'), filmDepth: lengthOf('--depth', depth, readFilmDepth) };
  if (name !== undefined) throw wrong('--name goes with --depth; a holder of the design is named with --holder.');
  const names = design.holders.map((each) => each.name);
  if (holder !== undefined) {
    if (!names.includes(holder)) throw wrong(`The design has no holder "${holder}". It has: ${names.join(', ')}.`);
    return { name: holder };
  }
  const needed = planDesign(design).plan.spacers.filter(({ under }) => under !== 'none');
  const [only] = needed;
  if (only === undefined) throw wrong('No holder of this design needs a spacer. Give --depth for another holder.');
  if (needed.length > 1)
    throw wrong(
      `Several holders need a spacer; name one with --holder: ${needed.map((each) => each.holder).join(', ')}.`,
    );
  return { name: only.holder };
}

/** A name that no holder of the design has, and that can be part of a folder's. */
function newName(design: Design, name: string): string {
  const trouble = newHolderTrouble(design, name);
  if (trouble === null) return name;
  const { what, accepted, known } = trouble;
  throw wrong(
    `--name: ${what} ${known === undefined ? accepted : `Give another name, or --holder "${known}" for that one.`}`,
  );
}

const wrong = (message: string): Stop => new Stop(EXIT.wrongCall, message);
