import type { Build } from '../assembly/build.js';
import { stands } from '../assembly/setups.js';
import { lettering } from '../geometry/lettering.js';
import { boundsOfPoints, flatten, inside, moved, type Point } from '../geometry/path.js';
import { apply, type Matrix4, type Point3 } from '../geometry/placement.js';
import type { Axis } from '../model/assembly-move.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart, Mark } from '../model/part.js';
import { type Block, blocksOf, woodAt } from './straight-line.js';

/**
 * What is engraved: mirror-text, for words on a face that is seen, and id-hidden, for the face that will carry the part's
 * mark. The engraved face of a plate is the one that the laser sees, at the far end of its thickness.
 */
export function markRules(build: Build): readonly Finding[] {
  const blocks = blocksOf(build.parts);
  const flats = build.parts.filter((part) => part.kind === 'flat').filter(({ placements }) => placements.length > 0);
  return flats.flatMap((part) => {
    const pieces = standingOf(part, build, blocks);
    if (part.marks.length > 0) return mirrorText(part, pieces);
    // what is taken out and put in is told from its like by its mark: that may show
    return part.placements.some(({ group }) => group === 'loose') ? [] : idHidden(part, pieces);
  });
}

/** A piece, and all that might be before its faces. */
interface Standing {
  readonly matrix: Matrix4;
  readonly others: readonly Block[];
}

function standingOf(part: FlatPart, { setups }: Build, blocks: readonly Block[]): readonly Standing[] {
  const setup = setups.find((one) => part.placements.some((placement) => stands(placement, one)));
  if (setup === undefined) return [];
  const here = blocks.filter(({ piece }) => stands(piece.placement, setup));
  return part.placements
    .filter((placement) => stands(placement, setup))
    .map((placement) => ({
      matrix: placement.matrix,
      others: here.filter(({ piece }) => piece.placement !== placement),
    }));
}

/** Off the face, so that what lies on it is met at once, mm. */
const LIFT = 0.01;

/** Whether a line from a point of a face, straight away from it, leaves the camera without meeting anything. */
export function seen(from: Point3, normal: Point3, others: readonly Block[]): boolean {
  const axis = AXES.find((k) => Math.abs(normal[k]) > 0.9);
  // a face that leans is seen from somewhere
  if (axis === undefined) return true;
  const sign = normal[axis] > 0 ? 1 : -1;
  const start = { ...from, [axis]: from[axis] + sign * LIFT };
  return !others.some((block) => stops(block, start, axis, sign));
}

const AXES = ['x', 'y', 'z'] as const;

function stops(block: Block, from: Point3, axis: Axis, sign: 1 | -1): boolean {
  const { extent, prism } = block;
  for (const k of AXES) if (k !== axis && (from[k] < extent[k][0] || from[k] > extent[k][1])) return false;
  const ahead = sign > 0 ? extent[axis][1] > from[axis] : extent[axis][0] < from[axis];
  if (!ahead || prism === null) return ahead;
  const [line, across] = AXES.filter((k) => k !== prism.thick) as [Axis, Axis];
  if (prism.thick === axis)
    return woodAt(block, line, from[line]).some(([low, high]) => from[across] >= low && from[across] <= high);
  const other = line === axis ? across : line;
  return woodAt(block, other, from[other]).some(([low, high]) => (sign > 0 ? high > from[axis] : low < from[axis]));
}

const direction = (matrix: Matrix4, x: number, y: number, z: number): Point3 => {
  const [origin, tip] = [apply(matrix, { x: 0, y: 0, z: 0 }), apply(matrix, { x, y, z })];
  return { x: tip.x - origin.x, y: tip.y - origin.y, z: tip.z - origin.z };
};

/** Which way is up for who looks at a face: heads are up, and on a face that lies flat the lens is. */
const upOn = (normal: Point3): Point3 | null => {
  if (normal.y > 0.9) return { x: 0, y: 0, z: -1 };
  return normal.y < -0.9 ? null : { x: 0, y: 1, z: 0 };
};

const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;
const cross = (a: Point3, b: Point3): Point3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

