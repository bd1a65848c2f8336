import { type QuantityKind, type Reading, readQuantity } from './quantity.js';

/** A bare number is refused: lenses are weighed in grams, cameras in kilograms, and a guess would be wrong by a thousand. */
const mass: QuantityKind = {
  noun: 'a mass',
  units: new Map([
    ['g', 0.001],
    ['kg', 1],
  ]),
  bare: null,
  accepted: 'Write 640 g or 0.64 kg.',
};

/** Reads a mass with its unit, g or kg. Gives kg. */
export const parseMass = (input: unknown): Reading => readQuantity(input, mass, 'positive');
