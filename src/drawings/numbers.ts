import { holderOf } from '../assembly/holders.js';
import type { Piece } from '../assembly/pieces.js';
import type { Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import type { Part } from '../model/part.js';
import type { Arrival } from './at-step.js';
import type { LabelRoom } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';

/** What a number stands for: equal pieces, or a whole. */
export interface Numbered {
  /** `F5`, `M4 × 20 countersunk`, `front box`. */
  readonly text: string;
  readonly count: number;
  /** Keys of the pieces that it may be led to. */
  readonly keys: readonly string[];
}

/** What a part is called on a drawing: its mark where it is made, where it is bought what one asks for in a shop. */
export function markOf(part: Part): string {
  if (part.kind !== 'bought') return madeMark(part);
  const { role, name } = part;
  // whatever words their owner has named them with
  if (role === 'lens') return name.replace(LENS_PIECE, '');
  return role === 'holder' ? name : shopName(name);
}

/** A lens is drawn in pieces. */
const LENS_PIECE = /, (?:front|barrel|rear)$/u;

/** `F1` as it is engraved; what bears no engraving is called in words: `lens clamp`. */
export const madeMark = ({ id }: Pick<Part, 'id'>): string => id.replaceAll('-', ' ');

/** Without what it is for, and without which piece of it this is: `shim 0.5 mm`, `tee nut 1/4-20`. */
const shopName = (name: string): string =>
  name.replace(/ (in|of|under|between|on|for) .*$/u, '').replace(/^(.*\d[^,]*), .*$/u, '$1');

/** The table calls what slides its rear, and the processing holder a tank. */
const WHOLES: Readonly<Record<string, string>> = {
  rear: 'sliding rear',
  'tank lid': 'lid',
  'tank slide': 'dark slide',
};

/** Holders, which are called as their owner calls them. */
const HOLDERS: readonly string[] = ['paper holder', 'tank'];

function wholeName(whole: string, pieces: readonly Piece[]): string {
  const own = HOLDERS.includes(whole) ? pieces.flatMap(({ placement }) => holderOf(placement) ?? []) : [];
  return own[0] ?? WHOLES[whole] ?? whole;
}

/** Things that come, equal ones together, in their order; a whole of what came in the same step has its numbers already. */
export function numberedOf(arrivals: readonly Arrival[]): readonly Numbered[] {
  const groups = new Map<string, { count: number; keys: string[] }>();
  const named = new Set<string>();
  for (const { pieces, whole } of arrivals) {
    const [first] = pieces;
    if (first === undefined || named.has(first.key)) continue;
    for (const { key } of pieces) named.add(key);
    const add = (text: string, count: number, own: readonly Piece[]) => {
      const known = groups.get(text) ?? { count: 0, keys: [] };
      groups.set(text, known);
      known.count += count;
      known.keys.push(...own.map(({ key }) => key));
    };
    const made = pieces.filter(({ part }) => part.kind !== 'bought');
    if (whole !== null) add(wholeName(whole, pieces), 1, pieces);
    // what one made goes in together, as a cap on its neck: each has its own number
    else if (made.length > 0) for (const piece of made) add(markOf(piece.part), 1, [piece]);
    else {
      // a screw and its head are one thing, and two screws whose heads are drawn by themselves are two
      const { part } = pieces.reduce((most, piece) => (piece.part.massKg > most.part.massKg ? piece : most), first);
      add(markOf(part), pieces.filter((piece) => piece.part === part).length, pieces);
    }
  }
  return [...groups].map(([text, { count, keys }]) => ({ text, count, keys }));
}

/** Before several equal pieces their count. */
export const numberText = ({ text, count }: Numbered): string => (count === 1 ? text : `${count} × ${text}`);

/** A number where it has room, led to a dot on its part. */
export interface WantedNumber {
  readonly text: string;
  /** On paper; any of them does. */
  readonly spots: readonly Point[];
}

export interface Numbers {
  readonly marks: readonly Mark[];
  readonly homeless: readonly string[];
}

/** How near the middle of a number may come to its part, and how far it may go, mm. */
const NEAR = 4;
const FAR = 70;

/** Numbers are heavier than words: they are what is looked for. */
export const NUMBER = { ...LETTERS, bold: true } as const;

/** Those that have the fewest spots first; `homeless` are those that find no room. */
export function numbersIn(wanted: readonly WantedNumber[], room: LabelRoom): Numbers {
  const marks: Mark[] = [];
  const homeless: string[] = [];
  const order = [...wanted].sort((a, b) => a.spots.length - b.spots.length);
  for (const { text, spots } of order) {
    const [at, ...or] = spots;
    const placed = at && room.place({ text, letters: { size: NUMBER.size, heavy: true }, at, or, from: NEAR, to: FAR });
    if (!placed) {
      homeless.push(text);
      continue;
    }
    if (placed.leader !== null) marks.push(...ledTo(placed.leader));
    for (const row of placed.rows)
      marks.push({ kind: 'words', role: 'number', at: row.start, text: row.text, anchor: 'start', ...NUMBER });
  }
  return { marks, homeless };
}

/** Smaller and smaller, until every number has room. */
const SHRINK = [1, 0.9, 0.8, 0.7, 0.6, 0.5] as const;

/** The largest drawing in which every number has room; else that in which the fewest have none. */
export function roomiest<Drawn extends Numbers>(draw: (shrink: number) => Drawn): Drawn {
  let best = draw(SHRINK[0]);
  for (const shrink of SHRINK.slice(1)) {
    if (best.homeless.length === 0) break;
    const smaller = draw(shrink);
    if (smaller.homeless.length < best.homeless.length) best = smaller;
  }
  return best;
}

/** A leader ends in a dot where it ends inside an outline: ISO 128-22 (from memory). */
export const ledTo = ([from, to]: readonly [Point, Point]): readonly Mark[] => [
  { kind: 'line', role: 'leader', points: [from, to], stroke: lines.leader },
  { kind: 'circle', role: 'leader', centre: from, radius: 0.5, fill: lines.leader.colour },
];
