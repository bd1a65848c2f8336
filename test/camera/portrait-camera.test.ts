import { beforeAll, describe, expect, test } from 'vitest';
import { spanOf } from '../../src/assembly/span-of.js';
import { workbench } from '../../src/assembly/workbench.js';
import { farEnd, sectionDrawing } from '../../src/drawings/section.js';
import type { Kernel } from '../../src/geometry/kernel.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { focusRange } from '../../src/page/camera/focus.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';

/**
 * Heron without infinity: from 1:8 to 1:1.8. Expected figures by hand from Newton's form of the conjugate equation,
 * film at V + f·m behind the lens seat, and u = f (1 + 1/m) (checks of optics, V1: S5a, conjugate distances).
 */
const planned = planCamera(
  designOf(
    changed(changed(heronText, 'nearest: 1:2.5', 'nearest: 1:1.8'), 'pastInfinity', 'farthest: 1:8, pastInfinity'),
  ),
);
const plan = planOf(planned);
const whole = planOf(planCamera(designOf(heronText)));

describe('a camera that is not asked for infinity', () => {
  test('says how far it focuses', () => {
    expect(plan.optics.farthest).toEqual({
      magnification: 0.125,
      subjectDistance: 210 * 9,
      filmDistance: 203.5 + 26.25,
    });
    expect(whole.optics.farthest).toBeUndefined();
    expect(whole.holders[0]?.seat.farthest).toBeUndefined();
  });

  test('begins its slide there, with the deepest holder and the run past it', () => {
    // 203.5 + 26.25 − 4 − 24; 203.5 + 116.667 − 5.8
    expect(plan.slide.closest).toBeCloseTo(201.75, 6);
    expect(plan.slide.farthest).toBeCloseTo(314.3667, 3);
    expect(plan.holders.map(({ seat }) => seat.farthest)).toEqual([223.95, 205.75]);
  });

  test('has longer boxes by the extension there, and reaches nearer by twice that', () => {
    expect(plan.slide.frontBoxLength - whole.slide.frontBoxLength).toBeCloseTo(26.25, 6);
    expect(plan.slide.rearBoxLength - whole.slide.rearBoxLength).toBeCloseTo(26.25, 6);
    expect(plan.slide.reachableMagnification - whole.slide.reachableMagnification).toBeCloseTo(0.25, 6);
  });

  test('stands behind its panel at the far end, as built', () => {
    const { build } = planned;
    const [panel, box] = [spanOf(build, 'F1').z, spanOf(build, 'R1L').z];
    expect(box[0] - panel[1]).toBeCloseTo(6.05, 6); // strips t and 2
    for (const { name } of plan.holders) {
      const { farEnd: far, nearest } = focusRange(plan, name);
      expect(far).toBeGreaterThanOrEqual(4 - 1e-6);
      expect(nearest - far).toBeCloseTo(210 * (1 / 1.8 - 1 / 8), 3);
    }
  });
});

describe('its section', () => {
  let kernel: Kernel;
  beforeAll(async () => {
    kernel = await loadKernel();
  });

  test('is drawn at its far end, and not at an infinity that its slide does not reach', () => {
    const { build } = planned;
    const drawn = kernel.stage((bench) =>
      sectionDrawing({ build, plan, on: workbench(bench), room: { width: 174, height: 225 } }, farEnd(plan)),
    );
    expect(drawn.name).toBe('section-farthest');
    const words = drawn.marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
    expect(words).toContain('Section through the axis, at the farthest focus');
    expect(words.some((text) => text.includes('223.95'))).toBe(true); // panel to holder seat
    expect(words.some((text) => text.includes('229.75'))).toBe(true); // lens seat to film
  });
});
