import type { PrintProcess, StepTimes, TankFigures } from '../model/step-sheet.js';

type Timed = Pick<PrintProcess['steps'][number], 'time' | 'volume'>;
type Pours = Pick<TankFigures, 'fillSeconds' | 'drainSeconds'> & Pick<PrintProcess, 'timesFrom'>;

/**
 * When each thing of a process is done, s from the beginning of the first step; each step begins where the one before ends.
 *
 *     pouring-in     |<---------- time ---------->|
 *                    |--fill--|=========|--drain--|
 *     covered                 |<- time->|
 *
 * Where a time that counts from pouring in is shorter than filling and draining, draining would begin before the bath is
 * in: the sheet says so in its findings.
 */
export function timetable(steps: readonly Timed[], pours: Pours): readonly StepTimes[] {
  let beginsAt = 0;
  return steps.map((step) => {
    const times = timesOf(step, beginsAt, pours);
    beginsAt = times.endsAt;
    return times;
  });
}

function timesOf(
  { time, volume }: Timed,
  beginsAt: number,
  { fillSeconds, drainSeconds, timesFrom }: Pours,
): StepTimes {
  if (volume === 'none') return { beginsAt, coveredAt: null, drainAt: null, endsAt: beginsAt + time };
  const lasts = timesFrom === 'pouring-in' ? time : fillSeconds + time + drainSeconds;
  const endsAt = beginsAt + lasts;
  return { beginsAt, coveredAt: beginsAt + fillSeconds, drainAt: endsAt - drainSeconds, endsAt };
}
