import { describe, expect, test } from 'vitest';
import { claim, derived, narrowest, widest } from '../../src/camera/claim.js';
import { constant, type Figure, formula, keyed, reckoned, told } from '../../src/camera/figure.js';

const ply = keyed('t', 'thickness of the plywood', 'plywood.thickness', 4);
const inside = keyed('W', 'inside', 'format', 100);

const formulaOf = (figure: Figure) => (figure.from.kind === 'formula' ? figure.from.formula() : null);

test('a figure is what its formula says, put in by what stands in it', () => {
  const outside = reckoned('W_o', 'outside', formula`${inside} + 2 ${ply}`);
  expect(outside.value).toBe(108);
  expect(formulaOf(outside)?.inputs).toEqual([inside, ply]);
});

test('one place in the source serves many cameras', () => {
  const doubled = (figure: Figure) => formula`2 ${figure}`.value;
  expect([doubled(ply), doubled(inside), doubled(ply)]).toEqual([8, 200, 8]);
});

describe('a law with a home elsewhere', () => {
  test('is believed where the formula gives the same', () => {
    const sum = told('s', 'sum', 104, () => formula`${inside} + ${ply}`);
    expect(formulaOf(sum)?.value).toBe(104);
  });

  test('is a mistake of ours where it does not', () => {
    const sum = told('s', 'sum', 105, () => formula`${inside} + ${ply}`);
    expect(() => formulaOf(sum)).toThrow(/the formula of sum gives 104 and not 105/);
  });

  test('costs nothing until somebody asks', () => {
    const sum = told('s', 'sum', 104, () => {
      throw new Error('asked');
    });
    expect(sum.value).toBe(104);
  });
});

describe('claims', () => {
  const claims = [
    claim('the first', formula`${ply}`),
    claim('the second', formula`2 ${ply}`),
    claim('as much', formula`8`),
  ] as const;

  test('the largest governs, of equals the first one named', () => {
    expect(widest('w', 'width', claims)).toMatchObject({ value: 8, because: 'the second', symbol: 'w' });
  });

  test('the smallest governs where something must come so near', () => {
    expect(narrowest('z', 'place', claims)).toMatchObject({ value: 4, because: 'the first' });
  });

  test('what follows from others has one claim', () => {
    const twice = derived('d', 'double', 'two plies', formula`2 ${ply}`);
    expect(twice).toMatchObject({ value: 8, because: 'two plies', claims: [{ because: 'two plies', value: 8 }] });
  });
});

test('a constant tells its source', () => {
  expect(constant('g', 'margin', 2).from).toEqual({ kind: 'constant', source: 'common practice, no source' });
});
