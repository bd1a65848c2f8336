import type { Path } from '../../geometry/path.js';
import { wordExtent } from '../../geometry/word-extent.js';
import type { Mark } from '../../model/part.js';
import { extensionStops } from '../../optics/conjugates.js';
import { plainNumber } from '../../units/print.js';

/**
 * The scale stands still on the keepers, the index lines move with the sole. The line of a holder lies T* behind the
 * holder seat (and a constant more), so that every holder reads its infinity on the same scale line:
 * s + T* = z_seat + V + f·m.
 */
export interface FocusScale {
  /** z of the scale's infinity line. */
  readonly infinity: number;
  /** For each holder, in their order, its index line on the sole. */
  readonly indexes: readonly Index[];
  readonly left: readonly Path[];
  readonly leftMarks: readonly Mark[];
  readonly right: readonly Path[];
  readonly rightMarks: readonly Mark[];
  readonly sole: readonly Path[];
  readonly soleMarks: readonly Mark[];
  /** z of the screws through the keepers, moved clear of the words. */
  readonly keeperScrews: readonly number[];
}

export interface Index {
  readonly holder: string;
  /** Its number. */
  readonly mark: string;
  /** What stands beside its line: its number, and those of the holders that share the line. */
  readonly engraved: string;
  /** z at the closest station. */
  readonly z: number;
}

export interface FocusScaleGiven {
  readonly focalLength: number;
  readonly pupilMagnification: number;
  /** z of the film plane at infinity. */
  readonly filmAtInfinity: number;
  readonly farthest: number;
  readonly nearest: number;
  readonly reserve: number;
  readonly holders: readonly { readonly name: string; readonly effectiveDepth: number }[];
  readonly closest: number;
  readonly ply: number;
  /** |x| of the keepers' inner edge. */
  readonly keeperEdge: number;
  readonly keeperWidth: number;
  /** Middles of the screws from that edge. */
  readonly screwLine: number;
  readonly railLength: number;
  /** z of the screws of keepers that are there already; null where they follow the words. */
  readonly screwed: readonly number[] | null;
}

/** Solid between what is engraved and the keeper's edge: on the edge itself the beam chips it. */
const EDGE = 1;
const TICK = 3;
const AFTER_TICK = 0.8;
const HEIGHT = 2.5;
/** Behind the standard's rear face. */
const BEHIND = 8;
const LABEL_PITCH = 7;
/** As wide as the beam engraves: lines that lie nearer are one. */
const STROKE = 0.2;
/** From one number of an index line to the next. */
const NUMBER_PITCH = HEIGHT + 0.7;
const TICK_PITCH = 2.4;
/** From the first line to the word that names a column. */
const CAPTION = 5;
const SCREWS = 5;
/** Head of a countersunk wood screw of 3 mm (common practice), with a hair of wood before a word. */
const HEAD = 6;
const BESIDE_HEAD = 0.4;
/** How far a screw may be moved along the keeper. */
const SCREW_STRAYS = 20;
/** From the keeper's ends, not alike: turned end for end its holes miss the rail's. */
const FIRST_SCREW = 12;
const LAST_SCREW = 17;

const MAGNIFICATIONS = [50, 30, 20, 15, 12, 10, 8, 7, 6, 5, 4.5, 4, 3.5, 3, 2.5, 2, 1.8, 1.6, 1.4, 1.2, 1].map((k) => ({
  m: 1 / k,
  text: `1:${k}`,
}));
const DISTANCES = [
  20, 10, 7, 5, 4, 3, 2.5, 2, 1.8, 1.6, 1.4, 1.2, 1.1, 1, 0.9, 0.8, 0.7, 0.6, 0.55, 0.5, 0.45, 0.4, 0.35, 0.3, 0.25,
  0.2, 0.15,
];

interface Line {
  readonly z: number;
  readonly text: string;
  /** Exposure correction at it, in stops. */
  readonly stops?: string;
}

