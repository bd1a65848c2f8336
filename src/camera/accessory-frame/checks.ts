import type { Build } from '../../assembly/build.js';
import { around, type Extent } from '../../assembly/extent.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { AXIS, boxOf, type Loop, leastFrom, openingRound } from '../../assembly/measure.js';
import { spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import type { FlatPart } from '../../model/part.js';
import { mm, tenth } from '../../units/print.js';
import { lightAcross } from '../light-ahead.js';
import type { AccessoryFrame } from './size.js';

/** Nothing that is pushed in by hand may come nearer to glass; common practice, no source. */
const LENS_AIR = 2;
/** The frame comes out past the retainers with its board; a choice of ours. */
const BESIDE_RETAINERS = 0.5;

/** What has glass in it; flange and ring are metal. */
const LENS = ['lens-front', 'lens-barrel', 'lens-rear'];

/** The lens as it stands ahead of the board. */
const lensAhead = (build: Build): readonly Extent[] => {
  const board = boardFront(build);
  return LENS.flatMap((id) => spansOf(build, id)).filter(({ z }) => z[0] < board - ROUNDING);
};

const boardFront = (build: Build): number => Math.min(...spansOf(build, 'F6').map(({ z }) => z[0]));

/** A plate round the axis ahead of the board in one of its places, and its opening there; null where it has none. */
interface PlateAhead {
  readonly part: FlatPart;
  readonly z: Extent['z'];
  readonly opening: Loop | null;
}

const RETAINERS: ReadonlySet<string> = new Set(['F8', 'F9']);

function platesAhead(build: Build): readonly PlateAhead[] {
  const board = boardFront(build);
  return build.parts.flatMap((part) => {
    if (part.kind !== 'flat' || RETAINERS.has(part.id)) return [];
    const spans = spansOf(build, part.id);
    return part.placements.flatMap((placement, i): readonly PlateAhead[] => {
      const z = spans[i]?.z;
      if (placement.group !== 'front' || z === undefined || z[1] > board + ROUNDING) return [];
      const opening = openingRound(part, placement, 'z');
      return opening === undefined ? [] : [{ part, z, opening }];
    });
  });
}

/** glass-clear: nothing that hangs ahead of the lens touches it, however it is pushed in. */
export function glassClear(_own: AccessoryFrame, build: Build): readonly Finding[] {
  const lens = lensAhead(build);
  if (lens.length === 0) return [];
  const { x, y, z } = around(lens);
  const airOf = ({ z: [, rear], opening }: PlateAhead): number => {
    if (opening === null) return z[0] - rear;
    const { left, right, bottom, top } = boxOf(opening);
    return Math.max(z[0] - rear, Math.min(x[0] - left, right - x[1], y[0] - bottom, top - y[1]));
  };
  return platesAhead(build)
    .map((one) => ({ part: one.part, air: airOf(one) }))
    .sort((a, b) => a.air - b.air)
    .slice(0, 1)
    .flatMap(({ part, air }) =>
      unless(air >= LENS_AIR - ROUNDING, {
        rule: 'glass-clear',
        level: 'error',
        value: air,
        limit: LENS_AIR,
        unit: 'mm',
        about: 'lens.barrel.front',
        message: `${part.id} (${part.name}) comes within ${mm(Math.max(0, tenth(air)))} of the lens: one push, and it is on the glass.`,
        hint: 'Lay one ring A1 more under the frame, or measure again how far the lens stands out.',
      }),
    );
}

/** The slide of the shutter, whose slot may be shorter than the light is high (shutter-crosses looks at it), and the cap. */
const SHUT: ReadonlySet<string> = new Set(['D4', 'LC1', 'LC2', 'LC3']);

/** filter-clear: whatever hangs ahead of the lens lets all of the light in, with the lens wide open at infinity. */
export function filterClear({ light }: AccessoryFrame, build: Build): readonly Finding[] {
  const lit = platesAhead(build)
    .filter(({ part }) => !SHUT.has(part.id))
    .map(({ part, z: [front], opening }) => {
      const value = opening === null ? 0 : 2 * leastFrom(AXIS, opening);
      return { part, value, limit: lightAcross(light, front), away: light.pupil - front };
    });
  return lit
    .sort((a, b) => a.value - a.limit - (b.value - b.limit))
    .slice(0, 1)
    .flatMap(({ part, value, limit, away }) =>
      unless(value >= limit - ROUNDING, {
        rule: 'filter-clear',
        level: 'warning',
        value,
        limit,
        unit: 'mm',
        about: 'lens.maxAperture',
        message: `Dark corners at infinity: the light is ${mm(tenth(limit))} across ${mm(tenth(away))} ahead of the lens seat, and the opening of ${part.id} (${part.name}) ${mm(tenth(value))}.`,
        hint: `Make that opening ${mm(Math.ceil(10 * (limit - value)) / 10)} wider, or stop the lens down. The entrance pupil is taken in the lens seat: if it lies farther forward, less will do.`,
      }),
    );
}

/** retainer-reach: the retainers can be drawn and set past the frame, and the board comes out with the frame on it. */
export function retainerReach(_own: AccessoryFrame, build: Build): readonly Finding[] {
  const frame = ['A1', 'A2', 'A3', 'A4', 'A5'].flatMap((id) => spansOf(build, id));
  const retainers = ['F9', 'retainer-screw'].flatMap((id) => spansOf(build, id));
  if (frame.length === 0 || retainers.length === 0) return [];
  const air = Math.min(
    ...retainers.flatMap((one) => frame.map((other) => Math.max(one.x[0] - other.x[1], other.x[0] - one.x[1]))),
  );
  return unless(air >= BESIDE_RETAINERS - ROUNDING, {
    rule: 'retainer-reach',
    level: 'error',
    value: air,
    limit: BESIDE_RETAINERS,
    unit: 'mm',
    message: `The accessory frame ${air < 0 ? `lies ${mm(tenth(-air))} over` : `comes within ${mm(tenth(air))} of`} the retainers of the lens board: they cannot be set over it, nor drawn.`,
    hint: `Make the lens board ${mm(tenth(2 * (BESIDE_RETAINERS - air)))} wider, or the frame narrower.`,
  });
}

/** More rings than that nobody likes to glue; common practice, no source. */
const MOST_RINGS = 6;

/** frame-deep: a lens that stands far out takes many rings. */
export function frameDeep({ wood }: AccessoryFrame, build: Build): readonly Finding[] {
  const rings = spansOf(build, 'A1').length;
  return unless(rings <= MOST_RINGS, {
    rule: 'frame-deep',
    level: 'note',
    value: rings,
    limit: MOST_RINGS,
    unit: 'rings',
    about: 'lens.mount.side',
    message: `It takes ${rings} rings, ${mm(tenth(rings * wood.ply.thickness))} of wood, to come past the front of the lens: much glue, and weight far ahead of the tripod.`,
    hint: 'Mount the lens from inside, where its front stands out less; or hang nothing ahead of this lens.',
  });
}

export const accessoryFrameChecks = [glassClear, filterClear, retainerReach, frameDeep];
