/** What a parser gives back: the value in the unit of the core, or why not and what would have been taken. */
export type Reading = { readonly value: number } | { readonly reason: string; readonly accepted: string };

/** Which signs a place takes: a wall must be positive, a run past infinity may be nothing, a fit may be negative. */
export type Sign = 'positive' | 'not-negative' | 'any';

export interface QuantityKind {
  /** The noun with its article, for messages: "a length". */
  readonly noun: string;
  /** Unit as written, in lower case, to its size in the unit of the core. */
  readonly units: ReadonlyMap<string, number>;
  /** The size of a number without a unit; null where a unit must stand. */
  readonly bare: number | null;
  /** A sentence that shows what is taken. */
  readonly accepted: string;
}

/** Longer texts are cut in messages: a message must stay readable whatever was typed. */
const LONGEST_QUOTE = 40;

/** Characters that JSON leaves alone but that move the cursor, turn the writing round or cannot be seen. */
export const UNSEEN = /[\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g;

/** A value as it is shown in a message: short, on one line, with nothing in it that acts on a terminal. */
export function quoted(input: unknown): string {
  if (typeof input === 'object' && input !== null) return Array.isArray(input) ? 'a list' : 'a group of keys';
  const text = String(input);
  const short = text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
  const safe = JSON.stringify(short)
    .replaceAll('\\"', '"')
    .replace(UNSEEN, (unseen) => `\\u${unseen.charCodeAt(0).toString(16).padStart(4, '0')}`);
  return typeof input === 'string' ? safe : safe.slice(1, -1);
}

const DECIMAL = String.raw`\d+(?:\.\d*)?|\.\d+`;
const AMOUNT = new RegExp(
  String.raw`^([+-]?)\s*(?:(?:(\d+)\s+)?(\d+)\s*/\s*(\d+)|(${DECIMAL}))\s*([^\d\s.,+-][^\s]*)?$`,
);

/**
 * Reads a number with a unit. The point is the only decimal mark; `1 1/2` and `7/8` are taken where a unit follows, since a
 * bare `5/32` nearly always wants inches; exponents, hexadecimal numbers and blanks inside a number are not taken.
 */
export function readQuantity(input: unknown, kind: QuantityKind, sign: Sign = 'positive'): Reading {
  const refuse = (reason: string, accepted = kind.accepted): Reading => ({ reason, accepted });
  const amount = typeof input === 'number' ? input : typeof input === 'string' ? amountOf(input, kind, refuse) : null;
  if (amount === null) return refuse(`${quoted(input)} is not ${kind.noun}.`);
  if (typeof amount === 'object') return amount;
  if (typeof input === 'number' && kind.bare === null) return refuse(`${quoted(input)} has no unit.`);
  const value = typeof input === 'number' ? amount * (kind.bare ?? 1) : amount;
  if (Number.isNaN(value)) return refuse('NaN is not a number.');
  if (!Number.isFinite(value)) return refuse(`${quoted(String(input))} is not finite.`);
  if (value < 0 && sign !== 'any') return refuse(`${quoted(input)} is negative.`);
  if (value === 0 && sign === 'positive') return refuse(`${quoted(input)} is zero.`);
  return { value: value === 0 ? 0 : value };
}

function amountOf(input: string, kind: QuantityKind, refuse: (reason: string, accepted?: string) => Reading) {
  const text = input.trim();
  if (/\d\s*,\s*\d/.test(text) || /^,\d/.test(text)) {
    const pointed = text.replace(/\s*,\s*/, '.');
    const again = readQuantity(pointed, kind, 'any');
    return refuse(
      `${quoted(input)} has a decimal comma.`,
      'value' in again ? `Write ${pointed}, with a point.` : kind.accepted,
    );
  }
  const found = AMOUNT.exec(text);
  if (found === null) return null;
  const [, minus, whole, over, under, decimal, unit] = found;
  const size = unit === undefined ? kind.bare : kind.units.get(unit.toLowerCase());
  if (size === undefined) return refuse(`${quoted(input)} is not ${kind.noun}.`);
  if (size === null) return refuse(`${quoted(input)} has no unit.`);
  if (decimal === undefined && unit === undefined) return refuse(`The fraction ${quoted(input)} has no unit.`);
  if (decimal === undefined && Number(under) === 0) return refuse(`${quoted(input)} divides by zero.`);
  const amount = decimal === undefined ? Number(whole ?? 0) + Number(over) / Number(under) : Number(decimal);
  return (minus === '-' ? -amount : amount) * size;
}
