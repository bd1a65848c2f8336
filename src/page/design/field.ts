import { html, nothing } from 'lit-html';
import { ifDefined } from 'lit-html/directives/if-defined.js';
import type { FormField } from '../../model/design-form.js';
import type { App } from '../app.js';
import { fieldValue } from './field-value.js';
import { fieldId } from './go-to.js';
import { madeUpAt, madeUpOf } from './made-up.js';
import type { Remarks } from './remarks.js';
import { said } from './said.js';
import { steppedAt } from './step.js';
import { withCode } from './with-code.js';

/** Where a node of the form stands. */
export interface FormPlace {
  readonly app: App;
  readonly remarks: Remarks;
  /** Names of the groups that it is in, from the outside in. */
  readonly of: readonly string[];
  /** Whether the group is there: only then are the keys needed that it cannot do without. */
  readonly begun: boolean;
  /** Whether everything is open, because a key is looked for. */
  readonly seeking: boolean;
}

/** What a screen reader calls a thing of the form: `lens, focal length`. */
export const nameIn = ({ of }: FormPlace, label: string): string => [...of, label].join(', ');

/** Longer values get the width of the panel. */
const SHORT = 15;

const stepsOf: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1 };

/** One key: its name, what the file has, what holds without it, and what is said of it. */
export function field(node: FormField, place: FormPlace) {
  const { app, remarks } = place;
  const { path, label, whenAbsent, description, options } = node;
  const required = node.required && place.begun;
  const value = fieldValue(node, app.state().edits);
  const id = fieldId(path);
  const [problems, findings] = [remarks.problemsAt(path), remarks.findingsAt(path)];
  const remarked = problems.length + findings.length > 0;
  const wide = options.length === 0 && (value?.length ?? 0) > SHORT;
  const control = options.length > 0 ? choiceOf : lineOf;
  return html`
    <div class=${wide ? 'design-field design-wide' : 'design-field'}>
      <label for=${id}>${label}</label>
      ${control(node, place, {
        id,
        value,
        required,
        wrong: problems.length > 0,
        described: `${id}-help${madeUpOf(app.state()).includes(path) ? ` ${id}-made-up` : ''}${remarked ? ` ${id}-said` : ''}`,
      })}
      ${
        value === null || required
          ? nothing
          : html`
              <button
                type="button"
                class="design-leave"
                aria-label=${`Leave out ${nameIn(place, label)}`}
                title=${whenAbsent === null ? 'Leave it out' : `Leave it out: ${whenAbsent}`}
                @click=${() => {
                  app.edit([{ kind: 'remove', path }]);
                  document.getElementById(id)?.focus();
                }}
              >
                ×
              </button>
            `
      }
      <p class="design-help" id=${`${id}-help`}>
        ${withCode(sentence(description))} ${required ? html`<b>Needed.</b>` : nothing}${node.several ? ' Several with commas between.' : ''}
        ${whenAbsent === null ? nothing : html`<span>If left out: ${withCode(whenAbsent)}.</span>`}
      </p>
      ${madeUpAt(app, path, `${id}-made-up`)}
      ${said(app, { id: `${id}-said`, problems, findings })}
    </div>
  `;
}

interface Control {
  readonly id: string;
  readonly value: string | null;
  readonly required: boolean;
  readonly wrong: boolean;
  readonly described: string;
}

/** Writes what was typed; an empty field is a key that is left out. */
function write({ app }: FormPlace, node: FormField, typed: string, stepped?: string): void {
  const value = typed.trim();
  const now = fieldValue(node, app.state().edits);
  if (value === (now ?? '')) return;
  const { path } = node;
  app.edit([value === '' ? { kind: 'remove', path } : { kind: 'write', path, value }], stepped);
}

/** A value on one line: arrows step it, Enter and leaving write it, Escape brings back what is written. */
function lineOf(node: FormField, place: FormPlace, { id, value, required, wrong, described }: Control) {
  const { path, unit, whenAbsent, example } = node;
  // a long one is told in full beneath
  const absent = whenAbsent !== null && whenAbsent.length <= SHORT ? whenAbsent : 'left out';
  const placeholder = whenAbsent === null ? `such as ${example}` : absent;
  const onKey = (event: KeyboardEvent) => {
    const input = event.currentTarget as HTMLInputElement; // the listener is on the input
    if (event.key === 'Enter') return write(place, node, input.value);
    if (event.key === 'Escape' && input.value !== (value ?? '')) {
      event.stopPropagation();
      input.value = value ?? '';
    }
    const step = stepsOf[event.key];
    if (step === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    const next = steppedAt(
      input.value,
      input.selectionStart ?? 0,
      event.shiftKey ? 10 * step : step,
      node.mayBeNegative,
    );
    if (next === null) return;
    event.preventDefault();
    input.value = next.value;
    input.setSelectionRange(next.caret, next.caret);
    write(place, node, next.value, path);
  };
  return html`
    <span class="design-entry">
      <input
        type="text"
        id=${id}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        aria-label=${nameIn(place, node.label)}
        aria-describedby=${described}
        aria-required=${ifDefined(required ? 'true' : undefined)}
        aria-invalid=${ifDefined(wrong ? 'true' : undefined)}
        placeholder=${placeholder}
        value=${value ?? ''}
        .value=${value ?? ''}
        @change=${(event: Event) => write(place, node, (event.currentTarget as HTMLInputElement).value)}
        @keydown=${onKey}
      />
      ${unit !== '' && value !== null && /^[-\d.\s]+$/.test(value) ? html`<span class="design-unit">${unit}</span>` : nothing}
    </span>
  `;
}

/** One of a few words. What the file has and nobody knows stands among them, for it has to be seen to be mended. */
function choiceOf(node: FormField, place: FormPlace, { id, value, required, wrong, described }: Control) {
  const { options, path, whenAbsent } = node;
  const unknown = value !== null && !options.includes(value) ? [value] : [];
  return html`
    <span class="design-entry">
      <select
        id=${id}
        aria-label=${nameIn(place, node.label)}
        aria-describedby=${described}
        aria-required=${ifDefined(required ? 'true' : undefined)}
        aria-invalid=${ifDefined(wrong ? 'true' : undefined)}
        @change=${(event: Event) => write(place, node, (event.currentTarget as HTMLSelectElement).value, path)}
      >
        ${
          required && value !== null
            ? nothing
            : html`<option value="" .selected=${value === null}>${whenAbsent === null ? 'not said' : `left out: ${whenAbsent}`}</option>`
        }
        ${[...unknown, ...options].map(
          (option) => html`<option value=${option} .selected=${option === value}>${option}</option>`,
        )}
      </select>
    </span>
  `;
}

/** The words of the schema begin small and end without a stop. */
export const sentence = (words: string): string => {
  const closed = /[.!?]$/.test(words) ? words : `${words}.`;
  return closed.charAt(0).toUpperCase() + closed.slice(1);
};
