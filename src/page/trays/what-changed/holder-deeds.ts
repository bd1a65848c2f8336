import type { App } from '../../app.js';
import { saveFile } from '../../files.js';
import { markOf } from '../../mark-of.js';
import type { HolderTyped, OneMoreState } from './holder-state.js';

/** What can be done for a holder that turned up later. */

const put = (app: App, patch: Partial<OneMoreState>): void =>
  app.change(({ oneMore }) => ({ oneMore: { ...oneMore, ...patch } }));

export const typeHolder = (app: App, typed: Partial<HolderTyped>): void => put(app, typed);

/** Makes the spacer anew when what is typed has changed, or the design. */
export function attendOneMore(app: App): void {
  const { shown, oneMore } = app.state();
  const { depth, name, thickness, asked } = oneMore;
  if (shown === null) return;
  if (depth.trim() === '') {
    if (asked !== null) put(app, { asked: null, made: null });
    return;
  }
  const of = markOf(shown.of);
  if (asked?.depth === depth && asked.name === name && asked.thickness === thickness && asked.of === of) return;
  const wanted = { depth, name, thickness, of };
  put(app, { asked: wanted });
  void app
    .ask('spacer', { of: shown.of, depth, name, thickness }, { rank: 4 })
    .catch(() => null)
    .then((made) => {
      if (app.state().oneMore.asked === wanted) put(app, { made });
    });
}

export function saveSpacer(app: App): void {
  const { made } = app.state().oneMore;
  if (made === null || 'refused' in made || made.archive === null) return;
  const { path, bytes } = made.archive;
  // what came over from a worker lies in memory of its own
  saveFile(path, bytes as Uint8Array<ArrayBuffer>, 'application/zip');
}
