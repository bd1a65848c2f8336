import { type Box, boundsOfPoints, type ClosedPath, inside, type Point } from '../geometry/path.js';
import type { Point3 } from '../geometry/placement.js';
import type { Part, Placement } from '../model/part.js';
import type { Build, Setup } from './build.js';
import { slidBy } from './extent.js';
import { placedIn } from './placed-parts.js';
import { stands } from './setups.js';
import type { When } from './span-of.js';
import {
  type Loop,
  laid,
  plateShape,
  type StandingOutline,
  type StandingPlate,
  standingOutlines,
  standingPlates,
  traced,
} from './standing-plate.js';

export type { Loop, StandingOutline, StandingPlate } from './standing-plate.js';

/** Lengths of plates as they stand in the camera: what a rule reads off the wood, mm. */

/** The part with an id; one that is not in the build is a mistake of ours. */
export function partOf(build: Build, id: string): Part {
  const placed = placedIn(build, id);
  if (placed === undefined) throw new Error(`there is no ${id} in this build`);
  return placed.part;
}

/** The first place of a plate that stands here; one that stands nowhere is a mistake of ours. */
export function plateOf(build: Build, id: string, { rear = 0, setup }: When = {}): StandingPlate {
  const part = placedIn(build, id)?.part;
  const first = part && standingPlates(part, placesIn(part, setup).slice(0, 1));
  return firstOf(slidPlates(first ?? [], rear), id);
}

/** The same at the closest place, without its holes, which have most of the corners. */
export function outlineOf(build: Build, id: string, { setup }: InSetup = {}): StandingOutline {
  const part = placedIn(build, id)?.part;
  return firstOf((part && standingOutlines(part, placesIn(part, setup).slice(0, 1))) ?? [], id);
}

type InSetup = Pick<When, 'setup'>;

function firstOf<T>([first]: readonly T[], id: string): T {
  if (first === undefined) throw new Error(`there is no plate ${id} in this build`);
  return first;
}

/** All places of a plate, bought ones too; none where the part is not made, or is no plate. */
export function platesOf(build: Build, id: string, { rear = 0, setup }: When = {}): readonly StandingPlate[] {
  const part = placedIn(build, id)?.part;
  return part === undefined ? [] : slidPlates(standingPlates(part, placesIn(part, setup)), rear);
}

/** The same at the closest place, without their holes. */
export function outlinesOf(build: Build, id: string, { setup }: InSetup = {}): readonly StandingOutline[] {
  const part = placedIn(build, id)?.part;
  return part === undefined ? [] : standingOutlines(part, placesIn(part, setup));
}

/** The plates of a part that is at hand. */
export const platesIn = (part: Part): readonly StandingPlate[] => standingPlates(part, part.placements);

const placesIn = ({ placements }: Part, setup: Setup | undefined): readonly Placement[] =>
  setup === undefined ? placements : placements.filter((placement) => stands(placement, setup));

const slidPlates = (plates: readonly StandingPlate[], rear: number): readonly StandingPlate[] =>
  rear === 0
    ? plates
    : plates.map((plate) => {
        const by = slidBy(plate.placement, rear);
        return by === 0 ? plate : slid(plate, by);
      });

function slid(plate: StandingPlate, rear: number): StandingPlate {
  const { thickAlong, low, high, outline, holes } = plate;
  if (thickAlong === 'z') return { ...plate, low: low + rear, high: high + rear };
  const slide = ({ x, y }: Point): Point => (thickAlong === 'x' ? { x: x + rear, y } : { x, y: y + rear });
  return { ...plate, outline: outline.map(slide), holes: holes.map((hole) => hole.map(slide)) };
}

export const AXIS: Point = { x: 0, y: 0 };
const ORIGIN: Point3 = { x: 0, y: 0, z: 0 };

/** The smallest hole of a plate round a point, on plates across the optical axis usually the axis itself. */
export const holeRound = ({ holes }: StandingPlate, point: Point = AXIS): Loop | null =>
  smallest(holes.filter((hole) => inside(hole, point)));

