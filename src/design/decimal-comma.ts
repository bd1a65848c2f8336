import { isScalar, type Node } from 'yaml';

export type ListItem =
  | { readonly node: Node | null }
  | { readonly joined: string; readonly span: readonly [number, number] };

/**
 * Puts together again what a decimal comma has split in a list: to YAML `[4,05 mm, 4,08 mm]` has four items. A comma with
 * no blank behind it is taken for a decimal one where the list has other commas with a blank, where the second half begins
 * with 0, or where it alone has a unit. `[600,400]` stays two items.
 */
export function joinDecimalCommas(text: string, items: readonly (Node | null)[]): readonly ListItem[] {
  const spans = items.map((item) => (isScalar(item) && item.range ? ([item.range[0], item.range[1]] as const) : null));
  const between = (index: number): string => {
    const [here, next] = [spans[index], spans[index + 1]];
    return here && next ? text.slice(here[1], next[0]) : '';
  };
  const mixed = items.some((_, index) => /^,\s+$/.test(between(index)));
  const joined: ListItem[] = [];
  for (let index = 0; index < items.length; index++) {
    const [here, next] = [spans[index], spans[index + 1]];
    const halves = here && next ? [text.slice(here[0], here[1]), text.slice(next[0], next[1])] : [];
    const [first = '', second = ''] = halves;
    if (here && next && between(index) === ',' && isDecimalComma(first, second, mixed)) {
      joined.push({ joined: text.slice(here[0], next[1]), span: [here[0], next[1]] });
      index += 1;
    } else joined.push({ node: items[index] ?? null });
  }
  return joined;
}

/** Whether a comma with no blank round it is a decimal one: what stands before and behind it, and whether others have blanks. */
function isDecimalComma(first: string, second: string, mixed: boolean): boolean {
  if (!/^[-+]?\d+$/.test(first) || !/^\d/.test(second)) return false;
  const unlike = first.length < 3 && (/^0\d/.test(second) || first === '0' || /^\d+\s*[^\d\s]+$/.test(second));
  return mixed || unlike;
}

/** The values of a list as somebody types it, without brackets; a decimal comma is left in its value, as in a list of a file. */
export function splitValues(typed: string): readonly string[] {
  const mixed = /,\s/.test(typed);
  const values: string[] = [];
  let before = '';
  for (const part of typed.split(',')) {
    const decimal = !/\s$/.test(before) && !/^\s/.test(part) && isDecimalComma(before.trim(), part.trim(), mixed);
    if (decimal) values.push(`${values.pop()},${part.trim()}`);
    else values.push(part.trim());
    before = decimal ? '' : part;
  }
  return values.filter((value) => value !== '');
}
