import type { Build } from '../../assembly/build.js';
import { isHolderFace, isOfHolder } from '../../assembly/holders.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import {
  boxOf,
  cornersOf,
  type Loop,
  leastBetween,
  leastFrom,
  narrowestBand,
  openingRound,
  outlineOf,
  plateOf,
  type StandingOutline,
  sidesOf,
} from '../../assembly/measure.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import type { Back } from './size.js';

/** The set-up in which the back stands with its open end up. */
function upright({ setups }: Build) {
  const setup = setups.find(({ orientation }) => orientation === 'upright');
  return setup ? { setup } : {};
}

/** A loop turned with the back by so many quarters. */
function turned(loop: Loop, quarters: number): Loop {
  if (quarters === 0) return loop;
  if (quarters === 1) return loop.map(({ x, y }) => ({ x: -y, y: x }));
  return quarters === 2 ? loop.map(({ x, y }) => ({ x: -x, y: -y })) : loop.map(({ x, y }) => ({ x: y, y: -x }));
}

/** The hole of a plate round the axis; a plate of the back without one is a mistake of ours. */
function openingOf({ part, placement }: StandingOutline): Loop {
  const opening = openingRound(part, placement, 'z');
  if (!opening) throw new Error(`${part.id} has no opening round the axis`);
  return opening;
}

/** The ring turns in a square hole; slip a side that neither binds nor rattles. Common practice, no source. */
const SQUARE_WITHIN = 0.05;
const SLIP = { least: 0.2, most: 0.5, usual: 0.3 };

/** back-square: the turning ring as it is cut, in the standard's opening as it is cut, in all four turns. */
export function backSquare(_own: Back, build: Build): readonly Finding[] {
  const ring = outlineOf(build, 'B2', upright(build)).outline;
  const { width, height } = sidesOf(ring);
  const askew = Math.abs(width - height);
  const opening = openingOf(outlineOf(build, 'R3'));
  const slip = Math.min(...[0, 1, 2, 3].map((quarters) => leastBetween(turned(ring, quarters), opening)));
  const rule = { rule: 'back-square', level: 'error' } as const;
  return [
    ...unless(askew <= SQUARE_WITHIN + ROUNDING, {
      ...rule,
      value: askew,
      limit: SQUARE_WITHIN,
      unit: 'mm',
      message: `The turning ring is ${mm(tenth(width))} wide and ${mm(tenth(height))} high: the back goes in one way only, or binds at portrait.`,
      hint: `Make both ${mm(thousandth(Math.min(width, height)))}.`,
    }),
    ...unless(slip >= SLIP.least - ROUNDING && slip <= SLIP.most + ROUNDING, {
      ...rule,
      value: slip,
      limit: slip < SLIP.least ? SLIP.least : SLIP.most,
      unit: 'mm a side',
      message: `The turning ring has ${mm(thousandth(slip))} a side in the standard: the back ${slip < SLIP.least ? 'binds' : 'rattles'}.`,
      hint: `Make the ring ${mm(tenth(Math.max(width, height) + 2 * (slip - SLIP.usual)))} square.`,
    }),
  ];
}

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/** A narrower ring snaps when it is glued; common practice, no source. */
const leastRing = (ply: number): number => Math.max(6, 1.5 * ply);

/** ring-width: the narrowest wood between the ring's outline and its opening. */
export function ringWidth(_own: Back, build: Build): readonly Finding[] {
  const ring = plateOf(build, 'B2', upright(build));
  const value = narrowestBand(ring);
  const limit = leastRing(ring.high - ring.low);
  return unless(value >= limit - ROUNDING, {
    rule: 'ring-width',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    about: 'format.image',
    message: `The turning ring is ${mm(hundredth(value))} wide at its ends: it snaps when it is glued.`,
    hint: `Make the rear box ${mm(Math.ceil(20 * (limit - value) - ROUNDING) / 10)} wider inside, or the image as much shorter.`,
  });
}

/** Rounded down: what just misses its limit must not read as if it met it. */
const hundredth = (value: number): number => Math.floor(value * 100 + ROUNDING) / 100;

/** What the back must lie on the standard by, to turn the light away; common practice, no source. */
const LAND = { sides: 10, corners: 8 };
/** So far from its corners a side of the opening no longer feels the clipped corners of the back. */
const OFF_CORNER = 20;

