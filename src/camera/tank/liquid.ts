import { coveringMl, fullMl, layerMl, levelOf, rockingTilt, surfaceAt } from '../../liquids/chamber.js';
import { puddleDepth } from '../../liquids/film.js';
import { coefficientOfPath, emptyTime, fillTime } from '../../liquids/flow.js';
import { pushOf, sealedRise } from '../../liquids/pressure.js';
import { contactOnEmulsion } from '../../standards/liquids.js';
import { tank as practice } from '../../standards/tank.js';
import type { Opening } from './size.js';

/** Volumes ml, times s, angle rad, force N. */
export interface TankFigures {
  readonly fullVolume: number;
  /** Covers the sheet while the tank lies on its lid. */
  readonly workingVolume: number;
  /** A thinner layer draws together, or leaves one side bare on a table that is not level. */
  readonly leastVolume: number;
  /** Through the funnel, and out by the spout's corner with the vent open. */
  readonly fillSeconds: number;
  readonly drainSeconds: number;
  /** To either side, at which the working volume still reaches the middle. */
  readonly rockAngle: number;
  /** Lifts the lid when all is capped at `warmedFrom` and comes to `warmedTo`. */
  readonly lidForce: number;
}

/** A table that nobody has levelled, rad; a choice of ours. */
const OUT_OF_LEVEL = Math.PI / 180;
/** From a cool room to a colour bath, °C. */
export const WARMED = { from: 20, to: 38 };

export interface Wet {
  readonly chamber: Opening;
  readonly depth: number;
  readonly sheet: Opening;
  /** What the lid is pushed on over. */
  readonly pocket: Opening;
  /** Narrowest areas, corners on the way, and how far the spout's rim stands out from the chamber. */
  readonly passage: { readonly spout: number; readonly vent: number; readonly corners: number; readonly head: number };
}

export function tankFigures({ chamber, depth, sheet, pocket, passage }: Wet): TankFigures {
  const inside = { length: chamber.height, width: chamber.width, depth };
  const working = layerMl(inside, practice.layer.value);
  const openings = { ...passage, coefficient: coefficientOfPath(passage.corners) };
  const standing = { ...inside, turn: Math.PI / 4 };
  return {
    fullVolume: fullMl(inside),
    workingVolume: working,
    leastVolume: Math.max(
      layerMl(inside, puddleDepth(contactOnEmulsion.value)),
      coveringMl({ ...inside, sheet: sheet.height }, OUT_OF_LEVEL),
    ),
    fillSeconds: fillTime(working, openings, practice.fillingHead.value),
    drainSeconds: emptyTime(
      {
        surfaceAt: (height) => surfaceAt(standing, height),
        from: levelOf(standing, working),
        mouthBelow: passage.head * Math.SQRT1_2,
      },
      openings,
    ),
    rockAngle: rockingTilt(inside, working),
    lidForce: pushOf(sealedRise(WARMED.from, WARMED.to), pocket.width * pocket.height),
  };
}
