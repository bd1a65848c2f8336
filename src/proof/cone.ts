import type { Shift } from '../assembly/bodies.js';
import type { Setup } from '../assembly/build.js';
import type { Extent } from '../assembly/extent.js';
import { ROUNDING } from '../assembly/limit.js';
import type { Opaque } from '../assembly/screens.js';
import type { Design } from '../design/design.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { Screen } from '../geometry/shadow.js';
import type { Finding } from '../model/finding.js';
import { mm, tenth } from '../units/print.js';
import { gateAt, type Scene, type Stance } from './light-scene.js';

/** Openings that the bundle is known to pass; how much room they leave it is told by the rule's other home. */
const KNOWN: ReadonlySet<string> = new Set(['B1', 'B2', 'R3', 'R1L', 'R1R', 'R2T', 'R2F']);
/** Directions in which the round rim of the lens is touched by the sides of the bundle. */
const TANGENTS = 64;

/**
 * cone-clear once more, on every part: nothing stands in the bundle of light from the rear rim of the lens to the film.
 * The bundle is the hull of a circle and a rectangle, so a thing is out of it if it lies wholly beyond one of the planes
 * that touch both. What the straight sides of the thing leave of it inside all planes is in the light.
 */
export function coneOnParts(design: Design, scene: Scene): readonly Finding[] {
  const rim = rimOf(scene);
  if (rim === null) return [];
  const found = new Map<string, Finding>();
  for (const setup of scene.build.setups)
    for (const station of scene.build.stations) {
      const stance: Stance = { setup, station, push: 'none' };
      const gate = gateAt(scene, stance);
      const upright = setup.orientation === 'upright';
      const { short, long } = imageIn(design, setup);
      const depth = setup.focusing ? design.groundGlass.depth : filmDepthOf(design, setup.holder);
      const half = { x: (upright ? short : long) / 2, y: (upright ? long : short) / 2 };
      const planes = [
        ...sidesOf(rim, { half, z: gate.z + depth }),
        { x: 0, y: 0, z: -1, c: gate.z },
        { x: 0, y: 0, z: 1, c: -rim.z },
      ];
      const cast = scene.standing(setup, 'none').all;
      const shifts = scene.shifts(stance);
      scene.solids.forEach((solid, k) => {
        const { part } = solid.piece;
        if (cast[k] !== 1 || KNOWN.has(part.id) || found.has(part.id) || isLens(solid)) return;
        const shift = shifts[solid.body] ?? ([0, 0, 0] as const);
        if (misses(solid.piece.extent, shift, planes)) return;
        const deep = deepest(solid, shift, planes);
        if (deep === null) return;
        found.set(part.id, {
          rule: 'cone-clear',
          level: 'error',
          value: -deep.by,
          limit: 0,
          unit: 'mm',
          message: `A dark edge in the picture: ${part.id} (${part.name}) stands ${mm(tenth(deep.by))} in the light from the lens to the film, at x ${mm(tenth(deep.at.x))}, y ${mm(tenth(deep.at.y))}, z ${mm(tenth(deep.at.z))} (${setup.name}, ${station.name}).`,
          hint: 'Move it out of the way of the light, or make its opening wider.',
        });
      });
    }
  return [...found.values()];
}

const filmDepthOf = (design: Design, holder: string): number =>
  design.holders.find(({ name }) => name === holder)?.filmDepth ?? design.groundGlass.depth;

/** What the film receives: in the set-up with an insert, less. */
const imageIn = ({ format, holders }: Design, { holder, insert }: Setup): Design['format']['image'] =>
  (insert === undefined ? null : holders.find(({ name }) => name === holder)?.make?.insert?.image) ?? format.image;

const isLens = ({ piece: { part } }: Opaque): boolean => part.kind === 'bought' && part.role === 'lens';

