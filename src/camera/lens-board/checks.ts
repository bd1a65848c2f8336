import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import type { LensBoard } from './size.js';

/** What the board gives a lens to pass, and its retainers to hold: common practice, no source. */
const PASSING = 2;
const HELD_BY = 5;
const LET_GO = 1;

/** board-out: the board must come out with the lens on it. */
export const boardOut = ({ opening, insideWidest }: LensBoard): readonly Finding[] =>
  unless(opening - insideWidest >= PASSING - ROUNDING, {
    rule: 'board-out',
    level: 'error',
    value: opening - insideWidest,
    limit: PASSING,
    unit: 'mm',
    about: 'lens.barrel',
    message: `To change boards the lens would have to be dismounted: behind the board it is ${mm(tenth(insideWidest))} wide, and the opening ${mm(tenth(opening))}.`,
    hint: `Make the opening ${mm(tenth(PASSING - opening + insideWidest))} wider, or measure the widest part behind the board again.`,
  });

/** board-held: the retainers hold the board on two sides, and let it go when both are drawn. */
export const boardHeld = ({ overlap, draw }: LensBoard): readonly Finding[] => [
  ...unless(overlap >= HELD_BY - ROUNDING, {
    rule: 'board-held',
    level: 'error',
    value: overlap,
    limit: HELD_BY,
    unit: 'mm',
    message: `The retainers lap over the lens board by ${mm(tenth(overlap))}: it falls out when the camera tips.`,
    hint: `Set them ${mm(tenth(HELD_BY - overlap))} further in.`,
  }),
  ...unless(draw >= overlap + LET_GO - ROUNDING, {
    rule: 'board-held',
    level: 'error',
    value: draw,
    limit: overlap + LET_GO,
    unit: 'mm',
    message: `The retainers can be drawn ${mm(tenth(draw))} and lap over the board by ${mm(tenth(overlap))}: it does not come out.`,
    hint: `Cut their slots ${mm(tenth(overlap + LET_GO - draw))} longer.`,
  }),
];

/** board-way: one corner of the board is cut, and a block on the panel fills it, so that it goes in one way up. */
export function boardWay({ board }: LensBoard, { parts }: Build): readonly Finding[] {
  const cut = parts.find(({ id }) => id === 'F6');
  const half = board / 2 - ROUNDING;
  const whole =
    cut?.kind === 'flat' ? cut.outline.filter(({ x, y }) => Math.min(Math.abs(x), Math.abs(y)) >= half) : [];
  const corners = parts.some(({ id }) => id === 'F10') ? 4 - whole.length : 0;
  return unless(corners === 1, {
    rule: 'board-way',
    level: 'warning',
    value: corners,
    limit: 1,
    unit: 'corners',
    message:
      'The lens board goes in more than one way up: the lens comes out turned, and its marks where they cannot be read.',
    hint: 'Cut one corner of the board and glue the cut-off to the panel.',
  });
}

/** nut-edge: the screws of clamp or flange, to the edge of the board that carries them. */
export function screwsToEdge({ screws, board, wood }: LensBoard): readonly Finding[] {
  const limit = Math.max(2 * SCREW, wood.ply.thickness);
  const value = board / 2 - Math.max(0, ...screws.places.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]));
  return unless(value >= limit - ROUNDING, {
    rule: 'nut-edge',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    about: 'lens.mount',
    message: `The screws that hold the lens stand ${mm(tenth(value))} from the edge of the lens board: the wood breaks out.`,
    hint: `Make the board ${mm(tenth(2 * (limit - value)))} wider, or put the screws on a smaller circle.`,
  });
}

/** M4, or a wood screw of 3 mm: the larger of the two. */
const SCREW = 4;

/** Whatever bears on board or plug must cover the hole. */
export const seatCovered = ({ disc, hole, plugHole, by, side }: LensBoard): readonly Finding[] =>
  coversHole(by, disc, (side === 'inside') === (by === 'ring') ? hole : plugHole);

