import { html, nothing, type TemplateResult } from 'lit-html';
import { ifDefined } from 'lit-html/directives/if-defined.js';
import { repeat } from 'lit-html/directives/repeat.js';
import type { FormGroup, FormList, FormNode } from '../../model/design-form.js';
import { type FormPlace, field, nameIn, sentence } from './field.js';
import { fieldId } from './go-to.js';
import { said } from './said.js';
import { inShort } from './short.js';
import { withCode } from './with-code.js';

/** Open when the page comes up: what a builder has in hand and changes most. */
const OPEN_AT_FIRST: readonly string[] = ['lens', 'focus', 'plywood', 'holders'];

/** Keys, groups and lists, in the order of the design file. */
export const nodes = (all: readonly FormNode[], place: FormPlace): TemplateResult =>
  html`${repeat(
    all,
    ({ path }) => path,
    (node) => {
      if (node.kind === 'field') return field(node, place);
      return node.kind === 'group' ? group(node, place) : list(node, place);
    },
  )}`;

/** What can be opened and closed: its name, in one line what it holds, and what is amiss in it. */
function fold(node: FormNode, place: FormPlace, name: string, inside: (open: boolean) => unknown) {
  const { app, remarks, of, seeking } = place;
  const { path } = node;
  const { opened } = app.state().designView;
  const amiss = remarks.within(path);
  const open = seeking || (opened[path] ?? (OPEN_AT_FIRST.includes(path) || amiss.problems > 0));
  const id = fieldId(path);
  const turn = () =>
    app.change(({ designView }) => ({
      designView: { ...designView, opened: { ...designView.opened, [path]: !open } },
    }));
  const head = html`
    <button
      type="button"
      id=${id}
      class="design-fold"
      aria-expanded=${String(open)}
      aria-controls=${`${id}-keys`}
      @click=${turn}
    >
      <span aria-hidden="true">${open ? '−' : '+'}</span> <b>${of.map((outer) => html`<span class="unseen">${outer}, </span>`)}${name}</b>
      ${open ? nothing : html` <span class="design-short">${inShort(node)}</span>`}
    </button>
    ${marks(amiss, open)}
  `;
  return html`
    <div class="design-group" role="group" aria-label=${nameIn(place, name)}>
      ${of.length === 0 ? html`<h3>${head}</h3>` : of.length === 1 ? html`<h4>${head}</h4>` : html`<h5>${head}</h5>`}
      ${said(app, { id: `${id}-said`, problems: remarks.problemsAt(path), findings: open ? remarks.findingsAt(path) : [] })}
      <div class="design-keys" id=${`${id}-keys`} ?hidden=${!open}>${inside(open)}</div>
    </div>
  `;
}

/** What a closed group hides must not be missed. */
function marks({ problems, errors, warnings }: ReturnType<FormPlace['remarks']['within']>, open: boolean) {
  if (open) return nothing;
  return html`
    ${problems > 0 ? html`<small class="design-amiss design-wrong">✕ ${problems} not taken</small>` : nothing}
    ${errors > 0 ? html`<small class="design-amiss design-error">✕ ${errors} will not do</small>` : nothing}
    ${warnings > 0 ? html`<small class="design-amiss design-warning">▲ ${warnings} to take care of</small>` : nothing}
  `;
}

function group(node: FormGroup, place: FormPlace, { name = node.label, behind = nothing as unknown } = {}) {
  if (node.words.length > 0) return wordOrKeys(node, place);
  return fold(node, place, name, (open) => {
    if (!open) return nothing;
    const { path, written, required } = node;
    const outright = written && !required && !path.endsWith(']');
    return html`
      ${aboutGroup(node)}
      ${nodes(node.nodes, { ...place, of: [...place.of, name], begun: written || required })}
      ${outright ? leaveOutAll(node, place) : nothing} ${behind}
    `;
  });
}

/** What a group is for; what would only say its name again is left out. */
function aboutGroup({ description, whenAbsent, written }: FormNode) {
  const known = description.split(' ').length < 3;
  const absent = whenAbsent === null || written ? '' : `If left out: ${whenAbsent}.`;
  return known && absent === ''
    ? nothing
    : html`<p class="design-help">${known ? '' : withCode(sentence(description))} ${withCode(absent)}</p>`;
}

const leaveOutAll = ({ path, label }: FormNode, { app, of }: FormPlace) => html`
  <button type="button" class="design-way" @click=${() => app.edit([{ kind: 'remove', path }])}>
    Leave out all of ${[...of, label].join(', ')}
  </button>
`;

const OWN = 'own';

