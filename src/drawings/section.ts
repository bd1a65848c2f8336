import type { Build, Setup } from '../assembly/build.js';
import { darkSlideIds } from '../assembly/holders.js';
import { boxAt, type Piece } from '../assembly/pieces.js';
import type { Box, Point } from '../geometry/path.js';
import type { Drawing, Mark } from '../model/page.js';
import type { Part } from '../model/part.js';
import type { PlanDocument } from '../model/plan.js';
import { plainNumber } from '../units/print.js';
import { cutFace } from './cut-face.js';
import { type Dimension, dimensioned, type Place } from './dimension.js';
import { marksOfFaces } from './face-marks.js';
import type { DrawingGiven } from './given.js';
import { type Face, hatched, hatchKey, type Loops, stuffOf } from './hatch.js';
import { labelRoom } from './label-room.js';
import { LIGHT_FILL, lines } from './line-weights.js';
import { type Name, named } from './names.js';
import { chainLine, cornersAt, extentOf, HEAD, headed, hundredths, type Plot, plotted, scaleFor } from './plot.js';
import { type Body, bodiesOf, standingIn } from './scene.js';
import { seenLines } from './seen-lines.js';
import { leftView } from './view.js';

/** What lies right of the axis is left and looked at from the left: x of the view is z of the camera. */
const SAW = { normal: { x: 1, y: 0, z: 0 }, offset: 0 } as const;

/** Where one composes: at infinity, or at the farthest where no infinity is asked for. */
export type Focused = 'infinity' | 'farthest' | 'nearest';

/** The far end of a camera's focus. */
export const farEnd = ({ optics }: PlanDocument): 'infinity' | 'farthest' =>
  optics.farthest ? 'farthest' : 'infinity';

const TITLES = {
  infinity: 'Section through the axis, at infinity',
  farthest: 'Section through the axis, at the farthest focus',
  nearest: 'Section through the axis, at the nearest focus',
} as const;

/**
 * Along the axis: at the far end the glass is in, as one composes; at the nearest the first holder, as one exposes. The rear
 * stands where the film of the first holder is sharp.
 */
