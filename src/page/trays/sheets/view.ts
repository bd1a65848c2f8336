import { html, nothing } from 'lit-html';
import { classMap } from 'lit-html/directives/class-map.js';
import type { ShownSheet, ShownSheets } from '../../../model/shown-sheets.js';
import { plainNumber } from '../../../units/print.js';
import type { App } from '../../app.js';
import { unbroken } from '../../unbroken.js';
import { sheetPicture } from './picture.js';
import { bringIntoSight } from './seek.js';
import type { SheetsState } from './state.js';
import { hardwareTable, printedTable } from './to-buy.js';

/** The sheets as they will be cut. */
export function view(app: App) {
  const { sheets, shown: camera } = app.state();
  const { shown, open } = sheets;
  if (shown === null)
    return html`<p>${camera === null || sheets.of === null ? 'The sheets are being laid out.' : NONE}</p>`;
  const opened = shown.sheets.find(({ name }) => name === open?.sheet);
  return html`<div class="sheets">${whereChosen(app, shown)}${opened ? openSheet(app, shown, opened) : allSheets(app, shown)}</div>`;
}

/** On which sheets the part that is chosen lies, and the way to each. */
function whereChosen(app: App, shown: ShownSheets) {
  const { chosen } = app.pose.now();
  const name = shown.sheets.flatMap(({ parts }) => parts).find(({ part }) => part === chosen)?.name;
  if (chosen === null || name === undefined) return nothing;
  const on = shown.sheets
    .map((sheet) => ({ sheet, count: sheet.parts.filter(({ part }) => part === chosen).length }))
    .filter(({ count }) => count > 0);
  const lie = on.reduce((sum, { count }) => sum + count, 0) === 1 ? 'lies' : 'lie';
  return html`
    <p class="sheets-where" id="sheets-where" role="status" tabindex="-1">
      <b>${chosen}</b> ${name} ${lie} on
      ${on.map(
        ({ sheet, count }, i) =>
          html`${i === 0 ? '' : ', '}<button type="button" class="sheets-way" @click=${() => goToPiece(app, sheet, chosen)}>${sheet.name}</button>${count > 1 ? ` (${count} pieces)` : ''}`,
      )}
    </p>
  `;
}

/** Where a sheet is open large, the other one is opened so too. */
function goToPiece(app: App, sheet: ShownSheet, part: string): void {
  if (app.state().sheets.open !== null) openLarge(app, sheet);
  requestAnimationFrame(() =>
    bringIntoSight(`[data-sheet="${CSS.escape(sheet.name)}"] [data-part="${CSS.escape(part)}"]`),
  );
}

const NONE = 'There is no camera to cut yet: the findings say why.';

function allSheets(app: App, shown: ShownSheets) {
  const materials = [...new Set(shown.sheets.map(({ material }) => material))];
  return html`
    ${layoutLine(app.state().sheets, shown)}
    <ul class="sheets-summary figures">
      ${shown.summary.map((line) => html`<li>${unbroken(line)}</li>`)}
    </ul>
    ${findingList(shown.findings.filter(({ level }) => level !== 'note'))}
    ${toBuy(app, shown)}
    <p class="sheets-caution"><b>Fire.</b> ${shown.caution}</p>
    ${colours(app)}
    ${materials.map(
      (material) => html`
        <h3>${material}</h3>
        <div class="sheets-of">
          ${shown.sheets.filter((sheet) => sheet.material === material).map((sheet) => listed(app, sheet))}
        </div>
      `,
    )}
    ${findingList(shown.findings.filter(({ level }) => level === 'note'))}
  `;
}

/** The list for the shop: sheets by what they are, what is printed, and what is bought by the piece. */
function toBuy(app: App, { sheets }: ShownSheets) {
  const plan = app.state().shown?.plan;
  if (plan === undefined) return nothing;
  const materials = [...new Set(sheets.map(({ material }) => material))];
  const kinds = [...new Set(sheets.map(kindOf))].map((kind) => ({
    kind,
    count: sheets.filter((sheet) => kindOf(sheet) === kind).length,
  }));
  return html`
    <details class="sheets-buy">
      <summary>What to buy: sheets, prints, hardware</summary>
      <table class="figure-table">
        <thead>
          <tr>
            <th scope="col" class="number">Count</th>
            <th scope="col">Sheets, in this layout</th>
          </tr>
        </thead>
        <tbody>
          ${kinds.map(
            ({ kind, count }) => html`
              <tr>
                <td class="number">${count}</td>
                <th scope="row">${kind}</th>
              </tr>
            `,
          )}
        </tbody>
      </table>
      ${printedTable(plan, materials)} ${hardwareTable(plan)}
    </details>
  `;
}