/** The rear end of the lens: the round rim that the light leaves it by. */
function rimOf({ solids }: Scene): { readonly z: number; readonly radius: number } | null {
  const ends = solids.filter(isLens).map(({ piece: { extent } }) => ({
    z: extent.z[1],
    radius: (extent.x[1] - extent.x[0]) / 2,
  }));
  return ends.reduce<(typeof ends)[0] | null>((last, end) => (last === null || end.z > last.z ? end : last), null);
}

/** x, y, z and c of x·X + y·Y + z·Z + c ≥ 0, the inside of a plane; x and y of unit length where it is a side. */
interface Plane extends Point3 {
  readonly c: number;
}

/** Planes that touch the rim and an edge or corner of the film, all round. */
function sidesOf(
  rim: { readonly z: number; readonly radius: number },
  film: { readonly half: { readonly x: number; readonly y: number }; readonly z: number },
): readonly Plane[] {
  const deep = film.z - rim.z;
  return Array.from({ length: TANGENTS }, (_, i) => {
    const turn = (2 * Math.PI * i) / TANGENTS;
    const [x, y] = [-Math.cos(turn), -Math.sin(turn)];
    // how far the light reaches in this direction: at the rim, and at the film
    const reach = Math.abs(x) * film.half.x + Math.abs(y) * film.half.y;
    const slope = (reach - rim.radius) / deep;
    return { x, y, z: slope, c: rim.radius - slope * rim.z };
  });
}

/** Whether a box lies wholly beyond one of the planes. */
const misses = ({ x, y, z }: Extent, [sx, sy, sz]: Shift, planes: readonly Plane[]): boolean =>
  planes.some(
    (p) =>
      p.x * (x[p.x > 0 ? 1 : 0] + sx) + p.y * (y[p.y > 0 ? 1 : 0] + sy) + p.z * (z[p.z > 0 ? 1 : 0] + sz) + p.c <=
      ROUNDING,
  );

/** The point of a solid that lies deepest within all planes; null where nothing of it does. */
function deepest(
  { screens, boxes }: Opaque,
  shift: Shift,
  planes: readonly Plane[],
): { readonly by: number; readonly at: Point3 } | null {
  const [sx, sy, sz] = shift;
  let best: { by: number; at: Point3 } | null = null;
  for (const [k, screen] of screens.entries()) {
    if (misses(boxes[k] as Extent, shift, planes)) continue;
    for (const face of facesOf(screen)) {
      let rest: readonly Point3[] = face.map(({ x, y, z }) => ({ x: x + sx, y: y + sy, z: z + sz }));
      for (const plane of planes) {
        rest = within(rest, plane);
        if (rest.length < 3) break;
      }
      if (rest.length < 3) continue;
      for (const at of rest) {
        const by = Math.min(...planes.slice(0, TANGENTS).map((p) => p.x * at.x + p.y * at.y + p.z * at.z + p.c));
        if (by > (best?.by ?? ROUNDING)) best = { by, at };
      }
    }
  }
  return best;
}

function facesOf({ loop, height, matrix }: Screen): readonly (readonly Point3[])[] {
  const at = (z: number) => loop.map(({ x, y }) => apply(matrix, { x, y, z }));
  const [low, high] = [at(0), at(height)];
  const sides = low.map((a, i) => {
    const next = (i + 1) % low.length;
    return [a, low[next] as Point3, high[next] as Point3, high[i] as Point3];
  });
  return [low, high, ...sides];
}

function within(face: readonly Point3[], { x, y, z, c }: Plane): readonly Point3[] {
  const side = (p: Point3) => x * p.x + y * p.y + z * p.z + c;
  return face.flatMap((p, i) => {
    const q = face[(i + 1) % face.length] as Point3;
    const [a, b] = [side(p), side(q)];
    const kept = a >= 0 ? [p] : [];
    if (a >= 0 === b >= 0) return kept;
    const share = a / (a - b);
    return [...kept, { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y), z: p.z + share * (q.z - p.z) }];
  });
}
