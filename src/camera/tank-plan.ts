import type { PlanTank } from '../model/plan.js';
import type { CameraObjects } from './camera-objects.js';
import { type Figure, measured } from './figure.js';
import { tankFigures, WARMED } from './tank/liquid.js';

type Figured = { readonly [K in keyof PlanTank]: Figure };

/** What a holder in which the print is processed holds and how fast it runs, by its number; undefined for another. */
export function tankPlan({ tanks, tankFittings }: CameraObjects, number: number): Figured | undefined {
  const tank = tanks.find((one) => one.number === number);
  const fitted = tankFittings.find((one) => one.number === number);
  if (tank === undefined || fitted === undefined) return undefined;
  const { spout, vent } = fitted.fittings;
  const { chamber, depth, sheet, pocket, name } = tank;
  const own = tankFigures({
    chamber,
    depth: depth.sheet - depth.chamber,
    sheet,
    pocket,
    passage: {
      spout: spout.passage.area,
      vent: vent.passage.area,
      corners: spout.passage.corners,
      head: spout.passage.head,
    },
  });
  return {
    fullVolume: measured(
      `V_f${number}`,
      `what the ${name} holds`,
      own.fullVolume,
      'opening of the chamber, by the depth from the glass to the sheet',
      'ml',
    ),
    workingVolume: measured(
      `V_w${number}`,
      `what covers the sheet in the ${name}`,
      own.workingVolume,
      '5 mm over the floor of the chamber while it lies on its lid; common practice, no source',
      'ml',
    ),
    leastVolume: measured(
      `V_l${number}`,
      `least that still covers the sheet in the ${name}`,
      own.leastVolume,
      'the deeper of a layer that does not draw together, and one that covers the sheet on a table 1° out of level',
      'ml',
    ),
    fillSeconds: measured(
      `t_f${number}`,
      `filling the ${name}`,
      own.fillSeconds,
      'working volume through the passage of the spout under 30 mm in the funnel, its corners and the vent counted',
      's',
    ),
    drainSeconds: measured(
      `t_d${number}`,
      `draining the ${name}`,
      own.drainSeconds,
      'working volume out by the spout’s corner, the tank at 45°, the head followed as it sinks',
      's',
    ),
    rockAngle: measured(
      `w_r${number}`,
      `how far the ${name} may be rocked to either side`,
      (own.rockAngle * 180) / Math.PI,
      'the tilt at which the working volume still reaches the middle of the sheet',
      '°',
    ),
    lidForce: measured(
      `F_l${number}`,
      `push on the lid of the ${name} if it were capped tight`,
      own.lidForce,
      `air and vapour warmed from ${WARMED.from} to ${WARMED.to} °C in a closed chamber, on the opening of the pocket`,
      'N',
    ),
  };
}
