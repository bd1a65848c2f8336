import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { planCamera } from '../../src/pipeline.js';
import {
  heron,
  movePart,
  removePart,
  reshape,
  reshapeOutline,
  rulesTelling,
  shiftPlacement,
  thicken,
  toldUnder,
} from '../planted.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source, where nothing else is said. */

const { build, design } = heron;

describe('holder-rim: 10 mm of wood on the seat', () => {
  // the opening stands 2 outside the image: 124.6 x 175.4. The paper holder is 150 wide and reaches 105 to both ends
  test('at its sides: (150 − 124.6)/2 = 12.7', () => {
    const wider = (by: number) =>
      reshape(build, 'B1', (p) => (Math.abs(p.x) < 63 ? { ...p, x: p.x + Math.sign(p.x) * by } : p));
    expect(rulesTelling(wider(2.69))).toEqual([]);
    const [told, ...more] = toldUnder('holder-rim', wider(2.75));
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level: 'error', limit: 10, unit: 'mm', about: 'holders[0].width' });
    expect(told?.value).toBeCloseTo(9.95, 9);
    expect(told?.message).toMatch(/paper holder lies 10 mm on the seat at a side: it tips into the opening, or leaks/);
    // 124.6 + 5.5 + 20
    expect(told?.hint).toMatch(/151 mm wide/);
    expect(rulesTelling(wider(2.75))).toEqual(['holder-rim']);
  });

  // lengthwise the stand-in is the same block: what is cut off it, is cut off in every position
  const shorter = (by: number) => reshapeOutline(build, 'holder-1', (p) => (p.y < 0 ? { ...p, y: p.y + by } : p));
  test('at its closed end: 105 − 87.7 = 17.3', () => {
    expect(toldUnder('holder-rim', shorter(7.29))).toEqual([]);
    const [told] = toldUnder('holder-rim', shorter(7.4));
    expect(told).toMatchObject({ level: 'error', limit: 10, about: 'holders[0].closedEnd' });
    expect(told?.value).toBeCloseTo(9.9, 9);
    // both ends alike: (97.6 + 105 − 171.4)/2
    expect(told?.hint).toMatch(/closedEnd: 15\.6 mm/);
  });
  test('a holder too short for two rims is to be made longer', () => {
    const [told] = toldUnder(
      'holder-rim',
      reshapeOutline(build, 'holder-1', (p) => ({ ...p, y: Math.sign(p.y) * 97 })),
    );
    expect(told).toMatchObject({ about: 'holders[0].length', hint: expect.stringMatching(/196 mm long/) }); // 175.4 + 20
  });
});

describe('well-fit: 0.4 of play a side, of 0.3 to 0.6', () => {
  const upright = (id: string) => (by: number) =>
    shiftPlacement(
      build,
      id,
      id === 'B3' ? { x: by } : { y: by },
      ({ when }, { x, y }) =>
        (when?.some((name) => name.endsWith('upright')) ?? false) && (id === 'B3' ? x > 0 : y < 0),
    );
  test('a long fence nearer to the widest holder', () => {
    expect(rulesTelling(upright('B3')(-0.09))).toEqual([]);
    const [told, ...more] = toldUnder('well-fit', upright('B3')(-0.12));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      level: 'warning',
      limit: 0.3,
      unit: 'mm a side',
      message: expect.stringMatching(/jams in damp weather/),
    });
    expect(told?.value).toBeCloseTo(0.28, 9);
    expect(rulesTelling(upright('B3')(-0.12))).toEqual(['well-fit']);
  });
  test('farther from it', () => {
    expect(rulesTelling(upright('B3')(0.19))).toEqual([]);
    expect(toldUnder('well-fit', upright('B3')(0.21))).toMatchObject([
      { level: 'warning', limit: 0.6, message: expect.stringMatching(/sits off centre/) },
    ]);
  });
  test('the fence at the closed end of the longest holder', () => {
    expect(rulesTelling(upright('B4')(0.09))).toEqual([]);
    expect(rulesTelling(upright('B4')(0.11))).toEqual(['well-fit']);
  });
});

