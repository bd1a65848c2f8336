import { plainNumber } from './print.js';
import { type QuantityKind, type Reading, readQuantity, type Sign } from './quantity.js';

/** Millimetres in an inch, exact: international yard and pound agreement of 1959. */
export const inch = 25.4;

/** Millimetres in a foot, exact: the same agreement, by which a foot is 0.3048 m. */
const foot = 304.8;

/** What is taken as a length, with an example that fits the place: where metres are written a fraction of an inch does not. */
export const acceptedLength = (example: string): string =>
  / m$/.test(example)
    ? `Write ${example}, or feet such as 4 ft.`
    : `Write ${example}, or an inch fraction such as 5/32 in.`;

const length: QuantityKind = {
  noun: 'a length',
  units: new Map([
    ['mm', 1],
    ['cm', 10],
    ['m', 1000],
    ['in', inch],
    ['"', inch],
    ['″', inch],
    ['ft', foot],
    ["'", foot],
    ['′', foot],
  ]),
  bare: 1,
  accepted: acceptedLength('4.05 mm'),
};

/** Reads a length: a bare number in mm, or with mm, cm, m, in, ", ft or '; fractions as `1 1/2 in` and `7/8"`. Gives mm. */
export const parseLength = (input: unknown, sign: Sign = 'positive'): Reading => readQuantity(input, length, sign);

/** Whether a text names a unit of length, so that `0.9 m` can be told from the magnification `0.9`. */
export const hasLengthUnit = (text: string): boolean => /(mm|cm|m|in|"|″|ft|'|′)\s*$/i.test(text);

/** What somebody means who types a distance in a room without its unit: metres up to a large room, centimetres up to a small one. */
const MOST_METRES = 20;
const MOST_CENTIMETRES = 500;
/** Shorter distances in metres are none in a room. */
const LEAST_METRES = 0.1;

/**
 * The distance in a room that was probably meant by a number without a unit, which was read as mm.
 *
 * @returns null where neither metres nor centimetres make a distance in a room of it
 */
export function unitMeant(number: number): string | null {
  if (number < LEAST_METRES || number > MOST_CENTIMETRES) return null;
  return `${plainNumber(number)} ${number <= MOST_METRES ? 'm' : 'cm'}`;
}

/** Asks after the unit of a distance that has none, perhaps: `Was 150 cm meant? ` */
export function askUnit(distance: number): string {
  const meant = unitMeant(distance);
  return meant === null ? '' : `Was ${meant} meant? `;
}
