import { html, nothing } from 'lit-html';
import type { Change, ExplainedClaim, ExplainedInput, Explanation, KeyText } from '../../../model/explanation.js';
import {
  asWritten,
  changeOf,
  explainedFigure,
  legible,
  magnification,
  movedBy,
  quantity,
} from '../../../units/print.js';
import type { App } from '../../app.js';
import { goToKey } from '../../design/go-to.js';
import { askFigure, putAway } from './ask.js';
import { equation, inSymbols } from './formula.js';

type About = Omit<Explanation, 'changes' | 'otherChanges'>;

/** How a figure came about: its formula with symbols and with numbers, what was put in, what governs, what moves it. */
export function explained(app: App) {
  const { asked, about } = app.state().figures;
  if (asked === null || about === null) return nothing;
  const back = asked.trail.at(-1);
  return html`
    <aside class="explained" aria-label="How the figure came about">
      <header>
        <h4 id="explained" tabindex="-1">${upper(about.what)}</h4>
        <div class="explained-deeds">
          ${
            back === undefined
              ? nothing
              : html`<button type="button" @click=${() => leadTo(app, back, asked.trail.slice(0, -1))}>Back</button>`
          }
          <button type="button" @click=${() => putAway(app)}>Put away</button>
        </div>
      </header>
      <p class="explained-value number">${answer(about)}</p>
      ${about.because === null ? nothing : html`<p>${about.value === null ? 'None: ' : ''}${about.because}.</p>`}
      ${about.key === null ? nothing : html`<p>From the design: ${keyLink(app, about.key)}.</p>`}
      ${about.formula === null ? nothing : equation(about.symbol, about.formula)}
      ${inputTable(app, about.inputs)} ${governing(about)} ${moving(app, about)}
      ${about.source === '' ? nothing : html`<p class="explained-source">Source: ${about.source}</p>`}
    </aside>
  `;
}

const upper = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** On to a figure that another one was made of; the way back is kept. */
function leadTo(app: App, figure: string, trail: readonly string[]): void {
  askFigure(app, figure, { held: true, trail });
  requestAnimationFrame(() => document.getElementById('explained')?.focus());
}

function answer({ value, unit, decidedBy }: About): string {
  if (value === null) return 'none';
  if (typeof value === 'number') return explainedFigure(value, unit);
  const word = typeof value === 'string' ? value : value ? 'yes' : 'no';
  return `${word}${decidedBy === null ? '' : `; ${quantity(decidedBy, unit)} decides`}`;
}

/** A key of the design, which leads to its field. */
function keyLink(app: App, { path, typed, source }: KeyText) {
  return html`<button type="button" class="quiet explained-link" @click=${() => goToKey(app, path)}>${breakable(path)}</button>${typed ? '' : ', default'}${source === null ? '' : html` <span>${source}</span>`}`;
}

/** A long name may go on in the next line behind each of its points. */
const breakable = (name: string) => name.split('.').map((step, i) => (i === 0 ? step : html`.<wbr />${step}`));

function inputTable(app: App, inputs: readonly ExplainedInput[]) {
  const rows = inputRows(app, inputs, 0, new Set());
  return rows.length === 0
    ? nothing
    : html`<table class="figure-table explained-inputs"><tbody>${rows}</tbody></table>`;
}

/** Each input once; what it is made of below it, further in. */
function inputRows(app: App, inputs: readonly ExplainedInput[], depth: number, told: Set<string>): readonly unknown[] {
  return inputs.flatMap((input) => {
    const mark = `${input.symbol} ${input.value}`;
    if (told.has(mark)) return [];
    told.add(mark);
    const { symbol, value, unit, formula, governs, next } = input;
    return [
      html`
        <tr class=${`depth-${Math.min(depth, 3)}`}>
          <th scope="row">${inSymbols(symbol)}</th>
          <td class="number">${inFormula(value, unit)}</td>
          <td>
            ${input.what}${origin(app, input)}
            ${formula === null ? nothing : html`<span class="explained-more">= ${inSymbols(formula.symbols)}</span>`}
            ${
              governs === null
                ? nothing
                : html`<span class="explained-more">governed by ${governs}${next ? `; next ${next.because}, ${quantity(next.distance, unit)} behind` : ''}</span>`
            }
          </td>
        </tr>
      `,
      ...inputRows(app, input.inputs, depth + 1, told),
    ];
  });
}

