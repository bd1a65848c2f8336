import type { StepClock } from './reckon.js';
import type { ClockLook } from './state.js';

const PLACE = 'tailboard-step-clock';

/** What outlives a page that is loaded anew, for as long as its tab is open. */
interface Kept {
  readonly clock: StepClock;
  readonly look: ClockLook;
  readonly atClock: boolean;
}

export function keep(kept: Kept | null): void {
  try {
    if (kept === null) sessionStorage.removeItem(PLACE);
    else sessionStorage.setItem(PLACE, JSON.stringify(kept));
  } catch {
    // a browser that keeps nothing for us: the clock lasts as long as the page
  }
}

/** What an earlier page of this tab kept; null where it kept nothing, or another build of the page kept it in another form. */
export function kept(): Kept | null {
  try {
    const found = JSON.parse(sessionStorage.getItem(PLACE) ?? 'null') as Partial<Kept> | null; // looked at below
    const clock = found?.clock;
    if (!Array.isArray(clock?.steps) || clock.steps.length === 0 || !Number.isFinite(clock.startedAt)) return null;
    return { clock, look: found?.look === 'safelight' ? 'safelight' : 'paper', atClock: found?.atClock === true };
  } catch {
    return null;
  }
}
