import type { Cited } from './cited.js';

const HANDBOOK = 'from memory: Wood Handbook, yellow birch; not read';

/** Stress under which birch begins to be crushed across its grain, N/mm². */
export const birchCrushing: Cited<number> = { value: 6.7, source: HANDBOOK };

/**
 * Stress under which veneers of birch plywood roll off each other, N/mm²: what a glued face or finger can pass on. The least
 * of the table of planar shear, rounded down.
 */
export const rollingShear: Cited<number> = { value: 1, source: 'from memory: Handbook of Finnish Plywood; not read' };

/** Specific gravity of birch, for the formula of withdrawal. */
const GRAVITY: Cited<number> = { value: 0.62, source: HANDBOOK };

/**
 * Most that a wood screw holds along its axis, N: 108.25 G² D L, D and L in mm; a sixth of it is allowed. From memory:
 * Wood Handbook, withdrawal of wood screws from the side grain.
 *
 * @param length of thread in the wood
 */
export const withdrawal = (diameter: number, length: number): number =>
  108.25 * GRAVITY.value * GRAVITY.value * diameter * length;
