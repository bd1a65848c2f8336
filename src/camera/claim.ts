import { DERIVED, type Figure, type Formula, type Reason, type Unit } from './figure.js';

/** One reason why a length must be at least so long. */
export interface Claim {
  readonly because: string;
  readonly value: number;
}

/** A length that more than one object shares: the largest of its claims, and whose it is. */
export interface Claimed extends Claim, Figure {
  readonly claims: readonly Claim[];
}

export const claim = (because: string, by: Formula, source = DERIVED): Reason => ({
  because,
  value: by.value,
  formula: by,
  source,
});

/** The largest claim governs; of equals the first one named. */
export const widest = (symbol: string, what: string, claims: readonly [Reason, ...Reason[]], unit?: Unit): Claimed =>
  governed('widest', symbol, what, claims, unit);

/** The smallest claim governs, where something must come so near. */
export const narrowest = (symbol: string, what: string, claims: readonly [Reason, ...Reason[]], unit?: Unit): Claimed =>
  governed('narrowest', symbol, what, claims, unit);

/** A length that follows from others already on the rod. */
export const derived = (symbol: string, what: string, because: string, by: Formula, source = DERIVED): Claimed => ({
  because,
  value: by.value,
  claims: [{ because, value: by.value }],
  symbol,
  what,
  unit: 'mm',
  from: { kind: 'formula', formula: () => by, source },
});

function governed(
  by: 'widest' | 'narrowest',
  symbol: string,
  what: string,
  claims: readonly [Reason, ...Reason[]],
  unit: Unit = 'mm',
): Claimed {
  const first = by === 'widest' ? (a: number, b: number) => a > b : (a: number, b: number) => a < b;
  const { because, value } = claims.reduce((best, each) => (first(each.value, best.value) ? each : best));
  return { because, value, claims, symbol, what, unit, from: { kind: 'claims', by, claims: () => claims } };
}
