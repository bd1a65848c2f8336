/** Of the engraving's letters, for capitals that are 662 tall: how far to the next, and from where to where the strokes go. */
const letters: Readonly<Record<string, readonly [width: number, left: number, right: number]>> = {
  '0': [630, 63, 504],
  '1': [630, 158, 315],
  '2': [630, 63, 504],
  '3': [630, 63, 504],
  '4': [630, 63, 536],
  '5': [630, 63, 504],
  '6': [630, 94, 504],
  '7': [630, 63, 504],
  '8': [630, 63, 504],
  '9': [630, 63, 472],
  ':': [252, 63, 126],
  '.': [252, 63, 126],
  '+': [819, 94, 662],
  i: [252, 63, 126],
  n: [598, 94, 441],
  f: [378, 32, 284],
  s: [536, 63, 410],
  t: [378, 32, 284],
  o: [598, 63, 472],
  p: [598, 94, 472],
  m: [945, 94, 788],
};
const CAPITAL = 662;

/**
 * From where to where the strokes of a word go, its line beginning at 0: what `lettering` draws, for the letters that
 * scales are made of. A table, so that a camera is sized without a font being loaded.
 *
 * @param height of the capitals, mm
 */
export function wordExtent(text: string, height: number): { readonly left: number; readonly right: number } {
  const scale = height / CAPITAL;
  let [begin, left, right] = [0, Infinity, -Infinity];
  for (const letter of text) {
    const known = letters[letter];
    if (known === undefined) throw new Error(`the width of ${letter} is not in the table`);
    left = Math.min(left, begin + known[1]);
    right = Math.max(right, begin + known[2]);
    begin += known[0];
  }
  return { left: left * scale, right: right * scale };
}
