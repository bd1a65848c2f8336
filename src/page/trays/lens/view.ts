import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { BenchColumn, BenchSheet, CoverageRow } from '../../../model/bench-sheet.js';
import type { App } from '../../app.js';
import type { CellFault } from '../../worker/lens-asked.js';
import { answerView, drawingView } from './answer.js';
import { columnsOf, numbered, pasted, titles, withCell } from './cells.js';
import { openReadings, resheet, retype, saveReadings } from './deeds.js';
import type { LensState } from './state.js';

/** A lens from sharp images on the bench: readings above, the lens that comes of them below. */
export function view(app: App): TemplateResult {
  const { lens } = app.state();
  const { sheet, sizes, doubts, trouble } = lens;
  return html`
    <div class="lens">
      <div class="lens-parts">
      <div class="lens-readings">
        <p class="lens-how">
          Bring an image to focus on a ground glass, and measure: how long the image is, how long the object, and how far the
          ground surface stands from the lens seat. Three times at least, the scales far apart.
        </p>
        <p class="lens-deeds">
          <button type="button" @click=${() => void openReadings(app)}>Open readings…</button>
          <button type="button" @click=${() => void saveReadings(app, 'csv')}>Save as CSV</button>
          <button type="button" @click=${() => void saveReadings(app, 'yaml')}>Save as YAML</button>
        </p>
        ${trouble === null ? nothing : html`<pre class="lens-trouble" role="alert">${trouble}</pre>`}
        <p class="lens-line">
          <label for="lens-name">What lens it is</label>
          <input
            id="lens-name"
            .value=${live(sheet.name)}
            @input=${(event: InputEvent) => resheet(app, (now) => ({ ...now, name: textOf(event) }))}
          />
          ${saidOf(app, 'name')}
        </p>
        <p class="lens-line">
          <label for="lens-sizes">The size of the image is given by</label>
          <select
            id="lens-sizes"
            @change=${(event: Event) => retype(app, { sizes: textOf(event) === 'ratio' ? 'ratio' : 'lengths' })}
          >
            <option value="lengths" ?selected=${sizes === 'lengths'}>lengths of image and object</option>
            <option value="ratio" ?selected=${sizes === 'ratio'}>its scale, such as 1:3</option>
          </select>
        </p>
        <p class="lens-line">
          <label class="lens-tick">
            <input
              type="checkbox"
              .checked=${live(doubts)}
              @change=${() => retype(app, { doubts: !doubts })}
            />
            I know how well each was read
          </label>
        </p>
        ${readingsTable(app)}
        <button type="button" @click=${() => addRow(app)}>Another reading</button>
        <p class="lens-line">
          <label for="lens-at">Tell where the film stands at</label>
          <input
            id="lens-at"
            placeholder="1:4, 1:2"
            .value=${live(lens.at)}
            aria-invalid=${String(faultAt(app, 'at') !== null)}
            aria-describedby="lens-said-at"
            @input=${(event: InputEvent) => retype(app, { at: textOf(event) })}
          />
          ${saidOf(app, 'at')}
        </p>
      </div>
      ${answerView(app)}
      ${besideReadings(app)}
      ${drawingView(app)}
      </div>
    </div>
  `;
}

const textOf = (event: Event): string => (event.target as HTMLInputElement | HTMLSelectElement).value;

function readingsTable(app: App) {
  const { lens } = app.state();
  const columns = columnsOf(lens);
  const numbers = numbered(lens.sheet.readings);
  return html`
    <div class="lens-table-box" role="region" aria-label="Readings" tabindex="0">
      <table class="lens-table figures">
        <thead>
          <tr>
            <th scope="col" class="lens-head"><abbr title="number of the reading">no.</abbr></th>
            ${columns.map((column) => html`<th scope="col" class="lens-head" title=${titles[column].help}>${titles[column].title}</th>`)}
            <th scope="col" class="lens-head lens-off" title="reading less the line, mm">off</th>
            <td></td>
          </tr>
        </thead>
        <tbody>
          ${lens.sheet.readings.map((_, row) => readingRow(app, { row, columns, number: numbers[row] ?? null }))}
        </tbody>
      </table>
    </div>
    ${saidOf(app, 'readings')}
  `;
}

interface RowGiven {
  readonly row: number;
  readonly columns: readonly BenchColumn[];
  readonly number: number | null;
}

