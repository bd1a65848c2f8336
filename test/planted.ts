import type { Build } from '../src/assembly/build.js';
import type { Design } from '../src/design/design.js';
import { boundsOf, type ClosedPath, flatten, inside, type Path, type Vertex } from '../src/geometry/path.js';
import { apply, compose, frame, type Matrix4, type Point3, shift } from '../src/geometry/placement.js';
import type { Finding } from '../src/model/finding.js';
import type { Part, Placement } from '../src/model/part.js';
import { type Planned, planCamera } from '../src/pipeline.js';
import { woodRules } from '../src/proof/wood-rules.js';
import { bareHeron } from './designs/kept-design.js';

/**
 * Faults planted in a camera that is right: one part put, cut, made or marked differently, all others as they were. Every
 * function takes a build and gives a new one, so that faults can be put on top of each other. Moves and shapes are told in
 * the camera's axes, mm.
 */

/** The 5x7 that comes with the program, with bought holders and nothing ahead of the lens; its figures stand in section 17 of the description of the camera. */
export const heron: Planned = planCamera(bareHeron());

type Shift = Partial<Point3>;
/** Which places of a part are meant: all of them, or those that this says. */
type Which = (place: Placement, origin: Point3) => boolean;

/** The build with one part changed. */
export function alterPart(build: Build, id: string, change: (part: Part) => Part): Build {
  if (!build.parts.some((part) => part.id === id)) throw new Error(`there is no ${id} in this build`);
  return { ...build, parts: build.parts.map((part) => (part.id === id ? change(part) : part)) };
}

export const removePart = (build: Build, id: string): Build => ({
  ...build,
  parts: alterPart(build, id, (part) => part).parts.filter((part) => part.id !== id),
});

const originOf = ({ matrix }: Placement): Point3 => apply(matrix, { x: 0, y: 0, z: 0 });

/** A part with some of its places elsewhere. */
export const shiftPlacement = (build: Build, id: string, { x = 0, y = 0, z = 0 }: Shift, which: Which): Build =>
  alterPart(build, id, (part) => {
    const moves = part.placements.map((place) => which(place, originOf(place)));
    if (!moves.includes(true)) throw new Error(`no place of ${id} is meant`);
    return {
      ...part,
      placements: part.placements.map((place, i) =>
        moves[i] ? { ...place, matrix: compose(shift(x, y, z), place.matrix) } : place,
      ),
    };
  });

/** A part moved from its place, in all of its places. */
export const movePart = (build: Build, id: string, by: Shift): Build => shiftPlacement(build, id, by, () => true);

/** A part turned half round about the upright line through its middle: end for end. */
export const turnEndForEnd = (build: Build, id: string): Build =>
  alterPart(build, id, (part) => ({
    ...part,
    placements: part.placements.map((place) => {
      const middle = apply(place.matrix, middleOf(part));
      const about = compose(
        shift(middle.x, middle.y, middle.z),
        compose(frame([-1, 0, 0], [0, 1, 0], [0, 0, -1], [0, 0, 0]), shift(-middle.x, -middle.y, -middle.z)),
      );
      return { ...place, matrix: compose(about, place.matrix) };
    }),
  }));

function middleOf(part: Part): Point3 {
  if (part.kind === 'flat') return { ...centreOfBox(part.outline), z: part.thickness / 2 };
  if (part.kind === 'printed') return { x: 0, y: 0, z: part.size[2] / 2 };
  return part.shape.form === 'plate'
    ? { ...centreOfBox(part.shape.outline), z: part.shape.thickness / 2 }
    : { x: 0, y: 0, z: part.shape.length / 2 };
}

const centreOfBox = (loop: ClosedPath) => {
  const { left, right, bottom, top } = boundsOf(loop);
  return { x: (left + right) / 2, y: (bottom + top) / 2 };
};

/** What a plate is cut to. */
interface Cut {
  readonly outline: ClosedPath;
  readonly holes: readonly ClosedPath[];
}

/** A plate, from sheet or bought, cut differently; in the part's own frame. */
const recut = (build: Build, id: string, change: (cut: Cut, part: Part) => Cut): Build =>
  alterPart(build, id, (part) => {
    if (part.kind === 'flat') return { ...part, ...change({ outline: part.outline, holes: part.holes }, part) };
    if (part.kind === 'bought' && part.shape.form === 'plate')
      return { ...part, shape: { ...part.shape, ...change(part.shape, part) } };
    throw new Error(`${id} is no plate`);
  });

/** A plate whose corners, those of its holes as well, lie elsewhere: as seen in the first of its places. */
export const reshape = (build: Build, id: string, move: (corner: Point3) => Point3): Build =>
  recut(build, id, ({ outline, holes }, part) => {
    const carried = carriedBy(part, move);
    return { outline: outline.map(carried), holes: holes.map((hole) => hole.map(carried)) };
  });

