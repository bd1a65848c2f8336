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

/** Reads the time of an exposure as shutters and watches say it: `1/4s`, `90 s`, `2 min`. Gives s. */
export const parseExposureTime = (input: unknown): Reading =>
  readQuantity(input, { ...time, accepted: 'Write 1/4 s, 90 s or 2 min.' });
