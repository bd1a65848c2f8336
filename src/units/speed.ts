import { type QuantityKind, type Reading, readQuantity } from './quantity.js';

/** Programs for lasers ask for mm/s or mm/min, and a bare number is taken for the first. */
const speed: QuantityKind = {
  noun: 'a speed',
  units: new Map([
    ['mm/s', 1],
    ['mm/min', 1 / 60],
    ['cm/s', 10],
    ['m/s', 1000],
    ['m/min', 1000 / 60],
    ['in/s', 25.4],
    ['in/min', 25.4 / 60],
  ]),
  bare: 1,
  accepted: 'Write 10 mm/s or 600 mm/min.',
};

/** Reads a speed; a bare number is in mm/s. Gives mm/s. */
export const parseSpeed = (input: unknown): Reading => readQuantity(input, speed);
