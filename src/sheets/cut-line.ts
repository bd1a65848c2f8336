import { arcOf, area, type ClosedPath, length, type Point, type Vertex } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart } from '../model/part.js';

/** The only home of kerf: parts are finished pieces, and no other room of the sheets knows how wide the beam cuts. */
export interface Beam {
  /** Full width of what one pass takes away. */
  readonly kerf: number;
}

/**
 * The line that the middle of the beam follows, so that the finished edge stands where it was drawn.
 *
 *      waste   | kerf |  part
 *      --------|--x---|=======      x: the cut line, half a kerf into the waste
 *
 * Outlines run anticlockwise and holes clockwise, so the part is at the left hand of both and the beam goes half a kerf
 * to the right: outlines grow, holes shrink. Lines are shifted, arcs change their radius and neighbours are
 * intersected, so arcs stay arcs.
 *
 * @returns an empty loop where the waste is narrower than the beam
 */
export const cutLine = (edge: ClosedPath, { kerf }: Beam): ClosedPath => shifted(edge, kerf / 2, MITRE);

/** The way back from a cut line to the finished edge, sharp inner corners as sharp as they were drawn. */
export const finishedEdge = (line: ClosedPath, { kerf }: Beam): ClosedPath => shifted(line, -kerf / 2, Infinity);

/** A beam of half a millimetre that misses a corner of its own radius is 0.02 mm out over a 3 mm hole: less is rounding. */
const DEPARTURE = 0.003;

/**
 * Every line of a part stands half a kerf from its edge, once. Two tests that can disagree: the line offset back must
 * enclose the finished area, and its own area must have changed by half a kerf times the length of the edge.
 */
export function cutOnce(part: FlatPart, lines: readonly ClosedPath[], { kerf }: Beam): readonly Finding[] {
  const edges = [part.outline, ...part.holes];
  return edges.flatMap((edge, i): readonly Finding[] => {
    const what = i === 0 ? 'the outline' : `hole ${i}`;
    const line = lines[i] ?? [];
    const along = length(edge);
    const back = line.length === 0 ? [] : finishedEdge(line, { kerf });
    const departure = Math.abs(area(back) - area(edge)) / along;
    const width = (2 * (area(line) - area(edge))) / along;
    // each corner adds or takes at most the square of its mitre
    const corners = (2 * edge.length * kerf * kerf) / along;
    if (line.length > 0 && departure <= DEPARTURE && Math.abs(width - kerf) <= corners) return [];
    return [
      {
        rule: 'kerf-once',
        level: 'error',
        value: departure,
        limit: DEPARTURE,
        unit: 'mm',
        message:
          line.length === 0
            ? `${part.id} ${part.name}: ${what} has a place narrower than the cut itself, ${kerf} mm.`
            : `${part.id} ${part.name}: the cut line of ${what} does not give back the finished edge.`,
        hint: 'Check the kerf, or widen the narrowest slot of this part.',
        about: 'laser.kerf',
      },
    ];
  });
}

/** Below this angle (rad) two edges run on into each other: the mitre's point is right to a tenth of a micrometre. */
const TANGENT = 1e-3;
/** A mitre longer than this many shifts is rounded: the true locus of a beam, and what an offset of limit 2 squares off. */
const MITRE = 2;
/** Lengths below this are rounding of the arithmetic, mm. */
const NOTHING = 1e-9;

/** An edge of the loop, moved sideways, still endless: a line or a circle. */
interface Carrier {
  /** Where the edge began and ended before it was moved. */
  readonly from: Vertex;
  readonly to: Point;
  /** Unit directions of travel at its two ends. */
  readonly leaving: Point;
  readonly arriving: Point;
  /** Only for arcs; `radius` is the new one. */
  readonly arc?: { readonly centre: Point; readonly radius: number };
}

/** A loop moved to its right hand, edge by edge; empty where nothing is left of it. */
function shifted(path: ClosedPath, by: number, mitre: number): ClosedPath {
  let carriers = path.flatMap((_, i) => carrier(path, i, by));
  // an edge that the shift turns round is swallowed by its neighbours: drop the shortest such edge and meet again
  while (carriers.length > 1) {
    const corners = carriers.map((next, i) => meet(carriers.at(i - 1) as Carrier, next, { by, mitre }));
    if (corners.includes(null)) return [];
    const edges = carriers.map((edge, i) => {
      const start = (corners[i] as Corner).end;
      const end = (corners[(i + 1) % corners.length] as Corner).start;
      return { edge, start, end, bulge: bulgeBetween(edge, start, end) };
    });
    const turned = edges.filter(({ bulge }) => bulge === null);
    if (turned.length === 0) {
      const loop = edges.flatMap(({ start, bulge }, i) => {
        const corner = corners[i] as Corner;
        const round = corner.bulge === 0 ? [] : [{ ...corner.start, bulge: corner.bulge }];
        return [...round, { ...start, bulge: bulge ?? 0 }];
      });
      return area(loop) * area(path) > 0 ? loop : [];
    }
    const chord = ({ edge }: { edge: Carrier }) => distance(edge.from, edge.to);
    const shortest = turned.reduce((a, b) => (chord(b) < chord(a) ? b : a));
    carriers = carriers.filter((c) => c !== shortest.edge);
  }
  return [];
}

