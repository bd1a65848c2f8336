import { inside, type Point } from '../geometry/path.js';
import type { Part } from '../model/part.js';
import type { Loops } from './hatch.js';
import type { Name } from './names.js';
import { madeMark } from './numbers.js';
import { extentOf, type Plot } from './plot.js';

/** A part's faces where a saw went through it, true lengths. */
export interface MarkedFace {
  readonly part: Part;
  readonly loops: Loops;
}

/** The mark of each made part that is cut, at a point inside its face. */
export function marksOfFaces(faces: readonly MarkedFace[], plot: Plot): readonly Name[] {
  const named = new Map<string, Point[]>();
  for (const { part, loops } of faces) {
    if (part.kind === 'bought') continue;
    const mark = madeMark(part);
    const spots = named.get(mark) ?? [];
    named.set(mark, spots);
    const candidates = [...loops].sort(largestFirst).slice(0, MOST_LOOPS).flatMap(pointsInside);
    spots.push(...candidates.filter((point) => isCut(loops, point)).map(plot.at));
  }
  return [...named].map(([text, spots]) => ({ text, spots, role: 'number' }));
}

/** A finger joint cuts a plate into many pieces: its name may lead to the largest of them. */
const MOST_LOOPS = 2;

/** Not in a hole, such as the grip of a handle. */
const isCut = (loops: Loops, point: Point): boolean => loops.filter((loop) => inside(loop, point)).length % 2 === 1;

const sizeOf = (loop: readonly Point[]): number => {
  const { left, right, top, bottom } = extentOf([loop]);
  return (right - left) * (top - bottom);
};

const largestFirst = (a: readonly Point[], b: readonly Point[]): number => sizeOf(b) - sizeOf(a);

/** Points of the middle line of a face, along its longer side. */
function pointsInside(loop: readonly Point[]): readonly Point[] {
  const { left, right, top, bottom } = extentOf([loop]);
  const long = right - left > top - bottom;
  return [0.5, 0.25, 0.75, 0.1, 0.9].flatMap((share) => {
    const point = long
      ? { x: left + share * (right - left), y: (top + bottom) / 2 }
      : { x: (left + right) / 2, y: bottom + share * (top - bottom) };
    return inside(loop, point) ? [point] : [];
  });
}
