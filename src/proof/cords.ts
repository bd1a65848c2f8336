import type { Build, Setup } from '../assembly/build.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { loadsOf } from '../assembly/mass.js';
import { stands } from '../assembly/setups.js';
import { spanOf, spansOf } from '../assembly/span-of.js';
import type { ClosedPath } from '../geometry/path.js';
import { apply } from '../geometry/placement.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';
import { plainNumber } from '../units/print.js';
import { newtons } from './loads.js';
import { standingIn } from './stack.js';

/** Pull of a stretched cord, N: the least that the list of hardware asks for. Common practice, no source. */
export const CORD_PULL = 10;

/** What the cords hold down in a set-up, and how. */
export interface CordHold {
  readonly setup: Setup;
  /** The glass, or the holder's name. */
  readonly what: string;
  /** What the cords press onto the seat with, N. */
  readonly pressN: number;
  /** Of all that hangs on them when the lens points up, N. */
  readonly weightN: number;
  /** From here to the notches outwards, and how far the cords rise on the way, mm. */
  readonly out: number;
  readonly rise: number;
}

/** Each thing that is held, once, in the set-up in which it hangs heaviest on its cords. */
export function cordHolds(build: Build): readonly CordHold[] {
  const holds = build.setups.flatMap((setup) => (setup.orientation === 'upright' ? holdIn(build, setup) : []));
  return [...new Set(holds.map(({ what }) => what))].flatMap((what) => {
    const mine = holds.filter((hold) => hold.what === what);
    return mine.reduce((worst, one) => (one.pressN / one.weightN < worst.pressN / worst.weightN ? one : worst));
  });
}

function holdIn(build: Build, setup: Setup): readonly CordHold[] {
  const notch = notchOf(build, setup);
  const cord = build.parts.find(({ id }) => id === 'cord');
  if (notch === null || cord === undefined || spansOf(build, 'cord', { setup }).length === 0) return [];
  const lying = spanOf(build, 'cord', { setup });
  const [face, rear] = lying.z;
  const radius = (rear - face) / 2;
  const held = build.parts.filter((part) => part !== cord && isHeld(part));
  // the cords bend over the edges of what they lie on
  const edges = held
    .flatMap((part) => standingIn(part, setup))
    .filter(({ y, z }) => Math.abs(z[1] - face) < LIES_ON && y[1] - y[0] > 2 * lying.y[1]);
  const half = Math.max(0, ...edges.flatMap(({ x }) => [-x[0], x[1]]));
  const out = Math.max(0, notch.x - half);
  // a cord that is pulled to the rear lies against the notch's rear wall, and within the notch it is not bent at all
  const level = Math.min(Math.max(face + radius, notch.from + radius), notch.to - radius);
  const rise = face + radius - level;
  const weight = held
    .flatMap(loadsOf)
    .filter(({ placement }) => stands(placement, setup))
    .reduce((sum, { massKg }) => sum + massKg, 0);
  const what = setup.focusing ? 'ground glass' : setup.holder;
  return [{ setup, what, pressN: pressOf(rise, out), weightN: newtons(weight), out, rise }];
}

/** Four ends of cord, each bent by its rise: what of the pull is left across the seat. */
const pressOf = (rise: number, out: number): number =>
  rise <= 0 ? 0 : (4 * CORD_PULL * rise) / Math.sqrt(rise * rise + out * out);

/** Clips stand proud of what the cords lie on by less. */
const LIES_ON = 0.1;

/** What lies on the seat: loose things, and the holder. */
const isHeld = ({ placements }: Part): boolean =>
  placements.length > 0 && placements.every(({ group }) => group === 'loose' || typeof group === 'object');

/** Where a hook takes its cord: from which z to which, and how far from the axis; from the corners that turn inwards. */
function notchOf(
  build: Build,
  setup: Setup,
): { readonly x: number; readonly from: number; readonly to: number } | null {
  const hook = build.parts.find(({ id }) => id === 'B5');
  if (hook?.kind !== 'flat') return null;
  const seat = spanOf(build, 'B1', { setup }).z[1];
  const corners = hook.placements
    .filter((place) => stands(place, setup))
    .flatMap(({ matrix }) => inward(hook.outline).map(({ x, y }) => apply(matrix, { x, y, z: 0 })))
    .filter(({ z }) => z > seat + ROUNDING);
  if (corners.length === 0) return null;
  return {
    x: Math.min(...corners.map(({ x }) => Math.abs(x))),
    from: Math.min(...corners.map(({ z }) => z)),
    to: Math.max(...corners.map(({ z }) => z)),
  };
}

/** Corners at which an anticlockwise outline turns clockwise. */
const inward = (outline: ClosedPath): ClosedPath =>
  outline.filter((here, i) => {
    const before = outline[(i + outline.length - 1) % outline.length] ?? here;
    const next = outline[(i + 1) % outline.length] ?? here;
    return (here.x - before.x) * (next.y - here.y) - (here.y - before.y) * (next.x - here.x) < -ROUNDING;
  });

/** cord-hold: whatever lies on the seat stays there when the lens points up. */
export const cordHold = (build: Build): readonly Finding[] =>
  cordHolds(build).flatMap(({ what, pressN, weightN, rise, out }) => {
    const sine = weightN / (4 * CORD_PULL);
    // with the strip on top the cords rise steeply enough: rise/√(rise² + out²) is that sine
    const strip = sine < 1 ? Math.ceil((out * sine) / Math.sqrt(1 - sine * sine) - rise) + STRIP_MORE : null;
    return unless(pressN >= weightN - ROUNDING, {
      rule: 'cord-hold',
      level: 'warning',
      value: pressN,
      limit: weightN,
      unit: 'N',
      message:
        rise > 0
          ? `Lens up, the ${what} drops from its seat: it weighs ${plainNumber(weightN, 1)} N, and the cords press it down with ${plainNumber(pressN, 1)} N, for they rise by ${plainNumber(rise, 1)} mm only on their way over it.`
          : `Lens up, the ${what} drops from its seat: the hooks hold the cords as high as its back or higher, so that nothing presses it down.`,
      hint:
        strip === null
          ? 'Use cords that pull harder, or two more of them.'
          : `Glue a strip ${strip} mm high to its back under each cord, or cut the notches of the hooks as much nearer to the seat.`,
    });
  });

/** Above what is just enough, mm; a choice of ours. */
const STRIP_MORE = 1;