const coversHole = (by: LensBoard['by'], disc: number, hole: number): readonly Finding[] =>
  unless(disc - hole >= 4 - ROUNDING, {
    rule: 'lens-seat-known',
    level: 'error',
    value: (disc - hole) / 2,
    limit: 2,
    unit: 'mm',
    about: by === 'flange' ? 'lens.flange.diameter' : 'lens.barrel',
    message: `The ${by === 'clamp' ? 'clamp' : by} is ${mm(tenth(disc))} across and the hole that the lens passes ${mm(tenth(hole))}: there is nothing left to seat on.`,
    hint:
      by === 'ring'
        ? 'Give the barrel’s diameter at the thread, and the front or rear diameter of what must pass the hole.'
        : 'Measure the flange, or mount the lens from the other side.',
  });

/** A ring must reach the thread behind the wood, and the lens must have a shoulder that does not fall through the hole. */
export const ringHolds = ({ thread, hole }: LensBoard): readonly Finding[] =>
  thread
    ? [
        ...unless(thread.reach >= thread.needed - ROUNDING, {
          rule: 'lens-seat-known',
          level: 'error',
          value: thread.reach,
          limit: thread.needed,
          unit: 'mm',
          about: 'lens.barrel',
          message: `The thread reaches ${mm(tenth(thread.reach))} from the lens seat; through board and plug the ring needs ${mm(tenth(thread.needed))} of it.`,
          hint: 'Use a thinner sheet, or hold the lens by a clamp.',
        }),
        ...unless(thread.shoulder - hole >= 2 - ROUNDING, {
          rule: 'lens-seat-known',
          level: 'warning',
          value: (thread.shoulder - hole) / 2,
          limit: 1,
          unit: 'mm',
          about: 'lens.barrel',
          message: `The lens is ${mm(tenth(thread.shoulder))} across where its shoulder should bear, the hole for its thread ${mm(tenth(hole))}: nothing holds it against the ring.`,
          hint: 'Measure the lens on both sides of its thread; where it has no shoulder, lay a washer under it.',
        }),
      ]
    : [];

/** Wood between the hole that the lens or its light passes and the screws that hold it; a wood screw's pilot needs less. */
export const screwsHold = ({ screws, hole, plugHole }: LensBoard): readonly Finding[] => {
  const [wide, limit] = screws.through ? [plugHole, 3] : [hole, 1];
  return screws.places
    .map(({ x, y }) => Math.sqrt(x * x + y * y) - screws.hole / 2 - wide / 2)
    .filter((web) => web < limit - ROUNDING)
    .slice(0, 1)
    .map((value) => ({
      rule: 'web-least',
      level: 'error',
      value,
      limit,
      unit: 'mm',
      about: 'lens.mount',
      message:
        value > 0
          ? `Between the hole for the lens and the screws that hold it ${mm(tenth(value))} of wood are left; they need ${mm(limit)}.`
          : 'The screws that hold the lens would stand in the hole that its light needs.',
      hint: 'Mount the lens from the other side of the board, or turn another ring for its flange.',
    }));
};

/** A clamp that is longer than the barrel behind the seat is a tunnel that the light leaves through. */
export const clampClear = ({ clampRoom }: LensBoard): readonly Finding[] =>
  clampRoom === null
    ? []
    : unless(clampRoom >= -ROUNDING, {
        rule: 'cone-clear',
        level: 'error',
        value: clampRoom,
        limit: 0,
        unit: 'mm',
        about: 'lens.barrel',
        message: `The lens ends inside its clamp, whose bore cuts ${mm(tenth(-clampRoom))} off the light on its way to the corners.`,
        hint: 'Hold the lens by a flange or a ring, or file the bore open towards the film.',
      });

export const lensBoardChecks = [
  clampClear,
  boardOut,
  boardHeld,
  boardWay,
  screwsToEdge,
  seatCovered,
  ringHolds,
  screwsHold,
];
