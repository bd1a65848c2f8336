import { describe, expect, test } from 'vitest';
import { countOf } from '../../src/assembly/setups.js';
import { planCamera } from '../../src/pipeline.js';
import { layOut } from '../../src/sheets/lay-out.js';
import { keptDesign } from './kept-design.js';

/** As promised: one sheet above what the bare area fills for up to three sheets, half as many again for more. */
const promised = (bound: number): number => (bound <= 3 ? bound + 1 : Math.floor(1.5 * bound));

describe('a camera takes no more sheets than promised', () => {
  test.each([
    ['heron', 600, 400],
    ['wren', 600, 400],
    ['curlew', 900, 600],
    ['teal', 600, 600],
    ['bittern', 900, 600],
    ['grebe', 800, 450],
    // beds that suit these parts badly
    ['grebe', 600, 400],
    ['curlew', 600, 600],
  ])('%s on %d × %d', (name, width, height) => {
    const design = keptDesign(name);
    const { parts, build } = planCamera(design);
    const pieces = parts.flatMap((part) =>
      part.kind === 'flat' ? [{ part, count: countOf(part.placements, build.setups) }] : [],
    );
    const { uses } = layOut(pieces, {
      materials: [{ ...design.plywood, sheet: { width, height } }, ...design.stock],
      kerf: design.laser.kerf,
      effort: 1,
    });
    for (const { sheets, bound } of uses) expect(sheets).toBeLessThanOrEqual(promised(bound as number));
  });
});
