import { boxesOf, slidBox } from '../assembly/extent.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { stands } from '../assembly/setups.js';
import { airBetween, spanOf, spansOf } from '../assembly/span-of.js';
import { glassShift } from '../optics/depth.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import { asMade } from './spacer/size.js';
import type { WholeRule } from './whole-rule.js';

/** What the builder's own holders ask of the seat, the well and the way of the dark slide. */

/** register: where the glass stands as it is really made, against the film of each holder as it is really held. */
const register: WholeRule = (_design, { spacers, holders, objects, optics }) => {
  const { effectiveDepth, packing } = objects.groundGlassFrame;
  const limit = optics.registerTolerance;
  return spacers.flatMap((spacer, i) => {
    const film = holders[i]?.filmDepth ?? 0;
    const glass = effectiveDepth - packing.remainder + (spacer.under === 'glass' ? asMade(spacer) : 0);
    const off = glass - film - (spacer.under === 'holder' ? asMade(spacer) : 0);
    // a spacer that is out by itself says so itself, and so does a glass that cannot reach its depth
    const known = Math.abs(spacer.made.remainder) > limit + ROUNDING || packing.thickness < -ROUNDING;
    return unless(known || Math.abs(off) <= limit + ROUNDING, {
      rule: 'register',
      level: 'error',
      value: off,
      limit,
      unit: 'mm',
      about: 'shims',
      message: `Sharp on the glass is soft in the picture: with ${spacer.holder} the glass stands ${mm(Math.abs(thousandth(off)))} ${off > 0 ? 'behind' : 'ahead of'} the film, ${plainNumber(Math.abs(off) / limit, 1)} times the tolerance of ${mm(thousandth(limit))}.`,
      hint: `Add a shim of ${mm(Math.max(0.05, Math.round(Math.abs(off) * 20) / 20))} to the list, or another sheet to the stock.`,
    });
  });
};

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/** Least rim of a holder on the seat: wood on wood that turns the light away; common practice, no source. */
const RIM = 10;

/** holder-rim: each holder over the opening, at its sides and at both ends. */
const holderRim: WholeRule = (design, { objects }) => {
  const { opening } = objects.back;
  return objects.holders.flatMap(({ name, width, closedExtent, openExtent }, i) => {
    const side = (width - opening.width) / 2;
    const [closed, open] = [closedExtent - opening.height / 2, openExtent - opening.height / 2];
    const end = Math.min(closed, open);
    const rim = { rule: 'holder-rim', level: 'error', limit: RIM, unit: 'mm' } as const;
    return [
      ...unless(side >= RIM - ROUNDING, {
        ...rim,
        value: side,
        about: `holders[${i}].width`,
        message: `The ${name} lies ${mm(tenth(side))} on the seat at each side: it tips into the opening, or leaks.`,
        hint: `Make it ${mm(Math.ceil(opening.width + 2 * RIM))} wide or more.`,
      }),
      ...unless(end >= RIM - ROUNDING, {
        ...rim,
        value: end,
        about: `holders[${i}].${closed + open >= 2 * RIM ? 'closedEnd' : 'length'}`,
        message: `The ${name} lies ${mm(tenth(end))} on the seat at its ${closed < open ? 'closed' : 'open'} end: it tips into the opening, or leaks.`,
        hint:
          closed + open >= 2 * RIM
            ? `Write closedEnd: ${mm(tenth((closedExtent + openExtent - design.format.image.long) / 2))}, so that both ends are alike.`
            : `Make it ${mm(Math.ceil(opening.height + 2 * RIM))} long or more.`,
      }),
    ];
  });
};

/** Widths that differ by less share one well; play a side that neither binds nor shifts the picture. Common practice, no source. */
const WIDTHS_DIFFER = 1;
const PLAY = { least: 0.3, most: 0.6 };

