/** A number between what may stand before and behind it: `203.5 mm`, `f/6.3`, `1:2.5`, `1/60 s`, `-0.02 mm`. */
const BEHIND =
  /^(\s*(?:f\/|\d+(?:\.\d+)?:|1\/(?=\d+(?:\.\d+)?\s*s?\s*$))?)(-?\d+(?:\.\d+)?)(\s*(?:["%]|°?[a-z]+(?:\/[a-z]+[23²³]?)?)?\s*)$/i;
/** Above life size it is the first of the two that counts: `2.5:1`. */
const AHEAD = /^(\s*)(\d+(?:\.\d+)?)(:1\s*)$/;

/**
 * The value that stands one step further: by one in its last written digit, so that whoever writes 203.5 mm gets 203.6 mm
 * and whoever writes 203.50 mm gets 203.51 mm.
 *
 * @param by 1 up, -1 down; 10 and -10 by ten times as much
 * @param mayBeNegative whether the key takes what is less than nothing: only then does 0 step down
 * @returns null where there is no number, or where it would fall through 0 or to nothing that can be divided by
 */
export function stepped(value: string, by: number, mayBeNegative: boolean): string | null {
  const parts = (aboveOne(value) ? AHEAD : BEHIND).exec(value);
  if (parts === null) return null;
  const [, before = '', number = '', after = ''] = parts;
  const decimals = number.split('.')[1]?.length ?? 0;
  const scale = 10 ** decimals;
  const next = Math.round(Number(number) * scale) + by;
  const divides = before.trim() !== '' || after.startsWith(':');
  if (!number.startsWith('-') && next < 0 && (Number(number) > 0 || !mayBeNegative)) return null;
  if (divides && next <= 0) return null;
  return before + (next / scale).toFixed(decimals) + after;
}

const aboveOne = (value: string): boolean => {
  const ratio = AHEAD.exec(value);
  return ratio !== null && Number(ratio[2]) > 1;
};

export interface SteppedLine {
  readonly value: string;
  /** Where the caret then stands. */
  readonly caret: number;
}

/** Steps the one of several values, with commas between, in which the caret stands. */
export function steppedAt(line: string, caret: number, by: number, mayBeNegative: boolean): SteppedLine | null {
  const values = line.split(',');
  const at = line.slice(0, caret).split(',').length - 1;
  const next = stepped(values[at] ?? '', by, mayBeNegative);
  if (next === null) return null;
  const ahead = values.slice(0, at).join(',').length + (at > 0 ? 1 : 0);
  const trailing = next.length - next.trimEnd().length;
  return {
    value: values.with(at, next).join(','),
    caret: Math.min(caret + next.length - (values[at] ?? '').length, ahead + next.length - trailing),
  };
}
