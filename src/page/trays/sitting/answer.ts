import { html, nothing } from 'lit-html';
import type { DiallingWords, ExposureWords } from '../../../index.js';
import type { App } from '../../app.js';
import { unbroken } from '../../unbroken.js';
import { writeIntoLog } from './deeds.js';
import { inLabels, refusalAt } from './fields.js';

/** The setting for the sitting, and how it comes about. */
/** @param isUnsaid whether nobody has said yet where the sitter is: that is no mistake */
export function answerView(app: App, isUnsaid: boolean) {
  const { answer, log } = app.state().sitting;
  const { shown } = app.state();
  const exposure = answer?.exposure ?? null;
  return html`
    <section class="sitting-answer" aria-labelledby="sitting-title">
      <h2 id="sitting-title">${shown === null ? 'Exposure' : `Exposure with ${shown.plan.name}`}</h2>
      <div role="status">${answer?.refused === null || answer === null ? nothing : refused(answer.refused, isUnsaid)}</div>
      ${exposure?.dialling ? diallingView(exposure.dialling) : nothing}
      ${
        exposure === null || log === null
          ? nothing
          : html`
            <p class="sitting-deeds">
              <button
                type="button"
                class="sitting-write"
                ?disabled=${exposure.append === ''}
                @click=${() => void writeIntoLog(app)}
              >
                Write into the log
              </button>
            </p>
            <p class="sitting-how">
              ${
                exposure.append === ''
                  ? `${log.file} has this setting; the sheet waits for what comes out.`
                  : 'Write it first, then expose: a setting that is not in the log is forgotten.'
              }
            </p>
          `
      }
      ${exposure === null ? nothing : exposureView(exposure.words)}
    </section>
  `;
}

/** At the field that it is about, which is marked; here for whoever looks for the answer. */
function refused(words: string, isUnsaid: boolean) {
  if (isUnsaid) return html`<p class="sitting-how">Say where the sitter is: then the setting stands here.</p>`;
  const { key, words: said } = refusalAt(words);
  return key === null
    ? html`<pre class="sitting-refused">${said}</pre>`
    : html`<p class="sitting-refused">No exposure yet: see the field that is marked.</p>`;
}

function exposureView({ settings, from, factors, assumed, wanting, remarks, cautions }: ExposureWords) {
  return html`
    <table class="sitting-set figures">
      <caption>Set</caption>
      <tbody>
        ${settings.map(
          ([label, figure, beside]) => html`
            <tr>
              <th scope="row">${label}</th>
              ${beside === '' ? html`<td colspan="2"><b>${unbroken(figure)}</b></td>` : html`<td><b>${unbroken(figure)}</b></td><td>${inLabels(beside)}</td>`}
            </tr>
          `,
        )}
      </tbody>
    </table>
    ${listed('Not reckoned', wanting.map(inLabels))}
    ${remarks.map(
      ({ id, message, hint }) => html`
        <p class="sitting-remark"><strong>${id}:</strong> ${inLabels(message)} ${inLabels(hint)}</p>
      `,
    )}
    <table class="sitting-factors figures">
      <caption>How it comes about ${from === '' ? nothing : html`<span>${from}</span>`}</caption>
      <thead>
        <tr>
          <th scope="col">Against the reading</th>
          <th scope="col" class="number">times</th>
          <th scope="col" class="number">stops</th>
        </tr>
      </thead>
      <tbody>
        ${factors.map(
          ([what, times, stops]) => html`
            <tr>
              <th scope="row">${what}</th>
              <td class="number">${times}</td>
              <td class="number">${stops}</td>
            </tr>
          `,
        )}
      </tbody>
    </table>
    ${listed('Taken for granted', assumed.map(inLabels))}
    ${cautions.map((words) => html`<p class="sitting-caution"><strong>Mind:</strong> ${inLabels(words)}</p>`)}
  `;
}

function diallingView({ title, reasoning, strip, notes, remarks }: DiallingWords) {
  return html`
    <h3>${title}</h3>
    ${reasoning.map((words) => html`<p>${inLabels(words)}</p>`)}
    ${
      strip.rows.length === 0
        ? nothing
        : html`
          <p>${strip.how}</p>
          <table class="sitting-factors figures">
            <caption>Test strip</caption>
            <thead>
              <tr>${strip.titles.map((words) => html`<th scope="col">${words}</th>`)}</tr>
            </thead>
            <tbody>
              ${strip.rows.map((cells) => html`<tr>${cells.map((cell) => html`<td>${unbroken(cell)}</td>`)}</tr>`)}
            </tbody>
          </table>
        `
    }
    ${listed('Notes on the log', notes.map(inLabels))}
    ${remarks.map((words) => html`<p class="sitting-caution">${inLabels(words)}</p>`)}
  `;
}

const listed = (title: string, lines: readonly string[]) =>
  lines.length === 0
    ? nothing
    : html`
      <h3>${title}</h3>
      <ul>
        ${lines.map((line) => html`<li>${line}</li>`)}
      </ul>
    `;
