import { lstatSync, rmSync, writeFileSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { formats, parseLength, printProblem, readDesign, starter } from '../index.js';
import { machineStop, systemCode } from './machine-error.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';

interface Question {
  readonly key: 'format' | LengthKey;
  readonly option: string;
  readonly ask: string;
  readonly example: string;
}

type LengthKey = 'focalLength' | 'flangeDistance' | 'thickness' | 'kerf';
type Answers = Readonly<Record<Question['key'], string>>;

const QUESTIONS: readonly Question[] = [
  { key: 'format', option: '--format', ask: 'Which format?', example: '5x7' },
  { key: 'focalLength', option: '--focal-length', ask: 'Focal length of the lens?', example: '210 mm' },
  {
    key: 'flangeDistance',
    option: '--flange-distance',
    ask: 'Flange distance: from the lens seat to the film at infinity?',
    example: '203.5 mm',
  },
  { key: 'thickness', option: '--thickness', ask: 'Thickness of the plywood, as measured?', example: '4.05 mm' },
  { key: 'kerf', option: '--kerf', ask: 'How wide does the laser cut?', example: '0.15 mm' },
];

/** Writes a design to start from. What is not given is asked for where somebody sits there to answer. */
export async function newDesign(file: string, given: Partial<Answers>, terminal: Terminal): Promise<number> {
  refuseExisting(file);
  for (const { key, option } of QUESTIONS) {
    const complaint = given[key] === undefined ? undefined : complaintOf(key, given[key]);
    if (complaint !== undefined) throw new Stop(EXIT.wrongCall, `${option}: ${complaint}`);
  }
  const missing = QUESTIONS.filter(({ key }) => given[key] === undefined);
  if (missing.length > 0 && !terminal.interactive) {
    const needed = missing.map(({ option, example }) => `${option} "${example}"`).join(' ');
    throw new Stop(EXIT.wrongCall, `Not everything is known yet. Also give, with your own figures: ${needed}`);
  }
  const asked = missing.length > 0 ? await ask(missing) : {};
  const answer = (key: Question['key']): string => given[key] ?? asked[key] ?? '';
  const text = starter({
    name: nameFrom(file),
    format: answer('format'),
    focalLength: lengthOf(answer('focalLength')),
    flangeDistance: lengthOf(answer('flangeDistance')),
    thickness: lengthOf(answer('thickness')),
    kerf: lengthOf(answer('kerf')),
  });
  const result = readDesign(text, file);
  if ('problems' in result) {
    const problems = result.problems.map(printProblem).join('\n\n');
    throw new Stop(EXIT.wrongCall, `With these figures it would be no design; nothing was written.\n\n${problems}`);
  }
  write(file, text);
  await terminal.out(`Wrote ${file}. Put your own figures where it says so, then: tailboard plan ${file}\n`);
  return EXIT.done;
}

async function ask(questions: readonly Question[]): Promise<Partial<Answers>> {
  const { isCancel, select, text } = await import('@clack/prompts');
  const answers: Partial<Record<Question['key'], string>> = {};
  for (const { key, ask: message, example } of questions) {
    const answer =
      key === 'format'
        ? await select({
            message,
            options: formats.map(({ name, title }) => ({ value: name, label: title })),
            output: process.stderr,
          })
        : await text({
            message,
            placeholder: example,
            validate: (value) => complaintOf(key, value ?? ''),
            output: process.stderr,
          });
    if (isCancel(answer)) throw new Stop(EXIT.interrupted, 'Nothing was written.');
    answers[key] = answer;
  }
  return answers;
}

/** What is wrong with an answer; undefined where nothing is. */
function complaintOf(key: Question['key'], answer: string): string | undefined {
  if (key === 'format') {
    const names = formats.map(({ name }) => name);
    return names.includes(answer)
      ? undefined
      : `"${answer}" is not in the table of formats. It has: ${names.join(', ')}.`;
  }
  const reading = parseLength(answer);
  return 'reason' in reading ? `${reading.reason} ${reading.accepted}` : undefined;
}

/** A length that was judged already. */
function lengthOf(text: string): number {
  const reading = parseLength(text);
  if ('reason' in reading) throw new Error(`${text} was taken for a length`);
  return reading.value;
}

/** heron-2.yaml becomes Heron 2. */
function nameFrom(file: string): string {
  const words = basename(file, extname(file))
    .split(/[-_\s]+/)
    .join(' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function write(file: string, text: string): void {
  let begun = false;
  try {
    writeFileSync(file, '', { flag: 'wx' });
    begun = true;
    writeFileSync(file, text, { flush: true });
  } catch (error) {
    if (begun) rmSync(file, { force: true });
    if (systemCode(error) === 'EEXIST') throw exists(file);
    if (systemCode(error) === 'ENOENT') throw new Stop(EXIT.wrongCall, `${file}: its folder does not exist.`);
    throw machineStop(file, error);
  }
}

/** Before anybody is asked anything; the writing makes sure once more. */
function refuseExisting(file: string): void {
  try {
    // a link that leads nowhere exists as well
    lstatSync(file);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return;
    throw machineStop(file, error);
  }
  throw exists(file);
}

const exists = (file: string): Stop => new Stop(EXIT.wrongCall, `${file}: exists already, and is left as it is.`);
