import type { Extent } from '../assembly/extent.js';
import { type Loop, platesIn } from '../assembly/measure.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import type { Workbench } from '../assembly/workbench.js';
import { grown, type Region, sharedArea } from '../geometry/clip.js';
import type { Bench, Solid } from '../geometry/kernel.js';
import { boundsOfPoints, type Point } from '../geometry/path.js';
import { frame, type Matrix4, type Point3, shift } from '../geometry/placement.js';
import { circle } from '../geometry/shapes.js';
import type { Axis, Way } from '../model/assembly-move.js';
import type { Part } from '../model/part.js';

/**
 * Whether a piece comes to its place along a straight line, exactly: nothing is tried at single positions.
 *
 * All that a plate passes on its way along one of the camera's axes is a prism again, endless on the side that it comes
 * from. Along its own thickness the profile stays as it is; along its own plane everything behind its front edge is
 * passed, and a hole in it is passed by the wood behind the hole. So one look at two prisms says whether they ever meet:
 *
 *   both thick the same way    their thicknesses overlap, and their profiles, or the edges that look at each other, do
 *   thick across one another   each is cut to the other's thickness; what is left of both overlaps on the third axis
 *
 * A printed piece is no prism. There the solid kernel looks, and the other one of the two is drawn out, backwards.
 */

/** Down first: a piece is put where its weight takes it. Then from behind, from the front, from the sides, from below. */
export const ways: readonly Way[] = [
  { axis: 'y', sign: -1 },
  { axis: 'z', sign: -1 },
  { axis: 'z', sign: 1 },
  { axis: 'x', sign: 1 },
  { axis: 'x', sign: -1 },
  { axis: 'y', sign: 1 },
];

/** A piece as an upright prism, or as the printed thing that it is. */
export interface Block {
  readonly piece: Piece;
  readonly extent: Extent;
  /** Null where the piece is printed. */
  readonly prism: Prismatic | null;
}

interface Prismatic {
  readonly thick: Axis;
  readonly region: Region;
  /** The same, and its box, with a press fit taken off all round: as it is when it moves. */
  readonly lean: () => { readonly region: Region; readonly extent: Extent };
}

/**
 * So much may be in the way on each side: press fits, and the chords that curves are drawn with. What is in the way by
 * more is not pushed through by hand.
 */
export const PRESS = 0.02;

/** Lengths below this are rounding, mm. */
const NOTHING = 1e-6;

const AXES = ['x', 'y', 'z'] as const;

/** The axes that a prism is drawn in: across z (x, y), across x (z, y), across y (x, z). */
export const DRAWN = { x: ['z', 'y'], y: ['x', 'z'], z: ['x', 'y'] } as const;

/** Every piece of these parts. */
export function blocksOf(parts: readonly Part[]): readonly Block[] {
  const pieces = piecesOf(parts);
  return parts.flatMap((part) => {
    const own = pieces.filter((piece) => piece.part === part);
    const plates = platesIn(asPlate(part));
    return own.map((piece, i): Block => {
      const plate = plates[i];
      if (plate === undefined) return { piece, extent: piece.extent, prism: null };
      const loops = [plate.outline, ...plate.holes];
      return { piece, ...prismatic(loops, plate.thickAlong, [plate.low, plate.high]) };
    });
  });
}

/** A rod is a plate with a round outline. */
const asPlate = (part: Part): Part =>
  part.kind === 'bought' && part.shape.form === 'cylinder'
    ? {
        ...part,
        shape: {
          form: 'plate',
          thickness: part.shape.length,
          outline: circle(0, 0, part.shape.diameter),
          holes: [],
        },
      }
    : part;

/** A prism from its loops, drawn in the two axes across its thickness, and where that thickness begins and ends. */
export function prismatic(
  loops: readonly Loop[],
  thick: Axis,
  [low, high]: Stretch,
): { readonly extent: Extent; readonly prism: Prismatic } {
  const region = withoutOverlaps(turnedRight(loops));
  return {
    extent: extentOf(region.slice(0, 1), thick, [low, high]),
    prism: {
      thick,
      region,
      lean: once(() => {
        const lean = grown(region, -PRESS, { corners: 'mitred' });
        return { region: lean, extent: extentOf(lean, thick, [low + PRESS, high - PRESS]) };
      }),
    },
  };
}

