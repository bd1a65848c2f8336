import type { PrintProcess, SheetStep, StepSheet, TankFigures } from '../model/step-sheet.js';
import { bathNeed } from './bath-need.js';
import { cautions } from './cautions.js';
import { findingsOf } from './findings.js';
import { lightsOf } from './lights.js';
import { timetable } from './timetable.js';

/** What a process comes to: when everything is done, how much liquid it takes, and what is wrong with it. */
export function stepSheet(written: PrintProcess): StepSheet {
  const { name, prints, timesFrom, temperature, carryOver, tank } = written;
  const { fillSeconds: fill, drainSeconds: drain, ...volumes } = tank;
  const known: TankFigures = { fillSeconds: fill ?? 0, drainSeconds: drain ?? 0, ...volumes };
  const steps = laidOut(written, known);
  const volumesNeeded = steps.filter(({ poured }) => poured).map(({ need }) => need?.total ?? null);
  return {
    schema: 1,
    name,
    prints,
    timesFrom,
    temperature,
    tank: known,
    carryOver,
    steps,
    seconds: steps.at(-1)?.endsAt ?? 0,
    liquid: volumesNeeded.reduce((sum, own) => (sum === null || own === null ? null : sum + own), 0),
    findings: findingsOf({ timesFrom, temperature, carryOver, steps, tank }),
    cautions,
  };
}

function laidOut(written: PrintProcess, tank: TankFigures): readonly SheetStep[] {
  const { steps, timesFrom, temperature } = written;
  const times = timetable(steps, { ...tank, timesFrom });
  const lights = lightsOf(steps);
  const firstBath = steps.findIndex(({ volume }) => volume !== 'none');
  return steps.map((step, i) => {
    const [own, light] = [times[i], lights[i]];
    if (own === undefined || light === undefined) throw new Error('each step has its times and its light');
    const poured = step.volume !== 'none';
    const volume = typeof step.volume === 'number' ? step.volume : poured ? tank.workingVolume : null;
    return {
      name: step.name,
      time: step.time,
      ...own,
      volume,
      poured,
      temperature: poured ? (step.temperature ?? temperature) : step.temperature,
      agitation: step.agitation,
      light,
      fixes: step.fixes,
      serves: step.serves,
      need: volume === null ? null : bathNeed({ volume, serves: step.serves, afterAnother: i > firstBath }, written),
      caution: step.caution,
    };
  });
}