describe('fence-below-slide: the fence at the open end 0.3 below a slide that runs 4.05 behind the face', () => {
  test('two layers of 1.25 pass, and so do 3.75', () => {
    expect(rulesTelling(thicken(build, 'fence-open', 3.75))).toEqual([]);
    const [told] = toldUnder('fence-below-slide', thicken(build, 'fence-open', 3.8));
    expect(told).toMatchObject({ level: 'error', unit: 'mm', about: 'holders[0].slideDepth' });
    expect(told?.value).toBeCloseTo(3.8, 9);
    expect(told?.limit).toBeCloseTo(3.75, 9);
    expect(told?.message).toMatch(/fence of 3\.8 mm at the open end stops it, and without a fence light runs straight/);
    expect(told?.hint).toMatch(/face of 4\.1 mm/);
    expect(rulesTelling(thicken(build, 'fence-open', 3.8))).toEqual(['fence-below-slide']);
  });
  test('under a holder that stands 0.5 off the seat it may be 0.5 higher', () => {
    const raised = (fence: number) =>
      toldUnder('fence-below-slide', movePart(thicken(build, 'fence-open', fence), 'holder-1', { z: 0.5 }));
    // the other holder lies on the seat: its slide runs into both
    expect(raised(4.24).map(({ about }) => about)).toEqual(['holders[1].slideDepth']);
    expect(raised(4.26)).toHaveLength(2);
  });
  test('left off, the lowest that could be made is 1.25', () => {
    const slides = (slideDepth: number): Design => ({
      ...design,
      holders: design.holders.map((holder) => ({ ...holder, slideDepth })),
    });
    const bare = removePart(build, 'fence-open');
    expect(toldUnder('fence-below-slide', bare, slides(1.55))).toEqual([]);
    expect(toldUnder('fence-below-slide', bare, slides(1.5))).toHaveLength(2);
  });
});

describe('raised-rim: the fence at the open end stands 0.3 above the joint under the holder', () => {
  // two layers of 1.25 mm channel board, less 0.3: 2.2
  const lifted = (z: number) => toldUnder('raised-rim', movePart(build, 'holder-1', { z }));
  test('a holder that stands 2.2 off the seat', () => {
    expect(lifted(2.2)).toEqual([]);
    const [told, ...more] = lifted(2.3);
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level: 'warning', unit: 'mm', about: 'holders[0].filmDepth' });
    expect(told?.value).toBeCloseTo(2.3, 6);
    expect(told?.limit).toBeCloseTo(2.2, 6);
    expect(told?.message).toMatch(/lifts it by 2\.3 mm, and the fence at the open end is 2\.5 mm high/);
    expect(told?.hint).toContain('dark cloth');
  });
  // 2.4 is made of 23 shims of 0.1: the last 0.1 is within half the tolerance, 0.11
  const onShims = (slideDepth: number) => {
    const planned = planCamera({
      ...design,
      groundGlass: { ...design.groundGlass, depth: 8.2 },
      holders: design.holders.map((holder, i) => ({
        ...holder,
        filmDepth: i === 0 ? 5.8 : 8.2,
        slideDepth: i === 0 ? holder.slideDepth : slideDepth,
      })),
      shims: [0.1],
    });
    return toldUnder('raised-rim', planned.build, planned.design);
  };
  test('a third layer of board follows a spacer of 23 shims', () => expect(onShims(4.05)).toEqual([]));
  test('but not where the slide of another holder runs 3 mm behind its face', () =>
    expect(onShims(3)[0]?.value).toBeCloseTo(2.3, 6));
});

describe('raised-rim: a short holder in a long well', () => {
  // the opening reaches to 87.7; a joint opens by 0.2, the fence stands 0.4 beyond the longest holder and 2.5 high
  const beside = (length: number) => {
    const planned = planCamera({
      ...design,
      holders: design.holders.map((holder, i) => ({ ...holder, closedEnd: 20, length: i === 0 ? length : 330 })),
    });
    return toldUnder('raised-rim', planned.build, planned.design);
  };
  // 224.3 + 0.4 − 98.75 = 125.95 before the fence, rim 98.75 − 87.7 = 11.05: 0.2 (1 + 125.95/11.05) = 2.4796
  test('204.45 long passes', () => expect(beside(204.45)).toEqual([]));
  test('204.3 long is told, with the cure', () => {
    const [told, ...more] = beside(204.3);
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level: 'warning', limit: 2.5, unit: 'mm', about: 'holders[0].length' });
    expect(told?.value).toBeCloseTo(0.2 * (1 + 126.1 / 10.9), 6);
    expect(told?.message).toMatch(/ends 126\.1 mm short of the fence/);
    expect(told?.hint).toContain('strip');
  });
});
