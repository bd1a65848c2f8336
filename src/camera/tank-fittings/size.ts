import { type Cap, sizeCap } from './cap.js';
import { type Funnel, sizeFunnel } from './funnel.js';
import type { TankFittingsGiven } from './given.js';
import { type Insert, insideOf, sizeInsert } from './insert.js';
import { sizeNeck } from './neck.js';

/**
 * Spout, vent, cap and funnel. Spout and vent are blocks with a neck, glued into notches of the end wall, one in each corner
 * of the chamber; they differ in their passage alone, so that one cap and one funnel fit both.
 */
export interface TankFittings {
  readonly spout: Insert;
  readonly vent: Insert;
  readonly cap: Cap;
  readonly funnel: Funnel;
}

export function sizeTankFittings(given: TankFittingsGiven): TankFittings {
  const { nozzle, passage, notch } = given;
  const neck = sizeNeck(passage.spout, insideOf(notch, nozzle), nozzle);
  const cap = sizeCap(neck, nozzle);
  const spout = sizeInsert(given, 'right', passage.spout, neck, cap.radius);
  return {
    spout,
    vent: sizeInsert(given, 'left', passage.vent, neck, cap.radius),
    cap,
    funnel: sizeFunnel(given, spout, nozzle),
  };
}
