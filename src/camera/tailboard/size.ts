import type { ClosedPath, Path } from '../../geometry/path.js';
import type { Mark } from '../../model/part.js';
import { clearanceHole } from '../../standards/screws.js';
import { tripodThreads } from '../../standards/tripod-thread.js';
import { claim, narrowest, widest } from '../claim.js';
import { constant, type Figure, formula, measured, PRACTICE, reckoned } from '../figure.js';
import type { Wood } from '../wood.js';

export interface Tailboard {
  readonly wood: Wood;
  readonly width: number;
  readonly start: number;
  readonly length: number;
  readonly axisHeight: number;
  readonly soleWidth: number;
  readonly railWidth: number;
  readonly railPlay: number;
  readonly keeperWidth: number;
  readonly endStop: number;
  /** Slot of the lock bolt: its middle in z and its length. */
  readonly slot: { readonly middle: number; readonly length: number; readonly width: number };
  readonly tripod: number;
  readonly figures: { readonly slot: Figure; readonly tripod: Figure };
  readonly knobRadius: number;
  readonly thread: TeeNut;
  readonly doubler: { readonly side: number; readonly plies: number };
  /** Slots for the front box's tenons, in (x, z). */
  readonly footSlots: readonly ClosedPath[];
  readonly keeperScrews: readonly number[];
  readonly scale: Scale;
}

/** What the focus scale engraves on the keepers, in (x, z). */
export interface Scale {
  readonly left: readonly Path[];
  readonly leftMarks: readonly Mark[];
  readonly right: readonly Path[];
  readonly rightMarks: readonly Mark[];
}

export interface TeeNut {
  readonly name: string;
  readonly major: number;
  /** Tee nut: flange and barrel diameters (common practice, no source). */
  readonly flange: number;
  readonly barrel: number;
}

/** Tee nuts for the two threads of tripods; flange and barrel are common practice, no source. */
const teeNuts = {
  quarter: { name: '1/4-20', major: tripodThreads['1/4-20'].major.value, flange: 19, barrel: 8 },
  threeEighths: { name: '3/8-16', major: tripodThreads['3/8-16'].major.value, flange: 25, barrel: 11.5 },
} as const;

export interface TailboardGiven {
  readonly wood: Wood;
  readonly width: number;
  readonly start: number;
  readonly length: number;
  readonly axisHeight: number;
  readonly soleWidth: number;
  readonly railWidth: number;
  readonly railPlay: number;
  readonly endStop: number;
  readonly bolt: Figure;
  readonly travel: Figure;
  readonly reserve: Figure;
  readonly knobRadius: number;
  /** Mean of the two centres of gravity. */
  readonly balance: Figure;
  readonly loadedKg: number;
  readonly footSlots: readonly ClosedPath[];
  readonly keeperScrews: readonly number[];
  readonly scale: Scale;
  /** One that is there already, whose nut stays where it is. */
  readonly standing: Pick<Tailboard, 'tripod' | 'thread'> | null;
}

const BOLT = 6;
const SLOT_WIDTH = clearanceHole.M6.medium.value;
const KEEPER_OVER_SOLE = 8;
/** Half of a tripod's plate, and air between it and the knob. */
export const TRIPOD_PLATE = 45;
const KNOB_AIR = 2;
const TRIPOD = 'z of the tripod nut';
const LEAST_TRIPOD = 40;
/** Above this mass, loaded, the larger thread (common practice, no source). */
const HEAVY_KG = 4.5;

export const keeperWidth = (railWidth: number): number => railWidth + KEEPER_OVER_SOLE;

const boltDiameter = constant('d_b', 'diameter of the lock bolt', BOLT, 'its thread, M6');
const knobAir = constant('a_k', 'air between knob and tripod plate', KNOB_AIR);
const plate = constant('l_p', 'half of the plate of a tripod', TRIPOD_PLATE);
const leastTripod = constant('z_l', 'nearest that the nut may stand to the foot of the panel', LEAST_TRIPOD);

export function sizeTailboard(given: TailboardGiven): Tailboard {
  const { wood, bolt, travel, reserve, balance } = given;
  const slot = reckoned('l_s', 'slot of the lock bolt', formula`${travel} + ${reserve} + ${boltDiameter} + 2`);
  const knob = constant('r_k', 'radius of the knob', given.knobRadius);
  // the knob must pass the tripod's plate at the closest position, and the nut must stay behind the panel's foot
  const clear = narrowest('z_n', TRIPOD, [
    claim('the mean of the two centres of gravity', formula`${balance}`),
    claim(
      'the knob, which must pass the tripod’s plate at the closest position',
      formula`${bolt} - ${knob} - ${knobAir} - ${plate}`,
      PRACTICE,
    ),
  ]);
  const tripod = given.standing
    ? measured('z_n', TRIPOD, given.standing.tripod, 'the tailboard as it was built')
    : clear.value >= LEAST_TRIPOD
      ? clear
      : widest('z_n', TRIPOD, [
          claim('the foot of the panel', formula`${leastTripod}`, PRACTICE),
          claim(clear.because, formula`${clear}`),
        ]);
  return {
    wood,
    width: given.width,
    start: given.start,
    length: given.length,
    axisHeight: given.axisHeight,
    soleWidth: given.soleWidth,
    railWidth: given.railWidth,
    railPlay: given.railPlay,
    keeperWidth: keeperWidth(given.railWidth),
    endStop: given.endStop,
    slot: {
      middle: bolt.value + (travel.value + reserve.value) / 2,
      length: slot.value,
      width: SLOT_WIDTH,
    },
    tripod: tripod.value,
    figures: { slot, tripod },
    knobRadius: given.knobRadius,
    thread: given.standing?.thread ?? (given.loadedKg > HEAVY_KG ? teeNuts.threeEighths : teeNuts.quarter),
    doubler: { side: 60, plies: Math.max(2, Math.ceil(12 / wood.ply.thickness - 1e-9) - 1) },
    footSlots: given.footSlots,
    keeperScrews: given.keeperScrews,
    scale: given.scale,
  };
}