export function sizeFocusScale(given: FocusScaleGiven): FocusScale {
  const { focalLength: f, holders, closest, ply, filmAtInfinity, keeperEdge } = given;
  const depths = holders.map((h) => h.effectiveDepth);
  // the standard's rear face stands one ply ahead of the seat; the shallowest holder's line lies nearest to it
  const constant = BEHIND - ply - Math.min(...depths);
  const infinity = filmAtInfinity + constant;
  const least = given.farthest;
  const most = given.nearest + given.reserve / f;
  const at = (m: number) => infinity + f * m;
  const within = (m: number) => m >= least - 1e-9 && m <= most + 1e-9;
  const start: Line[] = least === 0 ? [{ z: infinity, text: 'inf' }] : [];
  const correction = (m: number) => plainNumber(extensionStops(m, given.pupilMagnification), 1);
  const magnifications = spaced([
    ...start,
    ...MAGNIFICATIONS.filter(({ m }) => within(m)).map(({ m, text }) => ({
      z: at(m),
      text,
      stops: `+${correction(m)}`,
    })),
  ]);
  const distances = spaced([
    ...start,
    ...DISTANCES.map((metres) => ({ m: f / (metres * 1000 - f), text: String(metres) }))
      .filter(({ m }) => m > 0 && within(m))
      .map(({ m, text }) => ({ z: at(m), text })),
  ]);
  const lines = indexLines(holders.map((h) => closest + h.effectiveDepth + constant));
  const indexes = holders.map((h, i) => {
    const mark = String(i + 1);
    const { engraved, z } = lines.find((line) => line.marks.includes(mark)) as IndexLine; // each is on one
    return { holder: h.name, mark, engraved, z };
  });
  const first = keeperEdge + EDGE;
  const last = keeperEdge + given.keeperWidth - EDGE;
  const beside = first + TICK + AFTER_TICK;
  const ahead = Math.min(...[...magnifications, ...distances].map(({ z }) => z)) - CAPTION;
  const named = magnifications.filter(({ text }) => text !== '');
  const corrections = [
    word('stops', ahead, { ending: last }),
    ...named.flatMap(({ stops, z }) => (stops === undefined ? [] : [word(stops, z, { ending: last })])),
  ];
  const screws = given.screwed ?? screwsBeside(given, corrections);
  return {
    infinity,
    indexes,
    right: magnifications.map(({ z }) => stroke(first, first + TICK, z)),
    rightMarks: [
      ...named.map(({ text, z }) => word(text, z, { beginning: beside })),
      ...corrections.filter((own) => !screws.some((z) => isUnder(underHeads(given, own), z))),
    ],
    left: distances.map(({ z }) => stroke(-first, -first - TICK, z)),
    leftMarks: [
      ...distances.filter(({ text }) => text !== '').map(({ text, z }) => word(text, z, { ending: -beside })),
      word('m', ahead, { ending: -beside }),
    ],
    sole: lines.flatMap(({ z }) => [1, -1].map((side) => stroke(side * (keeperEdge + 3), side * (keeperEdge - 7), z))),
    soleMarks: lines.flatMap(({ engraved, numberedAt }) => [
      word(engraved, numberedAt, { ending: keeperEdge - 8.2 }),
      word(engraved, numberedAt, { beginning: -keeperEdge + 8.2 }),
    ]),
    keeperScrews: screws,
  };
}

interface IndexLine {
  readonly z: number;
  readonly marks: readonly string[];
  readonly engraved: string;
  /** z of the middle of what is engraved beside it. */
  readonly numberedAt: number;
}

/**
 * The lines of some holders, from the front. Holders whose lines would lie in one stroke share it; where lines lie nearer
 * than their numbers are high, these move apart, as little as it takes, and stay in the order of the lines.
 */
