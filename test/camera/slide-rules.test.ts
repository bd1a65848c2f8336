import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { planCamera } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';
import { heron, toldOfWhole, valued, withRod } from './worked.js';

/** Limits: the table of rules in camera.md section 16; figures of Heron: its section 17. */

const { design, camera } = heron;
const rod = camera.settingOut;
const told = (text: string, rule: string) => planCamera(designOf(text)).findings.filter((f) => f.rule === rule);
const nearest = (m: string) => changed(heronText, 'nearest: 1:2.5', `nearest: ${m}`);

describe('reach-near: two boxes reach 1:2.15 with both holders, and 1:3.1 with the lens in front', () => {
  // right side of the inequality in section 7: 203.5 − 8 − 48 + 5.8 − 8.1 − 6.05 − 2 − 39.25 = 97.9; over 210: 0.46619
  test('0.466 is reached', () => expect(told(nearest('0.466'), 'reach-near')).toEqual([]));

  test('1:2 is not, and the message says what would help', () => {
    const [finding, ...more] = told(nearest('1:2'), 'reach-near');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ level: 'error', limit: 0.5, unit: 'magnification', about: 'focus.nearest' });
    expect(finding?.value).toBeCloseTo(97.9 / 210, 9);
    expect(finding?.message).toMatch(/^1:2\.15 is the nearest .* 1:2 asks for 7\.1 mm more\./); // 105 − 97.9
    expect(finding?.message).toMatch(/processing holder, or off pastInfinity, brings 2 mm \(1:2\.11\)/); // 210/99.9 = 2.102
    expect(finding?.message).toMatch(/brings 1 mm \(1:2\.13\)/); // 210/98.9 = 2.1234
    // 1:3.1, less than there is
    expect(finding?.message).not.toMatch(/from the front/);
    expect(finding?.hint).toMatch(/Write nearest: 1:2\.15\./);
    expect(finding?.hint).toMatch(/processing holder 3\.6 mm shallower/); // 7.1/2, in tenths upwards
    expect(finding?.hint).toMatch(/farthest: 1:59\./); // 420/7.1
  });

  test('what it proposes is reached', () => {
    expect(told(nearest('1:2.15'), 'reach-near')).toEqual([]);
    expect(told(changed(nearest('1:2'), 'filmDepth: 24 mm', 'filmDepth: 20.4 mm'), 'reach-near')).toEqual([]);
    expect(told(changed(nearest('1:2'), 'pastInfinity', 'farthest: 1:59, pastInfinity'), 'reach-near')).toEqual([]);
  });

  test('where one depth serves all, a millimetre off it counts once', () => {
    const one = changed(nearest('1:1.5'), 'filmDepth: 24 mm', 'filmDepth: 5.8 mm');
    expect(told(one, 'reach-near')[0]?.message).toMatch(
      /off pastInfinity brings 2 mm.*holder and glass together, 1 mm/,
    );
  });

  test('a holder that is only 2 mm deeper than the glass does not bring 2 for ever', () => {
    // 97.9 and 16.2 more, with the glass at 22; 210/1.7 asks for 123.5: 9.4 are missing, of which the 2 bring 4
    const near = changed(nearest('1:1.7'), 'depth: 5.8 mm', 'depth: 22 mm');
    expect(told(near, 'reach-near')[0]?.message).toMatch(
      /processing holder, as long as nothing else is as deep, or off/,
    );
  });

  test('a glass that is deeper than every holder is named alone', () => {
    const text = changed(nearest('1:1.7'), 'depth: 5.8 mm', 'depth: 30 mm');
    expect(told(text, 'reach-near')[0]?.message).toMatch(/off the depth of the ground glass, 1 mm/);
  });

  test('the other side of the board is told where it reaches more, and only there', () => {
    const front = changed(nearest('1:2'), 'side: inside', 'side: front');
    expect(told(front, 'reach-near')[0]?.message).toMatch(/Mounted from inside the lens would reach 1:2\.15\./);
  });

  test('a lens so near to the film that the boxes never close is told in words', () => {
    const short = changed(heronText, '203.5 mm', '80 mm');
    expect(told(short, 'reach-near')[0]?.message).toMatch(/do not even close on infinity/);
    expect(told(short, 'box-meets-panel')[0]).toMatchObject({ level: 'error', about: 'lens.flangeDistance' });
  });
});

