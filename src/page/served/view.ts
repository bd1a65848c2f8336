import { html } from 'lit-html';
import type { App } from '../app.js';
import { save } from '../design/save.js';
import { type Difference, differences } from './difference.js';
import { keepMine, takeTheirs } from './served.js';
import type { FileContent } from './state.js';

/** What became of the file without the user's doing. */
export function saidOfFile(app: App) {
  const said = app.state().served?.said ?? '';
  return html`
    <div role="status">
      ${
        said === ''
          ? ''
          : html`
              <p class="said-of-file">
                ${said}
                <button type="button" @click=${() => putAway(app)}>Put away</button>
              </p>
            `
      }
    </div>
  `;
}

const putAway = (app: App): void =>
  app.change(({ served }) => (served === null ? {} : { served: { ...served, said: '' } }));

/** Where somebody else wrote into the file meanwhile: what there is to choose from. Nothing is written before that. */
export function changedMeanwhile(app: App) {
  const { served, design } = app.state();
  if (served === null || served.theirs === null) return '';
  const { theirs, file } = served;
  return html`
    <section class="meanwhile" role="alert" aria-label="The file was changed">
      <p><b>${file} was changed by somebody else</b> while you were changing it here. Neither is lost yet.</p>
      <details>
        <summary>Show the difference</summary>
        ${difference(design.text, theirs)}
      </details>
      <div class="meanwhile-deeds">
        <button type="button" @click=${() => takeTheirs(app, theirs)}>Take what is in the file</button>
        <button type="button" @click=${() => void writeOver(app, theirs)}>Keep mine and write over the file</button>
      </div>
    </section>
  `;
}

const writeOver = (app: App, theirs: FileContent): Promise<boolean> => {
  keepMine(app, theirs);
  return save(app);
};

function difference(mine: string, { text }: FileContent) {
  const found = differences(mine, text);
  if (found === null) return html`<p>The two have hardly a line in common.</p>`;
  if (found.length === 0) return html`<p>They differ in the ends of their lines alone.</p>`;
  return html`
    <ul class="meanwhile-lines">
      ${found.map((one) => html`<li>${place(one)}: ${side('here', one.mine)} ${side('in the file', one.theirs)}</li>`)}
    </ul>
  `;
}

const place = ({ mineAt, mine, theirsAt }: Difference): string =>
  mine.length > 0 ? linesFrom(mineAt, mine.length) : `Line ${theirsAt} of the file`;

const linesFrom = (at: number, count: number): string =>
  count === 1 ? `Line ${at}` : `Lines ${at} to ${at + count - 1}`;

const side = (where: string, lines: readonly string[]) =>
  lines.length === 0
    ? html`<span>${where} nothing;</span>`
    : html`<span>${where}</span> <code>${lines.map((line) => line.trim()).join(' ⏎ ') || '(an empty line)'}</code>`;
