import type { Build } from '../assembly/build.js';
import type { Extent, PlacedBox } from '../assembly/extent.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { boxOf, openingRound, partOf } from '../assembly/measure.js';
import { placedIn } from '../assembly/placed-parts.js';
import { stands } from '../assembly/setups.js';
import type { Holder } from '../design/design.js';
import { mm, tenth } from '../units/print.js';
import { asUpright, exposing, heldIn, holderSeat, wholeHolder } from './landmarks.js';
import type { ProofRule } from './proof-rule.js';

/** How the holders lie on the seat, between the fences of the well, and how the rim keeps the light out. */

/** A holder where it lies in one of its set-ups, the well round it, all as with the back upright. */
interface Lying {
  readonly holder: Holder;
  readonly index: number;
  readonly held: Extent;
  readonly opening: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number };
  /** Inner faces of the fences at the sides and at the closed end. */
  readonly fences: { readonly left: number; readonly right: number; readonly closed: number };
  /** The fence at the open end: where it begins, and how high it stands above the seat; null where none is made. */
  readonly openFence: { readonly from: number; readonly height: number } | null;
  /** How far a spacer lifts the holder off the seat. */
  readonly lift: number;
}

/** The plates of the well, each in all of its places; what stands in a set-up is picked from them. */
function platesOfWell(build: Build) {
  const boxed = (id: string) => placedIn(build, id)?.boxes ?? [];
  const back = partOf(build, 'B1');
  const openings = back.placements.map((placement) => {
    const hole = openingRound(back, placement, 'z');
    const { left, right, bottom, top } = hole ? boxOf(hole) : { left: 0, right: 0, bottom: 0, top: 0 };
    return { placement, extent: { x: [left, right], y: [bottom, top], z: [0, 0] } } as const;
  });
  return { openings, sides: boxed('B3'), closed: boxed('B4'), open: boxed('fence-open') };
}

function lying(build: Build, plates: ReturnType<typeof platesOfWell>, holder: Holder, index: number): readonly Lying[] {
  const seat = holderSeat(build);
  const whole = wholeHolder(build, holder);
  return exposing(build, holder).flatMap((setup) => {
    const held = heldIn(whole, setup);
    const here = (boxes: readonly PlacedBox[]) =>
      boxes.filter(({ placement }) => stands(placement, setup)).map(({ extent }) => asUpright(extent, setup));
    const [opening] = here(plates.openings);
    if (held === undefined || opening === undefined) return [];
    const sides = here(plates.sides);
    const [fence] = here(plates.open);
    return [
      {
        holder,
        index,
        held,
        opening: { left: opening.x[0], right: opening.x[1], bottom: opening.y[0], top: opening.y[1] },
        fences: {
          left: Math.max(...sides.filter(({ x }) => x[1] < 0).map(({ x }) => x[1])),
          right: Math.min(...sides.filter(({ x }) => x[0] > 0).map(({ x }) => x[0])),
          closed: Math.max(...here(plates.closed).map(({ y }) => y[1])),
        },
        openFence: fence === undefined ? null : { from: fence.y[0], height: fence.z[1] - seat },
        lift: held.z[0] - seat,
      },
    ];
  });
}

/** Least rim of a holder on the seat: wood on wood that turns the light away; common practice, no source. */
const RIM = 10;

/** holder-rim: a holder over the opening, at its sides and at both ends. */
const holderRim = (places: readonly Lying[], imageLong: number) => {
  const rims = places.map(({ held, opening }) => ({
    side: Math.min(opening.left - held.x[0], held.x[1] - opening.right),
    closed: opening.bottom - held.y[0],
    open: held.y[1] - opening.top,
  }));
  const [first] = places;
  if (first === undefined) return [];
  const { holder, index, opening, held } = first;
  const least = (of: 'side' | 'closed' | 'open') => Math.min(...rims.map((rim) => rim[of]));
  const [side, closed, open] = [least('side'), least('closed'), least('open')];
  const end = Math.min(closed, open);
  const rim = { rule: 'holder-rim', level: 'error', limit: RIM, unit: 'mm' } as const;
  return [
    ...unless(side >= RIM - ROUNDING, {
      ...rim,
      value: side,
      about: `holders[${index}].width`,
      message: `The ${holder.name} lies ${mm(tenth(side))} on the seat at a side: it tips into the opening, or leaks.`,
      hint: `Make it ${mm(Math.ceil(opening.right - opening.left + 2 * RIM - ROUNDING))} wide or more.`,
    }),
    ...unless(end >= RIM - ROUNDING, {
      ...rim,
      value: end,
      about: `holders[${index}].${closed + open >= 2 * RIM ? 'closedEnd' : 'length'}`,
      message: `The ${holder.name} lies ${mm(tenth(end))} on the seat at its ${closed < open ? 'closed' : 'open'} end: it tips into the opening, or leaks.`,
      hint:
        closed + open >= 2 * RIM
          ? `Write closedEnd: ${mm(tenth((held.y[1] - held.y[0] - imageLong) / 2))}, so that both ends are alike.`
          : `Make it ${mm(Math.ceil(opening.top - opening.bottom + 2 * RIM - ROUNDING))} long or more.`,
    }),
  ];
};

/** Play a side that neither binds nor shifts the picture; common practice, no source. */
const PLAY = { least: 0.3, most: 0.6 };