/** Sheets of one kind are bought together; a remnant is there already. */
const kindOf = ({ material, width, height, remnant }: ShownSheet): string =>
  remnant === null
    ? unbroken(`${material}, ${plainNumber(width, 1)} × ${plainNumber(height, 1)} mm`)
    : `${material}, your remnant ${remnant}`;

/** Which layout it is, and what is still looked for. */
function layoutLine({ search }: SheetsState, { layout }: ShownSheets) {
  const share = Math.round(100 * (search ?? 0));
  return html`
    <p class="sheets-layout" role="status">
      ${
        layout === 'sought'
          ? html`<b>As they are built.</b> The files to take away have these sheets.`
          : html`<b>First layout</b>, marks left out${search === null ? '.' : '; looking for a better one…'}`
      }
    </p>
    ${layout === 'at once' && search !== null ? html`<progress max="100" value=${share} aria-label="Looking for a better layout"></progress>` : nothing}
  `;
}

const findingList = (findings: ShownSheets['findings']) =>
  findings.length === 0
    ? nothing
    : html`
        <ul class="sheets-findings">
          ${findings.map(
            ({ level, message, hint }) => html`
              <li class=${level}><b>${level}</b> ${unbroken(message)} ${hint === undefined ? '' : html`<span>${unbroken(hint)}</span>`}</li>
            `,
          )}
        </ul>
      `;

const colours = (app: App) => html`
  <label class="sheets-colours">
    <input
      type="checkbox"
      .checked=${app.state().sheets.asCut}
      @change=${({ target }: Event) => put(app, { asCut: target instanceof HTMLInputElement && target.checked })}
    />
    Lines in the colours of the laser file
  </label>
`;

/** Widths that a sheet has at least in the tray, px: beside the camera, and where the tray is spread out. */
const TRAY = 300;
const SPREAD = 400;

function listed(app: App, sheet: ShownSheet) {
  return html`
    <figure>
      <figcaption>
        <b>${sheet.name}</b>
        <button type="button" aria-label=${`Open large: ${sheet.name}`} @click=${() => openLarge(app, sheet)}>Open large</button>
        <span class="figures">${factsOf(sheet)}</span>
      </figcaption>
      ${drawn(app, sheet, app.state().spread ? SPREAD : TRAY)}
      <details>
        <summary>Parts on it: ${sheet.parts.length} pieces</summary>
        ${partButtons(app, sheet)}
      </details>
    </figure>
  `;
}

function factsOf({ width, height, remnant, use, cutLength, minutes }: ShownSheet): string {
  const whole = Math.max(1, Math.round(minutes));
  const facts = [
    remnant === null ? `${plainNumber(width, 1)} × ${plainNumber(height, 1)} mm` : `remnant ${remnant}`,
    `${plainNumber(100 * use, 0)} % used`,
    `${plainNumber(cutLength / 1000, 2)} m to cut`,
    `about ${whole} ${whole === 1 ? 'minute' : 'minutes'}`,
  ];
  return facts.map(unbroken).join(' · ');
}

function drawn(app: App, sheet: ShownSheet, pixels: number, width?: number) {
  const { asCut } = app.state().sheets;
  return html`
    <svg
      class=${classMap({ 'as-cut': asCut })}
      role="img"
      data-sheet=${sheet.name}
      aria-label=${`${sheet.name}: ${sheet.parts.length} pieces on it; they are listed beside it`}
      viewBox=${`-1 -1 ${sheet.width + 2} ${sheet.height + 2}`}
      width=${width ?? nothing}
      @click=${(event: Event) => choose(app, partAt(event))}
    >
      ${sheetPicture(app, sheet, { pixels, asCut })}
    </svg>
  `;
}

const partAt = ({ target }: Event): string | null =>
  target instanceof Element ? (target.closest('[data-part]')?.getAttribute('data-part') ?? null) : null;

