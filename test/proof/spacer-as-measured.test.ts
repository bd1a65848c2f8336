import { describe, expect, test } from 'vitest';
import { compareCameras } from '../../src/compare/compare.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { revisionOf } from '../../src/design/revision.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { registerBudgets, registerRules } from '../../src/proof/register.js';
import { spacerAlone } from '../../src/spare-spacer.js';
import { changed, designOf, problemsOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

/*
 * camera.md section 4: register error = T_g (+ spacer) − T. Heron's films lie 5.8 and 24 deep, its glass at 5.8, so that the
 * spacer under the glass is 18.2; the tolerance is 0.22006, half of it 0.11003. Shims at hand: 0.1, 0.25 and 0.5.
 */
const measuring = (thickness: string, text = heron) =>
  changed(text, 'mass: 900 g', `mass: 900 g, spacer: { measured: ${thickness} }`);

/** The glass is as deep as no holder: the paper holder then lies on a spacer of 2 mm. */
const deepGlass = changed(heron, 'depth: 5.8 mm, frosted', 'depth: 7.8 mm, frosted');
const underHolder = (thickness: string) =>
  changed(deepGlass, 'mass: 330 g', `mass: 330 g, spacer: { measured: ${thickness} }`);

const stands = (text: string) => {
  const planned = planCamera(designOf(text));
  const { design, build } = planned;
  return { planned, budgets: registerBudgets(design, build), findings: registerRules(design, build) };
};
const centre = (text: string, holder: string) =>
  stands(text).budgets.find((one) => one.holder === holder && one.at === 'centre');
const errors = (text: string) => stands(text).findings.filter(({ level }) => level === 'error');
const spacersOf = (text: string) => planOf(planCamera(designOf(text))).spacers;

describe('a spacer that was glued and measured', () => {
  test('what is reckoned is what was measured, and its holder alone', () => {
    expect(centre(measuring('18.33 mm'), 'processing holder')?.nominal).toBeCloseTo(5.8 + 18.33 - 24, 9);
    expect(centre(measuring('18.33 mm'), 'paper holder')?.nominal).toBeCloseTo(0, 9);
  });

  test('together with a glass that was measured', () => {
    const both = changed(measuring('18.33 mm'), 'depth: 5.8 mm, frosted', 'depth: 5.8 mm, measured: 5.7 mm, frosted');
    expect(centre(both, 'processing holder')?.nominal).toBeCloseTo(5.7 + 18.33 - 24, 9);
    expect(spacersOf(both)[1]?.remainder).toBeCloseTo(24 - 5.7 - 18.33, 6);
  });

  test('its plies, glue and shims stray no longer, the reading does; the frame strays as before', () => {
    const names = (text: string) => centre(text, 'processing holder')?.contributors.map(({ name }) => name) ?? [];
    const count = (all: readonly string[], what: RegExp) =>
      Number(all.flatMap((name) => what.exec(name)?.[1] ?? [])[0]);
    const [before, after] = [names(heron), names(measuring('18.2 mm'))];
    expect(before).not.toContain('the reading of the spacer of the processing holder');
    expect(after).toContain('the reading of the spacer of the processing holder');
    // four plies of 4.05 and four shims of 0.5 come to 18.2, and are one reading now
    for (const what of [/^(\d+) pl(?:y|ies) of/, /^(\d+) shims? of 0\.5 mm/])
      expect(count(before, what) - count(after, what)).toBe(4);
  });

  test.each([
    // 24 − 5.8 − measured; a shim where more than half of the tolerance is missing
    { measured: 18.2, left: 0, add: [], out: [] },
    { measured: 18.12, left: 0.08, add: [], out: [] },
    { measured: 18.05, left: 0.15, add: [0.1], out: [] },
    { measured: 17.9, left: 0.3, add: [0.25], out: [] },
    { measured: 17.55, left: 0.65, add: [0.5, 0.1], out: [] },
    // four shims of 0.5 are drawn in it, no thinner ones
    { measured: 18.66, left: -0.46, add: [], out: [0.5] },
    { measured: 18.4, left: -0.2, add: [0.25], out: [0.5] },
  ])('measured $measured mm: $left mm left, add $add, take out $out', ({ measured, left, add, out }) => {
    const spacer = spacersOf(measuring(`${measured} mm`))[1];
    expect(spacer?.thickness).toBeCloseTo(18.2, 9);
    expect(spacer?.measured).toBe(measured);
    expect(spacer?.remainder).toBeCloseTo(left, 6);
    expect(spacer?.add).toEqual(add);
    expect(spacer?.takeOut).toEqual(out);
  });

  test('out of tolerance the program names the shims, and which spacer they go to', () => {
    const [thin, ...more] = errors(measuring('17.9 mm'));
    expect(more).toEqual([]);
    expect(thin).toMatchObject({ rule: 'register', value: expect.closeTo(-0.3, 9) });
    expect(thin?.message).toContain('the spacer of the processing holder 17.9 mm thick as measured');
    expect(thin?.hint).toBe(
      'Put shims of 0.25 mm to the spacer of the processing holder; that leaves 0.05 mm; then measure it again.',
    );
    expect(errors(measuring('18.5 mm'))[0]?.hint).toContain(
      'Take shims of 0.5 mm out of the spacer of the processing holder and put shims of 0.25 mm to it; that leaves 0.05 mm',
    );
    expect(errors(measuring('18.4 mm'))).toEqual([]);
  });

  test('compare tells it, and that nothing is cut again', () => {
    const [before, after] = [heron, measuring('17.9 mm')].map((text) => recordOfDesign(designOf(text)));
    if (before === undefined || after === undefined) throw new Error('two cameras were planned');
    const { changed: figures, recut } = compareCameras(before, after);
    expect(recut).toEqual([]);
    expect(figures.map(({ figure }) => figure)).toEqual(
      ['remainder', 'measured', 'add'].map((key) => `spacers.processing holder.${key}`),
    );
  });

  test('nothing is cut anew for it', () => {
    const [drawn, measured] = [heron, measuring('18.33 mm')].map((text) => planCamera(designOf(text)));
    expect(measured?.parts).toEqual(drawn?.parts);
    expect(revisionOf(designOf(measuring('18.33 mm')))).toBe(revisionOf(designOf(heron)));
  });

  test('the spacer alone says how it stands', () => {
    const { summary, spacer } = spacerAlone(designOf(measuring('17.9 mm')), { name: 'processing holder' });
    expect(summary[0]).toContain('17.9 mm as measured, 0.3 mm too thin: add 1 shim of 0.25 mm');
    expect(spacer.add).toEqual([0.25]);
    // of another sheet it is another spacer, of which nothing was measured
    const anew = spacerAlone(designOf(measuring('17.9 mm')), { name: 'processing holder', thickness: 3.9 });
    expect(anew.spacer.measured).toBeUndefined();
  });
});

describe('a spacer under the holder', () => {
  test('a thicker one takes the film back', () =>
    expect(centre(underHolder('2.13 mm'), 'paper holder')?.nominal).toBeCloseTo(7.8 - 2.13 - 5.8, 9));

  test('too thin, it takes shims; too thick, it gives a thicker one back for a thinner', () => {
    expect(errors(underHolder('1.7 mm'))[0]?.hint).toContain('Put shims of 0.25 mm to the spacer of the paper holder');
    expect(errors(underHolder('2.3 mm'))[0]?.hint).toContain(
      'Take shims of 0.5 mm out of the spacer of the paper holder and put shims of 0.25 mm to it',
    );
  });

  test('index lines go with the film: 24 − (5.8 + 2.13) behind the first holder’s', () => {
    const { indexOffsets } = planOf(planCamera(designOf(underHolder('2.13 mm')))).tailboard;
    expect(indexOffsets['processing holder']).toBeCloseTo(24 - 7.93, 6);
    expect(indexOffsets['paper holder']).toBeCloseTo(0, 9);
  });
});

describe('what is no reading of that spacer', () => {
  test.each([
    { name: 'a spacer of another thickness', text: measuring('19.5 mm'), path: 'holders[1].spacer.measured' },
    {
      name: 'a holder that needs none',
      text: changed(heron, 'mass: 330 g', 'mass: 330 g, spacer: { measured: 2 mm }'),
      path: 'holders[0].spacer',
    },
    // seen through 2 mm of glass the frosted face lies 2 (1 − 1/1.52) nearer: 24 − 5.116 = 18.884
    {
      name: 'the frosted side to the eye',
      text: changed(measuring('17.8 mm'), 'frosted: lens', 'frosted: eye'),
      path: 'holders[1].spacer.measured',
    },
  ])('$name', ({ text, path }) => expect(problemsOf(text).map((problem) => problem.path)).toEqual([path]));
});

test('the plan tells how deep a film lies as it stands, since its index line goes with it', () => {
  const { holders, tailboard } = planOf(planCamera(designOf(underHolder('1.9 mm'))));
  // the paper lies 5.8 deep, on a spacer that came out 1.9 thick instead of 2; the other holder was not measured
  expect(holders[0]).toMatchObject({ filmDepth: 5.8, effectiveDepth: 7.8 });
  expect(holders[0]?.standingDepth).toBeCloseTo(7.7, 9);
  expect(holders[1]).not.toHaveProperty('standingDepth');
  expect(tailboard.indexOffsets['processing holder']).toBeCloseTo(24 - 7.7, 9);
});
