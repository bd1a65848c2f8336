import { standardGravity } from '../standards/gravity.js';
import { airDensity, water } from '../standards/liquids.js';

/*
 * Liquid through a spout while air goes the other way through a vent. Lengths mm, areas mm², heads mm of liquid over the
 * mouth that it leaves by, times s, volumes ml. Torricelli's law with a coefficient for the vein that draws together
 * behind an edge and for what bends cost; baths are taken to be water.
 */

const g = standardGravity.value * 1000;

/** A short passage with a sharp inner edge: the 0.6 of every table of orifices (from memory). */
const SHARP_EDGE = 0.6;

/** Heights of speed, v²/2g, that are lost at a sharp right-angled corner of a passage (from memory: handbooks of hydraulics, 1.1). */
const LOST_AT_CORNER = 1.1;

/**
 * Coefficient of a passage with sharp right-angled corners: as many heights of speed as each costs are lost beside those of
 * the sharp edge. A turn back on itself is two corners. Rounded ones cost less, narrow long passages more.
 */
export const coefficientOfPath = (corners: number): number =>
  1 / Math.sqrt(1 / SHARP_EDGE ** 2 + corners * LOST_AT_CORNER);

/** The ways in and out of a closed chamber. */
export interface Openings {
  /** Area of the passage for liquid. */
  readonly spout: number;
  /** Area of the passage for air. */
  readonly vent: number;
  /** Of both; that of a sharp edge where left out. */
  readonly coefficient?: number;
}

/** What air is to the liquid in density: so much less head drives it through the same opening. */
const LIGHTNESS = airDensity.value / water.value.density;

/**
 * Flow, ml/s, at a head that stays: A·k·√(2gh) through the spout, and as much air through the vent, which takes a part of
 * the head. The two are passed one after the other, so that the heads add up: h = Q²/2g·(1/(kA)² + (ρₐ/ρ)/(kAₐ)²).
 */
export const flowMl = (openings: Openings, head: number): number =>
  (bothAsOne(openings) * Math.sqrt(2 * g * head)) / 1000;

/** Area that a spout would have, at a coefficient of 1 and freely vented, to let the same through. */
const bothAsOne = ({ spout, vent, coefficient = SHARP_EDGE }: Openings): number =>
  coefficient / Math.sqrt(1 / (spout * spout) + LIGHTNESS / (vent * vent));

/** Seconds to run a volume in through a funnel that is kept filled to a head. */
export const fillTime = (ml: number, openings: Openings, head: number): number => ml / flowMl(openings, head);

/** Speed of the air in the vent at a head, mm/s. */
export const airSpeed = (openings: Openings, head: number): number => (1000 * flowMl(openings, head)) / openings.vent;

/** What of the head is spent on drawing air through the vent, as a share: it is the suction that holds the liquid back. */
export function ventShare({ spout, vent }: Pick<Openings, 'spout' | 'vent'>): number {
  const air = LIGHTNESS * (spout / vent) ** 2;
  return air / (1 + air);
}

/** Least vent that spends no more than a share of the head: the inverse of `ventShare`. */
export const ventForShare = (spout: number, share: number): number =>
  spout * Math.sqrt((LIGHTNESS * (1 - share)) / share);

/**
 * Head that a plug of liquid in a round passage withstands, 4σ/(ρgd): below it a wetted vent stays shut, and below it a
 * spout of that diameter holds back what is left. Law of Young and Laplace for a half sphere.
 */
export const headOfPlug = (diameter: number): number => {
  const { surfaceTension, density } = water.value;
  return (4 * surfaceTension * 1e9) / (density * g * diameter);
};

/** Diameter of the round passage that has an area. */
export const diameterOf = (area: number): number => Math.sqrt((4 * area) / Math.PI);

/** A vessel that runs empty. */
interface Emptying {
  /** Surface of the liquid when it stands at a height. */
  readonly surfaceAt: (height: number) => number;
  /** Height of the surface at first and at last, over the place from which heights are measured. */
  readonly from: number;
  readonly to?: number;
  /** How far the spout's mouth lies below that place; nothing where it is the lowest point itself. */
  readonly mouthBelow?: number;
}

/** Strips of the sum; more move no time that anybody can measure. */
const STRIPS = 400;

/**
 * Seconds for the surface to sink: each layer takes its volume over the flow at its head. Taken over the root of the head,
 * in which the flow is even, the sum has no place where it runs out of bounds at the end.
 */
export function emptyTime({ surfaceAt, from, to = 0, mouthBelow = 0 }: Emptying, openings: Openings): number {
  const [low, high] = [Math.sqrt(to + mouthBelow), Math.sqrt(from + mouthBelow)];
  const strip = (high - low) / STRIPS;
  let sum = 0;
  for (let k = 0; k < STRIPS; k++) {
    const root = low + (k + 0.5) * strip;
    sum += 2 * surfaceAt(root * root - mouthBelow) * strip;
  }
  return sum / (bothAsOne(openings) * Math.sqrt(2 * g));
}
