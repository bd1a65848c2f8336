import { join } from 'node:path';
import {
  type CouponAnswers,
  type CouponQuestion,
  findingsPage,
  type LoadedWorkshop,
  loadWorkshop,
  parseLength,
  printProblem,
  type ReadingsTaken,
} from '../index.js';
import { changedKeys } from './changed-keys.js';
import { readDesignFile, readTextFile, remnantsOf } from './read-design-file.js';
import { replaceFile } from './replace-file.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseForeign, writeFolder } from './write-folder.js';

export interface CouponOptions {
  /** A file of readings; `true` where they are to be asked for. */
  readonly readings?: string | true;
  readonly output?: string;
}

/** The test piece of a sheet and a laser; or, with what was measured on it, the figures for the design file. */
export async function coupon(file: string, { readings, output }: CouponOptions, terminal: Terminal): Promise<number> {
  if (readings === undefined) return cut(file, output, terminal);
  if (output !== undefined)
    throw new Stop(EXIT.wrongCall, '--output goes with a test piece to be cut; readings go into the design file.');
  if (readings !== true) return take(file, { file: readings, text: readTextFile(readings).text }, terminal);
  if (!terminal.interactive)
    throw new Stop(
      EXIT.wrongCall,
      'Nobody is there to be asked. Give the file with the readings: --readings readings.yaml',
    );
  const { questions, filled } = (await loadWorkshop()).couponForm(readDesignFile(file));
  return take(file, { file: null, text: filled(await ask(questions)) }, terminal);
}

async function cut(file: string, output: string | undefined, terminal: Terminal): Promise<number> {
  const design = readDesignFile(file);
  const folder = output ?? join('output', `coupon-${design.plywood.material}`);
  refuseForeign(folder);
  const { files, findings, summary } = (await loadWorkshop()).coupon(design);
  await terminal.err(findingsPage(findings, terminal));
  if (findings.some(({ level }) => level === 'error')) throw new Stop(EXIT.ruleBroken, 'Not drawn, nothing written.');
  await writeFolder(folder, files);
  const next = `Then: tailboard coupon ${file} --readings ${join(folder, 'readings.yaml')}`;
  await terminal.out([...summary, `Wrote ${files.length} files into ${folder}.`, next, ''].join('\n'));
  return EXIT.done;
}

interface Readings {
  /** Null where they were given as answers. */
  readonly file: string | null;
  readonly text: string;
}

async function take(file: string, readings: Readings, terminal: Terminal): Promise<number> {
  const { takeReadings } = await loadWorkshop();
  const { text, bytes } = readTextFile(file);
  const taken = takeReadings(
    { file, text, find: remnantsOf(file) },
    { file: readings.file ?? 'answers', text: readings.text },
  );
  if ('problems' in taken) throw refused(taken, readings, file);
  const { changed, summary, findings } = taken;
  if (changed.length > 0) replaceFile(file, { before: bytes, after: new TextEncoder().encode(taken.text) });
  await terminal.err(findingsPage(findings, terminal));
  await terminal.out([...summary, '', ...changedKeys(file, changed), ''].join('\n'));
  return EXIT.done;
}

function refused(
  { problems }: Exclude<ReturnType<LoadedWorkshop['takeReadings']>, ReadingsTaken>,
  readings: Readings,
  file: string,
): Stop {
  // an answer has no line to point at
  const inWords = problems.map((problem) =>
    readings.file === null && problem.file !== file
      ? `${problem.path}: ${problem.what}\n    ${problem.accepted}`
      : printProblem(problem),
  );
  return new Stop(EXIT.wrongCall, [...inWords, `Nothing was written; ${file} is as it was.`].join('\n\n'));
}

async function ask(questions: readonly CouponQuestion[]): Promise<CouponAnswers> {
  const { isCancel, text } = await import('@clack/prompts');
  const answers: Partial<Record<CouponQuestion['key'], string>> = {};
  for (const { key, ask: message, needed, marks } of questions) {
    const given = await text({
      message: needed ? message : `${message}; Enter where it was not read`,
      ...(marks === undefined ? {} : { placeholder: marks.join(', ') }),
      validate: (value) => complaintOf(value ?? '', { needed, several: marks === undefined }),
      output: process.stderr,
    });
    if (isCancel(given)) throw new Stop(EXIT.interrupted, 'Nothing was written.');
    const lengths = lengthsIn(given ?? '');
    if (lengths.length > 0) answers[key] = lengths.length === 1 ? (lengths[0] ?? '') : `[${lengths.join(', ')}]`;
  }
  return answers;
}

/** Several lengths stand with a blank behind the comma: without one it is a decimal comma, and that is refused. */
const lengthsIn = (answer: string): readonly string[] =>
  answer
    .split(/;|,\s+/)
    .map((one) => one.trim())
    .filter((one) => one !== '');

function complaintOf(
  answer: string,
  { needed, several }: { readonly needed: boolean; readonly several: boolean },
): string | undefined {
  const lengths = lengthsIn(answer);
  if (lengths.length === 0) return needed ? 'Without both combs there is no kerf.' : undefined;
  if (lengths.length > 1 && !several) return 'Give one mark.';
  for (const length of lengths) {
    const reading = parseLength(length, 'any');
    if ('reason' in reading) return `${reading.reason} ${reading.accepted}`;
  }
  return undefined;
}
