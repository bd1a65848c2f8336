import {
  accelerationOfPull,
  type Drop,
  dropTimes,
  effectiveTime,
  evenness,
  type Fall,
  slotForTime,
} from '../../optics/drop-shutter.js';
import { slotInDiameters } from '../../standards/drop-shutter.js';
import { standardGravity } from '../../standards/gravity.js';
import { type LightAhead, openingAt } from '../light-ahead.js';
import type { RailPlate } from '../rail-plate.js';
import type { Wood } from '../wood.js';

/**
 * A slide with a slot that falls across the light. Its guide hangs by a plate on the rails of the accessory frame: that
 * plate, a narrower one between the lips that carries the rest past them, then back plate, strips and front plate, and
 * the slide between these two.
 *
 * ```
 *   front ◀── z          D9   D4    D3   D2  D1
 *                        ▓   slide  ▓    ▓   ▓
 *      cocked, from behind:                    after the fall:
 *        slot above the opening,                slot below it,
 *        lower blind over it, peg below         upper blind over it, bar on the felt
 * ```
 *
 * A second slide has an opening as wide as the light and stands on the same peg: drawn up it is open, for focusing and
 * for times by hand; let down it is shut.
 */
export interface DropShutter {
  readonly wood: Wood;
  readonly light: LightAhead;
  /** What goes on the rails: width, lower edge, and z of its rear. */
  readonly plate: { readonly width: number; readonly bottom: number; readonly rear: number };
  /** Half of what stands between the lips, and z of what is ahead of them. */
  readonly betweenLips: number;
  readonly beyondLips: number;
  /** Diameters of the openings in rail plate, carrier, back plate and front plate: each as wide as the light is there. */
  readonly openings: { readonly rail: number; readonly carrier: number; readonly back: number; readonly front: number };
  readonly guide: { readonly half: number; readonly bottom: number; readonly top: number; readonly strip: number };
  readonly slide: Slide;
  readonly timeSlide: {
    readonly opening: number;
    readonly below: number;
    readonly length: number;
    readonly fall: number;
  };
  readonly peg: { readonly y: number; readonly diameter: number };
  readonly elastic: { readonly pullKg: number; readonly over: number } | null;
  /** Effective time wanted, s; null where the slot is given. */
  readonly wanted: number | null;
  /** tan of half the field along the long side. */
  readonly fieldAlongFall: number;
  readonly figures: ShutterFigures;
}

interface Slide {
  readonly half: number;
  readonly slotWidth: number;
  readonly slot: number;
  /** Wood below the slot: the blind that covers the opening while it is cocked. */
  readonly lower: number;
  readonly length: number;
  /** From cocked until the bar meets the felt. */
  readonly fall: number;
}

/** What it does to a picture, at full aperture: times in s, unevenness in stops. */
export interface ShutterFigures {
  readonly effective: number;
  readonly open: number;
  readonly fullyOpen: number;
  readonly efficiency: number;
  /** By how much the first edge of the picture gets more than the last; null where it is lit before the slide falls. */
  readonly uneven: number | null;
}

export interface DropShutterGiven {
  readonly wood: Wood;
  readonly light: LightAhead;
  readonly plate: RailPlate;
  /** Half of the image's long side: the picture may stand upright. */
  readonly halfLong: number;
  readonly by: { readonly time: number } | { readonly slot: number };
  readonly elastic: { readonly pullKg: number; readonly over: number | null } | null;
  /** What can be cut at all. */
  readonly longestPart: number;
}

