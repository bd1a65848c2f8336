import { wallsOf } from './printing.js';

/** The neck of spout and vent, w counted from the outside of the roof. */
export interface Neck {
  /** The bore: a rectangle with its corners cut, so that it goes on upwards from the walls of the well. */
  readonly bore: { readonly width: number; readonly depth: number; readonly clip: number };
  readonly radius: number;
  /** The rim stands out at 45° to an edge as thick as a line is wide, from which the last drop falls. */
  readonly lip: { readonly radius: number; readonly height: number; readonly edge: number };
  readonly lug: {
    readonly radius: number;
    /** From the neck out at 45°, then upright to the top. */
    readonly from: number;
    readonly top: number;
    /** rad, and how many there are. */
    readonly angle: number;
    readonly count: number;
  };
  readonly rim: number;
}

/** Between cap and neck. */
export interface Play {
  /** A side, between lip and bore and between lug and groove. */
  readonly radial: number;
  /** How far the cap can be pushed on beyond where it is shut. */
  readonly axial: number;
  /** A side, of a lug in its way in, mm at the lug. */
  readonly around: number;
}

/** Play of printed parts that turn in each other; common practice, no source, to be tried with a cap and a neck. */
export const PLAY: Play = { radial: 0.25, axial: 0.6, around: 0.3 };

/** What a hand turns wet, in PETG. Common practice, no source. */
const LIP = 0.8;
const BITE = 1.2;
const LUG = { land: 1, count: 3, angle: Math.PI / 6, foot: 1 };
/** From the top of the lugs to the rim: the funnel's socket goes on here. */
const OVER_LUGS = 5;

/** The bore is as wide as the well; where that is too shallow for a square bore, it is wider. */
export function sizeNeck(area: number, inside: number, nozzle: number): Neck {
  // a square of side s less corners of s/4 has 7/8 of its area
  const depth = Math.min(inside, Math.sqrt(area / (7 / 8)));
  const clip = depth / 4;
  const width = (area + 2 * clip * clip) / depth;
  const corners = [length(width / 2, depth / 2 - clip), length(width / 2 - clip, depth / 2)];
  const radius = Math.max(...corners) + wallsOf(nozzle).inner;
  const lip = radius + LIP;
  const lug = lip + PLAY.radial + BITE;
  const top = LUG.foot + (lug - radius) + LUG.land;
  return {
    bore: { width, depth, clip },
    radius,
    lip: { radius: lip, height: LIP, edge: nozzle },
    lug: { radius: lug, from: LUG.foot, top, angle: LUG.angle, count: LUG.count },
    rim: top + OVER_LUGS,
  };
}

export const boreArea = ({ bore: { width, depth, clip } }: Pick<Neck, 'bore'>): number =>
  width * depth - 2 * clip * clip;

/** mm³, of all that stands over the roof. */
export function volumeOfNeck(neck: Neck): number {
  const { radius, lug, rim, lip } = neck;
  const ring = Math.PI * radius * radius - boreArea(neck);
  const edge = 2 * Math.PI * radius * lip.height * (lip.height / 2 + lip.edge);
  const slices = ((lug.count * lug.angle) / 2) * (lug.radius * lug.radius - radius * radius);
  return ring * rim + edge + (slices * (lug.top - lug.from + LUG.land)) / 2;
}

const length = (x: number, y: number): number => Math.sqrt(x * x + y * y);
