import type { Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { wordsWidth } from '../paper/words-width.js';
import { type LabelRoom, wordsPatch } from './label-room.js';
import { ledTo, NUMBER } from './numbers.js';
import { hundredths } from './plot.js';
import type { Squared } from './silhouettes.js';

/** A number, and the bodies that it may be led to, as `Squared` counts them. */
export interface ColumnNumber {
  readonly text: string;
  readonly bodies: readonly number[];
}

interface Given {
  readonly squared: Squared;
  /** From the view to paper. */
  readonly at: (point: Point) => Point;
  /** Paper over true. */
  readonly scale: number;
  /** Where the left column ends and the right one begins, and from where to where both go. */
  readonly columns: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  /** The group on its paper, and no words there yet. */
  readonly bare: () => LabelRoom;
}

/** From base line to base line in a column, mm. */
export const ROW = 4.6;
/** Between a number and its leader, mm. */
const GAP = 0.8;
/** Round the dot of a leader, so much of its part is to be seen, mm on paper. */
const PLAIN = 1.6;
/** Of the capitals over the base line, as a share of the size. */
const HALF_HIGH = 0.36;

export const numberWidth = (text: string): number => wordsWidth(text, { size: NUMBER.size, heavy: true });

interface Spot {
  readonly column: number;
  readonly row: number;
  readonly clear: number;
}

interface Led {
  readonly text: string;
  readonly plain: readonly Spot[];
  readonly side: 'left' | 'right';
  readonly spot: Point;
}

/**
 * Numbers on large parts where they have room, the others in two columns beside the group in the order of the heights
 * that they lead to, so that no leader crosses another. What is not seen at all goes without.
 */
export function numberColumns(numbers: readonly ColumnNumber[], given: Given): readonly Mark[] {
  const clear = clearances(given.squared);
  const spotted = numbers.flatMap(({ text, bodies }) => {
    const spots = spotsOn(bodies, given.squared, clear);
    return spots.length === 0 ? [] : [{ text, bodies: new Set(bodies), spots, plain: plainOf(spots, given) }];
  });
  const beside = new Set(spotted.filter((one) => numberOn(one, given, given.bare()) === null));
  const rows = Math.max(1, Math.floor((given.columns.bottom - given.columns.top) / ROW) + 1);
  for (;;) {
    const led = sided(
      [...beside].map(({ text, plain }) => ({
        text,
        plain,
        left: sideways(plain, 'left', given),
        right: sideways(plain, 'right', given),
      })),
      rows,
    );
    const leaders = uncrossed(led, given);
    const room = given.bare();
    room.keepClear(leaders.map(([from, to]) => [from, to]));
    const onParts = spotted.flatMap((one) => (beside.has(one) ? [] : [{ one, mark: numberOn(one, given, room) }]));
    const crossed = onParts.find(({ mark }) => mark === null);
    // a leader runs over the only place that a number has on its part
    if (crossed !== undefined) beside.add(crossed.one);
    else
      return [
        ...onParts.flatMap(({ mark }) => mark ?? []),
        ...leaders.flatMap(([from, to, text]) => besideMarks(from, to, text, given)),
      ];
  }
}

/** How many squares there are from each square to the next that shows something else. */
function clearances({ columns, rows, owner }: Squared): Int32Array {
  const clear = new Int32Array(owner.length);
  const look = (c: number, r: number, steps: readonly (readonly [number, number])[]) => {
    const i = r * columns + c;
    let least = clear[i] as number;
    for (const [dc, dr] of steps) {
      const [oc, or] = [c + dc, r + dr];
      const j = or * columns + oc;
      const outside = oc < 0 || or < 0 || oc >= columns || or >= rows;
      least = Math.min(least, outside || owner[j] !== owner[i] ? 1 : (clear[j] as number) + 1);
    }
    clear[i] = least;
  };
  clear.fill(columns + rows);
  for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) look(c, r, BEFORE);
  for (let r = rows - 1; r >= 0; r--) for (let c = columns - 1; c >= 0; c--) look(c, r, AFTER);
  return clear;
}

const BEFORE = [
  [-1, 0],
  [-1, -1],
  [0, -1],
  [1, -1],
] as const;
const AFTER = [
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
] as const;

function spotsOn(bodies: readonly number[], { columns, owner }: Squared, clear: Int32Array): readonly Spot[] {
  const wanted = new Set(bodies);
  const spots: Spot[] = [];
  owner.forEach((one, i) => {
    if (wanted.has(one)) spots.push({ column: i % columns, row: Math.floor(i / columns), clear: clear[i] as number });
  });
  return spots;
}

