import type { Point } from '../geometry/path.js';
import type { Drawing, Mark } from '../model/page.js';
import { FAINT, INK, SMALL } from '../paper/prose.js';

/** Frames of the little pictures, upright and lengthwise. */
const LONG = 34;
const SHORT = 25;
const GAP = 9;
const TITLE = 6;

const THICK = { colour: INK, width: 0.5 } as const;

/** A sitter who raises one hand with a ball in it: what is up and what is left can both be told. From -1 to 1 in height. */
function sitter(place: (point: Point) => Point, size: number): readonly Mark[] {
  const at = (x: number, y: number) => place({ x: x * size, y: y * size });
  const line = (...points: readonly (readonly [number, number])[]): Mark => ({
    kind: 'line',
    points: points.map(([x, y]) => at(x, y)),
    stroke: THICK,
  });
  return [
    { kind: 'circle', centre: at(0, 0.45), radius: 0.24 * size, stroke: THICK },
    line([-0.5, -0.9], [-0.42, -0.1], [-0.12, 0.08], [0.12, 0.08], [0.42, -0.1], [0.5, -0.9]),
    line([0.42, -0.1], [0.66, 0.28], [0.62, 0.6]),
    { kind: 'circle', centre: at(0.62, 0.74), radius: 0.13 * size, fill: INK },
  ];
}

/** What stands before the camera, and what is seen on the glass, the back upright and lengthwise. */
export function onTheGlass(): Drawing {
  const frames = [
    { width: SHORT, height: LONG, title: 'the sitter', turned: false },
    { width: SHORT, height: LONG, title: 'on the glass', turned: true },
    { width: LONG, height: SHORT, title: 'the sitter', turned: false },
    { width: LONG, height: SHORT, title: 'on the glass', turned: true },
  ];
  let left = 0.3;
  const marks = frames.flatMap(({ width, height, title, turned }): readonly Mark[] => {
    const middle = { x: left + width / 2, y: LONG / 2 + 0.3 };
    left += width + GAP;
    const way = turned ? -1 : 1;
    const corners = [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const;
    return [
      {
        kind: 'line',
        points: corners.map(([x, y]) => ({ x: middle.x + (x * width) / 2, y: middle.y + (y * height) / 2 })),
        closed: true,
        stroke: { colour: FAINT, width: 0.3 },
      },
      ...sitter(({ x, y }) => ({ x: middle.x + way * x, y: middle.y - way * y }), SHORT * 0.46),
      {
        kind: 'words',
        at: { x: middle.x, y: LONG + TITLE - 1 },
        text: title,
        size: SMALL,
        anchor: 'middle',
        colour: INK,
      },
    ];
  });
  return {
    name: 'on-the-glass',
    title: 'Upright and lengthwise: the sitter as you see him, and as he stands on the glass.',
    description: 'A sitter with a raised hand, and the same turned by half a turn on the ground glass.',
    scale: null,
    width: left - GAP + 0.3,
    height: LONG + TITLE,
    marks,
  };
}
