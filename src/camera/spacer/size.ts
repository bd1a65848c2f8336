import { type Lamination, laminate, mend } from '../../joinery/lamination.js';
import type { Ply } from '../../joinery/plate.js';
import type { Stance } from '../loose.js';
import type { Wood } from '../wood.js';

export interface Spacer {
  /** Its mark: SP1, SP2 … */
  readonly id: string;
  readonly holder: string;
  readonly under: 'glass' | 'holder' | 'none';
  readonly thickness: number;
  /** What lies between glass and film as drawn, where they stand otherwise, too. */
  readonly asDrawn: number;
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
  /** As drawn, both. */
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
  /** Of film and glass as they stand: measured, or as they are drawn. */
  readonly filmStands: number;
  readonly glassStands: number;
  /** It is for a camera that stands already: whether there is one, too, follows from what stands. */
  readonly later: boolean;
}

/** Below this two depths are the same: a hundredth is less than glue. */
const SAME_DEPTH = 0.005;

export function sizeSpacer(given: SpacerGiven): Spacer {
  const { id, holder, filmDepth, glassDepth, filmStands, glassStands, measured, later, tolerance } = given;
  const none = {
    id,
    holder,
    under: 'none' as const,
    thickness: 0,
    asDrawn: 0,
    made: { thickness: 0, plies: [], shims: [], remainder: 0 },
    tolerance,
    glued: null,
  };
  const deeper = later ? filmStands - glassStands : filmDepth - glassDepth;
  if (Math.abs(deeper) < SAME_DEPTH) return none;
  const under = deeper > 0 ? 'glass' : 'holder';
  const wanted = under === 'glass' ? filmStands - glassStands : glassStands - filmStands;
  const drawn = laminated(given, Math.abs(deeper));
  if (measured !== null) {
    const glued = gluedSpacer({ measured, wanted, shims: given.shims, inIt: drawn.shims, within: tolerance / 2 });
    return { ...none, under, thickness: Math.abs(deeper), asDrawn: Math.abs(deeper), made: drawn, glued };
  }
  // what was measured takes more shims or fewer, and no other plies as long as these go in
  const plies = drawn.plies.reduce((sum, ply) => sum + ply, 0);
  if (wanted < SAME_DEPTH) return none;
  const made =
    Math.abs(wanted - Math.abs(deeper)) < SAME_DEPTH
      ? drawn
      : wanted - plies > -given.within
        ? withShims(given, drawn.plies, wanted)
        : laminated(given, wanted);
  return { ...none, under, thickness: made.thickness, asDrawn: Math.abs(deeper), made };
}

const laminated = ({ ply, shims, within, stock }: SpacerGiven, thickness: number): Lamination =>
  laminate({ thickness, ply, shims, within, stock });

/** So many plies, and shims chosen for what is left. */
function withShims({ shims, within }: SpacerGiven, plies: readonly number[], thickness: number): Lamination {
  const rest = thickness - plies.reduce((sum, ply) => sum + ply, 0);
  const chosen = laminate({ thickness: rest, ply: Number.POSITIVE_INFINITY, shims, within, stock: [] });
  return { ...chosen, thickness, plies };
}

interface GluedGiven {
  readonly measured: number;
  readonly wanted: number;
  readonly shims: readonly number[];
  readonly inIt: readonly number[];
  readonly within: number;
}

function gluedSpacer({ measured, wanted, shims, inIt, within }: GluedGiven): GluedSpacer {
  const { add, takeOut } = mend({ lacks: wanted - measured, shims, inIt, within });
  return { measured, wanted, add, takeOut };
}

/** What the plies and shims come to: the thickness as it is really made. */
export const asMade = ({ made }: Spacer): number => made.thickness - made.remainder;

/** How thick it should be, glass and film as they stand: one that was measured is drawn as it was glued. */
export const wantedOf = ({ thickness, glued }: Spacer): number => glued?.wanted ?? thickness;

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
  /** The glass is to be mended before the spacer is: it is reckoned from the glass as that stands. */
  readonly glassFirst?: boolean;
}

/** Id of the layer that the frame or the holder lies on. */
export function topLayer({ id, made }: Spacer): string {
  if (made.plies.length > 0) return `${id}T`;
  return `${id}-shim-${Math.round((made.shims.at(-1) ?? 0) * 1000)}`;
}
