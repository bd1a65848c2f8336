import type { Problem } from './problem.js';

/** The text of a design file, and how to point into it. */
export interface Source {
  readonly file: string;
  readonly text: string;
}

/** Hand-written designs have two or three kilobytes; a hundred times that is something else. */
const LARGEST = 256 * 1024;

/** What no text file holds: control characters other than tab and line end, lone halves of pairs, what was not UTF-8. */
const UNREADABLE = /(?![\t\n\r])[\p{Cc}\p{Cs}\ufffd\ufeff]/u;

interface Fault {
  readonly path: string;
  readonly what: string;
  readonly accepted: string;
}

/** A problem at a span of characters; without a span it is the file as a whole. */
export function problemAt({ file, text }: Source, span: readonly [number, number] | null, fault: Fault): Problem {
  if (span === null) return { file, line: 1, column: 1, length: 0, sourceLine: null, ...fault };
  const start = Math.min(span[0], text.length);
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const nextLine = text.indexOf('\n', start);
  const sourceLine = text.slice(lineStart, nextLine < 0 ? text.length : nextLine).replace(/\r$/, '');
  const column = start - lineStart + 1;
  const length = Math.max(1, Math.min(span[1], lineStart + sourceLine.length) - start);
  return { file, line: text.slice(0, lineStart).split('\n').length, column, length, sourceLine, ...fault };
}

/** What makes a text no design file before its YAML is looked at; null where nothing does. */
export function textProblem(source: Source): Problem | null {
  const { text } = source;
  const whole = (what: string, accepted: string) => problemAt(source, null, { path: '', what, accepted });
  if (text.length > LARGEST)
    return whole(
      `The file holds ${Math.ceil(text.length / 1024)} kB; no design has more than ${LARGEST / 1024} kB.`,
      'Give the YAML file of a design.',
    );
  if (text.includes('\0'))
    return whole('The file is binary, not text.', 'Give the YAML file of a design, saved as UTF-8.');
  if (text.trim() === '')
    return whole('The file is empty.', 'Write a design, or let `tailboard new` write one to start from.');
  const unreadable = UNREADABLE.exec(text);
  if (unreadable === null) return null;
  return problemAt(source, [unreadable.index, unreadable.index + 1], {
    path: '',
    what: 'Here stands a character that cannot be read.',
    accepted: 'Save the file as UTF-8 text, and delete the character.',
  });
}
