import { html, type TemplateResult } from 'lit-html';
import type { FormulaText } from '../../../model/explanation.js';

/** A formula as it is printed, its symbols set as in a book: W_ri with ri as an index. */
export function inSymbols(text: string): readonly (string | TemplateResult)[] {
  const pieces: (string | TemplateResult)[] = [];
  let at = 0;
  for (const { 0: whole, 1: letter = '', 2: star = '', 3: index = '', index: begin } of text.matchAll(SYMBOL)) {
    pieces.push(text.slice(at, begin), html`<i>${letter}</i>${star}${index === '' ? '' : html`<sub>${index}</sub>`}`);
    at = begin + whole.length;
  }
  pieces.push(text.slice(at));
  return pieces;
}

/** One letter, or several with an index, and a star behind it (a product has its own sign): `max` and `tan` are words. */
const SYMBOL = /(?<![\p{L}\d_.])(\p{L}+(?=\*?_)|\p{L})(\*?)(?:_([\p{L}\d,]+))?(?![\p{L}(])/gu;

/** With symbols, and below it with the numbers put in. */
export function equation(symbol: string, { symbols, numbers }: FormulaText) {
  return html`
    <dl class="explained-formula">
      <dt>${inSymbols(symbol)}</dt>
      <dd>= ${inSymbols(symbols)}</dd>
      ${symbols === numbers ? '' : html`<dd class="number">= ${numbers}</dd>`}
    </dl>
  `;
}
