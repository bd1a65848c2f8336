import type { Build } from '../assembly/build.js';
import { around, type Extent } from '../assembly/extent.js';
import { boxAt, type Piece } from '../assembly/pieces.js';
import type { Point } from '../geometry/path.js';
import { pushedOnFrame } from '../model/assembly-steps.js';
import type { Drawing, Mark } from '../model/page.js';
import type { PlanDocument } from '../model/plan.js';
import { wordsWidth } from '../paper/words-width.js';
import { plainNumber } from '../units/print.js';
import { type Dimension, dimensioned } from './dimension.js';
import type { DrawingGiven } from './given.js';
import { labelRoom } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';
import { type Name, named } from './names.js';
import { chainLine, cornersAt, extentOf, HEAD, headed, hundredths, type Plot, plotted, scaleFor } from './plot.js';
import { bodiesOf, standingIn } from './scene.js';
import { seenLines } from './seen-lines.js';
import { backView, frontView, leftView, project, topView, type View } from './view.js';

type Paths = readonly (readonly Point[])[];

/** A dimension of a view, true lengths: level ones lie in rows above or below it, upright ones in columns beside it. */
interface Measured {
  readonly name: string;
  readonly what: string;
  readonly along: 'x' | 'y';
  readonly from: number;
  readonly to: number;
  readonly side: 'above' | 'below' | 'left' | 'right';
  /** The figure as the plan has it. */
  readonly figure: number;
  /** Between lines inside the view: where across; else from its corners outwards. */
  readonly inside?: number;
}

interface Elevation {
  readonly name: string;
  readonly title: string;
  readonly from: string;
  readonly view: View;
  readonly dashed: Paths;
  /** Another place of what moves. */
  readonly moved: Paths;
  /** Centre lines. */
  readonly axes: Paths;
  readonly measured: readonly Measured[];
  /** Words, and what they name. */
  readonly notes: readonly { readonly text: string; readonly spots: readonly Point[]; readonly toward: Point }[];
}

/**
 * The camera pushed in, the glass on its back, from the front, the left, the back and above, all at one scale. Hidden
 * lines are drawn where they say what no other view does.
 */
export function elevationDrawings({ build, plan, on, room }: DrawingGiven): readonly Drawing[] {
  const [setup] = build.setups;
  if (setup === undefined) throw new Error('a camera has a set-up');
  const pieces = standingIn(build.parts, setup);
  const bodies = pieces.flatMap((piece) => bodiesOf(on, [{ piece }]));
  const views = elevationsOf(build, plan, pieces).map((elevation) => {
    const seen = seenLines(bodies, elevation.view).flatMap((piece) => piece.seen);
    return { elevation, seen, bounds: extentOf([...seen, ...elevation.moved]) };
  });
  const scale = Math.min(
    ...views.map(({ elevation: { measured }, bounds }) => {
      const around = marginsOf(measured);
      const size = { width: bounds.right - bounds.left, height: bounds.top - bounds.bottom };
      return scaleFor(size, {
        width: room.width - around.left - around.right,
        height: room.height - HEAD - around.above - around.below,
      });
    }),
  );
  return views.map(({ elevation, seen, bounds }): Drawing => {
    const { name, title, from, dashed, moved, axes, measured, notes } = elevation;
    const around = marginsOf(measured);
    const wide = scale * (bounds.right - bounds.left);
    const plot = plotted(scale, {
      x: hundredths((room.width - wide + around.left - around.right) / 2 - scale * bounds.left),
      y: hundredths(HEAD + around.above + scale * bounds.top),
    });
    const height = hundredths(plot.at({ x: 0, y: bounds.bottom }).y + around.below);
    const onPaper = (paths: Paths): Paths => paths.map((path) => path.map(plot.at));
    const words = labelRoom({ width: room.width, height });
    const [seenHere, dashedHere, axesHere, movedHere] = [seen, dashed, axes, moved].map(onPaper) as [
      Paths,
      Paths,
      Paths,
      Paths,
    ];
    words.keepClear([...seenHere, ...dashedHere, ...axesHere, ...movedHere]);
    words.take({ left: 0, top: 0, right: room.width, bottom: HEAD });
    const known = [...seen, ...dashed, ...axes, ...moved];
    const dimensions = dimensioned(dimensionsOf(measured, { known, plot, bounds }), words);
    const names = notes.map(({ spots, ...note }): Name => ({ ...note, role: 'note', spots: spots.map(plot.at) }));
    return {
      name: `elevation-${name}`,
      title,
      description: `${plan.name} pushed in, ${from}, without perspective.`,
      scale,
      width: room.width,
      height,
      marks: [
        ...headed(title, scale),
        ...firstAngle({ x: room.width, y: 6 }),
        { kind: 'strokes', role: 'outline', paths: seenHere, stroke: lines.outline },
        ...strokes('hidden', dashedHere, lines.hidden),
        ...strokes('way', chained(movedHere, 2), lines.moved),
        ...strokes('axis', chained(axesHere, 1), lines.axis),
        ...dimensions,
        ...named(names, words, []),
      ],
    };
  });
}