describe('infinity-left-out: a camera for portraits says where it ends', () => {
  const portrait = (farthest: string, m = '1:1.8') =>
    told(changed(nearest(m), 'pastInfinity', `farthest: ${farthest}, pastInfinity`), 'infinity-left-out');

  test('nothing is said where infinity is asked for', () => expect(told(heronText, 'infinity-left-out')).toEqual([]));

  test('at 1:8 the subject is 1.89 m away, and 26.25 mm of travel are saved', () => {
    const [finding, ...more] = portrait('1:8');
    expect(more).toEqual([]);
    // u = f (1 + 1/m) = 210 × 9; f·m = 26.25; the run past it: 26.25 − 4 over 210, 1:9.44
    expect(finding).toMatchObject({ level: 'note', value: 26.25, unit: 'mm', about: 'focus.farthest' });
    expect(finding?.message).toMatch(
      /no farther than 1:8, 1\.89 m ahead of the lens, and with the run past it to 1:9\.4/,
    );
    expect(finding?.message).toMatch(/saves 26\.3 mm of travel and gives 52\.5 mm of reach/);
    expect(finding?.hint).toMatch(/With infinity 1:2\.15 would be the nearest/); // 97.9/210, as in reach-near
  });

  test('a nearest that is reached with infinity too needs no farthest', () =>
    expect(portrait('1:8', '1:2.5')[0]?.hint).toMatch(/Leave out farthest/));

  test('a run past it that is longer than its extension comes to infinity', () =>
    // 210/59 = 3.56 of the 4 mm
    expect(portrait('1:59', '1:2.5')[0]?.message).toMatch(/comes to infinity all the same/));
});

describe('reach-reserve: 3 % of the focal length past the nearest, 1 % of the flange distance past infinity', () => {
  const reserve = (value: number) => toldOfWhole('reach-reserve', { camera: withRod({ reserve: value }) });
  test('6.3 mm of reserve for 210', () => {
    expect(reserve(6.31)).toEqual([]);
    expect(reserve(6.29)).toMatchObject([
      { level: 'warning', value: 6.29, limit: 6.3, unit: 'mm', hint: expect.stringMatching(/pastNearest: 6\.5 mm/) },
    ]);
  });
  test('a reserve beyond the slack of 13.9', () => {
    expect(reserve(13.8)).toEqual([]);
    expect(reserve(14)).toMatchObject([
      { level: 'warning', value: 14, about: 'focus.pastNearest', hint: expect.stringMatching(/13\.9 mm/) },
    ]);
  });
  test('a slack too short for the reserve asks for less magnification', () => {
    const [finding] = toldOfWhole('reach-reserve', { camera: withRod({ slack: 3, reserve: 3 }) });
    expect(finding).toMatchObject({
      level: 'warning',
      about: 'focus.nearest',
      hint: expect.stringMatching(/nearest: 1:2\.3/),
    });
    // 1/(0.46619 − 0.03) = 2.2926
  });
  test('2.035 mm past infinity for 203.5', () => {
    const past = (pastInfinity: number): Design => ({ ...design, focus: { ...design.focus, pastInfinity } });
    expect(toldOfWhole('reach-reserve', { design: past(2.04) })).toEqual([]);
    expect(toldOfWhole('reach-reserve', { design: past(2.03) })).toMatchObject([
      {
        level: 'warning',
        value: 2.03,
        limit: 2.035,
        about: 'focus.pastInfinity',
        hint: expect.stringMatching(/2\.5 mm/),
      },
    ]);
  });
  test('where the nearest itself is out of reach, reach-near says so alone', () =>
    expect(toldOfWhole('reach-reserve', { camera: withRod({ slack: -1, reserve: 0 }) })).toEqual([]));
});

