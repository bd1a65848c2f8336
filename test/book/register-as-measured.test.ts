import { describe, expect, test } from 'vitest';
import { settingTheRegister } from '../../src/book/register.js';
import { chaptersAround, registerOf, shimsToSpare } from '../../src/book-use.js';
import { stepsOf } from '../../src/camera/objects.js';
import { type Planned, planCamera, planOf } from '../../src/pipeline.js';
import { registerBudgets } from '../../src/proof/register.js';
import { changed, designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';
import { measuredHeron } from '../designs/measured-heron.js';
import { rowsOf, textOf } from './text-rows.js';

/*
 * camera.md section 4: register error = T_g (+ spacer) − T, a spacer is T − T_g thick, a stack may be out by half of the
 * tolerance of 0.22006. Heron is drawn with the glass at 5.8, films at 5.8 and 24, a spacer of 18.2; it was measured with
 * the glass at 5.7, films at 5.6 and 24.3: the spacer wants to be 18.6. A window of 3 mm, n = 1.52, lets the film of
 * the second holder be found 1.026 deeper.
 */
const planned = (text: string): Planned => planCamera(designOf(text));
const given = (one: Planned) => {
  const register = registerBudgets(one.design, one.build);
  return { ...registerOf(one, null), budgets: register };
};
const chapter = (text: string) => settingTheRegister(given(planned(text))).blocks;
const said = (text: string) => textOf(chapter(text));
const stepsSaid = (text: string, step: string) =>
  stepsOf(planned(text).camera.objects)
    .filter((one) => one.step === step)
    .flatMap(({ acts = [], checks = [] }) => [...acts, ...checks])
    .join(' ');

/** Of the table to fill in, the figures of each row: as drawn, should be, measured. */
function filledIn(text: string): ReadonlyMap<string, readonly number[]> {
  const rows = rowsOf(chapter(text));
  const own = rows.slice(
    rows.findIndex(([first]) => first === 'Your register'),
    rows.findIndex(([first]) => first === 'Proof by a picture'),
  );
  const found = new Map<string, readonly number[]>();
  let name = '';
  let figures: readonly number[] = [];
  for (const [first = '', ...others] of own) {
    const numbers = others.map(Number);
    // a name runs on over lines that hold nothing else
    if (others.length > 0) {
      [name, figures] = [first, numbers];
    } else name = `${name} ${first}`;
    found.set(name, figures);
  }
  return found;
}

describe('the register in the book of a camera that stands', () => {
  test('should be is what the camera as it stands asks for, drawn and measured stand beside it', () => {
    const rows = filledIn(measuredHeron({ spacer: '18.9 mm' }));
    expect(rows.get('glass in its frame')).toEqual([5.8, 5.6, 5.7]);
    expect(rows.get('glass frame, plies and shims')).toEqual([5.8, 5.6, 5.7]);
    // 24.3 − 5.7; drawn 24 − 5.8
    expect(rows.get('spacer for the processing holder, plies and shims')).toEqual([18.2, 18.6, 18.9]);
    expect(rows.get('paper holder, film')).toEqual([5.8, 5.6, 5.6]);
    expect(rows.get('processing holder, film')).toEqual([25.03, 25.33, 25.33]);
    // the film as it stands, whatever the glass
    expect(rows.get('glass on the spacer for the processing holder')).toEqual([24, 24.3]);
  });

  test('the same where nobody measured the spacer', () => {
    const rows = filledIn(measuredHeron({}));
    expect(rows.get('spacer for the processing holder, plies and shims')).toEqual([18.2, 18.6]);
    expect(rows.get('glass on the spacer for the processing holder')).toEqual([24, 24.3]);
  });

  test('a holder on its spacer stands as deep as the glass that was measured', () => {
    // the paper lies 5.8 deep, the glass at 8.1 instead of 7.8: 2.3 for 2
    const deep = changed(heron, 'depth: 5.8 mm, frosted', 'depth: 7.8 mm, measured: 8.1 mm, frosted');
    expect(filledIn(deep).get('paper holder on its spacer, film')).toEqual([7.8, 8.1]);
    expect(filledIn(deep).get('glass in its frame')).toEqual([7.8, 8.1, 8.1]);
  });

  test('“as drawn” stands over no value that was measured', () => {
    const text = said(measuredHeron({ spacer: '18.9 mm' }));
    expect(text).not.toContain('unmeasured');
    expect(text).not.toMatch(/Glass less film, as drawn/);
    const [paper, processing] = given(planned(measuredHeron({ spacer: '18.9 mm' }))).holders;
    expect(paper).toMatchObject({ filmDepth: 5.8, measured: 5.6 });
    expect(processing).toMatchObject({
      filmDepth: 24,
      measured: expect.closeTo(24.3, 9),
      spacer: { under: 'glass', measured: 18.9 },
    });
    // and where nothing was, it is said as before
    expect(said(heron)).toContain('unmeasured');
  });

  test('the shim tables aim at what stands, and the shims that are exchanged are those of the plan', () => {
    const own = planned(measuredHeron({ spacer: '18.9 mm' }));
    const { stacks } = given(own);
    expect(stacks[0]?.wanted).toBeCloseTo(5.6, 9);
    expect(stacks[1]?.wanted).toBeCloseTo(18.6, 9);
    // 4.05 read as drawn lacks 1.55: three of 0.5 leave 0.05
    expect(stacks[0]?.rows.find(({ reading }) => Math.abs(reading - 4.05) < 1e-9)?.shims).toEqual([0.5, 0.5, 0.5]);
    const text = said(measuredHeron({ spacer: '18.9 mm' }));
    expect(text).toContain('with its shims 18.6 mm as glass and film stand, 18.2 mm as drawn.');
    expect(text).toContain('mm: take out 1 × 0.5 and put in 1 × 0.25, and measure it again.');
    expect(planOf(own).spacers[1]).toMatchObject({ add: [0.25], takeOut: [0.5] });
    // 0.1 from the paper, and 0.11 may be left
    expect(text).toContain('shims that are in it, 5.7 mm: nothing need be changed.');
    expect(said(heron)).not.toContain('as glass and film stand');
  });

  test('a glass that is off comes before the spacers, whose shims are not named till then', () => {
    // 5.6 − 5.4 = 0.2: 0.25 in leaves 0.05
    const text = said(measuredHeron({ glass: '5.4 mm', spacer: '18.5 mm' }));
    expect(text).toContain('5.4 mm: put in 1 × 0.25, and measure it again.');
    expect(text).toContain('Mend the glass first, measure it again');
    expect(text).not.toContain('18.5 mm:');
    const steps = stepsSaid(measuredHeron({ glass: '5.4 mm', spacer: '18.5 mm' }), 'spacers');
    expect(steps).toContain('Mend the glass first, measure it again, then ask for this spacer again');
    expect(steps).not.toContain('put 1 ×');
    expect(said(measuredHeron({}))).not.toContain('Mend the glass');
  });

  test('the steps tell the same', () => {
    const glued = stepsSaid(measuredHeron({ spacer: '18.9 mm' }), 'spacers');
    expect(glued).toContain('makes up 18.6 mm as glass and film stand, 18.2 mm as drawn.');
    expect(glued).toContain('it was measured at 18.9 mm. Take 1 × 0.5 mm out and put 1 × 0.25 mm in');
    expect(glued).toContain('it is 18.6 mm thick at all four corners');
    // 18.6 − 4 × 4.05 = 2.4
    const toGlue = stepsSaid(measuredHeron({}), 'spacers');
    expect(toGlue).toContain('5 × 0.5 mm, as reckoned from what was measured');
    const frame = stepsSaid(measuredHeron({}), 'glass-frame');
    expect(frame).toContain(
      'drawn 5.8 mm behind the seat and measured at 5.7 mm; the films, as they stand, want it at 5.6 mm. Nothing',
    );
    expect(frame).toContain('to the ledge it is 5.6 mm');
  });

  test('a spacer is labelled with what it should be, and what is put to it is on the list of what to buy', () => {
    const own = planned(measuredHeron({ spacer: '18.9 mm' }));
    const { after } = chaptersAround({ planned: own, plan: planOf(own), proof: null, since: null, pouring: [] });
    const use = after.find(({ title }) => title === 'Using the camera');
    expect(textOf(use?.blocks ?? []).replace(/\s+/g, ' ')).toContain('(SP2, 18.6 mm)');
    const spare = new Map(shimsToSpare(own).map(({ thickness, count }) => [thickness, count]));
    // one of 0.25 is drawn under the glass, one goes into the spacer
    // and one more to spare
    expect(spare.get(0.25)).toBe(2);
  });
});