const strokes = (
  role: 'hidden' | 'way' | 'axis',
  paths: Paths,
  stroke: (typeof lines)['hidden' | 'moved' | 'axis'],
): readonly Mark[] => (paths.length === 0 ? [] : [{ kind: 'strokes', role, paths, stroke }]);

const chained = (paths: Paths, dots: 1 | 2): Paths =>
  paths.flatMap((path) => path.slice(1).flatMap((to, i) => chainLine(path[i] as Point, to, dots)));

/** From the view to the first row, from row to row, and past the last one, mm. */
const FIRST = 6;
const ROW = 6.5;
const LAST = 2;
const BARE = 3;

function marginsOf(measured: readonly Measured[]): { readonly [S in Measured['side']]: number } {
  const room = (side: Measured['side']): number => {
    const rows = measured.filter((one) => one.side === side && one.inside === undefined).length;
    return rows === 0
      ? BARE
      : FIRST + (rows - 1) * ROW + LAST + (side === 'below' || side === 'right' ? 0 : LETTERS.size + 1);
  };
  return { above: room('above'), below: room('below'), left: room('left'), right: room('right') };
}

interface Around {
  readonly known: Paths;
  readonly plot: Plot;
  readonly bounds: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
}

function dimensionsOf(measured: readonly Measured[], { known, plot, bounds }: Around): readonly Dimension[] {
  const turned = known.map((path) => path.map(({ x, y }) => ({ x: y, y: x })));
  const rows = new Map<string, number>();
  return measured.map(({ name, what, along, from, to, side, figure, inside }): Dimension => {
    const row = rows.get(side) ?? 0;
    if (inside === undefined) rows.set(side, row + 1);
    const outermost = side === 'above' || side === 'right' ? Math.max : Math.min;
    const ends = [from, to].map((at): Point => {
      const across = inside ?? outermost(...(cornersAt(along === 'x' ? known : turned, at) ?? [0]));
      return plot.at(along === 'x' ? { x: at, y: across } : { x: across, y: at });
    });
    const out = FIRST + row * ROW;
    const edge = plot.at({
      x: inside ?? (side === 'left' ? bounds.left : bounds.right),
      y: inside ?? (side === 'above' ? bounds.top : bounds.bottom),
    });
    const away = inside === undefined ? out * (side === 'above' || side === 'left' ? -1 : 1) : 0;
    return {
      name,
      what,
      figure: plainNumber(figure, 2),
      places: [
        {
          from: ends[0] as Point,
          to: ends[1] as Point,
          line: along === 'x' ? { y: hundredths(edge.y + away) } : { x: hundredths(edge.x + away) },
        },
      ],
    };
  });
}