const placeOf = ({ column, row }: Spot, { squared, at }: Given): Point =>
  at({ x: (squared.column + column + 0.5) * squared.side, y: (squared.row + row + 0.5) * squared.side });

/** A number that stands on its part itself, all of it on faces that are seen, and on no line. */
function numberOn(
  {
    text,
    bodies,
    spots,
  }: { readonly text: string; readonly bodies: ReadonlySet<number>; readonly spots: readonly Spot[] },
  given: Given,
  room: LabelRoom,
): Mark | null {
  const { squared, scale } = given;
  const width = numberWidth(text);
  const square = squared.side * scale;
  const [across, high] = [Math.ceil((width / 2 + 1) / square), Math.ceil(NUMBER.size / square)];
  if (bodies.size > 1) return null;
  const owned = (c: number, r: number) =>
    c >= 0 &&
    c < squared.columns &&
    r >= 0 &&
    r < squared.rows &&
    bodies.has(squared.owner[r * squared.columns + c] as number);
  const best = [...spots].sort((a, b) => b.clear - a.clear).filter(({ clear }, i) => clear >= high && i % 3 === 0);
  for (const spot of best) {
    let all = true;
    for (let c = -across; all && c <= across; c++)
      for (let r = -high; all && r <= high; r++) all = owned(spot.column + c, spot.row + r);
    if (!all) continue;
    const middle = placeOf(spot, given);
    const start = { x: hundredths(middle.x - width / 2), y: hundredths(middle.y + HALF_HIGH * NUMBER.size) };
    const patch = wordsPatch(text, start, { size: NUMBER.size, heavy: true });
    if (
      !room.isFree({
        left: patch.left - 0.6,
        right: patch.right + 0.6,
        top: patch.top - 0.4,
        bottom: patch.bottom + 0.4,
      })
    )
      continue;
    room.take(patch);
    return { kind: 'words', role: 'number', at: start, text, anchor: 'start', ...NUMBER };
  }
  return null;
}

interface Sideways {
  readonly spot: Point;
  /** Squares of other things between the spot and the side. */
  readonly crossed: number;
}

/** Spots with enough of their part round them, where it has such; else those with the most. */
function plainOf(spots: readonly Spot[], { squared, scale }: Given): readonly Spot[] {
  const most = Math.max(...spots.map(({ clear }) => clear));
  const plain = Math.min(most, Math.ceil(PLAIN / (squared.side * scale)));
  return spots.filter(({ clear }) => clear >= plain);
}

/** From which spot the level way to a side crosses least. */
function sideways(own: readonly Spot[], side: 'left' | 'right', given: Given): Sideways {
  const { squared } = given;
  let best: { readonly spot: Spot; readonly crossed: number } | undefined;
  for (const spot of own) {
    let crossed = 0;
    const row = spot.row * squared.columns;
    const [from, to] = side === 'left' ? [0, spot.column] : [spot.column + 1, squared.columns];
    for (let c = from; c < to; c++) if ((squared.owner[row + c] as number) >= 0) crossed++;
    if (best === undefined || crossed < best.crossed) best = { spot, crossed };
  }
  if (best === undefined) throw new Error('a number has a spot');
  return { spot: placeOf(best.spot, given), crossed: best.crossed };
}

interface Sided {
  readonly text: string;
  readonly plain: readonly Spot[];
  readonly left: Sideways;
  readonly right: Sideways;
}

/** Each to the side to which it crosses less, no more on a side than have room there. */
function sided(numbers: readonly Sided[], rows: number): readonly Led[] {
  const order = [...numbers].sort((a, b) => a.left.crossed - a.right.crossed - (b.left.crossed - b.right.crossed));
  const wish = order.filter(({ left, right }) => left.crossed <= right.crossed).length;
  const most = Math.max(rows, Math.ceil(order.length / 2));
  const count = Math.min(most, Math.max(order.length - most, wish));
  return order.map(({ text, plain, left, right }, i) =>
    i < count ? { text, plain, side: 'left', spot: left.spot } : { text, plain, side: 'right', spot: right.spot },
  );
}

type Leader = readonly [Point, Point, string];

