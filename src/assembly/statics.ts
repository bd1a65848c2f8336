/**
 * Statics of the assembled camera, on plain numbers: mm, N, N/mm², N·mm, rad, kg. Beams are straight, slender and bend
 * little; their supports do not give. Where nothing else is said a formula is that of the handbooks of statics.
 */
import type { Point3 } from '../geometry/placement.js';

/** What has a weight and a place; an area will do for the mass, and a hole has a negative one. */
interface Weight {
  readonly massKg: number;
  readonly at: Point3;
}

/** Sum of the masses and the mean of their places, weighted by them. Of nothing: nothing, at the origin. */
export function centreOfGravity(weights: readonly Weight[]): Weight {
  let massKg = 0;
  let [x, y, z] = [0, 0, 0];
  for (const { massKg: each, at } of weights) {
    massKg += each;
    x += each * at.x;
    y += each * at.y;
    z += each * at.z;
  }
  return { massKg, at: massKg === 0 ? { x: 0, y: 0, z: 0 } : { x: x / massKg, y: y / massKg, z: z / massKg } };
}

// Sections and sheets

/** Second moment of area of a rectangle about its middle, b h³/12, mm⁴; h stands in the direction of bending. */
export const secondMoment = (b: number, h: number): number => (b * h * h * h) / 12;

/** Section modulus of a rectangle, b h²/6, mm³. */
export const sectionModulus = (b: number, h: number): number => (b * h * h) / 6;

/** Plies of a sheet from face to face, and the way in which the sheet is bent. */
interface Lamination {
  /** Thickness of each ply, mm, the first and the last being faces; directions alternate. */
  readonly plies: readonly number[];
  /** Modulus of the veneer along its own grain, N/mm². */
  readonly veneerModulus: number;
  /** Span along the grain of the faces, or across it. */
  readonly span: 'along' | 'across';
}

/**
 * Modulus of plywood in bending, E = E0 Σ(z2³ − z1³)·4/t³ over the plies whose grain runs along the span, z from the
 * middle of the sheet. Plies across the span are counted as nothing, so that along and across add up to E0. Gives the
 * figures of the Handbook of Finnish Plywood digit for digit (those from memory).
 */
export function crossBandedModulus({ plies, veneerModulus, span }: Lamination): number {
  const t = plies.reduce((sum, ply) => sum + ply, 0);
  let below = -t / 2;
  let cubes = 0;
  plies.forEach((ply, i) => {
    const above = below + ply;
    if ((i % 2 === 0) === (span === 'along')) cubes += above * above * above - below * below * below;
    below = above;
  });
  return (veneerModulus * 4 * cubes) / (t * t * t);
}

// Beams

/** Sag of the free end under a load there, P a³/(3 E I). */
export const cantileverSag = (load: number, overhang: number, E: number, I: number): number =>
  (load * overhang * overhang * overhang) / (3 * E * I);

/**
 * Slope of the free end under a load there, P a²/(2 E I), rad. The sag moves the picture, the tilt times the axis's
 * height takes it out of focus.
 */
export const cantileverTilt = (load: number, overhang: number, E: number, I: number): number =>
  (load * overhang * overhang) / (2 * E * I);

/** Sag of the free end under the beam's own weight, w a⁴/(8 E I); `weight` in N/mm. */
export const ownWeightSag = (weight: number, overhang: number, E: number, I: number): number =>
  (weight * overhang ** 4) / (8 * E * I);

/** Stress at the root of a cantilever with a load at its end, P a/W, N/mm². */
export const rootStress = (load: number, overhang: number, modulusOfSection: number): number =>
  (load * overhang) / modulusOfSection;

/** Sag in the middle of a beam on two supports under a load there, P L³/(48 E I). */
export const spanSag = (load: number, span: number, E: number, I: number): number =>
  (load * span * span * span) / (48 * E * I);

/** A beam that rests on two supports a span apart and runs out over one of them, loaded at its tip. */
interface Overhang {
  readonly load: number;
  readonly span: number;
  readonly overhang: number;
  readonly E: number;
  readonly I: number;
}

/** What a load at the tip does to a beam that bends between its supports too. */
interface Bent {
  /** Downwards, at the tip. */
  readonly tip: number;
  /** rad, at the tip. */
  readonly slope: number;
  /** Upwards, where the span rises most. */
  readonly rise: number;
  /** That place, from the far support. */
  readonly riseAt: number;
}

