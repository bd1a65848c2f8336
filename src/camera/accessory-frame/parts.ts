import { polygon } from '../../geometry/path.js';
import { across, frame } from '../../geometry/placement.js';
import { box, boxAt, circle, rectangle } from '../../geometry/shapes.js';
import { boughtPlate, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import type { RailPlate } from '../rail-plate.js';
import { type AccessoryFrame, type Channel, LIMB, LIP_LAP, RAIL_CARD } from './size.js';

/** The foot of a rail, under the plate; a choice of ours. */
const FOOT = 10;
/** Of card, kg/mm³. */
const CARD_DENSITY = 700e-9;

/** The ring that the plate rests on, and that the rails are glued to. */
export const frontRing = ({ channel }: Pick<AccessoryFrame, 'channel'>): string => (channel ? 'A3' : 'A1');

export function accessoryFrameParts(own: AccessoryFrame): readonly Part[] {
  const { wood, outside, opening, board, rings, channel, plate: rail, peg } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const ring = {
    ply,
    facing: 'rear',
    group: 'front',
    grain: 'any',
    outline: rectangle(boxAt(0, 0, outside, outside)),
  } as const;
  const opened = [rectangle(boxAt(0, 0, opening, opening))];
  const pinned = peg ? [...opened, circle(0, peg.y, peg.diameter)] : opened;
  return [
    plate({
      ...ring,
      id: 'A1',
      name: 'ring of the accessory frame',
      low: 0,
      holes: channel ? opened : pinned,
      places: Array.from({ length: rings }, (_, k) => standing('front', across(0, 0, board - (k + 1) * t))),
      joins: [...joined('glue', 'F6'), ...(rings > 1 ? joined('glue', 'A1') : [])],
    }),
    ...(channel ? channelParts(own, channel) : []),
    ...(channel
      ? [
          plate({
            ...ring,
            id: 'A3',
            name: 'front ring',
            low: own.front,
            holes: pinned,
            joins: joined('glue', 'channel-card'),
          }),
        ]
      : []),
    ...(rail ? rails(own, rail) : []),
  ];
}

/** A U in which the filter holder stands. */
function channelParts(
  { wood, outside }: AccessoryFrame,
  { rear, front, width, floor, card }: Channel,
): readonly Part[] {
  const { ply } = wood;
  const [half, inner] = [outside / 2, width / 2];
  const outline = polygon([
    [-half, -half],
    [half, -half],
    [half, half],
    [inner, half],
    [inner, floor],
    [-inner, floor],
    [-inner, half],
    [-half, half],
  ]);
  return [
    plate({
      id: 'A2',
      name: 'channel of the filter holder',
      ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'y',
      outline,
      places: [1, 2].map((k) => standing('front', across(0, 0, rear - k * ply.thickness))),
      joins: joined('glue', 'A1', 'A2'),
    }),
    boughtPlate({
      id: 'channel-card',
      name: 'card on the channel',
      thickness: card,
      outline,
      placements: [standing('front', across(0, 0, front))],
      joins: joined('glue', 'A2'),
      massKg: CARD_DENSITY * card * (outside * outside - width * (half - floor)),
    }),
  ];
}

/** Packing with a foot for the plate to stand on, and a lip over it, to the right and, turned over, to the left. */
function rails(own: AccessoryFrame, { width, bottom, railTop }: RailPlate): readonly Part[] {
  const { wood, outside, front } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const outer = outside / 2;
  const inner = outer - LIMB;
  const foot = polygon([
    [width / 2 - FOOT, -outer],
    [outer, -outer],
    [outer, railTop],
    [inner, railTop],
    [inner, bottom],
    [width / 2 - FOOT, bottom],
  ]);
  const over = (z: number) => frame([-1, 0, 0], [0, 1, 0], [0, 0, -1], [0, 0, z]);
  const lip = LIMB + LIP_LAP + (inner - width / 2);
  const height = outer + railTop;
  return [
    boughtPlate({
      id: 'rail-packing-card',
      name: 'card behind the rails of the accessory frame',
      thickness: RAIL_CARD,
      outline: foot,
      placements: [standing('front', across(0, 0, front - RAIL_CARD)), standing('front', over(front))],
      joins: joined('glue', frontRing(own)),
      massKg: CARD_DENSITY * RAIL_CARD * (LIMB * height + FOOT * LIMB),
    }),
    plate({
      id: 'A4',
      name: 'rail of the accessory frame',
      ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'y',
      outline: foot,
      places: [standing('front', across(0, 0, front - RAIL_CARD - t)), standing('front', over(front - RAIL_CARD))],
      joins: joined('glue', 'rail-packing-card'),
    }),
    plate({
      id: 'A5',
      name: 'lip of the rail',
      ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'y',
      outline: rectangle(box(-lip / 2, -outer, lip / 2, railTop)),
      places: [1, -1].map((side) => standing('front', across(side * (outer - lip / 2), 0, front - RAIL_CARD - 2 * t))),
      joins: joined('glue', 'A4'),
    }),
  ];
}

export const accessoryFrameHardware = ({ channel, plate: rail }: AccessoryFrame): readonly Hardware[] => [
  ...(rail
    ? [{ name: 'card', size: `${RAIL_CARD} mm thick`, count: 1, for: 'behind the rails of the accessory frame' }]
    : []),
  ...(channel
    ? [
        {
          name: 'card',
          size: `to make up ${Math.round(channel.card * 10) / 10} mm`,
          count: 1,
          for: 'on the channel of the filter holder',
        },
      ]
    : []),
];
