import type { Shift } from '../assembly/bodies.js';
import type { Extent } from '../assembly/extent.js';
import type { Piece } from '../assembly/pieces.js';
import type { Opaque } from '../assembly/screens.js';
import { firstMet, type Standing } from '../assembly/sight-line.js';
import { boundsOfPoints, flatten, inside, type Point } from '../geometry/path.js';
import { apply, type Point3 } from '../geometry/placement.js';
import { holds, type Screen } from '../geometry/shadow.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart } from '../model/part.js';
import { mm, tenth } from '../units/print.js';
import { type Scene, type Stance, shifted } from './light-scene.js';

/** Larger openings are no holes for screws: what they let in is seen by the search for straight light, mm. */
const LARGEST = 25;
/** Wood this near to a mouth covers it, mm. */
const NEAR = 0.06;
/** Points across a hole each way, and so many of those in the open that are looked at from. */
const POINTS = 5;
const LOOKED_AT = 2;

/**
 * hole-in-dark: every through hole in sheet is filled, blind, or covered by wood on wood, where one of its mouths looks into
 * the dark and the other out of the camera. Light that falls in there need not come straight to the film: it lights the box.
 */
export function holesInDark(scene: Scene): readonly Finding[] {
  const found = new Map<string, Finding>();
  const open = new Map<string, readonly Point[]>();
  const { stations, setups } = scene.build;
  const ends = [stations[0], stations.at(-1)].flatMap((station) => (station ? [station] : []));
  const holes = holesOf(scene);
  // while one looks at the glass there is no film to fog
  const exposing = setups.filter(({ focusing }) => !focusing);
  for (const setup of exposing.length > 0 ? exposing : setups)
    for (const station of ends) {
      const stance: Stance = { setup, station, push: 'none' };
      const room = roomOf(scene, stance);
      for (const hole of holes) {
        const { part, key } = hole.solid.piece;
        const name = `${key} ${hole.index}`;
        if (room.cast[hole.number] !== 1 || found.has(name)) continue;
        const light = throughHole(room, hole, open);
        if (light) found.set(name, told(part as FlatPart, light, stance));
      }
    }
  return [...found.values()];
}

interface Hole {
  readonly solid: Opaque;
  /** Of the solid in the scene, and of the hole in the part. */
  readonly number: number;
  readonly index: number;
  readonly loop: readonly Point[];
}

const holesOf = ({ solids }: Scene): readonly Hole[] =>
  solids.flatMap((solid, number) => {
    const { part } = solid.piece;
    if (part.kind !== 'flat') return [];
    return part.holes.flatMap((hole, index) => {
      const loop = flatten(hole);
      const { left, right, bottom, top } = boundsOfPoints(loop);
      return Math.min(right - left, top - bottom) > LARGEST ? [] : [{ solid, number, index, loop }];
    });
  });

/** What stands in a stance, and the dark that it encloses. */
interface Room {
  readonly scene: Scene;
  readonly stance: Stance;
  readonly cast: Uint8Array;
  readonly standing: readonly Standing[];
  readonly dark: readonly Extent[];
}

function roomOf(scene: Scene, stance: Stance): Room {
  const cast = scene.standing(stance.setup, stance.push).all;
  const shifts = scene.shifts(stance);
  const standing = scene.solids.flatMap(({ piece, body }, k) =>
    cast[k] === 1 ? [{ piece, shift: shifts[body] ?? ([0, 0, 0] as const) }] : [],
  );
  const box = (id: string): Extent | null => {
    const k = scene.solids.findIndex(({ piece }, i) => cast[i] === 1 && piece.part.id === id);
    const solid = scene.solids[k];
    if (solid === undefined) return null;
    const [sx, sy, sz] = shifts[solid.body] ?? [0, 0, 0];
    const { x, y, z } = solid.piece.extent;
    return { x: [x[0] + sx, x[1] + sx], y: [y[0] + sy, y[1] + sy], z: [z[0] + sz, z[1] + sz] };
  };
  return { scene, stance, cast, standing, dark: darkBoxes(box) };
}