describe('reach-reserve: of a lens that was measured on the bench, what its errors ask for', () => {
  /** Bench B of the check values, V7.08, common practice, no source: constructed. */
  const benchB = { focalLength: 0.369608, flangeDistance: 0.208673, correlation: -0.863475, readings: 8 };
  const measured = (uncertainty: Design['lens']['uncertainty'], pastInfinity = 4): Design => ({
    ...design,
    lens: { ...design.lens, uncertainty },
    focus: { ...design.focus, nearest: 0.5, pastInfinity },
  });
  const reserve = (value: number, lens: Design) =>
    toldOfWhole('reach-reserve', { design: lens, camera: withRod({ reserve: value }) });

  // 2.447 (Student's t for 6 degrees of freedom, from memory: NIST/SEMATECH e-Handbook, 1.3.6.7.2) × u of the mean at
  // m = 0.5 and at infinity, 0.1054 and 0.2087 (V7.09, common practice, no source: constructed)
  test('2.447 × 0.1054 = 0.2579 mm past 1:2', () => {
    expect(reserve(0.2582, measured(benchB))).toEqual([]);
    expect(reserve(0.2576, measured(benchB))).toMatchObject([
      {
        level: 'warning',
        value: 0.2576,
        unit: 'mm',
        message: expect.stringMatching(/As measured, 95 times of 100 .* 0\.26 mm/),
        hint: expect.stringMatching(/pastNearest: 0\.5 mm/),
      },
    ]);
  });
  test('2.447 × 0.2087 = 0.5107 mm past infinity', () => {
    expect(reserve(6.31, measured(benchB, 0.511))).toEqual([]);
    expect(reserve(6.31, measured(benchB, 0.5103))).toMatchObject([
      { about: 'focus.pastInfinity', message: expect.stringMatching(/past infinity\. As measured, 95 times of 100/) },
    ]);
  });
  test('1.960 × 0.1054 = 0.2066 mm where the readings were not counted', () => {
    const many = measured({ ...benchB, readings: null });
    expect(reserve(0.2068, many)).toEqual([]);
    expect(reserve(0.2063, many)).toHaveLength(1);
  });
  test('a lens measured badly asks for more than 3 % and 1 %', () => {
    const bad = measured({ ...benchB, focalLength: 30, flangeDistance: 9 }, 9);
    expect(reserve(6.31, bad).map(({ about }) => about)).toEqual(['focus.nearest', 'focus.pastInfinity']);
  });
  test('one that does not go to infinity is judged at its farthest', () => {
    const near = (pastInfinity: number): Design => {
      const lens = measured(benchB, pastInfinity);
      return { ...lens, focus: { ...lens.focus, farthest: 0.5 } };
    };
    expect(reserve(6.31, near(0.2582))).toEqual([]);
    expect(reserve(6.31, near(0.2576))).toMatchObject([{ message: expect.stringMatching(/1:2 is lost/) }]);
  });
});

test('lens-passes-box: 3 mm of air round the lens in a box of 188.15', () => {
  const wide = (radiusBehindPanel: number) => ({
    ...withRod({ panelDead: valued(rod.panelDead, 55) }),
    objects: {
      ...camera.objects,
      lensBoard: { ...camera.objects.lensBoard, claims: { ...camera.objects.lensBoard.claims, radiusBehindPanel } },
    },
  });
  expect(toldOfWhole('lens-passes-box', { camera: wide(91.07) })).toEqual([]);
  const [finding] = toldOfWhole('lens-passes-box', { camera: wide(91.08) });
  expect(finding).toMatchObject({
    level: 'warning',
    value: 91.08,
    unit: 'mm',
    hint: expect.stringMatching(/narrower/),
  });
  expect(finding?.limit).toBeCloseTo(91.075, 9);
  expect(finding?.message).toMatch(/costs 49 mm of reach/); // 55 − 4.05 − 2 = 48.95
});

test('board-widens: told where the lens board, not the picture, makes the boxes wide', () => {
  expect(toldOfWhole('board-widens', {})).toEqual([]);
  const [image, board] = rod.rearInside.claims;
  const claims = [image, { because: board?.because ?? '', value: 200 }].flatMap((claim) => claim ?? []);
  const camera200 = withRod({ rearInside: { ...rod.rearInside, value: 200, claims } });
  expect(toldOfWhole('board-widens', { camera: camera200 })).toMatchObject([{ level: 'note', value: 200 }]);
});
