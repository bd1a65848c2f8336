import { type FingerRow, fingerRow, LEAST_FINGER } from '../../joinery/finger-joint.js';
import { foremostFor, type LightAhead, openingAt, squareAt } from '../light-ahead.js';
import type { RailPlate } from '../rail-plate.js';
import type { Wood } from '../wood.js';

/**
 * A square tunnel of four fingered walls on a base, black inside. Like the shutter it hangs by a plate on the rails of the
 * accessory frame, with a narrower one between the lips that carries the rest past them. The round openings of these three
 * are as wide as the light is there: what the walls throw back beside it falls on them and not on the lens.
 *
 * ```
 *   front ◀── z           LH5
 *   ▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓
 *                         LH3 ▓▓│LH2 │LH1 │ ring
 *    mouth                    ▓▓│▓▓▓▓│▓▓▓▓│
 *                                            lens
 * ```
 */
export interface Hood {
  readonly wood: Wood;
  readonly light: LightAhead;
  /** What goes on the rails: width, lower and upper edge, and z of its rear. */
  readonly plate: { readonly width: number; readonly bottom: number; readonly railTop: number; readonly rear: number };
  readonly betweenLips: number;
  readonly beyondLips: number;
  /** Diameters of the openings in rail plate, packing and base: each as wide as the light is there. */
  readonly openings: { readonly rail: number; readonly packing: number; readonly base: number };
  /** Half of its side inside. */
  readonly half: number;
  /** z of its mouth, and of the front of its base. */
  readonly mouth: number;
  readonly base: number;
  readonly rows: { readonly long: FingerRow; readonly base: FingerRow };
  /** z of the front of the lens, and what it is across. */
  readonly lens: { readonly front: number; readonly diameter: number };
  /** Of its mouth ahead of the lens, as it was asked for; null where it was not. */
  readonly asked: number | null;
}

export interface HoodGiven {
  readonly wood: Wood;
  readonly light: LightAhead;
  readonly plate: RailPlate;
  /** Side of the accessory frame. */
  readonly frame: number;
  readonly lens: { readonly front: number; readonly diameter: number };
  readonly depth: number | null;
}

/** A longer one weighs far ahead of the tripod, and is knocked; a choice of ours. */
const MOST_DEPTH = 80;
/** Three fingers and not less hold a wall to its neighbour, each two thicknesses wide; common practice, no source. */
const leastWall = (ply: number): number => 3 * Math.max(LEAST_FINGER, 2 * ply);
/** Wood of the base between its opening and the notches for the walls; a choice of ours. */
const RIM = 4;

export function sizeHood({ wood, light, plate, frame, lens, depth }: HoodGiven): Hood {
  const t = wood.ply.thickness;
  const { beyondLips, betweenLips, ...rail } = plate;
  const base = beyondLips - t;
  const openings = {
    rail: openingAt(light, plate.rear - t),
    packing: openingAt(light, beyondLips),
    base: openingAt(light, base),
  };
  // as wide as the frame it is as deep as that width lets it be
  const foremost = Math.max(foremostFor(light, frame / 2 - t), lens.front - MOST_DEPTH);
  const mouth = Math.min(depth === null ? foremost : lens.front - depth, base - leastWall(t));
  const half = Math.max(squareAt(light, mouth), openings.base / 2 + RIM);
  return {
    wood,
    light,
    plate: rail,
    betweenLips,
    beyondLips,
    openings,
    half,
    mouth,
    base,
    rows: { long: fingerRow(mouth, base, t), base: fingerRow(-half, half, t) },
    lens,
    asked: depth,
  };
}
