import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { heron, toldOfWhole, withRod } from './worked.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source. */

const { design, camera } = heron;

describe('floor-scrape: 1.5 of air, less the play of the rails and the sag', () => {
  // 0.25 x (161.35 + 8.1)/135 = 0.3138
  const left = (railPlay: number, sag: number) => {
    const played: Design = { ...design, workshop: { ...design.workshop, railPlay } };
    return toldOfWhole('floor-scrape', { design: played, camera: { ...camera, sag: { ...camera.sag, sag } } });
  };
  test('a play of 0.796, no sag', () => expect(left(0.796, 0)).toEqual([]));
  test('a play of 0.798, no sag', () => {
    const [told] = left(0.798, 0);
    expect(told).toMatchObject({ level: 'error', limit: 0.5, unit: 'mm', about: 'workshop.slideClearance' });
    expect(told?.value).toBeCloseTo(0.49836, 4); // 1.5 − 0.798 x 1.25519
    expect(told?.hint).toMatch(/slideClearance: 1\.6 mm/);
  });
  test('the usual play, and a sag of 0.68 or 0.69', () => {
    expect(left(0.25, 0.68)).toEqual([]);
    expect(left(0.25, 0.69)).toMatchObject([{ level: 'error' }]);
    // a clearance of more than 2.5 is no cure: no felt closes it
    expect(left(0.25, 2)[0]?.hint).toMatch(/thicker sheet/);
  });
});

test('sag-tilt: the film’s edge against half the depth of focus at the nearest', () => {
  // 6.3 x 209.577/1500 x 1.4/2 = 0.61616
  const tilted = (atFilmEdge: number) =>
    toldOfWhole('sag-tilt', { camera: { ...camera, sag: { ...camera.sag, atFilmEdge } } });
  expect(tilted(0.616)).toEqual([]);
  const [told] = tilted(0.617);
  expect(told).toMatchObject({ level: 'warning', value: 0.617, unit: 'mm', about: 'plywood.thickness' });
  expect(told?.limit).toBeCloseTo(0.61616, 4);
  // twice the bending asks for the cube root of two times the sheet: 5.10
  expect(tilted(2 * 0.61616)[0]?.hint).toMatch(/sheet of 5\.5 mm/);
});

test('balance: 40 mm from the nut, closed or open', () => {
  const { tripod } = camera.objects.tailboard;
  const weight = (closest: number, farthest: number) =>
    toldOfWhole('balance', {
      camera: { ...camera, balance: { ...camera.balance, closest: tripod + closest, farthest: tripod + farthest } },
    });
  expect(weight(-40, 40)).toEqual([]);
  expect(weight(-30, 41)).toMatchObject([
    { level: 'warning', limit: 40, message: expect.stringMatching(/^Open and loaded.*41 mm behind/) },
  ]);
  const [closed] = weight(-41, 30);
  expect(closed?.message).toMatch(/^Closed.*41 mm ahead/);
  expect(closed?.hint).toMatch(/front end of the tailboard/);
  expect(weight(20, 20)).toEqual([]);
});

test('mass-tripod: what the tripod carries', () =>
  expect(
    toldOfWhole('mass-tripod', { camera: { ...camera, balance: { ...camera.balance, loadedKg: 3.6 } } }),
  ).toMatchObject([{ level: 'note', value: 3.6, unit: 'kg', hint: expect.stringMatching(/8 kg/) }]));

describe('slot-length: travel, reserve and bolt', () => {
  // 106.2 + 10.5 + 6 + 2 = 124.7, cut as drawn
  test('a reserve that the slot does not have', () => {
    expect(toldOfWhole('slot-length', {})).toEqual([]);
    const [told] = toldOfWhole('slot-length', { camera: withRod({ reserve: 10.6 }) });
    expect(told).toMatchObject({ level: 'error', unit: 'mm', hint: expect.stringMatching(/front end/) });
    expect(told?.limit).toBeCloseTo(124.8, 6);
    expect(told?.value).toBeCloseTo(124.7, 1);
  });
  test('12 mm of wood behind it', () => {
    const board = heron.build.parts.find((part) => part.id === 'T1L');
    if (board?.kind !== 'flat') throw new Error('the tailboard is cut from sheet');
    const slot = board.holes.map((hole) => hole.map(({ y }) => y)).sort((a, b) => span(b) - span(a))[0] ?? [];
    const edge = (web: number) => {
      // the corners of the slot stand half its width, 3.3, short of its round end
      const rear = Math.max(...slot) + 3.3 + web;
      const shortened = board.outline.map((vertex) => ({ ...vertex, y: Math.min(vertex.y, rear) }));
      const parts = heron.build.parts.map((part) => (part.id === 'T1L' ? { ...board, outline: shortened } : part));
      return toldOfWhole('slot-length', { build: { ...heron.build, parts } });
    };
    expect(edge(12.05)).toEqual([]);
    expect(edge(11.95)).toMatchObject([{ level: 'error', limit: 12, hint: expect.stringMatching(/off pastNearest/) }]);
  });
});

const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
