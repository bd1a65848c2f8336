import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import { type Back, CORNER_CLIP, LEAST_WEB } from './size.js';

export const backSquare = ({ ringSlip }: Back): readonly Finding[] =>
  unless(ringSlip >= 0.2 - ROUNDING && ringSlip <= 0.5 + ROUNDING, {
    rule: 'back-square',
    level: 'error',
    value: ringSlip,
    limit: ringSlip < 0.2 ? 0.2 : 0.5,
    unit: 'mm a side',
    message: `The turning ring slips ${mm(ringSlip)} a side in the standard: it ${ringSlip < 0.2 ? 'binds' : 'rattles'}.`,
  });

/** Narrowest side of the ring: across the long side of the opening. */
export const ringWidth = ({ ringOutside, opening, wood }: Back): readonly Finding[] => {
  const value = (ringOutside - opening.height) / 2;
  const limit = Math.max(6, 1.5 * wood.ply.thickness);
  return unless(value >= limit - ROUNDING, {
    rule: 'ring-width',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    message: `The turning ring is ${mm(value)} wide at its ends: it snaps when it is glued.`,
  });
};

/** Land of the light trap between plate and standard. */
export const trapLand = ({ side, standardOpening }: Back): readonly Finding[] => {
  const sides = (side - standardOpening) / 2;
  // from the clipped corner's edge to the corner of the standard's opening, along the diagonal
  const corners = (side - CORNER_CLIP - standardOpening) / Math.SQRT2;
  return [
    ...unless(sides >= 10 - ROUNDING, {
      rule: 'trap-land',
      level: 'error',
      value: sides,
      limit: 10,
      unit: 'mm',
      message: `The back lies ${mm(sides)} on the standard: too little to turn the light away.`,
    }),
    ...unless(corners >= 8 - ROUNDING, {
      rule: 'trap-land',
      level: 'error',
      value: corners,
      limit: 8,
      unit: 'mm',
      message: `At its clipped corners the back lies ${mm(corners)} on the standard: light creeps in there.`,
      about: 'plywood.thickness',
      hint: 'A larger holder or a thicker sheet widens the back.',
    }),
  ];
};

/** Rim of each holder on the seat. */
export const holderRim = ({ narrowest, opening, closedExtent, openExtent }: Back): readonly Finding[] => {
  const sides = (narrowest - opening.width) / 2;
  const ends = Math.min(closedExtent, openExtent) - opening.height / 2;
  return [
    ...unless(sides >= 10 - ROUNDING, {
      rule: 'holder-rim',
      level: 'error',
      value: sides,
      limit: 10,
      unit: 'mm',
      about: 'holders',
      message: `The narrowest holder lies ${mm(sides)} on the seat at its sides: it tips into the opening, or leaks.`,
      hint: `Make it ${mm(opening.width + 20)} wide or more.`,
    }),
    ...unless(ends >= 10 - ROUNDING, {
      rule: 'holder-rim',
      level: 'error',
      value: ends,
      limit: 10,
      unit: 'mm',
      about: 'holders',
      message: `A holder lies ${mm(ends)} on the seat at an end: it tips into the opening, or leaks.`,
      hint: 'Make the holder longer, or give its closedEnd.',
    }),
  ];
};

/** Holders of unlike width are kept in the middle by the seat pins; without pins by packing strips. */
export const wellFit = ({ holderWidth, narrowest, places }: Back): readonly Finding[] =>
  unless(holderWidth - narrowest <= 1 + ROUNDING || places.pinned.length > 0, {
    rule: 'well-fit',
    level: 'warning',
    value: holderWidth - narrowest,
    limit: 1,
    unit: 'mm',
    about: 'holders',
    message: `The holders differ in width by ${mm(holderWidth - narrowest)} and have no seat pins: the narrow one sits off centre.`,
    hint: `Glue a strip of ${mm((holderWidth - narrowest) / 2)} to each side of the narrow one.`,
  });

export const fenceBelowSlide = ({ openFence }: Back): readonly Finding[] =>
  unless(openFence.layers > 0, {
    rule: 'fence-below-slide',
    level: 'error',
    value: 0,
    limit: 1.25,
    unit: 'mm',
    about: 'holders',
    message:
      'A holder’s dark slide lies so near to its face that no fence fits below it at the open end: light runs straight along the rim.',
    hint: 'A face of 1.55 mm or more under the slide leaves room for one layer of 1.25 mm board.',
  });

/** A long thin seat is not flat: long side of the opening over thickness at most 45 (common practice, no source). */
export const seatFlat = ({ opening, wood }: Back): readonly Finding[] =>
  unless(opening.height / wood.ply.thickness <= 45 + ROUNDING, {
    rule: 'seat-flat',
    level: 'warning',
    value: opening.height / wood.ply.thickness,
    limit: 45,
    unit: 'thicknesses',
    about: 'plywood.thickness',
    message: `The back’s opening is ${mm(opening.height)} long in wood of ${mm(wood.ply.thickness)} (${plainNumber(opening.height / wood.ply.thickness, 0)} times): a holder rocks, and one corner is soft.`,
    hint: `Use a sheet of ${mm(Math.ceil((opening.height / 45) * 10) / 10)} or more, or check the seat with a straight edge and scrape it true.`,
  });

/** Wood beside the grooves for lock ribs, towards the opening and towards the fence of the open end. */
export const grooveWeb = ({ grooves, opening, openExtent }: Back): readonly Finding[] =>
  grooves.flatMap(({ from, to }) => {
    const value = Math.min(from - opening.height / 2, openExtent - to);
    return unless(value >= LEAST_WEB - ROUNDING, {
      rule: 'web-least',
      level: 'error',
      value,
      limit: LEAST_WEB,
      unit: 'mm',
      about: 'holders',
      message: `The groove for a lock rib leaves ${mm(value)} of the seat beside it, towards the picture or towards the holder’s end: the back breaks there, or leaks.`,
      hint: 'Measure again from the middle of the picture to the middle of the rib, or write locating: pins and plane the rib off.',
    });
  });

/** A back with a tongue has no light trap to spare below: it is not used open end down. */
export const tongueNote = ({ tongue }: Back): readonly Finding[] =>
  unless(tongue === null, {
    rule: 'holder-clears',
    level: 'note',
    message:
      'The holder overhangs the back, which carries a tongue at the open end: use it upright, or with the open end left or right, never open end down.',
  });

export const backChecks = [
  backSquare,
  ringWidth,
  trapLand,
  holderRim,
  wellFit,
  fenceBelowSlide,
  seatFlat,
  grooveWeb,
  tongueNote,
];
