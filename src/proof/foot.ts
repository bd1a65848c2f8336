import type { Build, Setup } from '../assembly/build.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { sharesOf } from '../assembly/mass.js';
import { boxOf, openingRound, partOf } from '../assembly/measure.js';
import { ON_THE_ROAD, stands } from '../assembly/setups.js';
import { spanOf, spansOf } from '../assembly/span-of.js';
import { cantileverSag, cantileverTilt, secondMoment, yaw } from '../assembly/statics.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import { circleOfConfusion, depthOfFocus } from '../optics/depth.js';
import { diagonal } from '../optics/image-circle.js';
import { standardGravity } from '../standards/gravity.js';
import { kg, mm, tenth } from '../units/print.js';
import { type Boxes, boxesIn, holderSeat, travelOf } from './landmarks.js';
import type { ProofRule } from './proof-rule.js';

/** How the camera slides and stands, and where it gives way. */

/** What the camera weighs in a set-up at an end of its travel, and where; and what of it slides. */
interface Weighed {
  readonly setup: Setup;
  readonly drawn: 'closed' | 'out';
  readonly massKg: number;
  readonly z: number;
  readonly sliding: { readonly massKg: number; readonly z: number };
}

/**
 * At both ends of the travel in every set-up: what slides moves the centre of gravity one way, so that it is farthest out
 * there. Only z counts, so moments are summed along it alone.
 */
function weighed(build: Build): readonly Weighed[] {
  const shares = sharesOf(build.parts);
  const travel = travelOf(build);
  return build.setups.flatMap((setup) => {
    let standing = 0;
    let standingMoment = 0;
    let moving = 0;
    let movingMoment = 0;
    for (const { placement, massKg, moment } of shares) {
      if (!stands(placement, setup)) continue;
      if (placement.group === 'front') {
        standing += massKg;
        standingMoment += moment;
      } else {
        moving += massKg;
        movingMoment += moment;
      }
    }
    const massKg = standing + moving;
    return (['closed', 'out'] as const).map((drawn) => {
      const moved = movingMoment + (drawn === 'out' ? moving * travel : 0);
      const sliding = { massKg: moving, z: moved / moving };
      return { setup, drawn, massKg, z: (standingMoment + moved) / massKg, sliding };
    });
  });
}

const what = ({ setup }: Weighed): string => (setup.focusing ? 'the ground glass' : `the ${setup.holder}`);

/** A tripod head holds what leans no further out; common practice, no source. */
const LEANING = 40;

/** balance: the centre of gravity over the nut, with each holder and the glass, over the whole travel. */
function balance(build: Build, states: readonly Weighed[]): readonly Finding[] {
  const { z } = spanOf(build, 'tripod-barrel');
  const nut = (z[0] + z[1]) / 2;
  const lean = (state: Weighed) => Math.abs(state.z - nut);
  const worst = states.reduce((most, state) => (lean(state) > lean(most) + ROUNDING ? state : most));
  const open = worst.drawn === 'out';
  const behind = worst.z > nut;
  return unless(lean(worst) <= LEANING + ROUNDING, {
    rule: 'balance',
    level: 'warning',
    value: lean(worst),
    limit: LEANING,
    unit: 'mm',
    about: 'holders',
    message: `${open ? 'Drawn out' : 'Closed'}, with ${what(worst)} in, the camera's weight lies ${mm(tenth(lean(worst)))} ${behind ? 'behind' : 'ahead of'} the tripod nut: the head droops, the tripod may tip.`,
    hint: `Let a leg of the tripod point to that side, and rest the ${behind ? 'rear' : 'front'} end of the tailboard on a stick; a lighter holder helps most.`,
  });
}

/** mass-tripod: what the tripod has to carry. */
function massTripod(states: readonly Weighed[]): readonly Finding[] {
  const most = states.reduce((heaviest, state) => (state.massKg > heaviest.massKg ? state : heaviest));
  return [
    {
      rule: 'mass-tripod',
      level: 'note',
      value: most.massKg,
      unit: 'kg',
      message: `The tripod carries ${kg(Math.round(most.massKg * 100) / 100)}: the camera, its lens, and ${what(most)}.`,
      hint: `A head rated for ${kg(Math.ceil(2 * most.massKg))} holds it without creeping.`,
    },
  ];
}

/** How the tailboard gives way behind its doubler, drawn out, with what bends it most. */
interface Bent {
  readonly sag: number;
  /** rad */
  readonly tilt: number;
}

/**
 * The glued plies as a cantilever that the doubler holds, with all that slides at its end. The doubler does not give: a
 * bound for sizing would add the span ahead of it, which bends as well.
 */
