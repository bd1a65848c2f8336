import { describe, expect, test } from 'vitest';
import type { BenchReadings } from '../../src/model/lens-bench.js';
import { benchA, benchB, benchWith, measured, reading, readingsOf } from './bench.js';

const told = (bench: BenchReadings, at: readonly number[] = []): readonly string[] =>
  measured(bench, { at }).remarks.map(({ message, hint }) => `${message} ${hint}`);

describe('what was stated against what the readings scatter (chi-square test)', () => {
  const stating = (distanceDoubt: number) => benchWith(benchB.map((one) => ({ ...one, distanceDoubt })));
  // Bench B leaves 6 · 0.2977² = 0.53175 mm² (V7.08, common practice, no source: constructed); chi square for 6 degrees of
  // freedom is 1.237 at 2.5 % and 14.449 at 97.5 % (from memory: NIST/SEMATECH e-Handbook, 1.3.6.7.4)
  const most = Math.sqrt(0.53175 / 1.237);
  const least = Math.sqrt(0.53175 / 14.449);
  test('says nothing between', () => {
    expect(told(stating(least * 1.001))).toEqual([]);
    expect(told(stating(most * 0.999))).toEqual([]);
  });
  test('says so beyond, either way', () => {
    expect(told(stating(least * 0.999))).toEqual([expect.stringMatching(/scatter 1\.6 times as much.*chi-square/)]);
    expect(told(stating(most * 1.001))).toEqual([expect.stringMatching(/scatter only 0\.5 times.*chi-square/)]);
  });
});

describe('a magnification far outside the readings', () => {
  // from 0.1 to 1, half of that span beyond: 1.45
  test('is told, and one just within is not', () => {
    expect(told(benchWith(benchB), [1.44])).toEqual([]);
    expect(told(benchWith(benchB), [1.46])).toEqual([expect.stringMatching(/1\.46:1 lies far outside.*1:10 to 1:1/)]);
  });
  test('is infinity itself, where all readings are near', () => {
    const near = benchWith(benchB.slice(3));
    expect(told(near)).toEqual([
      expect.stringMatching(/flange distance is the line carried from 1:2\.5 on to infinity/),
    ]);
    expect(told(near, [0])).toEqual([expect.stringMatching(/infinity lies far outside/)]);
  });
});

test('a ratio that was asked for the wrong way round is asked about', () => {
  const hints = measured(benchWith(benchB), { at: [4] }).remarks.map(({ hint }) => hint);
  expect(hints).toEqual([expect.stringMatching(/^Was 1:4 meant\? 4 is an image 4 times as long/)]);
});

test('readings that lie on the line exactly were not read', () =>
  expect(told(benchWith(benchA))).toEqual([expect.stringMatching(/finer than a rule is read/)]));

test('readings that lie off the line are not said to lie on it, however sure one of them was stated to be', () => {
  const stated = benchB.map((one, i) => ({ ...one, distanceDoubt: i === 4 ? 1e-5 : 0.3 }));
  const remarks = told(benchWith(stated));
  expect(remarks).toEqual([expect.stringMatching(/^The line goes through reading 5 whatever it says/)]);
});

test('a focal length of some inches is asked about', () =>
  expect(told(benchWith(benchB.map((one) => ({ ...one, distance: one.distance / 25.4 }))))).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/9\.4 mm.*meant in inches, the focal length is 239\.4 mm.*9 1\/8 in/),
    ]),
  ));

test('a line that is loose is told', () => {
  const loose = readingsOf([
    [0.4, 290],
    [0.5, 316],
    [0.6, 337],
    [0.55, 325],
  ]);
  expect(told(benchWith(loose))).toEqual(
    expect.arrayContaining([expect.stringMatching(/no better than a figure on a barrel/)]),
  );
});

test('a reading that stands alone is told', () => {
  const crowd = [0.1, 0.11, 0.12, 0.13, 0.14].map((m, i) => reading(m, 196 + 214 * m + (i % 2 === 0 ? 0.1 : -0.1)));
  expect(told(benchWith([...crowd, reading(1, 410)]))).toEqual([expect.stringMatching(/^Reading 6 stands alone/)]);
});

test('an object that stands elsewhere than its magnification says is told', () => {
  // u = f(1 + 1/m) = 239.4 · 3 = 718 at 1:2 (verified: S1 formula)
  const with_ = (objectDistance: number) =>
    benchWith(benchB.map((one, i) => (i === 4 ? { ...one, objectDistance } : one)));
  expect(told(with_(718 * 0.81))).toEqual([]);
  expect(told(with_(718 * 0.79))).toEqual([expect.stringMatching(/In reading 5 the object stands/)]);
});

test('an outlier within what was stated of it may be chance', () => {
  const stated = benchB.map((one, i) => ({ ...one, distance: one.distance + (i === 3 ? 3 : 0), distanceDoubt: 2 }));
  expect(told(benchWith(stated))).toEqual(
    expect.arrayContaining([expect.stringMatching(/^Reading 4.*no slip at all/)]),
  );
});

test('what was taken for granted is told', () => {
  expect(told(benchWith(benchB, { coverage: [{ diameter: 400, magnification: 1 }] }))).toEqual([
    expect.stringMatching(/pupil magnification of 1/),
  ]);
  expect(told(benchWith(benchB, { pupils: { front: [20, 20.2], rear: [] } }))).toEqual([
    expect.stringMatching(/One pupil alone/),
  ]);
  expect(
    told(benchWith(benchB, { pupils: { front: [20, 20.2], rear: [] }, hole: { diameters: [19], enlargement: 1.2 } })),
  ).toEqual(expect.arrayContaining([expect.stringMatching(/Disc over hole is 1\.06, and you gave/)]));
});
