import type { App } from '../app.js';
import { readFiles } from '../files.js';
import { isAnythingUnsaved } from '../unsaved.js';
import { openPicked } from './files.js';
import { DESIGN_TEXT } from './go-to.js';
import { save } from './save.js';

/** Keys and files that concern the whole page: undo and redo, save, a file that is dropped, leaving with work unsaved. */
export function attendDesign(app: App): void {
  document.addEventListener('keydown', (event) => {
    const deed = deedOf(event);
    if (deed === null || event.defaultPrevented || document.querySelector('dialog[open]') !== null) return;
    if (deed !== 'save' && hasOwnTyping(app, event.target)) return;
    event.preventDefault();
    if (deed === 'save') void save(app);
    else app[deed]();
  });
  document.addEventListener('dragover', (event) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  document.addEventListener('drop', (event) => {
    const files = [...(event.dataTransfer?.files ?? [])];
    if (event.defaultPrevented || files.length === 0) return;
    event.preventDefault();
    void readFiles(files).then((picked) => openPicked(app, picked));
  });
  window.addEventListener('beforeunload', (event) => {
    if (isAnythingUnsaved(app)) event.preventDefault();
  });
}

function deedOf({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): 'undo' | 'redo' | 'save' | null {
  if (ctrlKey === metaKey || altKey) return null;
  const letter = key.toLowerCase();
  if (letter === 'z') return shiftKey ? 'redo' : 'undo';
  if (letter === 'y' && ctrlKey && !shiftKey) return 'redo';
  return letter === 's' && !shiftKey ? 'save' : null;
}

/** Whether somebody types there and it is not written yet: the field then takes back its own keystrokes. */
function hasOwnTyping(app: App, target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement)
    return target.id === DESIGN_TEXT ? app.state().designView.typed !== null : target.value !== target.defaultValue;
  if (!(target instanceof HTMLInputElement) || !/^(text|search|number)$/.test(target.type)) return false;
  return target.value !== target.defaultValue;
}
