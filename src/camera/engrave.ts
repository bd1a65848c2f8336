import { lettering } from '../geometry/lettering.js';
import { type Box, boundsOf, flatten, inside, moved, type Path, type Point } from '../geometry/path.js';
import { apply } from '../geometry/placement.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart, Mark, Part } from '../model/part.js';

/** Cap heights that are tried for a part's mark, the largest first; below the last it cannot be read in wood. */
const HEIGHTS = [4, 3, 2.5, 2];
/** Solid between a stroke and the part's edge. */
const EDGE = 1;

/**
 * Words become strokes, and each flat part gets its mark: id and revision, with an arrow where the part has one right
 * way round (`up`, or `lens` for what lies flat: towards the lens). The face that the laser sees is the one that will
 * not show, scales aside.
 */
export function engrave(
  parts: readonly Part[],
  revision: string,
): { readonly parts: readonly Part[]; readonly findings: readonly Finding[] } {
  const unmarked: string[] = [];
  const done = parts.map((part) => {
    if (part.kind !== 'flat') return part;
    const words = part.marks.flatMap(wordsOf);
    const own = markOf(part, revision, [...part.engraving, ...words]);
    if (own.length === 0) unmarked.push(part.id);
    return { ...part, engraving: [...part.engraving, ...words, ...own], marks: [] };
  });
  const findings: readonly Finding[] =
    unmarked.length === 0
      ? []
      : [
          {
            rule: 'small-mark',
            level: 'note',
            message: `Too small to carry a mark: ${unmarked.join(', ')}. Sort them by their outlines.`,
            value: unmarked.length,
            unit: unmarked.length === 1 ? 'part' : 'parts',
          },
        ];
  return { parts: done, findings };
}

const wordsOf = ({ text, x, y, height, turn }: Mark): readonly Path[] =>
  lettering(text, height).strokes.map((stroke) => ({ ...stroke, vertices: moved(stroke.vertices, { x, y, turn }) }));

/** The mark as strokes where there is room for it, else nothing. */
function markOf(part: FlatPart, revision: string, taken: readonly Path[]): readonly Path[] {
  const arrow = arrowOf(part);
  const texts = [`${part.id} ${revision}`, part.id];
  const room = roomOf(part, taken);
  for (const text of texts) {
    // with its arrow if it can be, else without, and then along a narrow part as well
    for (const pointing of arrow ? [arrow, null] : [null]) {
      for (const height of HEIGHTS) {
        const words = lettering(text, height);
        const width = words.width + (pointing ? 3.4 * height : 0);
        const block = pointing
          ? [...words.strokes, ...arrowStrokes(pointing, words.width + height, height)]
          : words.strokes;
        for (const turn of pointing ? [0] : [0, Math.PI / 2]) {
          const at = room(turn === 0 ? width : height, turn === 0 ? height : width);
          if (!at) continue;
          const origin = turn === 0 ? at : { x: at.x + height, y: at.y };
          return block.map((stroke) => ({ ...stroke, vertices: moved(stroke.vertices, { ...origin, turn }) }));
        }
      }
    }
  }
  return [];
}

/** Where own y points in the camera: up, towards the lens, or neither. Parts that stand in several places get no arrow. */
function arrowOf({ placements, marks }: FlatPart): { readonly sign: 1 | -1; readonly to: 'up' | 'lens' } | null {
  const [first] = placements;
  if (!first || marks.length > 0) return null;
  const turned = placements.filter((p) => p.when === undefined).length;
  if (turned > 1) return null;
  const origin = apply(first.matrix, { x: 0, y: 0, z: 0 });
  const tip = apply(first.matrix, { x: 0, y: 1, z: 0 });
  const up = tip.y - origin.y;
  const back = tip.z - origin.z;
  if (Math.abs(up) > 0.9) return { sign: up > 0 ? 1 : -1, to: 'up' };
  if (Math.abs(back) > 0.9) return { sign: back > 0 ? -1 : 1, to: 'lens' };
  return null;
}

