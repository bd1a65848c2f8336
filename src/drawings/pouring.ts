import type { Build, Setup } from '../assembly/build.js';
import { darkSlideIds, isOfHolder } from '../assembly/holders.js';
import { boxAt, type Piece } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Point } from '../geometry/path.js';
import { apply, compose, type Point3 } from '../geometry/placement.js';
import type { Drawing, Mark } from '../model/page.js';
import type { Part, PrintedPart } from '../model/part.js';
import { cutFace } from './cut-face.js';
import { type MarkedFace, marksOfFaces } from './face-marks.js';
import type { DrawingGiven } from './given.js';
import { type Face, hatched, hatchKey, type Loops, stuffOf } from './hatch.js';
import { labelRoom } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';
import { type Name, named } from './names.js';
import { madeMark } from './numbers.js';
import { extentOf, HEAD, headed, hundredths, type Plot, plotted, scaleFor, scaleText } from './plot.js';
import { type Body, bodiesOf, standingIn } from './scene.js';
import { seenLines } from './seen-lines.js';
import { backView, type View } from './view.js';

/** From above, as the photographer stands before it: x to the right, the camera's front up the paper. */
const downView: View = { right: { x: 1, y: 0, z: 0 }, up: { x: 0, y: 0, z: -1 }, toward: { x: 0, y: 1, z: 0 } };

/**
 * A holder that is poured into, standing on its closed end with its caps off: cut through the middle of what the funnel
 * sits on, and, enlarged, that cut level through its legs, where light turns back at each baffle. One drawing for each funnel.
 */
export function pouringDrawings(given: DrawingGiven): readonly Drawing[] {
  const funnels = given.build.parts.filter((part) => part.kind === 'printed' && part.usedOn !== undefined);
  return funnels.map((funnel, i) => pouringDrawing(given, funnel as PrintedPart, i));
}

function pouringDrawing({ build, plan, on, room }: DrawingGiven, funnel: PrintedPart, nth: number): Drawing {
  const scene = sceneOf(build, funnel);
  const { axis, level } = cutsOf(scene);
  const middle = axis.z;
  const upright = { normal: { x: 0, y: 0, z: -1 }, offset: -middle };
  const across = { normal: { x: 0, y: -1, z: 0 }, offset: -level };
  const standing = scene.pieces.map((piece) => ({ piece, box: boxAt(piece, 0) }));
  const bodies = standing.flatMap(({ piece, box: { z } }) =>
    z[0] > middle ? [] : bodiesOf(on, [{ piece, ...(z[1] > middle ? { saw: upright } : {}) }]),
  );
  const spout = scene.pieces.filter(({ part }) => part.id === scene.seat.part.id);
  const enlarged = spout.flatMap((piece) => bodiesOf(on, [{ piece, saw: across }]));
  const whole = viewed(bodies, upright, backView);
  const detail = viewed(enlarged, across, downView);

  const close = scaleFor(sizeOf(detail.bounds), { width: room.width / 2, height: DETAIL });
  const below = close * sizeOf(detail.bounds).height;
  const scale = scaleFor(sizeOf(whole.bounds), {
    width: room.width - 2 * SIDE,
    height: room.height - HEAD - ABOVE - BETWEEN - below - KEY,
  });
  const plot = plotIn(whole.bounds, scale, room.width, HEAD + ABOVE);
  const low = plot.at({ x: 0, y: whole.bounds.bottom }).y;
  const near = plotIn(detail.bounds, close, room.width, low + BETWEEN);
  const foot = near.at({ x: 0, y: detail.bounds.bottom }).y;
  const faces = [...onPaper(whole.faces, plot), ...onPaper(detail.faces, near)];
  const key = hatchKey([...new Set(faces.map(({ stuff }) => stuff))], {
    at: { x: 1, y: foot + 6 },
    width: room.width - 1,
  });
  const height = hundredths(foot + 6 + key.height + 1);
  const hatching = hatched(faces);
  const seen = [...moved(whole.seen, plot), ...moved(detail.seen, near)];

  const words = labelRoom({ width: room.width, height });
  words.keepClear(seen);
  for (const { loops } of faces) words.keepClear(loops, 'closed');
  words.take({ left: 0, top: 0, right: room.width, bottom: HEAD });
  words.take({ left: 0, top: low + BETWEEN - SUBTITLE - 5, right: room.width, bottom: low + BETWEEN - SUBTITLE + 2 });
  words.take({ left: 0, top: foot + 5, right: room.width, bottom: height });
  const names: readonly Name[] = [
    ...marksOfFaces(whole.faces, plot),
    { text: 'chamber', spots: [plot.at(chamberIn(whole.bounds))], role: 'note' },
    ...endsIn(detail.bounds, axis.x).map(({ text, at }): Name => ({ text, spots: [near.at(at)], role: 'note' })),
  ];
  const title = `Pouring into the ${scene.holder}`;
  return {
    name: nth === 0 ? 'pouring' : `pouring-${nth + 1}`,
    title,
    description: `The ${scene.holder} of ${plan.name} on its closed end, cut through the middle of its spout and seen from behind, caps off and the funnel on; below, the spout cut level.`,
    scale,
    width: room.width,
    height,
    marks: [
      ...headed(title, scale),
      {
        kind: 'words',
        role: 'note',
        at: { x: 0, y: hundredths(low + BETWEEN - SUBTITLE) },
        text: `${madeMark(scene.seat.part)}, cut level and seen from above, ${scaleText(close)}: light turns back at each baffle`,
        anchor: 'start',
        ...LETTERS,
      },
      ...hatching,
      { kind: 'strokes', role: 'outline', paths: seen, stroke: lines.beyond },
      ...faces.flatMap(({ loops }) =>
        loops.map((points): Mark => ({ kind: 'line', role: 'cut', points, closed: true, stroke: lines.cut })),
      ),
      ...named(names, words, hatching),
      ...key.marks,
    ],
  };
}

