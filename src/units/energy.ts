import { type QuantityKind, type Reading, readQuantity } from './quantity.js';

/** Flash units are rated in watt seconds, which are joules. */
const energy: QuantityKind = {
  noun: 'an energy',
  units: new Map([
    ['j', 1],
    ['ws', 1],
    ['kj', 1000],
    ['kws', 1000],
  ]),
  bare: 1,
  accepted: 'Write 400, 400 J or 1.2 kJ; a watt second is a joule.',
};

/** Reads the energy of a flash; a bare number is in joules. Gives J. */
export const parseEnergy = (input: unknown): Reading => readQuantity(input, energy);
