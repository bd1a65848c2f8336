import { around } from '../assembly/extent.js';
import { isHolderFace, isOfHolder } from '../assembly/holders.js';
import { boxAt, type Piece } from '../assembly/pieces.js';
import type { Point } from '../geometry/path.js';
import type { Drawing, Mark } from '../model/page.js';
import { plainNumber } from '../units/print.js';
import { cutFace } from './cut-face.js';
import { type Dimension, dimensioned } from './dimension.js';
import type { DrawingGiven } from './given.js';
import { type Face, hatched, hatchKey, type Loops, stuffOf } from './hatch.js';
import { labelRoom } from './label-room.js';
import { lines } from './line-weights.js';
import { type Name, named } from './names.js';
import { madeMark } from './numbers.js';
import { extentOf, HEAD, headed, hundredths, plotted, scaleFor } from './plot.js';
import { bodiesOf, standingIn } from './scene.js';
import { imageOf } from './section.js';
import { topView } from './view.js';

/** What lies below the axis is left and looked at from above: x of the view is z of the camera, y is its x. */
const SAW = { normal: { x: 0, y: -1, z: 0 }, offset: 0 } as const;

/** Shown all round what matters, true mm. */
const AHEAD = 16;
const OUTSIDE = 9;
const BEHIND = 5;
const INSIDE = 7;

/**
 * One side of the back cut at the height of the axis, enlarged: standard, turning ring, back plate, fence and the first
 * holder, and how light would have to go round them.
 */