/** The insides of the boxes: of each from its front to where the next one begins, of the rear box as far as the back plate. */
function darkBoxes(box: (id: string) => Extent | null): readonly Extent[] {
  const between = (left: string, right: string, floor: string, top: string, z: (wall: Extent) => Extent['z']) => {
    const [l, r, f, t] = [box(left), box(right), box(floor), box(top)];
    if (l === null || r === null || f === null || t === null) return [];
    return [{ x: [l.x[1], r.x[0]], y: [f.y[1], t.y[0]], z: z(l) } as const];
  };
  const panel = box('F1')?.z[1] ?? 0;
  const back = box('B1');
  const rear = box('R1L')?.z[0] ?? Infinity;
  const middle = box('C1L')?.z[0] ?? rear;
  return [
    ...between('F2L', 'F2R', 'F4', 'F3', (wall) => [panel, Math.min(wall.z[1], middle)]),
    ...between('C1L', 'C1R', 'C2F', 'C2T', (wall) => [wall.z[0], Math.min(wall.z[1], rear)]),
    ...between('R1L', 'R1R', 'R2F', 'R2T', (wall) => [wall.z[0], back?.z[0] ?? wall.z[1]]),
  ];
}

interface LightHole {
  readonly at: Point3;
  readonly across: number;
}

/** Where light falls through a hole from outside into the dark; null where it does not. */
function throughHole(room: Room, { solid, loop, index }: Hole, open: Map<string, readonly Point[]>): LightHole | null {
  const { left, right, bottom, top } = boundsOfPoints(loop);
  const { thickness } = solid.piece.part as FlatPart;
  const shifts = room.scene.shifts(room.stance);
  const place = (x: number, y: number, z: number) =>
    shifted(apply(solid.piece.placement.matrix, { x, y, z }), solid.body, shifts);
  const near = besides(room, [place(left, bottom, -1), place(right, top, thickness + 1)]);
  const own = shifts[solid.body] as Shift;
  const place0 = near.map(({ piece, shift }) => `${piece.key} ${shift.map((v, k) => v - (own[k] as number)).join()}`);
  const key = `${solid.piece.key} ${index} ${place0.join(' ')}`;
  const wood = (point: Point3) => near.some((one) => isWood(one, point));
  // a hole among the same neighbours is as open as it was in another set-up
  const points =
    open.get(key) ??
    pointsIn(loop).filter(
      ({ x, y }) =>
        !wood(place(x, y, -NEAR)) &&
        !wood(place(x, y, thickness + NEAR)) &&
        ![0.1, 0.5, 0.9].some((share) => wood(place(x, y, share * thickness))),
    );
  open.set(key, points);
  for (const { x, y } of points.slice(0, LOOKED_AT)) {
    const normal = along(place(x, y, 0), place(x, y, 1));
    const back = { x: -normal.x, y: -normal.y, z: -normal.z };
    const spaces = [spaceAt(room, place(x, y, -NEAR), back), spaceAt(room, place(x, y, thickness + NEAR), normal)];
    if (spaces.includes('outside') && spaces.includes('dark'))
      return {
        at: place((left + right) / 2, (bottom + top) / 2, thickness / 2),
        across: Math.min(right - left, top - bottom),
      };
  }
  return null;
}

/** What stands near a box between two corners. */
function besides({ scene, stance, cast }: Room, [a, b]: readonly [Point3, Point3]): readonly Neighbour[] {
  const shifts = scene.shifts(stance);
  return scene.solids.flatMap(({ body, piece, screens }, k) => {
    if (cast[k] !== 1) return [];
    const shift = shifts[body] ?? ([0, 0, 0] as const);
    const away = AXES.some(
      (axis, i) =>
        piece.extent[axis][1] + (shift[i] as number) < Math.min(a[axis], b[axis]) ||
        piece.extent[axis][0] + (shift[i] as number) > Math.max(a[axis], b[axis]),
    );
    return away ? [] : [{ piece, screens, shift }];
  });
}

