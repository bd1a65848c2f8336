import { area, boundsOfPoints, type Point, polygon } from '../geometry/path.js';
import { readJson } from '../model/json-text.js';
import type { Remnant } from '../model/remnant.js';

/** Why a text is no remnant, and what would be taken. */
export interface RemnantTrouble {
  readonly what: string;
  readonly accepted: string;
}

/** A sheet cut full of small parts has some thousand corners; what has more was not drawn by hand or by us. */
const MOST_CORNERS = 20_000;
const MOST_IN_LOOP = 3000;
/** Nothing on a laser's bed is longer. */
const LONGEST = 10_000;
const THICKEST = 100;
/** A piece of less is sawdust, mm². */
const LEAST_AREA = 1;

const KEYS: readonly string[] = ['schema', 'from', 'material', 'thickness', 'clear', 'outline', 'holes'];
/** More of a strange key is not shown. */
const LONGEST_KEY = 40;

const FORM =
  'Write { "schema": 1, "material": "plywood-4.05", "thickness": 4.05, "outline": [[0, 0], [300, 0], [300, 200], [0, 200]], "holes": [] }.';
const LOOP = 'Write its corners in mm, one after the other, such as [[0, 0], [300, 0], [300, 200], [0, 200]].';

/**
 * Reads the file of a remnant. Our own jobs write it; by hand it is written in a minute:
 *
 *     { "schema": 1, "material": "plywood-4.05", "thickness": 4.05,
 *       "outline": [[0, 0], [300, 0], [300, 200], [0, 200]],
 *       "holes": [[[20, 20], [20, 80], [80, 80], [80, 20]]] }
 *
 * mm, y up, the face grain along x. `outline` is the edge of the piece as it is: margins are the program's business.
 * `holes` may be left out. Which way round the corners are given does not matter, nor where the piece lies: it is moved to
 * its lower left corner. What else it may say (`from`, where it comes from; `clear`, what is clear of it) is for people.
 */
export function readRemnant(text: string): Remnant | RemnantTrouble {
  const read = readJson(text);
  if ('what' in read) return { what: read.what, accepted: FORM };
  const written = read.value;
  if (typeof written !== 'object' || written === null || Array.isArray(written))
    return { what: 'It is not the JSON of a remnant.', accepted: FORM };
  const { schema, material, thickness, outline, holes = [] } = written as Readonly<Record<string, unknown>>; // any keys
  if (schema !== 1)
    return { what: '"schema" is not 1: it is no remnant, or a later program wrote it.', accepted: FORM };
  // a slip of the pen would be a hole that nobody knows of
  const strange = Object.keys(written).find((key) => !KEYS.includes(key));
  if (strange !== undefined)
    return {
      what: `${JSON.stringify(strange.slice(0, LONGEST_KEY))} is no key of a remnant.`,
      accepted: `${FORM} "from" and "clear" may say more to people.`,
    };
  if (typeof material !== 'string' || material.trim() === '')
    return { what: '"material" is not given.', accepted: 'Write "material": "plywood-4.05", as in layout.json.' };
  if (typeof thickness !== 'number' || !(thickness > 0 && thickness <= THICKEST))
    return { what: '"thickness" is not a length in mm.', accepted: 'Write "thickness": 4.05.' };
  if (!Array.isArray(holes)) return { what: '"holes" is not a list.', accepted: `One loop for each hole. ${LOOP}` };
  const loops: (readonly Point[])[] = [];
  for (const [i, given] of [outline, ...holes].entries()) {
    const name = i === 0 ? '"outline"' : `"holes"[${i - 1}]`;
    const loop = loopOf(given);
    if (typeof loop === 'string') return { what: `${name} ${loop}`, accepted: LOOP };
    loops.push(loop);
  }
  if (loops.reduce((count, loop) => count + loop.length, 0) > MOST_CORNERS)
    return { what: `It has more than ${MOST_CORNERS} corners.`, accepted: 'Draw its edge with fewer.' };
  const [edge, ...cut] = loops.map(fromCorner(loops[0] ?? [])) as [readonly Point[], ...(readonly Point[])[]]; // one at least
  return { material, thickness, outline: turning(edge, 1), holes: cut.map((hole) => turning(hole, -1)) };
}

/** The corners, or what is wrong with them. */
function loopOf(given: unknown): readonly Point[] | string {
  if (!Array.isArray(given)) return 'is not a list of corners.';
  if (given.length > MOST_IN_LOOP) return `has more than ${MOST_IN_LOOP} corners.`;
  const points: Point[] = [];
  for (const corner of given) {
    if (!Array.isArray(corner) || corner.length !== 2) return 'has a corner that is not a pair of numbers.';
    const [x, y] = corner as readonly unknown[];
    if (typeof x !== 'number' || typeof y !== 'number') return 'has a corner that is not a pair of numbers.';
    if (Math.max(Math.abs(x), Math.abs(y)) > LONGEST) return `has a corner farther out than ${LONGEST} mm.`;
    const before = points.at(-1);
    if (before === undefined || before.x !== x || before.y !== y) points.push({ x, y });
  }
  const [first, last] = [points[0], points.at(-1)];
  // some programs repeat the first corner at the end
  if (points.length > 1 && first?.x === last?.x && first?.y === last?.y) points.pop();
  if (points.length < 3) return 'has fewer than three corners.';
  if (crosses(points)) return 'crosses itself.';
  if (Math.abs(area(straight(points))) < LEAST_AREA) return 'encloses nothing.';
  return points;
}

const straight = (points: readonly Point[]) => polygon(points.map(({ x, y }) => [x, y]));

/** Moves loops so that the edge's lower left corner is their origin. */
function fromCorner(edge: readonly Point[]): (loop: readonly Point[]) => readonly Point[] {
  const { left, bottom } = boundsOfPoints(edge);
  return (loop) => loop.map(({ x, y }) => ({ x: x - left, y: y - bottom }));
}

const turning = (loop: readonly Point[], sense: 1 | -1): readonly Point[] =>
  Math.sign(area(straight(loop))) === sense ? loop : [...loop].reverse();

/** Whether two edges that are no neighbours meet. */
function crosses(points: readonly Point[]): boolean {
  const at = (i: number) => points[i % points.length] as Point;
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 2; j < points.length; j++) {
      if (i === 0 && j === points.length - 1) continue;
      if (meet(at(i), at(i + 1), at(j), at(j + 1))) return true;
    }
  }
  return false;
}

function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
