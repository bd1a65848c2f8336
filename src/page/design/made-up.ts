import { html, nothing } from 'lit-html';
import type { App } from '../app.js';
import type { State } from '../state.js';
import { goToKey } from './go-to.js';

/** Keys of the design that is shown whose figures nobody has measured. */
export const madeUpOf = ({ reading }: State): readonly string[] => reading?.madeUp ?? [];

/** `7 made-up figures` */
export const madeUpCount = (count: number): string => `${count} made-up ${count === 1 ? 'figure' : 'figures'}`;

/** Said of a key, beneath it: that its figure is nobody's, and how to make it one's own. */
export const madeUpAt = (app: App, path: string, id: string) =>
  madeUpOf(app.state()).includes(path)
    ? html`
        <p class="design-made-up" id=${id}>
          <span aria-hidden="true">◇</span> <b>Made up:</b> nobody has measured this. Type your own figure, or say that
          this is it:
          <button type="button" class="design-way" @click=${() => app.edit([{ kind: 'measured', path }])}>
            <span class="unseen">${path} </span>measured
          </button>
        </p>
      `
    : nothing;

/** All of them, each the way to its field: for whoever would build on them. */
export function madeUpList(app: App) {
  const paths = madeUpOf(app.state());
  if (paths.length === 0) return nothing;
  return html`
    <p class="design-made-up">
      <span aria-hidden="true">◇</span> <b>${madeUpCount(paths.length)}:</b> nobody has measured
      ${paths.length === 1 ? 'it' : 'them'}, and all that is said here hangs on ${paths.length === 1 ? 'it' : 'them'}. Measure
      before you cut anything:
      ${paths.map(
        (path) => html`<button type="button" class="design-way" @click=${() => goToKey(app, path)}>${path}</button> `,
      )}
    </p>
  `;
}
