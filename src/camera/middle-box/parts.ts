import { polygon } from '../../geometry/path.js';
import { frame } from '../../geometry/placement.js';
import { box, boxAt, circle, rectangle } from '../../geometry/shapes.js';
import { boughtRod, joined, plate, standing } from '../../joinery/plate.js';
import { feltRound, tubeOpening, tubeWalls } from '../../joinery/tube.js';
import type { Hardware, Part } from '../../model/part.js';
import type { MiddleBox } from './size.js';

/** Wood screws of 3 mm, from below through the sole. */
const SCREW = { hole: 3.2, pilot: 2, head: 6, headHeight: 1.8 };

/** All but its stops on the front box and on the sole stays in the front box until the rear box draws it along. */
export function middleBoxParts(own: MiddleBox): readonly Part[] {
  return [
    ...[...walls(own), frameOf(own), bar(own)].map((part) => drawnAlong(part, own.rearRun)),
    block(own),
    ...batten(own),
  ];
}

const drawnAlong = <P extends Part>(part: P, drawnFrom: number): P => ({
  ...part,
  placements: part.placements.map((placement) => ({ ...placement, drawnFrom })),
});

function walls(own: MiddleBox): readonly Part[] {
  const { wood, inside, outside, front, rear, rows, clearance, bands, feltWidth } = own;
  return [
    ...tubeWalls({
      ply: wood.ply,
      fit: wood.fits.glueSlip,
      inside,
      outside,
      front,
      rear,
      rows,
      group: 'front',
      ids: { side: 'C1', lid: 'C2', plate: 'C3' },
      name: 'middle box',
    }),
    ...feltRound({
      outside,
      clearance,
      bands,
      width: feltWidth,
      group: 'front',
      id: 'felt-middle-',
      name: 'felt band of the middle box',
      on: { lids: ['C2T', 'C2F'], sides: ['C1L', 'C1R'] },
      in: { lids: ['F3', 'F4'], sides: ['F2L', 'F2R'] },
    }),
  ];
}

function frameOf({
  wood,
  inside,
  rear,
  rows,
  frame: { half, top, bottom, tongue },
  bar: { x, y, tab },
}: MiddleBox): Part {
  const fit = wood.fits.glueSlip;
  const t = wood.ply.thickness;
  return plate({
    id: 'C3',
    name: 'frame of the middle box',
    ply: wood.ply,
    facing: 'rear',
    low: rear,
    group: 'front',
    grain: 'y',
    outline: polygon([
      [-half, bottom],
      [-tongue.half, bottom],
      [-tongue.half, tongue.bottom],
      [tongue.half, tongue.bottom],
      [tongue.half, bottom],
      [half, bottom],
      [half, top],
      [-half, top],
    ]),
    holes: [
      tubeOpening({ inside, row: rows.standard, ply: wood.ply, fit }),
      ...[x, -x].map((at) => rectangle(boxAt(at, y, t + fit, tab))),
    ],
    joins: joined('finger', 'C4'),
  });
}

function bar({ wood, rear, bar: { x, y, height, tab, front, hook, top } }: MiddleBox): Part {
  const { ply } = wood;
  const t = ply.thickness;
  const [low, high] = [y - height / 2, y + height / 2];
  const into = (tab - wood.fits.glueSlip) / 2;
  return plate({
    id: 'C4',
    name: 'stop bar',
    ply,
    facing: 'left',
    low: 0,
    group: 'front',
    grain: 'z',
    outline: polygon([
      [front, low],
      [rear, low],
      [rear, y - into],
      [rear + t, y - into],
      [rear + t, y + into],
      [rear, y + into],
      [rear, high],
      [hook, high],
      [hook, top],
      [front, top],
    ]),
    places: [x, -x].map((at) => standing('front', frame([0, 0, 1], [0, 1, 0], [-1, 0, 0], [at + t / 2, 0, 0]))),
    joins: joined('slide', 'F2L', 'F2R'),
  });
}

function block({ wood, block: { z, y, long, high, face } }: MiddleBox): Part {
  const { ply } = wood;
  const t = ply.thickness;
  return plate({
    id: 'F14',
    name: 'stop block',
    ply,
    facing: 'left',
    low: 0,
    group: 'front',
    grain: 'any',
    outline: rectangle(box(z, y, z + long, y + high)),
    places: [face + t, -face].map((at) => standing('front', frame([0, 0, 1], [0, 1, 0], [-1, 0, 0], [at, 0, 0]))),
    joins: joined('glue', 'F2L', 'F2R'),
  });
}

/** Two plies, screwed from below: there is no room above, and it comes off to take the rear box out of the middle box. */
function batten({ wood, batten: { y, z, long, half, screws } }: MiddleBox): readonly Part[] {
  const { ply } = wood;
  const t = ply.thickness;
  const lying = (at: number) => frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, at, z + long / 2]);
  return [
    plate({
      id: 'R10',
      name: 'batten on the sole',
      ply,
      facing: 'up',
      low: 0,
      group: 'rear',
      grain: 'x',
      outline: rectangle(boxAt(0, 0, 2 * half, long)),
      holes: screws.map(({ x }) => circle(x, 0, SCREW.pilot)),
      places: [lying(y), lying(y + t)].map((matrix) => standing('rear', matrix)),
      joins: [...joined('glue', 'R10'), ...joined('rest', 'R4U')],
    }),
    boughtRod({
      id: 'batten-screw',
      name: 'wood screw 3 mm in the batten on the sole',
      diameter: SCREW.hole,
      length: t,
      head: 'start',
      placements: screws.map(({ x, y: at }) =>
        standing('rear', frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [x, y - t, at])),
      ),
      joins: joined('screw', 'R10', 'R4U'),
      massKg: 0.0006,
    }),
    boughtRod({
      id: 'batten-head',
      name: 'head of the wood screw in the batten on the sole',
      diameter: SCREW.head,
      length: SCREW.headHeight,
      placements: screws.map(({ x, y: at }) =>
        standing('rear', frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [x, y - t - SCREW.headHeight, at])),
      ),
      joins: [...joined('press', 'batten-screw'), ...joined('screw', 'R4U')],
      massKg: 0.0002,
    }),
  ];
}

export const middleBoxHardware = ({ felt, feltWidth, outside, clearance, wood }: MiddleBox): readonly Hardware[] => [
  {
    name: 'felt, black',
    size: `${felt} thick, ${feltWidth} wide, ${Math.ceil((8 * outside + 16 * clearance) / 10) * 10} long`,
    count: 1,
    for: 'two bands round the middle box',
  },
  {
    name: 'wood screw',
    size: `3 × ${[8, 10, 12, 16, 20, 25, 30].findLast((length) => length <= 3.6 * wood.ply.thickness) ?? 8}`,
    count: 2,
    for: 'batten on the sole',
  },
];
