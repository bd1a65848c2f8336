import { type Facing, matrixOf } from '../../geometry/facing.js';
import type { ClosedPath, Vertex } from '../../geometry/path.js';
import { compose, frame, shift } from '../../geometry/placement.js';
import { boxAt, circle, hexagon, rounded } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { type Handle, handleScrews } from './size.js';

/** Corners of the plate. */
const PLATE_CORNER = 8;

export function handleParts(own: Handle): readonly Part[] {
  const { wood, along, top, middle, innerPlies, hand, screw, nut, washer, pocket } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const foot = top + t;
  const thick = (innerPlies + 2) * t;
  const finger = rounded(boxAt(0, hand.above + hand.height / 2, hand.width, hand.height), hand.radius);
  const [one, other]: readonly [Facing, Facing] = along === 'z' ? ['right', 'left'] : ['rear', 'front'];
  /** A ply that stands on the plate: drawn with y from its foot, and from the handle's middle along it. */
  const standingPly = (id: string, name: string, outline: ClosedPath, at: readonly (readonly [Facing, number])[]) =>
    plate({
      id,
      name,
      ply,
      facing: one,
      low: 0,
      group: 'front',
      grain: along,
      outline,
      holes: [finger],
      places: at.map(([facing, low]) => standing('front', compose(shift(0, foot, middle), matrixOf(facing, low, t)))),
      joins: joined('glue', 'F11', ...(id === 'F13' || innerPlies > 1 ? ['F12'] : [])),
    });
  const screws = handleScrews(own);
  const [wide, long] = along === 'z' ? [own.plate.width, own.plate.length] : [own.plate.length, own.plate.width];
  /** Upwards along its own z, flats fore and aft where the handle runs that way, so that its pocket keeps it from turning. */
  const upright = (y: number) =>
    screws.map(({ x, z }) =>
      standing(
        'front',
        along === 'z'
          ? frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [x, y, z])
          : frame([0, 0, 1], [1, 0, 0], [0, 1, 0], [x, y, z]),
      ),
    );
  return [
    plate({
      id: 'F11',
      name: 'handle plate',
      ply,
      facing: 'down',
      low: top,
      group: 'front',
      grain: along,
      outline: rounded(boxAt(0, middle, wide, long), PLATE_CORNER),
      holes: screws.map(({ x, z }) => circle(x, z, screw.hole)),
      joins: joined('glue', 'F3'),
    }),
    standingPly(
      'F12',
      'handle, inner ply',
      outlineOf(own, [-1, 1]),
      Array.from({ length: innerPlies }, (_, k) => [one, -thick / 2 + (k + 1) * t] as const),
    ),
    // both marked faces inwards, on the glue
    standingPly('F13', 'handle, outer ply', outlineOf(own, []), [
      [one, -thick / 2],
      [other, thick / 2 - t],
    ]),
    boughtPlate({
      id: 'handle-washer',
      name: 'washer M4 in the handle',
      thickness: washer.thickness,
      outline: circle(0, 0, washer.diameter),
      holes: [circle(0, 0, screw.hole)],
      placements: upright(foot + pocket.from),
      joins: joined('rest', 'F12'),
      massKg: 0.0003,
    }),
    boughtPlate({
      id: 'handle-nut',
      name: 'M4 nut in the handle',
      thickness: nut.thickness,
      outline: hexagon(0, 0, nut.acrossFlats),
      holes: [circle(0, 0, screw.hole)],
      placements: upright(foot + pocket.step),
      joins: joined('screw', 'F12', 'handle-screw', 'handle-washer'),
      massKg: 0.0008,
    }),
    boughtRod({
      id: 'handle-screw',
      name: `M4 × ${screw.length} countersunk screw of the handle`,
      diameter: screw.diameter,
      length: screw.length,
      head: 'start',
      placements: upright(top),
      joins: joined('screw', 'F11', 'F12'),
      massKg: 0.0022,
    }),
  ];
}

/** Quarter of a circle as a bulge. */
const QUARTER = Math.SQRT2 - 1;

/** Of one ply, from the handle's middle and from its foot; with slots for screws and pockets for their nuts where they are wanted. */
function outlineOf({ length, height, cornerRadius: r, screw, pocket }: Handle, slots: readonly number[]): ClosedPath {
  const v = (x: number, y: number, bulge = 0): Vertex => ({ x, y, bulge });
  const half = length / 2;
  const { from, step, to } = pocket;
  const [s, w, n] = [screw.hole / 2, pocket.washer / 2, pocket.nut / 2];
  const rising: readonly (readonly [number, number])[] = [
    [s, 0],
    [s, from],
    [w, from],
    [w, step],
    [n, step],
    [n, to],
    ...(screw.slot > to
      ? ([
          [s, to],
          [s, screw.slot],
        ] as const)
      : []),
  ];
  const slot = (side: number): readonly Vertex[] => [
    ...rising.map(([x, y]) => v(side * screw.fromMiddle - x, y)),
    ...[...rising].reverse().map(([x, y]) => v(side * screw.fromMiddle + x, y)),
  ];
  return [
    v(-half, 0),
    ...slots.flatMap(slot),
    v(half, 0),
    v(half, height - r, QUARTER),
    v(half - r, height),
    v(-half + r, height, QUARTER),
    v(-half, height - r),
  ];
}

export const handleHardware = ({ screw }: Handle): readonly Hardware[] => [
  { name: 'countersunk screw', size: `M4 × ${screw.length}`, count: 2, for: 'handle, from below its plate' },
  { name: 'nut', size: 'M4', count: 2, for: 'handle, between its plies' },
  { name: 'washer', size: 'M4', count: 2, for: 'handle, under its nuts' },
];
