import { expect, test } from 'vitest';
import { workbench } from '../../src/assembly/workbench.js';
import { cutFace } from '../../src/drawings/cut-face.js';
import { bodiesOf, standingIn } from '../../src/drawings/scene.js';
import { leftView, topView } from '../../src/drawings/view.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Point } from '../../src/geometry/path.js';
import { frame } from '../../src/geometry/placement.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import { planCamera } from '../../src/pipeline.js';
import { bareHeron } from '../designs/kept-design.js';

const kernel = await loadKernel();

const areaOf = (loops: readonly (readonly Point[])[]): number =>
  loops.reduce(
    (sum, loop) =>
      sum +
      loop.reduce((twice, a, i) => {
        const b = loop[(i + 1) % loop.length] as Point;
        return twice + a.x * b.y - b.x * a.y;
      }, 0) /
        2,
    0,
  );

/** Thick enough for the volume to be exact, thin enough for nothing to change in it, mm. */
const SLICE = 0.02;

/** A slice of everything, from 0 to that far, square to x or y. */
const slices = {
  x: frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [0, 0, 0]),
  y: frame([0, 0, 1], [1, 0, 0], [0, 1, 0], [0, 0, 0]),
};

test.each([
  { saw: 'x', normal: { x: 1, y: 0, z: 0 }, view: leftView },
  // the other half: what lies below is left
  { saw: 'y', normal: { x: 0, y: 1, z: 0 }, view: topView },
] as const)('a cut square to $saw is as large as a thin slice of the solid is thick', ({ saw, normal, view }) => {
  const { build } = planCamera(bareHeron());
  const [setup] = build.setups;
  if (setup === undefined) throw new Error('a camera has a set-up');
  kernel.stage((bench) => {
    const on = workbench(bench);
    const slice = bench.prism(
      { profile: rectangle(boxAt(0, 0, 2000, 2000)), holes: [], height: SLICE, matrix: slices[saw] },
      'add',
    );
    let cut = 0;
    for (const piece of standingIn(build.parts, setup)) {
      const [from, to] = piece.extent[saw];
      if (from >= -1e-3 || to <= 0.5) continue;
      const [body] = bodiesOf(on, [{ piece, saw: { normal, offset: 0 } }]);
      if (body === undefined) throw new Error(`nothing of ${piece.key} is left`);
      const area = Math.abs(areaOf(cutFace(body, { normal, offset: 0 }, view)));
      const volume = bench.volume(bench.common(on.solid(piece, 0), slice));
      // round things change by a little within the slice
      expect(Math.abs(area - volume / SLICE), piece.key).toBeLessThan(0.05 + 0.003 * area);
      cut++;
    }
    expect(cut).toBeGreaterThan(15);
  });
});