export function sectionDrawing({ build, plan, on, room }: DrawingGiven, at: Focused): Drawing {
  const figures = figuresOf(plan, build, at);
  const pieces = standingIn(withoutDarkSlides(build.parts), setupFor(build, at));
  const bodies = sawn(pieces, figures.rear).flatMap((shown) => bodiesOf(on, [shown]));
  const faces = bodies.flatMap((body): readonly CutFace[] => {
    const loops = isWhole(body) ? [] : cutFace(body, SAW, leftView);
    return loops.length === 0 ? [] : [{ body, loops }];
  });
  const seen = seenLines(bodies, leftView).flatMap((piece) => piece.seen);
  const light = lightOf(pieces, figures);

  const bounds = extentOf(seen);
  const rows = 7 * ROWS + ROWS_BEGIN;
  const title = TITLES[at];
  const size = { width: bounds.right - bounds.left, height: bounds.top - bounds.bottom };
  const scale = scaleFor(size, {
    width: room.width - 2 * SIDE,
    height: room.height - HEAD - rows - BELOW,
  });
  const plot = plotted(scale, {
    x: hundredths((room.width - scale * size.width) / 2 - scale * bounds.left),
    y: hundredths(HEAD + rows + scale * bounds.top),
  });
  const low = plot.at({ x: 0, y: bounds.bottom }).y;
  const key = hatchKey([...new Set(faces.map(({ body }) => stuffOf(body.part)))], {
    light: 'light to the edges of the film',
    at: { x: EDGE, y: low + BELOW - KEY },
    width: room.width - EDGE,
  });
  const height = hundredths(low + BELOW - KEY + key.height + 1);

  const onPaper = (paths: Loops): Loops => paths.map((path) => path.map(plot.at));
  const seenOnPaper = onPaper(seen);
  const cut = faces.map(({ body, loops }): Face => ({ stuff: stuffOf(body.part), loops: onPaper(loops) }));
  const hatching = hatched(cut);
  const films = filmsOf(figures, plot);
  const axis = [
    plot.at({ x: bounds.left - 6 / scale, y: 0 }),
    plot.at({ x: bounds.right + 10 / scale, y: 0 }),
  ] as const;

  const words = labelRoom({ width: room.width, height });
  words.keepClear(seenOnPaper);
  for (const { loops } of cut) words.keepClear(loops, 'closed');
  words.keepClear([axis, ...films.map(({ line }) => line)]);
  words.keepClear([light.map(plot.at)], 'closed');
  words.take({ left: 0, top: 0, right: room.width, bottom: HEAD });
  words.take({ left: 0, top: low + BELOW - KEY - 1, right: room.width, bottom: height });

  const known = [...seen, ...films.map(({ truly }) => truly)];
  const dimensions = dimensioned(
    dimensionsOf(figures, { known, plot, bounds, rim: light[0].x, axisEnd: axis[1] }),
    words,
  );
  const names = [
    ...namesOf(figures, films, plot),
    ...(at !== 'nearest'
      ? marksOfFaces(
          faces.map(({ body: { part }, loops }) => ({ part, loops })),
          plot,
        )
      : []),
  ];
  return {
    name: `section-${at}`,
    title,
    description:
      at !== 'nearest'
        ? `${plan.name} cut along its axis and seen from the left, the lens on the left, focused at ${at === 'infinity' ? 'infinity' : 'the farthest'}, the ground glass in.`
        : `${plan.name} cut along its axis and seen from the left, at the nearest focus, ${figures.holder} in.`,
    scale,
    width: room.width,
    height,
    marks: [
      ...headed(title, scale),
      { kind: 'line', role: 'light', points: light.map(plot.at), closed: true, fill: LIGHT_FILL },
      ...hatching,
      { kind: 'strokes', role: 'outline', paths: seenOnPaper, stroke: lines.beyond },
      ...cut.flatMap(({ loops }) =>
        loops.map((points): Mark => ({ kind: 'line', role: 'cut', points, closed: true, stroke: lines.cut })),
      ),
      {
        kind: 'strokes',
        role: 'light',
        paths: edgesOfLight(light).map((edge) => edge.map(plot.at)),
        stroke: lines.light,
      },
      { kind: 'strokes', role: 'axis', id: 'optical-axis', paths: chainLine(...axis, 1), stroke: lines.axis },
      ...films.map(
        ({ id, line, dashed }): Mark => ({
          kind: 'line',
          role: 'film',
          id,
          points: line,
          stroke: dashed ? { ...lines.film, dash: [2, 1] } : lines.film,
        }),
      ),
      ...dimensions,
      ...named(names, words, hatching),
      ...key.marks,
    ],
  };
}

/** Rows of dimensions above, how far the first is from the camera and the room at its sides and below it, mm. */
const ROWS = 4;
const ROWS_BEGIN = 4;
const ROW = 6.5;
const SIDE = 13;
const BELOW = 26;
/** Of that for the key. */
const KEY = 16;

/** Nothing stands nearer to the edge, mm. */
const EDGE = 1;

interface CutFace {
  readonly body: Body;
  readonly loops: Loops;
}

/** The lengths that a section is drawn by, z along the axis. */
interface Figures {
  readonly at: Focused;
  /** How far the rear has slid from the closest. */
  readonly rear: number;
  readonly holder: string;
  readonly lensSeat: number;
  readonly holderSeat: number;
  readonly film: number;
  /** Half the image, upright. */
  readonly half: number;
  readonly ply: number;
  /** Radius of the lens’s barrel, behind its seat. */
  readonly barrel: number;
  readonly plan: PlanDocument;
}

