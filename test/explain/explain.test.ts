import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cameAbout, contextOf, explain } from '../../src/explain/explain.js';
import { entriesOf } from '../../src/explain/plan-tree.js';
import { planDesign } from '../../src/index.js';
import type { ExplainedInput, Explanation, FormulaText } from '../../src/model/explanation.js';
import { asWritten } from '../../src/units/print.js';
import { designOf } from '../design/reading.js';
import { keptDesigns } from '../designs/kept-design.js';
import { randomDesign } from '../random-design.js';
import { evaluate } from './evaluate.js';

const textOf = (name: string) => readFileSync(join(import.meta.dirname, `../../designs/${name}.yaml`), 'utf8');
const heron = textOf('heron');

/** Every explanation of a design, but for what would change the figures. */
function all(text: string): readonly Omit<Explanation, 'changes' | 'otherChanges'>[] {
  const design = designOf(text);
  const entries = entriesOf(design);
  const context = contextOf(text, design, entries);
  return entries.map((entry) => cameAbout(entry, context));
}

/** The numbers of a document under their names: `holders[0].seat.infinity`. */
function numbersIn(node: unknown, path = ''): readonly (readonly [string, number])[] {
  if (typeof node === 'number') return [[path, node]];
  if (Array.isArray(node)) return node.flatMap((own, i) => numbersIn(own, `${path}[${i}]`));
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, own]) => numbersIn(own, path === '' ? key : `${path}.${key}`));
}

function figuresOfPlan(text: string): ReadonlyMap<string, number> {
  const { optics, slide, holders, groundGlass, spacers, tailboard, camera } = planDesign(designOf(text)).plan;
  return new Map(numbersIn({ optics, slide, holders, groundGlass, spacers, tailboard, camera }));
}

/** Complains where a formula, reckoned anew from what is told of its inputs, does not give the value. */
function wrong(value: number, formula: FormulaText, inputs: readonly ExplainedInput[], of: string): readonly string[] {
  const symbols = new Map(inputs.map((input) => [input.symbol, input.value]));
  if (symbols.size < inputs.length) return [`${of}: two inputs share a symbol in ${formula.symbols}`];
  const exact = evaluate(formula.symbols, symbols);
  const printed = evaluate(formula.numbers);
  // numbers are printed to five digits that count, and differences of them lose some
  const rounding = 1e-4 * Math.max(1, Math.abs(value), ...inputs.map((input) => Math.abs(input.value)));
  return [
    ...(Math.abs(exact - value) <= 1e-9 * Math.max(1, Math.abs(value))
      ? []
      : [`${of} = ${value}, but ${formula.symbols} gives ${exact}`]),
    ...(Math.abs(printed - value) <= rounding ? [] : [`${of} = ${value}, but ${formula.numbers} gives ${printed}`]),
    ...inputs.flatMap((input) =>
      input.formula ? wrong(input.value, input.formula, input.inputs, `${of}: ${input.symbol}`) : [],
    ),
  ];
}

/** All complaints about the formulas of a design. */
const wrongIn = (text: string): readonly string[] =>
  all(text).flatMap(({ figure, value, decidedBy, formula, inputs, behind }) => {
    const number = decidedBy ?? value;
    return [
      ...(formula && typeof number === 'number' ? wrong(number, formula, inputs, figure) : []),
      ...behind.flatMap((claim) => wrong(claim.value, claim.formula, claim.inputs, `${figure}: ${claim.because}`)),
    ];
  });

