import type { Box } from '../geometry/path.js';

/** A way in which a piece may lie: the size of the rectangle round it, and the rooms in its windows, from that rectangle's lower left corner. */
export interface Stance {
  /** rad, anticlockwise, in quarter turns. */
  readonly turn: number;
  readonly width: number;
  readonly height: number;
  /** One list a window; rooms of one window overlap. */
  readonly windows: readonly (readonly Box[])[];
}

/** What the packer knows of a piece. */
export interface Blank {
  /** At least one; all fit on an empty bed. */
  readonly stances: readonly Stance[];
}

export interface Bed {
  /** Of the sheet less its margins. */
  readonly width: number;
  readonly height: number;
  readonly spacing: number;
}

export interface Place {
  readonly blank: number;
  readonly sheet: number;
  readonly stance: Stance;
  /** Lower left corner of the rectangle round the piece, from the bed's. */
  readonly x: number;
  readonly y: number;
  /** The blank and its window in which this one lies. */
  readonly within: { readonly blank: number; readonly window: number } | null;
}

/**
 * Packs pieces on as little sheet as it can: the rectangle round each piece, pieces that fit into windows first of all
 * there. Free room is kept as all its largest rectangles (they overlap); each piece takes the one that suits it best
 * by one of four rules. Several orders are tried with each rule, then the best order is shuffled a little, `effort`
 * times, and kept where that is no worse. No clock and no chance: the same pieces give the same places.
 *
 * Each rectangle stands for its piece and the spacing to the right and above it, and so does the bed.
 */
export function pack(blanks: readonly Blank[], bed: Bed, { effort }: { readonly effort: number }): readonly Place[] {
  let best: Packing | null = null;
  for (const order of startingOrders(blanks)) {
    for (const rule of rules) {
      const packing = fill(blanks, order, bed, rule);
      if (best === null || packing.cost < best.cost - GAIN) best = packing;
    }
  }
  if (best === null) return [];
  const next = shuffler();
  let current = best;
  for (let i = 0; i < effort; i++) {
    const order = shuffled(current, next);
    const packing = fill(blanks, order, bed, i % 8 === 7 ? (rules[next(rules.length)] as Rule) : current.rule);
    // a little worse is put up with at first, less and less: else the search stays where it began
    const patience = (PATIENCE * (1 - i / effort) * next(1000)) / 1000;
    if (packing.cost <= current.cost + patience + GAIN) current = packing;
    if (packing.cost < best.cost - GAIN) best = packing;
  }
  return best.places;
}

/** The order changed a little: two pieces swapped, one put elsewhere, or one of the emptiest sheet put before others. */
function shuffled({ order, emptiest }: Packing, next: (below: number) => number): readonly number[] {
  const changed = [...order];
  const move = next(3);
  if (move === 2 && emptiest.length > 0) {
    const from = changed.indexOf(emptiest[next(emptiest.length)] as number);
    changed.splice(next(from + 1), 0, ...changed.splice(from, 1));
    return changed;
  }
  const [from, to] = [next(changed.length), next(changed.length)];
  if (move === 0) changed.splice(to, 0, ...changed.splice(from, 1));
  else [changed[from], changed[to]] = [changed[to] as number, changed[from] as number];
  return changed;
}

interface Packing {
  readonly places: readonly Place[];
  readonly order: readonly number[];
  readonly rule: Rule;
  /** What lies on the sheet that is least filled. */
  readonly emptiest: readonly number[];
  /**
   * Sheets, of which the emptiest counts only for what lies on it: so a search that empties it comes nearer and nearer
   * to saving it. Sheets filled unevenly, a strip left clear and pieces held in windows break ties.
   */
  readonly cost: number;
}

/** In sheets: a worse packing is put up with to this at first. */
const PATIENCE = 0.06;
/** Worth of full sheets beside half-empty ones, and of a clear strip, in sheets. */
const UNEVEN = 0.05;
const CLEAR = 0.02;

/** A tie for the packer: a millionth of a sheet. */
const GAIN = 1e-6;
/** What lies in a window is held by its waste: worth the ten-thousandth part of a sheet. */
const HELD = 1e-4;
/** Rounding of sums of lengths must not push a piece off a bed that it fits exactly, mm. */
const ROUNDING = 1e-6;

