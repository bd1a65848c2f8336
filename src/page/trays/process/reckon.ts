import type { SheetStep } from '../../../model/step-sheet.js';

/*
 * A step clock never counts: whatever it shows is reckoned from the time of day at which the first step began. A screen that
 * slept, or a tab to which the browser gave no time, is right again with the next look at it. Times of day in ms, all
 * others in s from the beginning of the first step.
 */

/** A clock that was started, as it is kept from one look to the next. */
export interface StepClock {
  readonly name: string;
  readonly prints: number;
  /** As the sheet had them when it was started. */
  readonly steps: readonly SheetStep[];
  /** Which of the prints it is, from 1. */
  readonly print: number;
  /** Time of day at which the first step began; moved by pauses, and where a step is gone to. */
  readonly startedAt: number;
  /** Time of day; null while it runs. */
  readonly pausedAt: number | null;
  /** Up to when somebody could see what it showed. */
  readonly seenTo: number;
}

/** What is done at a mark of the clock: `stand`, the bath is in and nothing is done but rocking; `begin`, a step without a bath. */
type ActKind = 'pour' | 'begin' | 'stand' | 'drain' | 'done';

export interface Act {
  readonly kind: ActKind;
  readonly at: number;
  /** Index of its step; of the last one where all is done. */
  readonly step: number;
}

/** All that is done, in its order. Where a tank takes no time to fill or to drain, there is nothing to wait for between. */
export function actsOf(steps: readonly SheetStep[]): readonly Act[] {
  const acts = steps.flatMap(({ beginsAt, coveredAt, drainAt, endsAt }, step): readonly Act[] => {
    if (coveredAt === null || drainAt === null) return [{ kind: 'begin', at: beginsAt, step }];
    return [
      { kind: 'pour', at: beginsAt, step },
      ...(coveredAt > beginsAt ? [{ kind: 'stand', at: coveredAt, step } as const] : []),
      ...(drainAt < endsAt ? [{ kind: 'drain', at: drainAt, step } as const] : []),
    ];
  });
  return [...acts, { kind: 'done', at: steps.at(-1)?.endsAt ?? 0, step: steps.length - 1 }];
}

/** How far it has come. A clock of the computer that was set back shows the beginning, never less. */
export const elapsed = ({ startedAt, pausedAt }: StepClock, now: number): number =>
  Math.max(0, ((pausedAt ?? now) - startedAt) / 1000);

/** Where the clock stands. */
export interface Standing {
  readonly at: number;
  readonly act: Act;
  /** null where all is done. */
  readonly next: Act | null;
  /** Until the next act. */
  readonly left: number;
  readonly stepLeft: number;
}

export function standing(clock: StepClock, now: number): Standing {
  const at = elapsed(clock, now);
  const acts = actsOf(clock.steps);
  const [first] = acts;
  if (first === undefined) throw new Error('a sheet has a step');
  const act = acts.findLast((each) => each.at <= at) ?? first;
  const next = acts.find((each) => each.at > at) ?? null;
  const end = clock.steps[act.step]?.endsAt ?? at;
  return { at, act, next, left: (next?.at ?? at) - at, stepLeft: Math.max(0, end - at) };
}

export const started = (
  sheet: Pick<StepClock, 'name' | 'prints' | 'steps'>,
  print: number,
  now: number,
): StepClock => ({
  name: sheet.name,
  prints: sheet.prints,
  steps: sheet.steps,
  print,
  startedAt: now,
  pausedAt: null,
  seenTo: 0,
});

export const paused = (clock: StepClock, now: number): StepClock => ({ ...clock, pausedAt: clock.pausedAt ?? now });

/** The time of the pause counts for nothing. */
export const goneOn = (clock: StepClock, now: number): StepClock =>
  clock.pausedAt === null ? clock : { ...clock, startedAt: clock.startedAt + now - clock.pausedAt, pausedAt: null };

/** As if it were so far now. */
export const movedTo = (clock: StepClock, at: number, now: number): StepClock => ({
  ...clock,
  startedAt: (clock.pausedAt ?? now) - 1000 * at,
  seenTo: at,
});

/** Whoever goes back soon after a step began means the one before, s. */
const SOON = 3;

/** To the beginning of the step, or of the one before where it has just begun. */
export function back(clock: StepClock, now: number): StepClock {
  const { at, act } = standing(clock, now);
  const begins = clock.steps.map(({ beginsAt }) => beginsAt);
  const own = begins[act.step] ?? 0;
  const to = act.kind !== 'done' && at - own < SOON ? (begins[act.step - 1] ?? 0) : own;
  return movedTo(clock, to, now);
}

/** To the end of the step, where the next one begins. */
export function forward(clock: StepClock, now: number): StepClock {
  const { at, act } = standing(clock, now);
  return movedTo(clock, clock.steps[act.step]?.endsAt ?? at, now);
}

/** A look that comes later than that after the one before has missed what lay between, s. */
const LAPSE = 3;

/** What was to be done while nobody could look. */
export function missed(clock: StepClock, now: number): readonly Act[] {
  const at = elapsed(clock, now);
  if (at - clock.seenTo <= LAPSE) return [];
  return actsOf(clock.steps).filter((act) => act.kind !== 'stand' && act.at > clock.seenTo && act.at <= at);
}
