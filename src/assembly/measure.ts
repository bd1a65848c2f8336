import { arcOf, type Box, boundsOfPoints, type ClosedPath, flatten, inside, type Point } from '../geometry/path.js';
import type { Point3 } from '../geometry/placement.js';
import type { FlatPart, Part, Placement } from '../model/part.js';
import type { Build } from './build.js';
import { stands } from './setups.js';
import type { When } from './span-of.js';

/** Lengths of plates as they stand in the camera: what a rule reads off the wood, mm. */

/** A closed loop of straight edges. Arcs have become chords; what lies farthest out on them is a corner all the same. */
export type Loop = readonly Point[];

/**
 * A plate in one of its places, drawn in the two axes of the camera that it lies in:
 *
 *      thickness along z: (x, y)      along x: (z, y)      along y: (x, z)
 */
export interface StandingPlate {
  readonly part: Part;
  readonly placement: Placement;
  /** Along which of the camera's axes its thickness runs, and from where to where. */
  readonly thickAlong: 'x' | 'y' | 'z';
  readonly low: number;
  readonly high: number;
  readonly outline: Loop;
  readonly holes: readonly Loop[];
}

/** The part with an id; one that is not in the build is a mistake of ours. */
export function partOf(build: Build, id: string): Part {
  const part = build.parts.find((one) => one.id === id);
  if (part === undefined) throw new Error(`there is no ${id} in this build`);
  return part;
}

/** The first place of a plate that stands here; one that stands nowhere is a mistake of ours. */
export function plateOf(build: Build, id: string, when: When = {}): StandingPlate {
  const [first] = platesOf(build, id, when);
  if (first === undefined) throw new Error(`there is no plate ${id} in this build`);
  return first;
}

/** All places of a plate, bought ones too; none where the part is not made, or is no plate. */
export function platesOf(build: Build, id: string, when: When = {}): readonly StandingPlate[] {
  const part = build.parts.find((one) => one.id === id);
  return part === undefined ? [] : platesIn(part, when);
}

/** The same of a part that is at hand. */
export function platesIn(part: Part, { rear = 0, setup }: When = {}): readonly StandingPlate[] {
  const all = drawnOnce(part);
  const here = setup === undefined ? all : all.filter(({ placement }) => stands(placement, setup));
  return rear === 0 ? here : here.map((plate) => (plate.placement.group === 'front' ? plate : slidBy(plate, rear)));
}

/** What was drawn of a part: many rules ask for the same one, and a part never changes. */
const drawnParts = new WeakMap<Part, readonly StandingPlate[]>();

function drawnOnce(part: Part): readonly StandingPlate[] {
  const known = drawnParts.get(part);
  if (known !== undefined) return known;
  const shape = plateShape(part);
  const loops = shape === null ? [] : [shape.outline, ...shape.holes].map(traced);
  const all = shape === null ? [] : part.placements.map((place) => laid(part, place, shape.thickness, loops));
  drawnParts.set(part, all);
  return all;
}

function slidBy(plate: StandingPlate, rear: number): StandingPlate {
  const { thickAlong, low, high, outline, holes } = plate;
  if (thickAlong === 'z') return { ...plate, low: low + rear, high: high + rear };
  const slide = ({ x, y }: Point): Point => (thickAlong === 'x' ? { x: x + rear, y } : { x, y: y + rear });
  return { ...plate, outline: outline.map(slide), holes: holes.map((hole) => hole.map(slide)) };
}

/** The plate that a part is, or null. */
function plateShape(part: Part): Pick<FlatPart, 'outline' | 'holes' | 'thickness'> | null {
  if (part.kind === 'flat') return part;
  return part.kind === 'bought' && part.shape.form === 'plate' ? part.shape : null;
}