function smallest(loops: readonly Loop[]): Loop | null {
  const [first, ...others] = loops;
  if (first === undefined || others.length === 0) return first ?? null;
  const sized = loops.map((loop) => ({ loop, size: sizeOf(loop) }));
  return sized.reduce((least, one) => (one.size < least.size ? one : least)).loop;
}

/**
 * The same of a plate in one of its places, drawn without anything else of it: the way to ask for one opening of many
 * plates. Undefined where the plate does not lie across that axis of the camera or not round the point, null where it has
 * no hole there.
 */
export function openingRound(
  part: Part,
  placement: Placement,
  across: 'x' | 'y' | 'z',
  point: Point3 = ORIGIN,
): Loop | null | undefined {
  const at = (i: number) => placement.matrix[i] as number;
  const shape = plateShape(part);
  if (shape === null || Math.abs(at(across === 'z' ? 10 : across === 'x' ? 8 : 9)) < 1 - SQUARE) return undefined;
  // the motion is rigid, so its turn is undone by its transpose
  const dx = point.x - at(12);
  const dy = point.y - at(13);
  const dz = point.z - at(14);
  const own = { x: at(0) * dx + at(1) * dy + at(2) * dz, y: at(4) * dx + at(5) * dy + at(6) * dz };
  if (!inside(shape.outline, own)) return undefined;
  const hole = smallest(shape.holes.filter((one) => within(one, own)).map(traced));
  return hole && laid(hole, placement, across);
}

/** A plate lies across an axis where it is askew by no more than the last bits. */
const SQUARE = 1e-9;

/** Whether a hole lies round a point; two corners are a circle, other arcs are looked at by their chords. */
function within(hole: ClosedPath, point: Point): boolean {
  const { left, right, bottom, top } = boundsOfPoints(hole);
  // half a circle bulges by half its chord, and no arc of ours is longer
  const bulge = Math.max(right - left, top - bottom);
  if (point.x < left - bulge || point.x > right + bulge || point.y < bottom - bulge || point.y > top + bulge)
    return false;
  if (hole.every(({ bulge }) => bulge === 0)) return inside(hole, point);
  const [first, second] = hole;
  if (hole.length === 2 && first && second) {
    const dx = point.x - (first.x + second.x) / 2;
    const dy = point.y - (first.y + second.y) / 2;
    return 4 * (dx * dx + dy * dy) < (first.x - second.x) ** 2 + (first.y - second.y) ** 2;
  }
  return inside(traced(hole), point);
}

const sizeOf = (loop: Loop): number => {
  const { left, right, bottom, top } = boundsOfPoints(loop);
  return (right - left) * (top - bottom);
};

/** A rectangle as a loop. Of points alone, as all loops are here: reckoning with two kinds of records takes twice as long. */
export const cornersOf = ({ left, bottom, right, top }: Box): Loop => [
  { x: left, y: bottom },
  { x: right, y: bottom },
  { x: right, y: top },
  { x: left, y: top },
];

/** Upright box round a loop. */
export const boxOf = (loop: Loop): Box => boundsOfPoints(loop);

/** How far apart two upright boxes are along the axis that parts them most; below 0 where they lap. */
export const boxesApart = (a: Box, b: Box): number =>
  Math.max(b.left - a.right, a.left - b.right, b.bottom - a.top, a.bottom - b.top);

/** How far a loop reaches along both axes. */
export function sidesOf(loop: Loop): { readonly width: number; readonly height: number } {
  const { left, right, bottom, top } = boundsOfPoints(loop);
  return { width: right - left, height: top - bottom };
}

/**
 * How far one comes from a point towards a direction before one meets the loop; infinite where one never does.
 *
 * @param towards of any length but 0: `{ x: 1, y: 1 }` goes up the diagonal
 */
