import { type Dimension, dimensioned } from '../drawings/dimension.js';
import { labelRoom } from '../drawings/label-room.js';
import { boundsOf, type Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { shifted } from '../paper/figure.js';
import { INK } from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';
import { plainNumber } from '../units/print.js';
import { TEMPLATE_ROOM, type Template } from './template-page.js';
import { centreCross, lettered, lying, middleOf, type Shape, sizeOf, trueSize } from './template-shapes.js';

/*
 * Long narrow things: card, felt, board. What fits lies there at true size. What is too long and has holes is printed in
 * pieces that are joined at crosses; what is too long and has none is drawn broken, for a rule and a knife do it better.
 */

const EDGE = { colour: INK, width: 0.2 } as const;
/** No piece of a strip is longer. */
const PIECE = 172;
/** Crosses stand so far off the strip, and a joint so far from the nearest hole. */
const CROSS_OFF = 4;
const JOINT_CLEAR = 8;
const CROSS_STEP = 2;
const UNDER = 1.5;

export function strip(parts: readonly string[], shape: Shape, says: readonly string[]): Template {
  const own = lying(shape);
  const { width } = sizeOf(own.outline);
  if (width <= TEMPLATE_ROOM.width) return trueSize(parts, own, says, TEXT_WIDTH);
  return own.holes.length === 0 ? broken(parts, own, says) : inPieces(parts, own, says);
}

/** Where a strip is parted: into pieces as equal as its holes let it. */
function jointsOf({ outline, holes }: Shape): readonly number[] {
  const { left, right } = boundsOf(outline);
  const count = Math.ceil((right - left) / PIECE);
  const middles = holes.map((hole) => middleOf(hole).x);
  const isClear = (x: number) => middles.every((middle) => Math.abs(x - middle) >= JOINT_CLEAR);
  return Array.from({ length: count - 1 }, (_, i) => {
    const even = left + ((i + 1) * (right - left)) / count;
    for (let aside = 0; ; aside += CROSS_STEP) {
      if (isClear(even - aside)) return even - aside;
      if (isClear(even + aside)) return even + aside;
    }
  });
}

function inPieces(parts: readonly string[], shape: Shape, says: readonly string[]): Template {
  const { left, right, bottom, top } = boundsOf(shape.outline);
  const high = top - bottom;
  const joints = jointsOf(shape);
  const ends = [left, ...joints, right];
  const pitch = high + 2 * CROSS_OFF + 8;
  const words = lettered(
    [
      ...says,
      `Too long for one piece of paper: cut the ${ends.length - 1} pieces out with their crosses, and lay cross on cross before you glue them together.`,
    ],
    TEXT_WIDTH,
  );
  const pieces = ends.slice(1).map((end, i) => ({ from: ends[i] ?? left, to: end, index: i }));
  const height = pieces.length * pitch + words.height;
  return {
    parts,
    width: TEXT_WIDTH,
    height,
    marks: (at) => [
      ...pieces.flatMap(({ from, to, index }): readonly Mark[] => {
        const x = at.x + CROSS_STEP;
        const y = at.y + CROSS_OFF + index * pitch;
        const place = (point: Point): Point => ({ x: x + point.x - from, y: y + top - point.y });
        const within = shape.holes.filter((hole) => middleOf(hole).x > from && middleOf(hole).x < to);
        const line = (points: readonly Point[], dash?: readonly [number, number]): Mark => ({
          kind: 'line',
          role: dash ? 'axis' : 'cut',
          points: points.map(place),
          stroke: dash ? { ...EDGE, dash } : EDGE,
        });
        const end = (at: number): readonly Mark[] => {
          const across = [
            { x: at, y: bottom },
            { x: at, y: top },
          ];
          if (at === left || at === right) return [line(across)];
          const crosses = [bottom - CROSS_OFF, top + CROSS_OFF].map((y) =>
            centreCross(place({ x: at, y }), CROSS_STEP),
          );
          return [line(across, [2, 1.5]), ...crosses];
        };
        return [
          ...[bottom, top].map((y) =>
            line([
              { x: from, y },
              { x: to, y },
            ]),
          ),
          ...end(from),
          ...end(to),
          ...within.flatMap((hole): readonly Mark[] => {
            const middle = place(middleOf(hole));
            return [
              { kind: 'circle', role: 'cut', centre: middle, radius: sizeOf(hole).width / 2, stroke: EDGE },
              centreCross(middle, 2.5),
            ];
          }),
        ];
      }),
      ...words.marks({ x: at.x, y: at.y + pieces.length * pitch }),
    ],
  };
}

/** Both ends at true width with a piece left out between them, and how long it is in all. */
function broken(parts: readonly string[], { outline }: Shape, says: readonly string[]): Template {
  const { width: long, height: high } = sizeOf(outline);
  const y = 10;
  const middle = TEXT_WIDTH / 2;
  const [gap, wave] = [3, 1.6];
  const ragged = (x: number): readonly Point[] => [
    { x, y },
    { x: x + wave, y: y + 0.35 * high },
    { x: x - wave, y: y + 0.65 * high },
    { x, y: y + high },
  ];
  const [left, right] = [ragged(middle - gap), ragged(middle + gap)];
  const marks: readonly Mark[] = [
    {
      kind: 'line',
      role: 'cut',
      points: [...left.slice(0, 1), { x: 0, y }, { x: 0, y: y + high }, ...[...left].reverse().slice(0, 1)],
      stroke: EDGE,
    },
    {
      kind: 'line',
      role: 'cut',
      points: [
        ...right.slice(0, 1),
        { x: TEXT_WIDTH, y },
        { x: TEXT_WIDTH, y: y + high },
        ...[...right].reverse().slice(0, 1),
      ],
      stroke: EDGE,
    },
    { kind: 'strokes', role: 'axis', paths: [left, right], stroke: EDGE },
  ];
  const room = labelRoom({ width: TEXT_WIDTH, height: y + high + 4 });
  const dimension: Dimension = {
    name: 'length',
    figure: `${plainNumber(long, 2)} in all`,
    places: [{ from: { x: 0, y }, to: { x: TEXT_WIDTH, y }, line: { y: y - 3.5 } }],
  };
  const words = lettered(says, TEXT_WIDTH);
  const all = [...marks, ...dimensioned([dimension], room)];
  return {
    parts,
    width: TEXT_WIDTH,
    height: y + high + UNDER + words.height,
    marks: (at) => [
      ...all.map((mark) => shifted(mark, at.x, at.y)),
      ...words.marks({ x: at.x, y: at.y + y + high + UNDER }),
    ],
  };
}
