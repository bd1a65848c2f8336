import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { airBetween, spanOf, spansOf } from '../../assembly/span-of.js';
import { rackingRatio } from '../../assembly/statics.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import type { RearStandard } from './size.js';

/** The limits below are common practice, no source, where nothing else is said. */

/** sole-meets-front: the sole behind the panel's foot, at the closest position. */
export function soleMeetsFront(_own: RearStandard, build: Build): readonly Finding[] {
  const limit = 5;
  const value = spanOf(build, 'R4L').z[0] - spanOf(build, 'F1').z[1];
  return unless(value >= limit - ROUNDING, {
    rule: 'sole-meets-front',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    about: 'lens.flangeDistance',
    message:
      value < 0
        ? `At the closest position the sole would run ${mm(tenth(-value))} into the panel's foot.`
        : `At the closest position the sole stands ${mm(tenth(value))} behind the panel's foot: dirt there stops the slide short of infinity.`,
    hint: `Gain ${mm(tenth(limit - value))}: a shallower holder, less pastInfinity, or, where it is not there yet, the lens mounted from inside.`,
  });
}

/** standard-over-rails: the notch of the standard over the keepers. */
export function standardOverRails({ notchTop }: RearStandard, build: Build): readonly Finding[] {
  const limit = 0.8;
  const value = notchTop - spanOf(build, 'T3').y[1];
  return unless(value >= limit - ROUNDING, {
    rule: 'standard-over-rails',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    message: `The notch of the standard clears the keepers by ${mm(tenth(value))}: it sits on its own rails.`,
    hint: `Cut the notch ${mm(tenth(limit - value))} higher.`,
  });
}

/** A guide of just the jamming length still binds when it is dry. */
const BINDS = 1;
const JAMS = 0.8;

/** racking: pushed at one edge of the standard, half its width off the axis. */
export function racking({ soleFront, soleRear, side, friction }: RearStandard): readonly Finding[] {
  const length = soleRear - soleFront;
  const value = rackingRatio(length, friction, side / 2);
  const jams = value < JAMS - ROUNDING;
  return unless(value >= BINDS - ROUNDING, {
    rule: 'racking',
    level: jams ? 'error' : 'warning',
    value,
    limit: jams ? JAMS : BINDS,
    unit: 'times the jamming length',
    about: 'workshop.friction',
    message: `Pushed at one edge the standard ${jams ? 'jams' : 'binds'}: the sole is ${mm(length)} long, the standard ${mm(tenth(side))} wide, and wood on wood has a friction of ${plainNumber(friction, 2)}.`,
    hint: `Wax sole and rails, push in the middle, and write friction: ${plainNumber(Math.floor((100 * length) / side) / 100, 2)} if they run that lightly.`,
  });
}

/** back-clears-sole: the back, however it is turned, over the keepers. */
export function backClearsSole({ side }: RearStandard, build: Build): readonly Finding[] {
  const limit = 2;
  // its square, and what of it hangs lower in a position that is used
  const lowest = Math.min(-side / 2, spanOf(build, 'B1').y[0]);
  const value = lowest - spanOf(build, 'T3').y[1];
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

/** button-clears: a turn-button holds the back, lets it go, misses the fences, and leaves the standard's front flush. */
export function buttonClears({ button, cornerClip }: RearStandard, build: Build): readonly Finding[] {
  // from the pivot to the back's clipped edge, along the diagonal
  const toEdge = (cornerClip - 2 * button.pivot) / Math.SQRT2;
  const over = button.arm - toEdge;
  // turned by a quarter it lies across the diagonal
  const off = toEdge - button.width / 2;
  const fences = FENCES.flatMap((id) => spansOf(build, id));
  const beside = Math.min(
    // the buttons stand in every set-up, so each fence meets them wherever it stands
    ...spansOf(build, 'R6').flatMap((arm) => fences.map((fence) => airBetween(arm, fence))),
  );
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
      message: `An open turn-button stays within ${mm(tenth(off))} of the back: the back does not come out.`,
      hint: `Clip the corners of the back ${mm(tenth((0.5 - off) * Math.SQRT2))} more.`,
    }),
    ...unless(beside >= 0.5 - ROUNDING, {
      ...rule,
      value: beside,
      limit: 0.5,
      about: 'holders',
      message: `The arm of a turn-button comes within ${mm(tenth(beside))} of a fence of the well: it cannot close.`,
      hint: `Make the widest holder ${mm(Math.ceil(20 * (0.5 - beside)) / 10)} narrower, or file the corner of the arm.`,
    }),
    ...unless(proud <= ROUNDING, {
      ...rule,
      value: proud,
      limit: 0,
      message: `The screws of the turn-buttons stand ${mm(tenth(proud))} proud of the standard: they hit the front box.`,
      hint: 'Countersink them until the heads lie flush.',
    }),
  ];
}

/** Hole to edge where a screw carries load, and where it only guides: section 14 of the camera's description. */
const carrying = (diameter: number, ply: number): number => Math.max(2 * diameter, ply);
const guiding = (diameter: number): number => Math.max(1.25 * diameter, diameter / 2 + 3);

/** nut-edge: the lock bolt in the sole, its sunk head, and the pivots of the turn-buttons. */
export function nutEdge({ bolt, soleRear, front, wood, button }: RearStandard): readonly Finding[] {
  const t = wood.ply.thickness;
  const toEdge = soleRear - bolt;
  const toTenons = bolt - front - t - SUNK_HEAD / 2;
  const pivot = Math.min(button.pivot, button.width / 2, button.length - button.arm);
  const rule = { rule: 'nut-edge', level: 'error', unit: 'mm', about: 'plywood.thickness' } as const;
  return [
    ...unless(toEdge >= carrying(6, t) - ROUNDING, {
      ...rule,
      value: toEdge,
      limit: carrying(6, t),
      message: `The lock bolt stands ${mm(tenth(toEdge))} from the sole's rear edge: it breaks out when it is tightened.`,
      hint: `Use sheet of ${mm(Math.floor(toEdge))} or less.`,
    }),
    ...unless(toTenons >= 3 - ROUNDING, {
      ...rule,
      value: toTenons,
      limit: 3,
      message: `The lock bolt's head leaves ${mm(tenth(toTenons))} of wood to the standard's tenons.`,
      hint: `Use sheet that is ${mm(tenth(3 - toTenons))} thinner.`,
    }),
    ...unless(pivot >= guiding(4) - ROUNDING, {
      ...rule,
      value: pivot,
      limit: guiding(4),
      message: `A turn-button's screw stands ${mm(tenth(pivot))} from an edge: the hole breaks out.`,
      hint: `Keep the hole ${mm(guiding(4))} from every edge.`,
    }),
  ];
}

/** Hole of the carriage bolt's head in the sole's upper ply. */
const SUNK_HEAD = 16.5;

export const rearStandardChecks = [
  soleMeetsFront,
  standardOverRails,
  racking,
  backClearsSole,
  ribUnderFloor,
  buttonClears,
  nutEdge,
];
