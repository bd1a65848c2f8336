import { describe, expect, test } from 'vitest';
import { spanOf, spansOf } from '../../../src/assembly/span-of.js';
import { boundsOf } from '../../../src/geometry/path.js';
import { heronWith, STOPS } from '../asked-for.js';

const planned = heronWith(STOPS);
const { build, parts, design } = planned;
const flat = (id: string) => {
  const part = parts.find((one) => one.id === id);
  if (part?.kind !== 'flat') throw new Error(`there is no ${id}`);
  return part;
};
const holeOf = (id: string) => {
  const { left, right } = boundsOf(flat(id).holes[0] ?? []);
  return right - left;
};

describe('the hole of a stop', () => {
  /*
   * The hole of 30 at f/6.3 in the ratio of the f-numbers; f/11 stands for 2^3.5 = 11.3137, f/22 for 2^4.5 = 22.6274 (whole
   * stops are powers of the square root of 2): 30 × 6.3/8, /11.3137, /16, /22.6274.
   */
  test.each([
    ['WS1', 23.625],
    ['WS2', 16.7054],
    ['WS3', 11.8125],
    ['WS4', 8.3527],
  ])('%s is %s wide', (id, wide) => expect(holeOf(id)).toBeCloseTo(wide, 3));
  test('halves the light from one to the next', () => {
    for (const [a, b] of [
      ['WS1', 'WS2'],
      ['WS2', 'WS3'],
      ['WS3', 'WS4'],
    ] as const)
      expect((holeOf(a) / holeOf(b)) ** 2).toBeCloseTo(2, 9);
  });
  test('does not hang on the focal length: the full hole was measured', () => {
    const other = heronWith(STOPS.replace('30 mm', '15 mm'));
    const ws1 = other.parts.find(({ id }) => id === 'WS1');
    const { left, right } = boundsOf(ws1?.kind === 'flat' ? (ws1.holes[0] ?? []) : []);
    expect(right - left).toBeCloseTo(23.625 / 2, 6);
  });
});

describe('a plate', () => {
  test('is a little narrower than its slot, round at its end, and comes out of the barrel', () => {
    const { left, right, bottom, top } = boundsOf(flat('WS1').outline);
    expect(right - left).toBeCloseTo(39.7, 9);
    expect(bottom).toBeCloseTo(-39.7 / 2, 1);
    // barrel of 58: its mouth is 29 from the middle
    expect(top).toBeCloseTo(29 + 1 + 14, 9);
  });
  test('is cut from its own board, 0.2 thinner than the slot', () => {
    expect(flat('WS1')).toMatchObject({ material: 'board-0.8', thickness: 0.8 });
    expect(design.stops?.board).toEqual({ material: 'board-0.8', thickness: 0.8 });
  });
  test('bears its number on a tab that no other one hides', () => {
    const tabs = ['WS1', 'WS2', 'WS3', 'WS4'].map((id) => {
      const { marks, outline } = flat(id);
      const xs = outline.filter(({ y }) => y > 43).map(({ x }) => x);
      return { text: marks[0]?.text, from: Math.min(...xs), to: Math.max(...xs) };
    });
    expect(tabs.map(({ text }) => text)).toEqual(['8', '11', '16', '22']);
    tabs.slice(1).forEach(({ from, to }, i) => {
      expect(from).toBeGreaterThanOrEqual((tabs[i]?.to ?? 0) - 0.2);
      expect(to - from).toBeGreaterThanOrEqual(10 - 1e-9);
    });
  });
});

describe('the wallet', () => {
  test('stands on the side of the front box, as deep as the stops and the velvet', () => {
    const side = spanOf(build, 'F2R').x[1];
    expect(spanOf(build, 'WW1').x[0]).toBeCloseTo(side, 9);
    expect(spansOf(build, 'WW1')).toHaveLength(5);
    expect(spanOf(build, 'WW2').x[0] - side).toBeCloseTo(5 * 0.8, 9);
  });
  test('the stops stand in it one behind the other, on its floor', () => {
    const side = spanOf(build, 'F2R').x[1];
    ['WS1', 'WS2', 'WS3', 'WS4'].forEach((id, i) => {
      expect(spanOf(build, id).x[0]).toBeCloseTo(side + i * 0.8, 9);
    });
    expect(spanOf(build, 'velvet-stops').x[0]).toBeCloseTo(spanOf(build, 'WS4').x[1], 9);
  });
  test('nothing of the camera is other than without them', () => {
    const own = heronWith().parts.filter(({ id }) => !/^(T1|T4|tripod)/.test(id));
    for (const part of own) expect(parts.find(({ id }) => id === part.id)).toEqual(part);
  });
});

test('where nothing is said of the series, four whole stops follow the widest', () =>
  expect(heronWith('stops: { fullAperture: 30 mm, slot: [40 mm, 1 mm] }').design.stops).toMatchObject({
    marked: 6.3,
    depth: 29,
    series: [8, 11, 16, 22],
  }));
