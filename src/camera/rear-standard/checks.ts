import type { Build } from '../../assembly/build.js';
import { around } from '../../assembly/extent.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import {
  boxesApart,
  boxOf,
  cornersOf,
  type Loop,
  leastBetween,
  leastFrom,
  outlineOf,
  outlinesOf,
  reach,
} from '../../assembly/measure.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import { rackingRatio } from '../../assembly/statics.js';
import { inside, type Point } from '../../geometry/path.js';
import type { Finding } from '../../model/finding.js';
import { magnification, mm, plainNumber, tenth } from '../../units/print.js';
import type { RearStandard } from './size.js';

/** The limits below are common practice, no source, where nothing else is said. */

/** sole-meets-front: the sole behind the panel's foot, at the closest position. */
export function soleMeetsFront({ focus }: RearStandard, build: Build): readonly Finding[] {
  const limit = 5;
  const sole = spanOf(build, 'R4L').z;
  const value = sole[0] - spanOf(build, 'F1').z[1];
  const ahead = spanOf(build, 'R3').z[0] - sole[0];
  return unless(value >= limit - ROUNDING, {
    rule: 'sole-meets-front',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    about: 'lens.flangeDistance',
    message:
      value < 0
        ? `At the closest position the sole, which reaches ${mm(tenth(ahead))} ahead of the standard, would run ${mm(tenth(-value))} into the panel's foot.`
        : `At the closest position the sole stands ${mm(tenth(value))} behind the panel's foot: dirt there stops the slide short of infinity.`,
    hint: furtherBack(limit - value, focus, build),
  });
}

