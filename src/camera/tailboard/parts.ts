import { frame, type Matrix4 } from '../../geometry/placement.js';
import { box, boxAt, circle, rectangle, slotAlongY } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import type { Tailboard } from './size.js';

/** Card between rail and keeper: the sole's play in height. */
export const CARD = 0.3;
const SCREW = { head: 3.2, pilot: 2 };
const NUT_FLANGE = 1.6;
/** Of two thicknesses: on two alike a rail would go on end for end too, and stand off by the difference of their distances from the ends. */
export const RAIL_DOWELS = { front: 6, rear: 5 };

export function tailboardParts(own: Tailboard): readonly Part[] {
  return [...base(own), ...rails(own), ...doubler(own), ...endStop(own)];
}

const upright = (x: number, y: number, z: number): Matrix4 => frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [x, y, z]);
const front = (matrix: Matrix4) => standing('front', matrix);
const railLength = (own: Tailboard) => own.length + own.start - own.endStop;
const railX = (own: Tailboard) => own.soleWidth / 2 + own.railPlay + own.railWidth / 2;
const dowelsAlong = (own: Tailboard) => [
  { z: 24, diameter: RAIL_DOWELS.front },
  { z: railLength(own) - 30, diameter: RAIL_DOWELS.rear },
];

function base(own: Tailboard): readonly Part[] {
  const { wood, width, start, length, axisHeight, slot, tripod, thread, footSlots } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const outline = rectangle(box(-width / 2, start, width / 2, start + length));
  const boltSlot = slotAlongY(0, slot.middle, slot.width, slot.length);
  const dowels = dowelPlaces(own).map(({ x, z, diameter }) => circle(x, z, diameter));
  const pilots = endScrews(own).map((x) => circle(x, start + length - own.endStop / 2, SCREW.pilot));
  return [
    plate({
      id: 'T1U',
      name: 'tailboard, upper ply',
      ply,
      facing: 'down',
      low: -axisHeight - t,
      group: 'front',
      grain: 'z',
      outline,
      holes: [...footSlots, boltSlot, circle(0, tripod, thread.flange + 0.5), ...dowels, ...pilots],
      joins: [...joined('glue', 'T1L', 'T2'), ...joined('screw', 'T5')],
    }),
    plate({
      id: 'T1L',
      name: 'tailboard, lower ply',
      ply,
      facing: 'up',
      low: -axisHeight - 2 * t,
      group: 'front',
      grain: 'z',
      outline,
      holes: [boltSlot, circle(0, tripod, thread.barrel)],
      joins: joined('glue', 'T4'),
    }),
  ];
}

const dowelPlaces = (own: Tailboard) =>
  [railX(own), -railX(own)].flatMap((x) => dowelsAlong(own).map((dowel) => ({ ...dowel, x })));
const endScrews = (own: Tailboard) => [own.soleWidth / 3, -own.soleWidth / 3];

function rails(own: Tailboard): readonly Part[] {
  const { wood, axisHeight, railWidth, keeperWidth, keeperScrews, scale } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const length = railLength(own);
  const x = railX(own);
  const keeperX = x + railWidth / 2 - keeperWidth / 2;
  const middle = length / 2;
  const railHoles = [
    ...dowelsAlong(own).map(({ z, diameter }) => circle(0, z - middle, diameter)),
    ...keeperScrews.map((z) => circle(0, z - middle, SCREW.pilot)),
  ];
  const keeperHoles = (side: number) => keeperScrews.map((z) => circle(side * x, z, SCREW.head));
  const keeperY = -axisHeight + 2 * t + CARD;
  const keeper = (
    id: string,
    name: string,
    side: 1 | -1,
    strokes: Tailboard['scale']['left'],
    marks: Tailboard['scale']['leftMarks'],
  ) =>
    plate({
      id,
      name,
      ply,
      facing: 'up',
      low: keeperY,
      group: 'front',
      grain: 'z',
      outline: rectangle(box(side * keeperX - keeperWidth / 2, 0, side * keeperX + keeperWidth / 2, length)),
      holes: keeperHoles(side),
      strokes,
      marks,
      joins: joined('screw', 'T2'),
    });
  const both = (y: number, ...xs: readonly number[]) =>
    xs.flatMap((at) => [front(upright(at, y, middle)), front(upright(-at, y, middle))]);
  const screws = keeperScrews.flatMap((z) => [x, -x].map((at) => ({ at, z })));
  return [
    plate({
      id: 'T2',
      name: 'rail ply',
      ply,
      facing: 'up',
      low: 0,
      group: 'front',
      grain: 'z',
      outline: rectangle(boxAt(0, 0, railWidth, length)),
      holes: railHoles,
      places: [...both(-axisHeight, x), ...both(-axisHeight + t, x)],
      joins: [...joined('glue', 'T2', 'rail-card')],
    }),
    boughtPlate({
      id: 'rail-card',
      name: 'card between rail and keeper',
      thickness: CARD,
      outline: rectangle(boxAt(0, 0, railWidth, length)),
      holes: keeperScrews.map((z) => circle(0, middle - z, SCREW.head)),
      placements: both(-axisHeight + 2 * t, x),
      joins: joined('rest', 'T2'),
      massKg: railWidth * length * CARD * 700e-9,
    }),
    keeper('T3', 'keeper, left, with the scale of distances', -1, scale.left, scale.leftMarks),
    keeper('T3S', 'keeper, right, with the scale of magnifications', 1, scale.right, scale.rightMarks),
    ...Object.values(RAIL_DOWELS).map((diameter) =>
      boughtRod({
        id: `rail-dowel-${diameter}`,
        name: `dowel ${diameter} mm in the rails`,
        diameter,
        length: 3 * t,
        placements: dowelPlaces(own)
          .filter((dowel) => dowel.diameter === diameter)
          .map(({ x: at, z }) => front(upright(at, -axisHeight - t, z))),
        joins: joined('press', 'T1U', 'T2'),
        massKg: 0.0004,
      }),
    ),
    boughtRod({
      id: 'keeper-screw',
      name: 'wood screw 3 mm in the keepers',
      diameter: SCREW.head,
      length: t + CARD,
      head: 'end',
      placements: screws.map(({ at, z }) => front(upright(at, -axisHeight + 2 * t, z))),
      joins: joined('screw', 'T3', 'T3S', 'T2'),
      massKg: 0.0006,
    }),
  ];
}

