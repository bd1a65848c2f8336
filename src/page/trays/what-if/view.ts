import { html, nothing } from 'lit-html';
import type { WhatIfCamera, WhatIfInput, WhatIfPoint } from '../../../model/what-if.js';
import { kg, magnification, quantity } from '../../../units/print.js';
import type { App } from '../../app.js';
import { unbroken } from '../../unbroken.js';
import { readOut, tryInput } from './ask.js';
import { charts } from './charts.js';
import { NOW, type Stop, stopsOf } from './state.js';

/** What becomes of the camera when one number of the design is another one. */
export function view(app: App) {
  const { whatIf, spread, narrow } = app.state();
  const input = whatIf.inputs.find(({ path }) => path === whatIf.path);
  if (input === undefined) return html`<p class="nothing">The numbers that may be tried are being gathered.</p>`;
  const stops = stopsOf(whatIf);
  const points = stops.flatMap(({ key }) => whatIf.points[key] ?? []);
  const at = stops.find(({ key }) => key === whatIf.at) ?? stops.find(({ key }) => key === NOW);
  const [first, last] = [stops[0], stops.at(-1)];
  if (at === undefined || first === undefined || last === undefined) return html``;
  const known = stops.filter(({ key }) => whatIf.points[key] !== undefined).length;
  return html`
    <div class="what-if">
      ${inputChoice(app, whatIf.inputs, input)}
      ${charts({
        points,
        label: input.label,
        unit: input.unit,
        range: [first.value, last.value],
        now: input.value,
        at: at.value,
        width: spread && !narrow ? 720 : 340,
      })}
      ${slider(app, input, stops, at)}
      ${reading(app, input, at, whatIf.points[at.key])}
      <p class="help" role="status">
        ${whatIf.asking && known < stops.length ? `${known} of ${stops.length} cameras planned…` : `${known} cameras planned.`}
        ${points.some((point) => point.kind === 'camera' && point.broken.length > 0) ? 'A cross marks a camera that breaks a rule which stops the build.' : ''}
      </p>
      ${flatWords(input, points)} ${gapWords(input, points)} ${asTable(input, stops, whatIf.points)}
    </div>
  `;
}

const RANKS: readonly (readonly [WhatIfInput['rank'], string])[] = [
  ['first', 'Tried first'],
  ['written', 'Other numbers of the design'],
  ['default', 'Left to their defaults'],
];

const inputChoice = (app: App, inputs: readonly WhatIfInput[], chosen: WhatIfInput) => html`
  <label class="what-if-input">
    <span>What if it were another</span>
    <select
      @change=${({ target }: Event) => target instanceof HTMLSelectElement && tryInput(app, target.value)}
    >
      ${RANKS.map(
        ([rank, title]) => html`
          <optgroup label=${title}>
            ${inputs
              .filter((input) => input.rank === rank)
              .map(
                ({ path, label }) => html`<option value=${path} ?selected=${path === chosen.path}>${label}</option>`,
              )}
          </optgroup>
        `,
      )}
    </select>
  </label>
`;

const saidOf = ({ value, written }: Stop, { unit }: WhatIfInput): string => written ?? quantity(value, unit);

function slider(app: App, input: WhatIfInput, stops: readonly Stop[], at: Stop) {
  return html`
    <input
      type="range"
      class="what-if-slider"
      aria-label=${`${input.label}, to read out`}
      aria-valuetext=${`${saidOf(at, input)}${at.written === null ? ', as it is' : ''}`}
      min="0"
      max=${stops.length - 1}
      step="1"
      .value=${String(stops.indexOf(at))}
      @input=${({ target }: Event) => {
        const stop = target instanceof HTMLInputElement ? stops[Number(target.value)] : undefined;
        if (stop !== undefined) readOut(app, stop);
      }}
    />
  `;
}

function reading(app: App, input: WhatIfInput, at: Stop, point: WhatIfPoint | undefined) {
  const take = () => {
    if (at.written !== null) app.edit([{ kind: 'write', path: input.path, value: at.written }]);
  };
  return html`
    <div class="what-if-reading">
      <p>
        <b>${saidOf(at, input)}</b>${at.written === null ? ', as it is' : ''}:
        <output>${point === undefined ? 'being planned…' : unbroken(inWords(point))}</output>
      </p>
      <button type="button" ?disabled=${at.written === null || point?.kind === 'none'} @click=${take}>
        ${at.written === null ? 'Take this value' : `Take ${at.written}`}
      </button>
    </div>
  `;
}

