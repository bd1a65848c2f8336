import type { SheetStep } from '../../../model/step-sheet.js';
import { celsius, millilitres } from '../../../units/print.js';
import type { Act, Standing, StepClock } from './reckon.js';

/** So much before something is to be done it is said, s. */
const AHEAD = 10;

const stepOf = ({ steps }: StepClock, { step }: Act): SheetStep => {
  const own = steps[step];
  if (own === undefined) throw new Error('an act has a step');
  return own;
};

/** `Pour bath A: 120 ml at 24 °C` */
export function toDo(clock: StepClock, act: Act): string {
  const step = stepOf(clock, act);
  const { name, volume, temperature } = step;
  switch (act.kind) {
    case 'pour': {
      const figures = [
        ...(volume === null ? [] : [millilitres(volume)]),
        ...(temperature === null ? [] : [`at ${celsius(temperature)}`]),
      ].join(' ');
      return `Pour ${name}${figures === '' ? '' : `: ${figures}`}${whichBath(clock, step)}`;
    }
    case 'begin':
      return step.light === 'window' ? `Draw the slide, light on: ${name}` : `Begin ${name}`;
    case 'stand':
      return `${name} is in`;
    case 'drain':
      return `Drain ${name}`;
    case 'done':
      return 'Done';
  }
}

/** Of a bath that serves several prints, whether it is to be a fresh one. */
function whichBath({ print }: StepClock, { serves }: SheetStep): string {
  if (serves === 1) return '';
  const before = (print - 1) % serves;
  return before === 0 ? ', fresh' : before === 1 ? ', used once' : `, used ${before} times`;
}

/** What the large figure counts down to. */
export function countsTo({ act, next }: Standing): string {
  switch (next?.kind) {
    case undefined:
      return 'All is done';
    case 'stand':
      return 'Pour; in by';
    case 'drain':
      return 'Drain in';
    default:
      return act.kind === 'drain' ? 'Drain; empty in' : 'Ends in';
  }
}

/** Said aloud by whatever reads the page out: it changes when something is to be done, and a while before, not each second. */
export function announcement(clock: StepClock, { act, next, left }: Standing): string {
  if (clock.pausedAt !== null) return 'Paused';
  if (next !== null && next.kind !== 'stand' && left <= AHEAD && act.kind !== 'drain')
    return `Soon: ${toDo(clock, next)}`;
  return toDo(clock, act);
}

/** What is done while a bath stands. */
export function meanwhile(clock: StepClock, { act }: Standing): readonly string[] {
  const { agitation, caution } = stepOf(clock, act);
  if (act.kind === 'done') return [];
  return [...(agitation === null ? [] : [agitation]), ...(caution === null ? [] : [`Mind: ${caution}`])];
}

const LIGHTS = {
  safe: 'keep white light away',
  window: 'white light through the window',
  any: 'white light does no harm',
} as const;

export const lightNow = (clock: StepClock, { act }: Standing): string => LIGHTS[stepOf(clock, act).light];