/** What moves the closest position back by so much, the cheapest first. */
function furtherBack(missing: number, focus: RearStandard['focus'], build: Build): string {
  const needed = Math.ceil(missing * 10 - ROUNDING) / 10;
  // from inside the lens seats on the plug's rear face, at z = 0
  const fromInside = -(spansOf(build, 'lens-barrel')[0]?.z[0] ?? 0);
  const farthest = focus.farthest + missing / focus.focalLength;
  const cures = [
    ...(needed <= focus.pastInfinity ? [`take ${mm(needed)} off pastInfinity`] : []),
    ...(farthest < focus.nearest
      ? [`give up what lies beyond ${magnification(farthest, 'nearer')}: write it as farthest`]
      : []),
    ...(fromInside >= missing ? ['mount the lens from inside'] : []),
    `use a deepest holder that is ${mm(needed)} shallower, with a glass as shallow`,
  ];
  return cures
    .map((cure, i) => (i === 0 ? capital(cure) : `or ${cure}`))
    .join('; ')
    .concat('.');
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Rails, keepers and how they lie across the slide. */
const GUIDES = ['T2', 'T3', 'T3S'];

/** standard-over-rails: the notch of the standard as it is cut, over keepers and rails as they lie, wherever it slides. */
export function standardOverRails(_own: RearStandard, build: Build): readonly Finding[] {
  const limit = 0.8;
  const { outline } = outlineOf(build, 'R3');
  const guides = GUIDES.flatMap((id) => spansOf(build, id)).map(({ x, y }) =>
    cornersOf({ left: x[0], bottom: y[0], right: x[1], top: y[1] }),
  );
  const value = Math.min(...guides.map((guide) => airBeside(guide, outline)));
  return unless(value >= limit - ROUNDING, {
    rule: 'standard-over-rails',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    message: `The notch of the standard clears the keepers by ${mm(tenth(value))}: it sits on its own rails.`,
    hint: `Cut the notch ${mm(tenth(limit - value))} larger.`,
  });
}

/** Least distance to a plate's edge; below 0 where a corner lies in the wood. */
function airBeside(loop: Loop, wood: Loop): number {
  let deepest = -Infinity;
  for (const corner of loop) if (inside(wood, corner)) deepest = Math.max(deepest, leastFrom(corner, wood));
  return deepest > -Infinity ? -deepest : leastBetween(loop, wood);
}

/** A guide of just the jamming length still binds when it is dry. */
const BINDS = 1;
const JAMS = 0.8;
/** Friction below which no waxed wood runs; common practice, no source. */
const WAXED = 0.05;

/** racking: pushed at one edge of the standard, half its width off the axis, with what of the sole lies between the rails. */
export function racking({ friction }: RearStandard, build: Build): readonly Finding[] {
  const rails = spanOf(build, 'T2').z;
  const guided = build.stations.map(({ rear }) => {
    const sole = spanOf(build, 'R4L', { rear }).z;
    return Math.min(sole[1], rails[1]) - Math.max(sole[0], rails[0]);
  });
  const length = Math.min(...guided);
  const { x } = spanOf(build, 'R3');
  const side = x[1] - x[0];
  const value = rackingRatio(length, friction, side / 2);
  const jams = value < JAMS - ROUNDING;
  const enough = Math.floor((100 * length) / side) / 100;
  return unless(value >= BINDS - ROUNDING, {
    rule: 'racking',
    level: jams ? 'error' : 'warning',
    value,
    limit: jams ? JAMS : BINDS,
    unit: 'times the jamming length',
    about: 'workshop.friction',
    message: `Pushed at one edge the standard ${jams ? 'jams' : 'binds'}: ${mm(tenth(Math.max(0, length)))} of the sole lie between the rails, the standard is ${mm(tenth(side))} wide, and wood on wood has a friction of ${plainNumber(friction, 2)}.`,
    hint:
      enough >= WAXED
        ? `Wax sole and rails, push in the middle, and write friction: ${plainNumber(enough, 2)} if they run that lightly.`
        : 'No wax makes so short a guide run: ask for less travel, or take some off pastInfinity, so that more of the sole lies between the rails.',
  });
}

/** The set-up in which the back stands with its open end up. */
const upright = ({ setups }: Build) => setups.find(({ orientation }) => orientation === 'upright');

/** Quarter turns in which a back is used: not open end down where a tongue hangs over the square. */
function turnsOf(back: Loop): readonly number[] {
  const { bottom, top } = boxOf(back);
  return top > -bottom + ROUNDING ? [0, 1, 3] : [0, 1, 2, 3];
}

/** The back plate with its open end up. */
function backPlate(build: Build): Loop {
  const setup = upright(build);
  return outlineOf(build, 'B1', setup ? { setup } : {}).outline;
}

function turnedBy({ x, y }: Point, quarters: number): Point {
  if (quarters === 0) return { x, y };
  if (quarters === 1) return { x: -y, y: x };
  return quarters === 2 ? { x: -x, y: -y } : { x: y, y: -x };
}

/** back-clears-sole: whatever turns with the back, in every way in which it is used, over the keepers. */
export function backClearsSole(_own: RearStandard, build: Build): readonly Finding[] {
  const limit = 2;
  const setup = upright(build);
  const turns = turnsOf(backPlate(build));
  const { x, y } = around(
    build.parts
      .filter((part) => part.placements.some(({ group }) => group === 'back'))
      .flatMap(({ id }) => spansOf(build, id, setup ? { setup } : {})),
  );
  // what lies lowest after no quarter turn anticlockwise, one, two, three
  const below = [y[0], x[0], -y[1], -x[1]];
  const lowest = Math.min(...turns.map((quarters) => below[quarters] ?? Infinity));
  const value = lowest - Math.max(spanOf(build, 'T3').y[1], spanOf(build, 'T3S').y[1]);
  return unless(value >= limit - ROUNDING, {
    rule: 'back-clears-sole',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    message: `The back stands ${mm(tenth(value))} above the keepers: it will not turn, or sits on them.`,
    hint: `Raise the axis by ${mm(tenth(limit - value))}.`,
  });
}

/** rib-under-floor: the ribs under the front box. */
export function ribUnderFloor(_own: RearStandard, build: Build): readonly Finding[] {
  const limit = 1.5;
  const value = spanOf(build, 'F4').y[0] - spanOf(build, 'R5').y[1];
  return unless(value >= limit - ROUNDING, {
    rule: 'rib-under-floor',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    message: `The ribs pass ${mm(tenth(value))} under the front box: they jam at close focus.`,
    hint: `Raise the axis by ${mm(tenth(limit - value))}, or make the ribs lower by as much.`,
  });
}

const FENCES = ['B3', 'B4', 'fence-open'];

/** A turn-button as it stands closed: its outline, the middle of its screw, and which way its arm points. */
interface Button {
  readonly outline: Loop;
  readonly low: number;
  readonly high: number;
  readonly pivot: Point;
  readonly towards: Point;
  /** From the pivot to the arm's end. */
  readonly arm: number;
  /** Its outlines when it is opened. */
  readonly open: readonly Loop[];
}

function buttonsOf(build: Build): readonly Button[] {
  const pivots = spansOf(build, 'button-screw').map(({ x, y }) => ({ x: (x[0] + x[1]) / 2, y: (y[0] + y[1]) / 2 }));
  return outlinesOf(build, 'R6').flatMap(({ outline, low, high }) => {
    const pivot = pivots.find((at) => inside(outline, at));
    if (pivot === undefined) return [];
    const out = outline.reduce((sum, { x, y }) => ({ x: sum.x + x - pivot.x, y: sum.y + y - pivot.y }), { x: 0, y: 0 });
    const scale = Math.sqrt(out.x * out.x + out.y * out.y);
    const towards = { x: out.x / scale, y: out.y / scale };
    const arm = Math.max(...outline.map(({ x, y }) => (x - pivot.x) * towards.x + (y - pivot.y) * towards.y));
    return [{ outline, low, high, pivot, towards, arm, open: opened({ outline, pivot }) }];
  });
}

/** Open, a button points away from the back, or lies across the diagonal to one side or the other. */
const OPEN = [2, 1, 3];

const opened = ({ outline, pivot }: Pick<Button, 'outline' | 'pivot'>): readonly Loop[] =>
  OPEN.map((quarters) =>
    outline.map(({ x, y }) => {
      const turned = turnedBy({ x: x - pivot.x, y: y - pivot.y }, quarters);
      return { x: turned.x + pivot.x, y: turned.y + pivot.y };
    }),
  );

/** The way of opening that leaves a back most air; where one leaves `enough` the others need no look. */
function airWhenOpen({ open }: Button, back: Loop, enough: number): number {
  let most = -Infinity;
  for (const outline of open) {
    most = Math.max(most, airBeside(outline, back));
    if (most >= enough) break;
  }
  return most;
}

/** button-clears: a turn-button holds the back, lets it go, misses the fences, and leaves the standard's front flush. */
export function buttonClears(_own: RearStandard, build: Build): readonly Finding[] {
  const buttons = buttonsOf(build);
  const back = backPlate(build);
  const backs = turnsOf(back).map((quarters) => back.map((point) => turnedBy(point, quarters)));
  // the buttons stand in every set-up, so each fence meets them wherever it stands
  const fences = FENCES.flatMap((id) => outlinesOf(build, id)).map((fence) => ({
    ...fence,
    box: boxOf(fence.outline),
  }));
  let over = Infinity;
  let off = Infinity;
  let beside = Infinity;
  for (const button of buttons) {
    for (const turned of backs) {
      over = Math.min(over, Math.max(0, button.arm - reach(turned, button.pivot, button.towards)));
      off = Math.min(off, airWhenOpen(button, turned, off));
    }
    const box = boxOf(button.outline);
    for (const fence of fences)
      if (fence.low < button.high && fence.high > button.low && boxesApart(box, fence.box) < beside)
        beside = Math.min(beside, airBeside(button.outline, fence.outline));
  }
  const proud = spanOf(build, 'R3').z[0] - spanOf(build, 'button-screw').z[0];
  const rule = { rule: 'button-clears', level: 'error', unit: 'mm' } as const;
  return [
    ...unless(over >= 8 - ROUNDING, {
      ...rule,
      value: over,
      limit: 8,
      message: `A turn-button lies ${mm(tenth(over))} over the back: it slips off, and the back falls.`,
      hint: `Make its arm ${mm(tenth(8 - over))} longer.`,
    }),
    ...unless(off >= 0.5 - ROUNDING, {
      ...rule,
      value: off,
      limit: 0.5,
      message: `An open turn-button stays within ${mm(tenth(Math.max(0, off)))} of the back: the back does not come out.`,
      hint: `Clip the corners of the back ${mm(tenth((0.5 - off) * Math.SQRT2))} more.`,
    }),
    // buttons that stand above or below every fence meet none
    ...(beside === Infinity
      ? []
      : unless(beside >= 0.5 - ROUNDING, {
          ...rule,
          value: beside,
          limit: 0.5,
          about: 'holders',
          message: `The arm of a turn-button comes within ${mm(tenth(Math.max(0, beside)))} of a fence of the well: it cannot close.`,
          hint: `Make the widest holder ${mm(Math.ceil(20 * (0.5 - beside)) / 10)} narrower, or file the corner of the arm.`,
        })),
    ...unless(proud <= ROUNDING, {
      ...rule,
      value: proud,
      limit: 0,
      message: `The screws of the turn-buttons stand ${mm(tenth(proud))} proud of the standard: they hit the front box.`,
      hint: 'Countersink them until the heads lie flush.',
    }),
  ];
}

export const rearStandardChecks = [
  soleMeetsFront,
  standardOverRails,
  racking,
  backClearsSole,
  ribUnderFloor,
  buttonClears,
];