/** By so much holes are widened to be drawn together, one line of the grid, mm. */
const HAIR = 1e-4;

/** Holes that run into each other become one: counted one by one, what both take away would be wood again. */
function withoutOverlaps(region: Region): Region {
  const [outline, ...holes] = region;
  const boxes = holes.map(boundsOfPoints);
  const meet = boxes.some((a, i) =>
    boxes.slice(i + 1).some((b) => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top),
  );
  if (outline === undefined || !meet) return region;
  const filled = holes.map((loop) => [...loop].reverse());
  return [outline, ...grown(filled, HAIR, { corners: 'mitred' }).map((loop) => [...loop].reverse())];
}

/** Reckoned when it is first asked for: most pieces never meet anything. */
function once<T>(make: () => T): () => T {
  let made: { readonly it: T } | null = null;
  return () => {
    made ??= { it: make() };
    return made.it;
  };
}

/** Outlines anticlockwise, holes clockwise: two of the three drawings show a plate from behind. */
function turnedRight(loops: readonly Loop[]): Region {
  const [outline = []] = loops;
  const twice = outline.reduce((sum, { x, y }, i) => {
    const next = outline[(i + 1) % outline.length] as Point;
    return sum + x * next.y - next.x * y;
  }, 0);
  return twice > 0 ? loops : loops.map((loop) => [...loop].reverse());
}

function extentOf(region: Region, thick: Axis, along: Stretch): Extent {
  const boxes = region.map(boundsOfPoints);
  const [u, v] = DRAWN[thick];
  const sides = {
    [u]: [Math.min(...boxes.map((b) => b.left)), Math.max(...boxes.map((b) => b.right))],
    [v]: [Math.min(...boxes.map((b) => b.bottom)), Math.max(...boxes.map((b) => b.top))],
    [thick]: along,
  } as unknown as Extent;
  return { x: sides.x, y: sides.y, z: sides.z };
}

type Stretch = readonly [from: number, to: number];

/** Whether `still` is in the way of `moving` anywhere on its way to its place; both prisms. */
export function inTheWay(moving: Block, still: Block, way: Way): boolean {
  if (moving.prism === null || still.prism === null) throw new Error('a printed piece is no prism');
  const lean = moving.prism.lean();
  const passed = sweptBox(lean.extent, way);
  if (!overlap(passed, still.extent)) return false;
  const [a, b] = [moving.prism, still.prism];
  if (a.thick === b.thick)
    return way.axis === a.thick
      ? sharedArea(lean.region, b.region) > NOTHING
      : edgesMeet(lean.region, b.region, a.thick, way);
  const third = AXES.find((axis) => axis !== a.thick && axis !== b.thick) as Axis;
  const towards = { axis: way.axis, sign: -way.sign as 1 | -1 };
  const cutA = way.axis === b.thick ? sweptBox(still.extent, towards) : still.extent;
  const cutB = way.axis === a.thick ? passed : lean.extent;
  const window = passed[third];
  const left = cutTo(lean.region, a.thick, third, cutA[b.thick], way.axis === third ? EVERYWHERE : window);
  const right = cutTo(b.region, b.thick, third, cutB[a.thick], window);
  if (way.axis !== third)
    return left.some((p) => right.some((q) => Math.min(p[1], q[1]) - Math.max(p[0], q[0]) > NOTHING));
  // it comes from `-sign`: everything behind its foremost edge is passed
  const foremost = Math.max(...left.map(([low, high]) => (way.sign > 0 ? high : -low)));
  const nearest = Math.min(...right.map(([low, high]) => (way.sign > 0 ? low : -high)));
  return foremost - nearest > NOTHING;
}

