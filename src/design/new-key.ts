import type { YAMLMap } from 'yaml';
import { columnAt, type KeyAndValue, keyOf, lineEnd, lineStop, pairsOf, type Splice, spanOf } from './splice.js';

/** The last of the keys that come before a new one in the order of the schema. */
export function siblingBefore(map: YAMLMap, order: readonly string[], key: string): KeyAndValue | null {
  const place = order.indexOf(key);
  const placeOf = (pair: KeyAndValue) => order.indexOf(keyOf(pair) ?? '');
  const earlier = pairsOf(map).filter((pair) => placeOf(pair) >= 0 && placeOf(pair) < place);
  return earlier.reduce<KeyAndValue | null>(
    (last, pair) => (last === null || placeOf(pair) > placeOf(last) ? pair : last),
    null,
  );
}

/** Behind which key a new one is put, and where that one's value ends; before all others where null. */
export type Behind = { readonly pair: KeyAndValue; readonly end: number } | null;

/** Puts a key with its value into a group that has not got it, in the style of the group. */
export function newKey(text: string, map: YAMLMap, behind: Behind, written: string): Splice {
  const put = (at: number, what: string): Splice => ({ span: [at, at], text: what });
  if (map.flow === true) {
    if (behind !== null) return put(behind.end, `, ${written}`);
    const open = spanOf(map)[0] + 1;
    if (map.items.length === 0) return put(open, ` ${written}${text[open] === '}' ? ' ' : ''}`);
    return put(open, ` ${written},`);
  }
  if (behind !== null) {
    const column = ' '.repeat(columnAt(text, spanOf(behind.pair.key)[0]));
    return put(lineStop(text, behind.end), lineEnd(text) + column + written);
  }
  const [first] = pairsOf(map);
  if (first === undefined) throw new Error('a group down the page has a key');
  const at = spanOf(first.key)[0];
  const column = columnAt(text, at);
  const lead = text.slice(at - column, at);
  const next = written + lineEnd(text) + ' '.repeat(column);
  if (lead.trim() !== '') return put(at, next);
  return put(aboveRemarks(text, at - column, column), ' '.repeat(column) + written + lineEnd(text));
}

/** What is said on the lines above a key stays with it; what is said above the first key of a file is about the file. */
function aboveRemarks(text: string, lineStart: number, column: number): number {
  let at = lineStart;
  while (column > 0 && at > 0) {
    const above = text.lastIndexOf('\n', at - 2) + 1;
    if (!/^\s*#/.test(text.slice(above, at))) break;
    at = above;
  }
  return at;
}