/** Chosen once more, a part is let go. */
const choose = (app: App, part: string | null): void =>
  app.pose.change({ chosen: part === app.pose.now().chosen ? null : part });

function partButtons(app: App, sheet: ShownSheet) {
  const { chosen } = app.pose.now();
  const parts = [...new Map(sheet.parts.map((piece) => [piece.part, piece])).values()].sort(byNumber);
  return html`
    <ul class="sheets-parts">
      ${parts.map(({ part, name }) => {
        const here = sheet.parts.filter((piece) => piece.part === part).length;
        return html`
          <li>
            <button type="button" aria-pressed=${String(part === chosen)} @click=${() => choose(app, part)}>
              <b>${part}</b> ${name}${here > 1 ? ` × ${here}` : ''}
            </button>
          </li>
        `;
      })}
    </ul>
  `;
}

/** F2 before F10. */
function byNumber(a: { readonly part: string }, b: { readonly part: string }): number {
  const [, letters = '', number = ''] = /^(\D*)(\d*)/.exec(a.part) ?? [];
  const [, others = '', other = ''] = /^(\D*)(\d*)/.exec(b.part) ?? [];
  if (letters !== others) return letters < others ? -1 : 1;
  return Number(number) - Number(other) || (a.part < b.part ? -1 : 1);
}

const put = (app: App, patch: Partial<SheetsState>): void =>
  app.change(({ sheets }) => ({ sheets: { ...sheets, ...patch } }));

const openLarge = (app: App, { name }: ShownSheet): void =>
  app.change(({ sheets, spread }) => ({
    spread: true,
    sheets: { ...sheets, open: { sheet: name, spreadBefore: sheets.open?.spreadBefore ?? spread }, zoom: 1 },
  }));

const closeLarge = (app: App): void =>
  app.change(({ sheets }) => ({
    spread: sheets.open?.spreadBefore ?? false,
    sheets: { ...sheets, open: null },
  }));

/** Width of an opened sheet, px, and how many times larger it gets. */
const LARGE = 860;
const ZOOMS: readonly number[] = [1, 1.5, 2, 3];

function openSheet(app: App, shown: ShownSheets, sheet: ShownSheet) {
  const { sheets } = app.state();
  const place = shown.sheets.indexOf(sheet);
  const zoom = ZOOMS.indexOf(sheets.zoom);
  const step = (by: number, words: string) => {
    const to = shown.sheets[place + by];
    return html`<button type="button" ?disabled=${to === undefined} @click=${() => to && openLarge(app, to)}>${words}</button>`;
  };
  const enlarge = (by: number, words: string) => {
    const to = ZOOMS[zoom + by];
    return html`<button type="button" ?disabled=${to === undefined} @click=${() => put(app, { zoom: to ?? 1 })}>${words}</button>`;
  };
  return html`
    <div class="sheets-bar">
      <button type="button" @click=${() => closeLarge(app)}>Back to all sheets</button>
      ${step(-1, 'Sheet before')} ${step(1, 'Next sheet')} ${enlarge(1, 'Larger')} ${enlarge(-1, 'Smaller')}
    </div>
    <h3>${sheet.name}</h3>
    <p class="figures">${factsOf(sheet)}</p>
    ${layoutLine(sheets, shown)} ${colours(app)}
    ${sheets.asCut ? layerKey(sheet) : nothing}
    <div class="sheets-large" role="region" aria-label=${`Drawing of ${sheet.name}`} tabindex="0">
      ${drawn(app, sheet, LARGE * sheets.zoom, LARGE * sheets.zoom)}
    </div>
    <p class="sheets-caution"><b>Fire.</b> ${shown.caution}</p>
    <h4>Parts on it</h4>
    ${partButtons(app, sheet)}
  `;
}

/** The order in which the laser goes, each kind of line with its colour. */
const layerKey = ({ operations }: ShownSheet) => html`
  <ol class="sheets-layers">
    ${operations
      .filter(({ path }) => path !== '')
      .map(
        ({ layer, colour }) => html`
          <li>
            <svg viewBox="0 0 24 8" width="24" height="8" aria-hidden="true">
              <line x1="0" y1="4" x2="24" y2="4" stroke=${colour} stroke-width="3"></line>
            </svg>
            ${layer}
          </li>
        `,
      )}
  </ol>
`;
