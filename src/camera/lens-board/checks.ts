import type { Build } from '../../assembly/build.js';
import type { Extent } from '../../assembly/extent.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import {
  boxOf,
  type Loop,
  openingRound,
  outlineOf,
  outlinesOf,
  platesOf,
  type StandingOutline,
  sidesOf,
} from '../../assembly/measure.js';
import { spansOf } from '../../assembly/span-of.js';
import { inside, type Point } from '../../geometry/path.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import { inWords } from '../cures.js';
import { type LensBoard, PASSING, type StandingPanel, unsawn } from './size.js';

/** What the retainers hold the board by: common practice, no source. */
const HELD_BY = 5;
const LET_GO = 1;
/** Air between the board and a retainer over it: with less it jams on the first damp day, with more the board rattles. */
const OVER = { least: 0.1, most: 0.5 };

/** The hole round the axis; a plate of the front without one is a mistake of ours. */
function openingOf({ part, placement }: StandingOutline): Loop {
  const opening = openingRound(part, placement, 'z');
  if (!opening) throw new Error(`${part.id} has no hole round the axis`);
  return opening;
}

/** What comes out with the board, the plug aside: the lens, what holds it, and the screws of that. */
const WITH_BOARD = /^(?:lens|clamp|pinch)-/;

/** The widest thing behind the board, and the opening that it must pass. */
function tightest(build: Build): { readonly opening: number; readonly widest: number } {
  const behind = outlineOf(build, 'F6').high;
  const things = build.parts
    .filter(({ id }) => WITH_BOARD.test(id))
    .flatMap(({ id }) => spansOf(build, id))
    .filter(({ z }) => z[1] > behind + ROUNDING);
  const opening = sidesOf(openingOf(outlineOf(build, 'F1')));
  // board and lens may be shifted in the opening, not turned: each way counts by itself
  const wide = (axis: 'x' | 'y') =>
    Math.max(0, ...things.map((thing) => thing[axis][1])) - Math.min(0, ...things.map((thing) => thing[axis][0]));
  const [across, up] = [
    { opening: opening.width, widest: wide('x') },
    { opening: opening.height, widest: wide('y') },
  ];
  return across.opening - across.widest <= up.opening - up.widest ? across : up;
}

/** board-out: the board must come out with the lens on it. */
export function boardOut(own: LensBoard, build: Build): readonly Finding[] {
  const { panel } = own;
  // an opening that cannot be sawn is told by board-in-opening, with what could be
  if (panel && unsawn(panel) !== null) return [];
  const tight = tightest(build);
  const value = tight.opening - tight.widest;
  return unless(value >= PASSING - ROUNDING, {
    rule: 'board-out',
    level: 'error',
    value,
    limit: PASSING,
    unit: 'mm',
    about: 'lens.barrel',
    message: `To change boards the lens would have to be dismounted: behind the board it is ${mm(tenth(tight.widest))} wide, and the opening ${mm(tenth(tight.opening))}.`,
    hint: panel
      ? inWords(cures(own, panel, tight.widest + PASSING))
      : `Make the opening ${mm(tenth(PASSING - value))} wider, or measure the widest part behind the board again.`,
  });
}

/** board-in-opening: a panel that was there before the lens has an opening that need not suit it. */
export function boardInOpening(own: LensBoard, build: Build): readonly Finding[] {
  const { opening, boardAsks, panel } = own;
  if (panel === null) return [];
  if (unsawn(panel) !== null) return [cannotBeSawn(own, panel, build)];
  const { value, because } = boardAsks;
  return unless(value <= opening + ROUNDING, {
    rule: 'board-in-opening',
    level: 'error',
    value: opening,
    limit: value,
    unit: 'mm',
    about: 'lens.mount',
    message: `The opening in the front panel is ${mm(tenth(opening))} wide${opening === panel.built ? ' as it was built' : ''}; this lens asks for ${mm(tenthMore(value))}: ${because}.`,
    hint: inWords([
      'mount the lens by a narrower clamp, flange or ring',
      // what stands behind the board must pass as well, or the next word would be board-out
      ...cures(own, panel, Math.max(value, tightest(build).widest + PASSING)),
    ]),
  });
}

