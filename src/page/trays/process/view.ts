import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { Finding, ProcessWords } from '../../../index.js';
import type { StepSheet } from '../../../model/step-sheet.js';
import type { App } from '../../app.js';
import { cardView } from './card.js';
import {
  beginProcess,
  chooseTank,
  endClock,
  keepUp,
  openProcess,
  retype,
  saveProcess,
  startClock,
  tanksOf,
  toClock,
} from './deeds.js';

/** The steps of a print: typed or opened, as a table, as a card, and as a clock. */
export function view(app: App): TemplateResult {
  keepUp(app);
  const { open, answer } = app.state().process;
  return html`
    <div class="process">
      <p class="help">
        When is each bath poured and drained, with the time that the tank itself takes, and how much liquid do all prints
        want? The steps are yours: what the makers of your chemicals say, in a small file.
      </p>
      <p class="deeds">
        <button type="button" @click=${() => void openProcess(app)}>Open a process…</button>
        <button type="button" @click=${() => void beginProcess(app)}>Begin one</button>
      </p>
      ${open === null ? nothing : html`${textView(app, open)} ${tankView(app)}`}
      ${open === null || answer === null ? nothing : 'problems' in answer ? problemsView(answer.problems) : sheetView(app, answer.sheet, answer.words)}
    </div>
  `;
}

const textView = (app: App, { file, text, saved }: { file: string; text: string; saved: string }) => html`
  <details class="process-text" open>
    <summary>${file}${text === saved ? nothing : html` <strong>Not saved yet.</strong>`}</summary>
    <textarea
      rows="14"
      spellcheck="false"
      aria-label=${`Process ${file}`}
      .value=${live(text)}
      @input=${(event: InputEvent) => retype(app, (event.target as HTMLTextAreaElement).value)}
    ></textarea>
    <button type="button" ?disabled=${text === saved} @click=${() => saveProcess(app)}>Save ${file}</button>
  </details>
`;

/** Where the camera has a tank, what it does to times and volumes stands in for what the file does not say. */
function tankView(app: App) {
  const tanks = tanksOf(app);
  if (tanks.length === 0) return nothing;
  const { holder } = app.state().process;
  return html`
    <p class="field">
      <label for="process-tank">What the file does not say of the tank</label>
      <select id="process-tank" @change=${(event: Event) => chooseTank(app, (event.target as HTMLSelectElement).value)}>
        <option value="" ?selected=${!tanks.some(({ name }) => name === holder)}>stays unknown</option>
        ${tanks.map(({ name }) => html`<option value=${name} ?selected=${name === holder}>is that of the ${name}</option>`)}
      </select>
    </p>
  `;
}

const problemsView = (problems: readonly string[]) => html`
  <div role="status"><pre class="process-trouble">${problems.join('\n\n')}</pre></div>
`;

function sheetView(app: App, sheet: StepSheet, words: ProcessWords) {
  const broken = sheet.findings.some(({ level }) => level === 'error');
  return html`
    <h3>${words.name}</h3>
    ${sheet.findings.map(findingView)}
    ${clockDeeds(app, sheet, broken)}
    ${words.rules.map((rule) => html`<p>${rule}</p>`)}
    <div class="process-wide" role="region" aria-label="The steps" tabindex="0">${table(words.columns, words.rows)}</div>
    ${words.sums.map((sum) => html`<p>${sum}</p>`)}
    <h3>Liquid</h3>
    <div class="process-wide" role="region" aria-label="The liquid" tabindex="0">
      ${table(
        words.liquidColumns,
        words.liquidRows.map((cells) => ({ cells, beside: [] })),
      )}
    </div>
    <p>${words.liquid}</p>
    <h3>Mind</h3>
    <ul>
      ${words.cautions.map((caution) => html`<li>${caution}</li>`)}
    </ul>
    ${broken ? nothing : cardView(app)}
  `;
}

const findingView = ({ level, message, hint = '' }: Finding) => html`
  <p class="process-finding"><span class=${`level-${level}`}>${message}</span> <span class="help">${hint}</span></p>
`;

function clockDeeds(app: App, sheet: StepSheet, broken: boolean) {
  const { clock } = app.state().process;
  if (clock !== null)
    return html`
      <p class="deeds">
        <button type="button" class="main" @click=${() => toClock(app)}>To the step clock</button>
        <button type="button" @click=${() => endClock(app)}>End the clock</button>
      </p>
    `;
  return html`
    <p class="deeds">
      <button type="button" class="main" ?disabled=${broken} @click=${() => startClock(app, sheet)}>
        Start the step clock
      </button>
      <span class="help">
        ${broken ? 'These steps cannot be done.' : 'The first bath is poured as it starts; it can be paused.'}
      </span>
    </p>
  `;
}

const table = (columns: ProcessWords['columns'], rows: ProcessWords['rows']) => html`
  <table class="figure-table">
    <thead>
      <tr>
        ${columns.map(({ title, align }) => html`<th scope="col" class=${align === 'right' ? 'number' : ''}>${title}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(({ cells, beside }) => rowView(columns, cells, beside))}
    </tbody>
  </table>
`;

/** What is said of a step runs under all of its figures. */
const rowView = (columns: ProcessWords['columns'], cells: readonly string[], beside: readonly string[]) => html`
  <tr class=${beside.length === 0 ? '' : 'process-more'}>
    ${cells.map((cell, i) =>
      i === 0
        ? html`<th scope="row">${cell}</th>`
        : html`<td class=${columns[i]?.align === 'right' ? 'number' : ''}>${cell}</td>`,
    )}
  </tr>
  ${beside.length === 0 ? nothing : html`<tr><td class="process-beside" colspan=${columns.length}>${beside.join(' ')}</td></tr>`}
`;