describe.each(keptDesigns)('%s', (name) => {
  const text = textOf(name);

  test('every number of the plan is explained, with the value that it has there', () => {
    const explained = new Map(all(text).map((explanation) => [explanation.figure, explanation]));
    const figures = figuresOfPlan(text);
    expect(figures.size).toBeGreaterThan(50);
    for (const [path, value] of figures) expect(explained.get(path)?.value, path).toBeCloseTo(value, 6);
    const exactly = [...figures].filter(([path, value]) => {
      const own = explained.get(path)?.value;
      // the plan itself is rounded to a millionth, small numbers to a billionth
      return !(typeof own === 'number' && Math.abs(own - value) <= (Math.abs(value) < 10 ? 5.1e-10 : 5.1e-7));
    });
    expect(exactly).toEqual([]);
  });

  test('sizes of parts are explained too, as the plan has them', () => {
    const explained = new Map(all(text).map(({ figure, value }) => [figure, value]));
    const parts = planDesign(designOf(text)).plan.parts;
    expect(parts.length).toBeGreaterThan(30);
    for (const { id, width, height, thickness } of parts) {
      expect(explained.get(`parts.${id}.width`), id).toBeCloseTo(width, 6);
      expect(explained.get(`parts.${id}.height`), id).toBeCloseTo(height, 6);
      expect(explained.get(`parts.${id}.thickness`), id).toBeCloseTo(thickness, 6);
    }
  });

  test('each formula gives its figure, reckoned from the text', () => expect(wrongIn(text)).toEqual([]));

  test('each number comes from a key, from a formula, or says where else from', () => {
    const silent = all(text).filter(
      ({ value, key, formula, source }) => value !== null && !key && !formula && source === '',
    );
    expect(silent).toEqual([]);
  });
});

test('formulas give their figures in cameras drawn at random', () => {
  fc.assert(
    fc.property(randomDesign, (text) => {
      expect(wrongIn(text)).toEqual([]);
    }),
    { seed: 7, numRuns: 40 },
  );
});

