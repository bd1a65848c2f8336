import { ROUNDING } from '../../assembly/limit.js';
import { type ClosedPath, moved, polygon } from '../../geometry/path.js';
import { across } from '../../geometry/placement.js';
import { boxAt, circle, hexagon, rectangle, slotAlongX } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { washers } from '../../standards/screws.js';
import type { Wood } from '../wood.js';
import type { LensBoard } from './size.js';

/** The corner that makes the board go in one way up. */
const CORNER = 12;
const PACKING = 14;
const RETAINER = 20;
/** Card under the packing, so that the retainer does not pinch the board. */
export const CARD = 0.2;
/** How far a thumb screw stands out of the retainer. */
export const THUMB = 10;
/** From the board to its packing, and to the corner block. */
export const BESIDE_BOARD = 0.3;
export const CORNER_GAP = 0.4;
const NUT = { acrossFlats: 7, height: 3.2 };
/** Two flats along the strip: across it the corners of a nut would leave less wood. */
const uprightNut = (y: number, acrossFlats: number): ClosedPath =>
  moved(hexagon(0, 0, acrossFlats), { x: 0, y, turn: Math.PI / 2 });

export function lensBoardParts(own: LensBoard): readonly Part[] {
  const { wood, board, plug, hole, plugHole, screws, dowels } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const half = board / 2;
  const dowelHoles = dowels.map(({ x, y, diameter }) => circle(x, y, diameter));
  const screwHoles = screws.places.map(({ x, y }) => circle(x, y, screws.hole));
  // a wood screw ends blind in the layer that it enters first; a clamp's screw passes both
  const inBoard = screws.through || own.side === 'front' ? screwHoles : [];
  const inPlug = screws.through || own.side === 'inside' ? screwHoles : [];
  const outline: ClosedPath = polygon([
    [-half, -half],
    [half, -half],
    [half, half - CORNER],
    [half - CORNER, half],
    [-half, half],
  ]);
  const gap = CORNER_GAP * Math.SQRT2;
  const px = half + BESIDE_BOARD + PACKING / 2;
  const py = 0.3 * board;
  const sides = [1, -1] as const;
  const packingZ = -2 * t - CARD;
  const retainerZ = packingZ - t;
  const at = (x: number, y: number, z: number) => standing('front', across(x, y, z));
  const packingPlaces = sides.map((side) =>
    standing(
      'front',
      side === 1 ? across(px, 0, packingZ) : [-1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 1, 0, -px, 0, packingZ, 1],
    ),
  );
  const retainerX = half - own.overlap + RETAINER / 2;
  const screwX = px - retainerX;
  const retainerPlaces = sides.map((side) =>
    standing(
      'front',
      side === 1
        ? across(retainerX, 0, retainerZ)
        : [-1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 1, 0, -retainerX, 0, retainerZ, 1],
    ),
  );
  // alike to both sides of the retainer's middle, so that it works turned over as well
  const slide = 2 * Math.max(screwX, own.draw - screwX);
  const draw = (diameter: number, y: number) => slotAlongX(0, y, slide + diameter, diameter);
  const nutHeight = Math.min(NUT.height, t);
  const pack = retainerScrew(wood).washers;
  return [
    plate({
      id: 'F6',
      name: 'lens board',
      ply,
      facing: 'rear',
      low: -2 * t,
      group: 'front',
      grain: 'any',
      outline,
      holes: [circle(0, 0, hole), ...inBoard, ...dowelHoles],
      joins: [...joined('glue', 'F7'), ...joined('rest', 'F1')],
    }),
    plate({
      id: 'F7',
      name: 'plug',
      ply,
      facing: 'front',
      low: -t,
      group: 'front',
      grain: 'any',
      outline: rectangle(boxAt(0, 0, plug, plug)),
      holes: [circle(0, 0, plugHole), ...inPlug, ...dowelHoles],
    }),
    ...dowels.map(({ x, y, diameter }) =>
      boughtRod({
        id: `board-dowel-${diameter}`,
        name: `dowel ${diameter} mm in board and plug`,
        diameter,
        length: 2 * t,
        placements: [at(x, y, -2 * t)],
        joins: joined('press', 'F6', 'F7'),
        massKg: 0.0003,
      }),
    ),
    plate({
      id: 'F8',
      name: 'retainer packing',
      ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'y',
      outline: rectangle(boxAt(0, 0, PACKING, board)),
      holes: [uprightNut(py, NUT.acrossFlats + 0.2), circle(0, -py, 5)],
      places: packingPlaces,
      joins: joined('glue', 'retainer-card'),
    }),
    boughtPlate({
      id: 'retainer-card',
      name: 'card under the retainer packing',
      thickness: CARD,
      outline: rectangle(boxAt(0, 0, PACKING, board)),
      placements: sides.map((side) => at(side * px, 0, -t - CARD)),
      joins: joined('glue', 'F1'),
      massKg: 0.0002,
    }),
    plate({
      id: 'F9',
      name: 'retainer',
      ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'y',
      outline: rectangle(boxAt(0, 0, RETAINER, board)),
      holes: [draw(4.5, py), draw(5.3, -py)],
      places: retainerPlaces,
      joins: [...joined('screw', 'F8'), ...joined('slide', 'F6')],
    }),
    boughtPlate({
      id: 'retainer-nut',
      name: 'M4 nut in the packing',
      thickness: nutHeight,
      outline: uprightNut(0, NUT.acrossFlats),
      holes: [circle(0, 0, 4.5)],
      placements: sides.map((side) => at(side * px, side * py, -t - CARD - nutHeight)),
      joins: joined('screw', 'F8', 'retainer-screw'),
      massKg: 0.0008,
    }),
    ...(pack > 0
      ? [
          boughtPlate({
            id: 'retainer-washer',
            name: 'washer M4 under the thumb screw',
            thickness: washers.M4.thickness.value,
            outline: circle(0, 0, washers.M4.outside.value),
            holes: [circle(0, 0, 4.5)],
            placements: sides.flatMap((side) =>
              Array.from({ length: pack }, (_, k) =>
                at(side * px, side * py, retainerZ - (k + 1) * washers.M4.thickness.value),
              ),
            ),
            joins: joined('rest', 'F9'),
            massKg: 0.0003,
          }),
        ]
      : []),
    boughtRod({
      id: 'retainer-screw',
      name: 'M4 thumb screw',
      diameter: 4.48,
      length: 2 * t + THUMB,
      head: 'start',
      placements: sides.map((side) => at(side * px, side * py, retainerZ - THUMB)),
      joins: joined('screw', 'F9'),
      massKg: 0.004,
    }),
    boughtRod({
      id: 'retainer-pin',
      name: 'guide pin of the retainer',
      diameter: 5,
      length: 2 * t,
      placements: sides.map((side) => at(side * px, -side * py, retainerZ)),
      joins: [...joined('press', 'F8'), ...joined('slide', 'F9')],
      massKg: 0.0003,
    }),
    plate({
      id: 'F10',
      name: 'corner block',
      ply,
      facing: 'rear',
      low: -2 * t,
      group: 'front',
      grain: 'any',
      outline: polygon([
        [half, half - CORNER + gap],
        [half, half],
        [half - CORNER + gap, half],
      ]),
      joins: joined('glue', 'F1'),
    }),
  ];
}