/** A prism put elsewhere. */
export function shifted(block: Block, axis: Axis, by: number): Block {
  if (block.prism === null) throw new Error('a printed piece is no prism');
  const { thick, region, lean } = block.prism;
  const [first, second] = DRAWN[thick];
  const move = (loops: Region): Region =>
    loops.map((loop) => loop.map(({ x, y }) => ({ x: axis === first ? x + by : x, y: axis === second ? y + by : y })));
  const along = (extent: Extent): Extent => ({ ...extent, [axis]: [extent[axis][0] + by, extent[axis][1] + by] });
  return {
    // a name of its own: what is known of the piece is not true of it here
    piece: { ...block.piece, key: `${block.piece.key} ${axis}${by}` },
    extent: along(block.extent),
    prism: {
      thick,
      region: move(region),
      lean: once(() => ({ region: move(lean().region), extent: along(lean().extent) })),
    },
  };
}

/** Whether two pieces share volume where they stand, by more than a press fit; both prisms. */
export function inOnePlace(a: Block, b: Block): boolean {
  if (a.prism === null || b.prism === null) throw new Error('a printed piece is no prism');
  const lean = a.prism.lean();
  if (!overlap(lean.extent, b.extent)) return false;
  if (a.prism.thick === b.prism.thick) return sharedArea(lean.region, b.prism.region) > NOTHING;
  const { thick } = a.prism;
  const other = b.prism.thick;
  const third = AXES.find((axis) => axis !== thick && axis !== other) as Axis;
  const left = cutTo(lean.region, thick, third, b.extent[other], b.extent[third]);
  const right = cutTo(b.prism.region, other, third, lean.extent[thick], lean.extent[third]);
  return left.some((p) => right.some((q) => Math.min(p[1], q[1]) - Math.max(p[0], q[0]) > NOTHING));
}

/** Whether all that a box passes meets another box: the quick look that spares most of the others. */
function boxesMeet(moving: Extent, still: Extent, { axis, sign }: Way): boolean {
  for (const k of AXES) {
    const [from, to] = moving[k];
    const [low, high] = still[k];
    if ((k !== axis || sign > 0) && to - low <= NOTHING) return false;
    if ((k !== axis || sign < 0) && high - from <= NOTHING) return false;
  }
  return true;
}

const EVERYWHERE: Stretch = [-Infinity, Infinity];

const overlap = (a: Extent, b: Extent): boolean =>
  AXES.every((k) => Math.min(a[k][1], b[k][1]) - Math.max(a[k][0], b[k][0]) > NOTHING);

/** The box of all that is passed. */
const sweptBox = (extent: Extent, { axis, sign }: Way): Extent => ({
  ...extent,
  [axis]: sign > 0 ? [-Infinity, extent[axis][1]] : [extent[axis][0], Infinity],
});

interface Edge {
  /** Along the line on which one looks, and across it; `from` before `to` on the line. */
  readonly from: Point;
  readonly to: Point;
}

/** Edges of a region with x along the axis `line`, left out where they stand across it or outside the window. */
function edgesAlong(region: Region, thick: Axis, line: Axis, [from, to]: Stretch): readonly Edge[] {
  const swap = DRAWN[thick][0] !== line;
  const found: Edge[] = [];
  for (const loop of region)
    for (let i = 0, j = loop.length - 1; i < loop.length; j = i++) {
      const [p, q] = [loop[j] as Point, loop[i] as Point];
      const [a, b] = swap
        ? [
            { x: p.y, y: p.x },
            { x: q.y, y: q.x },
          ]
        : [p, q];
      if (Math.abs(a.x - b.x) < NOTHING || Math.max(a.x, b.x) <= from || Math.min(a.x, b.x) >= to) continue;
      found.push(a.x < b.x ? { from: a, to: b } : { from: b, to: a });
    }
  return found;
}

/** Places on the line between which nothing begins or ends. */
function stops(places: readonly number[], [from, to]: Stretch): readonly number[] {
  const sorted = [from, to, ...places].filter((x) => x >= from && x <= to && Number.isFinite(x)).sort((a, b) => a - b);
  return sorted.filter((x, i) => i === 0 || x - (sorted[i - 1] as number) > NOTHING);
}

const across = ({ from, to }: Edge, x: number): number => from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x);

/**
 * Two plates side by side, one of which moves in the plane of both: whether, on any line along the way, its foremost
 * edge lies beyond the hindmost of the other. Between two stops both run straight, so the ends of the stretch tell all.
 */
