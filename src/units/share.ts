import { type QuantityKind, type Reading, readQuantity } from './quantity.js';

const PERCENT: QuantityKind = {
  noun: 'a percentage',
  units: new Map([['%', 1]]),
  bare: 1,
  accepted: 'Write 10 %, or 0 for none.',
};

/** Reads a share in per cent, with its sign or without: `10 %`, `10`. Gives per cent. */
export const parsePercent = (input: unknown): Reading => readQuantity(input, PERCENT, 'not-negative');
