import { type Expression, parseExpression } from './expression.js';

export type Unit =
  | 'mm'
  | 'kg'
  | 'N'
  | 'N/mm²'
  | 'mm⁴'
  | 'ml'
  | '°'
  | 'magnification'
  | 'f-number'
  | 'stops'
  | 'times'
  | 'count'
  | 's';

/** A number that knows where it comes from, so that it can be explained without anybody writing it down again. */
export interface Figure {
  readonly value: number;
  /** As formulas have it: W_ri. */
  readonly symbol: string;
  readonly what: string;
  readonly unit: Unit;
  readonly from: Origin;
}

/** Where a number comes from. What takes words to say is put together when somebody asks. */
export type Origin =
  | { readonly kind: 'key'; readonly path: string }
  | { readonly kind: 'constant'; readonly source: string }
  | { readonly kind: 'formula'; readonly formula: () => Formula; readonly source: string }
  | { readonly kind: 'claims'; readonly by: 'widest' | 'narrowest'; readonly claims: () => readonly Reason[] }
  /** Read off a shape that has been drawn, or chosen among a few possibilities. */
  | { readonly kind: 'measured'; readonly how: string };

/** One reason why a length must be at least, or at most, so long. */
export interface Reason {
  readonly because: string;
  readonly value: number;
  readonly formula: Formula;
  readonly source: string;
}

/** A figure that a design does not have, and why. */
export interface Absent {
  readonly value: null;
  readonly symbol: string;
  readonly what: string;
  readonly because: string;
}

/** A formula with the figures put into it. */
export interface Formula {
  readonly expression: Expression;
  readonly inputs: readonly Figure[];
  readonly value: number;
}

export const DERIVED = 'derived, plane geometry of the camera';
export const PRACTICE = 'common practice, no source';

/** A template is one object for each place in the source, so each formula is parsed once. */
const parsed = new WeakMap<readonly string[], Expression>();

function expressionOf(pieces: readonly string[]): Expression {
  const known = parsed.get(pieces);
  if (known) return known;
  const expression = parseExpression(pieces);
  parsed.set(pieces, expression);
  return expression;
}

/** Reckons what is written: the text that is printed is the text that gives the value. */
export function formula(pieces: readonly string[], ...inputs: readonly Figure[]): Formula {
  const expression = expressionOf(pieces);
  return { expression, inputs, value: expression.evaluate(inputs.map(({ value }) => value)) };
}

/** What stands in the design file, or is left to its default. */
export const keyed = (symbol: string, what: string, path: string, value: number, unit: Unit = 'mm'): Figure => ({
  value,
  symbol,
  what,
  unit,
  from: { kind: 'key', path },
});

export const constant = (
  symbol: string,
  what: string,
  value: number,
  source = PRACTICE,
  unit: Unit = 'mm',
): Figure => ({ value, symbol, what, unit, from: { kind: 'constant', source } });

export const measured = (symbol: string, what: string, value: number, how: string, unit: Unit = 'mm'): Figure => ({
  value,
  symbol,
  what,
  unit,
  from: { kind: 'measured', how },
});

interface Told {
  readonly unit?: Unit;
  readonly source?: string;
}

/** A figure by a formula of ours. */
export const reckoned = (
  symbol: string,
  what: string,
  by: Formula,
  { unit = 'mm', source = DERIVED }: Told = {},
): Figure => ({ value: by.value, symbol, what, unit, from: { kind: 'formula', formula: () => by, source } });

/**
 * A figure by a law that has its home elsewhere (a function of optics, statics or mass), with the formula in words of
 * the trade. The formula must give what the law gave; that it does is looked at whenever it is asked for.
 */
export const told = (
  symbol: string,
  what: string,
  value: number,
  by: () => Formula,
  { unit = 'mm', source = DERIVED, within = 1e-9 }: Told & { readonly within?: number } = {},
): Figure => ({
  value,
  symbol,
  what,
  unit,
  from: {
    kind: 'formula',
    formula: () => {
      const made = by();
      if (!(Math.abs(made.value - value) <= within * Math.max(1, Math.abs(value))))
        throw new Error(`the formula of ${what} gives ${made.value} and not ${value}`);
      return made;
    },
    source,
  },
});

export const absent = (symbol: string, what: string, because: string): Absent => ({
  value: null,
  symbol,
  what,
  because,
});
