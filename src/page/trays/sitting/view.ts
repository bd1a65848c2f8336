import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { FormField, FormNode } from '../../../model/design-form.js';
import type { App } from '../../app.js';
import type { State } from '../../state.js';
import { answerView } from './answer.js';
import { cardView } from './card.js';
import { asIsDesigned, beginLog, closeLog, keepUp, openLog, saveLog, type } from './deeds.js';
import {
  logGroup,
  readingGroup,
  refusalAt,
  resultGroup,
  type SittingField,
  type SittingGroup,
  setGroup,
  whereGroup,
} from './fields.js';

/** One sitting: what differs today from what the design says, and the setting that comes of it. */
export function view(app: App): TemplateResult {
  keepUp(app);
  const { typed, log } = app.state().sitting;
  const isTyped = Object.values(typed).some((text) => text.trim() !== '');
  return html`
    <div class="sitting">
      <div class="sitting-parts">
        <div>
          <p class="sitting-how">
            What the design says of a sitting stands in the fields; type what differs today.
            <button type="button" ?disabled=${!isTyped} @click=${() => asIsDesigned(app)}>As the design says</button>
          </p>
          ${groupView(app, whereGroup)}
        </div>
        ${answerView(app, isUnsaid(app.state()))}
        <div>
          ${groupView(app, setGroup)}
          ${groupView(app, readingGroup)}
        </div>
        <div>
          <section class="sitting-log" aria-labelledby="sitting-log-title">
            <h3 id="sitting-log-title">Sheet by sheet, with a log</h3>
            ${log === null ? withoutLog(app) : withLog(app, log)}
          </section>
          ${cardView(app)}
        </div>
      </div>
    </div>
  `;
}

const withoutLog = (app: App) => html`
  <p class="sitting-how">
    A log keeps what was set and what came out, and dials the next sheet in from it. Entries are only ever added at its end.
  </p>
  <p class="sitting-deeds">
    <button type="button" @click=${() => void openLog(app)}>Open a log…</button>
    <button type="button" @click=${() => beginLog(app)}>Begin a log</button>
  </p>
`;

function withLog(app: App, { file, text, saved }: NonNullable<State['sitting']['log']>) {
  const sheets = text.match(/^setting:/gm)?.length ?? 0;
  const isKept = text === saved;
  return html`
    <p role="status">
      ${file}: ${sheets === 0 ? 'no sheet yet' : sheets === 1 ? 'one sheet' : `${sheets} sheets`}.
      ${isKept ? nothing : html`<strong>Not saved yet.</strong>`}
    </p>
    <p class="sitting-deeds">
      <button type="button" ?disabled=${isKept} @click=${() => saveLog(app)}>Save the log</button>
      <button type="button" @click=${() => closeLog(app)}>Put the log away</button>
    </p>
    ${sheets === 0 ? nothing : groupView(app, resultGroup)}
    ${groupView(app, logGroup)}
  `;
}

function groupView(app: App, { title, fields }: SittingGroup) {
  return html`
    <fieldset class="sitting-group">
      <legend>${title}</legend>
      ${fields.map((field) => fieldView(app, field))}
    </fieldset>
  `;
}

function fieldView(app: App, field: SittingField) {
  const { key, label, help } = field;
  const { typed, answer } = app.state().sitting;
  const refusal = answer === null || answer.refused === null ? null : refusalAt(answer.refused);
  // where nothing was typed yet nothing is wrong yet
  const isAsked = refusal?.key === key && isUnsaid(app.state());
  const wrong = refusal?.key === key && !isAsked ? refusal.words : null;
  const text = typed[key] ?? '';
  const inDesign = designValue(app.state(), key);
  const hints = [
    ...(help === undefined ? [] : [help]),
    ...(inDesign !== null && text.trim() !== '' ? [`the design says ${inDesign}`] : []),
  ];
  const id = `sitting-${key}`;
  return html`
    <p class="sitting-line">
      <label for=${id}>${label}</label>
      ${field.options === undefined ? inputView(app, field, { id, text, inDesign, wrong }) : choiceView(app, field, { id, text, inDesign, wrong })}
      <span class="sitting-hint" id=${`${id}-said`}>
        ${wrong === null ? nothing : html`<strong class="sitting-wrong">${wrong}</strong>`} ${hints.join('; ')}${isAsked ? `. ${refusal.words}` : ''}
      </span>
    </p>
  `;
}

interface Given {
  readonly id: string;
  readonly text: string;
  readonly inDesign: string | null;
  readonly wrong: string | null;
}

const inputView = (app: App, { key, example }: SittingField, { id, text, inDesign, wrong }: Given) => html`
  <input
    id=${id}
    autocomplete="off"
    placeholder=${inDesign === null ? `such as ${example}` : `${inDesign}, by the design`}
    aria-invalid=${String(wrong !== null)}
    aria-describedby=${`${id}-said`}
    .value=${live(text)}
    @input=${(event: InputEvent) => type(app, key, (event.target as HTMLInputElement).value)}
  />
`;

function choiceView(app: App, { key, options = [] }: SittingField, { id, text, inDesign, wrong }: Given) {
  const { answer } = app.state().sitting;
  const words = key === 'filterSet' ? [...options, ...(answer?.filterSets ?? [])] : options;
  return html`
    <select
      id=${id}
      aria-invalid=${String(wrong !== null)}
      aria-describedby=${`${id}-said`}
      @change=${(event: Event) => type(app, key, (event.target as HTMLSelectElement).value)}
    >
      <option value="" ?selected=${text === ''}>${inDesign === null ? '–' : `${inDesign}, by the design`}</option>
      ${words.map((word) => html`<option value=${word} ?selected=${word === text}>${word}</option>`)}
    </select>
  `;
}

/** Whether neither the design nor anybody at the page has said anything of where the sitter is. */
const isUnsaid = (state: State): boolean =>
  Object.values(state.sitting.typed).every((text) => text.trim() === '') &&
  whereGroup.fields.every(({ key }) => designValue(state, key) === null);

/** What the design has written for a key of its sitting; null where it says nothing. */
function designValue({ reading }: State, key: string): string | null {
  const found = fieldAt(reading?.form?.nodes ?? [], `sitting.${key}`);
  return found === null || found.value === null || found.value === '' ? null : found.value;
}

function fieldAt(nodes: readonly FormNode[], path: string): FormField | null {
  for (const node of nodes) {
    if (node.kind === 'field' && node.path === path) return node;
    if (node.kind === 'group' && path.startsWith(`${node.path}.`)) return fieldAt(node.nodes, path);
  }
  return null;
}
