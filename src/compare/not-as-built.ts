import type { BuiltCamera } from '../model/built-camera.js';
import type { Finding } from '../model/finding.js';
import { mm } from '../units/print.js';
import { judgedParts } from './compare.js';
import { lostInOldBoxes } from './old-boxes.js';

/**
 * not-as-built: single parts of a design for a camera that stands already, which was built from another one. The slots round a
 * part are cut for the old one, and its boxes are as long as they are.
 */
export function notAsBuilt(before: BuiltCamera, after: BuiltCamera, ids: readonly string[]): readonly Finding[] {
  const stands = `the camera that stands (${before.plan.name}, revision ${before.plan.revision})`;
  const parts = judgedParts(before, after)
    .filter(({ part, why, from }) => ids.includes(part.id) && why !== null && from !== null)
    .map(({ part, why, from }): Finding => {
      const thicker = from !== null && from.thickness !== part.thickness && part.edges !== null;
      return {
        rule: 'not-as-built',
        level: why === HOLES_ONLY ? 'note' : 'warning',
        ...(thicker ? { value: part.thickness, limit: from.thickness, unit: 'mm' } : {}),
        message: `${part.id} is another part than that of ${stands}: ${why}. What it meets there is cut for the old one.`,
        hint: thicker
          ? `Write plywood.thickness as it was, and give --thickness ${mm(part.thickness)} for the sheet at hand: the outline then fits the slots that are there.`
          : 'tailboard compare names what else is cut again.',
      };
    });
  const { optics: was } = before.plan;
  const { optics: is } = after.plan;
  const otherLens =
    was.focalLength !== is.focalLength || was.flangeDistance !== is.flangeDistance || was.seatZ !== is.seatZ;
  if (!otherLens) return parts;
  const lost = lostInOldBoxes(before.plan, after.plan).map(
    ({ what, why }): Finding => ({
      rule: 'not-as-built',
      level: 'warning',
      message: `This lens does not give ${what}: ${why}`,
      hint: 'tailboard compare tells what each holder reaches there, and which boxes would give it back.',
    }),
  );
  return [...parts, ...lost];
}

/** A new hole for a new lens is what was asked for. */
const HOLES_ONLY = 'other edges or holes';
