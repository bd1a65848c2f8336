import type { Dial } from './dial.js';

/** What follows 1 in a series that is named after rounded doubles: 8 is followed by 15, 60 by 125. */
const FRACTIONS = [1000, 500, 250, 125, 60, 30, 15, 8, 4, 2];
const SECONDS = [1, 2, 4, 8, 15, 30, 60];

/**
 * Times of a shutter, s, in whole stops, as shutters in large lenses have them: they do not stop between two. They stand
 * for powers of 2, which 1/15, 1/30 and 1/60 miss by 0.09 stop.
 */
export const shutterTimes: Dial = {
  marks: [...FRACTIONS.map((part) => 1 / part), ...SECONDS].map((mark, index) => ({
    mark,
    exact: 2 ** (index - FRACTIONS.length),
  })),
  stopsToDouble: 1,
  source:
    '1/125 for 1/128: "Photographic Myth Buster #01", michaelprais.info; the other fractions by the same series (ISO 516, known here by its title), whole seconds: common practice, no source',
};