/** Corners of a path, with the middle of each arc among them: there half a circle reaches farthest. */
function traced(path: ClosedPath): Loop {
  if (path.every(({ bulge }) => bulge === 0)) return path;
  const halved = path.flatMap((from, i) => {
    if (from.bulge === 0) return [from];
    const { centre, radius, start } = arcOf(from, path[(i + 1) % path.length] ?? from);
    const middle = start + 2 * Math.atan(from.bulge);
    const bulge = Math.tan(Math.atan(from.bulge) / 2);
    const [x, y] = [centre.x + radius * Math.cos(middle), centre.y + radius * Math.sin(middle)];
    return [
      { x: from.x, y: from.y, bulge },
      { x, y, bulge },
    ];
  });
  return flatten(halved);
}

/** A plate drawn where it stands. */
function laid(part: Part, placement: Placement, thickness: number, loops: readonly Loop[]): StandingPlate {
  const { matrix } = placement;
  const at = (i: number) => matrix[i] as number;
  const axis = Math.abs(at(10)) > 0.5 ? 2 : Math.abs(at(8)) > 0.5 ? 0 : 1;
  const face = at(12 + axis);
  const other = face + at(8 + axis) * thickness;
  const [h, v] = axis === 2 ? [0, 1] : axis === 0 ? [2, 1] : [0, 2];
  const [hx, hy, h0] = [at(h), at(4 + h), at(12 + h)];
  const [vx, vy, v0] = [at(v), at(4 + v), at(12 + v)];
  const drawn = ({ x, y }: Point): Point => ({ x: hx * x + hy * y + h0, y: vx * x + vy * y + v0 });
  const [first, ...others] = loops.map((loop) => loop.map(drawn));
  return {
    part,
    placement,
    thickAlong: axis === 2 ? 'z' : axis === 0 ? 'x' : 'y',
    low: Math.min(face, other),
    high: Math.max(face, other),
    outline: first ?? [],
    holes: others,
  };
}

export const AXIS: Point = { x: 0, y: 0 };
const ORIGIN: Point3 = { x: 0, y: 0, z: 0 };

/** The smallest hole of a plate round a point, on plates across the optical axis usually the axis itself. */
export function holeRound({ holes }: StandingPlate, point: Point = AXIS): Loop | null {
  const round = holes.filter((hole) => inside(hole, point)).map((hole) => ({ hole, size: sizeOf(hole) }));
  if (round.length === 0) return null;
  return round.reduce((least, one) => (one.size < least.size ? one : least)).hole;
}

/**
 * The same of a plate in one of its places, drawn without anything else of it: the way to ask for one opening of many
 * plates. Undefined where the plate does not lie across that axis of the camera or not round the point, null where it has
 * no hole there.
 */
export function openingRound(
  part: Part,
  { matrix }: Placement,
  across: 'x' | 'y' | 'z',
  point: Point3 = ORIGIN,
): Loop | null | undefined {
  const at = (i: number) => matrix[i] as number;
  const shape = plateShape(part);
  if (shape === null || Math.abs(at(across === 'z' ? 10 : across === 'x' ? 8 : 9)) < 1 - SQUARE) return undefined;
  // the motion is rigid, so its turn is undone by its transpose
  const [dx, dy, dz] = [point.x - at(12), point.y - at(13), point.z - at(14)];
  const own = { x: at(0) * dx + at(1) * dy + at(2) * dz, y: at(4) * dx + at(5) * dy + at(6) * dz };
  if (!inside(shape.outline, own)) return undefined;
  const round = shape.holes.filter((hole) => within(hole, own));
  if (round.length === 0) return null;
  const hole = round.reduce((least, one) => (sizeOf(one) < sizeOf(least) ? one : least));
  const [h, v] = across === 'z' ? [0, 1] : across === 'x' ? [2, 1] : [0, 2];
  return traced(hole).map(({ x, y }) => ({
    x: at(h) * x + at(4 + h) * y + at(12 + h),
    y: at(v) * x + at(4 + v) * y + at(12 + v),
  }));
}

