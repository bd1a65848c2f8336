import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeKeys } from '../../src/design/write-keys.js';
import { planDesign, readDesign } from '../../src/index.js';
import { rules } from '../../src/model/rules.js';
import type { WhatIfCamera, WhatIfInput } from '../../src/model/what-if.js';
import { whatIfInputs } from '../../src/what-if/inputs.js';
import { whatIfPoint } from '../../src/what-if/point.js';
import { triesOf } from '../../src/what-if/tries.js';
import { bareHeronText } from '../designs/kept-design.js';

const heron = { name: 'heron with bought holders', text: bareHeronText() };
const designs = [
  heron,
  ...['heron', 'wren', 'teal', 'grebe'].map((name) => ({
    name,
    text: readFileSync(join(import.meta.dirname, '..', '..', 'designs', `${name}.yaml`), 'utf8'),
  })),
];

function read(text: string) {
  const outcome = readDesign(text, 'tried.yaml');
  if ('problems' in outcome) throw new Error(outcome.problems[0]?.what);
  return outcome.design;
}

/** The text with another value, as somebody would type it: null where it is refused. */
function typed(text: string, path: string, value: string): string | null {
  const outcome = writeKeys(text, 'tried.yaml', [{ kind: 'write', path, value }]);
  return 'problems' in outcome || 'problems' in readDesign(outcome.text, 'tried.yaml') ? null : outcome.text;
}

function inputOf(text: string, path: string): WhatIfInput {
  const input = whatIfInputs(text, read(text)).find((one) => one.path === path);
  if (input === undefined) throw new Error(`${path} cannot be tried`);
  return input;
}

/** Cameras over the range, where there are any, without their sheets. */
function curve(text: string, path: string): readonly WhatIfCamera[] {
  return inputOf(text, path).tries.flatMap(({ value, written }) => {
    const changed = typed(text, path, written);
    if (changed === null) return [];
    const point = whatIfPoint(read(changed), { value, sheets: 'left out' });
    return point.kind === 'camera' ? [point] : [];
  });
}

describe('what may be tried', () => {
  test.each(designs)('begins with focus, holders and plywood, $name', ({ text }) => {
    const first = whatIfInputs(text, read(text)).filter(({ rank }) => rank === 'first');
    const { holders } = read(text);
    expect(first.map(({ path }) => path)).toEqual([
      'focus.nearest',
      ...holders.map((_, i) => `holders[${i}].filmDepth`),
      'plywood.thickness',
    ]);
  });

  test('is called by what it is', () => {
    const inputs = whatIfInputs(heron.text, read(heron.text));
    const labels = new Map(inputs.map(({ path, label }) => [path, label]));
    expect(labels.get('holders[1].filmDepth')).toBe('film depth of the processing holder');
    expect(labels.get('lens.barrel.frontDiameter')).toBe('lens barrel front diameter');
  });

  test('is written so that it reads back as the value that is drawn', () => {
    const { text } = heron;
    const inputs = whatIfInputs(text, read(text));
    // one of each unit, and a few of them
    const units = [...new Map(inputs.map((input) => [input.unit, input])).values()];
    for (const { path, tries } of [...inputs.slice(0, 4), ...units])
      for (const { value, written } of [tries[0], tries.at(-1)].flatMap((one) => one ?? [])) {
        const changed = typed(text, path, written);
        if (changed === null) continue;
        const again = whatIfInputs(changed, read(changed)).find((one) => one.path === path);
        expect(again?.value, `${path} ${written}`).toBeCloseTo(value, 6);
      }
  });

  test('how fast the laser is shapes no camera', () =>
    expect(triesOf({ path: 'laser.cutSpeed', value: 10, unit: 'mm/s', focalLength: 210 })).toEqual([]));

  test('a distance runs from a twentieth of the size to the full size', () => {
    // thin lens: at 1:20 the subject stands 21 focal lengths off, at 1:1 two
    const tries = triesOf({ path: 'focus.nearest', value: 1000, unit: 'mm', focalLength: 200 });
    expect([tries[0]?.value, tries.at(-1)?.value]).toEqual([400, 4200]);
  });

  test('a film is tried between the faces of its holder, and at neither of them', () => {
    for (const { text } of designs)
      for (const [i, { thickness, filmDepth }] of read(text).holders.entries()) {
        const values = inputOf(text, `holders[${i}].filmDepth`).tries.map(({ value }) => value);
        expect(Math.min(...values)).toBeGreaterThan(0);
        expect(Math.max(...values)).toBeLessThan(thickness);
        expect(Math.max(...values)).toBeGreaterThan(filmDepth);
      }
  });

  test.each(designs)('every value that is tried can be written, $name', ({ text }) => {
    for (const { path, tries } of whatIfInputs(text, read(text)).slice(0, 40)) {
      const written = tries[Math.floor(tries.length / 2)]?.written ?? '';
      const outcome = writeKeys(text, 'tried.yaml', [{ kind: 'write', path, value: written }]);
      expect('problems' in outcome ? `${path}: ${outcome.problems[0]?.what}` : '').toBe('');
    }
  });

  test('what is counted is tried in whole numbers', () => {
    const tries = triesOf({ path: 'lens.mount.screws', value: 4, unit: 'count', focalLength: 210 });
    expect(tries.map(({ value }) => value)).toEqual([2, 3, 5, 6, 7, 8]);
  });
});

