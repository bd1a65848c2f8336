import { ROUNDING, unless } from '../assembly/limit.js';
import { spanOf } from '../assembly/span-of.js';
import { boundsOf } from '../geometry/path.js';
import { depthOfFocus } from '../optics/depth.js';
import { kg, mm, tenth } from '../units/print.js';
import type { WholeRule } from './whole-rule.js';

/** How the camera slides and stands, and where it gives way. */

/** Air that is left under the front edge of the rear box; common practice, no source. */
const FLOOR_AIR = 0.5;
/** From here on one band of felt does not close the gap. */
const WIDE = 2.5;

/** floor-scrape: the air between the floors, less what the play of the rails and the sag of the tailboard take. */
const floorScrape: WholeRule = ({ workshop }, { settingOut: rod, sag, objects }, build) => {
  const { soleFront, soleRear } = objects.rearStandard;
  const air = spanOf(build, 'R2F').y[0] - spanOf(build, 'F4').y[1];
  const dip = (workshop.railPlay * (rod.rearLength.value + rod.stackBehindBoxes.value)) / (soleRear - soleFront);
  const value = air - dip - sag.sag;
  const needed = Math.ceil((air + FLOOR_AIR - value) * 10 - 1e-6) / 10;
  return unless(value >= FLOOR_AIR - ROUNDING, {
    rule: 'floor-scrape',
    level: 'error',
    value,
    limit: FLOOR_AIR,
    unit: 'mm',
    about: 'workshop.slideClearance',
    message: `The front edge of the rear box drags on the floor: of ${mm(tenth(air))} between them the rails' play takes ${mm(tenth(dip))} and the sag ${mm(tenth(sag.sag))}.`,
    hint:
      needed <= WIDE
        ? `Write slideClearance: ${mm(needed)}, or fit the rails closer.`
        : 'Fit the rails closer, and use thicker sheet or lighter holders: the sag goes with the cube of the thickness.',
  });
};

/** sag-tilt: the film's edge out of focus by the tilt of the loaded tailboard at full draw. */
const sagTilt: WholeRule = ({ lens, focus, plywood }, { sag, optics }) => {
  const limit = depthOfFocus(lens.maxAperture, optics.confusion, focus.nearest, lens.pupilMagnification) / 2;
  // the stiffness of a board goes with the cube of its thickness
  const thicker = plywood.thickness * Math.cbrt(sag.atFilmEdge / limit);
  return unless(sag.atFilmEdge <= limit + ROUNDING, {
    rule: 'sag-tilt',
    level: 'warning',
    value: sag.atFilmEdge,
    limit,
    unit: 'mm',
    about: 'plywood.thickness',
    message: `The top of the picture is soft at full draw: loaded, the tailboard bends and moves the film's edge by ${mm(tenth(sag.atFilmEdge))}; half the depth of focus is ${mm(tenth(limit))}.`,
    hint: `Rest the rear end of the tailboard on a second support, or use sheet of ${mm(Math.ceil(thicker * 2) / 2)}.`,
  });
};

/** A tripod head holds what leans no further out; common practice, no source. */
const LEANING = 40;

/** balance: the centre of gravity over the nut, closed and empty, and open and loaded. */
const balance: WholeRule = (_design, { balance: { closest, farthest }, objects }) => {
  const { tripod } = objects.tailboard;
  const [forward, behind] = [tripod - closest, farthest - tripod];
  const value = Math.max(Math.abs(forward), Math.abs(behind));
  const open = Math.abs(behind) >= Math.abs(forward);
  return unless(value <= LEANING + ROUNDING, {
    rule: 'balance',
    level: 'warning',
    value,
    limit: LEANING,
    unit: 'mm',
    about: 'holders',
    message: `${open ? 'Open and loaded' : 'Closed'}, the camera's weight lies ${mm(tenth(value))} ${(open ? behind > 0 : forward < 0) ? 'behind' : 'ahead of'} the tripod nut: the head droops, the tripod may tip.`,
    hint: `Let a leg of the tripod point to that side, and rest the ${open ? 'rear' : 'front'} end of the tailboard on a stick; a lighter holder helps most.`,
  });
};

/** mass-tripod: what the tripod has to carry. */
const massTripod: WholeRule = (_design, { balance: { loadedKg, massKg } }) => {
  // a light holder weighs less than the glass whose place it takes
  const most = Math.max(loadedKg, massKg);
  return [
    {
      rule: 'mass-tripod',
      level: 'note',
      value: most,
      unit: 'kg',
      message: `The tripod carries ${kg(Math.round(most * 100) / 100)}: the camera, its lens, and the ${loadedKg >= massKg ? 'heaviest holder' : 'ground glass'}.`,
      hint: `A head rated for ${kg(Math.ceil(2 * most))} holds it without creeping.`,
    },
  ];
};

/** The lock bolt and the play of its slot; solid behind the slot. */
const BOLT = 6;
const SLOT_PLAY = 2;
const SLOT_WEB = 12;
/** The slot's round ends are measured on chords. */
const CHORDS = 0.02;

/** slot-length: the slot as it is cut, against travel, reserve and bolt; and the solid behind it. */
const slotLength: WholeRule = (_design, { settingOut: rod }, build) => {
  const board = build.parts.find((part) => part.id === 'T1L');
  if (board?.kind !== 'flat') throw new Error('there is no lower ply of the tailboard in this build');
  const along = (loop: Parameters<typeof boundsOf>[0]) => {
    const { bottom, top } = boundsOf(loop);
    return { length: top - bottom, bottom, top };
  };
  const slot = board.holes.map(along).reduce((longest, hole) => (hole.length > longest.length ? hole : longest));
  const outline = along(board.outline);
  // which end of the own frame is the rear does not matter for the web: the front end has the whole box before it
  const web = Math.min(outline.top - slot.top, slot.bottom - outline.bottom);
  const needed = rod.travel + rod.reserve + BOLT + SLOT_PLAY;
  const rule = { rule: 'slot-length', level: 'error', unit: 'mm' } as const;
  return [
    ...unless(slot.length >= needed - CHORDS, {
      ...rule,
      value: slot.length,
      limit: needed,
      about: 'focus.pastNearest',
      message: `The lock's slot is ${mm(tenth(slot.length))} long; travel, reserve and bolt take ${mm(tenth(needed))}: the knob stops before infinity.`,
      hint: `File the slot ${mm(tenth(needed - slot.length))} longer at its front end.`,
    }),
    ...unless(web >= SLOT_WEB - CHORDS, {
      ...rule,
      value: web,
      limit: SLOT_WEB,
      about: 'focus.pastNearest',
      message: `Behind the lock's slot ${mm(tenth(web))} of wood are left: the tailboard splits there.`,
      hint: `Take ${mm(tenth(SLOT_WEB - web))} off pastNearest.`,
    }),
  ];
};

export const footRules: readonly WholeRule[] = [floorScrape, sagTilt, balance, massTripod, slotLength];
