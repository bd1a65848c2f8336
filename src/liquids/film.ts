import { standardGravity } from '../standards/gravity.js';
import { water } from '../standards/liquids.js';

/*
 * How thin a bath spreads, what of it stays behind, and how much is wanted. Lengths mm, times s, volumes ml; baths are taken
 * to be water.
 */

const { density, surfaceTension, viscosity } = water.value;
const g = standardGravity.value;

/**
 * Depth at which a bath on a level sheet stops spreading, 2√(σ/ρg)·sin(θ/2): a thinner layer draws together and leaves the
 * sheet bare in places. Surface tension against weight (encyclopedia article Surface tension, "Puddles on a surface", from
 * memory).
 *
 * @param contact angle θ at which the liquid meets the sheet, rad
 */
export const puddleDepth = (contact: number): number =>
  2000 * Math.sqrt(surfaceTension / (density * g)) * Math.sin(contact / 2);

interface Draining {
  readonly seconds: number;
  /** Along the slope. */
  readonly height: number;
  /** Of the wall or sheet from the level, rad. */
  readonly slope: number;
}

/**
 * Mean thickness of the film on a wall that has drained: ⅔√(μH/(ρ g t sin)) over its height, from Jeffreys's film
 * √(μz/(ρgt)) (The draining of a vertical plate, 1930, from memory). Valid once the film is thin against where it began,
 * from some seconds on.
 */
export const filmLeft = ({ seconds, height, slope }: Draining): number =>
  (2 / 3) * Math.sqrt((1000 * viscosity * height) / (density * g * Math.sin(slope) * seconds));

/** Volume of that film on the walls and the sheet, by their area in mm². */
export const carriedMl = (draining: Draining, area: number): number => (filmLeft(draining) * area) / 1000;

/** What is left of a bath after rinses that each mix with all that was carried into them, as a share: (c/(c + r))ⁿ. */
export const shareAfterRinses = (carried: number, rinse: number, rinses: number): number =>
  (carried / (carried + rinse)) ** rinses;

interface Run {
  readonly prints: number;
  /** One filling of the chamber. */
  readonly fillingMl: number;
  /** How many prints a filling serves before it is poured away. */
  readonly printsOfFilling: number;
}

/** What of a bath has to be mixed for a number of prints: whole fillings. */
export const mlForPrints = ({ prints, fillingMl, printsOfFilling }: Run): number =>
  Math.ceil(prints / printsOfFilling) * fillingMl;