export function reach(loop: Loop, from: Point, towards: Point): number {
  const scale = Math.sqrt(towards.x * towards.x + towards.y * towards.y);
  const dx = towards.x / scale;
  const dy = towards.y / scale;
  let least = Infinity;
  const a = loop[loop.length - 1] as Point;
  // to which side of the line the edge's ends lie, and how far along it
  let sideA = dx * (a.y - from.y) - dy * (a.x - from.x);
  let alongA = dx * (a.x - from.x) + dy * (a.y - from.y);
  for (const b of loop) {
    const sideB = dx * (b.y - from.y) - dy * (b.x - from.x);
    const alongB = dx * (b.x - from.x) + dy * (b.y - from.y);
    if (sideA > 0 !== sideB > 0 || sideA === 0 || sideB === 0) {
      const met = sideA === sideB ? Math.min(alongA, alongB) : alongA + ((alongB - alongA) * sideA) / (sideA - sideB);
      if (met >= 0 && met < least) least = met;
    }
    sideA = sideB;
    alongA = alongB;
  }
  return least;
}

/** Least distance from a point, or the nearest of several, to the edges of a loop, from within or from without. */
export const leastFrom = (points: Point | readonly Point[], loop: Loop): number =>
  leastOf('x' in points ? [points] : points, loop, Infinity);

/**
 * Least distance between the edges of two loops, such as the narrowest band of wood between an outline and a hole, or
 * the land of one plate on the rim of another's opening; 0 where they cross.
 */
export const leastBetween = (a: Loop, b: Loop): number => (cross(a, b) ? 0 : leastOf(b, a, leastOf(a, b, Infinity)));

/** The narrowest band between a plate's edges: outline and each hole, and each two holes. A plate without holes has none. */
export function narrowestBand({ outline, holes }: StandingPlate): number {
  const bands = holes.flatMap((hole, i) => [outline, ...holes.slice(i + 1)].map((other) => leastBetween(hole, other)));
  return Math.min(Infinity, ...bands);
}

/**
 * The lesser of a distance that is known and that from the points to the edges of a loop. Plain arithmetic that makes no
 * record and no iterator: corners are held against edges thousands of times in a camera.
 */
function leastOf(points: readonly Point[], loop: Loop, known: number): number {
  let least = known;
  for (let i = 0; i < points.length; i++) {
    const { x, y } = points[i] as Point;
    const last = loop[loop.length - 1] as Point;
    let toX = last.x - x;
    let toY = last.y - y;
    for (let k = 0; k < loop.length; k++) {
      const corner = loop[k] as Point;
      const fromX = toX;
      const fromY = toY;
      toX = corner.x - x;
      toY = corner.y - y;
      // an edge wholly to one side, farther off than what is known, need not be measured
      if ((fromX > least && toX > least) || (fromX < -least && toX < -least)) continue;
      if ((fromY > least && toY > least) || (fromY < -least && toY < -least)) continue;
      const dx = toX - fromX;
      const dy = toY - fromY;
      const squared = dx * dx + dy * dy;
      let share = squared === 0 ? 0 : -(fromX * dx + fromY * dy) / squared;
      if (share < 0) share = 0;
      else if (share > 1) share = 1;
      const offX = fromX + share * dx;
      const offY = fromY + share * dy;
      const own = Math.sqrt(offX * offX + offY * offY);
      if (own < least) least = own;
    }
  }
  return least;
}

/** Whether an edge of one loop passes through an edge of the other. */
function cross(a: Loop, b: Loop): boolean {
  for (let i = 0, before = a.length - 1; i < a.length; before = i++) {
    const a1 = a[before] as Point;
    const a2 = a[i] as Point;
    const left = Math.min(a1.x, a2.x);
    const right = Math.max(a1.x, a2.x);
    const bottom = Math.min(a1.y, a2.y);
    const top = Math.max(a1.y, a2.y);
    for (let k = 0, last = b.length - 1; k < b.length; last = k++) {
      const b1 = b[last] as Point;
      const b2 = b[k] as Point;
      if ((b1.x > right && b2.x > right) || (b1.x < left && b2.x < left)) continue;
      if ((b1.y > top && b2.y > top) || (b1.y < bottom && b2.y < bottom)) continue;
      if (parts(a1, a2, b1, b2) && parts(b1, b2, a1, a2)) return true;
    }
  }
  return false;
}

/** Whether a line leaves two points on different sides. */
function parts(from: Point, to: Point, a: Point, b: Point): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  return (dx * (a.y - from.y) - dy * (a.x - from.x)) * (dx * (b.y - from.y) - dy * (b.x - from.x)) < 0;
}
