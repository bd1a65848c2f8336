import { isMap, isSeq, type Node, visit } from 'yaml';
import {
  columnAt,
  isComment,
  type Lexeme,
  lexemesOf,
  lineEnd,
  lineStop,
  pairsOf,
  type Refusal,
  SHARED,
  type Splice,
  spanOf,
  UNSAFE,
} from './splice.js';
import { endOf, endOfPair, isFlow, lastWord, type Stop, trailTo, type Written } from './trail.js';
import { isHolding, stepsOf, valueAt } from './written-text.js';
import type { Span } from './yaml.js';

/** What is to be done to a text, and the part of it that goes with its comments. */
export interface Change {
  readonly splices: readonly Splice[];
  readonly gone?: Span;
}

const AS_IT_IS: Change = { splices: [] };

/**
 * Takes out a key or an entry of a list, and each group or list that holds nothing else. A comment stays, also the one
 * behind it, unless it stands within what is taken out.
 */
export function takeOut(written: Written, path: string): Change | Refusal {
  const { text, aliased } = written;
  const trail = trailTo(written, stepsOf(path));
  if ('what' in trail) return trail;
  const { stops, rest } = trail;
  if (rest.length > 0) return AS_IT_IS;
  const depth = emptied(written, stops);
  const [wanted, taken, holder] = [endOf(stops), stops[depth], stops[depth - 1]];
  if (taken === undefined || holder === undefined)
    return { what: 'The file would hold nothing.', accepted: 'Keep one key.' };
  if (holdsShared(taken.node, aliased)) return SHARED;
  const signs = lexemesOf(text);
  const gone = spanOfStop(written, wanted, holderOf(stops, stops.length - 1), signs);
  const span = spanOfStop(written, taken, holder, signs);
  if (gone === null || span === null) return { what: UNSAFE, accepted: `Take out by hand: ${path}.` };
  const kept = signs.filter((one) => isComment(one) && isIn(one, span) && !isIn(one, gone)).map((one) => one.text);
  const { node } = holder;
  if (isSole(written, holder)) return emptyGroup(written, holder, { span, gone, kept });
  if (isFlow(node)) {
    if (kept.length === 0) return { splices: outOfFlow(text, node, span, signs), gone };
    return { what: 'Comments stand between the brackets.', accepted: `Take out by hand: ${path}.` };
  }
  return { splices: [outOfBlock(text, node, span, { kept, signs })], gone };
}

const holderOf = (stops: readonly Stop[], depth: number): Stop => endOf(stops.slice(0, Math.max(1, depth)));

const isIn = ({ at }: Lexeme, [from, to]: Span): boolean => at >= from && at < to;

/** From which stop on nothing else is held. */
function emptied(written: Written, stops: readonly Stop[]): number {
  let depth = stops.length - 1;
  while (depth > 1 && stops[depth - 1]?.pair != null && isSole(written, holderOf(stops, depth))) depth -= 1;
  return depth;
}

/** Whether it holds one thing alone. */
function isSole({ outline }: Written, { path }: Stop): boolean {
  const value = valueAt(outline.value, path);
  return isHolding(value) && Object.keys(value).length === 1;
}

function holdsShared(node: Node | null, aliased: ReadonlySet<string>): boolean {
  const names: unknown[] = [];
  if (node !== null) visit(node, { Value: (_, { anchor }) => void names.push(anchor) });
  return names.some((name) => typeof name === 'string' && aliased.has(name));
}

/** From the key, or the dash of an entry, to the last word of the value. */
function spanOfStop(written: Written, stop: Stop, holder: Stop, signs: readonly Lexeme[]): Span | null {
  const { text } = written;
  const { pair, node } = stop;
  if (pair !== null) return [spanOf(pair.key)[0], endOfPair(written, pair, stop.path)];
  if (node === null || holder.node === null) return null;
  const [from, to] = [spanOf(node)[0], lastWord(text, node)];
  if (isFlow(holder.node)) return [from, to];
  const column = columnAt(text, spanOf(holder.node)[0]);
  const dash = signs.findLast(({ at, text: sign }) => sign === '-' && at < from && columnAt(text, at) === column);
  return dash === undefined ? null : [dash.at, to];
}

