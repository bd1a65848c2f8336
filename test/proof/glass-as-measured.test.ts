import { describe, expect, test } from 'vitest';
import { compareCameras } from '../../src/compare/compare.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { revisionOf } from '../../src/design/revision.js';
import { planCamera } from '../../src/pipeline.js';
import { registerBudgets, registerRules } from '../../src/proof/register.js';
import { changed, designOf, problemsOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

const measuring = (depth: string) =>
  changed(heron, 'depth: 5.8 mm, frosted', `depth: 5.8 mm, measured: ${depth}, frosted`);
const asBuilt = (depth: string) => {
  const { design, build } = planCamera(designOf(measuring(depth)));
  return { budgets: registerBudgets(design, build), findings: registerRules(design, build) };
};
const centre = (depth: string, holder: string) =>
  asBuilt(depth).budgets.find((one) => one.holder === holder && one.at === 'centre');

describe('the register of a camera that stands, its ground glass measured', () => {
  test('what is reckoned is what was measured, less the film', () => {
    // camera.md section 4: register error = T_g (+ spacer) − T; Heron's films lie 5.8 and 24 deep, its spacer is 18.2
    expect(centre('5.92 mm', 'paper holder')?.nominal).toBeCloseTo(5.92 - 5.8, 9);
    expect(centre('5.7 mm', 'paper holder')?.nominal).toBeCloseTo(-0.1, 9);
  });

  test('a spacer that nobody measured has its shims chosen for the frame as it stands, and keeps its plies', () => {
    for (const depth of [5.3, 5.7, 5.92, 6.2]) {
      const { design, build, camera } = planCamera(designOf(measuring(`${depth} mm`)));
      const own = registerBudgets(design, build).find(
        ({ holder, at }) => holder === 'processing holder' && at === 'centre',
      );
      // shims come within half of the tolerance of 0.22006 (camera.md section 4)
      expect(Math.abs(own?.nominal ?? 9)).toBeLessThanOrEqual(0.1101);
      const [, spacer] = camera.spacers;
      expect(spacer?.thickness).toBeCloseTo(24 - depth, 9);
      expect(spacer?.made.plies).toEqual([4.05, 4.05, 4.05, 4.05]);
    }
  });

  test('plies, glue and shims of the frame stray no longer; the reading does', () => {
    const drawn = planCamera(designOf(heron));
    const before = registerBudgets(drawn.design, drawn.build).find(
      ({ holder, at }) => holder === 'paper holder' && at === 'centre',
    );
    const after = centre('5.8 mm', 'paper holder');
    const names = after?.contributors.map(({ name }) => name) ?? [];
    expect(names).toContain('the reading of the ground glass in its frame');
    expect(names.filter((name) => /plywood|glue|shim/.test(name))).toEqual([]);
    const reach = ([low, high]: readonly [number, number]) => high - low;
    expect(reach(after?.interval95 ?? [0, 9])).toBeLessThan(reach(before?.interval95 ?? [0, 0]));
    // under the glass of the processing holder its spacer is still unmeasured
    expect(centre('5.8 mm', 'processing holder')?.contributors.some(({ name }) => name.startsWith('4 plies'))).toBe(
      true,
    );
  });

  test('out of tolerance: the shims at hand that bring it back, by whole shims', () => {
    // tolerance 0.22006 (camera.md section 4); 6.1 − 5.8 = 0.3: a shim of 0.25 leaves 0.05, within half of it
    const errors = asBuilt('6.1 mm').findings.filter(({ rule }) => rule === 'register');
    // the spacer of the other holder follows the frame
    expect(errors.map(({ value }) => value)).toEqual([expect.closeTo(0.3, 9)]);
    expect(errors[0]?.hint).toContain('Take shims of 0.25 mm out');
    expect(errors[0]?.hint).toContain('leaves 0.05 mm');
    const short = asBuilt('5.5 mm').findings.filter(({ rule }) => rule === 'register');
    expect(short[0]?.hint).toContain('Put shims of 0.25 mm under the glass');
    expect(asBuilt('6 mm').findings.filter(({ rule }) => rule === 'register')).toEqual([]);
  });

  test('a frame of which no shim is thin enough keeps them, and is not said to have none', () => {
    // 5.05 = 4.05 + a shim of 1; 0.4 behind, a shim of 1 taken out would leave 0.6 ahead
    const coarse = [
      ['depth: 5.8 mm, frosted', 'depth: 5.05 mm, measured: 5.45 mm, frosted'],
      ['filmDepth: 5.8 mm', 'filmDepth: 5.05 mm'],
      ['shims: [0.1 mm, 0.25 mm, 0.5 mm]', 'shims: [1 mm]'],
    ].reduce((text, [from = '', to = '']) => changed(text, from, to), heron);
    const { design, build } = planCamera(designOf(coarse));
    const [error] = registerRules(design, build).filter(({ rule }) => rule === 'register');
    expect(error?.value).toBeCloseTo(0.4, 9);
    expect(error?.hint).toBe('No shim taken out of the frame brings the glass nearer: put 0.4 mm under the holder.');
  });

  test('the note says on what it rests', () => {
    const [note] = asBuilt('5.86 mm').findings.filter(({ rule }) => rule === 'register-budget');
    expect(note?.message).toContain('With the frosted face at 5.86 mm as measured');
  });

  test('with the frosted side to the eye the lens sees it nearer by what the glass shifts', () => {
    const eye = changed(
      changed(heron, 'depth: 5.8 mm, frosted: lens', 'depth: 6.484 mm, measured: 6.584 mm, frosted: eye'),
      'frosted: eye',
      'frosted: eye',
    );
    const { design, build } = planCamera(designOf(eye));
    const budget = registerBudgets(design, build).find(
      ({ holder, at }) => holder === 'paper holder' && at === 'centre',
    );
    // effective depth = 6.584 − 2 (1 − 1/1.52)
    expect(budget?.nominal).toBeCloseTo(6.584 - 2 * (1 - 1 / 1.52) - 5.8, 9);
  });

  test('nothing is cut anew for it', () => {
    expect(revisionOf(designOf(measuring('5.92 mm')))).toBe(revisionOf(designOf(heron)));
    for (const depth of ['5.3 mm', '5.92 mm', '6.2 mm']) {
      const [before, after] = [heron, measuring(depth)].map((text) => recordOfDesign(designOf(text)));
      if (before === undefined || after === undefined) throw new Error('two cameras were planned');
      expect(compareCameras(before, after).recut).toEqual([]);
    }
  });

  test('another frame altogether is refused, with its place', () => {
    const [problem] = problemsOf(measuring('7 mm'));
    expect(problem?.path).toBe('groundGlass.measured');
  });
});
