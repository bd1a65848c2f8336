import { html, nothing } from 'lit-html';
import type { App } from '../../app.js';
import { drawing, type Inks } from '../../drawing.js';
import { unbroken } from '../../unbroken.js';
import type { LensFitted } from '../../worker/lens-asked.js';
import { saveReadings, writeIntoDesign } from './deeds.js';

/** The inks of the drawing of what the readings leave over. */
const INKS: Inks = {
  '#1a1a1a': 'var(--ink)',
  '#8a8a8a': 'var(--faint)',
  '#dfe8f2': 'var(--wash)',
  '#1f5a96': 'var(--blue)',
  '#b3261e': 'var(--red)',
  '#ffffff': 'var(--sheet)',
};

/** Its smallest letters are 3 mm: at this scale they are of 13 pixels. */
const PIXELS = 4.4;

/** The lens that comes of the readings. */
export function answerView(app: App) {
  const { fitted, faults } = app.state().lens;
  if (fitted === null)
    return html`<div class="lens-answer"><p class="lens-how">The lens stands here as soon as the readings make one.</p></div>`;
  const isOld = faults.length > 0;
  return html`
    <div class=${isOld ? 'lens-answer lens-old' : 'lens-answer'}>
      <h2>${fitted.lens.name ?? 'The lens'}</h2>
      <p class="lens-how" role="status">
        ${isOld ? 'Of the readings before: what is wrong stands at its row.' : `${fitted.lens.readings} readings; each ± what holds in 95 of 100 cases.`}
      </p>
      ${figures(fitted)}
      ${writing(app, isOld)}
      ${remarks(fitted)}
    </div>
  `;
}

/** What the readings leave over, and how the lens was reckoned from them. */
export function drawingView(app: App) {
  const { fitted, faults } = app.state().lens;
  if (fitted === null) return nothing;
  const isOld = faults.length > 0;
  return html`
    <div class=${isOld ? 'lens-drawing lens-old' : 'lens-drawing'}>
      <h3>What the readings leave over</h3>
      ${drawing(fitted.page, INKS, PIXELS)}
      <p><button type="button" ?disabled=${isOld} @click=${() => void saveReadings(app, 'svg')}>Save the drawing</button></p>
      <details>
        <summary>How it was reckoned</summary>
        <p>${unbroken(fitted.words.reckoned)}</p>
      </details>
      <p class="lens-caution">${unbroken(fitted.words.caution)}</p>
    </div>
  `;
}

function figures({ lens, words }: LensFitted) {
  const { standardErrors } = lens;
  return html`
    <table class="lens-figures figures">
      <caption class="lens-hidden">Figures of the lens</caption>
      <tbody>
        ${words.figures.map(([label, text]) => html`<tr><th scope="row">${label}</th><td>${unbroken(text)}</td></tr>`)}
        <tr>
          <th scope="row">Standard errors</th>
          <td>
            ${standardErrors.focalLength.toFixed(2)}\u00a0mm of the focal length, ${standardErrors.flangeDistance.toFixed(2)}\u00a0mm of
            the flange distance
          </td>
        </tr>
        ${words.predictions.map(
          ([label, text]) => html`<tr><th scope="row">${label}</th><td>${unbroken(text)}, lens seat to film</td></tr>`,
        )}
      </tbody>
    </table>
  `;
}

function writing(app: App, isOld: boolean) {
  const { written, fitted } = app.state().lens;
  const outliers = fitted?.lens.outliers ?? [];
  const { shown, design } = app.state();
  return html`
    <p class="lens-deeds">
      <button type="button" class="lens-write" ?disabled=${isOld} @click=${() => void writeIntoDesign(app)}>
        Put it into the design ${shown?.plan.name ?? design.file}
      </button>
    </p>
    ${
      outliers.length === 0
        ? nothing
        : html`
          <p class="lens-warning">
            <strong>Warning:</strong> reading ${outliers.join(', ')} does not belong to the line, and what is put into the
            design rests on it. Settle it before you cut wood.
          </p>
        `
    }
    ${
      written === null
        ? nothing
        : html`
          <div class="lens-written" role="status">
            ${
              written.changed.length === 0
                ? html`<p>The design has these figures already.</p>`
                : html`
                  <p>Put into the design; undo takes it back.</p>
                  <ul>
                    ${written.changed.map(({ path, from, to }) => html`<li><code>${path}</code> ${from ?? 'not written'} → ${to}</li>`)}
                  </ul>
                `
            }
            ${written.findings.map(
              ({ level, message, hint = '' }) =>
                html`<p class=${`lens-${level}`}><strong>${level}:</strong> ${unbroken(message)} ${unbroken(hint)}</p>`,
            )}
          </div>
        `
    }
  `;
}

const remarks = ({ lens }: LensFitted) =>
  lens.remarks.map(
    ({ level, message, hint }) =>
      html`<p class=${`lens-${level}`}><strong>${level}:</strong> ${unbroken(message)} ${unbroken(hint)}</p>`,
  );