function figuresOf(plan: PlanDocument, build: Build, at: Focused): Figures {
  const { optics, slide, holders } = plan;
  const [first] = holders;
  const panel = build.parts.find(({ id }) => id === 'F1');
  const barrel = build.parts.find(({ id }) => id === 'lens-barrel');
  if (first === undefined || panel?.kind !== 'flat') throw new Error('a camera has a holder and a front panel');
  if (barrel?.kind !== 'bought' || barrel.shape.form !== 'cylinder') throw new Error('a lens has a round barrel');
  const holderSeat = first.seat[at] ?? first.seat.infinity;
  return {
    at,
    rear: holderSeat - slide.closest,
    holder: first.name,
    lensSeat: optics.seatZ,
    holderSeat,
    film: holderSeat + first.effectiveDepth,
    half: imageOf(build, plan).long / 2,
    ply: panel.thickness,
    barrel: barrel.shape.diameter / 2,
    plan,
  };
}

/**
 * The image: the opening of the back less the same margin g all round, whose diagonal the plan has:
 * (w − 2g)² + (h − 2g)² = d², of which the smaller solution is the margin.
 */
export function imageOf({ gate }: Build, { optics }: PlanDocument): { readonly short: number; readonly long: number } {
  const { width: w, height: h } = gate;
  const d = optics.imageDiagonal;
  const g = (w + h - Math.sqrt((w + h) * (w + h) - 2 * (w * w + h * h - d * d))) / 4;
  return { short: Math.min(w, h) - 2 * g, long: Math.max(w, h) - 2 * g };
}

function setupFor({ setups }: Build, at: Focused): Setup {
  const found = setups.find(
    ({ orientation, focusing }) => orientation === 'upright' && focusing === (at !== 'nearest'),
  );
  if (found === undefined) throw new Error('a camera has a set-up for the glass and one for a holder');
  return found;
}

/** A dark slide that is drawn stands as far out of a holder as that is long: the section would be small beside it. */
function withoutDarkSlides(parts: readonly Part[]): readonly Part[] {
  const slides = darkSlideIds(parts);
  return parts.filter(({ id }) => !slides.has(id));
}

/** Bolts, screws, pins and dowels are not cut lengthwise: ISO 128-44 (from memory). */
const isWhole = ({ part }: { readonly part: Body['part'] }): boolean =>
  part.kind === 'bought' && ['metal', 'dowel'].includes(stuffOf(part));

/** The pieces on the far side of the saw, those that it goes through cut. */
const sawn = (pieces: readonly Piece[], rear: number) =>
  pieces.flatMap((piece) => {
    const [from, to] = piece.extent.x;
    if (to <= SAW.offset) return [];
    if (from >= SAW.offset || isWhole(piece)) return [{ piece, rear }];
    return [{ piece, rear, saw: SAW }];
  });

/** From the rear rim of the barrel to the edges of the film: rim above, film above, film below, rim below. */
function lightOf(pieces: readonly Piece[], { film, half }: Figures): readonly [Point, Point, Point, Point] {
  const ends = pieces
    .filter(({ part }) => part.kind === 'bought' && part.role === 'lens')
    .map((piece) => boxAt(piece, 0))
    .map(({ y, z }) => ({ z: z[1], radius: (y[1] - y[0]) / 2 }));
  const rim = ends.reduce((last, end) => (end.z > last.z ? end : last));
  return [
    { x: rim.z, y: rim.radius },
    { x: film, y: half },
    { x: film, y: -half },
    { x: rim.z, y: -rim.radius },
  ];
}

const edgesOfLight = ([a, b, c, d]: readonly [Point, Point, Point, Point]): Loops => [
  [a, b],
  [d, c],
];

interface FilmLine {
  readonly id: string;
  /** Where it is the first of those in this plane: what they all are. */
  readonly name: string | null;
  readonly truly: readonly Point[];
  /** On paper. */
  readonly line: readonly Point[];
  readonly dashed: boolean;
}

