import { describe, expect, test } from 'vitest';
import type { Design, Holder } from '../../src/design/design.js';
import { planCamera } from '../../src/pipeline.js';
import { designOf } from '../design/reading.js';
import { fewest } from '../design/worked-designs.js';
import { heron, toldOfWhole } from './worked.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source, where nothing else is said. */

const { design } = heron;
const withHolder = (index: number, change: Partial<Holder>): Design => ({
  ...design,
  holders: design.holders.map((holder, i) => (i === index ? { ...holder, ...change } : holder)),
});

describe('well-fit: widths within 1 of each other, or pins', () => {
  const narrow = (width: number, locating: Holder['locating']) =>
    toldOfWhole('well-fit', { design: withHolder(0, { width, locating }) });
  test('155 in a well for 156', () => expect(narrow(155, 'well')).toEqual([]));
  test('154.9', () => {
    const [told] = narrow(154.9, 'well');
    expect(told).toMatchObject({ level: 'warning', limit: 1, unit: 'mm', about: 'holders[0].locating' });
    expect(told?.value).toBeCloseTo(1.1, 9);
    expect(told?.hint).toMatch(/strip of 0\.[56] mm/);
  });
  test('pins keep it in the middle, a lock rib does not', () => {
    expect(narrow(150, 'pins')).toEqual([]);
    expect(narrow(150, 'rib')).toHaveLength(1);
  });
});

describe('slide-lifts-holder: pins or a lock rib take the pull', () => {
  test.each(['pins', 'rib'] as const)('%s', (locating) =>
    expect(toldOfWhole('slide-lifts-holder', { design: withHolder(0, { locating }) })).toEqual([]),
  );
  test('a well alone does not', () =>
    expect(toldOfWhole('slide-lifts-holder', { design: withHolder(0, { locating: 'well' }) })).toMatchObject([
      { level: 'warning', value: 0, limit: 1, about: 'holders[0].locating', hint: expect.stringMatching(/lock rib/) },
    ]));
  test('the published holder that nobody typed is told under holders', () => {
    const { findings } = planCamera(designOf(fewest));
    expect(findings.filter(({ rule }) => rule === 'slide-lifts-holder')).toMatchObject([{ about: 'holders' }]);
  });
});

test('tank-depth: what a caliper reads behind a window', () => {
  // 3 (1 − 1/1.5) = 1: a third of the thickness, V1.23 [verified: S17]
  const seen: Design = {
    ...withHolder(1, { window: { thickness: 3 } }),
    groundGlass: { ...design.groundGlass, refractiveIndex: 1.5 },
  };
  expect(toldOfWhole('tank-depth', {})).toEqual([]);
  const [told] = toldOfWhole('tank-depth', { design: seen });
  expect(told).toMatchObject({ level: 'note', limit: 24, about: 'holders[1].filmDepth' });
  expect(told?.value).toBeCloseTo(25, 9);
  expect(told?.hint).toMatch(/filmDepth: 23 mm/);
});
