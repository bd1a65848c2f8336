import { describe, expect, test } from 'vitest';
import { planPage } from '../../src/files/plan-page.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';
import { measuredHeron } from '../designs/measured-heron.js';

const asItIs = (text: string) => text;
const plain = { heading: asItIs, faint: asItIs, error: asItIs, warning: asItIs, note: asItIs };
const planned = (text: string) => planOf(planCamera(designOf(text)));
const pageOf = (text: string) => planPage(planned(text), { width: 100, colour: plain }).replace(/\s+/g, ' ');

/*
 * camera.md section 4: register error = T_g (+ spacer) − T, a spacer is T − T_g thick, and a stack may be out by half of the
 * tolerance of 0.22006 before shims are named. Heron's shims: 0.1, 0.25 and 0.5, three of 0.5 and one of 0.25 under the
 * glass, four of 0.5 in the spacer of 18.2 under it.
 */
const MEND_FIRST = 'mend the glass first, measure it again, then ask for the spacer again';
const glassAt = (depth: string) => changed(heron, 'depth: 5.8 mm,', `depth: 5.8 mm, measured: ${depth},`);

describe('the plan of a camera that stands', () => {
  test('tells the glass as drawn and as measured', () => {
    expect(pageOf(heron)).toContain('Ground glass frosted face 5.8 mm behind the seat Packing');
    // 0.1 off the paper, and a stack may be: nothing is mended
    const text = pageOf(measuredHeron({}));
    expect(text).toContain('frosted face 5.8 mm behind the seat as drawn, 5.7 mm as measured Packing');
    expect(text).toContain('Spacer, processing holder 18.6 mm under the ground glass: 4 plies');
    expect(text).not.toContain('mend the glass');
  });

  test('of a spacer it tells what is wanted, what was drawn and measured, and each shim that is exchanged', () => {
    // 24.3 − 5.7 = 18.6, drawn 24 − 5.8 = 18.2; 18.9 is 0.3 too thick: 0.5 out and 0.25 in leave it 0.05 so
    expect(pageOf(measuredHeron({ spacer: '18.9 mm' }))).toContain(
      'Spacer, processing holder 18.6 mm under the ground glass, 18.2 mm as drawn: 18.9 mm as measured, 0.3 mm too thick: take out 1 shim of 0.5 mm, add 1 shim of 0.25 mm, ±0.22 mm allowed',
    );
    // as drawn it is told once
    const drawn = changed(heron, 'mass: 900 g', 'mass: 900 g, spacer: { measured: 17.9 mm }');
    expect(pageOf(drawn)).toContain('18.2 mm under the ground glass: 17.9 mm as measured, 0.3 mm too thin: add 1 shim');
  });

  test.each([
    // 6.1 − 5.8 = 0.3 too deep: a shim of 0.25 out leaves 0.05
    {
      what: 'too deep',
      text: glassAt('6.1 mm'),
      says: '6.1 mm as measured; the films ask for 5.8 mm: take out 1 shim of 0.25 mm',
    },
    {
      what: 'too near',
      text: glassAt('5.5 mm'),
      says: '5.5 mm as measured; the films ask for 5.8 mm: add 1 shim of 0.25 mm',
    },
    {
      what: 'not measured, and the paper was',
      // 5.5 − 5.8: the same
      text: measuredHeron({ glass: null, paper: '5.5 mm' }),
      says: 'frosted face 5.8 mm behind the seat; the films ask for 5.5 mm: take out 1 shim of 0.25 mm',
    },
  ])('a glass that is $what is mended first, and its spacers wait', ({ text, says }) => {
    const page = pageOf(text);
    expect(page).toContain(says);
    expect(page).toContain(`±0.22 mm allowed; ${MEND_FIRST}`);
    // that of the paper holder is none
    expect(page.split(MEND_FIRST)).toHaveLength(2);
  });

  test('shims of a spacer are not named before the glass is mended', () => {
    const text = pageOf(measuredHeron({ glass: '5.4 mm', spacer: '18.5 mm' }));
    // 24.3 − 5.4 = 18.9
    expect(text).toContain(
      `18.9 mm under the ground glass, 18.2 mm as drawn: 18.5 mm as measured, 0.4 mm too thin, ±0.22 mm allowed; ${MEND_FIRST}`,
    );
  });

  test('a holder on its spacer has no say in where the glass stands', () => {
    // the paper lies 5.8 deep, the glass at 7.8, so that both holders have a spacer
    const deep = changed(heron, 'depth: 5.8 mm, frosted', 'depth: 7.8 mm, measured: 8.1 mm, frosted');
    expect(pageOf(deep)).toContain('frosted face 7.8 mm behind the seat as drawn, 8.1 mm as measured Packing');
  });

  test('of two films it asks for the middle', () => {
    const second =
      '  - { name: film holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 12 mm, mass: 330 g }\nshims:';
    const both = changed(measuredHeron({ glass: '5.8 mm', paper: '5.4 mm' }), '\nshims:', `\n${second}`);
    expect(planned(both).groundGlass.wantedDepth).toBeCloseTo((5.4 + 5.8) / 2, 9);
    expect(planned(both).groundGlass.takeOut).toEqual([0.25]);
  });

  test('with the frosted side to the eye all is told as the lens sees it', () => {
    // 2 (1 − 1/1.52) = 0.68421 nearer than the frosted face
    const eye = changed(heron, 'depth: 5.8 mm, frosted: lens', 'depth: 6.484 mm, measured: 6.884 mm, frosted: eye');
    const { groundGlass } = planned(eye);
    expect(groundGlass.standingDepth).toBeCloseTo(6.884 - 0.68421, 4);
    expect(groundGlass.wantedDepth).toBeCloseTo(5.8, 9);
    // 0.4 too deep: 0.5 out leaves 0.1, and 0.11 may be left
    expect(groundGlass.takeOut).toEqual([0.5]);
    expect(groundGlass.add).toEqual([]);
  });

  test('without anything measured the document has no more than it had', () => {
    expect(Object.keys(planned(heron).groundGlass)).toEqual([
      'effectiveDepth',
      'packing',
      'plies',
      'shims',
      'remainder',
    ]);
  });
});