export function lightTrapDrawing({ build, plan, on, room }: DrawingGiven): Drawing {
  const setup = build.setups.find(({ orientation, focusing }) => orientation === 'upright' && !focusing);
  if (setup === undefined) throw new Error('a camera has a set-up with a holder');
  const pieces = standingIn(build.parts, setup);
  const trap = trapOf(pieces, { seat: plan.slide.closest, opening: build.gate.width / 2 });
  const image = imageOf(build, plan).short / 2;
  const films = plan.holders
    .map(({ name, effectiveDepth }) => ({ name, depth: effectiveDepth }))
    .filter(({ depth }, i, all) => all.findIndex((other) => Math.abs(other.depth - depth) < 1e-6) === i);
  const deepest = Math.max(trap.holder.z[1] - trap.seat, ...films.map(({ depth }) => depth));
  const window = {
    left: trap.seat - plan.slide.stackBehindBoxes - AHEAD,
    right: trap.seat + deepest + BEHIND,
    bottom: image - INSIDE,
    top: trap.plate + OUTSIDE,
  };
  const bodies = pieces.flatMap((piece) => {
    const { x, y, z } = piece.extent;
    const there = y[0] < 0 && y[1] > 0 && x[1] > window.bottom && z[1] > window.left && z[0] < window.right;
    return there ? bodiesOf(on, [{ piece, saw: SAW }]) : [];
  });
  const faces = bodies
    .map(({ part, ...body }) => ({ part, loops: clipped(cutFace({ part, ...body }, SAW, topView), window) }))
    .filter(({ loops }) => loops.length > 0);

  const size = { width: window.right - window.left, height: window.top - window.bottom };
  const scale = scaleFor(size, {
    width: room.width - LEFT - RIGHT,
    height: room.height - HEAD - ABOVE - BELOW,
  });
  const plot = plotted(scale, {
    x: hundredths(LEFT + (room.width - LEFT - RIGHT - scale * size.width) / 2 - scale * window.left),
    y: hundredths(HEAD + ABOVE + scale * window.top),
  });
  const low = plot.at({ x: 0, y: window.bottom }).y;
  const key = hatchKey([...new Set(faces.map(({ part }) => stuffOf(part)))], {
    at: { x: 1, y: low + BELOW - KEY },
    width: room.width - 1,
  });
  const height = hundredths(low + BELOW - KEY + key.height + 1);
  const onPaper = (paths: Loops): Loops => paths.map((path) => path.map(plot.at));
  const cut = faces.map(({ part, loops }): Face => ({ stuff: stuffOf(part), loops: onPaper(loops) }));
  const hatching = hatched(cut);
  const edges = faces.map(({ loops }) => onPaper(outlined(loops, window)));
  const filmLines = films.map(({ name, depth }, i) => ({
    id: `film-holder-${i + 1}`,
    name,
    depth,
    points: [image, window.bottom].map((y) => plot.at({ x: trap.seat + depth, y })),
    dashed: Math.abs(depth - (films[0]?.depth ?? 0)) > 1e-6,
  }));
  const ways = waysOf(trap, films[0]?.depth ?? 0, window).map((way) => ({ ...way, points: way.points.map(plot.at) }));

  const words = labelRoom({ width: room.width, height });
  for (const paths of edges) words.keepClear(paths);
  words.keepClear(filmLines.map(({ points }) => points));
  words.keepClear(ways.map(({ points }) => points));
  words.keepClear(
    ways.map(({ points }) => headOf(points)),
    'closed',
  );
  words.take({ left: 0, top: 0, right: room.width, bottom: HEAD });
  words.take({ left: 0, top: low + BELOW - KEY - 1, right: room.width, bottom: height });

  const depths = filmLines.map(({ points: [, foot], depth }, i): Dimension => {
    const at = foot ?? { x: 0, y: 0 };
    return {
      name: `film-depth-${i + 1}`,
      what: 'film depth',
      figure: plainNumber(depth, 2),
      places: [
        { from: plot.at({ x: trap.seat, y: trap.opening }), to: at, line: { y: hundredths(low + 5 + i * 6.5) } },
      ],
    };
  });
  const upright = (
    name: string,
    what: string,
    [from, to]: readonly [number, number],
    z: number,
    x: number,
  ): Dimension => ({
    name,
    what,
    figure: plainNumber(to - from, 2),
    places: [{ from: plot.at({ x: z, y: from }), to: plot.at({ x: z, y: to }), line: { x: hundredths(x) } }],
  });
  const left = plot.at({ x: window.left, y: 0 }).x;
  const right = plot.at({ x: window.right, y: 0 }).x;
  const dimensions = dimensioned(
    [
      ...depths,
      upright('land', 'land', [trap.standard, trap.plate], trap.seat - plan.slide.stackBehindBoxes, left - 3),
      upright('rim', 'rim', [trap.opening, trap.holder.x[1]], trap.holder.z[1], right + 5),
    ],
    words,
  );
  const names: readonly Name[] = [
    ...faces.map(({ part, loops }): Name => {
      const [text, role] =
        part.kind === 'bought' ? ([part.name, 'note'] as const) : ([madeMark(part), 'number'] as const);
      return { text, role, spots: loops.flatMap(middlesOf).map(plot.at) };
    }),
    ...filmLines.map(
      ({ name, points }): Name => ({
        text: `film of\n${name}`,
        role: 'note',
        spots: points.slice(0, 1),
        toward: { x: 1, y: -1 },
      }),
    ),
    ...ways.flatMap(({ turns, points }) => [
      { text: 'light', role: 'note' as const, spots: points.slice(0, 1) },
      ...turns.map(
        (turn, i): Name => ({ text: `turn ${i + 1}`, role: 'note', spots: [points[turn] ?? { x: 0, y: 0 }] }),
      ),
    ]),
  ];
  const title = 'Light trap of the back';
  return {
    name: 'light-trap',
    title,
    description: `One side of the back of ${plan.name}, cut level through the axis and seen from above, ${films[0]?.name} in: light that comes along the joints has to turn twice.`,
    scale,
    width: room.width,
    height,
    marks: [
      ...headed(title, scale),
      ...hatching,
      ...edges.flatMap((paths): readonly Mark[] =>
        paths.length === 0 ? [] : [{ kind: 'strokes', role: 'cut', paths, stroke: lines.cut }],
      ),
      ...filmLines.map(
        ({ id, points, dashed }): Mark => ({
          kind: 'line',
          role: 'film',
          id,
          points,
          stroke: dashed ? { ...lines.film, dash: [2, 1] } : lines.film,
        }),
      ),
      ...ways.flatMap(({ id, points }): readonly Mark[] => [
        { kind: 'line', role: 'way', id, points, stroke: lines.way },
        { kind: 'line', role: 'way', points: headOf(points), closed: true, fill: lines.way.colour },
      ]),
      ...dimensions,
      ...named(names, words, hatching),
      ...key.marks,
    ],
  };
}

/** Round the view, mm. */
const LEFT = 14;
const RIGHT = 24;
const ABOVE = 4;
const BELOW = 32;
const KEY = 14;