/** A plate lies across an axis where it is askew by no more than the last bits. */
const SQUARE = 1e-9;

/** Whether a hole lies round a point; two corners are a circle, other arcs are looked at by their chords. */
function within(hole: ClosedPath, point: Point): boolean {
  if (hole.every(({ bulge }) => bulge === 0)) return inside(hole, point);
  const [first, second] = hole;
  if (hole.length === 2 && first && second) {
    const [dx, dy] = [point.x - (first.x + second.x) / 2, point.y - (first.y + second.y) / 2];
    return 4 * (dx * dx + dy * dy) < (first.x - second.x) ** 2 + (first.y - second.y) ** 2;
  }
  return inside(traced(hole), point);
}

const sizeOf = (loop: Loop): number => {
  const { left, right, bottom, top } = boundsOfPoints(loop);
  return (right - left) * (top - bottom);
};

/** Upright box round a loop. */
export const boxOf = (loop: Loop): Box => boundsOfPoints(loop);

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
  const [dx, dy] = [towards.x / scale, towards.y / scale];
  let least = Infinity;
  for (let i = 0, j = loop.length - 1; i < loop.length; j = i++) {
    const a = loop[j] as Point;
    const b = loop[i] as Point;
    // to which side of the line the edge's ends lie, and how far along it
    const [sideA, sideB] = [dx * (a.y - from.y) - dy * (a.x - from.x), dx * (b.y - from.y) - dy * (b.x - from.x)];
    const [alongA, alongB] = [dx * (a.x - from.x) + dy * (a.y - from.y), dx * (b.x - from.x) + dy * (b.y - from.y)];
    if (sideA > 0 === sideB > 0 && sideA !== 0 && sideB !== 0) continue;
    const met = sideA === sideB ? Math.min(alongA, alongB) : alongA + ((alongB - alongA) * sideA) / (sideA - sideB);
    if (met >= 0 && met < least) least = met;
  }
  return least;
}

/** Least distance from a point to the edges of a loop, from within or from without. */
export function leastFrom(point: Point, loop: Loop): number {
  let least = Infinity;
  for (let i = 0, j = loop.length - 1; i < loop.length; j = i++)
    least = Math.min(least, toEdge(point, loop[j] as Point, loop[i] as Point));
  return least;
}

/**
 * Least distance between the edges of two loops, such as the narrowest band of wood between an outline and a hole, or
 * the land of one plate on the rim of another's opening; 0 where they cross.
 */
export function leastBetween(a: Loop, b: Loop): number {
  if (cross(a, b)) return 0;
  return Math.min(...a.map((point) => leastFrom(point, b)), ...b.map((point) => leastFrom(point, a)));
}

/** The narrowest band between a plate's edges: outline and each hole, and each two holes. A plate without holes has none. */
export function narrowestBand({ outline, holes }: StandingPlate): number {
  const bands = holes.flatMap((hole, i) => [outline, ...holes.slice(i + 1)].map((other) => leastBetween(hole, other)));
  return Math.min(Infinity, ...bands);
}

function toEdge({ x, y }: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / squared));
  const [ox, oy] = [x - a.x - share * dx, y - a.y - share * dy];
  return Math.sqrt(ox * ox + oy * oy);
}

/** Whether an edge of one loop passes through an edge of the other. */
function cross(a: Loop, b: Loop): boolean {
  const side = (from: Point, to: Point, of: Point) =>
    (to.x - from.x) * (of.y - from.y) - (to.y - from.y) * (of.x - from.x);
  return a.some((a2, i) => {
    const a1 = a[(i + a.length - 1) % a.length] as Point;
    return b.some((b2, k) => {
      const b1 = b[(k + b.length - 1) % b.length] as Point;
      return side(a1, a2, b1) * side(a1, a2, b2) < 0 && side(b1, b2, a1) * side(b1, b2, a2) < 0;
    });
  });
}