/** Lengths that M4 screws are sold in (from memory). */
const M4_LENGTHS = [6, 8, 10, 12, 16, 20, 25];

/** Short of the card that the nut stands on, for ply that is thinner in places: a screw that ends there lifts the retainer instead of clamping it; a choice of ours. */
const SHORT_OF_CARD = 0.1;
/** Of a nut, that the screw is to be in; a choice of ours. */
const IN_NUT = 0.6;

/** The thumb screw of a retainer: as long as goes in, or the next longer one on washers where that would hold by a turn of its thread. */
export function retainerScrew({ ply }: Wood): { readonly length: number; readonly washers: number } {
  const room = 2 * ply.thickness - SHORT_OF_CARD;
  const short = M4_LENGTHS.findLast((length) => length <= room + ROUNDING) ?? 0;
  const long = M4_LENGTHS.find((length) => length > short);
  const inNut = short - 2 * ply.thickness + NUT.height;
  if (long === undefined || inNut >= IN_NUT * NUT.height - ROUNDING) return { length: short, washers: 0 };
  return { length: long, washers: Math.ceil((long - room) / washers.M4.thickness.value - ROUNDING) };
}

export const lensBoardHardware = (own: LensBoard): readonly Hardware[] => [
  {
    name: 'thumb screw',
    size: `M4 × ${retainerScrew(own.wood).length}, head to clamp on the wood`,
    count: 2,
    for: 'retainers of the lens board',
  },
  {
    name: 'washer',
    size: 'M4',
    count: 2 * retainerScrew(own.wood).washers,
    for: 'under the heads of the retainers’ thumb screws',
  },
  { name: 'nut', size: 'M4', count: 2, for: 'let into the retainers’ packing' },
  { name: 'epoxy', size: '5 g, two parts', count: 1, for: 'the nuts in the retainers’ packing' },
  {
    name: 'dowel',
    size: `5 × ${Math.ceil(2 * own.wood.ply.thickness)}`,
    count: own.dowels.length > 0 ? 3 : 2,
    for: own.dowels.length > 0 ? 'plug and retainer guides' : 'retainer guides',
  },
  {
    name: 'dowel',
    size: `6 × ${Math.ceil(2 * own.wood.ply.thickness)}`,
    count: own.dowels.length > 0 ? 1 : 0,
    for: 'plug',
  },
  ...(own.by === 'flange'
    ? [{ name: 'countersunk wood screw', size: '3 × 10', count: own.screws.places.length, for: 'the lens’s flange' }]
    : []),
];
