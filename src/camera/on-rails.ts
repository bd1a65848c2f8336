import type { Build } from '../assembly/build.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { AXIS, boxOf, outlineOf, outlinesOf, partOf, reach } from '../assembly/measure.js';
import type { Finding } from '../model/finding.js';
import { mm, tenth } from '../units/print.js';

/** What the lips of the rails hold of a plate by; common practice, no source. */
const LEAST_LAP = 2;

/** rail-held: pushed to one side, a plate on the rails still stands behind the lip of the other, and cannot fall forward. */
export function railHeld(build: Build, id: string): readonly Finding[] {
  const plate = boxOf(outlineOf(build, id).outline);
  const lips = outlinesOf(build, 'A5').map(({ outline }) => boxOf(outline));
  const rails = outlinesOf(build, 'A4').map(({ outline }) => outline);
  const [right, left] = [1, -1].map((side) => {
    const edge = side > 0 ? plate.right : -plate.left;
    // how far from the axis the lip begins, and the rail behind it
    const lip = Math.min(...lips.map((one) => (side > 0 ? one.left : -one.right)).filter((at) => at > 0));
    const rail = Math.min(...rails.map((one) => reach(one, AXIS, { x: side, y: 0 })));
    return { lap: edge - lip, play: rail - edge };
  }) as [Side, Side];
  const value = Math.min(right.lap - left.play, left.lap - right.play);
  return unless(value >= LEAST_LAP - ROUNDING, {
    rule: 'rail-held',
    level: 'error',
    value,
    limit: LEAST_LAP,
    unit: 'mm',
    message: `${id} (${partOf(build, id).name}) falls off forward: pushed to one side it stands ${mm(Math.max(0, tenth(value)))} behind the lip of the other rail, and it takes ${mm(LEAST_LAP)}.`,
    hint: `Make it, or the lips A5, ${mm(tenth(LEAST_LAP - value))} wider.`,
  });
}

interface Side {
  readonly lap: number;
  readonly play: number;
}
