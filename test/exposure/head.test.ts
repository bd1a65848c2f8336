import { expect, test } from 'vitest';
import { magnificationOfHead } from '../../src/exposure/head.js';

test('a head of 250 mm that is 62.5 mm on the film stands at 1:4', () => {
  // [common practice, no source]: size on the film over size
  expect(magnificationOfHead(62.5)).toBe(0.25);
  expect(magnificationOfHead(50, 200)).toBe(0.25);
});
