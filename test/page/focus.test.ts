import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { PlanDocument } from '../../src/model/plan.js';
import type { TakenStep } from '../../src/model/shown.js';
import { apartAt, stepAt } from '../../src/page/camera/apart.js';
import {
  focusRange,
  focusWords,
  magnificationAt,
  outOfReach,
  rearAt,
  rearFor,
  reserveWords,
} from '../../src/page/camera/focus.js';

const plan = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'output', 'heron', 'plan.json'), 'utf8'),
) as PlanDocument;
const F = 210;

describe('focus', () => {
  test.each(['paper holder', 'processing holder'])('from infinity to 1:2.5 the %s goes f · m', (holder) => {
    const { infinity, nearest } = focusRange(plan, holder);
    expect(nearest - infinity).toBeCloseTo(F / 2.5, 6);
  });

  test('distance and image obey 1/u + 1/v = 1/f', () => {
    const infinity = rearAt(plan, 'paper holder', 0);
    for (const extension of [8, 21, 84]) {
      const rear = infinity + extension;
      expect(magnificationAt(plan, 'paper holder', rear)).toBeCloseTo(extension / F, 9);
      const u = 1 / (1 / F - 1 / (F + extension));
      const told = /, ([\d.]+) (m?m) before the lens/.exec(focusWords(plan, 'paper holder', rear));
      const distance = Number(told?.[1]) * (told?.[2] === 'm' ? 1000 : 1);
      expect(distance / u).toBeCloseTo(1, 2);
    }
  });

  test('a subject at twice the focal length is drawn out by the focal length more than at infinity', () => {
    // life size: u = v = 2f, a textbook of physics
    const infinity = rearAt(plan, 'paper holder', 0);
    expect(rearFor(plan, 'paper holder', 2 * F) - infinity).toBeCloseTo(F, 9);
    // and back: 1/u + 1/v = 1/f
    const drawn = rearFor(plan, 'paper holder', 1000) - infinity;
    expect(1 / 1000 + 1 / (F + drawn)).toBeCloseTo(1 / F, 12);
  });

  test('at infinity no distance is told, and before it how far before', () => {
    const infinity = rearAt(plan, 'paper holder', 0);
    expect(focusWords(plan, 'paper holder', infinity)).toMatch(/^infinity; /);
    expect(focusWords(plan, 'paper holder', infinity - 2)).toMatch(/^2 mm past infinity; /);
  });
});

describe('the end of the slide is told', () => {
  // nearest 1:2.5, and 10.5 mm past it: 0.4 + 10.5/210 = 0.45; u = f (1 + 1/m) = 735 and 676.7
  const reached = 0.45;
  const most = focusRange(plan, 'paper holder').nearest;
  const said = (distance: number) => outOfReach(plan, 'paper holder', distance, most, reached);

  test('how far it runs on past the nearest', () => {
    expect(reserveWords(plan, reached)).toBe('10.5 mm past the nearest, to 1:2.23, 677 mm');
    expect(reserveWords(plan, plan.optics.nearest.magnification)).toBe('');
  });

  test('a subject that is nearer than the slide goes is not taken for another one without a word', () => {
    expect(said(735)).toBe('');
    expect(said(1200)).toBe('');
    expect(said(600)).toBe(
      '600 mm is out of reach: the nearest is 1:2.5, 735 mm; the slide runs on 10.5 mm past the nearest, to 1:2.23, 677 mm.',
    );
    expect(said(200)).toBe('200 mm is out of reach: within the focal length, 210 mm, nothing is sharp.');
  });
});

describe('apart', () => {
  const steps: readonly TakenStep[] = [
    { step: 3, pieces: ['a', 'b'], by: { x: 0, y: 10, z: 0 } },
    { step: 3, pieces: ['b'], by: { x: 5, y: 0, z: 0 } },
    { step: 7, pieces: ['a'], by: { x: 0, y: 0, z: -20 } },
  ];

  test('together nothing is out, and in the end each piece by all of its ways', () => {
    expect(apartAt(steps, 0).size).toBe(0);
    expect(stepAt(steps, 0)).toBeNull();
    expect(apartAt(steps, 1).get('a')).toEqual({ x: 0, y: 10, z: -20 });
    expect(apartAt(steps, 1).get('b')).toEqual({ x: 5, y: 10, z: 0 });
    expect(stepAt(steps, 1)).toEqual({ number: 3, left: 0 });
  });

  test('what came last leaves first, and of a step what came last', () => {
    const half = apartAt(steps, 0.5);
    expect([...half.keys()]).toEqual(['a']);
    expect(half.get('a')).toEqual({ x: 0, y: 0, z: -20 });
    expect(stepAt(steps, 0.5)).toEqual({ number: 7, left: 1 });
    expect(apartAt(steps, 0.7).get('b')?.x).toBeGreaterThan(0);
    expect(apartAt(steps, 0.7).get('b')?.y).toBe(0);
  });

  test('nothing ever comes back while more is taken out', () => {
    const outs = Array.from({ length: 41 }, (_, i) => apartAt(steps, i / 40).get('a')?.y ?? 0);
    expect(outs).toEqual([...outs].sort((a, b) => a - b));
  });
});
