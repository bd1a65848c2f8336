import { expect, test } from 'vitest';
import { nearestWord } from '../../src/design/nearest-word.js';

const keys = ['name', 'format', 'lens', 'flangeDistance', 'focalLength', 'kerf', 'groundGlass'];

test('a slip of the pen is known again', () => {
  expect(nearestWord('flangeDistanse', keys)).toBe('flangeDistance');
  expect(nearestWord('nmae', keys)).toBe('name');
  expect(nearestWord('ground-glass', keys)).toBe('groundGlass');
  expect(nearestWord('KERF', keys)).toBe('kerf');
});

test('of words as near, one that begins with what was typed', () => {
  expect(nearestWord('F2', ['F1', 'F2L', 'F2R'])).toBe('F2L');
  expect(nearestWord('F', ['x', 'F1'])).toBe('F1');
});

test('another word is not', () => {
  expect(nearestWord('shutter', keys)).toBeUndefined();
  expect(nearestWord('x', keys)).toBeUndefined();
  expect(nearestWord('x'.repeat(10_000), keys)).toBeUndefined();
  expect(nearestWord('name', [])).toBeUndefined();
});
