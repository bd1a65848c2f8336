import { copyFilling, type Filling, filler, type Manner, noFilling, type Piece, RULES } from './fill.js';
import { offcutOf } from './offcut.js';
import { seeded } from './random.js';
import { ROUNDING, type Rooms, roomsOf } from './rooms.js';
import type { Search } from './search.js';
import type { Bed, Blank, Layout, PackedSheet, Place, Ring } from './shapes.js';
import { roomsWithin } from './silhouette.js';
import { type Stance, sameCover, stancesOf } from './stance.js';

export interface NestGiven {
  readonly blanks: readonly Blank[];
  readonly beds: readonly Bed[];
  /** Least distance between the material of two pieces, mm. */
  readonly spacing: number;
}

/**
 * Lays pieces on sheets, in windows of others too: least cost of sheets first, then the largest offcut of one sheet.
 * What no bed takes is left out.
 */
export function* searchNest({ blanks, beds, spacing }: NestGiven, seed: number): Search<Layout> {
  const pieces = piecesOf(blanks, spacing);
  if (pieces.length === 0 || beds.length === 0) return { sheets: [], offcut: null };
  const grounds = beds.map((bed) => groundOf(bed, pieces));
  const random = seeded(seed);
  const fill = filler(pieces, spacing);
  const nestable = pieces.map((piece) => mayNest(piece, pieces));
  const big = pieces.flatMap((_, i) => (nestable[i] ? [] : [i]));
  const small = pieces.flatMap((_, i) => (nestable[i] ? [i] : []));
  const filling = noFilling(pieces.length);
  const kept = noFilling(pieces.length);
  const best = noFilling(pieces.length);

  // first: biggest pieces first, sheets taken as they are needed
  let order = startingOrder(pieces, big, small);
  let manner: Manner = { rule: 0, windowRule: 0, fromLeft: true };
  let plan = firstPlan(order, fill, grounds, beds, pieces, manner, filling);
  if (plan.length === 0) return { sheets: [], offcut: null };
  copyFilling(filling, best);
  copyFilling(filling, kept);
  let bestManner = manner;
  let layout = layoutOf(plan, best, pieces, beds, spacing);
  yield layout;

  const scoreOf = (f: Filling, m: Manner) => {
    const bed = grounds[plan[plan.length - 1] as number] as Ground;
    const share = f.reach / (m.fromLeft ? bed.width : bed.height);
    return (
      share + 0.1 * (f.onLast / (bed.width * bed.height)) + (f.left > 0 ? 1 + f.left / (bed.width * bed.height) : 0)
    );
  };
  const batch = Math.max(4, Math.ceil(1500 / pieces.length));
  let bestScore = scoreOf(best, bestManner);
  let current = bestScore;
  let bestOrder = order;
  for (let round = 0; ; round++) {
    const length = 2000;
    if (round > 0) {
      order = bestOrder;
      current = bestScore;
      manner = bestManner;
      if (random() < 0.5) {
        manner = { ...manner, fromLeft: !manner.fromLeft };
        current = Infinity;
      }
    }
    for (let i = 0; i < length; i++) {
      const heat = 0.03 * (1 - i / length) ** 2;
      const changed = changedOrder(order, pieces, big.length, random);
      let m = manner;
      if (random() < 0.05) m = { ...m, rule: Math.floor(random() * RULES) };
      if (random() < 0.05) m = { ...m, windowRule: Math.floor(random() * RULES) };
      fill(
        changed,
        plan.map((n) => (grounds[n] as Ground).rooms),
        m,
        filling,
      );
      const score = scoreOf(filling, m);
      if (score <= current - heat * Math.log(random() + 1e-12)) {
        current = score;
        order = changed;
        manner = m;
        if (score < bestScore - 1e-9) {
          bestScore = score;
          bestOrder = order;
          bestManner = m;
          if (filling.left === 0) {
            copyFilling(filling, best);
            if (filling.onLast === 0) {
              plan = plan.slice(0, -1);
              fill(
                changed,
                plan.map((n) => (grounds[n] as Ground).rooms),
                m,
                filling,
              );
              copyFilling(filling, best);
              current = bestScore = scoreOf(filling, m);
            }
            layout = layoutOf(plan, best, pieces, beds, spacing);
          }
        }
      }
      if (i % batch === batch - 1) yield layout;
    }
  }
}

/** Two pieces of a part of the order changed over, or one put elsewhere. */
function changedOrder(order: Int32Array, pieces: readonly Piece[], split: number, random: () => number): Int32Array {
  const changed = order.slice();
  const bigs = split > 1 && (order.length - split < 2 || random() < 0.7);
  const [from, count] = bigs ? [0, split] : [split, order.length - split];
  if (count < 2) return changed;
  for (let tries = 0; tries < 8; tries++) {
    const a = from + Math.floor(random() * count);
    const b = from + Math.floor(random() * count);
    if ((pieces[changed[a] as number] as Piece).kind === (pieces[changed[b] as number] as Piece).kind) continue;
    const moved = changed[a] as number;
    if (random() < 0.5) {
      changed[a] = changed[b] as number;
      changed[b] = moved;
    } else {
      const step = a < b ? 1 : -1;
      for (let i = a; i !== b; i += step) changed[i] = changed[i + step] as number;
      changed[b] = moved;
    }
    break;
  }
  return changed;
}

function piecesOf(blanks: readonly Blank[], spacing: number): readonly Piece[] {
  const wanted = blanks.map((blank, n) => ({ ...blank, n })).filter(({ count }) => count > 0);
  if (wanted.length === 0) return [];
  const stances = stancesOf(wanted, spacing);
  const kinds: (readonly Stance[])[] = [];
  return wanted.flatMap(({ n, count }, i) => {
    const own = stances[i] as readonly Stance[];
    let kind = kinds.findIndex((other) => sameStances(own, other));
    if (kind < 0) kind = kinds.push(own) - 1;
    const area = coveredArea(own[0] as Stance);
    return Array.from({ length: count }, (): Piece => ({ blank: n, stances: own, kind, area }));
  });
}

