import type { App } from '../../app.js';
import { keepAwake } from './awake.js';
import { DIALOG } from './dialog-name.js';
import { keep, kept } from './keep.js';
import { elapsed, missed, type StepClock, standing } from './reckon.js';
import type { ProcessState } from './state.js';
import { tones } from './tone.js';

/** Looks so often at the time of day, ms: a second that begins is shown soon enough. */
const LOOK = 250;

interface ClockKeeper {
  /** Called after each drawing. */
  readonly follow: () => void;
}

/** Runs the step clock of the page: one that was running when the page was loaded anew goes on. */
export function runClock(app: App): ClockKeeper {
  const sound = tones();
  const awake = keepAwake((told) => app.change(({ process }) => ({ process: { ...process, awake: told } })));
  const box: { timer: number | null; shown: string; followed: ProcessState | null } = {
    timer: null,
    shown: '',
    followed: null,
  };

  const look = () => {
    const { clock, tone } = app.state().process;
    if (clock === null) return;
    const now = Date.now();
    sound.follow(tone ? clock : null, now);
    if (document.visibilityState !== 'visible') return;
    const shown = shownAt(clock, now);
    if (shown === box.shown) return;
    box.shown = shown;
    app.change(({ process }) => ({ process: looked(process, now) }));
  };

  const follow = () => {
    const { process } = app.state();
    if (process === box.followed) return;
    box.followed = process;
    const { clock, now, atClock, look: own, tone } = process;
    const runs = clock !== null && clock.pausedAt === null && standing(clock, now).next !== null;
    if (runs && box.timer === null) box.timer = window.setInterval(look, LOOK);
    if (!runs && box.timer !== null) {
      window.clearInterval(box.timer);
      box.timer = null;
    }
    awake.follow(runs);
    sound.follow(tone ? clock : null, Date.now());
    keep(clock === null ? null : { clock, look: own, atClock });
    const dialog = document.getElementById(DIALOG);
    if (!(dialog instanceof HTMLDialogElement)) return;
    if (atClock && !dialog.open) dialog.showModal();
    if (!atClock && dialog.open) dialog.close();
  };

  document.addEventListener('visibilitychange', look);
  window.addEventListener('pageshow', look);
  const found = kept();
  if (found !== null) app.change(({ process }) => ({ process: looked({ ...process, ...found }, Date.now()) }));
  return { follow };
}

/** What can be read on the clock: where it is the same, nothing is drawn. */
function shownAt(clock: StepClock, now: number): string {
  const { at, left } = standing(clock, now);
  return `${Math.floor(at)} ${Math.ceil(left)}`;
}

/** Whoever looks at the clock has seen what it shows; what was to be done since the look before is told. */
function looked(process: ProcessState, now: number): ProcessState {
  const { clock } = process;
  if (clock === null) return process;
  const acts = missed(clock, now);
  const at = elapsed(clock, now);
  return {
    ...process,
    now,
    clock: { ...clock, seenTo: at },
    missed: acts.length === 0 ? process.missed : { acts, lapse: at - clock.seenTo },
  };
}
