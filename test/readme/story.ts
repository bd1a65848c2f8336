import { copyFileSync, mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Ended, tailboard } from '../cli/scratch.js';

/**
 * The story of README.md: an unmarked lens on a kitchen table, measured, surveyed, planned, and its first portrait. Every
 * number in it is printed by the compiled program, command after command, in an empty folder.
 */
interface Step {
  /** Of the block in README.md: `story lens`. */
  readonly name: string;
  readonly words: readonly string[];
  /** Which part of what was printed is told. */
  readonly told: (printed: Pick<Ended, 'out' | 'err'>) => string;
}

const designs = join(import.meta.dirname, '../../designs/dunlin');
const SITTING = ['expose', 'dunlin.yaml', '--subject', '1.1m', '--log', 'sitting.yaml'];

/** What the log is told of the three sheets, in words of the command line. */
export const results: readonly (readonly string[])[] = [
  ['--result', 'too light', '--by', '1.5', '--bath-start', '24C', '--bath-end', '23C'],
  ['--result', 'too light', '--by', '0.5', '--bath-start', '24C', '--bath-end', '22.5C'],
  ['--result', 'right', '--bath-start', '24C', '--bath-end', '23.5C'],
];

export const steps: readonly Step[] = [
  {
    name: 'lens',
    words: ['lens', 'bench.yaml', '--at', '1:4'],
    told: ({ out }) => upTo(out, 'How it was reckoned'),
  },
  {
    name: 'survey',
    words: ['survey', 'drawer.yaml', '--format', '5x7', '--format', '8x10', '--sort', 'reach'],
    told: ({ out }) => upTo(out, '\n\n'),
  },
  {
    name: 'new',
    words: [
      'new',
      'first.yaml',
      ...['--format', '5x7', '--focal-length', '210mm', '--flange-distance', '200mm'],
      ...['--thickness', '4.05mm', '--kerf', '0.15mm'],
    ],
    told: () => '',
  },
  {
    name: 'write',
    words: ['lens', 'bench.yaml', '--write', 'first.yaml'],
    told: ({ err }) => from(err, 'lens.focalLength'),
  },
  {
    name: 'plan',
    words: ['plan', 'dunlin.yaml'],
    told: ({ out }) => sections(out, /^Dunlin|^Lens|^Focus|^Findings/),
  },
  { name: 'first', words: [...SITTING, '--batch', 'H 2207'], told: ({ out }) => upTo(out, 'Taken for granted') },
  ...results.map(
    (result, i): Step => ({
      name: ['second', 'third', 'done'][i] ?? '',
      words: [...SITTING, ...result],
      told: ({ out }) => (i < 2 ? `${upTo(out, '\n\n')}\n\n…\n\n${flashLine(out)}` : upTo(out, '\n\n')),
    }),
  ),
  { name: 'card', words: ['expose', 'dunlin.yaml', '--card'], told: ({ out, err }) => out + err },
];

const upTo = (text: string, mark: string): string => {
  const at = text.indexOf(mark);
  if (at < 0) throw new Error(`nothing like ${mark} was printed:\n${text}`);
  return text.slice(0, at).trimEnd();
};

const from = (text: string, mark: string): string => text.slice(upTo(text, mark).length).trim();

/** Some sections of a page, an ellipsis where others stand. */
function sections(out: string, wanted: RegExp): string {
  const all = out.trimEnd().split('\n\n');
  const shown = all.map((section) => (wanted.test(section) ? section : '…'));
  return shown.filter((section, i) => section !== '…' || shown[i - 1] !== '…').join('\n\n');
}

const flashLine = (out: string): string => /^ {2}Flash.*$/m.exec(out)?.[0] ?? '';

/** What each command printed, and the files that they left. */
export interface Told {
  readonly ended: Readonly<Record<string, Ended>>;
  /** Text of a file in the folder of the story. */
  readonly folder: string;
}

/** Plays the story in an empty folder; `clear` takes that away again. */
export async function playStory(): Promise<Told & { readonly clear: () => void }> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'tailboard-story-')));
  for (const file of ['bench.yaml', 'drawer.yaml', 'dunlin.yaml'])
    copyFileSync(join(designs, file), join(folder, file));
  const ended: Record<string, Ended> = {};
  for (const { name, words } of steps) ended[name] = await tailboard(words, folder);
  return { ended, folder, clear: () => rmSync(folder, { recursive: true, force: true }) };
}

/** The page with each block of the story written anew. */
export const withStory = (page: string, { ended }: Told): string =>
  steps.reduce((text, { name, words, told }) => {
    const open = `<!-- story ${name} -->\n`;
    const close = `<!-- /story ${name} -->`;
    const [start, end] = [text.indexOf(open), text.indexOf(close)];
    if (start < 0 || end < start) throw new Error(`the page has no place for the story's ${name}`);
    const shown = told(ended[name] ?? { out: '', err: '' });
    const command = `$ tailboard ${words.map((word) => (/\s/.test(word) ? `"${word}"` : word)).join(' ')}`;
    const block = `\`\`\`\n${command}\n${shown === '' ? '' : `${shown.trimEnd()}\n`}\`\`\`\n`;
    return `${text.slice(0, start + open.length)}\n${block}\n${text.slice(end)}`;
  }, page);
