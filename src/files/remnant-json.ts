import type { Point } from '../geometry/path.js';
import type { LeftOver } from '../sheets/remnant.js';
import { rounded } from './decimal.js';

/**
 * The file of a remnant, as the stock of a later design names it. Each loop stands on a line of its own, so that it can be
 * read and mended by hand. `from` and `clear` are for people.
 */
export function remnantJson({ remnant, clear }: LeftOver, { from }: { readonly from: string }): string {
  const { material, thickness, outline, holes } = remnant;
  const loop = (points: readonly Point[]) => JSON.stringify(points.map(({ x, y }) => [rounded(x), rounded(y)]));
  const rectangle = {
    left: rounded(clear.left),
    bottom: rounded(clear.bottom),
    right: rounded(clear.right),
    top: rounded(clear.top),
  };
  const lines = [
    `"schema": 1`,
    `"from": ${JSON.stringify(from)}`,
    `"material": ${JSON.stringify(material)}`,
    `"thickness": ${JSON.stringify(thickness)}`,
    `"clear": ${JSON.stringify(rectangle)}`,
    `"outline": ${loop(outline)}`,
    `"holes": [${holes.map((hole) => `\n    ${loop(hole)}`).join(',')}${holes.length > 0 ? '\n  ' : ''}]`,
  ];
  return `{\n  ${lines.join(',\n  ')}\n}\n`;
}
