import { boundsOf, type ClosedPath, type Path } from '../geometry/path.js';
import type { Prism } from '../geometry/solid.js';
import type { FlatPart, PrintedPart } from '../model/part.js';
import { sha256 } from './sha-256.js';

/** Edges that agree to a tenth of a micrometre, the grid of the sheets, are the same. */
const FINENESS = 1e4;
/** Hexadecimal digits: of a million parts no two are likely to agree by chance. */
const LENGTH = 16;

/**
 * A digest of what a part is like when it is finished: its outline and holes wherever they lie in its own frame, or the solid
 * that is printed. Material and thickness stand beside it; which way the grain runs, where the part stands and what is engraved
 * do not change it.
 */
export function shapeDigest(part: FlatPart | PrintedPart): string {
  if (part.kind === 'printed') return digest([...part.solid.add.map(prismText), '-', ...part.solid.cut.map(prismText)]);
  const from = cornerOf(part);
  return digest([loopText(part.outline, from), ...part.holes.map((hole) => loopText(hole, from)).sort()]);
}

/** A digest of the scales, lines and words on it, before its own mark; null where there are none. */
export function engravingDigest(part: FlatPart | PrintedPart): string | null {
  if (part.kind === 'printed' || part.engraving.length + part.marks.length === 0) return null;
  const from = cornerOf(part);
  const words = part.marks.map(
    ({ text, x, y, height, turn }) => `${text} ${[x - from.x, y - from.y, height, turn].map(exact).join(' ')}`,
  );
  return digest([...part.engraving.map((stroke) => strokeText(stroke, from)), ...words].sort());
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

const cornerOf = ({ outline }: FlatPart): Corner => {
  const { left, bottom } = boundsOf(outline);
  return { x: left, y: bottom };
};

const exact = (value: number): number => Math.round(value * FINENESS) || 0;

const verticesOf = (path: ClosedPath, from: Corner): readonly string[] =>
  path.map(({ x, y, bulge }) => `${exact(x - from.x)} ${exact(y - from.y)} ${exact(bulge)}`);

/** A loop from whichever of its corners comes first in the alphabet, since it may be drawn from any. */
function loopText(path: ClosedPath, from: Corner): string {
  const corners = verticesOf(path, from);
  const first = corners.reduce((least, corner, i) => (corner < (corners[least] as string) ? i : least), 0);
  return [...corners.slice(first), ...corners.slice(0, first)].join(',');
}

const strokeText = ({ vertices, closed }: Path, from: Corner): string =>
  closed ? loopText(vertices, from) : verticesOf(vertices, from).join(',');

const prismText = ({ profile, holes, height, matrix, taper = 1 }: Prism): string =>
  [
    ...[profile, ...holes].map((loop) => loopText(loop, { x: 0, y: 0 })),
    [height, taper, ...matrix].map(exact).join(' '),
  ].join('/');

const encoder = new TextEncoder();
const digest = (lines: readonly string[]): string => sha256(encoder.encode(lines.join('\n'))).slice(0, LENGTH);
