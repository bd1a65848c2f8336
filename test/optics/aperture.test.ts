import { expect, test } from 'vitest';
import {
  enlargementOfStop,
  entrancePupil,
  fNumberOfPupil,
  fNumberOfUniformSystem,
  holeOfPupil,
  pinhole,
} from '../../src/optics/aperture.js';
import { apertureDials } from '../../src/standards/aperture-numbers.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

const exactStop = (mark: number) =>
  apertureDials.wholeStops.marks.find((one) => one.mark === mark)?.exact ?? Number.NaN;

test.each([
  [100, 4, 25, 1e-9], // V8.01 [verified: S70b], exact
  [200, 4, 50, 1e-9],
  [300, 9, 33.333, 1e-3], // V8.03 [verified: S70b formula]
  [300, 16, 18.75, 1e-3],
  [300, 64, 4.6875, 1e-3],
  [300, 22, 13.636, 1e-3], // V8.04 [verified: S70b formula], the number that is marked
  [300, exactStop(22), 13.258, 1e-3], // V8.04, the exact stop
  [240, exactStop(11), 21.213, 1e-3], // V8.05 [verified: S70b formula]
  [240, 11, 21.818, 1e-3],
])('%d mm at f/%d: a pupil of %d', (f, N, pupil, tolerance) => within(entrancePupil(f, N), pupil, tolerance));

test.each([
  [2, 4],
  [1, 8],
])('8 in lens, opening of %d in: f/%d', (opening, N) => {
  within(fNumberOfPupil(8 * 25.4, opening * 25.4), N, 1e-9); // V8.02 [verified: S7a], exact
});

test.each([
  [1, 4],
  [4, 8],
  [8, 11.31371],
  [16, 16],
])('Uniform System %d: f/%d', (number, N) => {
  within(fNumberOfUniformSystem(number), N, 5e-6); // V8.06 [verified: S70a, S70c]; f/11 exact, the mark's 11 gives 7.5625
});

test('a stop that the front glass enlarges 1.08 times is cut smaller', () => {
  // V8.07 [verified: S69, S70b that pupil and hole differ]; 1.08 is an invented example, 1e-3
  within(holeOfPupil(entrancePupil(300, 16), 1.08), 17.361, 1e-3);
});

test('one measured hole scales all stops of a lens', () => {
  // f/(N k) [common practice, no source]: 300 mm, f/9 and a hole of 30.864 at full aperture make k the 1.08 of V8.07
  const enlargement = enlargementOfStop(300, 9, 30.864);
  within(enlargement, 1.08, 1e-4);
  within(holeOfPupil(entrancePupil(300, 16), enlargement), 17.361, 1e-3); // V8.07
});

test.each([
  { distance: 100, k: 2.44, diameter: 0.3663, N: 273 }, // V8.08 [verified: S71, prints .366]
  { distance: 150, k: 1.9 ** 2, diameter: 0.5457, N: 274.9 }, // V8.09 [verified: S71b formula]
])('a pinhole for $distance mm', ({ distance, k, diameter, N }) => {
  within(pinhole(distance, k), diameter, 1e-3);
  // to the digits that are printed
  within(distance / pinhole(distance, k), N, N === 273 ? 0.5 : 0.05);
});
