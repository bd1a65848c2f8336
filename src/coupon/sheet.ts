import { lettering } from '../geometry/lettering.js';
import { area, type ClosedPath, length, moved, type Path, type Point, type Vertex } from '../geometry/path.js';
import type { Mark } from '../model/part.js';
import { cutLine } from '../sheets/cut-line.js';
import { type CutPath, type Layer, layers, type Operation, type Sheet } from '../sheets/sheet.js';
import { type Coupon, REMNANT } from './piece.js';

interface SheetGiven {
  readonly material: string;
  readonly thickness: number;
  readonly kerf: number;
  readonly margin: number;
  readonly spacing: number;
}

/**
 * The test piece on its remnant. Its places are part of its design and its order is that of its rows, so it is not
 * packed. A wider margin than usual makes the sheet larger than A5, never the piece smaller.
 */
export function couponSheet(coupon: Coupon, given: SheetGiven): Sheet {
  const { material, thickness, kerf, margin, spacing } = given;
  const lying = coupon.parts.flatMap(({ part, at }) =>
    at.map(({ x, y }, i) => ({ part, instance: i + 1, x: margin + x + kerf / 2, y: margin + y + kerf / 2 })),
  );
  const drawn = lying.flatMap(({ part, instance, x, y }) => {
    const loop = (edge: ClosedPath): Path => ({ vertices: cutLine(edge, { kerf }), closed: true });
    const paths: readonly (readonly [Layer, Path])[] = [
      ...[...part.engraving, ...part.marks.flatMap(strokesOf)].map((path) => ['engrave', path] as const),
      ...part.holes.map((hole) => ['cut-inside', loop(hole)] as const),
      ['cut-outside', loop(part.outline)],
    ];
    return paths.map(([layer, path], n) => ({
      layer,
      cut: {
        id: `${part.id}.${instance}.${n + 1}`,
        path: { ...path, vertices: moved(path.vertices, { x, y, turn: 0 }) },
      },
    }));
  });
  const operations = layers.map(
    (layer): Operation => ({ layer, paths: drawn.filter((one) => one.layer === layer).map(({ cut }) => cut) }),
  );
  const cuts = drawn.filter(({ layer }) => layer !== 'engrave');
  return {
    name: `${material}-1`,
    material,
    thickness,
    width: Math.max(REMNANT.width, coupon.width + 2 * margin),
    height: Math.max(REMNANT.height, coupon.height + 2 * margin),
    margin,
    spacing,
    placed: lying.map(({ part, instance, x, y }) => ({ part: part.id, instance, x, y, rotation: 0 })),
    operations,
    usedArea: lying.reduce(
      (sum, { part }) => sum + [part.outline, ...part.holes].reduce((net, loop) => net + area(loop), 0),
      0,
    ),
    cutLength: cuts.reduce((sum, { cut }) => sum + length(cut.path.vertices), 0),
    travelLength: travel(operations.flatMap(({ paths }) => paths)),
  };
}

const strokesOf = ({ text, x, y, height, turn }: Mark): readonly Path[] =>
  lettering(text, height).strokes.map((stroke) => ({ ...stroke, vertices: moved(stroke.vertices, { x, y, turn }) }));

/** Beam off, in straight moves from the lower left corner. */
function travel(paths: readonly CutPath[]): number {
  let sum = 0;
  let head: Point = { x: 0, y: 0 };
  for (const { path } of paths) {
    const [first, last] = [path.vertices[0] as Vertex, path.vertices.at(-1) as Vertex];
    sum += Math.sqrt((first.x - head.x) ** 2 + (first.y - head.y) ** 2);
    head = path.closed ? first : last;
  }
  return sum;
}