const AXES = ['x', 'y', 'z'] as const;

interface Neighbour {
  readonly piece: Piece;
  readonly screens: readonly Screen[];
  readonly shift: Shift;
}

function pointsIn(loop: readonly Point[]): readonly Point[] {
  const { left, right, bottom, top } = boundsOfPoints(loop);
  const points: Point[] = [];
  for (let i = 0; i < POINTS; i++)
    for (let k = 0; k < POINTS; k++) {
      const point = {
        x: left + ((right - left) * (i + 0.5)) / POINTS,
        y: bottom + ((top - bottom) * (k + 0.5)) / POINTS,
      };
      if (inside(loop, point)) points.push(point);
    }
  return points;
}

function isWood({ piece, screens, shift: [sx, sy, sz] }: Neighbour, point: Point3): boolean {
  const at = { x: point.x - sx, y: point.y - sy, z: point.z - sz };
  const { x, y, z } = piece.extent;
  const near = at.x >= x[0] && at.x <= x[1] && at.y >= y[0] && at.y <= y[1] && at.z >= z[0] && at.z <= z[1];
  return near && screens.some((screen) => holds(screen, at));
}

/** What a mouth looks at: with lines all over its half of the sphere, whether one leaves the camera, or comes through the dark. */
function spaceAt(room: Room, at: Point3, out: Point3): 'outside' | 'dark' | 'neither' {
  let dark = false;
  for (const way of HEDGEHOG) {
    if (way.x * out.x + way.y * out.y + way.z * out.z < LEVEL) continue;
    const met = firstMet({ from: at, towards: way }, room.standing);
    if (met === null) return 'outside';
    for (const share of SHARES) {
      const s = share * met.at;
      const point = { x: at.x + s * way.x, y: at.y + s * way.y, z: at.z + s * way.z };
      if (room.dark.some((box) => isIn(box, point))) dark = true;
    }
  }
  return dark ? 'dark' : 'neither';
}

const isIn = ({ x, y, z }: Extent, p: Point3): boolean =>
  p.x > x[0] && p.x < x[1] && p.y > y[0] && p.y < y[1] && p.z > z[0] && p.z < z[1];

/** Where along a line it is looked whether it comes through the dark: short of what it meets, which may bound it. */
const SHARES = [0, 0.25, 0.5, 0.75, 0.98];

/** Lines that rise less than this from the mouth's plane do not count. */
const LEVEL = 0.05;

const LINES = 60;

/** Unit vectors evenly over the sphere (a spiral with the golden angle). */
const HEDGEHOG: readonly Point3[] = Array.from({ length: LINES }, (_, i) => {
  const z = 1 - (2 * i + 1) / LINES;
  const r = Math.sqrt(1 - z * z);
  const turn = i * Math.PI * (3 - Math.sqrt(5));
  return { x: r * Math.cos(turn), y: r * Math.sin(turn), z };
});

const along = (from: Point3, to: Point3): Point3 => ({ x: to.x - from.x, y: to.y - from.y, z: to.z - from.z });

function told(part: FlatPart, { at, across }: LightHole, { setup, station }: Stance): Finding {
  return {
    rule: 'hole-in-dark',
    level: 'error',
    value: across,
    limit: 0,
    unit: 'mm',
    message: `Daylight in the box: a hole of ${mm(tenth(across))} in ${part.id} (${part.name}) at x ${mm(tenth(at.x))}, y ${mm(tenth(at.y))}, z ${mm(tenth(at.z))} leads from outside into the dark (${setup.name}, ${station.name}).`,
    hint: 'Fill it with a dowel or its screw, cover it with a ply or a blind nut, or move it out of the dark.',
  };
}