/** well-fit: a holder that is narrower than the well must be kept in the middle by its pins. */
const wellFit: WholeRule = (design, { objects }) => {
  const { holderWidth, wellPlay } = objects.back;
  return [
    ...design.holders.flatMap(({ name, width, locating }, i) =>
      unless(holderWidth - width <= WIDTHS_DIFFER + ROUNDING || locating === 'pins', {
        rule: 'well-fit',
        level: 'warning',
        value: holderWidth - width,
        limit: WIDTHS_DIFFER,
        unit: 'mm',
        about: `holders[${i}].locating`,
        message: `The ${name} is ${mm(tenth(holderWidth - width))} narrower than the widest holder, whose well it shares, and has no pins: it sits off centre, and so does the picture.`,
        hint: `Glue a strip of ${mm(tenth((holderWidth - width) / 2))} to each of its sides, or bore it for the seat pins and write locating: pins.`,
      }),
    ),
    ...unless(wellPlay >= PLAY.least - ROUNDING && wellPlay <= PLAY.most + ROUNDING, {
      rule: 'well-fit',
      level: 'warning',
      value: wellPlay,
      limit: wellPlay < PLAY.least ? PLAY.least : PLAY.most,
      unit: 'mm a side',
      message: `The holder has ${mm(wellPlay)} of play a side in its well: it ${wellPlay < PLAY.least ? 'jams in damp weather' : 'sits off centre'}.`,
      hint: 'Set the fences against a dummy holder with 0.4 mm of card on each side.',
    }),
  ];
};

/** Air between the fence at the open end and the dark slide that passes over it; common practice, no source. */
const UNDER_SLIDE = 0.3;
/** One layer of the board that slides run in: the lowest fence that can be made. */
const BOARD = 1.25;

/** fence-below-slide: the fence at the open end, as placed, under the slide of each holder. */
const fenceBelowSlide: WholeRule = ({ holders }, _camera, build) => {
  const [fence] = spansOf(build, 'fence-open');
  const height = fence === undefined ? BOARD : fence.z[1] - fence.z[0];
  return holders.flatMap(({ name, slideDepth }, i) =>
    unless(height <= slideDepth - UNDER_SLIDE + ROUNDING, {
      rule: 'fence-below-slide',
      level: 'error',
      value: height,
      limit: slideDepth - UNDER_SLIDE,
      unit: 'mm',
      about: `holders[${i}].slideDepth`,
      message: `The dark slide of the ${name} runs ${mm(slideDepth)} behind its face: a fence of ${mm(height)} at the open end stops it, and without a fence light runs straight along the rim.`,
      hint: `Give the holder a face of ${mm(Math.ceil((height + UNDER_SLIDE) * 20 - ROUNDING) / 20)} or more ahead of its slide, and write it as slideDepth.`,
    }),
  );
};

/** The fence must stand above the joint that it shuts by so much, mm: as much as loosens in use, and a little more. */
const OVER_JOINT = 0.3;

/** raised-rim: a spacer under a holder lifts the joint between them to the fence at the open end, or above it. */
const raisedRim: WholeRule = (_design, { spacers }, build) => {
  const [fence] = spansOf(build, 'fence-open');
  const height = fence === undefined ? 0 : fence.z[1] - fence.z[0];
  return spacers.flatMap((spacer, i) =>
    unless(spacer.under !== 'holder' || asMade(spacer) <= height - OVER_JOINT + ROUNDING, {
      rule: 'raised-rim',
      level: 'warning',
      value: asMade(spacer),
      limit: height - OVER_JOINT,
      unit: 'mm',
      about: `holders[${i}].filmDepth`,
      message: `Light can run in along the rim of the ${spacer.holder}: its spacer lifts it by ${mm(tenth(asMade(spacer)))}, and the fence at the open end is ${mm(height)} high.`,
      hint: `Lay the dark cloth over the holder before you draw the slide; or make its face ${mm(tenth(asMade(spacer)))} thicker, so that it needs no spacer.`,
    }),
  );
};

/** What a loose joint opens by in use, mm; common practice, no source. A holder that ends nearer to the fence than this does not count as short. */
const OPENS = 0.2;
const SHORT = 10;

/**
 * raised-rim: a holder that ends far short of the fence at the open end. What slants through the loose joint under its rim
 * rises on the way to the fence, by similar triangles.
 *
 *      |  holder        |                      | fence
 *      |________________|  .  .  .  .  .  .  . |
 *      .  .   spacer    |                      |
 *      opening ── rim ──┴──────── short ───────┴
 */