function readingRow(app: App, { row, columns, number }: RowGiven) {
  const { sheet, fitted, faults } = app.state().lens;
  const called = `Reading ${number ?? row + 1}`;
  const own = number === null ? [] : faults.filter(({ path }) => within(path, `readings[${number - 1}]`));
  const residual = fitted?.lens.residuals.find((one) => one.row === number);
  const far = number !== null && faults.length === 0 && fitted?.lens.outliers.includes(number) === true;
  const said = `lens-said-row-${row}`;
  return html`
    <tr class=${far ? 'lens-far' : ''}>
      <th scope="row">${number ?? ''}</th>
      ${columns.map((column) => {
        const wrong = own.some(({ path }) => path.endsWith(`.${column}`) || !path.includes('.'));
        return html`
          <td>
            <input
              id=${cellId(row, column)}
              class="lens-cell"
              size="7"
              aria-label=${`${called}, ${titles[column].title}`}
              aria-invalid=${String(wrong)}
              aria-describedby=${own.length > 0 || far ? said : nothing}
              .value=${live(sheet.readings[row]?.[column] ?? '')}
              @input=${(event: InputEvent) => resheet(app, (now) => withCell(now, row, column, textOf(event)))}
              @keydown=${(event: KeyboardEvent) => onKey(app, event, { row, column })}
              @paste=${(event: ClipboardEvent) => onPaste(app, event, { row, columns: columns.slice(columns.indexOf(column)) })}
            />
          </td>
        `;
      })}
      <td class="lens-off number">${residual === undefined || faults.length > 0 ? '' : signed(residual.residual)}</td>
      <td>
        <button type="button" class="lens-out" aria-label=${`Take out ${called.toLowerCase()}`} @click=${() => takeOut(app, row)}>out</button>
      </td>
    </tr>
    ${
      own.length === 0 && !far
        ? nothing
        : html`
          <tr class="lens-said">
            <td></td>
            <td colspan=${columns.length + 2} id=${said}>
              ${own.map(faultText)}
              ${far ? html`<strong>Outlier:</strong> it does not belong to the line of the others. ${turnedOver(app, number)}` : nothing}
            </td>
          </tr>
        `
    }
  `;
}

function turnedOver(app: App, number: number | null): string {
  const found = app.state().lens.fitted?.lens.outlierTest.found.find(({ row }) => row === number);
  return found?.turnedOver === true ? 'Turned over, image for object, it would.' : '';
}

const signed = (value: number): string => {
  const text = value.toFixed(2);
  return Number(text) === 0 ? '0.00' : value > 0 ? `+${text}` : text;
};

const cellId = (row: number, column: BenchColumn): string => `lens-${row}-${column}`;

interface Place {
  readonly row: number;
  readonly column: BenchColumn;
}

/** Enter begins the next reading, as Tab does in the last cell of one; up and down go from one to the next. */
function onKey(app: App, event: KeyboardEvent, { row, column }: Place): void {
  const { lens } = app.state();
  const rows = lens.sheet.readings.length;
  if (event.key === 'Enter' || isPastLast(lens, event, { row, column })) {
    event.preventDefault();
    if (row + 1 === rows) addRow(app);
    else focusSoon(cellId(row + 1, columnsOf(lens)[0] ?? 'distance'));
    return;
  }
  const to = row + ({ ArrowUp: -1, ArrowDown: 1 }[event.key] ?? 0);
  if (to === row || to < 0 || to >= rows) return;
  event.preventDefault();
  focusSoon(cellId(to, column));
}

/** From the last cell on to the next reading, not to the button that takes this one out; out of an empty row the way is free. */
function isPastLast(lens: LensState, event: KeyboardEvent, { row, column }: Place): boolean {
  if (event.key !== 'Tab' || event.shiftKey || column !== columnsOf(lens).at(-1)) return false;
  return numbered(lens.sheet.readings)[row] !== null;
}

function onPaste(
  app: App,
  event: ClipboardEvent,
  place: { readonly row: number; readonly columns: readonly BenchColumn[] },
): void {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  const sheet = pasted(app.state().lens.sheet, text, place);
  if (sheet === null) return;
  event.preventDefault();
  const ratio = sheet.readings.some(({ magnification = '' }) => magnification !== '');
  const lengths = sheet.readings.some(({ image = '' }) => image !== '');
  retype(app, { sheet, ...(ratio === lengths ? {} : { sizes: ratio ? 'ratio' : 'lengths' }) });
}

function addRow(app: App): void {
  const { lens } = app.state();
  resheet(app, (now) => ({ ...now, readings: [...now.readings, {}] }));
  focusSoon(cellId(lens.sheet.readings.length, columnsOf(lens)[0] ?? 'distance'));
}

function takeOut(app: App, row: number): void {
  resheet(app, (now) => ({ ...now, readings: now.readings.filter((_, i) => i !== row) }));
}

/** After the next picture, when it stands there. */
function focusSoon(id: string): void {
  requestAnimationFrame(() => {
    const cell = document.getElementById(id);
    if (!(cell instanceof HTMLInputElement)) return;
    cell.focus();
    cell.select();
  });
}

