import { describe, expect, test } from 'vitest';
import { planCamera } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';
import { heron, movePart, print, removePart, reshapeOutline, rulesTelling, toldUnder } from '../planted.js';

/** Limits: the inequalities of camera.md section 7 and the table of its section 16; figures of Heron: its section 17. */

const { build } = heron;

test('Heron as it stands breaks no rule of the wood', () => expect(rulesTelling(build)).toEqual([]));

describe('box-meets-panel: 167.4 − 161.35 = 6.05 behind the panel, a corner strip of 4.05 and 2', () => {
  test('a wall that stands where it should passes, 0.01 nearer it is told', () => {
    const near = movePart(build, 'R1L', { z: -0.01 });
    const [told, ...more] = toldUnder('box-meets-panel', near);
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level: 'error', unit: 'mm', about: 'focus.pastInfinity' });
    expect(told?.value).toBeCloseTo(6.04, 6);
    expect(told?.limit).toBeCloseTo(6.05, 6);
    expect(told?.message).toMatch(/stands 6 mm behind the panel, where the corner strip and a gap take 6\.1 mm/);
    expect(told?.hint).toMatch(/off pastInfinity/);
    expect(rulesTelling(near)).toEqual(['box-meets-panel']);
  });

  test.each(['R1L', 'R1R', 'R2T', 'R2F'])('%s is looked at as well as the others', (wall) =>
    expect(rulesTelling(movePart(build, wall, { z: -0.01 }))).toEqual(['box-meets-panel']),
  );

  test('strips that stand proud of their place are in the way', () => {
    const [told] = toldUnder('box-meets-panel', movePart(build, 'F5', { z: 0.5 }));
    expect(told?.limit).toBeCloseTo(6.55, 6);
  });

  test('a clamp too wide to pass inside the rear box must end 2 ahead of it', () => {
    // inside 188.15: from the axis 94.075, less 3 of free air
    const wide = (across: number) => toldUnder('box-meets-panel', print(build, 'lens-clamp', [across, across, 22]));
    expect(wide(182.14)).toEqual([]);
    expect(wide(182.16)).toMatchObject([{ level: 'error', limit: 24, message: expect.stringMatching(/lens clamp/) }]);
  });

  test('where no box as long as the overlap has room between panel and standard, it is the lens that is told', () => {
    const short = planCamera(designOf(changed(heronText, '203.5 mm', '80 mm')));
    const told = toldUnder('box-meets-panel', short.build, short.design);
    expect(told.at(-1)).toMatchObject({ level: 'error', about: 'lens.flangeDistance', unit: 'mm' });
    // as many millimetres nearer as the flange distance is shorter: 161.35 − 123.5
    expect(told.at(-1)?.value).toBeCloseTo(37.85, 6);
    expect(told.at(-1)?.limit).toBeCloseTo(39.25, 6);
    const enough = planCamera(designOf(changed(heronText, '203.5 mm', '81.4 mm')));
    expect(toldUnder('box-meets-panel', enough.build, enough.design)).toEqual([]);
  });
});

describe('back-meets-box: 167.4 − 165.4, of 2', () => {
  test('a standard 0.01 further forward', () => {
    const near = movePart(build, 'R3', { z: -0.01 });
    const [told, ...more] = toldUnder('back-meets-box', near);
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      level: 'error',
      limit: 2,
      unit: 'mm',
      hint: expect.stringMatching(/shorten the front box/),
    });
    expect(told?.value).toBeCloseTo(1.99, 6);
    expect(told?.message).toMatch(/stops the slide short of infinity/);
    expect(rulesTelling(near)).toEqual(['back-meets-box']);
  });
  test.each(['F2L', 'F2R', 'F3', 'F4'])('%s cut too long', (wall) => {
    const long = (by: number) => reshapeOutline(build, wall, (p) => ({ ...p, z: p.z > 165 ? p.z + by : p.z }));
    expect(rulesTelling(long(0))).toEqual([]);
    expect(rulesTelling(long(0.01))).toEqual(['back-meets-box']);
  });
});

