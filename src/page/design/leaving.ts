import { html } from 'lit-html';
import type { App } from '../app.js';
import { isChanged } from './changed.js';
import { save } from './save.js';

const DIALOG = 'leaving-design';

/** Whether another design may take the place of this one: asked where something would be lost, and saved first where that is wanted. */
export async function mayLeave(app: App): Promise<boolean> {
  if (!isChanged(app)) return true;
  const choice = await chosen();
  return choice === 'save' ? save(app) : choice === 'lose';
}

/** What was pressed in the dialog; nothing where it was put away. */
function chosen(): Promise<string> {
  const dialog = document.getElementById(DIALOG);
  if (!(dialog instanceof HTMLDialogElement) || dialog.open) return Promise.resolve('');
  dialog.returnValue = '';
  dialog.showModal();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => resolve(dialog.returnValue), { once: true });
  });
}

/** The dialog stands in the page from the beginning; it is shown when something would be lost. */
export function leavingDialog(app: App) {
  const { design, saved } = app.state();
  return html`
    <dialog class="design-new" id=${DIALOG} aria-labelledby="leaving-title">
      <form method="dialog">
        <h2 id="leaving-title">Another design in place of this one</h2>
        <p>
          <b>${design.file}</b> ${saved === null ? 'was never saved' : 'was changed since it was saved'}. Without saving it
          you lose the changes.
        </p>
        <div class="design-deeds">
          <button type="submit" value="save">Save it first</button>
          <button type="submit" value="lose">Go on without saving</button>
          <button type="submit" value="">Stay with it</button>
        </div>
      </form>
    </dialog>
  `;
}
