import type { Build } from '../assembly/build.js';
import { slidBy } from '../assembly/extent.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import { firstMet, type Standing } from '../assembly/sight-line.js';
import type { Point } from '../geometry/path.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { FlatPart } from '../model/part.js';

/** Off the face, so that what lies on it is met at once, mm. */
const LIFT = 0.01;
/** Places on a face are told from each other as finely as this, mm: no stroke of a letter is farther from one. */
const PITCH = 2;
/** More rows of places than any part has. */
const ROWS = 1e5;

/** As directions of the part's own frame: straight away from the face, and aslant to its four sides. */
const STRAIGHT: Point3 = { x: 0, y: 0, z: 1 };
const ASLANT: readonly Point3[] = [
  { x: 1, y: 0, z: 1 },
  { x: -1, y: 0, z: 1 },
  { x: 0, y: 1, z: 1 },
  { x: 0, y: -1, z: 1 },
];
/** From so many of the four sides a place must be hidden: under the edge of a box one has to look for it. */
const SIDES = 3;

const AXES = ['x', 'y', 'z'] as const;

type Parts = Pick<Build, 'parts' | 'setups' | 'stations'>;

/**
 * Where the engraved face of a part does not show, in whatever set-up and at whatever station, for every piece of the
 * part: who looks at a place sees something else before it. Each place is looked at once, when it is first asked for.
 */
export interface Hiding {
  readonly straightOn: (place: Point) => boolean;
  /** From most sides, for who does not look straight at the face. */
  readonly aslant: (place: Point) => boolean;
}

export function outOfSight(build: Parts): (part: FlatPart) => Hiding {
  const pieces = piecesOf(build.parts);
  return (part) => {
    const own = pieces.filter((piece) => piece.part.id === part.id);
    const looks = (way: Point3) => own.map((piece) => lookAt(piece, part, { pieces, build, way }));
    const straight = looks(STRAIGHT);
    const sides = ASLANT.map(looks);
    return {
      straightOn: remembered((place) => straight.every((hides) => hides(place))),
      aslant: remembered((place) => own.every((_, i) => sides.filter((looks) => looks[i]?.(place)).length >= SIDES)),
    };
  };
}

/** An answer for each place of a grid, found when it is first asked for. */
function remembered(hides: (place: Point) => boolean): (place: Point) => boolean {
  const known = new Map<number, boolean>();
  return (place) => {
    const [i, k] = [Math.round(place.x / PITCH), Math.round(place.y / PITCH)];
    const key = i * ROWS + k;
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = hides({ x: i * PITCH, y: k * PITCH });
    known.set(key, answer);
    return answer;
  };
}

interface Look {
  readonly pieces: readonly Piece[];
  readonly build: Parts;
  /** From the face to who looks, in the part's own frame. */
  readonly way: Point3;
}

/** Whether places of a piece's face are hidden. What stays before it for good is tried first, then each scene. */
function lookAt(piece: Piece, part: FlatPart, { pieces, build, way }: Look): (place: Point) => boolean {
  const { matrix } = piece.placement;
  const [foot, tip] = [apply(matrix, { x: 0, y: 0, z: 0 }), apply(matrix, way)];
  const towards = { x: tip.x - foot.x, y: tip.y - foot.y, z: tip.z - foot.z };
  const others = pieces.filter((other) => other !== piece);
  const standing = (other: Piece, rear: number): Standing => ({
    piece: other,
    shift: [0, 0, slidBy(other.placement, rear) - slidBy(piece.placement, rear)],
  });
  const before = (all: readonly Standing[]) => all.filter((one) => mayHide(one, piece, towards));
  const still = before(others.filter((other) => stays(other, piece)).map((other) => standing(other, 0)));
  const scenes = () =>
    build.setups
      .filter((setup) => stands(piece.placement, setup))
      .flatMap((setup) => {
        const here = others.filter((other) => stands(other.placement, setup) && !stays(other, piece));
        return build.stations.map(({ rear }) => before(here.map((other) => standing(other, rear))));
      });
  // most faces are covered for good: then nothing else is looked at
  let different: readonly Standing[][] | null = null;
  return (place) => {
    const from = apply(matrix, { ...place, z: part.thickness + LIFT });
    const stops = (one: Standing) => firstMet({ from, towards }, [one]) !== null;
    if (someOf(still, stops)) return true;
    different ??= distinct(scenes());
    return different.every((scene) => someOf(scene, stops));
  };
}

/** Whether something stops the look. What did is tried first at the next place, which mostly hides behind the same piece. */
function someOf(standing: Standing[], stops: (one: Standing) => boolean): boolean {
  const at = standing.findIndex(stops);
  if (at > 0) standing.unshift(...standing.splice(at, 1));
  return at >= 0;
}

/** Whether a piece never moves against another one, nor is taken away. */
const stays = ({ placement, slides }: Piece, beside: Piece): boolean =>
  slides === beside.slides &&
  placement.drawnFrom === beside.placement.drawnFrom &&
  placement.when === undefined &&
  typeof placement.group === 'string' &&
  placement.group !== 'loose';

const distinct = (scenes: readonly Standing[][]): readonly Standing[][] => [
  ...new Map(
    scenes.map((scene) => [scene.map(({ piece, shift }) => `${piece.key} ${shift[2]}`).join('; '), scene]),
  ).values(),
];

/** Whether a piece reaches at all into the space that a face is looked at through. */
function mayHide({ piece, shift: [, , z] }: Standing, face: Piece, towards: Point3): boolean {
  return AXES.every((axis) => {
    const by = axis === 'z' ? z : 0;
    const [low, high] = face.extent[axis];
    const above = piece.extent[axis][1] + by > low;
    const below = piece.extent[axis][0] + by < high;
    if (Math.abs(towards[axis]) < 0.5) return above && below;
    return towards[axis] > 0 ? above : below;
  });
}