/** An opening for which a panel that stands has no wood, or that it would have to grow wood for. */
function cannotBeSawn(own: LensBoard, panel: StandingPanel, build: Build): Finding {
  const { asked, most, side, built } = panel;
  const needs = Math.max(own.boardAsks.value, tightest(build).widest + PASSING);
  const tooWide = unsawn(panel) === 'too wide';
  const limit = tooWide ? most : (built ?? 0);
  return {
    rule: 'board-in-opening',
    level: 'error',
    value: asked.value,
    limit,
    unit: 'mm',
    about: 'lens.mount.opening',
    message: tooWide
      ? `An opening of ${mm(tenth(asked.value))} cannot be sawn into the front panel, ${mm(tenth(side ?? 0))} wide as it was built: beside the opening it must carry the edge of the lens board and the packing of the retainers, and with them ${mm(tenthLess(most))} is the widest.`
      : `The opening in the front panel is ${mm(tenth(limit))} wide as it was built, and no saw makes it ${mm(tenth(asked.value))}: plug and board for that would stand loose in it.`,
    hint:
      built !== null && needs <= built + ROUNDING
        ? `Leave out lens.mount.opening: this lens asks for ${mm(tenthMore(needs))}, and the opening is ${mm(tenth(built))} wide as it was built.`
        : needs <= most
          ? `Write lens.mount.opening: ${mm(tenthMore(needs))}, which is what this lens asks for.`
          : `This lens asks for ${mm(tenthMore(needs))}. ${inWords(cures(own, panel, needs))}`,
  };
}

/** What helps a lens for which the opening of a panel that stands is too small. */
function cures(own: LensBoard, panel: StandingPanel, needs: number): readonly string[] {
  const { most } = panel;
  const { side, otherSideNeeds } = own;
  // what was written and cannot be is no opening to start from
  const mayStay = unsawn(panel) === null;
  const opening = mayStay ? own.opening : (panel.built ?? own.opening);
  const other =
    side === 'inside' ? 'mount the lens from the front: side: front' : 'mount the lens from inside: side: inside';
  const ways = [
    ...(otherSideNeeds <= opening + ROUNDING
      ? [mayStay ? other : `${other}, and leave out lens.mount.opening`]
      : otherSideNeeds <= most && needs > most
        ? [`${other}, and ${sawnOut(otherSideNeeds, opening)}`]
        : []),
    ...(needs <= most ? [sawnOut(needs, opening)] : []),
  ];
  return ways.length > 0 ? ways : ['leave out builtFor: this lens needs a panel of its own'];
}

const sawnOut = (to: number, from: number): string =>
  `saw the opening out to ${mm(tenthMore(to))} and write lens.mount.opening: ${mm(tenthMore(to))}: board and retainers then stand ${mm(tenthMore((to - from) / 2))} farther out on each side`;

/** What is asked for is never rounded down. */
const tenthMore = (value: number): number => Math.ceil(value * 10 - ROUNDING) / 10;
const tenthLess = (value: number): number => Math.floor(value * 10 + ROUNDING) / 10;

/** A retainer as it lies: how far over the board, and how far its slots let it be drawn. */
interface Retainer {
  readonly side: 1 | -1;
  readonly lap: number;
  readonly draw: number;
}

function retainersOf(build: Build): readonly Retainer[] {
  const board = boxOf(outlineOf(build, 'F6').outline);
  const rods = ['retainer-screw', 'retainer-pin'].flatMap((id) => spansOf(build, id)).map(middleOf);
  return platesOf(build, 'F9').map(({ outline, holes }): Retainer => {
    const { left, right } = boxOf(outline);
    const side = left + right > board.left + board.right ? 1 : -1;
    const lap = side === 1 ? board.right - left : right - board.left;
    const draws = rods.flatMap((rod) =>
      holes
        .filter((hole) => inside(hole, rod))
        .map((hole) => {
          const slot = boxOf(hole);
          const round = (slot.top - slot.bottom) / 2;
          // drawn outwards, the inner end of the slot comes to the rod
          return (side === 1 ? rod.x - slot.left : slot.right - rod.x) - round;
        }),
    );
    return { side, lap, draw: Math.min(...draws, Infinity) };
  });
}

