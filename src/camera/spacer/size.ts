import { type Lamination, laminate } from '../../joinery/lamination.js';
import type { Ply } from '../../joinery/plate.js';
import type { Stance } from '../loose.js';
import type { Wood } from '../wood.js';

export interface Spacer {
  /** Its mark: SP1, SP2 … */
  readonly id: string;
  readonly holder: string;
  readonly under: 'glass' | 'holder' | 'none';
  readonly thickness: number;
  readonly made: Lamination;
  /** How far the register may be out: a quarter of the depth of focus at infinity. */
  readonly tolerance: number;
  /** Once it is glued; null where nobody measured it. */
  readonly glued: GluedSpacer | null;
}

/** A spacer that stands, and the shims that bring it nearer to what is wanted. */
export interface GluedSpacer {
  readonly measured: number;
  /** What it should be, glass and film as they stand. */
  readonly wanted: number;
  /** Of the shims at hand, to be put to it. */
  readonly add: readonly number[];
  /** Of the shims that are drawn in it. */
  readonly takeOut: readonly number[];
}

export interface SpacerGiven {
  readonly id: string;
  readonly holder: string;
  readonly filmDepth: number;
  readonly glassDepth: number;
  readonly ply: number;
  readonly shims: readonly number[];
  readonly stock: readonly number[];
  /** How far what is left over may stray either way. */
  readonly within: number;
  readonly tolerance: number;
  /** As it was measured; null where nobody did. */
  readonly measured: number | null;
  /** Of the glass as it stands: measured on its frame, or as it is drawn. */
  readonly glassStands: number;
}

/** Below this two depths are the same: a hundredth is less than glue. */
const SAME_DEPTH = 0.005;

export function sizeSpacer(given: SpacerGiven): Spacer {
  const { id, holder, filmDepth, glassDepth, ply, shims, stock, within, tolerance } = given;
  const thickness = Math.abs(filmDepth - glassDepth);
  const under = thickness < SAME_DEPTH ? 'none' : filmDepth > glassDepth ? 'glass' : 'holder';
  const made =
    under === 'none'
      ? { thickness: 0, plies: [], shims: [], remainder: 0 }
      : laminate({ thickness, ply, shims, within, stock });
  const wanted = under === 'glass' ? filmDepth - given.glassStands : given.glassStands - filmDepth;
  const glued =
    under === 'none' || given.measured === null
      ? null
      : gluedSpacer({ measured: given.measured, wanted, shims, inIt: made.shims, within: tolerance / 2 });
  return { id, holder, under, thickness: under === 'none' ? 0 : thickness, made, tolerance, glued };
}

interface GluedGiven {
  readonly measured: number;
  readonly wanted: number;
  readonly shims: readonly number[];
  readonly inIt: readonly number[];
  readonly within: number;
}

/** What is too thin takes more shims; what is too thick gives some back, as far as it has them. */
function gluedSpacer({ measured, wanted, shims, inIt, within }: GluedGiven): GluedSpacer {
  const lacks = wanted - measured;
  const chosen = (of: readonly number[]) =>
    laminate({ thickness: Math.abs(lacks), ply: Number.POSITIVE_INFINITY, shims: of, within, stock: [] }).shims;
  if (lacks >= 0) return { measured, wanted, add: chosen(shims), takeOut: [] };
  const out = chosen(inIt);
  const count = (all: readonly number[], one: number) => all.filter((other) => other === one).length;
  return { measured, wanted, add: [], takeOut: out.every((one) => count(out, one) <= count(inIt, one)) ? out : [] };
}

/** What the plies and shims come to: the thickness as it is really made. */
export const asMade = ({ made }: Spacer): number => made.thickness - made.remainder;

/** A spacer with plies, cut for its place in the camera. */
export interface PlacedSpacer {
  readonly spacer: Spacer;
  readonly wood: Wood;
  readonly seat: number;
  readonly width: number;
  /** From the axis to the closed end of the well, and towards its open end. */
  readonly extent: { readonly closed: number; readonly open: number };
  readonly opening: { readonly width: number; readonly height: number };
  readonly seatPins: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly ownPins: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly extra: readonly Ply[];
  readonly stance: Stance;
}

/** Id of the layer that the frame or the holder lies on. */
export function topLayer({ id, made }: Spacer): string {
  if (made.plies.length > 0) return `${id}T`;
  return `${id}-shim-${Math.round((made.shims.at(-1) ?? 0) * 1000)}`;
}
