import { UNSEEN } from '../units/quantity.js';

/** What is wrong with a design file, where it stands, and what would be taken instead. */
export interface Problem {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in characters of the line. */
  readonly column: number;
  /** Length of the token at fault; 0 where nothing in the file is at fault but something is missing. */
  readonly length: number;
  /** Path of the key, such as plywood.thickness; empty where the file as a whole is meant. */
  readonly path: string;
  readonly what: string;
  readonly accepted: string;
  /** The line as written; null where none is at fault. */
  readonly sourceLine: string | null;
}

/** From here on a line is shown in part, around the token. */
const LONGEST_SHOWN = 110;
const LEAD = 40;
const INDENT = '    ';

/**
 * A problem in the form in which compilers speak:
 *
 *     heron.yaml:13:23  plywood.thickness: "4.05 mn" is not a length.
 *         plywood: { thickness: 4.05 mn, sheet: [600 mm, 400 mm] }
 *                               ^^^^^^^
 *         Write 4.05 mm, or an inch fraction such as 5/32 in.
 */
export function printProblem(problem: Problem): string {
  const { file, line, column, path, what, accepted } = problem;
  const head = `${file}:${line}:${column}  ${path === '' ? '' : `${path}: `}${what}`;
  return [head, ...shown(problem), ...(accepted === '' ? [] : [INDENT + accepted])].join('\n');
}

function shown({ sourceLine, column, length }: Problem): readonly string[] {
  if (sourceLine === null || sourceLine.trim() === '') return [];
  const from = sourceLine.length > LONGEST_SHOWN ? Math.max(0, column - 1 - LEAD) : 0;
  const part = sourceLine.slice(from, from + LONGEST_SHOWN);
  const before = from > 0 ? '…' : '';
  const after = from + LONGEST_SHOWN < sourceLine.length ? '…' : '';
  const start = column - 1 - from + before.length;
  const carets = Math.max(1, Math.min(length, part.length - (column - 1 - from)));
  return [INDENT + before + visible(part) + after, INDENT + ' '.repeat(start) + '^'.repeat(carets)];
}

/** One sign for each character, so that the caret stays under its token and nothing acts on the terminal. */
const visible = (line: string): string =>
  line
    .replaceAll('\t', ' ')
    .replace(UNSEEN, '�')
    .replace(/\p{Cc}/gu, '�');
