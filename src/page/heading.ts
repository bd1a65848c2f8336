import { html } from 'lit-html';
import type { PlanDocument } from '../index.js';
import { fNumber, magnification, plainNumber } from '../units/print.js';
import type { App } from './app.js';
import { goToFault } from './design/faults.js';
import { formatOf } from './format.js';
import { markOf } from './mark-of.js';
import { setTheme } from './screen.js';
import { far } from './section/words.js';
import { type State, themes } from './state.js';
import { unbroken } from './unbroken.js';
import { verdictOn } from './verdict.js';

/**
 * The title block, as on a drawing: whose camera it is; then what is looked at first, second and third: whether it will
 * do, what it reaches and what keeps it from more, what it costs.
 */
export function heading(app: App) {
  const state = app.state();
  const { shown, past, future, edits } = state;
  const plan = shown?.plan;
  return html`
    <header class="title-block">
      <div class="title-name">
        <h1>Tailboard</h1>
        ${
          plan === undefined
            ? ''
            : html`
              <p class="title-camera">${plan.name}</p>
              <p class="caption number">
                ${formatOf(state)}, ${plainNumber(plan.optics.focalLength, 1)} mm ${fNumber(plan.optics.maxAperture)}, revision
                ${plan.revision}
              </p>
            `
        }
      </div>
      ${verdictCell(app)}
      ${plan === undefined ? '' : html`${reachCell(plan, shown?.reached ?? 0)} ${costCell(state, plan)}`}
      <div class="deeds title-deeds">
        <button type="button" ?disabled=${past.length === 0 && edits.length === 0} @click=${app.undo}>Undo</button>
        <button type="button" ?disabled=${future.length === 0} @click=${app.redo}>Redo</button>
        ${themeButton(app)}
      </div>
    </header>
  `;
}

function verdictCell(app: App) {
  const { words, level, proof } = verdictOn(app.state());
  const [fault] = app.state().reading?.problems ?? [];
  return html`
    <div class="title-cell title-verdict">
      <p class=${`verdict level-${level}`} role="status">${words}</p>
      <p class="caption">${proof}</p>
      ${
        fault === undefined
          ? ''
          : html`<button type="button" class="title-fault" @click=${() => goToFault(app, fault)}>To the fault</button>`
      }
    </div>
  `;
}

function reachCell({ optics, slide }: PlanDocument, end: number) {
  const { magnification: asked, subjectDistance } = optics.nearest;
  const { reachableMagnification: reach, limitedBy } = slide;
  const at = subjectDistance === null ? '' : ` at ${unbroken(far(subjectDistance))}`;
  return html`
    <div class="title-cell title-reach">
      <p class="number">Nearest <b>${magnification(asked)}</b>${at}</p>
      <p class="caption" title=${limitedBy}>
        ${
          reach < asked
            ? html`<span class="level-error">these boxes reach ${magnification(Math.max(0, reach))}</span>`
            : html`${end > asked + 1e-6 ? html`runs on to ${magnification(end)}; ` : ''}these boxes could reach ${magnification(reach)}`
        }
      </p>
    </div>
  `;
}

function costCell({ sheets, shown }: State, { camera }: PlanDocument) {
  const { width, height, depthClosed, mass } = camera;
  // those of the camera before stay in their tray until the new ones are there, but are not counted beside its figures
  const isCounted = shown !== null && sheets.of === markOf(shown.of);
  const count = sheets.shown?.sheets.length ?? 0;
  return html`
    <div class="title-cell title-cost">
      <p class="number">
        <b>${plainNumber(mass, 2)} kg</b>${count === 0 ? '' : html`, <b>${isCounted ? count : '…'} ${isCounted && count === 1 ? 'sheet' : 'sheets'}</b>`}
      </p>
      <p class="caption number">
        closed ${unbroken(`${[width, height, depthClosed].map((side) => plainNumber(side, 0)).join(' × ')} mm`)}
      </p>
    </div>
  `;
}

const themeNames = { system: 'system', light: 'light', dark: 'dark' } as const;

function themeButton(app: App) {
  const { theme } = app.state();
  const next = themes[(themes.indexOf(theme) + 1) % themes.length] ?? 'system';
  return html`
    <button type="button" title=${`Change it to ${themeNames[next]}`} @click=${() => setTheme(app, next)}>
      Paper: ${themeNames[theme]}
    </button>
  `;
}
