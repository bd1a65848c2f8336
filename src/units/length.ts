import { type QuantityKind, type Reading, readQuantity, type Sign } from './quantity.js';

/** Millimetres in an inch, exact: international yard and pound agreement of 1959. */
export const inch = 25.4;

/** What is taken as a length, with an example that fits the place. */
export const acceptedLength = (example: string): string => `Write ${example}, or an inch fraction such as 5/32 in.`;

const length: QuantityKind = {
  noun: 'a length',
  units: new Map([
    ['mm', 1],
    ['cm', 10],
    ['m', 1000],
    ['in', inch],
    ['"', inch],
    ['″', inch],
  ]),
  bare: 1,
  accepted: acceptedLength('4.05 mm'),
};

/** Reads a length: a bare number in mm, or with mm, cm, m, in or "; fractions as `1 1/2 in` and `7/8"`. Gives mm. */
export const parseLength = (input: unknown, sign: Sign = 'positive'): Reading => readQuantity(input, length, sign);

/** Whether a text names a unit of length, so that `0.9 m` can be told from the magnification `0.9`. */
export const hasLengthUnit = (text: string): boolean => /(mm|cm|m|in|"|″)\s*$/i.test(text);
