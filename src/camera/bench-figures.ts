import { mm, plainNumber, tenth } from '../units/print.js';

/** A length as a caliper reads it, to the hundredth: `199.25 mm`. */
export const byCaliper = (length: number): string => `${plainNumber(length, 2)} mm`;

/** The jaws of a usual caliper open so far. */
const JAWS = 150;

/** What a length is read with, and how near it must come: `within 0.2 mm`, `by the ruler, within 0.5 mm`. */
export const readWithin = (length: number): string => (length > JAWS ? 'by the ruler, within 0.5 mm' : 'within 0.2 mm');

/** From corner to corner, as it is read on a rule, to the tenth: `281.8 mm`. */
export const diagonal = (width: number, height: number): string =>
  mm(tenth(Math.sqrt(width * width + height * height)));

/** Layers as they are counted out: `2 × 0.5 mm and 1 × 0.25 mm`. */
export const countedOut = (thicknesses: readonly number[]): string =>
  inARow([...new Set(thicknesses)].map((one) => `${thicknesses.filter((x) => x === one).length} × ${mm(one)}`));

/** What is done to a stack that was measured, as a sentence with a blank before it. */
export function exchanged({ add, takeOut, lacks, within }: Exchange): string {
  const deeds = [
    ...(takeOut.length > 0 ? [`take ${countedOut(takeOut)} out`] : []),
    ...(add.length > 0 ? [`put ${countedOut(add)} in`] : []),
  ].join(' and ');
  if (deeds !== '') return ` ${deeds.charAt(0).toUpperCase()}${deeds.slice(1)}, and measure it again.`;
  return Math.abs(lacks) <= within + ROUNDING
    ? ' Nothing need be changed.'
    : ` It is ${byCaliper(Math.abs(lacks))} too ${lacks > 0 ? 'low' : 'high'}, and no shim at hand mends that.`;
}

interface Exchange {
  readonly add: readonly number[];
  readonly takeOut: readonly number[];
  /** What is wanted less what was measured. */
  readonly lacks: number;
  readonly within: number;
}

/** What is off by the limit is within it. */
const ROUNDING = 1e-6;

/** `a`, `a and b`, `a, b and c`. */
export const inARow = (words: readonly string[]): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
