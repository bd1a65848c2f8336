import { loadProcess, loadProcessCard, planDesign, printProblem, type StepSheet } from '../index.js';
import { cardLetters } from './letters.js';
import { readDesignFile, readTextFile } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseForeign, writeFolder } from './write-folder.js';

export interface ProcessOptions {
  readonly prints?: string;
  readonly fill?: string;
  readonly drain?: string;
  readonly design?: string;
  readonly holder?: string;
  readonly output?: string;
  readonly paper?: string;
  readonly json?: boolean;
}

/** The step sheet of a print: when each bath is poured and drained, and how much of it all prints take. */
export async function processSteps(
  file: string,
  { json = false, design: designFile, holder, output, paper, ...flags }: ProcessOptions,
  terminal: Terminal,
): Promise<number> {
  if (paper !== undefined && output === undefined)
    throw new Stop(EXIT.wrongCall, '--paper is that of the card: say with -o into which folder it is written.');
  if (holder !== undefined && designFile === undefined)
    throw new Stop(EXIT.wrongCall, '--holder is one of a design: name its file with --design heron.yaml.');
  const { processFile, processSheet, processJson, processPage, tankOf } = await loadProcess();
  const { text } = readTextFile(file, processFile);
  const design = designFile === undefined ? null : readDesignFile(designFile);
  const found = design === null ? { tank: null } : tankOf(planDesign(design).plan.holders, holder);
  if ('refused' in found) throw new Stop(EXIT.wrongCall, found.refused);
  const outcome = processSheet({ file, text, typed: typed(flags), tank: found.tank });
  if ('problems' in outcome) throw new Stop(EXIT.wrongCall, outcome.problems.map(printProblem).join('\n\n'));
  if ('refused' in outcome) throw new Stop(EXIT.wrongCall, outcome.refused);
  const { sheet } = outcome;
  const broken = sheet.findings.some(({ level }) => level === 'error');
  const files =
    output === undefined || broken ? null : await cardOf(sheet, paper ?? design?.book.paper ?? 'A5', output);
  await terminal.out(json ? processJson(sheet) : processPage(sheet, terminal));
  if (broken && output !== undefined)
    await terminal.err('Nothing was written: there is no card of steps that cannot be done.\n');
  if (files !== null && output !== undefined) {
    await writeFolder(output, files);
    await terminal.err(`Wrote ${files.map(({ path }) => path).join(' and ')} into ${output}.\n`);
  }
  return broken ? EXIT.ruleBroken : EXIT.done;
}

async function cardOf(sheet: StepSheet, paper: string, folder: string) {
  const { processCardFiles, cardPapers } = await loadProcessCard();
  const size = cardPapers.find((name) => name.toLowerCase() === paper.toLowerCase());
  if (size === undefined)
    throw new Stop(EXIT.wrongCall, `--paper "${paper}" is not known. Write ${cardPapers.join(', ')}.`);
  refuseForeign(folder);
  const outcome = processCardFiles(sheet, size, cardLetters());
  if ('refused' in outcome) throw new Stop(EXIT.wrongCall, outcome.refused);
  return outcome.files;
}

/** Without what was not given. */
const typed = (flags: Readonly<Record<string, string | undefined>>): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(flags).filter((flag): flag is [string, string] => flag[1] !== undefined));
