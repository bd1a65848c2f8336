import { expect, test } from 'vitest';
import { atStep } from '../../src/drawings/at-step.js';
import { pulled } from '../../src/drawings/pulled.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { planCamera } from '../../src/pipeline.js';
import { orderOf } from '../../src/proof/order.js';
import { keptDesign } from '../designs/kept-design.js';

const kernel = await loadKernel();
const { build } = planCamera(keptDesign('teal'));
const { moves } = orderOf(build, kernel);

/** Where a piece hovers in the step that brings it, and how another one does then. */
function hovering(...keys: readonly string[]) {
  const step = moves.find(({ pieces }) => pieces.includes(keys[0] as string))?.step ?? 0;
  const { pieces } = pulled(atStep(build, moves, step));
  return keys.map((key) => pieces.find(({ piece }) => piece.key === key)?.out);
}

test.each(['pinch-bolt#1', 'pinch-bolt#2', 'pinch-nut#1', 'pinch-nut#2'])(
  '%s hovers over its hole in the clamp, which itself hovers behind the board',
  (key) => {
    const [bolt, clamp] = hovering(key, 'lens-clamp');
    expect(clamp?.z).toBeGreaterThan(1);
    expect(bolt).toEqual({ x: 0, y: expect.any(Number), z: clamp?.z });
    expect(Math.abs(bolt?.y ?? 0)).toBeGreaterThan(1);
  },
);

test('the carriage bolt hovers over its hole in the sole, which is not yet slid in', () => {
  const [bolt, sole] = hovering('lock-bolt', 'R4U');
  expect(sole?.z).toBeGreaterThan(1);
  expect(bolt?.z).toBe(sole?.z);
});

test('what is joined to the board too, which stands still, comes straight to it', () => {
  const [screw] = hovering('clamp-screw#1');
  expect(screw).toEqual({ x: 0, y: 0, z: expect.any(Number) });
});