interface Window {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Where the things of the trap end, seen from above; distances from the axis. */
interface Trap {
  readonly seat: number;
  readonly opening: number;
  /** Inner edge of the standard, outer of the ring, of the plate. */
  readonly standard: number;
  readonly ring: number;
  readonly plate: number;
  /** Front faces of ring and plate. */
  readonly ringFront: number;
  readonly plateFront: number;
  readonly fence: { readonly inside: number; readonly rear: number };
  readonly holder: Piece['extent'];
}

function trapOf(pieces: readonly Piece[], { seat, opening }: Pick<Trap, 'seat' | 'opening'>): Trap {
  const of = (is: (piece: Piece) => boolean): Piece['extent'] => {
    const found = pieces.find((piece) => is(piece) && piece.extent.x[1] > 0);
    if (found === undefined) throw new Error('a part of the light trap is missing');
    return boxAt(found, 0);
  };
  const byId = (id: string) => of(({ part }) => part.id === id);
  const [ring, plate] = [byId('B2'), byId('B1')];
  const fence = of(({ part, extent }) => part.id === 'B3' && extent.x[0] > 0);
  const wall = of(({ part }) => part.id === 'R1R');
  const face = of(({ part }) => isHolderFace(part));
  const held = pieces.filter(({ part }) => isOfHolder(part)).map((piece) => boxAt(piece, 0));
  return {
    seat,
    opening,
    standard: wall.x[0],
    ring: ring.x[1],
    plate: plate.x[1],
    ringFront: ring.z[0],
    plateFront: plate.z[0],
    fence: { inside: fence.x[0], rear: fence.z[1] },
    holder: { ...face, z: around(held).z },
  };
}

/** The two ways in: between plate and standard and round the ring; between fence and holder and along the seat. */
function waysOf(trap: Trap, filmDepth: number, window: Window) {
  const { seat, opening, standard, ring, plateFront, ringFront, fence, holder } = trap;
  const round = (standard + ring) / 2;
  const down = (fence.inside + holder.x[1]) / 2;
  return [
    {
      id: 'light-round-the-ring',
      points: [
        { x: plateFront, y: window.top },
        { x: plateFront, y: round },
        { x: ringFront - 4, y: round },
        { x: ringFront - 4, y: round - 8 },
      ],
      turns: [1, 2],
    },
    {
      id: 'light-along-the-seat',
      points: [
        { x: window.right, y: down },
        { x: seat, y: down },
        { x: seat, y: opening - 2.8 },
        { x: seat + filmDepth - 0.8, y: opening - 2.8 },
      ],
      turns: [1, 2],
    },
  ];
}

/** Length and half width of an arrowhead, mm. */
const HEAD_OF_WAY = { long: 3, half: 1.1 } as const;

/** The arrowhead at the end of a way. */
function headOf(points: readonly Point[]): readonly Point[] {
  const [before, tip] = points.slice(-2) as [Point, Point];
  const [dx, dy] = [tip.x - before.x, tip.y - before.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const at = (back: number, aside: number): Point => ({
    x: hundredths(tip.x - (back * dx - aside * dy) / length),
    y: hundredths(tip.y - (back * dy + aside * dx) / length),
  });
  const { long, half } = HEAD_OF_WAY;
  return [tip, at(long, half), at(long, -half)];
}

/** Loops cut off at the four sides of a window, side by side (Sutherland and Hodgman); what lies outside is gone. */
function clipped(loops: Loops, { left, right, bottom, top }: Window): Loops {
  const sides: readonly ((p: Point) => number)[] = [
    (p) => p.x - left,
    (p) => right - p.x,
    (p) => p.y - bottom,
    (p) => top - p.y,
  ];
  return loops
    .map((loop) =>
      sides.reduce<readonly Point[]>(
        (points, within) =>
          points.flatMap((here, i) => {
            const next = points[(i + 1) % points.length] as Point;
            const [a, b] = [within(here), within(next)];
            const kept = a >= 0 ? [here] : [];
            if (a >= 0 === b >= 0) return kept;
            const share = a / (a - b);
            return [...kept, { x: here.x + share * (next.x - here.x), y: here.y + share * (next.y - here.y) }];
          }),
        loop,
      ),
    )
    .filter((loop) => loop.length > 2);
}

/** The edges of clipped loops, less those where the window cut them off: there the thing goes on. */
function outlined(loops: Loops, { left, right, bottom, top }: Window): Loops {
  const same = (a: number, b: number, at: number) => Math.abs(a - at) < 1e-6 && Math.abs(b - at) < 1e-6;
  return loops.flatMap((loop) => {
    const paths: Point[][] = [];
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length] as Point;
      const cutOff = same(a.x, b.x, left) || same(a.x, b.x, right) || same(a.y, b.y, bottom) || same(a.y, b.y, top);
      if (cutOff) return;
      const last = paths.at(-1);
      if (last?.at(-1) === a) last.push(b);
      else paths.push([a, b]);
    });
    return paths;
  });
}

/** Points along the middle of a face. */
function middlesOf(loop: readonly Point[]): readonly Point[] {
  const { left, right, top, bottom } = extentOf([loop]);
  const long = right - left > top - bottom;
  return [0.5, 0.35, 0.65, 0.2, 0.8].map((share) =>
    long
      ? { x: left + share * (right - left), y: (top + bottom) / 2 }
      : { x: (left + right) / 2, y: bottom + share * (top - bottom) },
  );
}
