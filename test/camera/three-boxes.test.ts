import { describe, expect, test } from 'vitest';
import { spanOf } from '../../src/assembly/span-of.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { keptDesign } from '../designs/kept-design.js';
import { godwit } from './middle-box/three-boxes.js';

/**
 * Godwit by hand. The inequalities of camera.md section 7 with a box between the two: both joints of boxes need their
 * overlap, and what is between front box and standard is the frame of the middle box, one ply, with a gap of 2 on each side.
 *
 * f 150, V 143, z_seat 0, p 3, T 4.8 for all, t 4.05, c 1.5: q 8.1, d_f 6.05; s_min 143 − 3 − 4.8 = 135.2, K = s_min − q = 127.1
 */
const K = 127.1;
const { build, camera } = godwit;
const plan = planOf(godwit);
const rod = camera.settingOut;
/** The same design without its third box. */
const { boxes: _third, ...withoutThird } = keptDesign('godwit');
const two = planOf(planCamera(withoutThird));

describe('three boxes round a short lens', () => {
  test('stand in each other with a gap and a wall between', () => {
    const [front, middle, rear] = ['F2R', 'C1R', 'R1R'].map((id) => spanOf(build, id).x) as [
      readonly [number, number],
      readonly [number, number],
      readonly [number, number],
    ];
    // W_ri = 120.6 + 2 (2 + 0.3 + 6.075)
    expect(2 * rear[0]).toBeCloseTo(137.35, 6);
    expect(middle[0] - rear[1]).toBeCloseTo(1.5, 6);
    expect(front[0] - middle[1]).toBeCloseTo(1.5, 6);
    // 2 (t + c) wider a side pair than two boxes: 2 × 5.55
    expect(plan.slide.frontBoxOutside - two.slide.frontBoxOutside).toBeCloseTo(11.1, 6);
  });

  test('are as long as panel, frame and standard let them', () => {
    expect(rod.frontLength.value).toBeCloseTo(K - 4.05 - 2 * 2, 6);
    expect(rod.middle?.length.value).toBeCloseTo(K - 2 - 4.05 - 6.05, 6);
    expect(rod.rearLength.value).toBeCloseTo(K - 6.05, 6);
    expect(spanOf(build, 'C1L').z).toEqual([6.05, expect.closeTo(K - 2, 6)]);
  });

  test('reach nearer than two by the middle box less one overlap, and the gap and frame that it costs', () => {
    // with two: K − 2 + K − 6.05 − K − 35 − p − … by section 7: 143 − 6 − 9.6 + 4.8 − 8.1 − 6.05 − 2 − 35 = 81.05
    expect(two.slide.reachableMagnification).toBeCloseTo(81.05 / 150, 6);
    // camera.md: L_m − O more, L_m to the rear face of its frame, less frame and gap of the shorter front box
    const more = K - 2 - 6.05 - 35 - 4.05 - 2;
    expect(plan.slide.reachableMagnification).toBeCloseTo((81.05 + more) / 150, 6);
  });

  test('share the slide between two joints, each with as much more than it needs', () => {
    const middle = rod.middle;
    if (middle === null) throw new Error('Godwit has three boxes');
    expect(middle.rearRun.value + middle.ownRun.value).toBeCloseTo(153 + 7.5, 6);
    expect(middle.overlapInFront.value - 35).toBeCloseTo(middle.overlapOfRear.value - 35, 6);
    // sum of the joints: (K − 8.05 − 6.05) + (K − 2 − 6.05) − 160.5
    expect(middle.overlapInFront.value + middle.overlapOfRear.value).toBeCloseTo(2 * K - 22.15 - 160.5, 6);
  });

  test('the middle box stays until its stop takes it, then goes as far as the rear', () => {
    const run = rod.middle?.rearRun.value ?? 0;
    const at = (id: string, rear: number) => spanOf(build, id, { rear }).z[0];
    expect(at('C3', run)).toBe(at('C3', 0));
    expect(at('C3', 153) - at('C3', 0)).toBeCloseTo(153 - run, 9);
    expect(at('R3', 153) - at('R3', 0)).toBeCloseTo(153, 9);
    expect(at('F14', 153)).toBe(at('F14', 0));
  });
});
