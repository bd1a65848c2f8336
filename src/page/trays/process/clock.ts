import { html, nothing } from 'lit-html';
import { clockTime, duration } from '../../../units/print.js';
import type { App } from '../../app.js';
import {
  changeLook,
  changeTone,
  endClock,
  forgetMissed,
  goOnFrom,
  leaveClock,
  pauseOrGoOn,
  startNext,
  stepBack,
  stepForward,
  toClock,
} from './deeds.js';
import { DIALOG } from './dialog-name.js';
import { type Standing, type StepClock, standing } from './reckon.js';
import type { ProcessState } from './state.js';
import { announcement, countsTo, lightNow, meanwhile, toDo } from './words.js';

/** While the clock runs and something else is looked at: a line of it over the page. */
export function clockStrip(app: App) {
  const { clock, atClock, now } = app.state().process;
  if (clock === null || atClock) return nothing;
  const where = standing(clock, now);
  return html`
    <p class="clock-strip">
      <span>
        Step clock${clock.pausedAt === null ? '' : ', paused'}: ${stepName(clock, where)}.
        ${countsTo(where)} <b class="number">${shown(where)}</b>
      </span>
      <button type="button" @click=${() => toClock(app)}>To the clock</button>
    </p>
  `;
}

/** The clock over the whole window: letters that are read from the tank, and buttons for wet gloves. */
export function clockDialog(app: App) {
  const { process } = app.state();
  const { clock, look } = process;
  return html`
    <dialog
      id=${DIALOG}
      class=${look === 'safelight' ? 'clock safelight' : 'clock'}
      aria-labelledby="clock-step"
      @close=${() => leaveClock(app)}
    >
      ${clock === null ? nothing : face(app, process, clock)}
    </dialog>
  `;
}

function face(app: App, process: ProcessState, clock: StepClock) {
  const { now } = process;
  const where = standing(clock, now);
  const done = where.next === null;
  return html`
    <div class="clock-face">
      <p class="clock-head">
        <span>${clock.name}${clock.prints === 1 ? '' : `, print ${clock.print} of ${clock.prints}`}</span>
        <span class="number">${clockTime(Math.floor(where.at))} of ${clockTime(clock.steps.at(-1)?.endsAt ?? 0)}</span>
      </p>
      ${missedView(app, process, clock)}
      <div class="clock-now">
        <h2 id="clock-step">${stepName(clock, where)}</h2>
        <p class="clock-light">${lightNow(clock, where)}</p>
        <p class="clock-act">${clock.pausedAt === null ? countsTo(where) : 'Paused'}</p>
        <p class="clock-left number" role="timer">${shown(where)}</p>
        <p class="clock-say" aria-live="assertive">${announcement(clock, where)}</p>
        ${meanwhile(clock, where).map((words) => html`<p class="clock-do">${words}</p>`)}
        ${stepEnd(where)}
        ${nextView(clock, where)}
      </div>
      ${done ? afterwards(app, clock) : controls(app, clock)}
      <div class="clock-less">
        <button type="button" aria-pressed=${String(process.tone)} @click=${() => changeTone(app)}>Tone</button>
        <button type="button" aria-pressed=${String(process.look === 'safelight')} @click=${() => changeLook(app)}>
          Red on black
        </button>
        <button type="button" @click=${() => leaveClock(app)}>To the page</button>
        ${clock.pausedAt !== null && !done ? html`<button type="button" @click=${() => endClock(app)}>End the clock</button>` : nothing}
      </div>
      <p class="clock-notes">
        ${process.awake === 'kept' ? 'The screen is kept on.' : 'The screen may go to sleep: the clock keeps right time all the same, and tells what was missed.'}
        No screen is a safelight, red or not: keep it covered while a print lies open.
      </p>
    </div>
  `;
}

const stepName = (clock: StepClock, { act }: Standing): string =>
  act.kind === 'done' ? 'Done' : `${act.step + 1} ${clock.steps[act.step]?.name ?? ''}`;

/** The second that is running counts as a whole one, so that nothing is over before it shows 0:00. */
const shown = ({ left }: Standing): string => clockTime(Math.ceil(left));

const stepEnd = ({ act, next, stepLeft, left }: Standing) =>
  next === null || act.kind === 'done' || stepLeft - left < 0.5
    ? nothing
    : html`<p class="clock-end number">The step ends in ${clockTime(Math.ceil(stepLeft))}</p>`;

/** The next bath, with what must stand ready for it. */
function nextView(clock: StepClock, { act }: Standing) {
  const next = clock.steps[act.step + 1];
  if (act.kind === 'done') return nothing;
  if (next === undefined) return html`<p class="clock-next">It is the last step.</p>`;
  const kind = next.poured ? 'pour' : 'begin';
  return html`
    <p class="clock-next">
      Next, at <span class="number">${clockTime(next.beginsAt)}</span>: ${toDo(clock, { kind, at: next.beginsAt, step: act.step + 1 })}
    </p>
  `;
}

const controls = (app: App, clock: StepClock) => html`
  <div class="clock-deeds">
    ${backButton(app)}
    <button type="button" class="main" autofocus @click=${() => pauseOrGoOn(app)}>
      ${clock.pausedAt === null ? 'Pause' : 'Go on'}
    </button>
    <button type="button" @click=${() => stepForward(app)}>Next <span aria-hidden="true">▶</span></button>
  </div>
`;

const backButton = (app: App) => html`
  <button type="button" @click=${() => stepBack(app)}><span aria-hidden="true">◀</span> Back</button>
`;

const afterwards = (app: App, clock: StepClock) => html`
  <div class="clock-deeds">
    ${backButton(app)}
    ${clock.print < clock.prints ? html`<button type="button" class="main" @click=${() => startNext(app)}>Print ${clock.print + 1}</button>` : nothing}
    <button type="button" @click=${() => endClock(app)}>End</button>
  </div>
`;

/** What was to be done while the screen slept; whoever did not do it can go on from there. */
function missedView(app: App, { missed }: ProcessState, clock: StepClock) {
  const [first] = missed?.acts ?? [];
  if (missed === null || first === undefined) return nothing;
  return html`
    <section class="clock-missed" role="alert">
      <p><b>Not seen for ${duration(missed.lapse)}.</b> In that time:</p>
      <ul>
        ${missed.acts.map((act) => html`<li><span class="number">${clockTime(act.at)}</span> ${toDo(clock, act)}</li>`)}
      </ul>
      <p class="deeds">
        <button type="button" @click=${() => forgetMissed(app)}>It was done</button>
        <button type="button" @click=${() => goOnFrom(app, first)}>I am only there now: ${toDo(clock, first)}</button>
      </p>
    </section>
  `;
}