/** trap-land: the back plate over the standard, round the room of the rear box, for every way the back is turned. */
export function trapLand({ holderWidth }: Back, build: Build): readonly Finding[] {
  // the fingers of the rear box end flush in the standard's notches: light sees the box's inner faces
  const [left, right] = [spanOf(build, 'R1L').x[1], spanOf(build, 'R1R').x[0]];
  const [bottom, top] = [spanOf(build, 'R2F').y[1], spanOf(build, 'R2T').y[0]];
  const room = cornersOf({ left, bottom, right, top });
  const standard = outlineOf(build, 'R3').outline;
  const { outline: back, low, high } = outlineOf(build, 'B1', upright(build));
  const edges = [standard, ...[0, 1, 2, 3].map((quarters) => turned(back, quarters))];
  const corners = Math.min(...edges.map((edge) => leastFrom(room, edge)));
  const inset = (a: number, b: number) => [a + OFF_CORNER, Math.max(a + OFF_CORNER, b - OFF_CORNER)] as const;
  const [x, y] = [inset(left, right), inset(bottom, top)];
  const straight: readonly Loop[] = [
    [x[0], bottom, x[1], bottom] as const,
    [x[0], top, x[1], top] as const,
    [left, y[0], left, y[1]] as const,
    [right, y[0], right, y[1]] as const,
  ].map(([x1, y1, x2, y2]) => [
    { x: x1, y: y1 },
    { x: x2, y: y2 },
  ]);
  const sides = Math.min(...straight.flatMap((side) => edges.map((edge) => leastBetween(side, edge))));
  const wider = Math.max(2 * (LAND.sides - sides), Math.SQRT2 * (LAND.corners - corners));
  const ply = high - low;
  const land = {
    rule: 'trap-land',
    level: 'error',
    unit: 'mm',
    about: 'plywood.thickness',
    hint: `Make the back ${mm(tenth(wider))} wider: sheet of ${mm(Math.ceil((ply + wider / 2) * 10 - 1e-6) / 10)} or more does it, or a holder wider than ${mm(Math.ceil(holderWidth))}.`,
  } as const;
  return [
    ...unless(sides >= LAND.sides - ROUNDING, {
      ...land,
      value: sides,
      limit: LAND.sides,
      message: `The back lies ${mm(hundredth(sides))} on the standard: too little to turn the light away.`,
    }),
    ...unless(corners >= LAND.corners - ROUNDING, {
      ...land,
      value: corners,
      limit: LAND.corners,
      message: `At its clipped corners the back lies ${mm(hundredth(corners))} on the standard: light creeps in there.`,
    }),
  ];
}

/** A seat that is longer for its thickness is not flat; common practice, no source. */
const SEAT_SLENDER = 45;

/** seat-flat: the long side of the back plate's opening over its thickness. */
export function seatFlat(_own: Back, build: Build): readonly Finding[] {
  const plate = outlineOf(build, 'B1', upright(build));
  const { width, height } = sidesOf(openingOf(plate));
  const long = Math.max(width, height);
  const value = long / (plate.high - plate.low);
  return unless(value <= SEAT_SLENDER + ROUNDING, {
    rule: 'seat-flat',
    level: 'warning',
    value,
    limit: SEAT_SLENDER,
    unit: 'thicknesses',
    about: 'plywood.thickness',
    message: `The seat of the holders is ${plainNumber(value, 1)} times as long as it is thick, and bends: a holder rocks, and one corner is soft.`,
    hint: `Use sheet of ${mm(Math.ceil((long / SEAT_SLENDER) * 10) / 10)} or more, or check the seat with a straight edge and scrape it true.`,
  });
}

/** What gives way when the cords pull. */
const SOFT = /felt|foam|velvet|cork/;

/** register-soft: nothing soft from the standard's front face to the rear; what is soft in a holder shuts out light and carries nothing. */
export function registerSoft(_own: Back, build: Build): readonly Finding[] {
  const standard = spanOf(build, 'R3').z[0];
  const soft = build.parts.filter(
    (part) =>
      (SOFT.test(part.id) || SOFT.test(part.name)) &&
      !isOfHolder(part) &&
      spanOf(build, part.id).z[1] > standard + ROUNDING,
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
export function tongueNote(_own: Back, build: Build): readonly Finding[] {
  const { bottom, top } = boxOf(outlineOf(build, 'B1', upright(build)).outline);
  return unless(top <= -bottom + ROUNDING, {
    rule: 'holder-clears',
    level: 'note',
    value: top,
    limit: -bottom,
    unit: 'mm',
    message: `A holder reaches beyond the square back, which carries a tongue to ${mm(tenth(top))} from the axis.`,
    hint: 'Use the back with the open end up, left or right, never down: the tongue would meet the tailboard.',
  });
}

/** Wood of a holder's own rim that closes a groove towards its open end; common practice, no source. */
const BEYOND_GROOVE = 3;

/** web-least: a groove for lock ribs under the holders that lie over it; beside it, like every other web, the proof looks. */
export function grooveWeb(_own: Back, build: Build): readonly Finding[] {
  const plate = plateOf(build, 'B1', upright(build));
  const { width } = sidesOf(openingOf(plate));
  const grooves = plate.holes.filter((hole) => sidesOf(hole).width > width).map((hole) => boxOf(hole).top);
  const open = Math.max(...holderEnds(build));
  return grooves.flatMap((top) =>
    unless(open - top >= BEYOND_GROOVE - ROUNDING, {
      rule: 'web-least',
      level: 'error',
      value: open - top,
      limit: BEYOND_GROOVE,
      unit: 'mm',
      about: 'holders',
      message:
        open > top
          ? `Beside the groove for a holder's lock rib ${mm(hundredth(open - top))} of the seat are left under the holder: light finds the groove.`
          : "The groove for a holder's lock rib would run beyond the holder's open end.",
      hint: 'Measure again from the middle of the picture to the middle of the rib; or plane the rib off and write locating: pins.',
    }),
  );
}

/** How far each holder reaches towards its open end, measured where it stands upright. */
const holderEnds = (build: Build): readonly number[] =>
  build.setups
    .filter(({ orientation, focusing }) => orientation === 'upright' && !focusing)
    .flatMap((setup) =>
      build.parts
        .filter(isHolderFace)
        .flatMap(({ id }) => spansOf(build, id, { setup }))
        .map(({ y }) => y[1]),
    );

export const backChecks = [backSquare, ringWidth, trapLand, seatFlat, registerSoft, grooveWeb, tongueNote];
