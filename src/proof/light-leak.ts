import type { Opaque } from '../assembly/screens.js';
import { firstMet } from '../assembly/sight-line.js';
import type { Point3 } from '../geometry/placement.js';
import type { Part } from '../model/part.js';
import { type Gap, gapAlong } from './light-gap.js';
import { type Scene, type Stance, shifted } from './light-scene.js';
import type { Glimpse } from './light-search.js';
import type { Spot } from './light-watch.js';

/** A way in for light: the gap, where it is, and a line that runs through it to the film gate. */
export interface Leak {
  readonly stance: Stance;
  /** What bounds the gap on either side; twice the same where it is a hole. */
  readonly parts: readonly [Part, Part];
  readonly at: Point3;
  readonly width: number;
  /** Across the gap, unit length; null where wood is near on no two sides, for then a whole side is open. */
  readonly across: Point3 | null;
  /** Where the line ends on the gate, and where it comes from, outside. */
  readonly gate: Point3;
  readonly outside: Point3;
}

/** Narrower gaps count as shut, mm: glue, paint and the fibres of felt close them. A choice of ours. */
export const LEAST_GAP = 0.1;
/** What counts as the width where there are no two sides, mm. */
const OPEN = 40;
/** Lines that are tried of one glimpse. */
const TRIED = 6;
/** So far out every line has left the camera, mm. */
const OUT = 2000;

/** The gap behind a glimpse; null where what was seen is less than a gap, or where the second witness sees wood. */
export function leakOf(scene: Scene, { stance, solid, point, spots }: Glimpse): Leak | null {
  const shifts = scene.shifts(stance);
  const eye = shifted(point, solid.body, shifts);
  const cast = scene.standing(stance.setup, stance.push).all;
  const standing = scene.solids.flatMap(({ piece, body }, k) =>
    cast[k] === 1 ? [{ piece, shift: shifts[body] ?? ([0, 0, 0] as const) }] : [],
  );
  const largest = [...spots].sort((a, b) => areaOf(b) - areaOf(a)).slice(0, TRIED);
  for (const spot of largest) {
    const gate = middleOf(spot);
    const towards = { x: eye.x - gate.x, y: eye.y - gate.y, z: eye.z - gate.z };
    if (firstMet({ from: gate, towards }, standing) !== null) continue;
    const gap = gapAlong(scene.solids, cast, shifts, { gate, towards });
    if (gap !== null && gap.width < LEAST_GAP) continue;
    const [a, b] = gap === null ? [solid, solid] : partsOf(scene, gap, solid);
    const far = OUT / Math.hypot(towards.x, towards.y, towards.z);
    return {
      stance,
      parts: [a.piece.part, b.piece.part],
      at: gap?.at ?? eye,
      width: gap?.width ?? OPEN,
      across: gap?.across ?? null,
      gate,
      outside: { x: gate.x + far * towards.x, y: gate.y + far * towards.y, z: gate.z + far * towards.z },
    };
  }
  return null;
}

/** The two solids of a gap in their order. */
function partsOf({ solids }: Scene, { between: [a, b] }: Gap, seenAt: Opaque): readonly [Opaque, Opaque] {
  const first = solids[a] ?? seenAt;
  const second = solids[b] ?? seenAt;
  return solids.indexOf(first) <= solids.indexOf(second) ? [first, second] : [second, first];
}

function areaOf(spot: Spot): number {
  let twice = 0;
  for (let i = 0, j = spot.length - 1; i < spot.length; j = i++) {
    const [a, b] = [spot[j] as Point3, spot[i] as Point3];
    twice += a.x * b.y - b.x * a.y;
  }
  return Math.abs(twice) / 2;
}

const middleOf = (spot: Spot): Point3 => ({
  x: spot.reduce((sum, { x }) => sum + x, 0) / spot.length,
  y: spot.reduce((sum, { y }) => sum + y, 0) / spot.length,
  z: (spot[0] as Point3).z,
});