function inWords(point: WhatIfPoint): string {
  if (point.kind === 'none') return `no camera. ${point.why}`;
  const { reach, sheets, mass, broken } = point;
  const count = sheets === null ? 'sheets not counted yet' : `${sheets} ${sheets === 1 ? 'sheet' : 'sheets'}`;
  const words = `reaches ${reachWords(reach)}; ${count}; ${kg(Math.round(mass * 100) / 100)}.`;
  return broken.length === 0 ? words : `${words} ✕ Breaks ${brokenWords(broken)}.`;
}

const brokenWords = (broken: WhatIfCamera['broken']): string =>
  broken.map(({ rule, protects }) => `${rule}, ${protects}`).join('; ');

const reachWords = (reach: number): string => (reach < 0 ? 'nothing' : magnification(reach));

/** Curves that are flat are no fault of the drawing: what does not move, and why. */
function flatWords({ path, label }: WhatIfInput, points: readonly WhatIfPoint[]) {
  const cameras = points.flatMap((point) => (point.kind === 'camera' ? [point] : []));
  const [first] = cameras;
  if (first === undefined || cameras.length < LEAST_COMPARED) return nothing;
  const isFlat = (of: (camera: WhatIfCamera) => number | null) =>
    cameras.every((camera) => Math.abs((of(camera) ?? 0) - (of(first) ?? 0)) < SAME);
  if (!isFlat(({ reach }) => reach)) return nothing;
  const words =
    path === 'focus.nearest'
      ? `Whatever is asked, the boxes can reach ${reachWords(first.reach)} and no nearer: lens, holders and sheet decide that. What is asked decides how far the slide runs, and with it the length of the tailboard.`
      : isFlat(({ mass }) => mass) && isFlat(({ sheets }) => sheets)
        ? `Nothing of this changes over the range: neither reach nor sheets nor mass hang on ${label}.`
        : `The reach does not hang on ${label}: it is ${reachWords(first.reach)} over the whole range.`;
  return html`<p class="help">${words}</p>`;
}

/** Before so many are known nothing is said of all of them. */
const LEAST_COMPARED = 5;
/** Of a magnification, and of a mass in kg: less is rounding. */
const SAME = 1e-6;

const reasonOf = (why: string): string => why.replace(/\d+(?:\.\d+)?/g, '#');

/** Where no camera can be, and why. */
function gapWords(input: WhatIfInput, points: readonly WhatIfPoint[]) {
  const none = points.flatMap((point) => (point.kind === 'none' ? [point] : []));
  // a refusal names the value that it refuses: but for that it is one reason
  const reasons = [...new Set(none.map(({ why }) => reasonOf(why)))];
  if (reasons.length === 0) return nothing;
  return html`
    <ul class="what-if-gaps">
      ${reasons.map((why) => {
        const own = none.filter((point) => reasonOf(point.why) === why);
        const values = own.map(({ value }) => value);
        const [from, to] = [Math.min(...values), Math.max(...values)].map((value) => quantity(value, input.unit));
        const away = (point: WhatIfPoint) => Math.abs(point.value - input.value);
        const nearest = own.reduce((least, point) => (away(point) < away(least) ? point : least));
        const isOne = own.every((point) => point.why === nearest.why);
        return html`<li>No camera ${from === to ? `at ${from}` : `between ${from} and ${to}`}${isOne ? '' : `; at ${quantity(nearest.value, input.unit)}`}: ${nearest.why}</li>`;
      })}
    </ul>
  `;
}

const asTable = (input: WhatIfInput, stops: readonly Stop[], points: Readonly<Record<string, WhatIfPoint>>) => html`
  <details class="what-if-table">
    <summary>The same as a table</summary>
    <table class="figure-table">
      <thead>
        <tr>
          <th scope="col">${input.label}</th>
          <th scope="col" class="number">reach</th>
          <th scope="col" class="number">sheets</th>
          <th scope="col" class="number">mass</th>
          <th scope="col">remarks</th>
        </tr>
      </thead>
      <tbody>
        ${stops.map((stop) => {
          const point = points[stop.key];
          return html`
            <tr>
              <th scope="row" class="number">${saidOf(stop, input)}${stop.written === null ? ', now' : ''}</th>
              ${
                point?.kind === 'camera'
                  ? html`
                      <td class="number">${reachWords(point.reach)}</td>
                      <td class="number">${point.sheets ?? '…'}</td>
                      <td class="number">${kg(Math.round(point.mass * 1000) / 1000)}</td>
                      <td>${point.broken.length > 0 ? `breaks ${brokenWords(point.broken)}` : ''}</td>
                    `
                  : html`<td></td><td></td><td></td><td>${point === undefined ? '…' : 'no camera'}</td>`
              }
            </tr>
          `;
        })}
      </tbody>
    </table>
  </details>
`;