/** An entry of a list, or the file, of which nothing is left: its braces stay. */
function emptyGroup(
  { text }: Written,
  { node, path }: Stop,
  { span, gone, kept }: { readonly span: Span; readonly gone: Span; readonly kept: readonly string[] },
): Change | Refusal {
  if (path.length === 0) return { what: 'The file would hold nothing.', accepted: 'Keep one key.' };
  if (node === null || kept.length > 0) return { what: UNSAFE, accepted: 'Take it out by hand.' };
  if (!isFlow(node)) return { splices: [{ span, text: '{}' }], gone };
  const [from, to] = spanOf(node);
  const inside = text.slice(from + 1, to - 1);
  return { splices: [{ span: inside.includes('#') ? span : [from + 1, to - 1], text: '' }], gone };
}

/** An item between brackets, with one comma. */
function outOfFlow(text: string, node: Node | null, [from, to]: Span, signs: readonly Lexeme[]): readonly Splice[] {
  const commas = signs.filter((one) => one.text === ',');
  const comments = signs.filter(isComment);
  const isClear = (span: Span) => !comments.some((one) => isIn(one, span));
  const starts = startsIn(node);
  const next = starts.find((start) => start > from) ?? (node === null ? to : spanOf(node)[1]);
  const before = starts.findLast((start) => start < from) ?? from;
  const behind = commas.find(({ at }) => at >= to && at < next);
  if (behind !== undefined) {
    const end = behind.at + 1;
    return isClear([to, end]) ? [wholeLine(text, [from, end])] : [cut(from, to), cut(behind.at, end)];
  }
  const ahead = commas.findLast(({ at }) => at > before && at < from);
  if (ahead === undefined) return [cut(from, to)];
  return isClear([ahead.at, from]) ? [cut(ahead.at, to)] : [cut(ahead.at, ahead.at + 1), wholeLine(text, [from, to])];
}

const cut = (from: number, to: number): Splice => ({ span: [from, to], text: '' });

function startsIn(node: Node | null): readonly number[] {
  if (isMap(node)) return pairsOf(node).map(({ key }) => spanOf(key)[0]);
  if (isSeq<Node>(node)) return node.items.map((item) => spanOf(item)[0]);
  return [];
}

/** With its line where nothing else stands on it, else with the blanks that would be one too many. */
function wholeLine(text: string, [from, to]: Span): Splice {
  const start = from - columnAt(text, from);
  const stop = lineStop(text, to);
  const [lead, behind] = [text.slice(start, from), text.slice(to, stop)];
  if (behind.trim() !== '') return cut(from, stop - behind.trimStart().length);
  return lead.trim() === '' && start > 0 ? cut(start, nextLine(text, stop)) : cut(start + lead.trimEnd().length, to);
}

const nextLine = (text: string, stop: number): number => {
  const line = text.indexOf('\n', stop);
  return line < 0 ? text.length : line + 1;
};

/** A key or an entry on lines of its own. */
function outOfBlock(
  text: string,
  node: Node | null,
  [from, to]: Span,
  { kept, signs }: { readonly kept: readonly string[]; readonly signs: readonly Lexeme[] },
): Splice {
  const isOnOwnLine = text.slice(from - columnAt(text, from), from).trim() === '';
  const next = startsIn(node).find((start) => start > from);
  const remarked = next !== undefined && signs.some((one) => isComment(one) && isIn(one, [to, next]));
  // the first key of an entry, behind its dash: the next one takes its place
  if (!isOnOwnLine && next !== undefined && !remarked && kept.length === 0) return cut(from, next);
  return clearedLines(text, [from, to], kept);
}

/** Takes out lines; comments that are kept, and the one behind, get lines of their own there. */
export function clearedLines(text: string, [from, to]: Span, kept: readonly string[]): Splice {
  const start = from - columnAt(text, from);
  const stop = lineStop(text, to);
  const lead = text.slice(start, from);
  const remarks = [...kept, text.slice(to, stop).trim()].filter((remark) => remark !== '');
  if (remarks.length === 0 && lead.trim() === '') {
    const end = nextLine(text, stop);
    if (end > stop) return cut(start, end);
    // the last line of a file that does not end in a line end
    return cut(start - (/\r?\n$/.exec(text.slice(0, start))?.[0].length ?? 0), end);
  }
  return { span: [from, stop], text: remarks.join(lineEnd(text) + ' '.repeat(lead.length)) };
}