function elevationsOf(build: Build, plan: PlanDocument, pieces: readonly Piece[]): readonly Elevation[] {
  const { camera, slide, tailboard } = plan;
  // as the plan has it: without the lens, and without what comes off in front
  const over = around(
    pieces
      .filter(({ part }) => (part.kind !== 'bought' || part.role === undefined) && !pushedOnFrame.includes(part.id))
      .map((piece) => boxAt(piece, 0)),
  );
  const box = (id: string, rear = 0): Extent => {
    const piece = pieces.find(({ part }) => part.id === id);
    if (piece === undefined) throw new Error(`${id} does not stand in the camera`);
    return boxAt(piece, rear);
  };
  const [board, back, floor, nut] = [box('F6'), box('B1'), box('T1U'), box('tripod-barrel')];
  const [top, rearTop, side] = [box('F3'), box('R2T'), box('R1L')];
  const { gate } = build;
  const everything = around(pieces.map((piece) => boxAt(piece, 0)));
  const [keeper, far] = [box('T3'), [box('R3', slide.travel), box('B1', slide.travel)]];
  const half = slide.frontBoxOutside / 2;
  const length = (extent: readonly [number, number]) => extent[1] - extent[0];
  return [
    {
      name: 'front',
      title: 'Elevation from the front',
      from: 'looking into the lens',
      view: frontView,
      dashed: [],
      moved: [],
      axes: cross(frontView, over),
      notes: [],
      measured: [
        {
          name: 'front-box-outside',
          what: 'front box',
          along: 'x',
          from: -half,
          to: half,
          side: 'above',
          figure: slide.frontBoxOutside,
        },
        {
          name: 'lens-board',
          what: 'lens board',
          along: 'y',
          from: board.y[0],
          to: board.y[1],
          side: 'left',
          figure: length(board.y),
        },
        {
          name: 'height',
          what: 'height over all',
          along: 'y',
          from: over.y[0],
          to: over.y[1],
          side: 'right',
          figure: camera.height,
        },
        {
          name: 'width',
          what: 'width over all',
          along: 'x',
          from: -over.x[1],
          to: -over.x[0],
          side: 'below',
          figure: camera.width,
        },
      ],
    },
    {
      name: 'left',
      title: 'Elevation from the left',
      from: 'from the photographer’s left, the lens on the left',
      view: leftView,
      dashed: [
        // the rear box in the front box
        [
          { x: slide.frontBoxLength, y: side.y[1] },
          { x: side.z[0], y: side.y[1] },
          { x: side.z[0], y: side.y[0] },
          { x: slide.frontBoxLength, y: side.y[0] },
        ],
        ...upright(nut),
      ],
      // what the keeper would hide of it is left out
      moved: far.map(({ y, z }) => loop(z, [Math.max(y[0], keeper.y[1]), y[1]])),
      axes: [
        [
          { x: everything.z[0] - 8, y: 0 },
          { x: over.z[1] + 4, y: 0 },
        ],
        [
          { x: tailboard.tripod, y: floor.y[1] },
          { x: tailboard.tripod, y: nut.y[0] - 12 },
        ],
      ],
      notes: [
        {
          text: 'at the farthest',
          spots: far.map(({ y, z }) => ({ x: z[1], y: (y[0] + y[1]) / 2 + 20 })),
          toward: { x: 1, y: 0 },
        },
        {
          text: 'rear box',
          spots: [
            { x: side.z[0], y: 30 },
            { x: side.z[0], y: -30 },
          ],
          toward: { x: 1, y: 0 },
        },
        { text: 'tripod nut', spots: nut.z.map((z) => ({ x: z, y: nut.y[0] + 3 })), toward: { x: -1, y: 1 } },
      ],
      measured: [
        {
          name: 'travel',
          what: 'travel',
          along: 'x',
          from: slide.closest,
          to: slide.farthest,
          side: 'above',
          figure: slide.travel,
        },
        {
          name: 'tripod',
          what: 'panel to tripod nut',
          along: 'x',
          from: 0,
          to: tailboard.tripod,
          side: 'below',
          figure: tailboard.tripod,
        },
        {
          name: 'depth',
          what: 'depth without lens and accessories',
          along: 'x',
          from: over.z[0],
          to: over.z[1],
          side: 'below',
          figure: camera.depthClosed,
        },
      ],
    },
    {
      name: 'back',
      title: 'Elevation from the back',
      from: 'as the photographer stands',
      view: backView,
      dashed: [loop([-gate.width / 2, gate.width / 2], [-gate.height / 2, gate.height / 2])],
      moved: [],
      axes: cross(backView, over),
      notes: [
        {
          text: 'opening of the back',
          spots: [-gate.width / 2, gate.width / 2].flatMap((x) =>
            [gate.height / 8, gate.height / 3].map((y) => ({ x, y })),
          ),
          toward: { x: 0, y: -1 },
        },
      ],
      measured: [
        {
          name: 'back-side',
          what: 'back plate',
          along: 'x',
          from: back.x[0],
          to: back.x[1],
          side: 'above',
          figure: length(back.x),
        },
        {
          name: 'opening-width',
          what: 'opening',
          along: 'x',
          from: -gate.width / 2,
          to: gate.width / 2,
          side: 'above',
          figure: gate.width,
          inside: -gate.height / 4,
        },
        {
          name: 'opening-height',
          what: 'opening',
          along: 'y',
          from: -gate.height / 2,
          to: gate.height / 2,
          side: 'right',
          figure: gate.height,
          inside: gate.width / 4,
        },
      ],
    },
    {
      name: 'top',
      title: 'Elevation from above',
      from: 'the lens on the left',
      view: topView,
      dashed: [
        [
          { x: top.z[1], y: rearTop.x[1] },
          { x: rearTop.z[0], y: rearTop.x[1] },
          { x: rearTop.z[0], y: rearTop.x[0] },
          { x: top.z[1], y: rearTop.x[0] },
        ],
      ],
      moved: [],
      axes: [
        [
          { x: everything.z[0] - 8, y: 0 },
          { x: over.z[1] + 4, y: 0 },
        ],
      ],
      notes: [
        {
          text: 'rear box',
          spots: [
            { x: rearTop.z[0], y: 20 },
            { x: rearTop.z[0], y: -20 },
          ],
          toward: { x: 1, y: 0 },
        },
      ],
      measured: [
        {
          name: 'tailboard-length',
          what: 'tailboard',
          along: 'x',
          from: floor.z[0],
          to: floor.z[1],
          side: 'below',
          figure: tailboard.length,
        },
        {
          name: 'tailboard-width',
          what: 'tailboard',
          along: 'y',
          from: floor.x[0],
          to: floor.x[1],
          side: 'right',
          figure: tailboard.width,
        },
      ],
    },
  ];
}