/** An arrow and the first letter of where it points: U or L. */
function arrowStrokes({ sign, to }: { sign: 1 | -1; to: 'up' | 'lens' }, x: number, height: number): readonly Path[] {
  const half = height / 2;
  const tip = half + sign * half;
  const barb = tip - sign * height * 0.35;
  const line = (points: readonly (readonly [number, number])[]): Path => ({
    closed: false,
    vertices: points.map(([px, py]) => ({ x: px, y: py, bulge: 0 })),
  });
  const letter = lettering(to === 'up' ? 'U' : 'L', height * 0.8).strokes.map((stroke) => ({
    ...stroke,
    vertices: moved(stroke.vertices, { x: x + height, y: 0.1 * height, turn: 0 }),
  }));
  return [
    line([
      [x + 0.3 * height, half - sign * half],
      [x + 0.3 * height, tip],
    ]),
    line([
      [x, barb],
      [x + 0.3 * height, tip],
      [x + 0.6 * height, barb],
    ]),
    ...letter,
  ];
}

/**
 * Finds a place for a block on the part: inside the outline, clear of holes and of what is engraved already, as near to
 * the middle as it goes (beside a scale: as far from it as it goes).
 */
function roomOf(part: FlatPart, taken: readonly Path[]): (width: number, height: number) => Point | null {
  const outline = flatten(part.outline, 0.1);
  const holes = part.holes.map((hole) => flatten(hole, 0.1));
  const strokes = taken.map((path) => path.vertices);
  const edges = [
    ...[outline, ...holes].flatMap(ring),
    ...strokes.flatMap((points) => points.slice(1).map((p, i): Edge => [points[i] as Point, p])),
  ];
  const bounds = boundsOf(part.outline);
  const middle = { x: (bounds.left + bounds.right) / 2, y: (bounds.bottom + bounds.top) / 2 };
  const busy = strokes.flat();
  const from = busy.length > 0 ? { x: mean(busy.map((p) => p.x)), y: mean(busy.map((p) => p.y)) } : null;
  return (width, height) => {
    const fits = (x: number, y: number) => {
      const block = { left: x - EDGE, bottom: y - EDGE, right: x + width + EDGE, top: y + height + EDGE };
      const centre = { x: x + width / 2, y: y + height / 2 };
      return (
        inside(outline, centre) &&
        !holes.some((hole) => inside(hole, centre)) &&
        !edges.some(([a, b]) => crosses(block, a, b))
      );
    };
    const steps = 28;
    let best: Point | null = null;
    let least = Infinity;
    for (let i = 0; i <= steps; i++) {
      for (let k = 0; k <= steps; k++) {
        const x = bounds.left + EDGE + ((bounds.right - bounds.left - 2 * EDGE - width) * i) / steps;
        const y = bounds.bottom + EDGE + ((bounds.top - bounds.bottom - 2 * EDGE - height) * k) / steps;
        if (x < bounds.left || y < bounds.bottom) continue;
        const far = (to: Point) => (x + width / 2 - to.x) ** 2 + (y + height / 2 - to.y) ** 2;
        // a place must win by more than the last bits of the arithmetic
        const cost = from ? -far(from) : far(middle);
        if (cost < least - 1e-6 && fits(x, y)) {
          least = cost;
          best = { x, y };
        }
      }
    }
    return best;
  };
}

type Edge = readonly [Point, Point];

const ring = (points: readonly Point[]): readonly Edge[] =>
  points.map((p, i) => [p, points[(i + 1) % points.length] as Point]);
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Whether a segment touches an upright rectangle (slab test). */
function crosses({ left, bottom, right, top }: Box, a: Point, b: Point): boolean {
  let [enter, leave] = [0, 1];
  for (const [from, to, low, high] of [
    [a.x, b.x, left, right],
    [a.y, b.y, bottom, top],
  ] as const) {
    const run = to - from;
    if (Math.abs(run) < 1e-12) {
      if (from < low || from > high) return false;
      continue;
    }
    const [s, e] = run > 0 ? [(low - from) / run, (high - from) / run] : [(high - from) / run, (low - from) / run];
    enter = Math.max(enter, s);
    leave = Math.min(leave, e);
    if (enter > leave) return false;
  }
  return true;
}