/** A word from a table, or keys of one's own in its place. */
function wordOrKeys(node: FormGroup, place: FormPlace) {
  const { words, word, nodes: keys, path, label, written, required, description } = node;
  const { app, of, remarks } = place;
  const id = fieldId(path);
  const problems = remarks.problemsAt(path);
  const own = written && word === null && keys.some((key) => key.written);
  const turn = (event: Event) => {
    const { value } = event.currentTarget as HTMLSelectElement; // the listener is on the list
    if (value === OWN)
      app.edit(
        keys.filter((key) => key.required).map((key) => ({ kind: 'write', path: key.path, value: key.example })),
        path,
      );
    else if (value !== '') app.edit([{ kind: 'write', path, value }], path);
  };
  return html`
    <div class="design-field">
      <label for=${id}>${label}</label>
      <span class="design-entry">
        <select
          id=${id}
          aria-label=${nameIn(place, label)}
          aria-describedby=${`${id}-help ${id}-said`}
          aria-required=${ifDefined(required ? 'true' : undefined)}
          aria-invalid=${ifDefined(problems.length > 0 ? 'true' : undefined)}
          @change=${turn}
        >
          ${word !== null || own ? nothing : html`<option value="" .selected=${true}>${written ? 'not known' : 'not said'}</option>`}
          ${words.map((known) => html`<option value=${known} .selected=${known === word}>${known}</option>`)}
          <option value=${OWN} .selected=${own}>a size of your own</option>
        </select>
      </span>
      <p class="design-help" id=${`${id}-help`}>${withCode(sentence(description))} ${required ? html`<b>Needed.</b>` : nothing}</p>
      ${said(app, { id: `${id}-said`, problems, findings: remarks.findingsAt(path) })}
    </div>
    ${
      own
        ? html`<div class="design-keys design-own" role="group" aria-label=${nameIn(place, label)}>
            ${nodes(keys, { ...place, of: [...of, label], begun: true })}
          </div>`
        : nothing
    }
  `;
}

/** What an entry is called: by its own name, else by its number. */
function nameOfEntry({ nodes: keys }: FormGroup, label: string, i: number): string {
  const name = keys.find(({ key }) => key === 'name');
  return (name?.kind === 'field' ? name.value : null) ?? `${label} ${i + 1}`;
}

function list(node: FormList, place: FormPlace) {
  const { app } = place;
  const { path, label, entries, alone, fresh, most, written, required } = node;
  const inner = { ...place, of: [...place.of, label], begun: true };
  const id = fieldId(path);
  const add = () => {
    app.change(({ designView }) => ({
      designView: {
        ...designView,
        opened: { ...designView.opened, [path]: true, [`${path}[${entries.length}]`]: true },
      },
    }));
    app.edit([{ kind: 'add', path, entry: fresh }]);
  };
  const remove = (entry: FormGroup) => {
    const behind = app.state().designView.opened;
    app.change(({ designView }) => ({
      designView: { ...designView, opened: withoutEntry(behind, path, entries.indexOf(entry)) },
    }));
    app.edit([{ kind: 'remove', path: entry.path }]);
    document.getElementById(`${id}-add`)?.focus();
  };
  return fold(node, place, label, (open) =>
    open
      ? html`
          ${aboutGroup(node)}
          ${alone === null || entries.length > 0 ? nothing : field(alone, place)}
          ${repeat(
            entries,
            (entry) => entry.path,
            (entry, i) => {
              const name = nameOfEntry(entry, label, i);
              const behind = html`
                <button type="button" class="design-way" @click=${() => remove(entry)}>Remove ${name}</button>
              `;
              return group(entry, inner, { name, behind });
            },
          )}
          <button type="button" id=${`${id}-add`} class="design-way" ?disabled=${entries.length >= most} @click=${add}>
            Add to ${[...place.of, label].join(', ')}
          </button>
          ${written && !required ? leaveOutAll(node, place) : nothing}
        `
      : nothing,
  );
}

/** Which entries are open, once one of them is gone and the others have moved up. */
function withoutEntry(
  opened: Readonly<Record<string, boolean>>,
  list: string,
  gone: number,
): Readonly<Record<string, boolean>> {
  return Object.fromEntries(
    Object.entries(opened).flatMap(([path, open]) => {
      const [, number, rest = ''] = path.startsWith(`${list}[`)
        ? (/^\[(\d+)\](.*)$/.exec(path.slice(list.length)) ?? [])
        : [];
      if (number === undefined || Number(number) < gone) return [[path, open]];
      return Number(number) === gone ? [] : [[`${list}[${Number(number) - 1}]${rest}`, open]];
    }),
  );
}