const middleOf = ({ x, y }: Extent): Point => ({ x: (x[0] + x[1]) / 2, y: (y[0] + y[1]) / 2 });

/** board-held: the retainers hold the board on two sides, and let it go when both are drawn. */
export function boardHeld(_own: LensBoard, build: Build): readonly Finding[] {
  const retainers = retainersOf(build);
  const heldOn = (side: 1 | -1) => Math.max(0, ...retainers.filter((one) => one.side === side).map(({ lap }) => lap));
  const overlap = Math.min(heldOn(1), heldOn(-1));
  const stuck = retainers.filter(({ lap, draw }) => draw < lap + LET_GO - ROUNDING);
  return [
    ...unless(overlap >= HELD_BY - ROUNDING, {
      rule: 'board-held',
      level: 'error',
      value: overlap,
      limit: HELD_BY,
      unit: 'mm',
      message: `The retainers lap over the lens board by ${mm(tenth(overlap))}: it falls out when the camera tips.`,
      hint: `Set them ${mm(tenth(HELD_BY - overlap))} further in.`,
    }),
    ...stuck.slice(0, 1).map(
      ({ lap, draw }): Finding => ({
        rule: 'board-held',
        level: 'error',
        value: draw,
        limit: lap + LET_GO,
        unit: 'mm',
        message: `The retainers can be drawn ${mm(tenth(draw))} and lap over the board by ${mm(tenth(lap))}: it does not come out.`,
        hint: `Cut their slots ${mm(tenth(lap + LET_GO - draw))} longer.`,
      }),
    ),
    ...airOver(build),
  ];
}

/** From the board's front to the retainers over it: the card under their packing. */
function airOver(build: Build): readonly Finding[] {
  const front = Math.min(...spansOf(build, 'F6').map(({ z }) => z[0]));
  const airs = spansOf(build, 'F9').map(({ z }) => front - z[1]);
  const [least, most] = [Math.min(...airs), Math.max(...airs)];
  const jams = least < OVER.least - ROUNDING;
  const value = jams ? least : most;
  return unless(airs.length === 0 || (!jams && most <= OVER.most + ROUNDING), {
    rule: 'board-held',
    level: 'error',
    value,
    limit: jams ? OVER.least : OVER.most,
    unit: 'mm',
    message: jams
      ? `The retainers have ${mm(hundredth(Math.max(0, value)))} of air over the lens board: they jam on it and cannot be drawn.`
      : `The retainers stand ${mm(hundredth(value))} off the lens board: it rattles, and tilts the lens.`,
    hint: 'Lay 0.2 mm of card under their packing strips, no less and no more.',
  });
}

const hundredth = (value: number): number => Math.round(100 * value) / 100;

/** board-way: one corner of the board is cut, and a block on the panel fills it, so that it goes in one way up. */
export function boardWay(_own: LensBoard, build: Build): readonly Finding[] {
  const board = outlineOf(build, 'F6').outline;
  const blocks = outlinesOf(build, 'F10').map(({ outline }) => meanOf(outline));
  const ways = [0, 1, 2, 3].filter((quarters) => !blocks.some((block) => inside(turned(board, quarters), block)));
  return unless(ways.length === 1, {
    rule: 'board-way',
    level: 'warning',
    value: ways.length,
    limit: 1,
    unit: 'ways up',
    message:
      'The lens board goes in more than one way up: the lens comes out turned, and its marks where they cannot be read.',
    hint: 'Cut one corner of the board and glue the cut-off to the panel.',
  });
}

/** A point in the middle of a triangle or any other block that bulges outwards. */
const meanOf = (loop: Loop): Point => ({
  x: loop.reduce((sum, { x }) => sum + x, 0) / loop.length,
  y: loop.reduce((sum, { y }) => sum + y, 0) / loop.length,
});

