import { expect, test } from 'vitest';
import { stepSheet } from '../../src/step-sheet/sheet.js';
import { exampleText, processOf, processWith } from './processes.js';

test('the example, worked by hand', () => {
  const sheet = stepSheet(processOf(exampleText));
  // 90 + 45 + 60 + 120 + 90 + 240
  expect(sheet.seconds).toBe(645);
  expect(sheet.steps.map(({ beginsAt, drainAt }) => [beginsAt, drainAt])).toEqual([
    [0, 78],
    [90, 123],
    [135, null],
    [195, 303],
    [315, 393],
    [405, 633],
  ]);
  // 4 × 120, 4 × 120, nothing, one of 150, one of 150, 4 × 250
  expect(sheet.steps.map(({ need }) => need?.total ?? null)).toEqual([480, 480, null, 150, 150, 1000]);
  expect(sheet.liquid).toBe(2260);
  expect(sheet.steps.map(({ temperature }) => temperature)).toEqual([24, 24, null, 24, 24, 22]);
  expect(sheet.steps.map(({ light }) => light)).toEqual(['safe', 'safe', 'window', 'any', 'any', 'any']);
  // 1 - (150/154)^4
  expect(sheet.steps[3]?.need?.thinned).toBeCloseTo(0.0999, 3);
  // 250 ml of the wash are more than twice what covers the print
  expect(sheet.findings.map(({ rule, level }) => `${rule} ${level}`)).toEqual(['tank-times note']);
});

test('the first bath is the first that is poured, not the first step', () => {
  const { steps } = stepSheet(processWith([{ volume: 'none' }, { serves: 4 }, { serves: 4 }]));
  // 150 + 3 × 4, since nothing is carried into it
  expect(steps.map(({ need }) => need?.total)).toEqual([undefined, 162, 150]);
});

test('where a volume is not known, neither is the sum', () => {
  const tank = { fillSeconds: 8, drainSeconds: 12, workingVolume: null, fullVolume: null };
  const { steps, liquid } = stepSheet(processWith([{}, { volume: 'tank' }], { tank }));
  expect(steps.map(({ volume }) => volume)).toEqual([150, null]);
  expect(liquid).toBeNull();
});

test('every sheet cautions of what holds for all chemicals', () => {
  const said = stepSheet(processWith([{}])).cautions.join(' ');
  for (const word of ['Gloves', 'goggles', 'fresh air', 'data sheet', 'Acid into water', 'cap the tank tight', 'gas'])
    expect(said).toContain(word);
});
