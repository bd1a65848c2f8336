/** A sheet of paper, upright, and where on it the book is printed. mm. */
export interface Paper {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** ISO 216 and ANSI/ASME Y14.1 (8 1/2 in × 11 in), from memory. */
export const papers: { readonly [name in 'A4' | 'Letter']: Paper } = {
  A4: { name: 'A4', width: 210, height: 297 },
  Letter: { name: 'Letter', width: 215.9, height: 279.4 },
};

/** How wide a book is printed on either paper, so that no line breaks and no drawing is scaled differently. */
export const TEXT_WIDTH = 174;
/** Above what is printed, and below it, where the foot stands. A drawing 225 high and its title fit on either paper. */
export const TOP = 16;
export const BOTTOM = 20;
