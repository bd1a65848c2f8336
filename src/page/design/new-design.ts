import { html, nothing } from 'lit-html';
import type { App } from '../app.js';
import { mayLeave } from './leaving.js';

const DIALOG = 'new-design';

const LENGTHS = [
  { key: 'focalLength', ask: 'Focal length of the lens', example: '210 mm', help: 'Measured, if you can.' },
  {
    key: 'flangeDistance',
    ask: 'Flange distance',
    example: '203.5 mm',
    help: 'From the lens seat to the film for something very far away; it is not the focal length. Measured on the bench: the tray Lens on the bench says how. Until then leave it empty: the focal length is taken, marked as made up.',
  },
  {
    key: 'thickness',
    ask: 'Thickness of the plywood',
    example: '4.05 mm',
    help: 'Measured with a caliper, not as it was sold.',
  },
  {
    key: 'kerf',
    ask: 'How wide the laser cuts',
    example: '0.15 mm',
    help: 'From a test piece of the same sheet. Until you have one leave it empty: 0.15 mm is taken, marked as made up.',
  },
] as const;

/** Asks what must be known before a design can begin. */
export async function askNewDesign(app: App): Promise<void> {
  // before anything is filled in: the form lies over what would be lost
  if (!(await mayLeave(app))) return;
  const formats = await app.ask('format-names', null);
  app.change(({ designView }) => ({ designView: { ...designView, fresh: { formats, wrong: {} } } }));
  requestAnimationFrame(() => dialog()?.showModal());
}

function dialog(): HTMLDialogElement | null {
  const found = document.getElementById(DIALOG);
  return found instanceof HTMLDialogElement ? found : null;
}

/** The dialog stands in the page from the beginning; it is shown when it is asked for. */
export function newDesignDialog(app: App) {
  const { formats, wrong } = app.state().designView.fresh;
  const begin = (event: SubmitEvent) => {
    event.preventDefault();
    void beginDesign(app, event.currentTarget as HTMLFormElement); // the listener is on the form
  };
  return html`
    <dialog class="design-new" id=${DIALOG} aria-labelledby="new-design-title">
      <form novalidate @submit=${begin}>
        <h2 id="new-design-title">A new design</h2>
        <p>
          What a camera begins with. Everything else then stands in the design with what it means, and a figure that nobody
          has measured is marked as made up.
        </p>
        <div class="design-asked">
          <label for="new-name">Name of the camera</label>
          <input id="new-name" name="name" autocomplete="off" placeholder="such as Heron" />
          ${refusal('name', wrong)}
        </div>
        <div class="design-asked">
          <label for="new-format">Format</label>
          <select id="new-format" name="format">
            ${formats.map(({ name, title }) => html`<option value=${name} ?selected=${name === '5x7'}>${title}</option>`)}
          </select>
        </div>
        ${LENGTHS.map(
          ({ key, ask, example, help }) => html`
            <div class="design-asked">
              <label for=${`new-${key}`}>${ask}</label>
              <input
                id=${`new-${key}`}
                name=${key}
                autocomplete="off"
                placeholder=${`such as ${example}`}
                aria-describedby=${`new-${key}-help`}
                aria-invalid=${wrong[key] === undefined ? 'false' : 'true'}
              />
              <p class="design-help" id=${`new-${key}-help`}>${help} ${refusal(key, wrong)}</p>
            </div>
          `,
        )}
        ${refusal('all', wrong)}
        <div class="design-deeds">
          <button type="submit">Begin</button>
          <button type="button" @click=${() => dialog()?.close()}>Put away</button>
        </div>
      </form>
    </dialog>
  `;
}

const refusal = (key: string, wrong: Readonly<Record<string, string>>) =>
  wrong[key] === undefined ? nothing : html`<span class="design-wrong" role="alert">✕ ${wrong[key]}</span>`;

async function beginDesign(app: App, form: HTMLFormElement): Promise<void> {
  const typed = new FormData(form);
  const answer = (key: string) => String(typed.get(key) ?? '');
  const begun = await app.ask('new-design', {
    name: answer('name'),
    format: answer('format'),
    focalLength: answer('focalLength'),
    flangeDistance: answer('flangeDistance'),
    thickness: answer('thickness'),
    kerf: answer('kerf'),
  });
  const wrong = 'wrong' in begun ? begun.wrong : {};
  app.change(({ designView }) => ({ designView: { ...designView, fresh: { ...designView.fresh, wrong } } }));
  if ('wrong' in begun) {
    const [first = 'name'] = Object.keys(begun.wrong);
    document.getElementById(`new-${first}`)?.focus();
    return;
  }
  dialog()?.close();
  app.begin({ ...begun, beside: {} });
}