function bent({ workshop }: Design, build: Build, states: readonly Weighed[]): Bent {
  const plies = ['T1U', 'T1L'].flatMap((id) => spansOf(build, id));
  const width = Math.min(...plies.map(({ x }) => x[1] - x[0]));
  const thickness = Math.max(...plies.map(({ y }) => y[1])) - Math.min(...plies.map(({ y }) => y[0]));
  const held = spanOf(build, 'T4').z[1];
  const inertia = secondMoment(width, thickness);
  const all = states
    .filter(({ drawn }) => drawn === 'out')
    .map(({ sliding }) => {
      const load = sliding.massKg * standardGravity.value;
      const overhang = Math.max(0, sliding.z - held);
      return {
        sag: cantileverSag(load, overhang, workshop.modulus, inertia),
        tilt: cantileverTilt(load, overhang, workshop.modulus, inertia),
      };
    });
  return all.reduce((most, one) => (one.tilt > most.tilt ? one : most), { sag: 0, tilt: 0 });
}

/** Half of the depth of focus at the nearest: what the camera's own faults may take of it. Common practice, no source. */
const halfDepthOfFocus = ({ format, lens, focus }: Design): number => {
  const { short, long } = format.image;
  const confusion = circleOfConfusion(diagonal({ width: short, height: long }));
  return depthOfFocus(lens.maxAperture, confusion, focus.nearest, lens.pupilMagnification) / 2;
};

/** sag-tilt: the film's edge out of focus by the tilt of the loaded tailboard at full draw. */
function sagTilt(design: Design, { tilt }: Bent): readonly Finding[] {
  const { format, plywood } = design;
  const limit = halfDepthOfFocus(design);
  const value = (tilt * format.image.long) / 2;
  // the stiffness of a board goes with the cube of its thickness
  const thicker = plywood.thickness * Math.cbrt(value / limit);
  return unless(value <= limit + ROUNDING, {
    rule: 'sag-tilt',
    level: 'warning',
    value,
    limit,
    unit: 'mm',
    about: 'plywood.thickness',
    message: `The top of the picture is soft at full draw: loaded, the tailboard bends and moves the film's edge by ${mm(tenth(value))}; half the depth of focus is ${mm(tenth(limit))}.`,
    hint: `Rest the rear end of the tailboard on a second support, or use sheet of ${mm(Math.ceil(thicker * 2) / 2)}.`,
  });
}

/** The sole in its guide: play a side between the rails, play under the keepers, where it begins, and its length. */
interface Guide {
  readonly side: number;
  readonly above: number;
  readonly front: number;
  readonly length: number;
}

function guideOf(build: Build): Guide {
  const soles = ['R4U', 'R4L'].map((id) => spanOf(build, id));
  const rails = spansOf(build, 'T2');
  const between =
    Math.min(...rails.filter(({ x }) => x[0] > 0).map(({ x }) => x[0])) -
    Math.max(...rails.filter(({ x }) => x[1] < 0).map(({ x }) => x[1]));
  const keepers = ['T3', 'T3S'].map((id) => spanOf(build, id).y[0]);
  return {
    side: (between - Math.max(...soles.map(({ x }) => x[1] - x[0]))) / 2,
    above: Math.min(...keepers) - Math.max(...soles.map(({ y }) => y[1])),
    front: Math.max(...soles.map(({ z }) => z[0])),
    length: Math.min(...soles.map(({ z }) => z[1] - z[0])),
  };
}

/** yaw-register: the sole askew between its rails swings the film's edge. */
const yawRegister = (design: Design, { side, length }: Guide): readonly Finding[] => {
  const value = (yaw(side, length) * design.format.image.long) / 2;
  const limit = halfDepthOfFocus(design);
  return unless(value <= limit + ROUNDING, {
    rule: 'yaw-register',
    level: 'warning',
    value,
    limit,
    unit: 'mm',
    about: 'workshop.railPlay',
    message: `One side of the picture soft: askew in its rails the back swings ${mm(hundredth(value))} at the picture's edge, and half the depth of focus is ${mm(hundredth(limit))}.`,
    hint: `Press the sole against one rail before you lock it, or fit the rails with ${mm(Math.floor((100 * side * limit) / value) / 100)} of play.`,
  });
};

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Air that is left under the front edge of the rear box; common practice, no source. */
const FLOOR_AIR = 0.5;
/** From here on one band of felt does not close the gap. */
const WIDE = 2.5;

/**
 * floor-scrape: the air between the floors, less what the play of the rails and the sag of the tailboard take. The trade
 * reckons the play of the rails over the whole stack; where the keepers leave so much more that the sole, tipped about
 * its front edge, dips deeper, that counts.
 */
