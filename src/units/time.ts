import { type QuantityKind, type Reading, readQuantity } from './quantity.js';

const time: QuantityKind = {
  noun: 'a time',
  units: new Map([
    ['s', 1],
    ['ms', 0.001],
    ['min', 60],
  ]),
  bare: 1,
  accepted: 'Write 0.5 s or 500 ms.',
};

/** Reads a time that may be nothing; a bare number is in seconds. Gives s. */
export const parseSeconds = (input: unknown): Reading => readQuantity(input, time, 'not-negative');