/** Beside, above, between and below the two views, and what the lower one may take, mm. */
const SIDE = 24;
const ABOVE = 4;
const BETWEEN = 18;
const SUBTITLE = 6;
const KEY = 14;
const DETAIL = 45;

interface Pouring {
  readonly holder: string;
  /** What stands there: the holder without slide and caps, and the funnel. */
  readonly pieces: readonly Piece[];
  /** What the funnel sits on. */
  readonly seat: Piece;
  readonly funnel: PrintedPart;
  /** Ids of what shuts it when nothing is poured. */
  readonly caps: ReadonlySet<string>;
}

function sceneOf(build: Build, funnel: PrintedPart): Pouring {
  const { usedOn } = funnel;
  const carrier = build.parts.find(({ id }) => id === usedOn?.part);
  const place = carrier?.placements.find(({ when, group }) => when !== undefined && typeof group !== 'string');
  const holder = place === undefined || typeof place.group === 'string' ? null : place.group.holder;
  const setup = build.setups.find(
    (one): one is Setup => one.holder === holder && one.orientation === 'upright' && !one.focusing,
  );
  const stand = carrier?.placements.find((one) => setup !== undefined && stands(one, setup));
  if (usedOn === undefined || setup === undefined || stand === undefined || holder === null)
    throw new Error(`${funnel.id} is used on a part of a holder`);
  const pressed = (ids: ReadonlySet<string>) =>
    build.parts.filter(({ joins }) => joins.some(({ to, by }) => by === 'press' && ids.has(to))).map(({ id }) => id);
  const caps = new Set(pressed(new Set([usedOn.part])));
  // the slide lies ahead of what is cut, shut
  const off = new Set([...caps, ...pressed(caps), ...darkSlideIds(build.parts)]);
  const own = build.parts.filter((part) => isOfHolder(part, holder) && !off.has(part.id));
  const poured: Part = { ...funnel, placements: [{ ...stand, matrix: compose(stand.matrix, usedOn.matrix) }] };
  const pieces = standingIn([...own, poured], setup);
  const seat = pieces.find(({ part }) => part.id === usedOn.part);
  if (seat === undefined) throw new Error(`${usedOn.part} stands in no set-up`);
  return { holder, pieces, seat, funnel, caps };
}

/** The funnel's axis, through which the upper view is cut, and the height of the lower one. */
function cutsOf({ pieces, seat, funnel }: Pouring): { readonly axis: Point3; readonly level: number } {
  const sits = pieces.find(({ part }) => part.id === funnel.id);
  if (sits === undefined) throw new Error(`${funnel.id} stands nowhere`);
  return { axis: apply(sits.placement.matrix, { x: 0, y: 0, z: 0 }), level: boxAt(seat, 0).y[0] + LEVEL };
}

/** Above the floor of the spout, within its legs, mm. */
const LEVEL = 5;

interface Viewed {
  readonly faces: readonly MarkedFace[];
  readonly seen: Loops;
  readonly bounds: ReturnType<typeof extentOf>;
}

function viewed(
  bodies: readonly Body[],
  saw: { readonly normal: Point3; readonly offset: number },
  view: View,
): Viewed {
  const seen = seenLines(bodies, view).flatMap((piece) => piece.seen);
  const faces = bodies.flatMap((body) => {
    const loops = cutFace(body, saw, view);
    return loops.length === 0 ? [] : [{ part: body.part, loops }];
  });
  return { faces, seen, bounds: extentOf(seen) };
}

const sizeOf = ({ left, right, top, bottom }: Viewed['bounds']) => ({ width: right - left, height: top - bottom });

const plotIn = (bounds: Viewed['bounds'], scale: number, width: number, top: number): Plot =>
  plotted(scale, {
    x: hundredths((width - scale * sizeOf(bounds).width) / 2 - scale * bounds.left),
    y: hundredths(top + scale * bounds.top),
  });

const moved = (paths: Loops, plot: Plot): Loops => paths.map((path) => path.map(plot.at));

const onPaper = (faces: Viewed['faces'], plot: Plot): readonly Face[] =>
  faces.map(({ part, loops }) => ({ stuff: stuffOf(part), loops: moved(loops, plot) }));

/** The open middle of the holder, under the funnel. */
const chamberIn = ({ left, right, top, bottom }: Viewed['bounds']): Point => ({
  x: (left + right) / 2,
  y: bottom + 0.4 * (top - bottom),
});

/** Where a bath comes into the labyrinth, under the neck, and where it leaves it, at the far end. */
function endsIn({ left, right, top, bottom }: Viewed['bounds'], neck: number) {
  const y = (top + bottom) / 2;
  const far = neck < (left + right) / 2 ? right - EXIT : left + EXIT;
  return [
    { text: 'from the neck', at: { x: neck, y } },
    { text: 'to the chamber', at: { x: far, y } },
  ];
}

/** Inside the outer wall, mm. */
const EXIT = 4;
