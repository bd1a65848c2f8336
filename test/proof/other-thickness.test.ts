import { describe, expect, test } from 'vitest';
import type { FlatPart } from '../../src/model/part.js';
import { otherThickness } from '../../src/proof/other-thickness.js';
import { heron } from '../camera/worked.js';

const { design, build } = heron;
const flat = (id: string): FlatPart => {
  const part = build.parts.find((each) => each.id === id);
  if (part?.kind !== 'flat') throw new Error(`${id} is not cut from sheet`);
  return part;
};
const told = (id: string, thickness: number) => otherThickness(design, build, flat(id), thickness);

describe('other-thickness: a spare part from another sheet than its neighbours', () => {
  test('a thinner box top is loose in the fingers of panel and sides', () => {
    // camera.md section 12: F3 has fingers to F1 and F2, and nothing else is glued to it in the register
    const [finding, ...others] = told('F3', 3.9);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rule: 'other-thickness', level: 'warning', value: 3.9, limit: 4.05 });
    expect(finding?.message).toContain('F1, F2L, F2R');
    expect(finding?.message).toContain('0.15 mm of play');
    expect(finding?.hint).toContain('paper');
  });

  test('two readings of one sheet are no matter: a caliper on wood is good to 0.02', () => {
    expect(told('F3', 4.07)).toEqual([]);
    expect(told('F3', 4.03)).toEqual([]);
    expect(told('F3', 4.08)).toHaveLength(1);
  });

  test('what is thicker by more than 0.3 does not enter: that is thickness-spread’s limit', () => {
    expect(told('F3', 4.34)[0]).toMatchObject({ level: 'warning' });
    expect(told('F3', 4.36)[0]).toMatchObject({ level: 'error' });
    // a mere plate that nothing enters is only thicker
    expect(told('G3', 6).map(({ level }) => level)).not.toContain('error');
  });

  test('a ply of the spacer moves the glass of its holder and of no other', () => {
    // three plies SP2 and the last one, SP2T, lie under the glass: 3 × 0.15
    const register = told('SP2', 3.9).slice(1);
    expect(register).toHaveLength(1);
    expect(register[0]?.value).toBeCloseTo(-0.45, 9);
    expect(register[0]?.limit).toBeCloseTo(0.22006, 5);
    expect(register[0]?.message).toContain('processing holder');
    expect(register[0]?.message).toContain('ahead of');
  });

  test('the front of the glass frame moves the glass of every holder', () => {
    const register = told('G1', 4.25).slice(1);
    expect(register.map(({ value }) => value)).toEqual([expect.closeTo(0.2, 9), expect.closeTo(0.2, 9)]);
    expect(register.every(({ message }) => message.includes('farther behind'))).toBe(true);
  });

  test('the back plate carries glass and film alike, and says nothing of the register', () =>
    expect(told('B1', 3.9)).toHaveLength(1));
});
