import { html } from 'lit-html';
import type { App } from '../app.js';
import { type PickedFile, pickFiles } from '../files.js';
import { isChanged } from './changed.js';
import { mayLeave } from './leaving.js';
import { askNewDesign } from './new-design.js';
import { save } from './save.js';

const DESIGN = /\.ya?ml$/i;
const REMNANT = /\.json$/i;

/** The design file, and the ways from and to the disk. */
export function filesView(app: App) {
  const {
    design: { file },
    saved,
    opened,
    served,
  } = app.state();
  // of the sample that nobody ever saved it would be a lie that it is saved
  const kept = served === null && saved === opened.text ? 'as opened' : 'is saved';
  return html`
    <p class="design-file" role="status">
        <b>${file}</b> ${
          isChanged(app)
            ? html`<span class="design-changed">${saved === null ? 'is not saved yet' : 'changed since it was saved'}</span>`
            : kept
        }
      </p>
    <div class="design-files">
      <button type="button" @click=${() => void open(app)}>Open</button>
      <button type="button" @click=${() => void save(app)}>Save</button>
      <button type="button" @click=${() => void askNewDesign(app)}>New</button>
    </div>
  `;
}

async function open(app: App): Promise<void> {
  const picked = await pickFiles('.yaml,.yml,.json', true);
  await openPicked(app, picked);
}

/** Opens a design, with the remnants that were picked with it; remnants alone are laid beside the one that is open. */
export async function openPicked(app: App, picked: readonly PickedFile[]): Promise<void> {
  if (picked.length === 0) return;
  const designs = picked.filter(({ name }) => DESIGN.test(name));
  const beside = Object.fromEntries(
    picked.filter(({ name }) => REMNANT.test(name)).map(({ name, text }) => [name, text]),
  );
  const [design, second] = designs;
  if (second !== undefined) tell(app, 'Open one design at a time, with the remnants that it names.');
  else if (design !== undefined) {
    if (await mayLeave(app)) app.open({ file: design.name, text: design.text, beside });
  } else if (Object.keys(beside).length > 0) app.layBeside({ ...app.state().design.beside, ...beside });
  else tell(app, 'A design is a file that ends in .yaml; a remnant that it names ends in .json.');
}

const tell = (app: App, notice: string): void => app.change(() => ({ notice }));