describe('what becomes of the camera', () => {
  test.each(designs)('as it is: the figures of its plan, $name', ({ text }) => {
    const design = read(text);
    const { plan, findings } = planDesign(design);
    const point = whatIfPoint(design, { value: 0, sheets: 'left out' });
    expect(point).toMatchObject({
      kind: 'camera',
      reach: plan.slide.reachableMagnification,
      mass: plan.camera.mass,
      broken: [...new Set(findings.filter(({ level }) => level === 'error').map(({ rule }) => rule))].map((rule) => ({
        rule,
        protects: rules.find(({ id }) => id === rule)?.protects,
      })),
    });
  });

  test('a thicker holder takes from the reach', () => {
    const reach = curve(heron.text, 'holders[1].filmDepth').map((point) => point.reach);
    expect(reach.length).toBeGreaterThan(10);
    for (const [i, next] of reach.slice(1).entries()) expect(next).toBeLessThanOrEqual((reach[i] as number) + 1e-9);
  });

  test('a thicker ply weighs more', () => {
    const mass = curve(heron.text, 'plywood.thickness').map((point) => point.mass);
    expect(mass.length).toBeGreaterThan(20);
    for (const [i, next] of mass.slice(1).entries()) expect(next).toBeGreaterThan(mass[i] as number);
  });

  test('nearer than the boxes reach breaks the rule that says so, farther does not', () => {
    for (const { value, reach, broken } of curve(heron.text, 'focus.nearest'))
      expect(
        broken.some(({ rule }) => rule === 'reach-near'),
        `1:${1 / value}`,
      ).toBe(value > reach);
  });

  test('a holder thicker than it is told to be is no design, and the file is refused for that', () => {
    // 24 mm of film depth in a holder 36 mm thick: 40 mm cannot be
    expect(typed(heron.text, 'holders[1].filmDepth', '30 mm')).not.toBeNull();
    expect(typed(heron.text, 'holders[1].filmDepth', '40 mm')).toBeNull();
  });

  test('sheets are counted only where they are asked for, and parts too large for them are told', () => {
    const design = read(heron.text);
    expect(whatIfPoint(design, { value: 0, sheets: 'left out' })).toMatchObject({ sheets: null, broken: [] });
    expect(whatIfPoint(design, { value: 0, sheets: 'counted' })).toMatchObject({ sheets: 6, broken: [] });
    const small = typed(heron.text, 'plywood.sheet', '200 mm, 200 mm') as string;
    const point = whatIfPoint(read(small), { value: 200, sheets: 'counted' });
    expect(point.kind === 'camera' && point.broken.map(({ rule }) => rule)).toContain('part-on-bed');
  });

  test('without room for boxes there is no camera, and it is told why', () => {
    // the film 180 mm behind the seat of a camera that has 203 mm from seat to film
    const entry = '{ name: deep, filmDepth: 180 mm, width: 156 mm, length: 214 mm, thickness: 190 mm }';
    const deep = writeKeys(heron.text, 'tried.yaml', [{ kind: 'add', path: 'holders', entry }]);
    if ('problems' in deep) throw new Error(deep.problems[0]?.what);
    const point = whatIfPoint(read(deep.text), { value: 180, sheets: 'left out' });
    expect(point.kind).toBe('none');
    expect(point.kind === 'none' && point.why.length).toBeGreaterThan(20);
  });
});