/** What else can be read on the bench. */
function besideReadings(app: App) {
  const { sheet } = app.state().lens;
  const fresh: CoverageRow = { diameter: '', magnification: '', distance: '' };
  const isOpen = sheet.pupils.front !== '' || sheet.pupils.rear !== '' || sheet.coverage.length > 0;
  return html`
    <details class="lens-more" ?open=${isOpen}>
      <summary>Pupils, image circle, hole</summary>
      <p class="lens-how">The bright disc at full aperture, seen from some distance; several readings between commas.</p>
      ${field(app, {
        id: 'pupils.front',
        label: 'Disc seen from the front',
        value: sheet.pupils.front,
        put: (text) => ({ pupils: { ...sheet.pupils, front: text } }),
      })}
      ${field(app, {
        id: 'pupils.rear',
        label: 'Disc seen from the rear',
        value: sheet.pupils.rear,
        put: (text) => ({ pupils: { ...sheet.pupils, rear: text } }),
      })}
      <p class="lens-how">How wide the glass is evenly bright and sharp, and at which scale.</p>
      ${sheet.coverage.length === 0 ? nothing : circles(app)}
      <button
        type="button"
        @click=${() => resheet(app, (now) => ({ ...now, coverage: [...now.coverage, fresh] }))}
      >
        Another circle
      </button>
      <p class="lens-how">The hole of the full aperture itself, measured with the lens open.</p>
      ${field(app, {
        id: 'hole.diameter',
        label: 'Hole across',
        value: sheet.hole.diameter,
        put: (text) => ({ hole: { ...sheet.hole, diameter: text } }),
      })}
      ${field(app, {
        id: 'hole.enlargement',
        label: 'It looks larger from the front by',
        value: sheet.hole.enlargement,
        put: (text) => ({ hole: { ...sheet.hole, enlargement: text } }),
      })}
    </details>
  `;
}

const circleColumns = [
  ['diameter', 'across'],
  ['magnification', 'at the scale'],
  ['distance', 'or at the distance'],
] as const;

function circles(app: App) {
  const { coverage } = app.state().lens.sheet;
  const put = (i: number, key: keyof CoverageRow, text: string) =>
    resheet(app, (now) => ({
      ...now,
      coverage: now.coverage.map((circle, k) => (k === i ? { ...circle, [key]: text } : circle)),
    }));
  return html`
    <table class="lens-table figures">
      <thead>
        <tr>
          ${circleColumns.map(([, title]) => html`<th scope="col" class="lens-head">${title}</th>`)}
          <td></td>
        </tr>
      </thead>
      <tbody>
        ${coverage.map(
          (one, i) => html`
            <tr>
              ${circleColumns.map(
                ([key, title]) => html`
                  <td>
                    <input
                      class="lens-cell"
                      size="7"
                      aria-label=${`Circle ${i + 1}, ${title}`}
                      aria-invalid=${String(faultAt(app, `coverage[${i}]`)?.path.endsWith(key) === true)}
                      aria-describedby=${`lens-said-coverage[${i}]`}
                      .value=${live(one[key])}
                      @input=${(event: InputEvent) => put(i, key, textOf(event))}
                    />
                  </td>
                `,
              )}
              <td>
                <button
                  type="button"
                  class="lens-out"
                  aria-label=${`Take out circle ${i + 1}`}
                  @click=${() => resheet(app, (now) => ({ ...now, coverage: now.coverage.filter((_, k) => k !== i) }))}
                >
                  out
                </button>
              </td>
            </tr>
            <tr class="lens-said">
              <td colspan="4" id=${`lens-said-coverage[${i}]`}>${told(faultAt(app, `coverage[${i}]`))}</td>
            </tr>
          `,
        )}
      </tbody>
    </table>
  `;
}

interface FieldGiven {
  /** The key of the file that it fills. */
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly put: (text: string) => Partial<BenchSheet>;
}

function field(app: App, { id, label, value, put }: FieldGiven) {
  return html`
    <p class="lens-line">
      <label for=${`lens-${id}`}>${label}</label>
      <input
        id=${`lens-${id}`}
        .value=${live(value)}
        aria-invalid=${String(faultAt(app, id) !== null)}
        aria-describedby=${`lens-said-${id}`}
        @input=${(event: InputEvent) => resheet(app, (now) => ({ ...now, ...put(textOf(event)) }))}
      />
      ${saidOf(app, id)}
    </p>
  `;
}

/** Whether a fault lies at a key or deeper. */
const within = (path: string, key: string): boolean =>
  path === key || path.startsWith(`${key}.`) || path.startsWith(`${key}[`);

const faultAt = (app: App, key: string): CellFault | null =>
  app.state().lens.faults.find(({ path }) => (key === 'readings' ? path === key : within(path, key))) ?? null;

const saidOf = (app: App, key: string) =>
  html`<span class="lens-said" id=${`lens-said-${key}`}>${told(faultAt(app, key))}</span>`;

const told = (fault: CellFault | null) => (fault === null ? nothing : faultText(fault));

const faultText = ({ what, accepted }: CellFault) => html`<strong>${what}</strong> ${accepted}`;
