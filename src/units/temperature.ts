import { type QuantityKind, type Reading, readQuantity } from './quantity.js';

const degrees = (letter: 'c' | 'f', bare: number | null): QuantityKind => ({
  noun: 'a temperature',
  units: new Map([
    [letter, 1],
    [`°${letter}`, 1],
  ]),
  bare,
  accepted: 'Write 24 C or 75 F.',
});

const CELSIUS = degrees('c', 1);
const FAHRENHEIT = degrees('f', null);

/** Reads a temperature; a bare number is in °C. Gives °C. */
export function parseTemperature(input: unknown): Reading {
  if (typeof input !== 'string' || !/f\s*$/i.test(input)) return readQuantity(input, CELSIUS, 'any');
  const reading = readQuantity(input, FAHRENHEIT, 'any');
  return 'value' in reading ? { value: ((reading.value - 32) * 5) / 9 } : reading;
}