/** So far a film plane is drawn beyond the film, mm on paper. */
const FILM_BEYOND = 3;

/** The plane in which each holder has its film, and the glass its frosted face, at this place of the seat. */
function filmsOf({ at, plan, holderSeat, lensSeat, half, holder }: Figures, plot: Plot): readonly FilmLine[] {
  const planes = [
    ...plan.holders.map(({ name, effectiveDepth }, i) => ({
      id: `film-holder-${i + 1}`,
      what: `film of\n${name}`,
      z: holderSeat + effectiveDepth,
      dashed: name !== holder,
    })),
    ...(at === 'nearest'
      ? [
          {
            id: 'film-at-infinity',
            what: 'film plane at infinity',
            z: lensSeat + plan.optics.infinity.filmDistance,
            dashed: true,
          },
        ]
      : []),
  ];
  return planes.map(({ id, z, dashed }, i): FilmLine => {
    const same = planes.filter((plane) => Math.abs(plane.z - z) < 1e-6);
    const reach = half + FILM_BEYOND / plot.scale;
    const truly = [
      { x: z, y: reach },
      { x: z, y: -reach },
    ];
    const glass = at !== 'nearest' && i === 0 ? ['frosted glass'] : [];
    const names = [...glass, ...same.map(({ what }) => what)];
    return { id, name: same[0]?.id === id ? names.join(',\n') : null, truly, line: truly.map(plot.at), dashed };
  });
}

interface Around {
  /** What stands on the drawing, true lengths: extension lines begin at its corners. */
  readonly known: Loops;
  readonly plot: Plot;
  readonly bounds: Box;
  /** z of the rear end of the lens. */
  readonly rim: number;
  readonly axisEnd: Point;
}

const figure = (length: number): string => plainNumber(length, 2);

function dimensionsOf(figures: Figures, { known, plot, bounds, rim, axisEnd }: Around): readonly Dimension[] {
  const { plan, lensSeat, holderSeat, film, ply, at } = figures;
  const { slide, tailboard, optics } = plan;
  const above = plot.at({ x: 0, y: bounds.top }).y - ROWS_BEGIN;
  const top = (z: number): Point => ({ x: z, y: Math.max(...(cornersAt(known, z) ?? [bounds.top])) });
  const level = (name: string, what: string, row: number, from: number, to: number): Dimension => ({
    name,
    what,
    figure: figure(Math.abs(to - from)),
    places: [{ from: plot.at(top(from)), to: plot.at(top(to)), line: { y: hundredths(above - row * ROW) } }],
  });
  /** Inside a box, at one of several places along it. */
  const upright = (name: string, half: number, zs: readonly number[]): Dimension => {
    const at = (z: number): Place => ({
      from: plot.at({ x: z, y: -half }),
      to: plot.at({ x: z, y: half }),
      line: { x: plot.at({ x: z, y: 0 }).x },
    });
    return { name, what: 'inside', figure: figure(2 * half), places: zs.map(at) };
  };
  if (at !== 'nearest')
    return [
      level('ply', 'ply', 0, -ply, 0),
      level('front-box-length', 'front box', 1, 0, slide.frontBoxLength),
      level(`seat-${at}`, 'panel to holder seat', 2, 0, holderSeat),
      level(`film-distance-${at}`, 'lens seat to film', 3, lensSeat, film),
      {
        name: 'axis-height',
        what: 'axis height',
        figure: figure(tailboard.axisHeight),
        places: [
          {
            from: plot.at({ x: bounds.right, y: -tailboard.axisHeight }),
            to: axisEnd,
            line: { x: hundredths(axisEnd.x - 1.5) },
          },
        ],
      },
    ];
  const standard = holderSeat - slide.stackBehindBoxes;
  const rearFront = standard - slide.rearBoxLength;
  const sharpAtInfinity = lensSeat + optics.infinity.filmDistance;
  const step = STEP / plot.scale;
  const joints = jointsOf(slide, rearFront, figures.rear);
  // ahead of the middle box too, where there is one: between its walls the width of the front box would pass for its own
  const boxesApart = Math.min(slide.frontBoxLength, ...joints.map(({ ends: [front] }) => front));
  const inFront = range(boxesApart - step, Math.max(rim, 0) + step, -step);
  const rearOnly = Math.max(rearFront, slide.frontBoxLength);
  const inRear = [
    ...range(rearOnly + step, standard - step, step),
    ...range(slide.frontBoxLength - step, rearFront + step, -step),
  ];
  // clear of the dimension of the extension, and of its figure beside it
  const clear = inRear.filter((z) => z < sharpAtInfinity - 2 * step);
  const extension = film - sharpAtInfinity;
  const aside = [-0.5, -0.75, -0.25, 0.25, 0.5, 0.75].map((share): Place => {
    const y = plot.at({ x: 0, y: share * figures.half }).y;
    const [from, to] = [sharpAtInfinity, film].map((z) => ({ x: plot.at({ x: z, y: 0 }).x, y })) as [Point, Point];
    return { from, to, line: { y } };
  });
  return [
    ...joints.map(({ name, ends: [from, to] }) => level(name, from < to ? 'overlap' : 'gap', 0, from, to)),
    level('rear-box-length', 'rear box', 1, rearFront, standard),
    level('seat-nearest', 'panel to holder seat', 2, 0, holderSeat),
    level('film-distance-nearest', 'lens seat to film', 3, lensSeat, film),
    upright('rear-box-inside', slide.rearBoxInside / 2, [...clear, ...inRear, rearOnly + step]),
    upright('front-box-inside', slide.frontBoxInside / 2, [...inFront, boxesApart - step]),
    ...(extension < LEAST_EXTENSION
      ? []
      : [{ name: 'extension', what: 'extension', figure: figure(extension), places: aside }]),
  ];
}

