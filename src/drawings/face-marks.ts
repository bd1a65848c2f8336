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
    const largest = [...loops].sort(largestFirst).slice(0, MOST_LOOPS);
    spots.push(...largest.flatMap((loop) => pointsInside(loop, loops)).map(plot.at));
  }
  return [...named].map(([text, spots]) => ({ text, spots, role: 'number' }));
}

/** A finger joint cuts a plate into many pieces: its name may lead to the largest of them. */
const MOST_LOOPS = 2;

const sizeOf = (loop: readonly Point[]): number => {
  const { left, right, top, bottom } = extentOf([loop]);
  return (right - left) * (top - bottom);
};

const largestFirst = (a: readonly Point[], b: readonly Point[]): number => sizeOf(b) - sizeOf(a);

/**
 * Points along the longer side of a face, on its middle line where that runs through what is cut, else in the middle of
 * the thickest of what is cut there: a handle has a grip, and a spout is all walls.
 */
function pointsInside(loop: readonly Point[], face: Loops): readonly Point[] {
  const { left, right, top, bottom } = extentOf([loop]);
  const along = right - left > top - bottom ? 'x' : 'y';
  const [from, to, middle] = along === 'x' ? [left, right, (top + bottom) / 2] : [bottom, top, (left + right) / 2];
  const on = (at: number, across: number): Point => (along === 'x' ? { x: at, y: across } : { x: across, y: at });
  return [0.5, 0.25, 0.75, 0.1, 0.9].flatMap((share) => {
    const at = from + share * (to - from);
    const cut = cutAcross(face, along, at).filter(([low, high]) => inside(loop, on(at, (low + high) / 2)));
    if (cut.some(([low, high]) => low < middle && middle < high)) return [on(at, middle)];
    const [thickest] = [...cut].sort(([a, b], [c, d]) => d - c - (b - a));
    return thickest === undefined ? [] : [on(at, (thickest[0] + thickest[1]) / 2)];
  });
}

/** From where to where a line across a face, at a place along it, runs through what is cut. */
function cutAcross(face: Loops, along: 'x' | 'y', at: number): readonly (readonly [number, number])[] {
  const across = along === 'x' ? 'y' : 'x';
  const met = face
    .flatMap((loop) =>
      loop.flatMap((a, i) => {
        const b = loop[(i + 1) % loop.length] as Point;
        if (a[along] > at === b[along] > at) return [];
        return [a[across] + ((at - a[along]) / (b[along] - a[along])) * (b[across] - a[across])];
      }),
    )
    .sort((a, b) => a - b);
  return met.flatMap((low, i) =>
    i % 2 === 0 && met[i + 1] !== undefined ? [[low, met[i + 1] as number] as const] : [],
  );
}