/** The closed slide covers the opening by so much above, below and beside: the turn that light does not take; common practice, no source. */
const COVER = 10;
/** The slide in the front plate, each side: that only holds it; a choice of ours. */
const FRONT_LAP = 5;
/** Strips beside the slide; wood above the rails to take hold of, and round peg and openings; choices of ours. */
const STRIP = 8;
const HOLD = 10;
const WEB = 8;
const PEG = 6;
/** Wood between the peg and the opening of the front plate, with the peg's play; common practice, no source. */
const OVER_PEG = 4;
/** Height of the bar across the top of a slide, and felt under it; choices of ours. */
export const BAR = 14;
export const FELT = 2;
/** Ears for elastic beyond the guide, and the notch in each that it hangs in; choices of ours. */
export const EAR = 9;
export const NOTCH = 3;
/** What a waxed guide leaves of gravity: nine tenths; common practice, no source. */
export const LEFT_OF_GRAVITY = 0.9;

/** mm/s² */
export const fallingBy = 1000 * standardGravity.value * LEFT_OF_GRAVITY;

/**
 * So much higher than it must a slide may hang, mm: from higher up it is faster when it comes to the light, and grows less
 * faster while it crosses it, so that the picture is lit more evenly. The least that does is taken: it makes the slide longer.
 */
const HIGHER = [10, 20, 30, 40, 50, 60];
/** Stops between head and foot of the picture that nobody sees; a choice of ours, below the third that is told. */
const EVEN = 0.3;
/** Slot and mass of the slide depend on each other: each round leaves less than a tenth of the error. */
const ROUNDS = 12;
/** mm, below what a laser cuts. */
const SETTLED = 1e-3;

export function sizeDropShutter(given: DropShutterGiven): DropShutter {
  const { wood, light, plate, halfLong, by, elastic, longestPart } = given;
  const t = wood.ply.thickness;
  const { slide: slip } = wood.fits;
  const { beyondLips } = plate;
  const openings = {
    rail: openingAt(light, plate.rear - t),
    carrier: openingAt(light, beyondLips),
    back: openingAt(light, beyondLips - t),
    front: openingAt(light, beyondLips - 3 * t - slip),
  };
  const slidePlane = beyondLips - 2 * t;
  const slotWidth = openingAt(light, slidePlane);
  const radius = openings.back / 2;
  const half = Math.max(radius + COVER, openings.front / 2 + FRONT_LAP);
  // where the slide stands on the peg: below the opening, and below that of the front plate
  const below = Math.max(COVER, openings.front / 2 - radius + OVER_PEG);
  const pegY = -radius - below - PEG / 2;
  const guide = {
    half: half + slip / 2 + STRIP,
    strip: STRIP,
    bottom: pegY - PEG / 2 - WEB,
    top: Math.max(plate.railTop + HOLD, openings.front / 2 + WEB),
  };
  const lengthOf = (fall: number) => guide.top + FELT + fall + BAR + radius + below;
  const bar = 2 * (guide.half + (elastic ? EAR : 0)) * BAR - (elastic ? 2 * NOTCH * NOTCH : 0);
  const bundle = light.focalLength / light.maxAperture;
  const offset = (Math.max(0, light.pupil - slidePlane) * halfLong) / light.focalLength;
  // how a slide falls that hangs so much higher than it must, with a slot of that length
  const fallOf = (higher: number, slot: number) => 2 * radius + 2 * COVER + higher + slot;
  const dropOf = (higher: number, slot: number): Drop => {
    const whole = fallOf(higher, slot);
    const area = 2 * half * lengthOf(whole) - slotWidth * slot + bar;
    const massKg = (area * t * wood.ply.density) / 1e9;
    return { fall: fallWith(elastic, massKg, whole), lead: radius + COVER + higher - bundle / 2, slot, bundle };
  };
  const hung = (higher: number): Hung => {
    const { slot, reached } =
      'slot' in by
        ? { slot: by.slot, reached: true }
        : slotFor(by.time, bundle, elastic !== null, (length) => dropOf(higher, length));
    const drop = dropOf(higher, slot);
    const off = 'slot' in by ? 0 : Math.log2(effectiveTime(drop) / by.time);
    return { higher, slot, reached, off, drop, uneven: evenness({ ...drop, offset })?.stops ?? null };
  };
  const chosen = evenEnough(hung, ({ higher, slot }) => lengthOf(fallOf(higher, slot)) <= longestPart);
  const times = dropTimes(chosen.drop);
  const fall = fallOf(chosen.higher, chosen.slot);
  return {
    wood,
    light,
    plate: { width: plate.width, bottom: plate.bottom, rear: plate.rear },
    betweenLips: plate.betweenLips,
    beyondLips,
    openings,
    guide,
    slide: {
      half,
      slotWidth,
      slot: chosen.slot,
      lower: 2 * radius + COVER + below + chosen.higher,
      length: lengthOf(fall),
      fall,
    },
    timeSlide: {
      opening: slotWidth,
      below: radius + below - slotWidth / 2,
      length: lengthOf(slotWidth / 2 + radius + COVER),
      fall: slotWidth / 2 + radius + COVER,
    },
    peg: { y: pegY, diameter: PEG },
    elastic: elastic && { pullKg: elastic.pullKg, over: elastic.over ?? fall },
    wanted: 'time' in by ? by.time : null,
    fieldAlongFall: halfLong / light.focalLength,
    figures: {
      effective: times.effective,
      open: times.open,
      fullyOpen: times.fullyOpen,
      efficiency: times.efficiency,
      uneven: chosen.uneven,
    },
  };
}

