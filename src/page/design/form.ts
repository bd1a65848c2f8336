import { html, nothing } from 'lit-html';
import type { App } from '../app.js';
import { findingsNow } from '../trays/findings/now.js';
import { faultList } from './faults.js';
import { found } from './find.js';
import { nodes } from './node.js';
import { remarksOn } from './remarks.js';
import { pathAndWords } from './said.js';

/** All keys that a design may have, as the schema tells them, with what the file has written. */
export function formView(app: App) {
  const { reading, designView } = app.state();
  if (reading === null) return html`<p>The design is being read.</p>`;
  const problems = [...(reading.problems ?? []), ...reading.refused];
  const all = reading.form?.nodes ?? [];
  // what was found on an earlier camera is not said of this text
  const current = problems.length === 0 ? findingsNow(app.state()).findings : [];
  const remarks = remarksOn(all, problems, current);
  const { sought } = designView;
  const kept = found(all, sought);
  return html`
    ${faultList(
      app,
      (reading.problems ?? []).filter((problem) => !remarks.elsewhere.includes(problem)),
    )}
    ${
      remarks.elsewhere.length === 0
        ? nothing
        : html`
            <ul class="design-said design-elsewhere" role="alert">
              ${remarks.elsewhere.map((problem) => html`<li class="design-wrong">${pathAndWords(app, problem)}</li>`)}
            </ul>
          `
    }
    ${
      reading.form === null
        ? html`<p>There is no form of this text until it can be read.</p>`
        : html`
            <div class="design-find">
              <label for="design-find">Find a key</label>
              <input
                type="search"
                id="design-find"
                autocomplete="off"
                aria-describedby="design-tip"
                .value=${sought}
                @input=${(event: Event) => seek(app, (event.currentTarget as HTMLInputElement).value)}
              />
              <p class="design-help" id="design-tip">
                ${
                  sought.trim() === ''
                    ? 'In a field with a number, arrow up and down step its last digit; with Shift, ten times as much.'
                    : kept.length === 0
                      ? 'No key is called that.'
                      : 'Only the keys that fit are shown.'
                }
              </p>
            </div>
            <div class="design-form">
              ${nodes(kept, { app, remarks, of: [], begun: true, seeking: sought.trim() !== '' })}
            </div>
          `
    }
  `;
}

const seek = (app: App, sought: string): void =>
  app.change(({ designView }) => ({ designView: { ...designView, sought } }));
