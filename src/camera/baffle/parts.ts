import { type ClosedPath, polygon } from '../../geometry/path.js';
import { frame } from '../../geometry/placement.js';
import { box, boxAt, rectangle } from '../../geometry/shapes.js';
import { joined, plate, standing } from '../../joinery/plate.js';
import type { Part } from '../../model/part.js';
import type { Baffle } from './size.js';

/**
 *     wall of the rear box
 *   ________________________
 *          |#|____            R8, the frame, is put in from the front
 *          |#|_R9_|           and bears on the strips R9, glued to the walls behind it
 *          |#|
 */
export function baffleParts({ wood, outside, inside, front, opening, strip }: Baffle): readonly Part[] {
  const { ply } = wood;
  const t = ply.thickness;
  const wall = inside / 2 - t;
  const middle = front + t + strip.width / 2;
  return [
    plate({
      id: 'R8',
      name: 'baffle',
      ply,
      facing: 'rear',
      low: front,
      group: 'rear',
      grain: 'any',
      outline: rectangle(boxAt(0, 0, outside, outside)),
      holes: [bothWays(opening)],
      joins: joined('glue', 'R9'),
    }),
    plate({
      id: 'R9',
      name: 'baffle strip',
      ply,
      facing: 'rear',
      low: 0,
      group: 'rear',
      grain: 'y',
      outline: rectangle(boxAt(0, 0, strip.width, strip.length)),
      // its marked face on the wall: own x along the axis, own z outwards
      places: [
        frame([0, 0, -1], [0, 1, 0], [1, 0, 0], [wall, 0, middle]),
        frame([0, 0, 1], [0, 1, 0], [-1, 0, 0], [-wall, 0, middle]),
        frame([0, 0, 1], [1, 0, 0], [0, 1, 0], [0, wall, middle]),
        frame([0, 0, -1], [1, 0, 0], [0, -1, 0], [0, -wall, middle]),
      ].map((matrix) => standing('rear', matrix)),
      joins: joined('glue', 'R1L', 'R1R', 'R2T', 'R2F'),
    }),
  ];
}

/** Where the two sides differ by less, a square will do. */
const HARDLY = 2;

/** The picture upright and lengthwise, one over the other: a cross. */
function bothWays({ short, long }: Baffle['opening']): ClosedPath {
  const [n, w] = [Math.min(short, long), Math.max(short, long)];
  if (w - n < HARDLY) return rectangle(box(-w, -w, w, w));
  return polygon([
    [-n, -w],
    [n, -w],
    [n, -n],
    [w, -n],
    [w, n],
    [n, n],
    [n, w],
    [-n, w],
    [-n, n],
    [-w, n],
    [-w, -n],
    [-n, -n],
  ]);
}
