/**
 * Formulas as they are written, so that what is reckoned and what is printed are one text.
 *
 * ```
 * sum      = product { ('+' | '-') product }
 * product  = power { ['*' | '/'] power }          two factors side by side are multiplied: 2 (a + b)
 * power    = ['-'] primary [ '^' primary ]
 * primary  = number | hole | function '(' sum { ',' sum } ')' | '(' sum ')' | '|' sum '|'
 * ```
 *
 * A hole is where a value is put in. Everything is reckoned from left to right, as in the language itself.
 */
export interface Expression {
  readonly tokens: readonly Token[];
  readonly evaluate: (values: readonly number[]) => number;
}

export type Token =
  | { readonly kind: 'number'; readonly value: number }
  /** The value that is put in at this place of the list. */
  | { readonly kind: 'hole'; readonly index: number }
  | { readonly kind: 'function'; readonly name: FunctionName }
  | { readonly kind: 'sign'; readonly sign: string };

type FunctionName = keyof typeof functions;

const functions = {
  max: Math.max,
  min: Math.min,
  sqrt: Math.sqrt,
  log2: Math.log2,
  /** In degrees, as an angle is told. */
  atan: (tangent: number) => (180 / Math.PI) * Math.atan(tangent),
} as const;

type Evaluate = Expression['evaluate'];

/** @param pieces the text, parted at its holes */
export function parseExpression(pieces: readonly string[]): Expression {
  const tokens = pieces.flatMap((piece, i) => [
    ...(i === 0 ? [] : [{ kind: 'hole', index: i - 1 } as const]),
    ...tokensOf(piece),
  ]);
  const reading = { tokens, at: 0 };
  const evaluate = sum(reading);
  if (reading.at < tokens.length) throw new Error(`a formula that goes on after its end: ${pieces.join('…')}`);
  return { tokens, evaluate };
}

function tokensOf(piece: string): readonly Token[] {
  const words = piece.match(/\d+(?:\.\d+)?|[a-z]+\d?|[-+*/^(),|]|\S/g) ?? [];
  return words.map((word): Token => {
    if (/^\d/.test(word)) return { kind: 'number', value: Number(word) };
    if (word in functions) return { kind: 'function', name: word as FunctionName }; // a key of theirs: seen before the colon
    if (/^[-+*/^(),|]$/.test(word)) return { kind: 'sign', sign: word };
    throw new Error(`"${word}" means nothing in a formula`);
  });
}

interface Reading {
  readonly tokens: readonly Token[];
  at: number;
}

const signAt = ({ tokens, at }: Reading): string | null => {
  const token = tokens[at];
  return token?.kind === 'sign' ? token.sign : null;
};

function take(reading: Reading, sign: string): boolean {
  if (signAt(reading) !== sign) return false;
  reading.at++;
  return true;
}

function must(reading: Reading, sign: string): void {
  if (!take(reading, sign)) throw new Error(`a formula lacks "${sign}"`);
}

function sum(reading: Reading): Evaluate {
  let left = product(reading);
  for (;;) {
    const before = left;
    if (take(reading, '+')) {
      const right = product(reading);
      left = (values) => before(values) + right(values);
    } else if (take(reading, '-')) {
      const right = product(reading);
      left = (values) => before(values) - right(values);
    } else return left;
  }
}

function product(reading: Reading): Evaluate {
  let left = power(reading);
  for (;;) {
    const before = left;
    if (take(reading, '/')) {
      const right = power(reading);
      left = (values) => before(values) / right(values);
    } else if (take(reading, '*') || beginsFactor(reading)) {
      const right = power(reading);
      left = (values) => before(values) * right(values);
    } else return left;
  }
}

const beginsFactor = (reading: Reading): boolean => {
  const token = reading.tokens[reading.at];
  return token !== undefined && (token.kind !== 'sign' || token.sign === '(');
};

function power(reading: Reading): Evaluate {
  const negative = take(reading, '-');
  const base = primary(reading);
  const exponent = take(reading, '^') ? primary(reading) : null;
  const raised: Evaluate = exponent === null ? base : (values) => base(values) ** exponent(values);
  return negative ? (values) => -raised(values) : raised;
}

function primary(reading: Reading): Evaluate {
  const token = reading.tokens[reading.at];
  if (token?.kind === 'number' || token?.kind === 'hole') {
    reading.at++;
    if (token.kind === 'number') return () => token.value;
    return (values) => values[token.index] ?? Number.NaN;
  }
  if (token?.kind === 'function') {
    reading.at++;
    const call: (...values: number[]) => number = functions[token.name];
    must(reading, '(');
    const parts = [sum(reading)];
    while (take(reading, ',')) parts.push(sum(reading));
    must(reading, ')');
    return (values) => call(...parts.map((part) => part(values)));
  }
  if (take(reading, '(')) {
    const inner = sum(reading);
    must(reading, ')');
    return inner;
  }
  must(reading, '|');
  const inner = sum(reading);
  must(reading, '|');
  return (values) => Math.abs(inner(values));
}
