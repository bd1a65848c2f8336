import { describe, expect, test } from 'vitest';
import { boughtFor } from '../../src/book-use.js';
import { stepsOf } from '../../src/camera/objects.js';
import { SET_OUT } from '../../src/kits/class-page.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';
import { plainBook, saidUnder } from './plain-book.js';

describe.each(keptDesigns)('what is bought for %s', (name) => {
  const planned = planCamera(keptDesign(name));
  const bought = boughtFor(planned, planOf(planned));

  test('has every glue and paint that a step asks for', () => {
    const needs = new Set(stepsOf(planned.camera.objects).flatMap(({ needs: own = [] }) => own));
    const usedUp = SET_OUT.filter((what) => needs.has(what));
    expect(usedUp.length).toBeGreaterThan(2);
    expect(usedUp.filter((what) => !bought.some((line) => line.name === what))).toEqual([]);
  });

  test('has shims to choose from, of sizes that the design has', () => {
    const choice = bought.filter(({ toChooseFrom }) => toChooseFrom);
    expect(choice.length).toBeGreaterThan(0);
    for (const { name: what, size } of choice) {
      expect(what).toBe('shim');
      expect(planned.design.shims).toContain(Number(size.split(' ')[0]));
    }
  });
});

test('a lens that is held by a ring comes with it, and one in a clamp with nothing', () => {
  const said = (name: string) => saidUnder(plainBook(keptDesign(name), { laidOut: false }).pages, 'What the camera is built round'); // biome-ignore format: one line
  expect(said('wren')).toContain('enlarging lens, with its retaining ring.');
  expect(said('teal')).not.toContain(', with its');
});
