import { describe, expect, test } from 'vitest';
import type { Design, Holder } from '../../src/design/design.js';
import { planCamera } from '../../src/pipeline.js';
import { designOf } from '../design/reading.js';
import { fewest } from '../design/worked-designs.js';
import { heron, moving, toldOfWhole, without } from './worked.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source, where nothing else is said. */

const { design, camera } = heron;
const withHolder = (index: number, change: Partial<Holder>): Design => ({
  ...design,
  holders: design.holders.map((holder, i) => (i === index ? { ...holder, ...change } : holder)),
});

describe('register: a quarter of the depth of focus at infinity', () => {
  // 6.3 x 209.577/1500/4 = 0.22006
  const packedShort = (remainder: number) => ({
    ...camera,
    objects: {
      ...camera.objects,
      groundGlassFrame: {
        ...camera.objects.groundGlassFrame,
        packing: { ...camera.objects.groundGlassFrame.packing, remainder },
      },
    },
  });
  test.each([0.22, -0.22])('%d mm off passes', (remainder) =>
    expect(toldOfWhole('register', { camera: packedShort(remainder) })).toEqual([]),
  );
  test('0.221 too near to the seat is told for each holder, signed', () => {
    const told = toldOfWhole('register', { camera: packedShort(0.221) });
    expect(told.map(({ level }) => level)).toEqual(['error', 'error']);
    expect(told[0]?.value).toBeCloseTo(-0.221, 9);
    expect(told[0]?.limit).toBeCloseTo(0.22006, 5);
    expect(told[0]?.message).toMatch(/paper holder.*0\.221 mm ahead of the film, 1 times the tolerance of 0\.22 mm/);
    expect(told[0]?.hint).toMatch(/shim of 0\.2 mm/);
    expect(toldOfWhole('register', { camera: packedShort(-0.221) })[0]?.value).toBeCloseTo(0.221, 9);
  });
  test('a spacer and a packing that are each within it may be out together', () => {
    const [paper, processing] = camera.spacers;
    if (!paper || !processing) throw new Error('two holders, two spacers');
    const both = {
      ...packedShort(0.11),
      spacers: [paper, { ...processing, made: { ...processing.made, remainder: 0.12 } }],
    };
    expect(toldOfWhole('register', { camera: both })).toMatchObject([{ level: 'error', about: 'shims' }]);
  });
});

describe('holder-rim: 10 mm of wood on the seat', () => {
  // the opening stands 2 outside the image: 124.6 x 175.4
  const rims = (change: object) => ({
    ...camera,
    objects: { ...camera.objects, holders: camera.objects.holders.map((h, i) => (i === 0 ? { ...h, ...change } : h)) },
  });
  test('at the sides: 144.6 wide', () => {
    expect(toldOfWhole('holder-rim', { camera: rims({ width: 144.6 }) })).toEqual([]);
    const [told] = toldOfWhole('holder-rim', { camera: rims({ width: 144.5 }) });
    expect(told).toMatchObject({ level: 'error', limit: 10, unit: 'mm', about: 'holders[0].width' });
    expect(told?.value).toBeCloseTo(9.95, 9);
    expect(told?.hint).toMatch(/145 mm wide/);
  });
  test('at its own ends, however long the other holder is: 97.7 from the axis', () => {
    expect(toldOfWhole('holder-rim', { camera: rims({ closedExtent: 97.7, openExtent: 97.7 }) })).toEqual([]);
    const [told] = toldOfWhole('holder-rim', { camera: rims({ closedExtent: 97.6, openExtent: 110 }) });
    expect(told).toMatchObject({ level: 'error', limit: 10, about: 'holders[0].closedEnd' });
    expect(told?.value).toBeCloseTo(9.9, 9);
    // both ends alike: (97.6 + 110 − 171.4)/2
    expect(told?.hint).toMatch(/closedEnd: 18\.1 mm/);
  });
  test('a holder too short for two rims is to be made longer', () => {
    const [told] = toldOfWhole('holder-rim', { camera: rims({ closedExtent: 97, openExtent: 97 }) });
    expect(told).toMatchObject({ about: 'holders[0].length', hint: expect.stringMatching(/196 mm long/) }); // 175.4 + 20
  });
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
  test.each([
    { wellPlay: 0.3, told: [] },
    { wellPlay: 0.6, told: [] },
    { wellPlay: 0.29, told: [0.3] },
    { wellPlay: 0.61, told: [0.6] },
  ])('a play of $wellPlay a side', ({ wellPlay, told }) => {
    const back = { ...camera.objects.back, wellPlay };
    const found = toldOfWhole('well-fit', { camera: { ...camera, objects: { ...camera.objects, back } } });
    expect(found.map(({ limit }) => limit)).toEqual(told);
  });
});