/** Doubler below the tailboard; the tee nut's flange lies in the upper ply, so that nothing stands proud under the sole. */
function doubler(own: Tailboard): readonly Part[] {
  const { wood, axisHeight, tripod, thread, doubler: block } = own;
  const t = wood.ply.thickness;
  const low = (k: number) => -axisHeight - (3 + k) * t;
  return [
    plate({
      id: 'T4',
      name: 'tripod doubler',
      ply: wood.ply,
      facing: 'up',
      low: 0,
      group: 'front',
      grain: 'any',
      outline: rectangle(boxAt(0, 0, block.side, block.side)),
      holes: [circle(0, 0, thread.barrel)],
      places: Array.from({ length: block.plies }, (_, k) => front(upright(0, low(k), tripod))),
      joins: joined('glue', 'T4'),
    }),
    boughtPlate({
      id: 'tripod-flange',
      name: `tee nut ${thread.name}, flange`,
      thickness: NUT_FLANGE,
      outline: circle(0, 0, thread.flange),
      holes: [circle(0, 0, thread.major)],
      placements: [front(upright(0, -axisHeight - t, tripod))],
      joins: [...joined('rest', 'T1L'), ...joined('press', 'tripod-barrel')],
      massKg: 0.004,
    }),
    boughtPlate({
      id: 'tripod-barrel',
      name: `tee nut ${thread.name}, barrel`,
      thickness: t * (1 + block.plies),
      outline: circle(0, 0, thread.barrel),
      holes: [circle(0, 0, thread.major)],
      placements: [front(upright(0, low(block.plies - 1), tripod))],
      joins: joined('press', 'T1L', 'T4'),
      massKg: 0.004,
    }),
  ];
}

function endStop(own: Tailboard): readonly Part[] {
  const { wood, axisHeight, soleWidth, start, length, endStop: depth } = own;
  const rear = start + length;
  const z = rear - depth / 2;
  return [
    plate({
      id: 'T5',
      name: 'end stop',
      ply: wood.ply,
      facing: 'down',
      low: -axisHeight,
      group: 'front',
      grain: 'x',
      outline: rectangle(box(-soleWidth / 2, rear - depth, soleWidth / 2, rear)),
      holes: endScrews(own).map((x) => circle(x, z, SCREW.head)),
    }),
    boughtRod({
      id: 'stop-screw',
      name: 'wood screw 3 mm in the end stop',
      diameter: SCREW.head,
      length: wood.ply.thickness,
      head: 'end',
      placements: endScrews(own).map((x) => front(upright(x, -axisHeight, z))),
      joins: joined('screw', 'T5', 'T1U'),
      massKg: 0.0006,
    }),
  ];
}

/** Lengths that wood screws 3 mm thick are sold in (from memory). */
const WOOD_SCREWS = [8, 10, 12, 16, 20, 25, 30];

/** The longest that three plies hide: end stop and tailboard, or keeper and rail. */
export const woodScrew = ({ wood }: Tailboard): number =>
  WOOD_SCREWS.findLast((length) => length <= 3 * wood.ply.thickness + 1e-9) ?? 8;

export const tailboardHardware = (own: Tailboard): readonly Hardware[] => [
  {
    name: 'tee nut',
    size: `${own.thread.name}, flange ${own.thread.flange}, barrel ${own.thread.barrel} × ${Math.floor(own.wood.ply.thickness * (1 + own.doubler.plies))}: its thread must reach the underside`,
    count: 1,
    for: 'tripod',
  },
  {
    name: 'wood screw',
    size: `3 × ${woodScrew(own)}`,
    count: 2 * own.keeperScrews.length + 2,
    for: 'keepers and end stop',
  },
  ...Object.entries(RAIL_DOWELS).map(([end, diameter]) => ({
    name: 'dowel',
    size: `${diameter} × ${Math.ceil(3 * own.wood.ply.thickness)}`,
    count: 2,
    for: `rails, ${end} ends`,
  })),
  {
    name: 'card strip',
    size: `0.3 thick, ${own.railWidth} × ${Math.ceil(railLength(own))}`,
    count: 2,
    for: 'between rails and keepers',
  },
  { name: 'wax', size: 'a candle end', count: 1, for: 'sole and rails' },
];
