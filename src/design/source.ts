import type { Problem } from './problem.js';

/** What kind of file it is: its name in messages, what to do where there is nothing in it, and what none of them exceeds. */
export interface FileKind {
  /** `design`, `list of lenses` */
  readonly noun: string;
  readonly begin: string;
  /** Characters. */
  readonly largest: number;
  /** Values, those included that aliases stand for. */
  readonly mostValues: number;
}

/** Hand-written designs have two or three kilobytes and some hundred values; a hundred times that is something else. */
export const designFile: FileKind = {
  noun: 'design',
  begin: 'Write a design, or let `tailboard new` write one to start from.',
  largest: 256 * 1024,
  mostValues: 20000,
};

/** The text of a file that people write, and how to point into it. */
export interface Source {
  readonly file: string;
  readonly text: string;
  readonly kind: FileKind;
}

/** What no text file holds: control characters other than tab and line end, lone halves of pairs, what was not UTF-8. */
const UNREADABLE = /(?![\t\n\r])[\p{Cc}\p{Cs}\ufffd\ufeff]/u;

interface Fault {
  readonly path: string;
  readonly what: string;
  readonly accepted: string;
}

/** A problem at a span of characters; without a span it is the file as a whole. */
export function problemAt(
  { file, text }: Omit<Source, 'kind'>,
  span: readonly [number, number] | null,
  fault: Fault,
): Problem {
  if (span === null) return { file, line: 1, column: 1, length: 0, sourceLine: null, ...fault };
  const start = Math.min(span[0], text.length);
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const nextLine = text.indexOf('\n', start);
  const sourceLine = text.slice(lineStart, nextLine < 0 ? text.length : nextLine).replace(/\r$/, '');
  const column = start - lineStart + 1;
  const length = Math.max(1, Math.min(span[1], lineStart + sourceLine.length) - start);
  return { file, line: text.slice(0, lineStart).split('\n').length, column, length, sourceLine, ...fault };
}

/** What makes a text no such file before its YAML is looked at; null where nothing does. */
export function textProblem(source: Source): Problem | null {
  const { text, kind } = source;
  const give = `Give the YAML file of a ${kind.noun}`;
  const whole = (what: string, accepted: string) => problemAt(source, null, { path: '', what, accepted });
  if (text.length > kind.largest)
    return whole(
      `The file holds ${Math.ceil(text.length / 1024)} kB; no ${kind.noun} has more than ${kind.largest / 1024} kB.`,
      `${give}.`,
    );
  if (text.includes('\0')) return whole('The file is binary, not text.', `${give}, saved as UTF-8.`);
  if (text.trim() === '') return whole('The file is empty.', kind.begin);
  const unreadable = UNREADABLE.exec(text);
  if (unreadable === null) return null;
  return problemAt(source, [unreadable.index, unreadable.index + 1], {
    path: '',
    what: 'Here stands a character that cannot be read.',
    accepted: 'Save the file as UTF-8 text, and delete the character.',
  });
}