/** The same with the outline alone. */
export const reshapeOutline = (build: Build, id: string, move: (corner: Point3) => Point3): Build =>
  recut(build, id, ({ outline, holes }, part) => ({ outline: outline.map(carriedBy(part, move)), holes }));

/** A corner of a part's own frame, moved in the camera's. */
function carriedBy({ placements }: Part, move: (corner: Point3) => Point3) {
  const matrix = (placements[0] as Placement).matrix;
  return ({ x, y, bulge }: Vertex): Vertex => ({ ...ownOf(matrix, move(apply(matrix, { x, y, z: 0 }))), bulge });
}

/** A point of the camera in a part's own frame: the motion is rigid, so its turn is undone by its transpose. */
function ownOf(matrix: Matrix4, { x, y, z }: Point3): { readonly x: number; readonly y: number } {
  const at = (i: number) => matrix[i] as number;
  const [dx, dy, dz] = [x - at(12), y - at(13), z - at(14)];
  return { x: at(0) * dx + at(1) * dy + at(2) * dz, y: at(4) * dx + at(5) * dy + at(6) * dz };
}

/** The hole of a plate round a point (the axis, if none is named) made wider on every side; narrower where `by` is below 0. */
export const widenHole = (build: Build, id: string, by: number, round: Point3 = { x: 0, y: 0, z: 0 }): Build =>
  recut(build, id, ({ outline, holes }, part) => {
    const own = ownOf((part.placements[0] as Placement).matrix, round);
    const meant = holes.findIndex((hole) => inside(flatten(hole), own));
    if (meant < 0) throw new Error(`${id} has no hole there`);
    const out = (from: number, middle: number) => from + by * Math.sign(from - middle);
    return {
      outline,
      holes: holes.map((hole, i) => {
        if (i !== meant) return hole;
        const middle = centreOfBox(hole);
        return hole.map((v) => ({ ...v, x: out(v.x, middle.x), y: out(v.y, middle.y) }));
      }),
    };
  });

/** A plate without its holes. */
export const fillHoles = (build: Build, id: string): Build =>
  recut(build, id, ({ outline }) => ({ outline, holes: [] }));

/** A plate of another thickness; its own z = 0 stays where it is. */
export const thicken = (build: Build, id: string, thickness: number): Build =>
  alterPart(build, id, (part) => {
    if (part.kind === 'flat') return { ...part, thickness };
    if (part.kind === 'bought' && part.shape.form === 'plate') return { ...part, shape: { ...part.shape, thickness } };
    throw new Error(`${id} is no plate`);
  });

/** A part of another mass. */
export const weigh = (build: Build, id: string, massKg: number): Build =>
  alterPart(build, id, (part) => ({ ...part, massKg }));

/** A printed part of another size. */
export const print = (build: Build, id: string, size: readonly [number, number, number]): Build =>
  alterPart(build, id, (part) => {
    if (part.kind !== 'printed') throw new Error(`${id} is not printed`);
    return { ...part, size };
  });

/** Lines and words of a part engraved elsewhere along the axis, those for which `which` holds; words by their text. */
export const moveEngraving = (
  build: Build,
  id: string,
  by: number,
  which: (z: number) => boolean = () => true,
): Build =>
  alterPart(build, id, (part) => {
    if (part.kind !== 'flat') throw new Error(`${id} is not cut from sheet`);
    const matrix = (part.placements[0] as Placement).matrix;
    const moved = <P extends { readonly x: number; readonly y: number }>(point: P): P => {
      const here = apply(matrix, { x: point.x, y: point.y, z: 0 });
      return { ...point, ...ownOf(matrix, { ...here, z: here.z + by }) };
    };
    const at = (x: number, y: number) => apply(matrix, { x, y, z: 0 }).z;
    const stroke = (path: Path): Path =>
      path.vertices.every(({ x, y }) => which(at(x, y))) ? { ...path, vertices: path.vertices.map(moved) } : path;
    return {
      ...part,
      engraving: part.engraving.map(stroke),
      marks: part.marks.map((mark) => (which(at(mark.x, mark.y + mark.height / 2)) ? moved(mark) : mark)),
    };
  });

/** What the rules on wood say of a build that they do not say of Heron as it is. */
export const toldOf = (build: Build, design: Design = heron.design): readonly Finding[] =>
  woodRules(design, build).filter(({ level }) => level !== 'note');

/** The same under one rule. */
export const toldUnder = (rule: string, build: Build, design?: Design): readonly Finding[] =>
  toldOf(build, design).filter((finding) => finding.rule === rule);

/** The names of the rules that say anything, each once. */
export const rulesTelling = (build: Build, design?: Design): readonly string[] => [
  ...new Set(toldOf(build, design).map(({ rule }) => rule)),
];
