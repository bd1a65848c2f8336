import type { Build } from '../assembly/build.js';
import { darkSlideIds } from '../assembly/holders.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Region } from '../geometry/clip.js';
import type { ClosedPath } from '../geometry/path.js';
import { outlineFromSide, sawnPrism, sawnSolid } from '../geometry/sawn-prism.js';
import { circle } from '../geometry/shapes.js';
import { overCamera } from '../model/assembly-steps.js';
import type { Part } from '../model/part.js';
import type { ShownFace, ShownSection } from '../model/shown.js';
import { stuffShown } from './stuff.js';

/**
 * The camera sawn along its axis, at the closest station and in every set-up at once: the faces that the saw leaves, whole
 * what is not cut lengthwise, and behind them what lies on the far side. Plane figures alone: nothing of it needs the solid
 * kernel.
 */
export function shownSection(
  { parts, setups }: Pick<Build, 'parts' | 'setups'>,
  image: ShownSection['image'],
): ShownSection {
  const pieces = piecesOf(parts);
  const over = new Set([...overCamera, ...darkSlideIds(parts)]);
  const face = ({ key, part, placement, slides }: Piece, as: ShownFace['as'], loops: Region): readonly ShownFace[] =>
    loops.length === 0
      ? []
      : [
          {
            key,
            part: part.id,
            name: part.name,
            stuff: stuffShown(part),
            as,
            slides,
            ...(placement.drawnFrom === undefined ? {} : { drawnFrom: placement.drawnFrom }),
            ...(over.has(part.id) ? { over: true as const } : {}),
            when: setups.filter((setup) => stands(placement, setup)).map(({ name }) => name),
            loops: loops.map((loop) => loop.flatMap(({ x, y }) => [x, y])),
          },
        ];
  const beyond = pieces
    .filter(({ part, extent }) => extent.x[1] > 0 && part.kind === 'flat')
    .sort((a, b) => Math.max(0, b.extent.x[0]) - Math.max(0, a.extent.x[0]));
  const sawnThrough = pieces.filter(({ extent: { x } }) => x[0] < 0 && x[1] > 0);
  return {
    faces: [
      ...beyond.flatMap((piece) => face(piece, 'beyond', outlines(piece))),
      ...sawnThrough.flatMap((piece) =>
        isWhole(piece.part) ? face(piece, 'whole', outlines(piece)) : face(piece, 'cut', sawn(piece)),
      ),
    ],
    setups: setups.map(({ name, holder, orientation, focusing }) => ({ name, holder, orientation, focusing })),
    image,
  };
}

/** Bolts, screws, pins and dowels are not cut lengthwise: ISO 128-44 (from memory). */
const isWhole = (part: Part): boolean => part.kind === 'bought' && ['metal', 'wood'].includes(stuffShown(part));

function sawn({ part, placement: { matrix } }: Piece): Region {
  return part.kind === 'printed' ? sawnSolid(part.solid, matrix) : sawnPrism({ ...prismOf(part), matrix });
}

/** What is seen of a piece from the side. */
const outlines = ({ part, placement: { matrix } }: Piece): Region =>
  part.kind === 'printed' ? [] : outlineFromSide({ ...prismOf(part), matrix });

interface Drawn {
  readonly profile: ClosedPath;
  readonly holes: readonly ClosedPath[];
  readonly height: number;
}

/** What is no print is a profile drawn out along its own z. */
function prismOf(part: Exclude<Part, { kind: 'printed' }>): Drawn {
  if (part.kind === 'flat') return { profile: part.outline, holes: part.holes, height: part.thickness };
  const { shape } = part;
  if (shape.form === 'plate') return { profile: shape.outline, holes: shape.holes, height: shape.thickness };
  return { profile: circle(0, 0, shape.diameter), holes: [], height: shape.length };
}