/** What moves a slide of this mass. */
export function fallWith(
  elastic: { readonly pullKg: number; readonly over: number | null } | null,
  massKg: number,
  whole: number,
): Fall {
  if (elastic === null) return { acceleration: fallingBy };
  const pull = elastic.pullKg * standardGravity.value;
  return {
    acceleration: fallingBy,
    elastic: { acceleration: accelerationOfPull(pull, massKg), slackAfter: elastic.over ?? whole },
  };
}

/** A slide as it hangs when it is cocked, and what it does then. */
interface Hung {
  readonly higher: number;
  readonly slot: number;
  /** Whether it gives the time that is wanted. */
  readonly reached: boolean;
  /** By how many stops its time is too long. */
  readonly off: number;
  readonly drop: Drop;
  readonly uneven: number | null;
}

/**
 * The lowest place that lights the picture evenly; where none does, the one that does so most. The time that is wanted
 * goes before: where no place gives it, the one that comes nearest.
 */
function evenEnough(hung: (higher: number) => Hung, canBeCut: (one: Hung) => boolean): Hung {
  let best = hung(0);
  for (const higher of HIGHER) {
    // from higher up a slide is only faster
    if (unevenOf(best) <= EVEN && best.reached) break;
    if (!best.reached && best.off < 0) break;
    const one = hung(higher);
    if (!canBeCut(one)) break;
    if (betterThan(best, one)) best = one;
  }
  return best;
}

const unevenOf = ({ uneven }: Hung): number => uneven ?? Infinity;

function betterThan(best: Hung, one: Hung): boolean {
  if (one.reached !== best.reached) return one.reached;
  return one.reached ? unevenOf(one) < unevenOf(best) : Math.abs(one.off) < Math.abs(best.off);
}

/** The slot for a time; where none reaches it the one that comes nearest. */
function slotFor(time: number, bundle: number, weighed: boolean, dropOf: (slot: number) => Drop) {
  const { least, most } = slotInDiameters.value;
  const [shortest, longest] = [least * bundle, most * bundle];
  let slot = shortest;
  let reached = false;
  for (let round = 0; round < ROUNDS; round++) {
    const found = slotForTime({ ...dropOf(slot), time, shortest, longest });
    reached = found.slot !== null;
    const next = found.slot ?? (time < found.from ? shortest : longest);
    const settled = Math.abs(next - slot) < SETTLED;
    slot = next;
    // a slide that falls by itself falls alike whatever it weighs
    if (!weighed || settled) break;
  }
  return { slot, reached };
}
