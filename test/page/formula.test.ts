import { expect, test } from 'vitest';
import { inSymbols } from '../../src/page/trays/figures/formula.js';

/** What is set as a symbol: letter, star and index. */
const symbolsIn = (text: string): readonly string[] =>
  inSymbols(text).flatMap((piece) => {
    if (typeof piece === 'string') return [];
    const [letter, star, index] = piece.values;
    const inner = typeof index === 'object' && index !== null && 'values' in index ? (index.values as string[]) : [];
    return [`${letter}|${star}|${inner.join('')}`];
  });

test.each([
  ['W_ri + 2 t', ['W||ri', 't||']],
  ['T*_1', ['T|*|1']],
  ['s + V − 2 T*_12', ['s||', 'V||', 'T|*|12']],
  ['max(6, 1.5 t)', ['t||']],
])('%s is set as in a book', (text, symbols) => expect(symbolsIn(text)).toEqual(symbols));
