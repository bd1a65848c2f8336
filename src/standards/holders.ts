import type { Cited } from './cited.js';

/** The published figures of a double film holder. Depths run from its face to the BACK of the film slot, not to the emulsion. */
export interface PublishedHolder {
  readonly format: string;
  readonly slotDepth: Cited<{ readonly value: number; readonly tolerance: number }>;
  /** Width, length and thickness over all. */
  readonly outside: Cited<readonly [number, number, number]>;
  /** From the face to the dark slide. */
  readonly slideDepth: Cited<number>;
}

const IT3_108 =
  'ANSI/PIMA IT3.108 as quoted on the alt-photo-process list in May 2002 (altphotolist.org, msg00528), film not deducted';
const OUTSIDE = 'from memory, rounded; makes differ by millimetres: measure the holder';

const slideDepth: Cited<number> = { value: 3, source: 'an estimate, no source: measure the holder' };

/** Height of the film slot, 0.012 in: film of 0.004 to 0.010 in floats in it. */
export const filmSlot: Cited<number> = {
  value: 0.3048,
  source: 'forum posts that quote the 1951 ASA sheet (apug.org post 1503115; largeformatphotography.info t-97781)',
};

/** Sheet film of 0.007 in, the thickness that the list post of the depths reckons with. */
export const sheetFilm: Cited<number> = { value: 0.1778, source: IT3_108 };

/** There is no row for 11x14: no published depth was found, so it must be the user's own measurement. */
export const publishedHolders: readonly PublishedHolder[] = [
  {
    format: '4x5',
    slotDepth: { value: { value: 5.0038, tolerance: 0.1778 }, source: `0.197 ± 0.007 in, ${IT3_108}` },
    outside: { value: [120, 190, 14], source: OUTSIDE },
    slideDepth,
  },
  {
    format: '5x7',
    slotDepth: { value: { value: 5.7912, tolerance: 0.254 }, source: `0.228 ± 0.010 in, ${IT3_108}` },
    outside: { value: [147, 240, 14], source: OUTSIDE },
    slideDepth,
  },
  {
    format: '8x10',
    slotDepth: { value: { value: 6.604, tolerance: 0.4064 }, source: `0.260 ± 0.016 in, ${IT3_108}` },
    outside: { value: [236, 330, 16], source: OUTSIDE },
    slideDepth,
  },
];

export const publishedHolderFor = (format: string): PublishedHolder | undefined =>
  publishedHolders.find((holder) => holder.format === format);

/**
 * From the holder's face to the emulsion, where the sheet lies flat against the back of its slot.
 *
 * @param sheetThickness of the film, paper or plate that is loaded: one holder has a depth for each load
 */
export const emulsionDepth = (slotDepth: number, sheetThickness: number): number => slotDepth - sheetThickness;
