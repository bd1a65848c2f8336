import { type QuantityKind, type Reading, readQuantity } from './quantity.js';

const volume: QuantityKind = {
  noun: 'a volume',
  units: new Map([
    ['ml', 1],
    ['cl', 10],
    ['l', 1000],
    ['cm3', 1],
    ['cm³', 1],
  ]),
  bare: 1,
  accepted: 'Write 250 ml or 0.25 l.',
};

/** Reads a volume of liquid that may be nothing; a bare number is in ml. Gives ml. */
export const parseVolume = (input: unknown): Reading => readQuantity(input, volume, 'not-negative');