function floorScrape(build: Build, { rear }: Boxes, guide: Guide, { sag }: Bent): readonly Finding[] {
  const { side, above, front: sole, length } = guide;
  const floor = spansOf(build, 'C2F').length > 0 ? 'C2F' : 'F4';
  const air = spanOf(build, 'R2F').y[0] - spanOf(build, floor).y[1];
  const box = rear.front.least;
  const dip = Math.max(side * (holderSeat(build) - box), above * (sole - box)) / length;
  const value = air - dip - sag;
  const needed = Math.ceil((air + FLOOR_AIR - value) * 10 - 1e-6) / 10;
  return unless(value >= FLOOR_AIR - ROUNDING, {
    rule: 'floor-scrape',
    level: 'error',
    value,
    limit: FLOOR_AIR,
    unit: 'mm',
    about: 'workshop.slideClearance',
    message: `The front edge of the rear box drags on the floor: of ${mm(tenth(air))} between them the rails' play takes ${mm(tenth(dip))} and the sag ${mm(tenth(sag))}.`,
    hint:
      needed <= WIDE
        ? `Write slideClearance: ${mm(needed)}, or fit the rails closer.`
        : 'Fit the rails closer, and use thicker sheet or lighter holders: the sag goes with the cube of the thickness.',
  });
}

/** Play of the bolt in its slot, both ends together; solid behind the slot. Common practice, no source. */
const SLOT_PLAY = 2;
const SLOT_WEB = 12;
/** Run past the nearest that is given where the slide has it: a share of the focal length. */
const RESERVE = 0.05;

/** slot-length: the slot through both plies, against travel, reserve and bolt; where the bolt stands in it; and the solid behind it. */
const slotLength = ({ focus, lens, builtFor }: Design, build: Build, { slack }: Boxes): readonly Finding[] => {
  // boxes that stand, and a focus that lies beyond their slide: reach-infinity says so
  if (builtFor && focus.pastInfinity < 0) return [];
  const stem = spanOf(build, 'lock-bolt');
  const bolt = stem.x[1] - stem.x[0];
  const middle = { x: (stem.x[0] + stem.x[1]) / 2, y: 0, z: (stem.z[0] + stem.z[1]) / 2 };
  const plies = ['T1U', 'T1L'].flatMap((id) => {
    const part = partOf(build, id);
    return part.placements.map((place) => {
      const hole = openingRound(part, place, 'y', middle);
      return { slot: hole ? boxOf(hole) : { bottom: middle.z, top: middle.z }, rear: spanOf(build, id).z[1] };
    });
  });
  // the bolt runs in both plies: it ends where the shorter one does
  const from = Math.max(...plies.map(({ slot }) => slot.bottom));
  const to = Math.min(...plies.map(({ slot }) => slot.top));
  const web = Math.min(...plies.map(({ slot, rear }) => rear - slot.top));
  const travel = travelOf(build);
  const reserve = focus.pastNearest ?? Math.max(0, Math.min(slack, RESERVE * lens.focalLength));
  const needed = travel + reserve + bolt + SLOT_PLAY;
  const ahead = middle.z - bolt / 2 - from;
  const rule = { rule: 'slot-length', level: 'error', unit: 'mm' } as const;
  const short = unless(to - from >= needed - ROUNDING, {
    ...rule,
    value: to - from,
    limit: needed,
    about: 'focus.pastNearest',
    message: `The lock's slot is ${mm(tenth(to - from))} long; travel, reserve and bolt take ${mm(tenth(needed))}: the knob stops before infinity.`,
    hint: `File the slot ${mm(tenth(needed - (to - from)))} longer at its front end.`,
  });
  const behind = to - (middle.z + bolt / 2 + travel + reserve);
  const end = Math.min(ahead, behind);
  return [
    ...short,
    ...unless(short.length > 0 || end >= -ROUNDING, {
      ...rule,
      value: end,
      limit: 0,
      about: 'focus.pastInfinity',
      message: `The lock's slot lies ${mm(tenth(-end))} too far ${ahead < behind ? 'back' : 'forward'}: its bolt stops the slide short of ${ahead < behind ? 'infinity' : 'the nearest focus'}.`,
      hint: `File the slot ${mm(tenth(SLOT_PLAY / 2 - end))} longer at its ${ahead < behind ? 'front' : 'rear'} end.`,
    }),
    ...unless(web >= SLOT_WEB - ROUNDING, {
      ...rule,
      value: web,
      limit: SLOT_WEB,
      about: 'focus.pastNearest',
      message: `Behind the lock's slot ${mm(tenth(web))} of wood are left: the tailboard splits there.`,
      hint: `Take ${mm(tenth(SLOT_WEB - web))} off pastNearest.`,
    }),
  ];
};

/** Weights, guide and boxes are measured once for all of their rules. */
export const foot: ProofRule = (design, build) => {
  const states = weighed(build);
  // packed for the road the camera stands on no tripod
  const onTripod = states.filter(({ setup }) => setup.name !== ON_THE_ROAD);
  const bend = bent(design, build, onTripod);
  const guide = guideOf(build);
  const boxes = boxesIn(build);
  return [
    ...floorScrape(build, boxes, guide, bend),
    ...yawRegister(design, guide),
    ...sagTilt(design, bend),
    ...balance(build, onTripod),
    ...massTripod(states),
    ...slotLength(design, build, boxes),
  ];
};
