import { type Arrangement, FLOAT, type Pair } from '../assembly/arrangement.js';
import type { Build, Setup } from '../assembly/build.js';
import { boxesOf } from '../assembly/extent.js';
import type { Piece } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Shared } from '../geometry/kernel.js';
import { compose, type Matrix4, quarterTurn } from '../geometry/placement.js';
import type { Finding } from '../model/finding.js';
import { mm, plainNumber, tenth } from '../units/print.js';

interface Collisions {
  readonly findings: readonly Finding[];
  /** The ids of each two parts that want the same place, with a space between. */
  readonly pairs: ReadonlySet<string>;
}

/**
 * parts-collide: no two pieces share volume beyond a press fit, in any set-up, at any station, past infinity, at the end
 * of the reserve, and with the back in every position in which it is used.
 *
 * @param press how much a press fit may bite, mm in all
 */
export function collisions(build: Build, arrangement: Arrangement, press: number): Collisions {
  const standing = arrangement.pairs(0).map((pair) => ({
    pair,
    where: arrangement.together(pair.a, pair.b)[0]?.name ?? '',
  }));
  const turned = turnedPairs(build, arrangement);
  const worst = new Map<string, Met>();
  for (const { pair, where } of [...standing, ...turned]) {
    const shared = pair.passing ? arrangement.sharedOnTheWay(pair) : arrangement.shared(pair, 0);
    if (shared.depth <= bite(pair, press)) continue;
    const key = `${pair.a.part.id} ${pair.b.part.id}`;
    const before = worst.get(key);
    if (before === undefined || shared.depth > before.shared.depth)
      worst.set(key, { pair, where, ...(pair.passing ? deepest(arrangement, pair, shared) : { shared, rear: 0 }) });
  }
  const met = [...worst.values()].sort((one, other) => other.shared.volume - one.shared.volume);
  const first = met.slice(0, MOST_TOLD).map(told(press));
  return {
    findings: met.length > MOST_TOLD ? [...first, more(met.length - MOST_TOLD)] : first,
    pairs: new Set(worst.keys()),
  };
}

/** Where on the way two pieces share most: at the stations and at some places between them, to tell the builder one. */
function deepest(arrangement: Arrangement, pair: Pair, onTheWay: Shared): Pick<Met, 'rear' | 'shared'> {
  const end = Math.max(...arrangement.rears);
  const places = [...arrangement.rears, ...Array.from({ length: 33 }, (_, k) => (end * k) / 32)];
  const found = places.map((rear) => ({ rear, shared: arrangement.shared(pair, rear) }));
  const most = found.reduce((a, b) => (b.shared.depth > a.shared.depth ? b : a));
  // thinner than the steps: what the whole way shares is known all the same
  return most.shared.depth > FLOAT ? most : { rear: null, shared: onTheWay };
}

/** A camera that is wrong in one length collides in many places: more than these help nobody. */
const MOST_TOLD = 6;

const more = (count: number): Finding => ({
  rule: 'parts-collide',
  level: 'error',
  value: count,
  limit: 0,
  unit: 'pairs more',
  message: `${count} more pairs of parts want the same place, each by less.`,
  hint: 'One length that is wrong shows in many places: begin with the first.',
});

interface Met {
  readonly pair: Pair;
  /** How far the moving groups are drawn out; null somewhere on the way. */
  readonly rear: number | null;
  readonly where: string;
  readonly shared: Shared;
}

/** Half of a press fit bites on each side of the tongue; nothing else may. */
const bite = ({ by }: Pair, press: number): number => (by.has('press') ? press : 0) + FLOAT;

const told =
  (press: number) =>
  ({ pair, rear, where, shared }: Met): Finding => {
    const [a, b] = [pair.a.part, pair.b.part];
    const { x, y, z } = shared.at;
    return {
      rule: 'parts-collide',
      level: 'error',
      value: shared.depth,
      limit: bite(pair, press),
      unit: 'mm',
      message: `${a.id} (${a.name}) and ${b.id} (${b.name}) lie in each other: ${plainNumber(shared.volume, 1)} mm³, ${mm(hundredth(shared.depth))} thick, round x ${mm(tenth(x))}, y ${mm(tenth(y))}, z ${mm(tenth(z))}; ${where}${drawnOut(rear)}.`,
      hint: 'They do not go together as they are: do not cut these two before the lengths that they share are right.',
    };
  };

const drawnOut = (rear: number | null): string => {
  if (rear === null) return ', somewhere on the way of the slide';
  return rear > 0 ? `, drawn out ${mm(tenth(rear))}` : '';
};

const hundredth = (value: number): number => Math.max(0.01, Math.round(value * 100) / 100);

/** A back in a position of which no set-up speaks, against what does not turn with it. */
interface Turned {
  readonly pair: Pair;
  readonly where: string;
}

/** Beyond its square by more than this, mm, a back carries a tongue and is not used with its open end down. */
const TONGUE = 0.5;

/**
 * The back as it is used beyond the set-ups: loaded with its open end to the right, and, where it has no tongue, bare with
 * the open end down, for it passes through that position when it is turned.
 */
function turnedPairs(build: Build, { pieces }: Arrangement): readonly Turned[] {
  const still = pieces.filter(({ placement: { group } }) => group === 'front' || group === 'rear');
  const upright = build.setups.filter(({ orientation }) => orientation === 'upright');
  const turning = (setup: Setup) => pieces.filter((piece) => !still.includes(piece) && stands(piece.placement, setup));
  const right = compose(quarterTurn, compose(quarterTurn, quarterTurn));
  const loaded = new Map<Piece, string>();
  for (const setup of upright)
    for (const piece of turning(setup)) if (!loaded.has(piece)) loaded.set(piece, setup.name);
  const toTheRight = [...loaded].map(([piece, name]) => ({
    piece: rotated(piece, right, 'right'),
    position: `${name}, turned with its open end to the right`,
  }));
  const down = compose(quarterTurn, quarterTurn);
  const bare = pieces.filter(
    ({ placement }) => placement.group === 'back' && upright.some((setup) => stands(placement, setup)),
  );
  const tongue = bare.some(({ part, extent }) => part.id === 'B1' && extent.y[1] + extent.y[0] > TONGUE);
  const upsideDown = tongue
    ? []
    : bare.map((piece) => ({ piece: rotated(piece, down, 'down'), position: 'the bare back with its open end down' }));
  return [...toTheRight, ...upsideDown].flatMap(({ piece, position: where }) =>
    still.map((other) => ({ pair: { a: other, b: piece, by: NOT_JOINED, passing: !other.slides }, where })),
  );
}

const NOT_JOINED: Pair['by'] = new Set();

function rotated(piece: Piece, turn: Matrix4, name: string): Piece {
  const placement = { ...piece.placement, matrix: compose(turn, piece.placement.matrix) };
  const [box] = boxesOf(piece.part, [placement]);
  return { ...piece, key: `${piece.key}@${name}`, placement, extent: box?.extent ?? piece.extent };
}
