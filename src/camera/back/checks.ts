import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { type Back, CORNER_CLIP, LEAST_WEB } from './size.js';

/** The ring turns in a square hole; slip a side that neither binds nor rattles. Common practice, no source. */
const SQUARE_WITHIN = 0.05;
const SLIP = { least: 0.2, most: 0.5 };

/** The ring in one of its places: over all of them its box would always be square. */
function ringOf(build: Build): { readonly width: number; readonly height: number } {
  const [ring] = spansOf(build, 'B2');
  if (ring === undefined) throw new Error('there is no turning ring in this build');
  return { width: ring.x[1] - ring.x[0], height: ring.y[1] - ring.y[0] };
}

/** back-square: the turning ring as it is cut, in the standard's opening. */
export function backSquare({ standardOpening }: Back, build: Build): readonly Finding[] {
  const { width, height } = ringOf(build);
  const askew = Math.abs(width - height);
  const slip = (standardOpening - Math.max(width, height)) / 2;
  const rule = { rule: 'back-square', level: 'error' } as const;
  return [
    ...unless(askew <= SQUARE_WITHIN + ROUNDING, {
      ...rule,
      value: askew,
      limit: SQUARE_WITHIN,
      unit: 'mm',
      message: `The turning ring is ${mm(tenth(width))} wide and ${mm(tenth(height))} high: the back goes in one way only, or binds at portrait.`,
      hint: `Make both ${mm(Math.min(width, height))}.`,
    }),
    ...unless(slip >= SLIP.least - ROUNDING && slip <= SLIP.most + ROUNDING, {
      ...rule,
      value: slip,
      limit: slip < SLIP.least ? SLIP.least : SLIP.most,
      unit: 'mm a side',
      message: `The turning ring has ${mm(slip)} a side in the standard: the back ${slip < SLIP.least ? 'binds' : 'rattles'}.`,
      hint: `Make the ring ${mm(tenth(standardOpening - 0.6))} square.`,
    }),
  ];
}

/** A narrower ring snaps when it is glued; common practice, no source. */
const leastRing = (ply: number): number => Math.max(6, 1.5 * ply);

/** ring-width: at its narrowest, beyond the long side of the opening. */
export function ringWidth({ opening, wood }: Back, build: Build): readonly Finding[] {
  const { width, height } = ringOf(build);
  const value = (Math.min(width, height) - Math.max(opening.width, opening.height)) / 2;
  const limit = leastRing(wood.ply.thickness);
  return unless(value >= limit - ROUNDING, {
    rule: 'ring-width',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    about: 'format.image',
    message: `The turning ring is ${mm(tenth(value))} wide at its ends: it snaps when it is glued.`,
    hint: `Make the rear box ${mm(tenth(2 * (limit - value)))} wider inside, or the image as much shorter.`,
  });
}

/** What the back must lie on the standard by, to turn the light away; common practice, no source. */
const LAND = { sides: 10, corners: 8 };

/** trap-land: at the sides, and at the clipped corners along the diagonal. */
export function trapLand({ side, standardOpening, wood, holderWidth }: Back): readonly Finding[] {
  const sides = (side - standardOpening) / 2;
  const corners = (side - CORNER_CLIP - standardOpening) / Math.SQRT2;
  const wider = Math.max(2 * (LAND.sides - sides), Math.SQRT2 * (LAND.corners - corners));
  const land = {
    rule: 'trap-land',
    level: 'error',
    unit: 'mm',
    about: 'plywood.thickness',
    hint: `Make the back ${mm(tenth(wider))} wider: sheet of ${mm(Math.ceil((wood.ply.thickness + wider / 2) * 10 - 1e-6) / 10)} or more does it, or a holder wider than ${mm(Math.ceil(holderWidth))}.`,
  } as const;
  return [
    ...unless(sides >= LAND.sides - ROUNDING, {
      ...land,
      value: sides,
      limit: LAND.sides,
      message: `The back lies ${mm(tenth(sides))} on the standard: too little to turn the light away.`,
    }),
    ...unless(corners >= LAND.corners - ROUNDING, {
      ...land,
      value: corners,
      limit: LAND.corners,
      message: `At its clipped corners the back lies ${mm(tenth(corners))} on the standard: light creeps in there.`,
    }),
  ];
}

/** A seat that is longer for its thickness is not flat; common practice, no source. */
const SEAT_SLENDER = 45;

/** seat-flat: the long side of the back's opening over the plate's thickness. */
export function seatFlat({ opening, wood }: Back): readonly Finding[] {
  const value = opening.height / wood.ply.thickness;
  return unless(value <= SEAT_SLENDER + ROUNDING, {
    rule: 'seat-flat',
    level: 'warning',
    value,
    limit: SEAT_SLENDER,
    unit: 'thicknesses',
    about: 'plywood.thickness',
    message: `The seat of the holders is ${plainNumber(value, 0)} times as long as it is thick, and bends: a holder rocks, and one corner is soft.`,
    hint: `Use sheet of ${mm(Math.ceil((opening.height / SEAT_SLENDER) * 10) / 10)} or more, or check the seat with a straight edge and scrape it true.`,
  });
}

/** What gives way when the cords pull. */
const SOFT = /felt|foam|velvet|cork/;

/** register-soft: nothing soft from the standard's front face to the rear. */
export function registerSoft(_own: Back, build: Build): readonly Finding[] {
  const standard = spanOf(build, 'R3').z[0];
  const soft = build.parts.filter(
    ({ id, name }) => SOFT.test(`${id} ${name}`) && spanOf(build, id).z[1] > standard + ROUNDING,
  );
  return unless(soft.length === 0, {
    rule: 'register-soft',
    level: 'error',
    value: soft.length,
    limit: 0,
    unit: 'soft parts',
    message: `${soft.map(({ name }) => name).join(', ')} gives way between holder and standard: focus changes with the pull of the cords.`,
    hint: 'Let the holder bear on bare wood, and stop light by a second turn instead.',
  });
}

/** holder-clears: a back with a tongue has no light trap to spare at the closed end. */
export const tongueNote = ({ tongue, side }: Back): readonly Finding[] =>
  tongue === null
    ? []
    : [
        {
          rule: 'holder-clears',
          level: 'note',
          value: tongue,
          limit: side / 2,
          unit: 'mm',
          message: `A holder reaches beyond the square back, which carries a tongue to ${mm(tenth(tongue))} from the axis.`,
          hint: 'Use the back with the open end up, left or right, never down: the tongue would meet the tailboard.',
        },
      ];

/** web-least: wood beside the grooves for lock ribs, towards the picture and towards the holder's open end. */
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
      message:
        value > 0
          ? `Beside the groove for a holder's lock rib ${mm(tenth(value))} of the seat are left: the back breaks there.`
          : "The groove for a holder's lock rib would run into the picture, or beyond the holder's open end.",
      hint: 'Measure again from the middle of the picture to the middle of the rib; or plane the rib off and write locating: pins.',
    });
  });

export const backChecks = [backSquare, ringWidth, trapLand, seatFlat, registerSoft, grooveWeb, tongueNote];