/** Leaders from their dots to places in the columns. */
function uncrossed(wished: readonly Led[], given: Given): readonly Leader[] {
  const { columns } = given;
  let led = wished;
  const ends = led.map(({ side }): Point => ({ x: side === 'left' ? columns.left - GAP : columns.right + GAP, y: 0 }));
  for (const side of ['left', 'right'] as const) {
    const own = led
      .flatMap((one, i) => (one.side === side ? [i] : []))
      .sort((a, b) => spotAt(led, a).y - spotAt(led, b).y);
    const heights = spread(
      own.map((i) => spotAt(led, i).y),
      columns,
    );
    own.forEach((i, k) => {
      ends[i] = { x: (ends[i] as Point).x, y: heights[k] as number };
    });
  }
  changePlaces(led, ends);
  led = led.map((one, i) => ({ ...one, spot: barest(one, ends[i] as Point, given) }));
  changePlaces(led, ends);
  return led.map(({ spot, text }, i) => [spot, ends[i] as Point, text]);
}

/** Two leaders that cross are longer together than the two that change places: it comes to an end, and none cross. */
function changePlaces(led: readonly Led[], ends: Point[]): void {
  for (let again = true; again; ) {
    again = false;
    for (let i = 0; i < led.length; i++)
      for (let k = 0; k < i; k++) {
        const [a, b, p, q] = [spotAt(led, i), spotAt(led, k), ends[i] as Point, ends[k] as Point];
        if (distance(a, p) + distance(b, q) <= distance(a, q) + distance(b, p) + SHORTER) continue;
        [ends[i], ends[k]] = [q, p];
        again = true;
      }
  }
}

/** Spots that are tried for one leader. */
const SPOTS = 150;
/** What a millimetre of leader costs, of a millimetre over what is drawn. */
const BARE = 0.3;

/** From which spot the leader runs least over what is drawn. */
function barest({ plain, spot: was }: Led, end: Point, given: Given): Point {
  const { squared, scale, at } = given;
  const first = at({ x: squared.column * squared.side, y: squared.row * squared.side });
  const step = squared.side * scale;
  const over = (from: Point): number => {
    const length = distance(from, end);
    let cost = BARE * length;
    for (let way = 0; way < length; way += step) {
      const column = Math.floor((from.x + ((end.x - from.x) * way) / length - first.x) / step);
      const row = Math.floor((first.y - from.y - ((end.y - from.y) * way) / length) / step);
      if (column < 0 || row < 0 || column >= squared.columns || row >= squared.rows) continue;
      if ((squared.owner[row * squared.columns + column] as number) >= 0) cost += step;
    }
    return cost;
  };
  let best = { spot: was, cost: over(was) };
  const every = Math.ceil(plain.length / SPOTS);
  for (let i = 0; i < plain.length; i += every) {
    const spot = placeOf(plain[i] as Spot, given);
    const cost = over(spot);
    if (cost < best.cost) best = { spot, cost };
  }
  return best.spot;
}

/** So much shorter two leaders have to become to change places, mm. */
const SHORTER = 1e-6;

const spotAt = (led: readonly Led[], i: number): Point => (led[i] as Led).spot;

const distance = (a: Point, b: Point): number => Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);

/** Heights in their order a row apart at least, as near to where they would be as can be: rows that meet share what they give way. */
function spread(wanted: readonly number[], { top, bottom }: Given['columns']): readonly number[] {
  const blocks: { readonly first: number; readonly rows: number }[] = [];
  for (const y of wanted) {
    let block = { first: y, rows: 1 };
    for (let last = blocks.at(-1); last && last.first + last.rows * ROW > block.first; last = blocks.at(-1)) {
      blocks.pop();
      const rows = last.rows + block.rows;
      const first = (last.rows * last.first + block.rows * (block.first - last.rows * ROW)) / rows;
      block = { first: within(first, top, bottom - (rows - 1) * ROW), rows };
    }
    blocks.push({ ...block, first: within(block.first, top, bottom - (block.rows - 1) * ROW) });
  }
  return blocks.flatMap(({ first, rows }) => Array.from({ length: rows }, (_, k) => first + k * ROW));
}

const within = (y: number, low: number, high: number): number => Math.max(low, Math.min(high, y));

function besideMarks(spot: Point, end: Point, text: string, { columns }: Given): readonly Mark[] {
  const isLeft = end.x < (columns.left + columns.right) / 2;
  const start = {
    x: hundredths(isLeft ? end.x - GAP - numberWidth(text) : end.x + GAP),
    y: hundredths(end.y + HALF_HIGH * NUMBER.size),
  };
  const to = { x: hundredths(end.x), y: hundredths(end.y) };
  return [...ledTo([spot, to]), { kind: 'words', role: 'number', at: start, text, anchor: 'start', ...NUMBER }];
}
