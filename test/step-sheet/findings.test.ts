import { describe, expect, test } from 'vitest';
import type { PrintProcess, ProcessStep } from '../../src/model/step-sheet.js';
import { stepSheet } from '../../src/step-sheet/sheet.js';
import { processWith } from './processes.js';

const found = (steps: readonly Partial<ProcessStep>[], more: Partial<PrintProcess> = {}) =>
  stepSheet(processWith(steps, more)).findings;
const short = (steps: readonly Partial<ProcessStep>[], more: Partial<PrintProcess> = {}) =>
  found(steps, more).map(({ rule, level, about }) => `${rule} ${level} ${about}`);

test('of a plain process nothing is found', () => expect(found([{}, { fixes: true }, { light: 'any' }])).toEqual([]));

describe('step-time: filling in 8 s and draining in 12 s take 20 s', () => {
  test.each([
    [19.9, ['step-time error steps[0].time']],
    // covered for nothing of it
    [20, ['step-time warning steps[0].time']],
    // half of 40 is 20
    [39.9, ['step-time warning steps[0].time']],
    [40, []],
  ])('%s s', (time, expected) => expect(short([{ time }])).toEqual(expected));

  test('says which, and by how much', () =>
    expect(found([{ name: 'stop', time: 15 }])[0]).toMatchObject({
      value: 15,
      limit: 20,
      unit: 's',
      message: 'Step 1, stop: it takes 15 s from pouring in, and filling and draining alone take 20 s.',
    }));

  test('is not looked at where times count while the print is covered, nor where nothing is poured', () => {
    expect(short([{ time: 5 }], { timesFrom: 'covered' })).toEqual([]);
    expect(short([{ time: 5, volume: 'none' }, {}])).toEqual([]);
  });
});

describe('tank-times', () => {
  const tank = { fillSeconds: null, drainSeconds: null, workingVolume: null, fullVolume: null };
  test('a tank that nobody has timed', () => {
    expect(short([{}], { tank })).toEqual(['tank-times warning fill']);
    expect(short([{}], { tank: { ...tank, fillSeconds: 8 } })).toEqual(['tank-times warning drain']);
    expect(short([{}], { tank: { ...tank, fillSeconds: 0, drainSeconds: 0 } })).toEqual([]);
  });
  test('is of no matter where nothing is poured', () => expect(short([{ volume: 'none' }], { tank })).toEqual([]));
});

describe('tank-times: filling in 8 s is meant for the 120 ml that cover the print', () => {
  test.each([
    [180, []],
    [181, ['tank-times note steps[0].volume']],
  ])('%s ml', (volume, expected) => expect(short([{ volume }])).toEqual(expected));
  test('says how long more takes', () =>
    // 8 × 240/120
    expect(found([{ volume: 240 }])[0]?.message).toContain('240 ml take about 16 s'));
  test('a tray takes no time, however much is poured', () =>
    expect(
      short([{ volume: 300 }], { tank: { fillSeconds: 0, drainSeconds: 0, workingVolume: 120, fullVolume: 330 } }),
    ).toEqual([]));
});

describe('bath-volume: 120 ml cover the print, 330 ml fill the tank', () => {
  test.each([
    [331, ['tank-times note steps[0].volume', 'bath-volume error steps[0].volume']],
    [330, ['tank-times note steps[0].volume']],
    [120, []],
    [119, ['bath-volume warning steps[0].volume']],
  ])('%s ml', (volume, expected) => expect(short([{ volume }])).toEqual(expected));

  test('a tank of which nobody says what it takes', () => {
    const tank = { fillSeconds: 8, drainSeconds: 12, workingVolume: null, fullVolume: null };
    expect(short([{ volume: 'tank' }], { tank })).toEqual(['bath-volume warning steps[0].volume']);
    expect(short([{ volume: 5000 }], { tank })).toEqual([]);
  });
});

describe('bath-temperature', () => {
  test('is asked for once', () => {
    expect(short([{}, {}], { temperature: null })).toEqual(['bath-temperature warning temperature']);
    expect(found([{}, {}, {}], { temperature: null })[0]?.message).toContain('Nor is that of 2 more.');
  });
  test('may stand in each step', () => expect(short([{ temperature: 20 }], { temperature: null })).toEqual([]));
  test('is of no matter where nothing is poured', () =>
    expect(short([{ volume: 'none' }], { temperature: null })).toEqual([]));
});

describe('light-order', () => {
  test.each([
    ['light before the fix', [{}, { light: 'any' }, { fixes: true }], ['light-order error steps[1].light']],
    ['light in the fix', [{}, { light: 'any', fixes: true }], ['light-order warning steps[1].light']],
    ['light after the fix', [{}, { fixes: true }, { light: 'any' }], []],
    ['a second exposure before the fix', [{}, { light: 'window' }, {}, { fixes: true }], []],
    ['where no step is said to fix, nobody can tell', [{}, { light: 'any' }, {}], []],
    ['darkness after light', [{}, { light: 'window' }, { light: 'safe' }], ['light-order error steps[2].light']],
    ['two lights after another', [{}, { light: 'window' }, { light: 'window' }, { light: 'any' }], []],
  ] as const)('%s', (_, steps, expected) => expect(short(steps)).toEqual(expected));

  test('names the other step', () =>
    expect(found([{}, { light: 'window', name: 'lamp' }, { light: 'safe' }])[0]?.message).toContain(
      'white light was let in at step 2, lamp',
    ));
});

describe('bath-thinned: 4 ml into 150 ml', () => {
  // 1 - (150/154)^4 = 0.0999 and 1 - (150/154)^5 = 0.1233, by hand
  test.each([
    [4, []],
    [5, ['bath-thinned note steps[1].reuse']],
  ])('after %s prints', (prints, expected) => expect(short([{}, { serves: 9 }], { prints })).toEqual(expected));
  test('not where each print gets a fresh bath', () =>
    expect(short([{}, { volume: 120 }], { carryOver: 40 })).toEqual([]));
});
