import { describe, expect, test } from 'vitest';
import { byFocalLength, type Sorting, sorted, sortings } from '../../src/survey/order.js';
import { randomDrawer } from './random-drawer.js';
import { surveyOf } from './surveying.js';

const survey = surveyOf(randomDrawer(12));
const place = (pair: (typeof survey.pairs)[number]) => survey.pairs.indexOf(pair);

describe.each(Object.keys(sortings) as Sorting[])('sorted by %s', (by) => {
  const pairs = sorted(survey.pairs, by);

  test('every pair is there once', () => expect(new Set(pairs)).toEqual(new Set(survey.pairs)));

  test('the figure never falls, what has none stands last, and what is alike keeps its order', () => {
    pairs.slice(1).forEach((pair, i) => {
      const before = pairs[i] ?? pair;
      const [a, b] = [sortings[by](before), sortings[by](pair)];
      if (a === b) expect(place(before)).toBeLessThan(place(pair));
      else if (b !== null) expect(a !== null && a < b).toBe(true);
    });
  });
});

test('by reach the nearest comes first, and by coverage what covers at infinity before what never does', () => {
  const reached = sorted(survey.pairs, 'reach').flatMap(({ reachable }) => reachable ?? []);
  expect(reached).toEqual([...reached].sort((a, b) => b - a));
  const states = sorted(survey.pairs, 'covers').map(({ state }) => state);
  expect(states[0]).toBe('covers');
  expect(states.lastIndexOf('covers')).toBeLessThan(states.indexOf('covers-from'));
  expect(states.lastIndexOf('covers-from')).toBeLessThan(states.indexOf('never-covers'));
  expect(states.lastIndexOf('never-covers')).toBeLessThan(states.indexOf('coverage-unknown'));
});

test('by focal length lens after lens, the shortest first', () => {
  const lengths = new Map(survey.lenses.map(({ name, focalLength }) => [name, focalLength]));
  const order = byFocalLength(survey).map(({ lens }) => lengths.get(lens) ?? 0);
  expect(order).toEqual([...order].sort((a, b) => a - b));
});
