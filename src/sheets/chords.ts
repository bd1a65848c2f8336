import { arcOf, type ClosedPath, type Point, type Vertex } from '../geometry/path.js';

/** Chords stray from their arc by this much at most, mm: what a neighbour loses to it is less than the beam takes. */
const SAGITTA = 0.05;
const QUARTER = Math.PI / 2;

/**
 * A loop in straight edges of which none lies in the material (at its left hand, for outlines and holes alike): so what
 * keeps away from them keeps away from the loop itself.
 *
 * An arc that bends into the material is cut into chords, one that bends into the waste into tangents. Tangents touch the
 * arc where it points right, up, left or down, so the upright rectangle round them is that of the loop.
 */
export function chordsInWaste(path: ClosedPath): readonly Point[] {
  const points: Point[] = [];
  path.forEach((from, i) => {
    points.push({ x: from.x, y: from.y });
    if (from.bulge === 0) return;
    const arc = arcOf(from, path[(i + 1) % path.length] as Vertex);
    const sweep = 4 * Math.atan(from.bulge);
    if (from.bulge < 0) points.push(...onArc(arc, sweep));
    else points.push(...tangents(arc, sweep));
  });
  return points;
}

type Arc = ReturnType<typeof arcOf>;

const at = ({ centre }: Arc, radius: number, turn: number): Point => ({
  x: centre.x + radius * Math.cos(turn),
  y: centre.y + radius * Math.sin(turn),
});

/** Points between the ends of the arc. */
function onArc(arc: Arc, sweep: number): readonly Point[] {
  const steps = Math.ceil(Math.abs(sweep) / (2 * Math.acos(Math.max(0, 1 - SAGITTA / arc.radius))));
  return Array.from({ length: steps - 1 }, (_, k) => at(arc, arc.radius, arc.start + (sweep * (k + 1)) / steps));
}

/** Where tangents meet between the ends of the arc. */
function tangents(arc: Arc, sweep: number): readonly Point[] {
  const end = arc.start + sweep;
  const stops = [arc.start];
  for (let k = Math.floor(arc.start / QUARTER) + 1; k * QUARTER < end; k++) stops.push(k * QUARTER);
  stops.push(end);
  const widest = 2 * Math.acos(arc.radius / (arc.radius + SAGITTA));
  return stops.slice(1).flatMap((to, i) => {
    const from = stops[i] as number;
    const steps = Math.max(1, Math.ceil((to - from) / widest));
    const half = (to - from) / steps / 2;
    return Array.from({ length: steps }, (_, k) => at(arc, arc.radius / Math.cos(half), from + (2 * k + 1) * half));
  });
}