describe('fence-below-slide: 0.3 of air over a fence of two boards of 1.25', () => {
  const slide = (slideDepth: number, build = heron.build) =>
    toldOfWhole('fence-below-slide', { design: withHolder(0, { slideDepth }), build });
  test('2.8 passes over 2.5', () => expect(slide(2.8)).toEqual([]));
  test('2.79 does not', () => {
    const [told] = slide(2.79);
    expect(told).toMatchObject({ level: 'error', value: 2.5, unit: 'mm', about: 'holders[0].slideDepth' });
    expect(told?.limit).toBeCloseTo(2.49, 9);
    expect(told?.hint).toMatch(/face of 2\.8 mm/);
  });
  test('where no board fits at all it is never left off: 1.55 is the least', () => {
    expect(slide(1.55, without('fence-open'))).toEqual([]);
    expect(slide(1.54, without('fence-open'))).toMatchObject([{ level: 'error', value: 1.25 }]);
  });
});

describe('slide-path: as long as the holder, in every position in which it is drawn', () => {
  test('free in Heron', () => expect(toldOfWhole('slide-path', {})).toEqual([]));
  test('a fence in the way of the slide', () => {
    const build = moving('fence-open', { y: 8, z: 3 });
    const told = toldOfWhole('slide-path', { build });
    expect(told.length).toBeGreaterThan(0);
    expect(told[0]).toMatchObject({ level: 'error', unit: 'mm', hint: expect.stringMatching(/slideDepth/) });
    // the paper holder is 210 long
    expect(told.map(({ limit }) => limit)).toContain(210);
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

test('holder-clears: 3 mm over the keepers', () => {
  // upright the closed end of the processing holder hangs lowest: 85.7 + 20 = 105.7 below the axis; the keepers stand
  // 138.775 − 8.1 − 4.05 − 0.3 = 126.325 below it: 20.625
  const lower = (y: number) => toldOfWhole('holder-clears', { build: moving('holder-2', { y }) });
  expect(lower(-17.62)).toEqual([]);
  const [told] = lower(-17.63);
  expect(told).toMatchObject({ level: 'error', limit: 3, unit: 'mm', hint: expect.stringMatching(/closed end/) });
  expect(told?.value).toBeCloseTo(2.995, 6);
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

test('scale-sense: the deepest holder’s line lies on the sole', () => {
  const room = (value: number) =>
    toldOfWhole('scale-sense', { camera: { ...camera, focusScale: { ...camera.focusScale, room: value } } });
  expect(room(2)).toEqual([]);
  expect(room(-4)).toMatchObject([
    {
      level: 'warning',
      value: -4,
      limit: 2,
      about: 'holders[1].filmDepth',
      hint: expect.stringMatching(/strip of 9 mm/),
    },
  ]);
});

describe('raised-rim: the fence at the open end stands 0.3 above the joint between spacer and holder', () => {
  // two layers of 1.25 mm channel board, less 0.3: 2.2; the spacer is what the glass is deeper than the holder's film
  const raisedBy = (lift: number) => {
    const planned = planCamera({
      ...design,
      groundGlass: { ...design.groundGlass, depth: 5.8 + lift },
      holders: design.holders.map((holder) => ({
        ...holder,
        filmDepth: 5.8 + (holder.name === 'paper holder' ? 0 : lift),
      })),
      shims: [0.1],
    });
    return toldOfWhole('raised-rim', { design: planned.design, camera: planned.camera, build: planned.build });
  };
  test('a spacer of 2.2 passes', () => expect(raisedBy(2.2)).toEqual([]));
  test('one of 2.3 is told, with the cure', () => {
    // 2.4 is made of 23 shims: the last 0.1 is within half the tolerance, 0.11
    const [told, ...others] = raisedBy(2.4);
    expect(others).toEqual([]);
    expect(told).toMatchObject({ level: 'warning', unit: 'mm', about: 'holders[0].filmDepth' });
    expect(told?.value).toBeCloseTo(2.3, 6);
    expect(told?.limit).toBeCloseTo(2.2, 6);
    expect(told?.hint).toContain('dark cloth');
  });
});

describe('raised-rim: a short holder in a long well', () => {
  // the opening reaches to 87.7 and the long holder to 330 − 105.7 = 224.3; a joint opens by 0.2, the fence is 2.5 high
  const beside = (length: number) => {
    const planned = planCamera({
      ...design,
      holders: design.holders.map((holder) => ({
        ...holder,
        closedEnd: 20,
        length: holder.name === 'paper holder' ? length : 330,
      })),
    });
    return toldOfWhole('raised-rim', { design: planned.design, camera: planned.camera, build: planned.build });
  };
  // rim 204.4 − 105.7 − 87.7 = 11, short by 125.6: 0.2 (1 + 125.6/11) = 2.484
  test('204.4 long passes', () => expect(beside(204.4)).toEqual([]));
  test('204.3 long is told, with the cure', () => {
    const [told, ...others] = beside(204.3);
    expect(others).toEqual([]);
    expect(told).toMatchObject({ level: 'warning', limit: 2.5, unit: 'mm', about: 'holders[0].length' });
    expect(told?.value).toBeCloseTo(0.2 * (1 + 125.7 / 10.9), 6);
    expect(told?.hint).toContain('strip');
  });
});