interface DrawnJoint {
  readonly name: string;
  /** From the front edge of the inner box to the rear edge of the outer one. */
  readonly ends: readonly [number, number];
}

/** Where the boxes overlap; of three there are two such places. */
function jointsOf(slide: PlanDocument['slide'], rearFront: number, rear: number): readonly DrawnJoint[] {
  const { middleBox, frontBoxLength, panelDead } = slide;
  if (middleBox === undefined) return [{ name: 'overlap', ends: [rearFront, frontBoxLength] }];
  const front = panelDead + Math.max(0, rear - middleBox.rearRun);
  return [
    { name: 'overlap-in-front', ends: [front, frontBoxLength] },
    { name: 'overlap-of-rear', ends: [rearFront, front + middleBox.rearRun + middleBox.overlapOfRear] },
  ];
}

/** From place to place inside a box where a dimension may stand, mm on paper. */
const STEP = 4;
/** A camera for one distance alone has no extension to speak of, mm. */
const LEAST_EXTENSION = 1;

function range(from: number, to: number, step: number): readonly number[] {
  const count = Math.floor((to - from) / step) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => from + i * step);
}

function namesOf(figures: Figures, films: readonly FilmLine[], plot: Plot): readonly Name[] {
  const { half, lensSeat, holderSeat, barrel } = figures;
  const on = (z: number, ys: readonly number[]): readonly Point[] => ys.map((y) => plot.at({ x: z, y }));
  return [
    ...films.flatMap(({ name, line: [upper, lower] }): readonly Name[] =>
      name === null || upper === undefined || lower === undefined
        ? []
        : [{ text: name, spots: [upper, lower], role: 'note', toward: { x: 1, y: 0 } }],
    ),
    { text: 'holder seat', spots: on(holderSeat, [-half - 6, half + 6]), role: 'note', toward: { x: 1, y: 0 } },
    { text: 'lens seat', spots: on(lensSeat, [barrel, -barrel]), role: 'note', toward: { x: -1, y: 0 } },
  ];
}
