/** A sheet of paper, upright, mm. */
export interface Paper {
  readonly width: number;
  readonly height: number;
}

/** How wide a document is printed on any paper, so that no line breaks and no drawing is scaled differently. */
export const TEXT_WIDTH = 174;
/** Above what is printed, and below it, where the foot stands. A drawing 225 high and its title fit on Letter too. */
export const TOP = 14;
export const BOTTOM = 18;

/** What a page holds, mm. */
export const roomOf = ({ height }: Paper): number => height - TOP - BOTTOM;