/**
 * Overhang beyond two supports: tip P a²(L + a)/(3EI) down, slope there P a(2L + 3a)/(6EI), and between the supports
 * P a L²/(9√3 EI) up at L/√3 from the far one. A cantilever of the overhang alone leaves out how the span bends.
 * Source: "Beam with one overhang", mechengcalculations.com/jmm/beam12.html.
 */
export function overhangBend({ load: P, span: L, overhang: a, E, I }: Overhang): Bent {
  return {
    tip: (P * a * a * (L + a)) / (3 * E * I),
    slope: (P * a * (2 * L + 3 * a)) / (6 * E * I),
    rise: (P * a * L * L) / (9 * Math.sqrt(3) * E * I),
    riseAt: L / Math.sqrt(3),
  };
}

// Plates

/** Poisson's ratio that goes with the figures of `plateSag`. */
const POISSON = 0.3;

/** Stiffness of a plate in bending, E t³/(12(1 − ν²)), N·mm. */
export const plateStiffness = (E: number, thickness: number, poisson = POISSON): number =>
  (E * thickness ** 3) / (12 * (1 - poisson * poisson));

/** Sag of the middle in shares of q a⁴/D, Poisson's ratio 0.3. From memory: Timoshenko, plates. */
const SQUARE = { free: 0.00406, clamped: 0.00126 } as const;

/**
 * Sag in the middle of a square plate under an even load, α q a⁴/D, mm; its edges rest free to turn, or clamped.
 *
 * @param load N/mm²
 * @param stiffness see `plateStiffness`
 */
export const plateSag = (load: number, side: number, stiffness: number, edges: keyof typeof SQUARE): number =>
  (SQUARE[edges] * load * side ** 4) / stiffness;

// Slides and guides

/**
 * Guided length at which a slide pushed a distance e off the axis of its guide jams, L = 2 μ e: at or below it no push
 * is enough. The width of the guide drops out. Source: Beer and Johnston, statics, sample problem on a movable bracket.
 */
export const rackingLeast = (friction: number, offAxis: number): number => 2 * friction * offAxis;

/** Guided length in jamming lengths: at 1 or less the slide jams. */
export const rackingRatio = (length: number, friction: number, offAxis: number): number =>
  length / rackingLeast(friction, offAxis);

/**
 * Push that moves a slide against a drag on its axis, R/(1 − 2 μ e/L), N: just above the jamming length still many times
 * the drag. Infinite where it jams. Same statics as `rackingLeast`.
 */
export function pushNeeded(drag: number, length: number, friction: number, offAxis: number): number {
  const left = 1 - rackingLeast(friction, offAxis) / length;
  return left > 0 ? drag / left : Number.POSITIVE_INFINITY;
}

/** Slope on which a thing begins to slide, atan μ, rad. */
export const angleOfRepose = (friction: number): number => Math.atan(friction);

/** Yaw of a slide by its play on each side, for play small against the length: 2c/L, rad. */
export const yaw = (play: number, length: number): number => (2 * play) / length;

/** A tongue of a width and a length in a guide that is wider by the play on each side. */
interface Guided {
  readonly width: number;
  readonly length: number;
  readonly play: number;
}

/**
 * Yaw at which the corners of a tongue meet its guide, q of w cos q + L sin q = w + 2c, rad; plane geometry. Infinite
 * where the tongue is so short that it turns right round.
 */
export function yawInGuide({ width: w, length: L, play: c }: Guided): number {
  // with tan(q/2) = s the equation is (w + c)s² − L s + c = 0; this form of its lesser root loses no digits at small play
  const discriminant = L * L - 4 * c * (w + c);
  return discriminant < 0 ? Number.POSITIVE_INFINITY : 2 * Math.atan((2 * c) / (L + Math.sqrt(discriminant)));
}

// Standing and tipping

/** Forces in two supports a span apart, N, under a weight that stands `at` from the first. */
export const supportLoads = (weight: number, span: number, at: number): readonly [number, number] => [
  (weight * (span - at)) / span,
  (weight * at) / span,
];

/**
 * From the middle of a stand to its tipping line, r cos(π/n): for a tripod half the radius of its feet, not the radius.
 *
 * @param radius of the circle on which the feet stand
 */
export const tippingLine = (radius: number, feet = 3): number => radius * Math.cos(Math.PI / feet);

/** Slope at which a centre of gravity, `height` above the floor, stands over the tipping line `reach` away, rad. */
export const tippingAngle = (reach: number, height: number): number => Math.atan(reach / height);

/** Level push at a height that tips a weight over a line `reach` from its centre of gravity, W reach/height, N. */
export const tippingPush = (weight: number, reach: number, height: number): number => (weight * reach) / height;
