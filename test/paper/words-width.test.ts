import { readFileSync } from 'node:fs';
import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { wordsWidth } from '../../src/paper/words-width.js';
import { fontFile, fonts } from '../files/read-pdf.js';

/** Measures in the font's own file. */
const measure = (font: Uint8Array): ((text: string) => number) => {
  const document = new PDFDocument({ autoFirstPage: false }).font(font, 1);
  return (text) => document.widthOfString(text);
};

const faces = [
  { name: 'DejaVuSans', heavy: false },
  { name: 'DejaVuSans-Bold', heavy: true },
].map(({ name, heavy }) => ({ name, heavy, measured: measure(readFileSync(fontFile(name))) }));

const printable = Array.from({ length: 95 }, (_, i) => String.fromCharCode(0x20 + i)).concat([
  ...'’‘“”–—…×·°±≤≥∞²³µ−•',
]);

test.each(faces)('the letters of $name are as wide as in its file, to a thousandth', ({ heavy, measured }) => {
  for (const letter of printable) {
    const width = wordsWidth(letter, { size: 1, heavy });
    expect(width - measured(letter), letter).toBeGreaterThan(-1e-9);
    expect(width - measured(letter), letter).toBeLessThan(1e-3);
  }
});

test.each(['Größe ÄÖÜ Łódź', '½ ⅞ 1:2 × ± ° – · → ≤ ∞', 'Dunlin, revision 3f2a91', 'Schlagschatten œuvre Œ Æ ß ø'])(
  'no words come out wider than said: %s',
  (text) => {
    for (const { heavy, measured } of faces)
      expect(wordsWidth(text, { size: 3, heavy })).toBeGreaterThanOrEqual(3 * measured(text) - 1e-9);
  },
);

test('the letters of documents are narrower', () => {
  const [regular, bold] = [measure(fonts.regular), measure(fonts.bold)];
  for (const letter of printable) {
    expect(regular(letter)).toBeLessThan(wordsWidth(letter, { size: 1, heavy: false }));
    expect(bold(letter)).toBeLessThan(wordsWidth(letter, { size: 1, heavy: true }));
  }
});