/** Where a formula wants the number and the trade has another way to say it, both. */
const inFormula = (value: number, unit: string): string =>
  unit === 'magnification'
    ? `${legible(value)}, ${magnification(value)}`
    : unit === 'f-number'
      ? legible(value)
      : quantity(value, unit);

/** Where an input comes from: a key, another figure, or what is said of it. */
function origin(app: App, { key, figure, source, formula }: ExplainedInput) {
  if (key !== null) return html`, ${keyLink(app, key)}`;
  if (figure !== null) {
    const { asked } = app.state().figures;
    const trail = asked === null ? [] : [...asked.trail, asked.figure];
    return html`, <button type="button" class="quiet explained-link" @click=${() => leadTo(app, figure, trail)}>${breakable(figure)}</button>`;
  }
  return formula !== null || source === null || source === '' ? '' : `, ${source}`;
}

function governing({ value, decidedBy, governs, behind }: About) {
  if (governs === null) return nothing;
  const own = typeof value === 'number' ? value : (decidedBy ?? 0);
  const [next, ...others] = behind;
  return html`
    <h5>What governs</h5>
    <p>${governs}</p>
    ${next === undefined ? nothing : html`<p>Next behind it: ${next.because}, ${quantity(next.value, 'mm')}; ${apart(next, next.value < own)}.</p>`}
    ${others.slice(0, 2).map((claim) => html`<p>Then ${claim.because}, ${quantity(claim.value, 'mm')}.</p>`)}
  `;
}

const apart = ({ distance }: ExplainedClaim, less: boolean): string =>
  distance < 1e-9
    ? 'the same, so both govern'
    : `it governs once the first is ${quantity(distance, 'mm')} ${less ? 'less' : 'more'}`;

/** Writes a key as it was tried; the side of a format that has a name, and one of several numbers, are no keys of their own. */
function writing(app: App, { path, value, unit, step }: Change, sign: 1 | -1) {
  if (path === 'format' || path.endsWith(']')) return nothing;
  const written = asWritten(value + sign * step, unit);
  return html`
    <button
      type="button"
      class="quiet explained-write"
      aria-label=${`Write it: ${path} ${written}`}
      title=${`Write ${path}: ${written}; undo takes it back`}
      @click=${() => app.edit([{ kind: 'write', path, value: written }])}
    >
      Write it
    </button>
  `;
}

/** What a little more or less of each key does. */
function moving(app: App, { value, decidedBy, unit }: About) {
  if (value === null) return nothing;
  const { moves } = app.state().figures;
  if (moves === null)
    return html`<h5>What moves it</h5><p class="help" role="status">Other cameras are planned for this…</p>`;
  if (moves.changes.length === 0) return html`<h5>What moves it</h5><p>No small change of any key.</p>`;
  const now = typeof value === 'number' ? value : (decidedBy ?? 0);
  const moved = (change: Change, sign: 1 | -1, by: number | null) =>
    by === null
      ? 'cannot be'
      : html`${changeOf(change.value, sign * change.step, change.unit)}: ${movedBy(now, by, unit)}${writing(app, change, sign)}`;
  return html`
    <h5>What moves it</h5>
    <table class="figure-table explained-moves">
      <thead>
        <tr><th scope="col">Key, now</th><th scope="col">So much more</th><th scope="col">So much less</th></tr>
      </thead>
      <tbody>
        ${moves.changes.map(
          (change) => html`
            <tr>
              <th scope="row">
                ${keyLink(app, { path: change.path, typed: change.typed, source: null })}, ${quantity(change.value, change.unit)}
              </th>
              <td>${moved(change, 1, change.more)}</td>
              <td>${moved(change, -1, change.less)}</td>
            </tr>
          `,
        )}
      </tbody>
    </table>
    ${
      moves.otherChanges === 0
        ? nothing
        : html`<p class="help">${moves.otherChanges === 1 ? 'One other key moves it, less.' : `${moves.otherChanges} other keys move it, each less.`}</p>`
    }
  `;
}
