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
            <table class="figure-table changed-parts">
              <caption class="unseen">${recut.heading}</caption>
              <thead>
                <tr><th scope="col">Part</th><th scope="col">Why</th></tr>
              </thead>
              <tbody>
                ${recut.rows.map(([id, name, why]) => html`<tr><th scope="row">${partButton(app, id, name)}</th><td>${unbroken(why)}</td></tr>`)}
              </tbody>
            </table>
            <p class="deeds">
              <button type="button" @click=${() => buildOnlyThat(app)}>Build only what must be cut</button>
              <span class="help">The sheets then hold that alone.</span>
            </p>
          `
    }
    <h3>Kept</h3>
    ${kept.map((line) => html`<p class="changed-kept">${line}</p>`)}
    <h3>In the boxes as they are</h3>
    <table class="figure-table">
      <caption class="unseen">What each holder does in the boxes as they are</caption>
      <thead>
        <tr>
          <th scope="col">Holder</th>
          <th scope="col">Farthest</th>
          <th scope="col">Nearest</th>
          <th scope="col">What is put under</th>
        </tr>
      </thead>
      <tbody>
        ${inOldBoxes.map(
          ([holder, farthest, nearest, under]) => html`
            <tr><th scope="row">${holder}</th><td>${farthest}</td><td>${nearest}</td><td>${unbroken(under)}</td></tr>
          `,
        )}
      </tbody>
    </table>
    <h3>${figures.heading}</h3>
    ${
      figures.rows.length === 0
        ? html`<p>${figures.none}</p>`
        : html`
            <table class="figure-table changed-figures">
              <caption class="unseen">${figures.heading}</caption>
              <thead>
                <tr><th scope="col">Figure</th><th scope="col" class="number">Before</th><th scope="col" class="number">After</th></tr>
              </thead>
              <tbody>
                ${figures.rows.map(
                  ([figure, was, is]) => html`
                    <tr><th scope="row">${breaking(figure)}</th><td class="number">${was}</td><td class="number">${is}</td></tr>
                  `,
                )}
              </tbody>
            </table>
          `
    }
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
