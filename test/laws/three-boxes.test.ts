import { expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { platesOf } from '../../src/assembly/measure.js';
import { spanOf } from '../../src/assembly/span-of.js';
import type { Planned } from '../../src/pipeline.js';
import { lawsFrom, withDesign } from './law.js';

const { lawWith } = lawsFrom(11);
const ROUNDING = 1e-6;

/** With a third box, from as far as it was to somewhere between there and the nearest that three boxes reach. */
function withThree(planned: Planned, share: number): Planned | null {
  const { focus } = planned.design;
  const { reachable } = withDesign(planned.design, { boxes: 3 }).camera.settingOut;
  if (reachable <= focus.farthest + 0.02) return null;
  const nearest = focus.farthest + (reachable - focus.farthest) * Math.max(0.02, share);
  return withDesign(planned.design, { boxes: 3, focus: { ...focus, nearest, pastNearest: null } });
}

/** Where the boxes stand, and how far their stops let them be drawn: off the parts. */
function measured(build: Build) {
  const block = spanOf(build, 'F14').z[0];
  const foot = spanOf(build, 'F14').y[0];
  const hook = Math.max(
    ...platesOf(build, 'C4').flatMap(({ outline }) => outline.filter(({ y }) => y > foot).map(({ x }) => x)),
  );
  return {
    frontEnd: Math.min(...['F2L', 'F2R', 'F3', 'F4'].map((id) => spanOf(build, id).z[1])),
    middle: spanOf(build, 'C1L').z,
    frame: spanOf(build, 'C3').z,
    rear: spanOf(build, 'R1L').z,
    standard: spanOf(build, 'R3').z[0],
    panel: spanOf(build, 'F5').z[1],
    ownRun: block - hook,
    rearRun: spanOf(build, 'C3').z[0] - spanOf(build, 'R10').z[1],
  };
}

/** camera.md, section 7: max(30, 2 · 15 + 5, a fifth of the width). */
const needed = (build: Build, id: string): number => Math.max(35, (spanOf(build, id).x[1] * 2) / 5);

test('wherever the felt lets the middle box stop, both joints keep their overlap and nothing meets', () =>
  lawWith(60, (planned, drawn) => {
    const three = withThree(planned, drawn / 1000);
    if (three === null) return;
    const { build } = three;
    const end = spanOf(build, 'T5').z[0] - spanOf(build, 'R4L').z[1];
    const at = measured(build);
    expect(at.ownRun + at.rearRun).toBeGreaterThanOrEqual(end - ROUNDING);
    for (const rear of [0, 0.3, 0.6, 1].map((share) => share * end))
      for (const share of [0, 0.5, 1]) {
        // how far the rear box has come out of the middle box: from as little to as much as the stops let it
        const [least, most] = [Math.max(0, rear - at.ownRun), Math.min(rear, at.rearRun)];
        const out = least + share * (most - least);
        const own = rear - out;
        expect(at.frontEnd - (at.middle[0] + own)).toBeGreaterThanOrEqual(needed(build, 'C1R') - ROUNDING);
        expect(at.frame[1] - (at.rear[0] + out)).toBeGreaterThanOrEqual(needed(build, 'R1R') - ROUNDING);
        expect(at.middle[0] + own - at.panel).toBeGreaterThanOrEqual(2 - ROUNDING);
        expect(at.standard + rear - (at.frame[1] + own)).toBeGreaterThanOrEqual(2 - ROUNDING);
        expect(at.frame[0] + own - at.frontEnd).toBeGreaterThanOrEqual(2 - ROUNDING);
      }
  }));

test('what three boxes are said to reach they reach, and no more', () =>
  lawWith(40, (planned) => {
    const three = withThree(planned, 1);
    if (three === null) return;
    const at = measured(three.build);
    const spare = at.frontEnd - (at.middle[0] + at.ownRun) + at.frame[1] - (at.rear[0] + at.rearRun);
    expect(spare).toBeCloseTo(needed(three.build, 'C1R') + needed(three.build, 'R1R'), 6);
  }));

test('a third box never reaches less where two boxes close', () =>
  lawWith(40, (planned) => {
    const { settingOut: two } = planned.camera;
    if (two.middle !== null || two.frontLength.value < 120) return;
    expect(withDesign(planned.design, { boxes: 3 }).camera.settingOut.reachable).toBeGreaterThan(two.reachable);
  }));
