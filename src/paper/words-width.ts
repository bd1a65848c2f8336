/**
 * How wide words may come out on paper. Whoever opens a picture has letters of his own, so the widest of the common
 * ones without serifs are reckoned with; a document with letters of its own takes narrower ones.
 *
 * Advance widths of the letters from the blank to ~ in thousandths of the size, rounded up. Source: DejaVu Sans and
 * DejaVu Sans Bold 2.37, their tables hmtx.
 */
const regular = widths(
  '318 401 460 838 637 951 780 275 391 391 500 838 318 361 318 337 637 637 637 637 637 637 637 637 637 637 337 337 838 838 838 531 ' +
    '1000 685 687 699 771 632 576 775 752 295 295 656 558 863 749 788 604 788 695 635 611 732 685 989 686 611 686 391 337 391 838 500 ' +
    '500 613 635 550 635 616 353 635 634 278 278 580 278 975 634 612 635 635 412 521 393 634 592 818 592 592 525 637 337 637 838',
);
const bold = widths(
  '349 457 521 838 696 1002 873 307 458 458 523 838 380 416 380 366 696 696 696 696 696 696 696 696 696 696 400 400 838 838 838 581 ' +
    '1000 774 763 734 831 684 684 821 837 373 373 775 638 996 837 851 733 851 771 721 683 813 774 1104 771 725 726 458 366 458 838 500 ' +
    '500 675 716 593 716 679 436 716 712 343 343 666 343 1042 712 688 716 716 494 596 479 712 652 924 646 652 583 712 366 712 838',
);

function widths(thousandths: string): ReadonlyMap<string, number> {
  return new Map(thousandths.split(' ').map((width, i) => [String.fromCharCode(0x20 + i), Number(width) / 1000]));
}

/** Signs that texts have beside those, with the widths of the same tables: thin ones, that would stand in holes otherwise. */
const SIGNS = [...'’‘“”–—…×·°±≤≥∞²³µ−•'];
const regularSigns = signs('318 318 519 519 500 1000 1000 838 318 500 838 838 838 834 401 401 637 838 590');
const boldSigns = signs('380 380 658 658 500 1000 1000 838 380 500 838 838 838 834 438 438 736 838 640');

function signs(thousandths: string): ReadonlyMap<string, number> {
  const all = thousandths.split(' ').map(Number);
  return new Map(SIGNS.map((sign, i) => [sign, (all[i] ?? 0) / 1000]));
}

/** Of any other letter: a bold Œ is 1.17 wide, fractions and arrows less. */
const WIDEST = 1.17;

const PLAIN = /^[ -~]*$/;

/** Width of a line of words, mm; a letter with an accent is as wide as without. */
export function wordsWidth(text: string, { size, heavy }: { readonly size: number; readonly heavy: boolean }): number {
  const [known, knownSigns] = heavy ? [bold, boldSigns] : [regular, regularSigns];
  const letters = PLAIN.test(text) ? [...text] : [...text.normalize('NFD').replace(/\p{M}/gu, '')];
  return size * letters.reduce((sum, letter) => sum + (known.get(letter) ?? knownSigns.get(letter) ?? WIDEST), 0);
}

/** Breaks a text into lines no wider than that, mm: between words where it can, inside a word that is wider by itself. */
export function wrapWords(
  text: string,
  width: number,
  letters: { readonly size: number; readonly heavy: boolean },
): readonly string[] {
  const fits = (line: string) => wordsWidth(line, letters) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (line !== '' && !fits(line + letter)) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}
