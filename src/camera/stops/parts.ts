import { type Facing, matrixOf } from '../../geometry/facing.js';
import { lettering } from '../../geometry/lettering.js';
import { type ClosedPath, polygon, type Vertex } from '../../geometry/path.js';
import { compose, shift } from '../../geometry/placement.js';
import { box, circle, rectangle } from '../../geometry/shapes.js';
import { boughtPlate, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Mark, Part } from '../../model/part.js';
import { plainNumber } from '../../units/print.js';
import type { Stop, Stops } from './size.js';

const VELVET = { height: 20, below: 2, density: 300e-9 };

export function stopsParts(own: Stops): readonly Part[] {
  const { wood, board, width, shoulder, stops, wallet } = own;
  const b = board.thickness;
  const half = wallet.pocket / 2 + wallet.rim;
  const floor = -width / 2;
  const bottom = floor - wallet.rim;
  /** Face out on the side of the box, so far from it; x runs forwards from the hole of a plate, y up from it. */
  const onSide = (out: number, facing: Facing = 'right', thickness = b) =>
    standing('front', compose(shift(0, wallet.y, wallet.z), matrixOf(facing, wallet.face + out, thickness)));
  const velvet = box(
    -width / 2 + VELVET.below,
    shoulder - VELVET.below - VELVET.height,
    width / 2 - VELVET.below,
    shoulder - VELVET.below,
  );
  return [
    plate({
      id: 'WW1',
      name: 'stop wallet, rim',
      ply: board,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'any',
      outline: polygon([
        [-half, bottom],
        [half, bottom],
        [half, shoulder],
        [half - wallet.rim, shoulder],
        [half - wallet.rim, floor],
        [-half + wallet.rim, floor],
        [-half + wallet.rim, shoulder],
        [-half, shoulder],
      ]),
      places: Array.from({ length: wallet.layers }, (_, k) => onSide(k * b)),
      joins: joined('glue', 'F2R', 'WW1'),
    }),
    boughtPlate({
      id: 'velvet-stops',
      name: 'velvet in the stop wallet',
      thickness: b,
      outline: rectangle(velvet),
      placements: [onSide((wallet.layers - 1) * b)],
      joins: joined('glue', 'WW2'),
      massKg: (velvet.right - velvet.left) * VELVET.height * b * VELVET.density,
    }),
    plate({
      id: 'WW2',
      name: 'stop wallet, cover',
      ply: wood.ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'any',
      outline: rectangle(box(-half, bottom, half, shoulder)),
      // its marked face inwards
      places: [onSide(wallet.layers * b, 'left', wood.ply.thickness)],
      joins: joined('glue', 'WW1'),
    }),
    ...stops.map((stop, i) =>
      plate({
        id: stop.id,
        name: `stop f/${plainNumber(stop.mark)}`,
        ply: board,
        facing: 'rear',
        low: 0,
        group: 'front',
        grain: 'any',
        outline: stopOutline(own, stop),
        holes: [circle(0, 0, stop.hole)],
        marks: [numberOn(own, stop)],
        places: [onSide(i * b)],
        kept: true,
        joins: joined('rest', 'WW1'),
      }),
    ),
  ];
}

/** Half a circle below the hole, straight sides up to the shoulder, and the tab on it. */
function stopOutline({ width, shoulder, top, tabWidth }: Stops, { tabFrom }: Stop): ClosedPath {
  const half = width / 2;
  const v = (x: number, y: number, bulge = 0): Vertex => ({ x, y, bulge });
  const [left, right] = [tabFrom, tabFrom + tabWidth];
  const end = (at: number, edge: number) => Math.abs(at - edge) < TOGETHER;
  return [
    v(-half, 0, 1),
    v(half, 0),
    ...(end(right, half) ? [] : [v(half, shoulder), v(right, shoulder)]),
    v(end(right, half) ? half : right, top),
    v(end(left, -half) ? -half : left, top),
    ...(end(left, -half) ? [] : [v(left, shoulder), v(-half, shoulder)]),
  ];
}

/** A tab at the edge has no corner of its own there, mm. */
const TOGETHER = 1e-6;

/** Letters on a tab, and board round them, mm. */
const LETTERS = { tallest: 4, clear: 1 };

function numberOn({ tabWidth, shoulder, top }: Stops, { mark, tabFrom }: Stop): Mark {
  const text = plainNumber(mark);
  const room = tabWidth - 2 * LETTERS.clear;
  const tallest = lettering(text, LETTERS.tallest).width;
  const height = Math.min(LETTERS.tallest, (LETTERS.tallest * room) / tallest);
  const { width } = lettering(text, height);
  return {
    text,
    x: tabFrom + (tabWidth - width) / 2,
    y: (shoulder + top - height) / 2,
    height,
    turn: 0,
  };
}

export const stopsHardware = ({ width }: Stops): readonly Hardware[] => [
  {
    name: 'black velvet',
    size: `${VELVET.height} wide, ${Math.floor(width - 2 * VELVET.below)} long, pile 1 mm`,
    count: 1,
    for: 'stop wallet',
  },
];
