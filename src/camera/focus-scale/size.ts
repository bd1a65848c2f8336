import type { Path } from '../../geometry/path.js';
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
  /** For each holder, z of its index line on the sole at the closest station. */
  readonly indexes: readonly { readonly holder: string; readonly mark: string; readonly z: number }[];
  readonly left: readonly Path[];
  readonly leftMarks: readonly Mark[];
  readonly right: readonly Path[];
  readonly rightMarks: readonly Mark[];
  readonly sole: readonly Path[];
  readonly soleMarks: readonly Mark[];
  /** z of the screws through the keepers, moved clear of the words. */
  readonly keeperScrews: readonly number[];
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
  /** |x| of the keepers' inner edge, and their width. */
  readonly keeperEdge: number;
  readonly railLength: number;
}

const TICK = 3;
const AFTER_TICK = 0.8;
const HEIGHT = 2.5;
/** Behind the standard's rear face. */
const BEHIND = 8;
const LABEL_PITCH = 7;
const TICK_PITCH = 2.4;
const SCREWS = 5;
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
      text: `${text} +${correction(m)}`,
    })),
  ]);
  const distances = spaced([
    ...start,
    ...DISTANCES.map((metres) => ({ m: f / (metres * 1000 - f), text: String(metres) }))
      .filter(({ m }) => m > 0 && within(m))
      .map(({ m, text }) => ({ z: at(m), text })),
  ]);
  const indexes = holders.map((h, i) => ({
    holder: h.name,
    mark: String(i + 1),
    z: closest + h.effectiveDepth + constant,
  }));
  const labelled = [...magnifications, ...distances].filter((line) => line.text !== '').map((line) => line.z);
  return {
    infinity,
    indexes,
    right: magnifications.map(({ z }) => stroke(keeperEdge, keeperEdge + TICK, z)),
    rightMarks: words(magnifications, keeperEdge + TICK + AFTER_TICK),
    left: distances.map(({ z }) => stroke(-keeperEdge, -keeperEdge - TICK, z)),
    leftMarks: words(distances, -keeperEdge - TICK - AFTER_TICK - 4.5 * HEIGHT * 0.8),
    sole: indexes.flatMap(({ z }) =>
      [1, -1].map((side) => stroke(side * (keeperEdge + 3), side * (keeperEdge - 7), z)),
    ),
    soleMarks: indexes.flatMap(({ mark, z }) =>
      [1, -1].map((side) => ({
        text: mark,
        x: side > 0 ? keeperEdge - 10 : -keeperEdge + 8.2,
        y: z + HEIGHT / 2,
        height: HEIGHT,
        turn: 0,
      })),
    ),
    keeperScrews: screws(given.railLength, labelled),
  };
}

const stroke = (from: number, to: number, z: number): Path => ({
  closed: false,
  vertices: [
    { x: from, y: z, bulge: 0 },
    { x: to, y: z, bulge: 0 },
  ],
});

const words = (lines: readonly Line[], x: number): readonly Mark[] =>
  lines
    .filter(({ text }) => text !== '')
    .map(({ text, z }) => ({ text, x, y: z + HEIGHT / 2, height: HEIGHT, turn: 0 }));

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

/** Five screws along the keeper, each moved by the least that clears the words of both scales and the rails' dowels. */
function screws(length: number, words: readonly number[]): readonly number[] {
  const taken = [...words.map((z) => ({ z, free: 3.6 })), ...[24, length - 30].map((z) => ({ z, free: 7 }))];
  const clear = (z: number) => taken.every((other) => Math.abs(z - other.z) >= other.free);
  return Array.from({ length: SCREWS }, (_, i) => {
    const ideal = FIRST_SCREW + (i * (length - FIRST_SCREW - LAST_SCREW)) / (SCREWS - 1);
    for (let k = 0; k <= 40; k++) {
      for (const sign of [1, -1]) {
        const z = ideal + sign * k * 0.5;
        if (z >= 10 && z <= length - 10 && clear(z)) return z;
      }
    }
    return ideal;
  });
}
