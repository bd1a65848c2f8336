import { type Arrangement, FLOAT, type Pair } from '../assembly/arrangement.js';
import { boxAt, type Piece } from '../assembly/pieces.js';
import type { Finding } from '../model/finding.js';
import type { Group, Part } from '../model/part.js';
import type { Clearance, Direction, Layer } from '../model/proof.js';
import { mm, tenth } from '../units/print.js';

const DIRECTIONS: Readonly<Record<Direction, readonly [number, number, number]>> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  up: [0, 1, 0],
  down: [0, -1, 0],
};

const layerOf = (group: Group): Layer => (group === 'front' || group === 'rear' || group === 'back' ? group : 'seated');

const LAYERS: readonly Layer[] = ['front', 'rear', 'back', 'seated'];

/** How far the search pushes, mm: more than any guide of this camera has. */
const REACH = 2;
const STEP = 0.005;

/** A group that slides needs this much air a side, mm; common practice, no source. */
const LEAST_AIR = 0.05;
/** More than this and nothing guides it, mm: the loosest fit, drop-in, on both sides. Common practice, no source. */
const GUIDES = 1.5;

/** The air of each group in the one that carries it, to four sides, least over the travel and over all set-ups. */
export function clearances(arrangement: Arrangement): readonly Clearance[] {
  const made = arrangement.pairs(REACH).filter(({ a, b }) => a.part.kind !== 'bought' && b.part.kind !== 'bought');
  return LAYERS.slice(1).flatMap((inner, k) => {
    const outer = LAYERS[k] as Layer;
    const pairs = made.flatMap((pair) => between(pair, LAYERS.indexOf(outer)));
    return Object.keys(DIRECTIONS).map((direction) =>
      clearance(arrangement, pairs, [outer, inner], direction as Direction),
    );
  });
}

/** A pair whose second piece moves in its first, turned round where it is listed the other way. */
function between(pair: Pair, border: number): readonly Pair[] {
  const rank = (piece: Piece) => LAYERS.indexOf(layerOf(piece.placement.group));
  const [a, b] = [rank(pair.a), rank(pair.b)];
  if (a <= border && b > border) return [pair];
  return b <= border && a > border ? [{ ...pair, a: pair.b, b: pair.a }] : [];
}

function clearance(
  arrangement: Arrangement,
  pairs: readonly Pair[],
  names: Clearance['between'],
  direction: Direction,
): Clearance {
  const [x, y, z] = DIRECTIONS[direction];
  let best = REACH;
  let parts: Clearance['parts'] = null;
  for (const pair of pairs) {
    // what carries its load lies on it with no air downwards, and what is screwed to it goes with it
    if (pair.by.has('screw') || (direction === 'down' && (pair.by.has('rest') || pair.by.has('slide')))) continue;
    for (const rear of pair.passing ? someOf(arrangement.rears) : [0]) {
      if (boxAir(pair, rear, direction) >= best) continue;
      // where they are in each other already, that is another rule's business
      if (arrangement.shared(pair, rear).depth > FLOAT) continue;
      const meets = (d: number) => arrangement.meets(pair, rear, [x * d, y * d, z * d]);
      if (!meets(best)) continue;
      let [free, met] = [0, best];
      while (met - free > STEP) {
        const middle = (free + met) / 2;
        if (meets(middle)) met = middle;
        else free = middle;
      }
      best = free;
      parts = [pair.a.part.id, pair.b.part.id];
    }
  }
  return { between: names, direction, air: parts === null ? null : best, parts };
}

/** Both ends of the travel and its middle. */
const someOf = (rears: readonly number[]): readonly number[] => [0, 2, 4].flatMap((i) => rears[i] ?? []);

/** What the boxes leave free at least in a direction; without end where they pass each other. */
function boxAir({ a, b }: Pair, rear: number, direction: Direction): number {
  const [fixed, moving] = [boxAt(a, rear), boxAt(b, rear)];
  const passes = (axis: 'x' | 'y' | 'z') => fixed[axis][0] >= moving[axis][1] || moving[axis][0] >= fixed[axis][1];
  const along = direction === 'left' || direction === 'right' ? 'x' : 'y';
  if (passes('z') || passes(along === 'x' ? 'y' : 'x')) return Number.POSITIVE_INFINITY;
  const air =
    direction === 'right' || direction === 'up'
      ? fixed[along][0] - moving[along][1]
      : moving[along][0] - fixed[along][1];
  // boxes that lie in each other say nothing: the pieces may be hooks and notches
  return Math.max(0, air);
}

/** groups-part: no glue across two groups, air on every side of what moves, and a guide that is close enough to guide. */
export function groupsPart(parts: readonly Part[], found: readonly Clearance[]): readonly Finding[] {
  return [...gluedAcross(parts), ...found.flatMap(jammed), ...unguided(found)];
}

const HELD = ['glue', 'finger', 'press'];

function gluedAcross(parts: readonly Part[]): readonly Finding[] {
  const layers = (part: Part) => new Set(part.placements.map(({ group }) => layerOf(group)));
  return parts.flatMap((part) =>
    part.joins.flatMap(({ to, by }) => {
      const other = parts.find(({ id }) => id === to);
      if (other === undefined || !HELD.includes(by)) return [];
      const common = [...layers(part)].some((layer) => layers(other).has(layer));
      if (common) return [];
      return [
        {
          rule: 'groups-part',
          level: 'error' as const,
          value: 1,
          limit: 0,
          unit: 'joints',
          message: `${part.id} (${part.name}) would be held fast to ${to} (${other.name}), and the two must move past each other: the camera does not open again.`,
          hint: 'Leave the glue out of this joint.',
        },
      ];
    }),
  );
}

const MOVES: Readonly<Record<Layer, string>> = {
  front: 'the front',
  rear: 'the sliding rear',
  back: 'the back',
  seated: 'what sits in the well',
};

const jammed = ({ between: [outer, inner], direction, air, parts }: Clearance): readonly Finding[] =>
  air === null || parts === null || air >= LEAST_AIR
    ? []
    : [
        {
          rule: 'groups-part',
          level: 'error',
          value: air,
          limit: LEAST_AIR,
          unit: 'mm',
          message: `${upper(MOVES[inner])} jams in ${MOVES[outer]}: between ${parts[1]} and ${parts[0]} there is ${air < STEP ? 'no air' : `${mm(hundredth(air))} of air`} to the ${WAYS[direction]}.`,
          hint: `Plane ${mm(hundredth(LEAST_AIR - air + 0.2))} off ${parts[1]} on that side, or set ${parts[0]} farther out.`,
        },
      ];

const WAYS: Readonly<Record<Direction, string>> = { left: 'left', right: 'right', up: 'top', down: 'bottom' };

/** Glass and holders of different widths share a well, and pins keep them in it; everything else is guided by wood. */
const unguided = (found: readonly Clearance[]): readonly Finding[] =>
  found
    .filter(
      ({ between: [, inner], air, direction }) => inner !== 'seated' && direction !== 'down' && (air ?? REACH) > GUIDES,
    )
    .map(({ between: [outer, inner], direction, air }) => ({
      rule: 'groups-part',
      level: 'error',
      value: air ?? REACH,
      limit: GUIDES,
      unit: 'mm',
      message: `Nothing guides ${MOVES[inner]} in ${MOVES[outer]} towards the ${WAYS[direction]}: it can wander ${air === null ? `more than ${mm(REACH)}` : mm(tenth(air))}.`,
      hint: 'A rail, a keeper or a ring must stand within a millimetre of it.',
    }));

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const hundredth = (value: number): number => Math.round(value * 100) / 100;
