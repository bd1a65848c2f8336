import { clearanceHole, nuts, washers } from '../../standards/screws.js';
import type { Wood } from '../wood.js';

/**
 * A carrying handle on the top of the front box, laminated of plies that stand on a plate. The rear box slides so close
 * below that top that neither a plate nor a nut has room inside. So the plate lies outside, is screwed to the handle from
 * below, and then glued on over the heads: no hole leads into the dark.
 *
 *        ______________________
 *      /    __________________  \
 *     |    (    room for a    )  |
 *     |    (_______hand_______)  |
 *     |   _                  _   |
 *     |__|_|________________|_|__|      nuts and washers in pockets of the inner plies
 *    _____|__________________|_____     plate, the heads let into it from below
 *    ==============================     top of the front box
 */
export interface Handle {
  readonly wood: Wood;
  /** Along the optical axis, where the hand keeps the camera from nodding, or across it on a short box. */
  readonly along: 'z' | 'x';
  /** y of the top's upper face. */
  readonly top: number;
  /** z of its middle. */
  readonly middle: number;
  readonly length: number;
  readonly height: number;
  readonly cornerRadius: number;
  readonly hand: { readonly width: number; readonly height: number; readonly above: number; readonly radius: number };
  readonly plate: { readonly width: number; readonly length: number };
  /** Plies between the two outer ones: a washer lies between these. */
  readonly innerPlies: number;
  readonly screw: {
    /** From the handle's middle, along it. */
    readonly fromMiddle: number;
    readonly length: number;
    readonly diameter: number;
    readonly hole: number;
    /** How far its slot reaches up into the inner plies, from their foot. */
    readonly slot: number;
  };
  readonly washer: { readonly diameter: number; readonly thickness: number };
  readonly nut: { readonly acrossFlats: number; readonly thickness: number };
  /** In the inner plies, above their foot: the washer's and the nut's, and their widths. */
  readonly pocket: {
    readonly washer: number;
    readonly from: number;
    readonly step: number;
    readonly nut: number;
    readonly to: number;
  };
}

export interface HandleGiven {
  readonly wood: Wood;
  /** y of the upper face of the front box's top, and z of its rear edge. */
  readonly top: number;
  readonly boxLength: number;
  /** z of the centre of gravity, the camera closed. */
  readonly balance: number;
}

/** Room for a hand in a glove, and what is left round it; common practice, no source. */
const HAND = { width: 94, height: 34, radius: 14 };
const BAR = 20;
const LEG = 20;
const FOOT = 18;
const CORNER = 18;
/** The plate spreads the load over the top: beyond the handle, and across. */
const PLATE = { beyond: 4, width: 60 };
/** Along the axis a handle may stand so far from the centre of gravity; farther off it stands across, and just above it. */
const OFF_BALANCE = 10;
/** Wood under a washer, against the screw that pulls it: 1.5 diameters and more (common practice, no source). */
const UNDER_NUT = 8;
/** Room in the pockets, sideways and upwards; as of other captive nuts. */
const POCKET_PLAY = { flats: 0.2, thickness: 0.3 };
const WASHER_PLAY = 0.4;
/** A screw shows so much above its nut at least, and its slot ends so far above its tip. */
const TIP = { proud: 0.5, air: 1 };
/** Lengths of countersunk M4 screws; from memory: ISO 10642, preferred lengths. */
const SCREW_LENGTHS = [16, 20, 25, 30, 35, 40];
const ROUNDING = 1e-6;

const M4 = {
  hole: clearanceHole.M4.medium.value,
  /** Drawn a hair narrower than its hole, so that chords do not meet. */
  fitted: clearanceHole.M4.medium.value - 0.02,
  nut: { acrossFlats: nuts.M4.acrossFlats.value, thickness: nuts.M4.height.value },
  washer: { diameter: washers.M4.outside.value, thickness: washers.M4.thickness.value },
};

export function sizeHandle({ wood, top, boxLength, balance }: HandleGiven): Handle {
  const t = wood.ply.thickness;
  const length = HAND.width + 2 * LEG;
  const plate = { width: PLATE.width, length: length + 2 * PLATE.beyond };
  const { nut, washer } = M4;
  const step = UNDER_NUT + washer.thickness;
  const least = t + step + nut.thickness + TIP.proud;
  const screwLength = SCREW_LENGTHS.find((one) => one >= least - ROUNDING) ?? Math.ceil(least);
  const to = step + nut.thickness + POCKET_PLAY.thickness;
  // the plate lies on the top whole
  const within = (deep: number) => Math.max(deep / 2, Math.min(boxLength - deep / 2, balance));
  const alongAxis = within(plate.length);
  const fits = plate.length <= boxLength + ROUNDING && Math.abs(alongAxis - balance) <= OFF_BALANCE + ROUNDING;
  return {
    wood,
    along: fits ? 'z' : 'x',
    top,
    middle: fits ? alongAxis : within(plate.width),
    length,
    height: FOOT + HAND.height + BAR,
    cornerRadius: CORNER,
    hand: { ...HAND, above: FOOT },
    plate,
    innerPlies: Math.ceil((washer.diameter + POCKET_PLAY.flats) / t - ROUNDING),
    screw: {
      fromMiddle: (length - LEG) / 2,
      length: screwLength,
      diameter: M4.fitted,
      hole: M4.hole,
      slot: Math.max(to, screwLength - t + TIP.air),
    },
    washer,
    nut,
    pocket: {
      washer: washer.diameter + WASHER_PLAY,
      from: UNDER_NUT,
      step,
      nut: nut.acrossFlats + POCKET_PLAY.flats,
      to,
    },
  };
}

/** Where the two screws stand in the plate, in (x, z). */
export const handleScrews = ({ along, middle, screw }: Pick<Handle, 'along' | 'middle' | 'screw'>) =>
  [-1, 1].map((side) =>
    along === 'z' ? { x: 0, z: middle + side * screw.fromMiddle } : { x: side * screw.fromMiddle, z: middle },
  );