describe('Heron, as it is worked out in the description of the camera', () => {
  const known = new Map<string, Explanation>();
  const of = (figure: string): Explanation => {
    const before = known.get(figure);
    if (before) return before;
    const explained = explain(heron, designOf(heron), figure);
    if (explained.kind !== 'explanation') throw new Error(`${figure}: ${explained.kind}`);
    known.set(figure, explained.explanation);
    return explained.explanation;
  };

  test('rear box: the image governs, the lens board is next', () => {
    const { formula, governs, behind, value } = of('slide.rearBoxInside');
    expect(value).toBeCloseTo(188.15, 9); // description of the camera, two worked cameras [common practice, no source]
    expect(formula).toEqual({ symbols: 'i_h + 2 (g + e + r)', numbers: '171.4 + 2 × (2 + 0.3 + 6.075)' });
    expect(governs).toMatch(/long side of the image/);
    const [board, ...others] = behind;
    expect(others).toEqual([]);
    expect(board?.because).toMatch(/lens board/);
    // clamp: bore 58.2, walls 2·8, bolt circle + 14, flange + 12: 100.2; opening + 4; board + 2·14; + 28.6 − 4·4.05 − 2·1.5
    expect(board?.value).toBeCloseTo(141.6, 9);
    expect(board?.distance).toBeCloseTo(188.15 - 141.6, 9);
  });

  test('every input leads on: to a key, to a figure of the plan, to its own formula, or to its source', () => {
    const { inputs } = of('slide.rearBoxInside');
    expect(inputs.map(({ symbol, key, formula, source }) => [symbol, key?.path ?? formula?.symbols ?? source])).toEqual(
      [
        ['i_h', 'format'],
        ['g', 'common practice, no source'],
        ['e', 'common practice, no source'],
        ['r', 'max(6, 1.5 t)'],
      ],
    );
    expect(of('slide.rearBoxOutside').inputs[0]).toMatchObject({ symbol: 'W_ri', figure: 'slide.rearBoxInside' });
  });

  test('what changes it: the camera planned anew', () => {
    const { changes } = of('slide.rearBoxInside');
    const change = (path: string) => changes.find((own) => own.path === path);
    expect(change('format')).toMatchObject({ what: 'long side of the image', step: 1 });
    expect(change('format')?.more).toBeCloseTo(1, 9);
    // r = max(6, 1.5 t) on both sides: 3 for each mm more, and less only down to r = 6
    expect(change('plywood.thickness')?.more).toBeCloseTo(0.3, 9);
    expect(change('plywood.thickness')?.less).toBeCloseTo(-0.15, 9);
  });

  test('a millimetre of the thickest holder takes two of reach, as the conditions of the slide say', () => {
    const { changes, otherChanges } = of('slide.reachableMagnification');
    expect(otherChanges).toBeGreaterThan(0); // pastInfinity, the ply: four are told
    const more = changes.find(({ path }) => path === 'holders[1].filmDepth')?.more ?? 0;
    expect(more * 210).toBeCloseTo(-2, 9); // description of the camera, the slide [derived]
  });

  test('a key written as it is told gives what is told: 1:2.44 is not quite 0.41', () => {
    const text = heron;
    const travel = (written: string) =>
      planDesign(designOf(text.replace('nearest: 1:2.5', `nearest: ${written}`))).plan.slide.travel;
    const { changes } = of('slide.travel');
    const nearest = changes.find(({ path }) => path === 'focus.nearest');
    if (nearest === undefined) throw new Error('the nearest focus moves the travel');
    const { value, step, more, less } = nearest;
    expect([asWritten(value + step, 'magnification'), asWritten(value - step, 'magnification')]).toEqual([
      '1:2.44',
      '1:2.57',
    ]);
    expect(more).toBeCloseTo(travel('1:2.44') - travel('1:2.5'), 5);
    expect(less).toBeCloseTo(travel('1:2.57') - travel('1:2.5'), 5);
    // 210 (1/2.44 − 1/2.5): two and not the 2.1 of a hundredth
    expect(more).toBeCloseTo(2.0656, 4);
  });

  test('a default that moves the figure is told as one', () => {
    const { changes } = of('slide.frontBoxInside');
    expect(changes.find(({ path }) => path === 'workshop.slideClearance')).toMatchObject({ typed: false, value: 1.5 });
    expect(changes.find(({ path }) => path === 'plywood.thickness')).toMatchObject({ typed: true });
  });

  test('a word is explained by the figure that decides', () => {
    expect(of('slide.passesInsideRearBox')).toMatchObject({ value: true, symbol: 'a_R' });
    expect(of('slide.passesInsideRearBox').decidedBy).toBeCloseTo(188.15 / 2 - 50.1 - 3, 9);
    expect(of('spacers[1].under')).toMatchObject({ value: 'glass' });
    expect(of('spacers[1].under').decidedBy).toBeCloseTo(18.2, 9);
  });
});

test('a nearest focus that was written as a distance is explained from it', () => {
  const text = textOf('wren');
  const explained = explain(text, designOf(text), 'optics.nearest.magnification');
  if (explained.kind !== 'explanation') throw new Error(explained.kind);
  const { formula, value } = explained.explanation;
  expect(formula).toEqual({ symbols: 'f / (u − f)', numbers: '135 / (810 − 135)' });
  expect(value).toBeCloseTo(0.2, 12); // 135/675
});

test('a figure that there is not says why', () => {
  const text = textOf('curlew');
  const explained = explain(text, designOf(text), 'optics.imageCircle.infinity');
  expect(explained).toMatchObject({
    kind: 'explanation',
    explanation: { value: null, because: expect.stringContaining('lens.coverage'), changes: [] },
  });
});

test('without a name all figures are listed, none twice, parts apart', () => {
  const explained = explain(heron, designOf(heron));
  if (explained.kind !== 'list') throw new Error(explained.kind);
  const names = explained.list.figures.map(({ figure }) => figure);
  expect(new Set(names).size).toBe(names.length);
  for (const path of figuresOfPlan(heron).keys()) expect(names).toContain(path);
  expect(names.filter((name) => name.startsWith('parts.'))).toEqual([]);
});