interface Room {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** How well a piece w × h lies in the lower left corner of a room on the nth sheet: least is best. */
type Rule = (room: Room, w: number, h: number, sheet: number) => number;

const rules: readonly Rule[] = [
  (room, w, h) => Math.min(room.w - w, room.h - h),
  (room, w, h) => room.w * room.h - w * h,
  (room, w, _, sheet) => sheet * FAR + (room.x + w) * 1e3 + room.y,
  (room, _, h, sheet) => sheet * FAR + (room.y + h) * 1e3 + room.x,
];
/** Farther than any place on a sheet, so that an earlier sheet always comes first. */
const FAR = 1e8;

/** The bed of a sheet or one window on it. */
interface Space {
  readonly sheet: number;
  readonly within: { readonly blank: number; readonly window: number } | null;
  rooms: Room[];
}

function startingOrders(blanks: readonly Blank[]): readonly (readonly number[])[] {
  const size = (of: (s: Stance) => number) => {
    const sizes = blanks.map(({ stances }) => of(stances[0] as Stance));
    return blanks.map((_, i) => i).sort((a, b) => (sizes[b] as number) - (sizes[a] as number) || a - b);
  };
  return [
    size((s) => s.width * s.height),
    size((s) => Math.max(s.width, s.height)),
    size((s) => s.width + s.height),
    size((s) => s.height),
    size((s) => s.width),
    size((s) => Math.min(s.width, s.height)),
  ];
}

function fill(blanks: readonly Blank[], order: readonly number[], bed: Bed, rule: Rule): Packing {
  const { spacing } = bed;
  const whole: Room = { x: 0, y: 0, w: bed.width + spacing, h: bed.height + spacing };
  const beds: Space[] = [];
  const windows: Space[] = [];
  const places: Place[] = [];
  const smallest =
    Math.min(...blanks.flatMap(({ stances }) => stances.map((s) => Math.min(s.width, s.height)))) + spacing;

  for (const blank of order) {
    const { stances } = blanks[blank] as Blank;
    let found = bestRoom(windows, stances, spacing, rule) ?? bestRoom(beds, stances, spacing, rule);
    if (found === null) {
      beds.push({ sheet: beds.length, within: null, rooms: [whole] });
      found = bestRoom(beds.slice(-1), stances, spacing, rule);
      if (found === null) throw new Error(`blank ${blank} is larger than the bed`);
    }
    const { space, room, stance } = found;
    places.push({ blank, sheet: space.sheet, stance, x: room.x, y: room.y, within: space.within });
    take(space, { x: room.x, y: room.y, w: stance.width + spacing, h: stance.height + spacing }, smallest);
    // what lies in a window keeps its own windows empty
    if (space.within !== null) continue;
    stance.windows.forEach((boxes, window) => {
      const rooms = boxes
        .map((b) => ({
          x: room.x + b.left + spacing,
          y: room.y + b.bottom + spacing,
          w: b.right - b.left - spacing,
          h: b.top - b.bottom - spacing,
        }))
        .filter(({ w, h }) => w >= smallest && h >= smallest);
      if (rooms.length > 0) windows.push({ sheet: space.sheet, within: { blank, window }, rooms });
    });
  }
  const size = bed.width * bed.height;
  const filled = beds.map(
    ({ sheet }) =>
      places.reduce((area, p) => area + (p.sheet === sheet && !p.within ? p.stance.width * p.stance.height : 0), 0) /
      size,
  );
  const least = Math.min(...filled);
  const barest = filled.indexOf(least);
  const clear = Math.max(0, ...beds.map(({ sheet }) => clearStrip(places, sheet, bed))) / size;
  const uneven = filled.reduce((sum, f) => sum + f * f, 0) / filled.length;
  const held = places.filter(({ within }) => within !== null).length;
  return {
    places,
    order,
    rule,
    emptiest: places.filter(({ sheet }) => sheet === barest).map(({ blank }) => blank),
    cost: beds.length - 1 + least - UNEVEN * uneven - CLEAR * clear - HELD * held,
  };
}

function bestRoom(spaces: readonly Space[], stances: readonly Stance[], spacing: number, rule: Rule) {
  let best: { space: Space; room: Room; stance: Stance } | null = null;
  let least = Infinity;
  for (const space of spaces) {
    for (const room of space.rooms) {
      for (const stance of stances) {
        const [w, h] = [stance.width + spacing, stance.height + spacing];
        if (w > room.w + ROUNDING || h > room.h + ROUNDING) continue;
        const score = rule(room, w, h, space.sheet);
        if (score < least - ROUNDING) {
          best = { space, room, stance };
          least = score;
        }
      }
    }
  }
  return best;
}

/** Takes a rectangle out of a space: each room that it cuts leaves up to four, and what lies within another room goes. */
function take(space: Space, taken: Room, smallest: number): void {
  const kept: Room[] = [];
  const cut: Room[] = [];
  for (const room of space.rooms) {
    const apart =
      taken.x >= room.x + room.w - ROUNDING ||
      taken.x + taken.w <= room.x + ROUNDING ||
      taken.y >= room.y + room.h - ROUNDING ||
      taken.y + taken.h <= room.y + ROUNDING;
    if (apart) {
      kept.push(room);
      continue;
    }
    const right = taken.x + taken.w;
    const top = taken.y + taken.h;
    if (taken.x - room.x >= smallest) cut.push({ ...room, w: taken.x - room.x });
    if (room.x + room.w - right >= smallest) cut.push({ ...room, x: right, w: room.x + room.w - right });
    if (taken.y - room.y >= smallest) cut.push({ ...room, h: taken.y - room.y });
    if (room.y + room.h - top >= smallest) cut.push({ ...room, y: top, h: room.y + room.h - top });
  }
  const holds = (a: Room, b: Room) =>
    b.x >= a.x - ROUNDING &&
    b.y >= a.y - ROUNDING &&
    b.x + b.w <= a.x + a.w + ROUNDING &&
    b.y + b.h <= a.y + a.h + ROUNDING;
  const fresh = cut.filter(
    (room, i) =>
      !kept.some((k) => holds(k, room)) && !cut.some((c, j) => i !== j && holds(c, room) && (j < i || !holds(room, c))),
  );
  space.rooms = [...kept, ...fresh];
}

/** The largest full-height or full-width rectangle that a sheet keeps clear, mm². */
function clearStrip(places: readonly Place[], sheet: number, bed: Bed): number {
  let [right, top] = [0, 0];
  for (const place of places) {
    if (place.sheet !== sheet) continue;
    right = Math.max(right, place.x + place.stance.width + bed.spacing);
    top = Math.max(top, place.y + place.stance.height + bed.spacing);
  }
  return Math.max(0, (bed.width - right) * bed.height, (bed.height - top) * bed.width);
}

/** Numbers below a bound, always the same row of them: a linear congruence modulo 2³¹ − 1 (Park and Miller's minimal standard). */
function shuffler(): (below: number) => number {
  let state = 1;
  return (below) => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
}