const shortRim: WholeRule = (_design, { spacers, objects: { back, holders } }, build) => {
  const [fence] = spansOf(build, 'fence-open');
  const height = fence === undefined ? 0 : fence.z[1] - fence.z[0];
  return holders.flatMap(({ name, openExtent }, i) => {
    const spacer = spacers[i];
    const lift = spacer?.under === 'holder' ? asMade(spacer) : 0;
    const short = back.openExtent - openExtent;
    if (short <= SHORT || lift > height - OVER_JOINT) return [];
    const value = lift + OPENS * (1 + short / (openExtent - back.opening.height / 2));
    return unless(value <= height + ROUNDING, {
      rule: 'raised-rim',
      level: 'warning',
      value,
      limit: height,
      unit: 'mm',
      about: `holders[${i}].length`,
      message: `Light can slant in along the rim of the ${name}: it ends ${mm(tenth(short))} short of the fence at the open end, which is only ${mm(height)} high.`,
      hint: `Glue a strip ${mm(tenth(short))} long to its open end, as thick as its face, so that it reaches the fence.`,
    });
  });
};

/** register: a lock rib finds its groove in the back; on a spacer it would stand on bare wood. */
const ribOnSpacer: WholeRule = ({ holders }, { spacers }) =>
  holders.flatMap(({ name, rib, filmDepth }, i) =>
    unless(rib === null || spacers[i]?.under !== 'holder', {
      rule: 'register',
      level: 'error',
      value: rib?.height ?? 0,
      limit: 0,
      unit: 'mm',
      about: 'groundGlass.depth',
      message: `The ${name} has a lock rib and would lie on a spacer, which has no groove: it rocks on its rib, and the film is ${mm(rib?.height ?? 0)} out.`,
      hint: `Write groundGlass.depth: ${mm(filmDepth)}; then this holder needs no spacer.`,
    }),
  );

/** A dark slide is so much wider than the image, and so thick: section 13 of the camera's description. */
const SLIDE = { wider: 12, thickness: 1 };

/** slide-path: nothing stands where the dark slide comes out, in the positions in which it is drawn. */
const slidePath: WholeRule = ({ format, holders: typed }, { objects, settingOut: rod }, build) => {
  const boxes = build.parts.flatMap((part) =>
    boxesOf(part).map(({ placement, extent }) => ({ id: part.id, placement, extent })),
  );
  return objects.holders.flatMap(({ id, name, seat, stance, closedExtent, openExtent }, i) => {
    const half = (format.image.short + SLIDE.wider) / 2;
    const needed = closedExtent + openExtent;
    const face = seat + stance.behindSeat + (typed[i]?.slideDepth ?? 0);
    return build.setups
      .filter((setup) => setup.holder === name && !setup.focusing)
      .flatMap((setup) => {
        const way: readonly [number, number] = [openExtent, openExtent + needed];
        const across: readonly [number, number] = [-half, half];
        // upright it comes out upwards, lengthwise to the left
        const upright = setup.orientation === 'upright';
        const lane = upright ? { x: across, y: way } : { x: [-way[1], -way[0]] as const, y: across };
        const anywhere = { ...lane, z: [-Infinity, Infinity] as const };
        const inLane = boxes.filter(
          (box) => airBetween(anywhere, box.extent) < -ROUNDING && box.id !== id && stands(box.placement, setup),
        );
        const free = [0, rod.travel].flatMap((rear) => {
          const path = { ...lane, z: [face + rear, face + rear + SLIDE.thickness] as const };
          return inLane
            .map((box) => slidBox(box, rear))
            .filter((other) => airBetween(path, other) < -ROUNDING)
            .map((other) => Math.max(0, upright ? other.y[0] - openExtent : -other.x[1] - openExtent));
        });
        const value = Math.min(needed, ...free);
        return unless(value >= needed - ROUNDING, {
          rule: 'slide-path',
          level: 'error',
          value,
          limit: needed,
          unit: 'mm',
          about: `holders[${i}].slideDepth`,
          message: `${setup.name}: the dark slide can be drawn ${mm(tenth(value))} and is ${mm(tenth(needed))} long.`,
          hint: 'Measure slideDepth again: from the holder’s face to the slide.',
        });
      });
  });
};

