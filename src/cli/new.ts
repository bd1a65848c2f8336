import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { parseLength, printProblem, readDesign, type StarterAnswers, starter } from '../index.js';
import { machineStop, systemCode } from './machine-error.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';

type Key = Exclude<keyof StarterAnswers, 'name'>;

interface Question {
  readonly key: Key;
  readonly option: string;
  readonly ask: string;
  readonly example: string;
}

const QUESTIONS: readonly Question[] = [
  { key: 'format', option: '--format', ask: 'Which format?', example: '5x7' },
  { key: 'focalLength', option: '--focal-length', ask: 'Focal length of the lens?', example: '210 mm' },
  {
    key: 'flangeDistance',
    option: '--flange-distance',
    ask: 'Flange distance: from the lens seat to the film at infinity?',
    example: '203.5 mm',
  },
  { key: 'thickness', option: '--thickness', ask: 'Thickness of the plywood, measured?', example: '4.05 mm' },
  { key: 'kerf', option: '--kerf', ask: 'How wide does the laser cut?', example: '0.15 mm' },
];

/** Writes a design to start from. What is not given is asked for where somebody sits there to answer. */
export async function newDesign(
  file: string,
  given: Partial<Record<Key, string>>,
  terminal: Terminal,
): Promise<number> {
  if (existsSync(file)) throw exists(file);
  for (const { key, option } of QUESTIONS) {
    const complaint = given[key] === undefined ? undefined : complaintOf(key, given[key]);
    if (complaint !== undefined) throw new Stop(EXIT.wrongCall, `${option}: ${complaint}`);
  }
  const missing = QUESTIONS.filter(({ key }) => given[key] === undefined);
  if (missing.length > 0 && !terminal.interactive)
    throw new Stop(
      EXIT.wrongCall,
      `Also needed: ${missing.map(({ option, example }) => `${option} "${example}"`).join(', ')}.`,
    );
  const answers = { ...given, ...(missing.length > 0 ? await ask(missing) : {}) } as Record<Key, string>;
  const text = starter({ name: nameFrom(file), ...answers });
  const result = readDesign(text, file);
  if ('problems' in result) throw new Stop(EXIT.wrongCall, result.problems.map(printProblem).join('\n\n'));
  write(file, text);
  await terminal.out(`Wrote ${file}. Next: tailboard plan ${file}\n`);
  return EXIT.done;
}

async function ask(questions: readonly Question[]): Promise<Partial<Record<Key, string>>> {
  const { isCancel, text } = await import('@clack/prompts');
  const answers: Partial<Record<Key, string>> = {};
  for (const { key, ask: message, example } of questions) {
    const answer = await text({
      message,
      placeholder: example,
      validate: (value) => complaintOf(key, value ?? ''),
      output: process.stderr,
    });
    if (isCancel(answer)) throw new Stop(EXIT.interrupted, 'Nothing written.');
    answers[key] = answer;
  }
  return answers;
}

/** What is wrong with an answer; undefined where nothing is. A format is judged with the whole file. */
function complaintOf(key: Key, answer: string): string | undefined {
  if (key === 'format') return answer.trim() === '' ? 'A format is needed, such as 5x7.' : undefined;
  const reading = parseLength(answer);
  return 'reason' in reading ? `${reading.reason} ${reading.accepted}` : undefined;
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
    throw machineStop(file, error);
  }
}

const exists = (file: string): Stop => new Stop(EXIT.wrongCall, `${file}: exists already, and is left as it is.`);
