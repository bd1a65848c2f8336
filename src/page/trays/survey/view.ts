import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { App } from '../../app.js';
import { askFormat, beginList, isCurrent, openLists, putAway, retypeList, saveList, survey } from './deeds.js';
import { surveyTable } from './pairs.js';
import type { DrawerList } from './state.js';

/** What lies in the drawer, and what camera each lens could become. */
export function view(app: App): TemplateResult {
  const { lists, prepared, running, trouble } = app.state().survey;
  return html`
    <div class="survey">
      <p class="survey-how">
        Which of the lenses in the drawer would make which camera? Lists are YAML: the sheet, what could be exposed, and a
        line for each lens with what is known of it.
      </p>
      <p class="survey-deeds">
        <button type="button" @click=${() => void openLists(app)}>Open lists…</button>
        <button type="button" @click=${() => beginList(app)}>Begin a list</button>
      </p>
      ${lists.map((list) => listView(app, list))}
      <div role="status">
        ${
          prepared !== null && 'problems' in prepared
            ? html`<pre class="survey-trouble">${prepared.problems.join('\n\n')}</pre>`
            : nothing
        }
        ${trouble === null ? nothing : html`<p class="survey-trouble">${trouble}</p>`}
      </div>
      ${prepared !== null && 'count' in prepared ? formatsView(app, prepared.formats) : nothing}
      ${
        prepared === null || 'problems' in prepared || running !== null
          ? nothing
          : html`
            <p class="survey-deeds">
              <button type="button" class="survey-go" @click=${() => void survey(app)}>
                Survey ${prepared.count} ${prepared.count === 1 ? 'camera' : 'cameras'}
              </button>
            </p>
          `
      }
      ${running === null ? nothing : progress(running)}
      ${surveyTable(app, isCurrent(app.state().survey))}
    </div>
  `;
}

const listView = (app: App, list: DrawerList) => html`
  <details class="survey-list" open>
    <summary>${list.name}</summary>
    <textarea
      rows="9"
      spellcheck="false"
      aria-label=${`List ${list.name}`}
      .value=${live(list.text)}
      @input=${(event: InputEvent) => retypeList(app, list.name, (event.target as HTMLTextAreaElement).value)}
    ></textarea>
    <button type="button" @click=${() => saveList(app, list)}>Save ${list.name}</button>
    <button type="button" @click=${() => putAway(app, list)}>Put ${list.name} away</button>
  </details>
`;

function formatsView(app: App, names: readonly string[]) {
  const { formats } = app.state().survey;
  return html`
    <fieldset class="survey-formats">
      <legend>${formats.length === 0 ? 'Formats: as the lists say' : 'Formats: these alone'}</legend>
      ${names.map(
        (name) => html`
          <label>
            <input
              type="checkbox"
              .checked=${live(formats.includes(name))}
              @change=${() => askFormat(app, name, !formats.includes(name))}
            />
            ${name}
          </label>
        `,
      )}
    </fieldset>
  `;
}

const progress = ({
  done,
  count,
  stop,
}: {
  readonly done: number;
  readonly count: number;
  readonly stop: () => void;
}) => html`
  <p class="survey-deeds">
    <label for="survey-progress">Surveyed ${done} of ${count}</label>
    <progress id="survey-progress" max=${count} value=${done}></progress>
    <button type="button" @click=${stop}>Stop</button>
  </p>
`;