function edgesMeet(moving: Region, still: Region, thick: Axis, way: Way): boolean {
  const line = DRAWN[thick].find((axis) => axis !== way.axis) as Axis;
  const front = edgesAlong(moving, thick, line, EVERYWHERE);
  const back = edgesAlong(still, thick, line, EVERYWHERE);
  const places = [...front, ...back].flatMap(({ from, to }) => [from.x, to.x]);
  const all = stops(places, EVERYWHERE);
  return all.slice(1).some((end, i) => {
    const start = all[i] as number;
    const middle = (start + end) / 2;
    const crossing = (edges: readonly Edge[], sign: number) =>
      edges
        .filter(({ from, to }) => from.x < middle && to.x > middle)
        .reduce<Edge | null>(
          (most, edge) => (most === null || sign * (across(edge, middle) - across(most, middle)) > 0 ? edge : most),
          null,
        );
    const foremost = crossing(front, way.sign);
    const hindmost = crossing(back, -way.sign);
    if (foremost === null || hindmost === null) return false;
    return [start, end].some((x) => way.sign * (across(foremost, x) - across(hindmost, x)) > NOTHING);
  });
}

/** Where on the axis `line` there is wood within a band of the other axis that the prism is drawn in. */
function cutTo(region: Region, thick: Axis, line: Axis, band: Stretch, window: Stretch): readonly Stretch[] {
  const swap = DRAWN[thick][0] !== line;
  // a hole beside the band, or beside the window, changes nothing within them
  const near = region.filter((loop, i) => {
    if (i === 0) return true;
    const { left, right, bottom, top } = boundsOfPoints(loop);
    const [from, to, low, high] = swap ? [bottom, top, left, right] : [left, right, bottom, top];
    return from < window[1] && to > window[0] && low < band[1] && high > band[0];
  });
  const edges = edgesAlong(near, thick, line, window);
  const places = edges.flatMap((edge) => [
    edge.from.x,
    edge.to.x,
    ...band.flatMap((y) => {
      const rise = edge.to.y - edge.from.y;
      return rise === 0 || !Number.isFinite(y)
        ? []
        : [edge.from.x + ((edge.to.x - edge.from.x) * (y - edge.from.y)) / rise];
    }),
  ]);
  const all = stops(places, window);
  const found: [number, number][] = [];
  for (let i = 1; i < all.length; i++) {
    const [start, end] = [all[i - 1] as number, all[i] as number];
    const middle = (start + end) / 2;
    const crossings: number[] = [];
    for (const edge of edges) if (edge.from.x < middle && edge.to.x > middle) crossings.push(across(edge, middle));
    crossings.sort((a, b) => a - b);
    let wood = false;
    for (let k = 1; k < crossings.length; k += 2) {
      const [low, high] = [crossings[k - 1] as number, crossings[k] as number];
      wood ||= Math.min(high, band[1]) - Math.max(low, band[0]) > NOTHING;
    }
    if (!wood) continue;
    const last = found.at(-1);
    if (last && start - last[1] < NOTHING) last[1] = end;
    else found.push([start, end]);
  }
  return found;
}

/** From where to where there is wood across a line in the plane of a prism, at one place along that line. */
export function woodAt({ prism }: Block, line: Axis, at: number): readonly Stretch[] {
  if (prism === null) throw new Error('a printed piece is no prism');
  const first = DRAWN[prism.thick][0] === line;
  const places = prism.region
    .flatMap((loop) =>
      loop.flatMap((p, i) => {
        const q = loop[(i + 1) % loop.length] as Point;
        const [a, b] = first ? [p, q] : [flipped(p), flipped(q)];
        return a.x > at === b.x > at ? [] : [a.y + ((b.y - a.y) * (at - a.x)) / (b.x - a.x)];
      }),
    )
    .sort((p, q) => p - q);
  return places.flatMap((place, i) => (i % 2 === 1 ? [[places[i - 1] as number, place] as const] : []));
}

const flipped = ({ x, y }: Point): Point => ({ x: y, y: x });

/** As far away as a piece is brought from, mm. */
const FAR = 2000;

