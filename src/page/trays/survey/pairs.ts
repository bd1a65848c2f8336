import { html, nothing, svg } from 'lit-html';
import type { Sorting, SurveyPair } from '../../../index.js';
import type { App } from '../../app.js';
import { drawing, type Inks } from '../../drawing.js';
import { unbroken } from '../../unbroken.js';
import type { SurveyShown } from '../../worker/survey-asked.js';
import { choose, planPair, saveSurvey, sortBy } from './deeds.js';

/** What a click on the title of a column sorts by. */
const SORTS: Readonly<Record<string, Sorting>> = {
  Lens: 'name',
  covers: 'covers',
  reach: 'reach',
  travel: 'travel',
  closed: 'size',
  kg: 'mass',
  sheets: 'sheets',
};

/** The inks of the chart: its pale tones have a dark one each by night, under the same signs. */
const INKS: Inks = {
  '#33302b': 'var(--ink)',
  '#8d877c': 'var(--faint)',
  '#b9b3a7': 'var(--rule)',
  '#b7cfb5': 'var(--survey-covers)',
  '#e6e2bd': 'var(--survey-from)',
  '#e8d0cd': 'var(--survey-never)',
  '#ffffff': 'var(--sheet)',
  '#dcd8d0': 'var(--survey-none)',
};

/** Its smallest letters are 2.3 mm: at this scale they are of 13 pixels. */
const PIXELS = 5.7;

export function surveyTable(app: App, isNow: boolean) {
  const { shown, sort, surveyed } = app.state().survey;
  if (shown === null || surveyed === null) return nothing;
  const { words, pairs, charts } = shown;
  const bySort = Object.entries(SORTS).find(([, one]) => one === sort)?.[0];
  return html`
    <section class=${isNow ? 'survey-result' : 'survey-result survey-old'} aria-label="Survey">
      <p role="status">${isNow ? '' : 'The lists were changed since: survey them again.'}</p>
      <p class="survey-deeds">
        <button type="button" @click=${() => void saveSurvey(app, 'csv')}>Save as CSV</button>
        <button type="button" @click=${() => void saveSurvey(app, 'json')}>Save as JSON</button>
        <button type="button" @click=${() => void saveSurvey(app, 'svg')}>Save the chart</button>
        <button type="button" ?disabled=${sort === null} @click=${() => sortBy(app, null)}>Order of the lists</button>
      </p>
      <div class="survey-table-box" role="region" aria-label="Cameras" tabindex="0">
        <table class="survey-table figures">
          <thead>
            <tr>
              ${words.columns.map(({ title, align }) => {
                const by = SORTS[title];
                return html`
                  <th
                    scope="col"
                    class=${align === 'right' ? 'number' : ''}
                    aria-sort=${by === undefined ? nothing : title === bySort ? (by === 'reach' ? 'descending' : 'ascending') : 'none'}
                  >
                    ${
                      by === undefined
                        ? title
                        : html`<button type="button" class="survey-sort" @click=${() => sortBy(app, by)}>${title}${title === bySort ? (by === 'reach' ? ' ▾' : ' ▴') : ''}</button>`
                    }
                  </th>
                `;
              })}
            </tr>
          </thead>
          <tbody>
            ${pairs.map((pair, i) => pairRow(app, { pair, cells: words.rows[i] ?? [], shown }))}
          </tbody>
        </table>
      </div>
      ${words.odd.map(
        ({ level, message, hint = '' }) =>
          html`<p class="survey-odd"><strong>${level}:</strong> ${unbroken(message)} ${unbroken(hint)}</p>`,
      )}
      <details>
        <summary>What the columns and signs mean</summary>
        <ul class="survey-notes">
          ${words.notes.map((note) => html`<li>${unbroken(note)}</li>`)}
        </ul>
      </details>
      <h3>Formats against lenses</h3>
      ${charts.map((chart) => drawing(chart, INKS, PIXELS))}
    </section>
  `;
}

interface RowGiven {
  readonly pair: SurveyPair;
  readonly cells: readonly string[];
  readonly shown: SurveyShown;
}

function pairRow(app: App, { pair, cells, shown }: RowGiven) {
  const { chosen } = app.state().survey;
  const isChosen = chosen !== null && chosen.lens === pair.lens && chosen.format === pair.format;
  const { columns } = shown.words;
  return html`
    <tr class=${isChosen ? 'survey-chosen' : ''}>
      ${columns.map(({ title, align }, i) => {
        const cell = cells[i] ?? '';
        // a bound by area: the layout of a design may need more
        const text = title === 'sheets' && /^\d/.test(cell) ? `≥ ${cell}` : cell;
        if (i === 0)
          return html`
            <th scope="row">
              <button
                type="button"
                class="survey-pair"
                aria-expanded=${String(isChosen)}
                aria-label=${`${pair.lens}, ${pair.format}`}
                @click=${() => choose(app, isChosen ? null : { lens: pair.lens, format: pair.format })}
              >
                ${text}
              </button>
            </th>
          `;
        return html`<td class=${align === 'right' ? 'number' : ''}>${title === 'covers' ? sign(pair) : nothing}${text}</td>`;
      })}
    </tr>
    ${isChosen ? opened(app, { pair, cells, shown }) : nothing}
  `;
}

function opened(app: App, { pair, shown }: RowGiven) {
  const { words, lenses } = shown;
  const lens = words.lenses[lenses.indexOf(pair.lens)];
  return html`
    <tr class="survey-opened">
      <td colspan=${words.columns.length}>
        <div>
          ${lens === undefined ? nothing : [lens.headline, lens.assumed, ...lens.against].filter((line) => line !== '').map((line) => html`<p>${unbroken(line)}</p>`)}
          ${
            pair.camera === null
              ? html`<p>Two boxes around this lens do not close: there is no camera to plan.</p>`
              : html`
                <p>Holders: ${pair.holders.join(', ')}.</p>
                <button type="button" class="survey-plan" @click=${() => void planPair(app, pair)}>
                  Plan this camera: ${pair.lens}, ${pair.format}
                </button>
              `
          }
        </div>
      </td>
    </tr>
  `;
}

/** A full disc, a half one, an empty one; a question mark; a cross: the words behind it say the same. */
function sign({ state }: SurveyPair) {
  const disc = svg`<circle cx="8" cy="8" r="5.5" fill="none" stroke="currentColor" stroke-width="1.4"></circle>`;
  const inside = {
    covers: svg`<circle cx="8" cy="8" r="5.5" fill="currentColor"></circle>`,
    'covers-from': svg`${disc}<path d="M2.5 8a5.5 5.5 0 0 0 11 0z" fill="currentColor"></path>`,
    'never-covers': disc,
    'coverage-unknown': svg`<text x="8" y="13" font-size="14" text-anchor="middle" fill="currentColor">?</text>`,
    'does-not-close': svg`<path d="M3.5 3.5l9 9m0-9l-9 9" stroke="currentColor" stroke-width="1.6"></path>`,
  }[state];
  return html`<svg class="survey-sign" viewBox="0 0 16 16" width="15" height="15" aria-hidden="true">${inside}</svg>`;
}
