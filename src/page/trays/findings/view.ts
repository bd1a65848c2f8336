import { html, nothing } from 'lit-html';
import type { Finding } from '../../../index.js';
import { magnification, plainNumber } from '../../../units/print.js';
import type { App } from '../../app.js';
import { faultList } from '../../design/faults.js';
import { goToKey } from '../../design/go-to.js';
import { madeUpList } from '../../design/made-up.js';
import { isStale } from '../../state.js';
import { unbroken } from '../../unbroken.js';
import type { PlacedFinding } from '../../worker/placed-finding.js';
import { type FindingsNow, findingsNow } from './now.js';
import { pointAt } from './point-at.js';
import { provenView } from './proven.js';

export function view(app: App) {
  const state = app.state();
  const now = findingsNow(state);
  if (state.shown === null)
    return html`<p class="nothing">There is no camera to find anything about yet.</p>${faultList(app)}`;
  const { proof } = state.findings;
  return html`
    ${isStale(state) ? html`<p class="findings-stale">These are of the last design that could be read.</p>` : nothing}
    ${faultList(app)} ${madeUpList(app)} ${verdict(now)}
    ${LEVELS.map((level) => group(app, now, level))}
    ${now.proven && proof.kind === 'done' && proof.document !== null ? provenView(proof.document) : nothing}
  `;
}

const LEVELS = ['error', 'warning', 'note'] as const;

const TITLES: Readonly<Record<Finding['level'], string>> = {
  error: 'Errors: it cannot be built like this',
  warning: 'Warnings: it can be built, and will vex you',
  note: 'Notes: good to know',
};

/** Whether it was proven, or how far that is. */
function verdict({ findings, proven, running }: FindingsNow) {
  const errors = findings.filter(({ level }) => level === 'error').length;
  if (running !== null)
    return html`
      <div class="findings-verdict">
        <p id="findings-stage">Being proven: ${running.stage}</p>
        <progress aria-labelledby="findings-stage" max="1" .value=${running.done}></progress>
        <p class="help">What stands here meanwhile was found in the figures alone.</p>
      </div>
    `;
  if (!proven)
    return html`<p class="findings-verdict help">Not proven yet: what stands here was found in the figures alone.</p>`;
  return html`
    <p class="findings-verdict" role="status">
      ${
        errors === 0
          ? 'Proven: put together, moved and looked into, and no rule of level error is broken.'
          : `Looked at as a whole: ${errors} ${errors === 1 ? 'error' : 'errors'}.`
      }
    </p>
  `;
}

function group(app: App, { findings, proven }: FindingsNow, level: Finding['level']) {
  const own = findings.filter((finding) => finding.level === level);
  if (own.length === 0) return nothing;
  return html`
    <h3 class=${`level-${level}`}>${TITLES[level]}</h3>
    <ul class="findings">
      ${own.map((finding) => entry(app, finding, proven ? leakOf(app, findings, finding) : null))}
    </ul>
  `;
}

function entry(app: App, finding: PlacedFinding, leak: string | null) {
  const { message, hint, rule, about, parts } = finding;
  return html`
    <li class="finding">
      ${parts.length > 0 ? pointing(app, finding) : html`<p class="finding-message">${unbroken(message)}</p>`}
      ${hint === undefined ? nothing : html`<p class="finding-hint">${unbroken(hint)}</p>`}
      ${leak === null ? nothing : html`<img class="finding-leak" src=${leak} alt="A section through the gap, with the way that the light takes" />`}
      <p class="finding-foot">
        ${measured(finding)}
        ${
          about === undefined
            ? nothing
            : html`<button type="button" class="quiet" @click=${() => goToKey(app, about)}>
                <span class="unseen">Change </span>${about}
              </button>`
        }
        <span class="caption">${rule}</span>
      </p>
    </li>
  `;
}

/** The message is what one presses: the camera turns to the place. */
function pointing(app: App, finding: PlacedFinding) {
  const isShown = app.state().findings.shown === finding.message;
  return html`
    <button
      type="button"
      class="finding-message"
      aria-pressed=${String(isShown)}
      @click=${() => pointAt(app, isShown ? null : finding)}
    >
      ${unbroken(finding.message)}
      <span class="finding-place">${isShown ? 'Shown on the camera' : 'Show on the camera'}: ${named(app, finding.parts)}</span>
    </button>
  `;
}

/** The parts by their names, as long as that is short. */
function named(app: App, parts: readonly string[]): string {
  const bodies = app.state().shown?.solids?.bodies ?? [];
  const names = [...new Set(parts.map((id) => bodies.find(({ part }) => part === id)?.name ?? id))];
  return names.length > MOST_NAMED ? `${names.slice(0, MOST_NAMED).join('; ')}; and more` : names.join('; ');
}

const MOST_NAMED = 2;

function measured({ value, limit, unit = '' }: Finding) {
  if (value === undefined && limit === undefined) return nothing;
  return html`
    <span class="finding-measured number">
      ${value === undefined ? nothing : html`<b>${withUnit(value, unit)}</b>`}
      ${limit === undefined ? nothing : html` <span class="caption">limit</span> ${withUnit(limit, unit)}`}
    </span>
  `;
}

const withUnit = (value: number, unit: string): string =>
  unit === 'magnification' ? magnification(value) : `${plainNumber(value).replace('-', '−')} ${unit}`.trim();

/** Leaks are drawn in the order in which they are told. */
function leakOf(app: App, findings: readonly Finding[], finding: Finding): string | null {
  const { proof } = app.state().findings;
  if (proof.kind !== 'done' || finding.rule !== 'light-path') return null;
  const file = proof.leaks[findings.filter(({ rule }) => rule === 'light-path').indexOf(finding)];
  return file === undefined ? null : `data:image/svg+xml,${encodeURIComponent(new TextDecoder().decode(file.bytes))}`;
}
