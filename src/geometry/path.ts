/** A point in a plane, mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A corner of a path. `bulge` shapes the edge that leaves it: the tangent of a quarter of the arc's angle, 0 where
 * the edge is straight, positive where it turns anticlockwise, 1 for half a circle.
 */
export interface Vertex extends Point {
  readonly bulge: number;
}

/** A closed loop; the last vertex's edge leads back to the first. Outlines run anticlockwise, holes clockwise. */
export type ClosedPath = readonly Vertex[];

/** A stroke: an engraved line is usually open. */
export interface Path {
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
}

export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** How far a chord may stray from its arc when a curve is flattened, mm (the contract's figure for parts.json). */
export const SAGITTA = 0.01;

/** A closed loop of straight edges. */
export const polygon = (points: readonly (readonly [number, number])[]): ClosedPath =>
  points.map((point) => ({ x: point[0], y: point[1], bulge: 0 }));

/** A closed loop walked the other way. */
export const reversed = (path: ClosedPath): ClosedPath =>
  path.map((_, i) => {
    const here = at(path, path.length - 1 - i);
    const before = at(path, 2 * path.length - 2 - i);
    return { x: here.x, y: here.y, bulge: -before.bulge || 0 };
  });

/** Points along a path, arcs cut into chords that stray by at most `sagitta`; a closed path does not repeat its first point. */
export function flatten(path: ClosedPath, sagitta = SAGITTA, closed = true): readonly Point[] {
  const points: Point[] = [];
  path.forEach((from, i) => {
    points.push({ x: from.x, y: from.y });
    if (from.bulge === 0 || (!closed && i === path.length - 1)) return;
    const to = at(path, i + 1);
    const arc = arcOf(from, to);
    const angle = 4 * Math.atan(from.bulge);
    const most = 2 * Math.acos(Math.max(0, 1 - sagitta / arc.radius));
    const steps = Math.max(2, Math.ceil(Math.abs(angle) / most));
    for (let k = 1; k < steps; k++) {
      const turn = arc.start + (angle * k) / steps;
      points.push({ x: arc.centre.x + arc.radius * Math.cos(turn), y: arc.centre.y + arc.radius * Math.sin(turn) });
    }
  });
  return points;
}

/** Centre, radius and start angle (rad) of the arc between two vertices; the first one's bulge must not be 0. */
export function arcOf(from: Vertex, to: Point): { centre: Point; radius: number; start: number } {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  // the centre lies on the chord's bisector, (1 - b²)/4b chords to the left of its middle
  const k = (1 - from.bulge * from.bulge) / (4 * from.bulge);
  const centre = { x: from.x + dx / 2 - k * dy, y: from.y + dy / 2 + k * dx };
  const radius = Math.sqrt((from.x - centre.x) ** 2 + (from.y - centre.y) ** 2);
  return { centre, radius, start: Math.atan2(from.y - centre.y, from.x - centre.x) };
}

/** Area with sign: positive where the loop runs anticlockwise. Exact for arcs. */
export function area(path: ClosedPath): number {
  let twice = 0;
  let segments = 0;
  path.forEach((from, i) => {
    const to = at(path, i + 1);
    twice += from.x * to.y - to.x * from.y;
    if (from.bulge !== 0) {
      const angle = 4 * Math.atan(from.bulge);
      const { radius } = arcOf(from, to);
      segments += (radius * radius * (angle - Math.sin(angle))) / 2;
    }
  });
  return twice / 2 + segments;
}

/** Length of a path, mm. */
export function length(path: readonly Vertex[], closed = true): number {
  let sum = 0;
  path.forEach((from, i) => {
    if (!closed && i === path.length - 1) return;
    const to = at(path, i + 1);
    const chord = Math.sqrt((to.x - from.x) ** 2 + (to.y - from.y) ** 2);
    sum += from.bulge === 0 ? chord : Math.abs(4 * Math.atan(from.bulge)) * arcOf(from, to).radius;
  });
  return sum;
}

/** The upright rectangle round a path, arcs included to within the sagitta. */
export const boundsOf = (path: ClosedPath): Box =>
  boundsOfPoints(path.every(({ bulge }) => bulge === 0) ? path : flatten(path));

export function boundsOfPoints(points: readonly Point[]): Box {
  let left = Infinity;
  let bottom = Infinity;
  let right = -Infinity;
  let top = -Infinity;
  for (const { x, y } of points) {
    left = Math.min(left, x);
    bottom = Math.min(bottom, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  }
  return { left, bottom, right, top };
}

/** Whether a point lies inside a loop of straight edges (even-odd; a point on the edge may fall either way). */
export function inside(points: readonly Point[], { x, y }: Point): boolean {
  let within = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const a = points[i] as Point;
    const b = points[j] as Point;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) within = !within;
  }
  return within;
}

/** A path moved: turned by `turn` (rad, anticlockwise) about the origin, then shifted. */
export function moved(path: readonly Vertex[], { x, y, turn }: Point & { readonly turn: number }): readonly Vertex[] {
  const [cos, sin] = quarter(turn);
  return path.map((v) => ({ x: x + cos * v.x - sin * v.y, y: y + sin * v.x + cos * v.y, bulge: v.bulge }));
}

/** Cosine and sine, exact for quarter turns so that right angles stay right. */
export function quarter(turn: number): readonly [number, number] {
  const quarters = turn / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-9) return [Math.cos(turn), Math.sin(turn)];
  const table = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ] as const;
  return table[((whole % 4) + 4) % 4] as readonly [number, number];
}

const at = (path: readonly Vertex[], i: number): Vertex => path[i % path.length] as Vertex;
