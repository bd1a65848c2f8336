import type { Token } from '../camera/expression.js';
import type { Figure, Formula } from '../camera/figure.js';
import type { FormulaText } from '../model/explanation.js';
import { legible } from '../units/print.js';

/** A formula as it is read: with symbols, where 2 t is a product, and with numbers, where each product has its sign. */
export const formulaText = (formula: Formula): FormulaText => ({
  symbols: written(formula, ({ symbol }) => symbol, ' '),
  numbers: written(formula, ({ value }) => legible(value), ' × '),
});

function written({ expression, inputs }: Formula, word: (input: Figure) => string, times: string): string {
  let text = '';
  let before: Token | null = null;
  let bars = 0;
  for (const token of expression.tokens) {
    const afterValue: boolean = before !== null && endsValue(before, bars);
    if (token.kind === 'sign') {
      if (token.sign === '|') bars++;
      text += signText(token.sign, afterValue, before, times);
    } else {
      const input = token.kind === 'hole' ? inputs[token.index] : undefined;
      const own =
        token.kind === 'function' ? token.name : token.kind === 'number' ? legible(token.value) : word(input as Figure);
      text = raised(text, own) ?? `${text}${afterValue ? times : ''}${bracketed(own, text)}`;
    }
    before = token;
  }
  return text;
}

/** An exponent of 2 or 3 stands high. */
function raised(text: string, own: string): string | null {
  if (!text.endsWith('^')) return null;
  const high = { 2: '²', 3: '³' }[own];
  return high ? `${text.slice(0, -1)}${high}` : `${text}${own}`;
}

/** A number below zero after a sign is put in brackets. */
const bracketed = (own: string, text: string): string =>
  own.startsWith('−') && text !== '' && !/[(|]$/.test(text) ? `(${own})` : own;

function signText(sign: string, afterValue: boolean, before: Token | null, times: string): string {
  switch (sign) {
    case '+':
      return ' + ';
    case '-':
      return afterValue ? ' − ' : '−';
    case '*':
      return ' × ';
    case '/':
      return ' / ';
    case ',':
      return ', ';
    case '(':
      return afterValue && before?.kind !== 'function' ? `${times}(` : '(';
    default:
      return sign;
  }
}

/** Whether a factor that follows would be multiplied. `bars` are the strokes of absolute values so far. */
const endsValue = (token: Token, bars: number): boolean =>
  token.kind === 'number' ||
  token.kind === 'hole' ||
  (token.kind === 'sign' && (token.sign === ')' || (token.sign === '|' && bars % 2 === 0)));