/** well-fit: the widest holder between the long fences, and each holder before the fence at its closed end. */
const wellFit = (all: readonly (readonly Lying[])[]) => {
  const places = all.flat();
  const widths = places.map(({ held }) => held.x[1] - held.x[0]);
  const widest = places.filter((_, i) => (widths[i] ?? 0) >= Math.max(...widths) - ROUNDING);
  const sides = widest.flatMap(({ held, fences }) => [fences.right - held.x[1], held.x[0] - fences.left]);
  const ends = places.map(({ held, fences }) => held.y[0] - fences.closed);
  const least = Math.min(...sides, ...ends);
  const most = Math.max(...sides);
  const jams = least < PLAY.least - ROUNDING;
  return unless(places.length === 0 || (!jams && most <= PLAY.most + ROUNDING), {
    rule: 'well-fit',
    level: 'warning',
    value: jams ? least : most,
    limit: jams ? PLAY.least : PLAY.most,
    unit: 'mm a side',
    message: `The holder has ${mm(tenth(jams ? least : most))} of play a side in its well: it ${jams ? 'jams in damp weather' : 'sits off centre'}.`,
    hint: 'Set the fences against a dummy holder with 0.4 mm of card on each side.',
  });
};

/** Air between the fence at the open end and the dark slide that passes over it; common practice, no source. */
const UNDER_SLIDE = 0.3;
/** One layer of the board that slides run in: the lowest fence that can be made. */
const BOARD = 1.25;

/** fence-below-slide: the fence at the open end, as placed, under the slide of a holder. */
const fenceBelowSlide = ([first]: readonly Lying[]) => {
  if (first === undefined) return [];
  const { holder, index, openFence, lift } = first;
  // counted from the holder's face; where there is none, what the lowest one would stand at
  const height = openFence === null ? BOARD : openFence.height - lift;
  const limit = holder.slideDepth - UNDER_SLIDE;
  return unless(height <= limit + ROUNDING, {
    rule: 'fence-below-slide',
    level: 'error',
    value: height,
    limit,
    unit: 'mm',
    about: `holders[${index}].slideDepth`,
    message: `The dark slide of the ${holder.name} runs ${mm(holder.slideDepth)} behind its face: a fence of ${mm(tenth(height))} at the open end stops it, and without a fence light runs straight along the rim.`,
    hint: `Give the holder a face of ${mm(Math.ceil((height + UNDER_SLIDE) * 20 - ROUNDING) / 20)} or more ahead of its slide, and write it as slideDepth.`,
  });
};

/** The fence must stand above the joint that it shuts by so much, mm: as much as loosens in use, and a little more. */
const OVER_JOINT = 0.3;
/** What a loose joint opens by in use, mm; common practice, no source. A holder that ends nearer to the fence than this does not count as short. */
const OPENS = 0.2;
const SHORT = 10;

/**
 * raised-rim: a spacer under a holder lifts the joint between them to the fence at the open end, or above it; or a holder
 * ends far short of that fence, and what slants through the loose joint under its rim rises on the way, by similar
 * triangles.
 *
 *      |  holder        |                      | fence
 *      |________________|  .  .  .  .  .  .  . |
 *      .  .   spacer    |                      |
 *      opening ── rim ──┴──────── short ───────┴
 */
const raisedRim = ([first]: readonly Lying[]) => {
  if (first === undefined) return [];
  const { holder, index, openFence, lift, held, opening } = first;
  const height = openFence?.height ?? 0;
  const rule = { rule: 'raised-rim', level: 'warning', unit: 'mm' } as const;
  if (lift > ROUNDING && lift > height - OVER_JOINT + ROUNDING)
    return [
      {
        ...rule,
        value: lift,
        limit: height - OVER_JOINT,
        about: `holders[${index}].filmDepth`,
        message: `Light can run in along the rim of the ${holder.name}: its spacer lifts it by ${mm(tenth(lift))}, and the fence at the open end is ${mm(tenth(height))} high.`,
        hint: `Lay the dark cloth over the holder before you draw the slide; or make its face ${mm(tenth(lift))} thicker, so that it needs no spacer.`,
      },
    ];
  if (openFence === null) return [];
  const short = openFence.from - held.y[1];
  if (short <= SHORT) return [];
  const value = lift + OPENS * (1 + short / (held.y[1] - opening.top));
  return unless(value <= height + ROUNDING, {
    ...rule,
    value,
    limit: height,
    about: `holders[${index}].length`,
    message: `Light can slant in along the rim of the ${holder.name}: it ends ${mm(tenth(short))} short of the fence at the open end, which is only ${mm(tenth(height))} high.`,
    hint: `Glue a strip ${mm(tenth(short))} long to its open end, as thick as its face, so that it reaches the fence.`,
  });
};

/** Each holder is measured once, where it lies upright and lengthwise, for all the rules of the well. */
export const well: ProofRule = ({ holders, format }, build) => {
  const plates = platesOfWell(build);
  const all = holders.map((holder, i) => lying(build, plates, holder, i));
  return [
    ...all.flatMap((places) => holderRim(places, format.image.long)),
    ...wellFit(all),
    ...all.flatMap(fenceBelowSlide),
    ...all.flatMap(raisedRim),
  ];
};