const loop = ([left, right]: readonly [number, number], [bottom, top]: readonly [number, number]): readonly Point[] => [
  { x: left, y: bottom },
  { x: right, y: bottom },
  { x: right, y: top },
  { x: left, y: top },
  { x: left, y: bottom },
];

/** The two upright sides of something round that stands in wood. */
const upright = ({ y, z }: Extent): Paths =>
  z.map((side) => [
    { x: side, y: y[0] },
    { x: side, y: y[1] },
  ]);

/** The optical axis as it is seen from its ends. */
function cross(view: View, { x, y }: Extent): Paths {
  const [left, right] = x.map((side) => project(view, { x: side, y: 0, z: 0 }).x).sort((a, b) => a - b) as [
    number,
    number,
  ];
  return [
    [
      { x: left - 4, y: 0 },
      { x: right + 4, y: 0 },
    ],
    [
      { x: 0, y: y[0] - 4 },
      { x: 0, y: y[1] + 4 },
    ],
  ];
}

/**
 * The sign of first-angle projection (ISO 5456-2): a cone cut short, its small end on the left, and right of it what is
 * seen from the left, two circles.
 *
 * @param corner its upper right corner
 */
function firstAngle(corner: Point): readonly Mark[] {
  const words = 'First-angle projection';
  const size = { large: 2.4, small: 1.2, long: 5 };
  const circles = { x: corner.x - size.large - 1.5, y: corner.y };
  const cone = { left: circles.x - size.large - 2 - size.long, right: circles.x - size.large - 2 };
  const y = corner.y;
  return [
    {
      kind: 'line',
      role: 'frame',
      closed: true,
      points: [
        { x: cone.left, y: y - size.small },
        { x: cone.right, y: y - size.large },
        { x: cone.right, y: y + size.large },
        { x: cone.left, y: y + size.small },
      ].map((p) => ({ x: hundredths(p.x), y: hundredths(p.y) })),
      stroke: lines.outline,
    },
    { kind: 'circle', role: 'frame', centre: circles, radius: size.large, stroke: lines.outline },
    { kind: 'circle', role: 'frame', centre: circles, radius: size.small, stroke: lines.outline },
    ...[
      [
        { x: cone.left - 1, y },
        { x: circles.x + size.large + 1, y },
      ],
      [
        { x: circles.x, y: y - size.large - 1 },
        { x: circles.x, y: y + size.large + 1 },
      ],
    ].map(
      ([from, to]): Mark => ({
        kind: 'strokes',
        role: 'frame',
        paths: chainLine(from as Point, to as Point, 1),
        stroke: lines.axis,
      }),
    ),
    {
      kind: 'words',
      role: 'note',
      at: { x: hundredths(cone.left - 3 - wordsWidth(words, { size: LETTERS.size, heavy: false })), y: y + 1.2 },
      text: words,
      anchor: 'start',
      ...LETTERS,
    },
  ];
}