const turned = (loop: Loop, quarters: number): Loop =>
  quarters === 0
    ? loop
    : turned(
        loop.map(({ x, y }) => ({ x: -y, y: x })),
        quarters - 1,
      );

/** What bears on board or plug, by the mount that was asked for. */
const BEARS = { clamp: 'lens-clamp', flange: 'lens-flange', ring: 'lens-ring' } as const;

/** lens-seat-known: whatever bears on board or plug must cover the hole in the face that it lies on. */
export function seatCovered({ by }: LensBoard, build: Build): readonly Finding[] {
  const [seat] = spansOf(build, BEARS[by]);
  // a flange of which nothing is known is told where the design is read
  if (seat === undefined) return [];
  const [board, plug] = [outlineOf(build, 'F6'), outlineOf(build, 'F7')];
  const ahead = (seat.z[0] + seat.z[1]) / 2 < (board.low + plug.high) / 2;
  const disc = seat.x[1] - seat.x[0];
  const hole = sidesOf(openingOf(ahead ? board : plug)).width;
  return unless(disc - hole >= 4 - ROUNDING, {
    rule: 'lens-seat-known',
    level: 'error',
    value: (disc - hole) / 2,
    limit: 2,
    unit: 'mm',
    about: by === 'flange' ? 'lens.flange.diameter' : 'lens.barrel',
    message: `The ${by} is ${mm(tenth(disc))} across and the hole that the lens passes ${mm(tenth(hole))}: there is nothing left to seat on.`,
    hint:
      by === 'ring'
        ? 'Give the barrel’s diameter at the thread, and the front or rear diameter of what must pass the hole.'
        : 'Measure the flange, or mount the lens from the other side.',
  });
}

/** A retaining ring bites on so much of its thread; common practice, no source. */
const RING_BITE = 1;
/** Two lengths of the barrel that differ by less have one thread. */
const SAME_THREAD = 0.5;

/** lens-seat-known: a ring must reach the thread behind the wood, and the lens must have a shoulder that does not fall through. */
export function ringHolds({ by, side }: LensBoard, build: Build): readonly Finding[] {
  if (by !== 'ring') return [];
  const [board, plug] = [outlineOf(build, 'F6'), outlineOf(build, 'F7')];
  const fromInside = side === 'inside';
  const piece = (id: string) => spansOf(build, id)[0];
  const across = (span: Extent | undefined) => (span ? span.x[1] - span.x[0] : 0);
  const [front, barrel, rear] = [piece('lens-front'), piece('lens-barrel'), piece('lens-rear')];
  const more = rear && Math.abs(across(rear) - across(barrel)) < SAME_THREAD ? rear : barrel;
  const reach = fromInside
    ? plug.high - (front?.z[0] ?? plug.high)
    : Math.max(0, (more?.z[1] ?? board.low) - board.low);
  const needed = plug.high - board.low + RING_BITE;
  const shoulder = across(fromInside ? barrel : front);
  const hole = sidesOf(openingOf(fromInside ? plug : board)).width;
  return [
    ...unless(reach >= needed - ROUNDING, {
      rule: 'lens-seat-known',
      level: 'error',
      value: reach,
      limit: needed,
      unit: 'mm',
      about: 'lens.barrel',
      message: `The thread reaches ${mm(tenth(reach))} from the lens seat; through board and plug the ring needs ${mm(tenth(needed))} of it.`,
      hint: 'Use a thinner sheet, or hold the lens by a clamp.',
    }),
    ...unless(shoulder - hole >= 2 - ROUNDING, {
      rule: 'lens-seat-known',
      level: 'warning',
      value: (shoulder - hole) / 2,
      limit: 1,
      unit: 'mm',
      about: 'lens.barrel',
      message: `The lens is ${mm(tenth(shoulder))} across where its shoulder should bear, the hole for its thread ${mm(tenth(hole))}: nothing holds it against the ring.`,
      hint: 'Measure the lens on both sides of its thread; where it has no shoulder, lay a washer under it.',
    }),
  ];
}

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

export const lensBoardChecks = [clampClear, boardInOpening, boardOut, boardHeld, boardWay, seatCovered, ringHolds];