/** All that a prism passes, as a solid. */
function sweptSolid(bench: Bench, region: Region, thick: Axis, extent: Extent, way: Way): Solid {
  const [low, high] = extent[thick];
  if (way.axis === thick) {
    const stretch: Stretch = way.sign > 0 ? [low - FAR, high] : [low, high + FAR];
    return drawnOut(bench, region, thick, stretch);
  }
  return drawnOut(bench, [...region, ...shadowOf(region, thick, way)], thick, [low, high]);
}

/** Each edge drawn out to the side that the piece comes from; the kernel draws out together what several loops cover. */
function shadowOf(region: Region, thick: Axis, { axis, sign }: Way): Region {
  const first = DRAWN[thick][0] === axis;
  const far = -sign * FAR;
  const [dx, dy] = first ? [far, 0] : [0, far];
  return region.flatMap((loop) =>
    loop.flatMap((a, i) => {
      const b = loop[(i + 1) % loop.length] as Point;
      // what lies behind wood lies behind an edge that looks that way; the others need not be drawn out
      if ((b.y - a.y) * dx - (b.x - a.x) * dy < 0) return [];
      const quad = [a, b, { x: b.x + dx, y: b.y + dy }, { x: a.x + dx, y: a.y + dy }];
      return Math.abs(first ? b.y - a.y : b.x - a.x) < NOTHING ? [] : turnedRight([quad]);
    }),
  );
}

function drawnOut(bench: Bench, region: Region, thick: Axis, [low, high]: Stretch): Solid {
  const [profile = [], ...holes] = region.map((loop) => loop.map(({ x, y }) => ({ x, y, bulge: 0 })));
  // x across y is z; the other two drawings are left-handed, so their prism is drawn out backwards
  const place: Matrix4 =
    thick === 'z'
      ? shift(0, 0, low)
      : thick === 'x'
        ? frame([0, 0, 1], [0, 1, 0], [-1, 0, 0], [high, 0, 0])
        : frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, high, 0]);
  return bench.prism({ profile, holes, height: high - low, matrix: place }, 'add');
}

/** Shared volume below this is rounding of the kernel, mm³. */
const CRUMB = 1e-3;

/** Looks at pieces with the kernel: printed ones, and what is told of an obstacle. */
export interface Looker {
  readonly meets: (moving: Block, still: Block, way: Way) => boolean;
  /** How thick the wood is that would have to give way, mm, and where its middle lies. */
  readonly measure: (moving: Block, still: Block, way: Way) => { readonly depth: number; readonly at: Point3 };
}

/** Looks at pieces where they stand. What it has seen of two on their way it need not look at again. */
export function lookerOn({ bench, solid }: Workbench): Looker {
  const known = new Map<string, boolean>();
  const shared = (moving: Block, still: Block, way: Way) => {
    const { prism } = moving;
    if (prism !== null) {
      const lean = prism.lean();
      const swept = sweptSolid(bench, lean.region, prism.thick, lean.extent, way);
      const { thick, region } = still.prism ?? { thick: 'z' as const, region: [] };
      const there = still.prism === null ? solid(still.piece, 0) : drawnOut(bench, region, thick, still.extent[thick]);
      return bench.shared(swept, there);
    }
    if (still.prism === null) throw new Error('two printed pieces pass each other');
    const { thick, lean } = still.prism;
    const back: Way = { axis: way.axis, sign: way.sign > 0 ? -1 : 1 };
    return bench.shared(solid(moving.piece, 0), sweptSolid(bench, lean().region, thick, lean().extent, back));
  };
  return {
    meets: (moving, still, way) => {
      if (!boxesMeet(moving.extent, still.extent, way)) return false;
      const key = `${moving.piece.key} ${still.piece.key} ${way.axis}${way.sign}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      const met =
        moving.prism !== null && still.prism !== null
          ? inTheWay(moving, still, way)
          : shared(moving, still, way).volume > CRUMB;
      known.set(key, met);
      return met;
    },
    measure: (moving, still, way) => {
      const { depth, at } = shared(moving, still, way);
      return { depth, at };
    },
  };
}