describe('overlap-far: 53.15, of 39.25', () => {
  const back = (by: number) => movePart(build, 'R1L', { z: by });
  test('13.89 less passes, 13.91 less is told with what would help', () => {
    expect(rulesTelling(back(13.89))).toEqual([]);
    const [told, ...more] = toldUnder('overlap-far', back(13.91));
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level: 'error', unit: 'mm', about: 'focus.nearest' });
    expect(told?.value).toBeCloseTo(39.24, 6);
    expect(told?.limit).toBeCloseTo(39.25, 6);
    expect(told?.message).toMatch(/light gets in; 39\.3 mm of overlap are needed \(a fifth of the rear box/);
    expect(rulesTelling(back(13.91))).toEqual(['overlap-far']);
  });
  test('21 mm too little at 1:2.5 asks for 0.1 less magnification: 1:3.34', () => {
    // 0.4 − 21/210 = 0.3: 1:3.34, never nearer than that
    expect(toldUnder('overlap-far', back(13.9 + 21))[0]?.hint).toMatch(/nearest: 1:3\.34\b/);
  });
  describe('what a millimetre brings is what the boxes gain when it is taken off', () => {
    const one = changed(heronText, 'nearest: 1:2.5', 'nearest: 1:1.5').replace(/\n.*- \{ name: processing.*/, '');
    const two = changed(heronText, 'nearest: 1:2.5', 'nearest: 1:1.5');
    const overlapOf = (text: string) => {
      const { build: own, design } = planCamera(designOf(text));
      const [finding] = toldUnder('overlap-far', own, design);
      return { overlap: finding?.value ?? Number.NaN, hint: finding?.hint ?? '' };
    };
    const gained = (text: string, from: string, to: string) =>
      overlapOf(text.replaceAll(from, to)).overlap - overlapOf(text).overlap;

    test('one holder that the glass stands with: one, and pastInfinity two', () => {
      expect(gained(one, '5.8 mm', '4.8 mm')).toBeCloseTo(1, 6);
      expect(gained(one, 'pastInfinity: 4', 'pastInfinity: 3')).toBeCloseTo(2, 6);
      expect(overlapOf(one).hint).toMatch(
        /off pastInfinity brings 2 mm; off the film depth of holder and glass together, 1/,
      );
    });

    test('a holder deeper than the glass: two', () => {
      expect(gained(two, 'filmDepth: 24 mm', 'filmDepth: 23 mm')).toBeCloseTo(2, 6);
      expect(overlapOf(two).hint).toMatch(
        /off the film depth of the processing holder, .*or off pastInfinity, brings 2 mm/,
      );
    });
  });
  test('boxes that part are told so', () =>
    expect(toldUnder('overlap-far', back(60.05))[0]?.message).toMatch(/are 6\.9 mm apart/));
  test('a narrow box needs two felt bands and room between them', () => {
    // 2 x 15 + 5 = 35, where a fifth of the width is less: the walls 40 nearer to each other, 156.25/5 = 31.25
    const narrow = ['R1R', 'R2T'].reduce((b, id) => movePart(b, id, id === 'R1R' ? { x: -40 } : { y: -40 }), build);
    expect(toldUnder('overlap-far', movePart(narrow, 'R1L', { z: 18.14 }))).toEqual([]);
    expect(toldUnder('overlap-far', movePart(narrow, 'R1L', { z: 18.16 }))).toMatchObject([
      { limit: 35, message: expect.stringMatching(/two felt bands/) },
    ]);
  });
});

describe('reach-infinity: closest 175.5 and 4 past it, where the deepest holder wants 203.5 − 24 = 179.5', () => {
  test('a seat 0.01 too far back loses the deepest holder alone', () => {
    const [told, ...more] = toldUnder('reach-infinity', movePart(build, 'B1', { z: 0.01 }));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      level: 'error',
      limit: 179.5,
      unit: 'mm',
      hint: expect.stringMatching(/pastInfinity/),
    });
    expect(told?.value).toBeCloseTo(179.51, 9);
    expect(told?.message).toMatch(/Hills stay soft: with processing holder/);
    expect(rulesTelling(movePart(build, 'B1', { z: 0.01 }))).toEqual(['reach-infinity']);
  });
  test('18.3 too far back loses the others too', () =>
    // 24 − 5.8 = 18.2
    expect(toldUnder('reach-infinity', movePart(build, 'B1', { z: 18.3 }))).toHaveLength(3));
  test('a clamp that lets the lens stand 0.01 too far forward', () =>
    expect(rulesTelling(movePart(build, 'lens-clamp', { z: -0.01 }))).toEqual(['reach-infinity']));
});

describe('reach-near: farthest 281.7, where the shallowest holder wants 203.5 + 84 − 5.8', () => {
  test('a clamp that lets the lens stand 0.01 too far back', () => {
    const back = movePart(build, 'lens-clamp', { z: 0.01 });
    const told = toldUnder('reach-near', back);
    expect(told).toMatchObject([
      {
        level: 'error',
        about: 'focus.nearest',
        message: expect.stringMatching(/Portraits stay soft: with paper holder/),
      },
      { level: 'error', message: expect.stringMatching(/the bare ground glass/) },
    ]);
    expect(told[0]?.value).toBeCloseTo(281.7, 9);
    expect(told[0]?.limit).toBeCloseTo(281.71, 9);
    expect(rulesTelling(back)).toEqual(['reach-near']);
  });
  test('a lens whose clamp is not there rests on nothing', () =>
    expect(() => rulesTelling(removePart(build, 'lens-clamp'))).toThrow(/lens-clamp/));
});
