import { type QuantityKind, quoted, type Reading, readQuantity, type Sign } from './quantity.js';

const DECIMAL_COMMA = /\d,\d/;

const pureNumber = (accepted: string, noun: string): QuantityKind => ({ noun, units: new Map(), bare: 1, accepted });

/** What is taken as a number, with an example that fits the place. */
export function acceptedNumber(example: string): string {
  return `Write a number such as ${example}.`;
}

const MAGNIFICATION = pureNumber('Write 1:3, 0.33 or infinity.', 'a magnification');
const F_NUMBER = pureNumber('Write f/6.3 or 6.3.', 'an f-number');
const PLAIN = pureNumber(acceptedNumber('1.52'), 'a number');

/** As people write a ratio by hand; blanks inside it are none. */
const FRACTION = /^(\d+)\s*\/\s*(\d+)$/;

/** Reads a magnification: `1:3`, `2:1`, `1/3`, `0.33`, or `infinity`, which is 0. The image comes first: `1:3` is a third of life size. */
export function parseMagnification(input: unknown): Reading {
  if (typeof input !== 'string') return readQuantity(input, MAGNIFICATION);
  const text = input.trim();
  if (text === 'infinity') return { value: 0 };
  if (DECIMAL_COMMA.test(text)) return commaRefused(input, text);
  const parts = text.replace(FRACTION, '$1:$2').split(':');
  if (parts.length === 1) return readQuantity(input, MAGNIFICATION);
  const [image, subject] = parts.map((part) => readQuantity(part, MAGNIFICATION));
  if (
    parts.length !== 2 ||
    image === undefined ||
    subject === undefined ||
    !('value' in image) ||
    !('value' in subject)
  )
    return { reason: `${quoted(input)} is not a magnification.`, accepted: MAGNIFICATION.accepted };
  return readQuantity(image.value / subject.value, MAGNIFICATION);
}

/** Reads an f-number: `f/6.3`, `6.3`, or as lenses are engraved, `1:6.3`. */
export function parseFNumber(input: unknown): Reading {
  if (typeof input !== 'string') return readQuantity(input, F_NUMBER);
  const text = input.trim();
  if (DECIMAL_COMMA.test(text)) return commaRefused(input, text);
  const found = /^(?:f\s*\/?|1\s*:)?\s*([-+.\d]+)$/i.exec(text);
  if (found === null) return { reason: `${quoted(input)} is not an f-number.`, accepted: F_NUMBER.accepted };
  return readQuantity(found[1], F_NUMBER);
}

/** Reads a number without a unit, such as a refractive index, a coefficient of friction, or a correlation. */
export const parseNumber = (input: unknown, sign: Sign = 'positive'): Reading => readQuantity(input, PLAIN, sign);

const DENSITY: QuantityKind = {
  noun: 'a density',
  units: new Map([
    ['kg/m3', 1],
    ['kg/m³', 1],
    ['g/cm3', 1000],
    ['g/cm³', 1000],
  ]),
  bare: 1,
  accepted: 'Write 680 kg/m3.',
};

/** Reads a density; a bare number is in kg/m³. Gives kg/m³. */
export const parseDensity = (input: unknown): Reading => readQuantity(input, DENSITY);

const MODULUS: QuantityKind = {
  noun: 'a modulus of elasticity',
  units: new Map([
    ['n/mm2', 1],
    ['n/mm²', 1],
    ['mpa', 1],
    ['gpa', 1000],
  ]),
  bare: 1,
  accepted: 'Write 7000 N/mm2.',
};

/** Reads a modulus of elasticity; a bare number is in N/mm². Gives N/mm². */
export const parseModulus = (input: unknown): Reading => readQuantity(input, MODULUS);

function commaRefused(input: string, text: string): Reading {
  return {
    reason: `${quoted(input)} has a decimal comma.`,
    accepted: `Write ${text.replace(',', '.')}, with a point.`,
  };
}