function mirrorText(part: FlatPart, pieces: readonly Standing[]): readonly Finding[] {
  for (const { matrix, others } of pieces) {
    const normal = direction(matrix, 0, 0, 1);
    const visible = part.marks.filter((mark) =>
      cornersOf(mark).some(({ x, y }) => seen(apply(matrix, { x, y, z: part.thickness }), normal, others)),
    );
    const wrong = visible.flatMap((mark) => {
      const [cos, sin] = [Math.cos(mark.turn), Math.sin(mark.turn)];
      const along = direction(matrix, cos, sin, 0);
      const upwards = direction(matrix, -sin, cos, 0);
      // seen from outside, the line runs to the right of up where along × up looks at who reads
      if (dot(cross(along, upwards), normal) < 0) return [{ mark, how: 'is mirrored' }];
      const up = upOn(normal);
      return up !== null && dot(upwards, up) < -0.5 ? [{ mark, how: 'stands on its head' }] : [];
    });
    const [first] = wrong;
    if (first === undefined) continue;
    return [
      {
        rule: 'mirror-text',
        level: 'error',
        value: wrong.length,
        limit: 0,
        unit: wrong.length === 1 ? 'word' : 'words',
        message: `What is engraved on ${part.id} (${part.name}) ${first.how} where it is seen, as “${first.mark.text}”${wrong.length > 1 ? ` and ${wrong.length - 1} more` : ''}.`,
        hint:
          first.how === 'is mirrored'
            ? 'Draw the part from its other face: outline, holes and words together.'
            : 'Turn the words half round.',
      },
    ];
  }
  return [];
}

/** The corners of a line of words, and its middle. */
function cornersOf({ text, x, y, height, turn }: Mark): readonly Point[] {
  const { width } = lettering(text, height);
  const places = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
    [width / 2, height / 2],
  ] as const;
  return moved(
    places.map(([u, v]) => ({ x: u, y: v, bulge: 0 })),
    { x, y, turn },
  );
}

/** How many lines across a face in each direction are looked along. */
const GRID = 11;
/** A face of which more than this share is seen is a show face. A choice of ours. */
const SHOWN = 0.5;

/**
 * The face that carries the mark must not show while the other one is hidden. One that looks down does not show; of a part
 * with several pieces that look different ways, neither face is better.
 */
function idHidden(part: FlatPart, pieces: readonly Standing[]): readonly Finding[] {
  const points = pointsOn(part);
  if (points.length === 0 || pieces.length === 0) return [];
  const shown = (z: number, out: 1 | -1) =>
    pieces.reduce((sum, { matrix, others }) => {
      const normal = direction(matrix, 0, 0, out);
      if (normal.y < -0.9) return sum;
      return sum + points.filter(({ x, y }) => seen(apply(matrix, { x, y, z }), normal, others)).length / points.length;
    }, 0) / pieces.length;
  const share = shown(part.thickness, 1);
  if (share <= SHOWN || shown(0, -1) > SHOWN) return [];
  return [
    {
      rule: 'id-hidden',
      level: 'warning',
      value: Math.round(share * 100),
      limit: SHOWN * 100,
      unit: '%',
      message: `${part.id} (${part.name}) carries its mark on the face that shows in the finished camera, and the other face does not.`,
      hint: 'Draw the part from its other face, so that the laser sees the one that does not show.',
    },
  ];
}

/** Marks are put as near to the middle of a part as there is room: there, on this share of the wood, one looks. */
const MIDDLE = 0.25;

/** Places spread over the wood of a face, round its middle. */
function pointsOn(part: FlatPart): readonly Point[] {
  const outline = flatten(part.outline, 0.1);
  const holes = part.holes.map((hole) => flatten(hole, 0.1));
  const { left, right, bottom, top } = boundsOfPoints(outline);
  const wood = Array.from({ length: GRID * GRID }, (_, i) => ({
    x: left + ((right - left) * ((i % GRID) + 0.5)) / GRID,
    y: bottom + ((top - bottom) * (Math.floor(i / GRID) + 0.5)) / GRID,
  })).filter((point) => inside(outline, point) && !holes.some((hole) => inside(hole, point)));
  const off = ({ x, y }: Point) => (x - (left + right) / 2) ** 2 + (y - (bottom + top) / 2) ** 2;
  return wood.sort((a, b) => off(a) - off(b)).slice(0, Math.ceil(wood.length * MIDDLE));
}
