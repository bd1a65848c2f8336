import { html } from 'lit-html';
import { classMap } from 'lit-html/directives/class-map.js';
import type { PlanDocument } from '../../../index.js';
import { plainNumber } from '../../../units/print.js';
import type { App } from '../../app.js';
import { hardwareTable } from '../sheets/to-buy.js';
import { askFigure, comeTo, putAway, restOn } from './ask.js';
import { explained } from './explained.js';
import { type FigureRow, figureGroups, type Printed } from './groups.js';

/** All figures of the camera; each tells on asking how it came about. */
export function view(app: App) {
  const { shown } = app.state();
  if (shown === null) return html`<p class="nothing">There is no camera yet.</p>`;
  const { plan, reached } = shown;
  const groups = figureGroups(plan, reached);
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    putAway(app);
  };
  return html`
    <div class="figures-tray" @keydown=${onKey}>
      <div class="figures-list">
        <p class="help">Rest on a figure, or go to it with the keyboard, to read how it came about. Enter goes on to the explanation, Escape puts it away.</p>
        ${contents([...groups.map(({ title }) => title), TO_MAKE, ...(plan.hardware.length > 0 ? [TO_BUY] : [])])}
        ${groups.map(
          ({ title, rows }) => html`
            ${headed(title)}
            <table class="figure-table">
              <tbody>
                ${rows.map((row) => figureRow(app, row))}
              </tbody>
            </table>
          `,
        )}
        ${partsList(app, plan)} ${hardwareList(plan)}
      </div>
      ${explained(app)}
    </div>
  `;
}

const TO_MAKE = 'Parts to make';
const TO_BUY = 'What to buy';

const idOf = (title: string): string => `figures-${title.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;

const headed = (title: string, more = '') => html`<h3 id=${idOf(title)} tabindex="-1">${title}${more}</h3>`;

/** The list is long, and what to buy stands at its end. */
const contents = (titles: readonly string[]) => html`
  <nav class="figures-contents" aria-label="Groups of figures">
    ${titles.map((title) => html`<button type="button" class="quiet" @click=${() => goTo(title)}>${title}</button>`)}
  </nav>
`;

function goTo(title: string): void {
  const heading = document.getElementById(idOf(title));
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}

const figureRow = (app: App, { label, said }: FigureRow) => html`
  <tr>
    <th scope="row">${label}</th>
    <td>${said.map((piece, i) => (typeof piece === 'string' ? piece.replace(i === 0 ? '' : STOP, '').replace(OPENING, '') : withSigns(app, piece, said[i - 1], said[i + 1])))}</td>
  </tr>
`;

/** A sign that stands close to the word before it. */
const STOP = /^[,;.)]+/;
/** And one that stands close to the figure after it. */
const OPENING = /\($/;

/** A figure, and on the same line with it the signs beside it: a line may break between a button and a comma. */
function withSigns(app: App, piece: Printed, before: string | Printed | undefined, next: string | Printed | undefined) {
  const stop = typeof next === 'string' ? (STOP.exec(next)?.[0] ?? '') : '';
  const opening = typeof before === 'string' ? (OPENING.exec(before)?.[0] ?? '') : '';
  return html`<span class="figures-one">${opening}${figureButton(app, piece)}${stop}</span>`;
}

function figureButton(app: App, { figure, text }: Printed) {
  const isAsked = app.state().figures.asked?.figure === figure;
  return html`<button
    type="button"
    class=${classMap({ 'figures-figure': true, asked: isAsked })}
    data-figure=${figure}
    aria-expanded=${String(isAsked)}
    @pointerenter=${() => restOn(app, figure)}
    @pointerleave=${() => restOn(app, null)}
    @focus=${() => comeTo(app, figure)}
    @click=${(event: MouseEvent) => {
      askFigure(app, figure, { held: true });
      // by the keyboard: on to the explanation
      if (event.detail === 0) requestAnimationFrame(() => document.getElementById('explained')?.focus());
    }}
  >${text}</button>`;
}

const GROUPS: Readonly<Record<string, string>> = {
  front: 'Front, fixed to the tailboard',
  middle: 'Middle box, drawn along when the rear is half out',
  rear: 'Rear, slides',
  back: 'Back, slides and turns',
  loose: 'Loose, taken out',
};

function partsList(app: App, { parts }: PlanDocument) {
  const { chosen } = app.pose.now();
  const pieces = parts.reduce((sum, { count }) => sum + count, 0);
  const groups = [...new Set(parts.map(({ group }) => group))];
  const side = (id: string, key: string, value: number) =>
    figureButton(app, { figure: `parts.${id}.${key}`, text: plainNumber(value, 2) });
  return html`
    ${headed(TO_MAKE, `: ${pieces} pieces`)}
    ${groups.map(
      (group) => html`
        <table class="figure-table figures-parts">
          <caption>${GROUPS[group] ?? `With the ${group}`}</caption>
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col" class="number">Pieces</th>
              <th scope="col">Size, mm; from</th>
            </tr>
          </thead>
          <tbody>
            ${parts
              .filter((part) => part.group === group)
              .map(
                ({ id, name, count, width, height, thickness, material, grain }) => html`
                  <tr>
                    <th scope="row">
                      <button
                        type="button"
                        class="quiet"
                        aria-pressed=${String(id === chosen)}
                        @click=${() => app.pose.change({ chosen: id === chosen ? null : id })}
                      >${id} ${name}</button>
                    </th>
                    <td class="number">${count}</td>
                    <td>
                      ${side(id, 'width', width)} × ${side(id, 'height', height)} × ${side(id, 'thickness', thickness)}
                      <span class="figures-material">${material}${grain === 'any' ? '' : `, grain along ${grain}`}</span>
                    </td>
                  </tr>
                `,
              )}
          </tbody>
        </table>
      `,
    )}
  `;
}

const hardwareList = (plan: PlanDocument) =>
  plan.hardware.length === 0 ? '' : html`${headed(TO_BUY)} ${hardwareTable(plan)}`;
