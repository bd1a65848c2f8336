import { describe, expect, test } from 'vitest';
import { boxClearance, damp, feltCrossing, feltGap, rearFingers } from '../../../src/camera/rear-box/checks.js';
import { heron, regrouped } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. */
const { rearBox } = heron.camera.objects;

describe('box-clearance: 1.0 to 2.5, never below 0.5', () => {
  test.each([1, 1.5, 2.5])('%d mm a side', (clearance) => expect(boxClearance({ ...rearBox, clearance })).toEqual([]));
  test.each([
    { clearance: 0.49, level: 'error', limit: 0.5 },
    { clearance: 0.5, level: 'warning', limit: 1 },
    { clearance: 0.99, level: 'warning', limit: 1 },
    { clearance: 2.51, level: 'warning', limit: 2.5 },
  ])('$clearance mm a side: $level', ({ clearance, level, limit }) =>
    expect(boxClearance({ ...rearBox, clearance })).toMatchObject([
      {
        rule: 'box-clearance',
        level,
        value: clearance,
        limit,
        unit: 'mm',
        about: 'workshop.slideClearance',
        hint: expect.stringMatching(/slideClearance: 1\.5 mm/),
      },
    ]),
  );
});

describe('felt-gap: felt 1.2 to 1.8 times as thick as the gap', () => {
  const felt = (thickness: number) => feltGap({ ...rearBox, clearance: 1.5, felt: thickness });
  test.each([1.8, 2, 2.7])('%d mm in 1.5', (thickness) => expect(felt(thickness)).toEqual([]));
  test.each([
    { thickness: 1.79, limit: 1.2, message: /leaks/ },
    { thickness: 2.71, limit: 1.8, message: /drags/ },
  ])('$thickness mm in 1.5', ({ thickness, limit, message }) =>
    expect(felt(thickness)).toMatchObject([
      {
        rule: 'felt-gap',
        level: 'warning',
        value: thickness / 1.5,
        limit,
        message: expect.stringMatching(message),
        hint: expect.stringMatching(/slideClearance of/),
      },
    ]),
  );
  test('two bands of 15 stand one behind the other', () => {
    expect(feltGap({ ...rearBox, bands: [0, 15] })).toEqual([]);
    expect(feltGap({ ...rearBox, bands: [0, 14.9] })).toMatchObject([
      { rule: 'felt-gap', level: 'warning', limit: 0, hint: expect.stringMatching(/bands 14 mm wide/) },
    ]);
  });
});

test('felt-crossing: a band on the front box has to be passed by the one on the rear box', () => {
  expect(feltCrossing(rearBox, heron.build)).toEqual([]);
  expect(feltCrossing(rearBox, regrouped('felt-side', 'front'))).toMatchObject([
    { rule: 'felt-crossing', level: 'error', value: 2, limit: 1, hint: expect.stringMatching(/rear box/) },
  ]);
});

test('damp: told below 1.2', () => {
  expect(damp({ ...rearBox, clearance: 1.2 })).toEqual([]);
  expect(damp({ ...rearBox, clearance: 1.19 })).toMatchObject([{ rule: 'damp', level: 'note', limit: 1.2 }]);
});

test('finger-rule: both edges of the rear box are looked at', () => {
  expect(rearFingers(rearBox)).toEqual([]);
  const short = { from: 0, to: 20, count: 3, width: 20 / 3 };
  expect(rearFingers({ ...rearBox, rows: { long: short, standard: short } })).toHaveLength(2);
});
