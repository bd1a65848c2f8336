import { html, nothing } from 'lit-html';
import type { CompareWords } from '../../../index.js';
import type { App } from '../../app.js';
import { isStale } from '../../state.js';
import { unbroken } from '../../unbroken.js';
import { buildOnlyThat, openAsOpened, openEarlier } from './deeds.js';
import { oneMoreHolder } from './holder-view.js';

/** What becomes of a camera that stands when its design becomes another. */
export function view(app: App) {
  const state = app.state();
  const { before, trouble, answer } = state.whatChanged;
  if (state.shown === null) return html`<p class="nothing">There is no camera to compare yet.</p>`;
  return html`
    <p>
      For a camera that was built already, or a design that was another: what changed since, which parts are cut again and
      which still fit, and what each holder does in the boxes as they are.
    </p>
    <p class="deeds">
      <button type="button" class=${before === null ? 'main' : ''} @click=${() => void openEarlier(app)}>
        Open an earlier camera
      </button>
      <button type="button" @click=${() => openAsOpened(app)}>Take the design as it was opened</button>
    </p>
    ${before === null || trouble !== null ? accepted : nothing}
    ${trouble === null ? nothing : html`<p class="level-error" role="alert">${trouble}</p>`}
    ${isStale(state) ? html`<p class="help">The newest text is no design: what is compared is the last that could be read.</p>` : nothing}
    ${before === null ? nothing : html`<p>Before: <b>${before.name}</b>. After: the design as it stands.</p>`}
    <p class="changed-title" role="status">${answer !== null && 'words' in answer ? answer.words.title : nothing}</p>
    ${answer === null ? nothing : 'refused' in answer ? html`<pre class="changed-refused" role="alert">${answer.refused}</pre>` : words(app, answer.words)}
    ${oneMoreHolder(app)}
  `;
}

const accepted = html`
  <p class="help">
    The <code>plan.json</code> of a folder that was built, best together with its <code>parts.json</code>: outlines are
    then compared, and a hundredth of a millimetre is no other part. Or the archive that Take away saved, or a design
    file, with the remnants that it names.
  </p>
`;

function words(app: App, { figures, recut, kept, lost, inOldBoxes }: CompareWords) {
  return html`
    ${
      lost.length === 0
        ? nothing
        : html`
            <h3>Lost</h3>
            <ul class="changed-lost">
              ${lost.map(({ what, why }) => html`<li><span class="level-warning">${unbroken(what)}</span> ${unbroken(why)}</li>`)}
            </ul>
          `
    }
    <h3>${recut.heading}</h3>
    ${
      recut.rows.length === 0
        ? html`<p>${recut.none}</p>`
        : html`
            ${table({
              kind: 'changed-parts',
              cells: 'words',
              caption: recut.heading,
              columns: ['Part', 'Why'],
              rows: recut.rows.map(([id, name, why]) => [partButton(app, id, name), unbroken(why)]),
            })}
            <p class="deeds">
              <button type="button" @click=${() => buildOnlyThat(app)}>Build only what must be cut</button>
              <span class="help">The sheets then hold that alone.</span>
            </p>
          `
    }
    <h3>Kept</h3>
    ${kept.map((line) => html`<p class="changed-kept">${line}</p>`)}
    <h3>In the boxes as they are</h3>
    ${table({
      kind: 'changed-holders',
      cells: 'words',
      caption: 'What each holder does in the boxes as they are',
      columns: ['Holder', 'Farthest', 'Nearest', 'What is put under'],
      rows: inOldBoxes.map(([holder, farthest, nearest, under]) => [holder, farthest, nearest, unbroken(under)]),
    })}
    <h3>${figures.heading}</h3>
    ${
      figures.rows.length === 0
        ? html`<p>${figures.none}</p>`
        : table({
            kind: 'changed-figures',
            cells: 'numbers',
            caption: figures.heading,
            columns: ['Figure', 'Before', 'After'],
            rows: figures.rows.map(([figure, was, is]) => [breaking(figure), was, is]),
          })
    }
  `;
}

interface Table {
  /** For the style sheet. */
  readonly kind: string;
  readonly cells: 'words' | 'numbers';
  readonly caption: string;
  readonly columns: readonly string[];
  /** The first cell of each names it. */
  readonly rows: readonly (readonly unknown[])[];
}

/** The heading over it says what the caption does, to who sees it. */
function table({ kind, cells: of, caption, columns: [first, ...columns], rows }: Table) {
  const set = of === 'numbers' ? 'number' : '';
  return html`
  <table class=${`figure-table ${kind}`}>
    <caption class="unseen">${caption}</caption>
    <thead>
      <tr><th scope="col">${first}</th>${columns.map((column) => html`<th scope="col" class=${set}>${column}</th>`)}</tr>
    </thead>
    <tbody>
      ${rows.map(([name, ...cells]) => html`<tr><th scope="row">${name}</th>${cells.map((cell) => html`<td class=${set}>${cell}</td>`)}</tr>`)}
    </tbody>
  </table>
`;
}

/** The name of a figure is long, and may break after each full stop. */
const breaking = (figure: string) => figure.split('.').map((word, i) => (i === 0 ? word : html`.<wbr />${word}`));

/** A part that can be seen is shown on the camera. */
function partButton(app: App, id: string, name: string) {
  const isSeen = app.state().shown?.solids?.bodies.some(({ part }) => part === id) ?? false;
  if (!isSeen) return `${id} ${name}`;
  const isChosen = app.pose.now().chosen === id;
  return html`<button
    type="button"
    class="quiet"
    aria-pressed=${String(isChosen)}
    @click=${() => app.pose.change({ chosen: isChosen ? null : id })}
  >${id} ${name}</button>`;
}
