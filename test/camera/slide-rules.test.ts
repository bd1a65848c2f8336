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
    expect(finding?.message).toMatch(/processing holder, or off pastInfinity, brings 2 mm \(1:2\.1\)/); // 210/99.9
    expect(finding?.message).toMatch(/brings 1 mm \(1:2\.12\)/); // 210/98.9
    expect(finding?.message).toMatch(/from the front the lens would reach 1:3\.1\./);
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

  test('a lens so near to the film that the boxes never close is told in words', () => {
    const short = changed(heronText, '203.5 mm', '80 mm');
    expect(told(short, 'reach-near')[0]?.message).toMatch(/do not even close on infinity/);
    expect(told(short, 'box-meets-panel')[0]).toMatchObject({ level: 'error', about: 'lens.flangeDistance' });
  });
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
