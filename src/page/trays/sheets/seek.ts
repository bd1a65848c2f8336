import type { App } from '../../app.js';
import type { State } from '../../state.js';
import type { SheetsState } from './state.js';

/** What is chosen elsewhere is brought into sight here; what is chosen here lies where one looks, and stays there. */
export function seeking({ sheets, tray, narrow }: State, chosen: string | null): SheetsState {
  const here = tray === 'sheets' && (narrow || document.activeElement?.closest('#tray') instanceof Element);
  return { ...sheets, sought: chosen === null || here ? null : { part: chosen, led: false } };
}

/** While it is open: brings into sight what is sought, once it is drawn. */
export function attendSheets(app: App): void {
  const { shown, sought } = app.state().sheets;
  if (sought === null || shown === null) return;
  if (sought.led) document.getElementById('sheets-where')?.focus({ preventScroll: true });
  bringIntoSight(`[data-part="${CSS.escape(sought.part)}"]`);
  app.change(({ sheets }) => ({ sheets: { ...sheets, sought: null } }));
}

/** The first piece of a selector that is drawn in the tray. */
export const bringIntoSight = (selector: string): void =>
  document.querySelector(`.sheets ${selector}`)?.scrollIntoView({ block: 'center', inline: 'center' });