const sameStances = (a: readonly Stance[], b: readonly Stance[]): boolean =>
  a.length === b.length &&
  a.every((stance, i) => {
    const other = b[i] as Stance;
    return (
      sameCover(stance.cover, other.cover) &&
      stance.windows.length === other.windows.length &&
      stance.windows.every(({ rooms }, k) =>
        sameCover(
          Float64Array.from(rooms),
          Float64Array.from((other.windows[k] as { rooms: readonly number[] }).rooms),
        ),
      )
    );
  });

/** Of the rectangle round it: what is between slants is hardly used. */
const coveredArea = ({ width, height }: Stance): number => width * height;

function mayNest({ stances, kind }: Piece, pieces: readonly Piece[]): boolean {
  return pieces.some(
    (host) =>
      host.kind !== kind &&
      host.stances.some(({ windows }) =>
        windows.some(({ rooms }) =>
          stances.some(({ width, height }) => {
            for (let i = 0; i < rooms.length; i += 4) {
              const [l, b, r, t] = rooms.slice(i, i + 4) as [number, number, number, number];
              if (width <= r - l + ROUNDING && height <= t - b + ROUNDING) return true;
            }
            return false;
          }),
        ),
      ),
  );
}

/** A bed as the search sees it. */
interface Ground {
  readonly rooms: Rooms;
  readonly width: number;
  readonly height: number;
  readonly area: number;
}

function groundOf({ outline, holes }: Bed, pieces: readonly Piece[]): Ground {
  const finest =
    Math.min(...pieces.map(({ stances }) => Math.min(...stances.map((s) => Math.min(s.width, s.height))))) / 4;
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const rooms = roomsWithin(outline, holes, finest);
  return {
    rooms: roomsOf(rooms.flatMap(({ left, bottom, right, top }) => [left, bottom, right, top])),
    width: Math.max(...xs) - Math.min(...xs),
    height: Math.max(...ys) - Math.min(...ys),
    area: ringArea(outline) + holes.reduce((sum, hole) => sum + ringArea(hole), 0),
  };
}

function ringArea(ring: Ring): number {
  let twice = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as { x: number; y: number };
    twice += a.x * b.y - b.x * a.y;
  });
  return twice / 2;
}

function startingOrder(pieces: readonly Piece[], big: readonly number[], small: readonly number[]): Int32Array {
  const bySize = (a: number, b: number) => (pieces[b] as Piece).area - (pieces[a] as Piece).area || a - b;
  return Int32Array.from([...[...big].sort(bySize), ...[...small].sort(bySize)]);
}

/** Beds taken one by one, cheapest for their area first, until all lies somewhere or no bed helps. */
function firstPlan(
  order: Int32Array,
  fill: ReturnType<typeof filler>,
  grounds: readonly Ground[],
  beds: readonly Bed[],
  pieces: readonly Piece[],
  manner: Manner,
  into: Filling,
): readonly number[] {
  const byPrice = beds
    .map((_, i) => i)
    .sort(
      (a, b) =>
        (beds[a] as Bed).cost / (grounds[a] as Ground).area - (beds[b] as Bed).cost / (grounds[b] as Ground).area ||
        a - b,
    );
  let plan: readonly number[] = [];
  let left = Infinity;
  const total = pieces.reduce((sum, { area }) => sum + area, 0);
  while (left > 0) {
    let better = false;
    for (const n of byPrice) {
      const { count } = beds[n] as Bed;
      if (plan.filter((taken) => taken === n).length >= count) continue;
      const longer = [...plan, n];
      fill(
        order,
        longer.map((m) => (grounds[m] as Ground).rooms),
        manner,
        into,
      );
      if (into.left < Math.min(left, total) - ROUNDING) {
        plan = longer;
        left = into.left;
        better = true;
        break;
      }
    }
    if (!better) break;
  }
  if (plan.length === 0) return plan;
  fill(
    order,
    plan.map((m) => (grounds[m] as Ground).rooms),
    manner,
    into,
  );
  return plan;
}

function layoutOf(
  plan: readonly number[],
  filling: Filling,
  pieces: readonly Piece[],
  beds: readonly Bed[],
  spacing: number,
): Layout {
  const sheets = plan.map((bed, n): PackedSheet => {
    const here = pieces.flatMap((_, i) => (filling.sheet[i] === n && (filling.stance[i] as number) >= 0 ? [i] : []));
    const places = here.map((i): Place => {
      const piece = pieces[i] as Piece;
      const host = filling.host[i] as number;
      return {
        blank: piece.blank,
        turn: (piece.stances[filling.stance[i] as number] as Stance).turn,
        x: filling.x[i] as number,
        y: filling.y[i] as number,
        within: host < 0 ? null : { place: here.indexOf(host), window: filling.window[i] as number },
      };
    });
    return { bed, places };
  });
  const bounds = sheets.map((_, n) =>
    pieces.flatMap(({ stances }, i) => {
      if (filling.sheet[i] !== n || (filling.stance[i] as number) < 0 || (filling.host[i] as number) >= 0) return [];
      const { width, height } = stances[filling.stance[i] as number] as Stance;
      const [left, bottom] = [filling.x[i] as number, filling.y[i] as number];
      return [{ left, bottom, right: left + width, top: bottom + height }];
    }),
  );
  return { sheets, offcut: offcutOf(sheets, bounds, beds, spacing) };
}
