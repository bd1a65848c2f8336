import { area, type ClosedPath, type Path } from '../geometry/path.js';
import type { FlatPart, Mark } from '../model/part.js';
import type { Fits } from './ladder.js';

/** What a test piece is drawn from. */
export interface CouponGiven {
  /** Material with its thickness, such as plywood-4.05. */
  readonly material: string;
  readonly thickness: number;
  /** kg/m³ */
  readonly density: number;
  /** What the beam is taken to remove. */
  readonly kerf: number;
  readonly fits: Fits;
  /** Least distance of two cut lines. */
  readonly spacing: number;
}

/** A web thinner than this breaks in the hand, mm (common practice, no source). */
const WEB = 3;

/** Between the cut lines of two pieces. */
export const gapOf = ({ spacing }: CouponGiven): number => Math.max(WEB, spacing);

/** Capitals, mm: 2.5 can be read in wood. */
export const SMALL = 2.5;
export const LARGE = 3;

interface Drawn {
  readonly id: string;
  readonly name: string;
  readonly outline: ClosedPath;
  /** Clockwise. */
  readonly holes?: readonly ClosedPath[];
  readonly engraving?: readonly Path[];
  readonly marks?: readonly Mark[];
}

/** A piece of the test piece as a part like any other; it stands nowhere in the camera, and its grain lies along the sheet. */
export function couponPart({ material, thickness, density }: CouponGiven, drawn: Drawn): FlatPart {
  const { id, name, outline, holes = [], engraving = [], marks = [] } = drawn;
  const net = [outline, ...holes].reduce((sum, loop) => sum + area(loop), 0);
  return {
    kind: 'flat',
    id,
    name,
    material,
    thickness,
    grain: 'x',
    outline,
    holes,
    engraving,
    marks,
    placements: [],
    joins: [],
    massKg: (net * thickness * density) / 1e9,
  };
}
