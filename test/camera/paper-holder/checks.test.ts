import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { holderDepth, holderSheet, slideStays, slideVelvet } from '../../../src/camera/paper-holder/checks.js';
import { changed } from '../../design/reading.js';
import { movePart, removePart, widenHole } from '../../planted.js';
import { heronMade, planned } from '../made-holders.js';

const heron = planned(heronMade());
const [own] = heron.camera.objects.paperHolders;
if (own === undefined) throw new Error('Heron makes its paper holder');
const { build } = heron;
const told = (text: string, rule: string) => planned(text).findings.filter((one) => one.rule === rule);

test('of Heron’s paper holder nothing is told', () => {
  for (const check of [holderDepth, holderSheet, slideStays, slideVelvet]) expect(check(own, build)).toEqual([]);
});

describe('holder-depth: within half of the register’s tolerance, 0.22006 / 2', () => {
  const lip = (z: number): Build => movePart(build, 'HL1', { z });
  test.each([0.11, -0.11])('its lip %d mm off', (z) => expect(holderDepth(own, lip(z))).toEqual([]));
  test.each([0.111, -0.111])('its lip %d mm off', (z) =>
    expect(holderDepth(own, lip(z))).toMatchObject([{ rule: 'holder-depth', level: 'error' }]),
  );

  test('a depth that a thicker sheet cannot give says what it gives and what it would take', () => {
    const text = changed(heronMade(', filmDepth: 5.8 mm'), 'thickness: 4.05 mm, sheet', 'thickness: 5.9 mm, sheet');
    // 5.9 + 1.25 + 0.5 = 7.65; a face of 4.05 would do
    expect(told(text, 'holder-depth')).toMatchObject([
      {
        level: 'error',
        value: expect.closeTo(7.65, 9),
        limit: 5.8,
        about: 'holders[0].filmDepth',
        hint: expect.stringMatching(/a sheet of 4\.05 mm to the stock/),
      },
    ]);
    // one slip, one message: register is out by the same
    expect(told(text, 'register')).toEqual([]);
  });

  test('a thinner sheet of the stock gives the face', () => {
    const text = changed(heronMade(', filmDepth: 5.8 mm'), 'thickness: 4.05 mm, sheet', 'thickness: 5.9 mm, sheet');
    const stocked = planned(changed(text, 'laser:', 'stock: [{ thickness: 4.05 mm }]\nlaser:'));
    expect(stocked.findings.filter(({ rule }) => rule === 'holder-depth')).toEqual([]);
    expect(stocked.parts.find(({ id }) => id === 'HF1')).toMatchObject({ thickness: 4.05 });
  });
});

describe('holder-sheet: play 0.4 to 1.5 in all, held by 1 mm wherever the sheet lies', () => {
  // the pocket is 0.8 wider than the sheet
  test.each([-0.2, 0.35])('the pocket %d mm wider on every side', (by) =>
    expect(holderSheet(own, widenHole(build, 'HP1', by))).toEqual([]),
  );
  test.each([-0.21, 0.36])('the pocket %d mm wider on every side', (by) =>
    expect(holderSheet(own, widenHole(build, 'HP1', by))).toMatchObject([{ rule: 'holder-sheet', level: 'error' }]),
  );
  // the lip holds 3.2, less 0.4 of play
  test('the lip 1.8 mm wider on every side', () => expect(holderSheet(own, widenHole(build, 'HL1', 1.8))).toEqual([]));
  test('the lip 1.81 mm wider on every side', () =>
    expect(holderSheet(own, widenHole(build, 'HL1', 1.81))).toMatchObject([{ rule: 'holder-sheet', limit: 1 }]));
});

describe('slide-velvet', () => {
  // 1.25 + 0.5 − 1 = 0.75 for both sides
  test.each([0.47, 1.87])('a pile of %d mm', (pile) => expect(slideVelvet({ ...own, pile }, build)).toEqual([]));
  test('a pile of 0.46 mm lets light past', () =>
    expect(slideVelvet({ ...own, pile: 0.46 }, build)).toMatchObject([{ message: expect.stringMatching(/light/) }]));
  test('a pile of 1.88 mm jams', () =>
    expect(slideVelvet({ ...own, pile: 1.88 }, build)).toMatchObject([{ message: expect.stringMatching(/jams/) }]));

  // drawn, its end stays 10 mm in
  const drawn = (y: number): Build => movePart(build, 'HS1', { y });
  test('the slide drawn 2 mm farther', () => expect(slideStays(own, drawn(2))).toEqual([]));
  test('the slide drawn 2.1 mm farther', () =>
    expect(slideStays(own, drawn(2.1))).toMatchObject([{ rule: 'slide-velvet', value: expect.closeTo(7.9, 9) }]));
  test.each(['velvet-face-1', 'velvet-lip-1'])('without %s', (id) =>
    expect(slideStays(own, removePart(build, id))).toMatchObject([{ value: 0, limit: 8 }]),
  );
});