function indexLines(places: readonly number[]): readonly IndexLine[] {
  const found: { z: number; marks: string[] }[] = [];
  for (const [i, z] of [...places.entries()].sort(([, a], [, b]) => a - b)) {
    const last = found.at(-1);
    if (last && z - last.z < STROKE) last.marks.push(String(i + 1));
    else found.push({ z, marks: [String(i + 1)] });
  }
  // of numbers that touch, each stands one pitch behind the next, and all of them about the middle of their lines
  const rows: { at: number; zs: number[] }[] = [];
  for (const { z } of found) {
    rows.push({ at: z, zs: [z] });
    for (let [ahead, behind] = rows.slice(-2); ahead && behind; [ahead, behind] = rows.slice(-2)) {
      if (behind.at - ahead.at >= ahead.zs.length * NUMBER_PITCH) break;
      const zs = [...ahead.zs, ...behind.zs];
      const at = zs.reduce((sum, each, k) => sum + each - k * NUMBER_PITCH, 0) / zs.length;
      rows.splice(-2, 2, { at, zs });
    }
  }
  const numberedAt = rows.flatMap(({ at, zs }) => zs.map((_, k) => at + k * NUMBER_PITCH));
  return found.map(({ z, marks }, i) => {
    const own = [...marks].sort((a, b) => Number(a) - Number(b));
    return { z, marks: own, engraved: own.join('+'), numberedAt: numberedAt[i] as number };
  });
}

const stroke = (from: number, to: number, z: number): Path => ({
  closed: false,
  vertices: [
    { x: from, y: z, bulge: 0 },
    { x: to, y: z, bulge: 0 },
  ],
});

/** A word beside its line, its first stroke beginning at an x or its last one ending there. */
function word(text: string, z: number, at: { readonly beginning: number } | { readonly ending: number }): Mark {
  const { left, right } = wordExtent(text, HEIGHT);
  const x = 'beginning' in at ? at.beginning - left : at.ending - right;
  return { text, x, y: z + HEIGHT / 2, height: HEIGHT, turn: 0 };
}

/** Lines that would crowd are left out; those that would only crowd the words keep their line. */
function spaced(lines: readonly Line[]): readonly Line[] {
  const kept: Line[] = [];
  let labelled = -Infinity;
  for (const line of lines) {
    const last = kept.at(-1);
    if (last && line.z - last.z < TICK_PITCH) continue;
    const roomy = line.z - labelled >= LABEL_PITCH;
    kept.push(roomy ? line : { z: line.z, text: '' });
    if (roomy) labelled = line.z;
  }
  return kept;
}

/** Where along the keeper the head of a screw would lie on a word of the right-hand one; words of the left-hand one end before it. */
function underHeads(
  { keeperEdge, screwLine }: FocusScaleGiven,
  { text, x, y }: Mark,
): readonly [number, number] | null {
  const { left, right } = wordExtent(text, HEIGHT);
  const middle = keeperEdge + screwLine;
  const reach = HEAD / 2 + BESIDE_HEAD;
  if (x + left >= middle + reach || x + right <= middle - reach) return null;
  const z = y - HEIGHT / 2;
  return [z - reach - HEIGHT / 2, z + reach + HEIGHT / 2];
}

const isUnder = (stretch: readonly [number, number] | null, z: number): boolean =>
  stretch !== null && z > stretch[0] && z < stretch[1];

/** Five screws along the keeper, moved to where they lie on the fewest words, by as little as it takes, and clear of the rails' dowels. */
function screwsBeside(given: FocusScaleGiven, words: readonly Mark[]): readonly number[] {
  const length = given.railLength;
  const dowels = [24, length - 30];
  const stretches = words.map((own) => underHeads(given, own)).filter((one) => one !== null);
  return Array.from({ length: SCREWS }, (_, i) => {
    const ideal = FIRST_SCREW + (i * (length - FIRST_SCREW - LAST_SCREW)) / (SCREWS - 1);
    let best = { z: ideal, hidden: Infinity };
    for (let k = 0; k <= 2 * SCREW_STRAYS; k++)
      for (const z of [ideal + k / 2, ideal - k / 2]) {
        if (z < 10 || z > length - 10 || dowels.some((dowel) => Math.abs(z - dowel) < 7)) continue;
        const hidden = stretches.filter((one) => isUnder(one, z)).length;
        if (hidden < best.hidden) best = { z, hidden };
      }
    return best.z;
  });
}
