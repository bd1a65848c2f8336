import { describe, expect, test } from 'vitest';
import { apertureDialsInTurn, engravedNumberHoldsFrom } from '../../src/standards/aperture-numbers.js';
import { incidentLight, reflectedLight } from '../../src/standards/meter-constants.js';
import { paperPoints, rangeByFilter } from '../../src/standards/paper.js';
import { publishedExponents } from '../../src/standards/reciprocity-exponents.js';
import { shutterTimes } from '../../src/standards/shutter-times.js';

test('what meters are calibrated to', () => {
  // V5.12 K: [verified: S39]; C ranges [from memory: ISO 2720:1974 as summarised in the article Light meter]
  expect([reflectedLight.constant.value, reflectedLight.other.value]).toEqual([12.5, 14]);
  expect(reflectedLight.range.value).toEqual([10.6, 13.4]);
  expect([incidentLight.flat.value, incidentLight.dome.value]).toEqual([
    [240, 400],
    [320, 540],
  ]);
  expect(incidentLight.constant.value).toBe(250); // V5.06 [verified: S36d]
});

describe('films of one maker', () => {
  /** V5.60 [verified: S54], as listed there. */
  const listed = [1.43, 1.33, 1.26, 1.41, 1.33, 1.26, 1.31, 1.31, 1.25, 1.26, 1.3];

  test('the published exponents lie from the least to the greatest', () =>
    expect(publishedExponents.value).toEqual([Math.min(...listed), Math.max(...listed)]));
});

describe('printing paper', () => {
  test('is measured at a highlight, a middle and a shadow', () => {
    // V5.63 [verified: S57a-c]
    expect(paperPoints.value).toEqual({ highlight: 0.04, speed: 0.6, shadowShare: 0.9 });
  });

  test('of variable contrast holds less the harder the filter', () => {
    // V5.66 [verified: S57d]
    const { value } = rangeByFilter;
    const grades = ['00', '0', '1', '2', '3', '4', '5'] as const;
    expect(grades.map((grade) => value[grade])).toEqual([180, 160, 130, 110, 90, 60, 40]);
  });
});

test('each table says where it is from, or that no source is known', () => {
  const tables = [
    ...apertureDialsInTurn,
    engravedNumberHoldsFrom,
    ...Object.values(reflectedLight),
    ...Object.values(incidentLight),
    paperPoints,
    rangeByFilter,
    publishedExponents,
    shutterTimes,
  ];
  for (const { source } of tables) expect(source).toMatch(/\w/);
});