/** slide-lifts-holder: what takes the pull of the slide, 5 to 10 N, where neither pins nor a lock rib do. */
const slideLiftsHolder: WholeRule = ({ holders, defaulted }) =>
  holders.flatMap(({ name, locating }, i) =>
    unless(locating !== 'well', {
      rule: 'slide-lifts-holder',
      level: 'warning',
      value: 0,
      limit: 1,
      unit: 'pins or ribs',
      about: defaulted.includes('holders') ? 'holders' : `holders[${i}].locating`,
      message: `Nothing but the cords keeps the ${name} down: drawing its slide pulls it out of the well and fogs the sheet.`,
      hint: 'Write its lock rib, rib: { fromAxis, width, height }, or bore it for the seat pins and write locating: pins. Until then hold it down with the other hand.',
    }),
  );

/** Air under what hangs over the tailboard; common practice, no source. */
const OVER_KEEPERS = 3;

/** holder-clears: each holder in the positions in which it is used, over the keepers. */
const holderClears: WholeRule = (_design, { objects }, build) => {
  const keepers = spanOf(build, 'T3').y[1];
  return objects.holders.flatMap(({ id, name }, i) => {
    const value = spanOf(build, id).y[0] - keepers;
    return unless(value >= OVER_KEEPERS - ROUNDING, {
      rule: 'holder-clears',
      level: 'error',
      value,
      limit: OVER_KEEPERS,
      unit: 'mm',
      about: `holders[${i}].closedEnd`,
      message: `The ${name} hangs ${mm(tenth(value))} above the keepers in one of the positions in which it is used: it fouls the tailboard.`,
      hint: `Shorten its closed end or its width by ${mm(tenth(OVER_KEEPERS - value))}.`,
    });
  });
};

/** tank-depth: what a caliper reads on a holder with a window, for the design file has the depth at which it works. */
const tankDepth: WholeRule = ({ holders, groundGlass }) =>
  holders.flatMap(({ name, window, filmDepth }, i) => {
    if (window === null) return [];
    const shift = glassShift(window.thickness, groundGlass.refractiveIndex);
    return [
      {
        rule: 'tank-depth',
        level: 'note' as const,
        value: filmDepth + shift,
        limit: filmDepth,
        unit: 'mm',
        about: `holders[${i}].filmDepth`,
        message: `Through its window of ${mm(window.thickness)} the ${name} works at ${mm(filmDepth)}: its sheet must lie ${mm(thousandth(filmDepth + shift))} behind its face.`,
        hint: `If ${mm(filmDepth)} is what you measured from face to sheet, write filmDepth: ${mm(thousandth(filmDepth - shift))}.`,
      },
    ];
  });

/** scale-sense: the index line of the deepest holder must still lie on the sole. */
const indexRoom: WholeRule = ({ holders }, { focusScale }) => {
  const deepest = holders.reduce((most, h) => (h.filmDepth > most.filmDepth ? h : most));
  return unless(focusScale.room >= LINE_ROOM - ROUNDING, {
    rule: 'scale-sense',
    level: 'warning',
    value: focusScale.room,
    limit: LINE_ROOM,
    unit: 'mm',
    about: `holders[${holders.indexOf(deepest)}].filmDepth`,
    message: `The focus scale cannot be read with the ${deepest.name}: its index line falls ${mm(tenth(-focusScale.room))} behind the sole.`,
    hint: `Glue a strip of ${mm(Math.ceil(LINE_ROOM - focusScale.room + 3))} to the sole’s rear edge and carry the line over.`,
  });
};

/** Wood behind the last index line; a choice of ours. */
const LINE_ROOM = 2;

export const seatRules: readonly WholeRule[] = [
  register,
  holderRim,
  wellFit,
  fenceBelowSlide,
  raisedRim,
  shortRim,
  ribOnSpacer,
  slidePath,
  slideLiftsHolder,
  holderClears,
  tankDepth,
  indexRoom,
];
