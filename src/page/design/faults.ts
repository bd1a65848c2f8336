import { html, nothing } from 'lit-html';
import type { Problem } from '../../index.js';
import type { App } from '../app.js';
import { goToKey, goToLine } from './go-to.js';
import { remarksOn } from './remarks.js';

/** Goes to the field of a fault, or to its line where it has none. */
export function goToFault(app: App, problem: Problem): void {
  const { reading } = app.state();
  const form = reading?.form ?? null;
  const hasField = form !== null && remarksOn(form.nodes, [problem], []).elsewhere.length === 0;
  if (hasField) goToKey(app, problem.path);
  else goToLine(app, problem);
}

/** What keeps the text from being a design, each the way to where it stands. */
export function faultList(app: App, problems: readonly Problem[] = app.state().reading?.problems ?? []) {
  if (problems.length === 0) return nothing;
  return html`
    <ul class="design-said design-faults">
      ${problems.map(
        (problem) => html`
          <li class="design-wrong">
            <span aria-hidden="true">✕</span>
            <button type="button" class="design-way" @click=${() => goToFault(app, problem)}>
              ${problem.path === '' ? `line ${problem.line}` : problem.path}
            </button>
            ${problem.what} ${problem.accepted}
          </li>
        `,
      )}
    </ul>
  `;
}
