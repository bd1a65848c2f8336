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
  return { id, holder, under, thickness: under === 'none' ? 0 : thickness, made, tolerance };
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