function carrier(path: ClosedPath, i: number, by: number): readonly Carrier[] {
  const from = path[i] as Vertex;
  const to = path[(i + 1) % path.length] as Vertex;
  const chord = distance(from, to);
  if (chord < NOTHING) return [];
  if (from.bulge === 0) {
    const along = { x: (to.x - from.x) / chord, y: (to.y - from.y) / chord };
    return [{ from, to, leaving: along, arriving: along }];
  }
  const { centre, radius } = arcOf(from, to);
  const sense = Math.sign(from.bulge);
  const moved = radius + sense * by;
  if (moved < NOTHING) return [];
  const tangent = (p: Point) => ({ x: (-sense * (p.y - centre.y)) / radius, y: (sense * (p.x - centre.x)) / radius });
  return [{ from, to, leaving: tangent(from), arriving: tangent(to), arc: { centre, radius: moved } }];
}

/** Where one edge ends and the next begins: one point, or the two ends of an arc round a corner too sharp to mitre. */
interface Corner {
  readonly start: Point;
  readonly end: Point;
  readonly bulge: number;
}

function meet(before: Carrier, after: Carrier, { by, mitre }: { by: number; mitre: number }): Corner | null {
  const single = (p: Point): Corner => ({ start: p, end: p, bulge: 0 });
  const [u, v] = [before.arriving, after.leaving];
  const cos = u.x * v.x + u.y * v.y;
  const sin = u.x * v.y - u.y * v.x;
  const neighbours = distance(before.to, after.from) < NOTHING;
  const corner = after.from;
  const straight = before.arc === undefined && after.arc === undefined;
  const runsOn = cos > 0 && Math.abs(sin) < TANGENT;
  const opens = sin * by > 0;
  const right = (p: Point, along: Point): Point => ({ x: p.x + by * along.y, y: p.y - by * along.x });

  if (
    neighbours &&
    opens &&
    (cos <= 2 / (mitre * mitre) - 1 || (!straight && !runsOn && crossings(before, after, by).length === 0))
  )
    return { start: right(corner, u), end: right(corner, v), bulge: Math.tan(Math.atan2(sin, cos) / 4) };
  if (neighbours && (straight || runsOn)) {
    if (1 + cos < NOTHING) return null;
    const k = by / (1 + cos);
    return single({ x: corner.x + k * (u.y + v.y), y: corner.y - k * (u.x + v.x) });
  }
  const aim = { x: (before.to.x + corner.x) / 2, y: (before.to.y + corner.y) / 2 };
  const found = crossings(before, after, by);
  if (found.length === 0) return null;
  return single(found.reduce((a, b) => (distance(b, aim) < distance(a, aim) ? b : a)));
}

/** Where two moved edges, drawn out endlessly, cross. */
function crossings(a: Carrier, b: Carrier, by: number): readonly Point[] {
  if (a.arc && b.arc) return circleAndCircle(a.arc, b.arc);
  if (a.arc) return circleAndLine(a.arc, movedLine(b, by));
  if (b.arc) return circleAndLine(b.arc, movedLine(a, by));
  const [p, q] = [movedLine(a, by), movedLine(b, by)];
  const sin = p.along.x * q.along.y - p.along.y * q.along.x;
  if (Math.abs(sin) < NOTHING) return [];
  const t = ((q.point.x - p.point.x) * q.along.y - (q.point.y - p.point.y) * q.along.x) / sin;
  return [{ x: p.point.x + t * p.along.x, y: p.point.y + t * p.along.y }];
}

interface Line {
  readonly point: Point;
  readonly along: Point;
}

const movedLine = ({ from, leaving }: Carrier, by: number): Line => ({
  point: { x: from.x + by * leaving.y, y: from.y - by * leaving.x },
  along: leaving,
});

interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

/** Tangency lost to rounding counts as a touch: the two points fall together. */
function circleAndLine({ centre, radius }: Circle, { point, along }: Line): readonly Point[] {
  const t = (centre.x - point.x) * along.x + (centre.y - point.y) * along.y;
  const foot = { x: point.x + t * along.x, y: point.y + t * along.y };
  const off = distance(foot, centre);
  if (off > radius + NOTHING) return [];
  const half = Math.sqrt(Math.max(0, radius * radius - off * off));
  return [-half, half].map((s) => ({ x: foot.x + s * along.x, y: foot.y + s * along.y }));
}

function circleAndCircle(a: Circle, b: Circle): readonly Point[] {
  const apart = distance(a.centre, b.centre);
  if (apart < NOTHING) return [];
  const along = { x: (b.centre.x - a.centre.x) / apart, y: (b.centre.y - a.centre.y) / apart };
  const t = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const square = a.radius * a.radius - t * t;
  if (square < -NOTHING) return [];
  const half = Math.sqrt(Math.max(0, square));
  return [-half, half].map((s) => ({
    x: a.centre.x + t * along.x - s * along.y,
    y: a.centre.y + t * along.y + s * along.x,
  }));
}

/** Bulge of a moved edge between its new ends; null where the shift has turned the edge round. */
function bulgeBetween(edge: Carrier, start: Point, end: Point): number | null {
  if (edge.arc === undefined) {
    const run = (end.x - start.x) * edge.leaving.x + (end.y - start.y) * edge.leaving.y;
    return run > NOTHING ? 0 : null;
  }
  const { centre } = edge.arc;
  const sense = Math.sign(edge.from.bulge);
  const before = 4 * Math.atan(Math.abs(edge.from.bulge));
  const [ux, uy, vx, vy] = [start.x - centre.x, start.y - centre.y, end.x - centre.x, end.y - centre.y];
  const turn = Math.atan2(sense * (ux * vy - uy * vx), ux * vx + uy * vy);
  const angle = turn < 0 ? turn + 2 * Math.PI : turn;
  // a tangent arc keeps its angle, and then its bulge to the last digit
  if (Math.abs(angle - before) < NOTHING) return edge.from.bulge;
  if (angle > before + Math.PI || angle < NOTHING) return null;
  return sense * Math.tan(angle / 4);
}

function distance(a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return Math.sqrt(dx * dx + dy * dy);
}
