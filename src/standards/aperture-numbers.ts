import type { Cited } from './cited.js';
import type { Dial } from './dial.js';

const dial = (marks: readonly number[], marksToStop: 1 | 2 | 3, source: string): Dial => ({
  marks: marks.map((mark, index) => ({ mark, exact: 2 ** (index / (2 * marksToStop)) })),
  stopsToDouble: 2,
  source,
});

const wholeStops = dial(
  [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 128],
  1,
  'article F-number, full series; excerpt at factbites.com/topics/F-stop',
);

const thirdStops = dial(
  [
    [1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5],
    [4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14],
    [16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57],
    [64, 72, 80, 90],
  ].flat(),
  3,
  'to f/4: article Preferred number, "Photography"; from there on: common practice, no source',
);

const halfStops = dial(
  [
    [1, 1.2, 1.4, 1.7, 2, 2.4, 2.8, 3.3, 4, 4.8, 5.6, 6.7, 8, 9.5],
    [11, 13, 16, 19, 22, 27, 32, 38, 45, 54, 64, 76, 90],
  ].flat(),
  2,
  'common practice, no source',
);

/** f-numbers that are engraved, in whole stops, thirds and halves; the exact ones are powers of the square root of 2. */
export const apertureDials = { wholeStops, thirdStops, halfStops };

/** In this order a number is looked up that stands on several: 1.2 and 13 are thirds before they are halves. */
export const apertureDialsInTurn: readonly Dial[] = [wholeStops, thirdStops, halfStops];

/** Focal lengths from which on an engraved f-number holds; nearer, the extension is to be reckoned with. */
export const engravedNumberHoldsFrom: Cited<number> = {
  value: 50,
  source: 'ISO 517:2008, overview at theiteh.com',
};

/** What a marked f-number stands for, by the first of the dials that has it; a number that is on none stands for itself. */
export const exactFNumber = (marked: number): number =>
  apertureDialsInTurn.flatMap(({ marks }) => marks).find(({ mark }) => mark === marked)?.exact ?? marked;
