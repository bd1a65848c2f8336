import type { Finding } from '../../model/finding.js';
import { mm } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import type { LensBoard } from './size.js';

/** The board must come out with the lens on it. */
export const boardOut = ({ opening, insideWidest }: LensBoard): readonly Finding[] =>
  unless(opening - insideWidest >= 2 - ROUNDING, {
    rule: 'board-out',
    level: 'error',
    value: opening - insideWidest,
    limit: 2,
    unit: 'mm',
    about: 'lens.barrel',
    message: `The opening for the lens board is ${mm(opening)}, the lens is ${mm(insideWidest)} wide inside: it would have to be dismounted to change boards.`,
    hint: 'Measure the widest part behind the board again.',
  });

/** The retainers hold the board on two sides, and let it go when both are drawn. */
export const boardHeld = ({ overlap, draw }: LensBoard): readonly Finding[] => [
  ...unless(overlap >= 5, {
    rule: 'board-held',
    level: 'error',
    value: overlap,
    limit: 5,
    unit: 'mm',
    message: `The retainers overlap the lens board by ${mm(overlap)}: it falls out when the camera tips.`,
  }),
  ...unless(draw >= overlap + 1, {
    rule: 'board-held',
    level: 'error',
    value: draw,
    limit: overlap + 1,
    unit: 'mm',
    message: `The retainers can be drawn by ${mm(draw)}, less than they overlap: the board would not come out.`,
  }),
];

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
    message: `The ${by === 'clamp' ? 'clamp' : by} is ${mm(disc)} across and the hole that the lens passes ${mm(hole)}: there is nothing left to seat on.`,
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
          message: `The thread reaches ${mm(thread.reach)} from the lens seat; through board and plug the ring needs ${mm(thread.needed)} of it.`,
          hint: 'Use a thinner sheet, or hold the lens by a clamp.',
        }),
        ...unless(thread.shoulder - hole >= 2 - ROUNDING, {
          rule: 'lens-seat-known',
          level: 'warning',
          value: (thread.shoulder - hole) / 2,
          limit: 1,
          unit: 'mm',
          about: 'lens.barrel',
          message: `The lens is ${mm(thread.shoulder)} across where its shoulder should bear, the hole for its thread ${mm(hole)}: nothing holds it against the ring.`,
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
      message: `Between the hole for the lens and the screws that hold it ${mm(value)} of wood are left; they need ${mm(limit)}.`,
      hint: 'Mount the lens from the other side of the board, or turn another ring for its flange.',
    }));
};

export const lensBoardChecks = [boardOut, boardHeld, seatCovered, ringHolds, screwsHold];
