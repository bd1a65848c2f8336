import { describe, expect, test } from 'vitest';
import { seeded } from '../../src/packing/random.js';
import {
  clearSkyline,
  cover,
  emptySkyline,
  levelWidth,
  lift,
  liftLeft,
  liftRight,
  lowestGap,
  narrowestGap,
  type Skyline,
} from '../../src/packing/skyline.js';

const WIDTH = 12;

/** The height over each unit of the strip: what a skyline says, told without levels. */
const heights = (sky: Skyline): readonly number[] =>
  Array.from({ length: sky.size }, (_, at) => new Array<number>(levelWidth(sky, at)).fill(sky.y[at] as number)).flat();

/** A skyline of these heights, unit by unit. */
function skylineOf(wanted: readonly number[]): Skyline {
  const sky = emptySkyline(wanted.length, wanted.length);
  clearSkyline(sky);
  // from the lowest up: nothing that is covered is higher
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] as number) - (wanted[b] as number));
  for (const unit of order) cover(sky, unit, unit + 1, wanted[unit] as number);
  return sky;
}

const neighboursDiffer = (sky: Skyline): boolean =>
  Array.from({ length: sky.size - 1 }, (_, at) => sky.y[at] !== sky.y[at + 1]).every(Boolean);

describe('a skyline', () => {
  test('covered at random is as high over each unit as the highest that covers it', () => {
    const random = seeded(3);
    for (let round = 0; round < 50; round++) {
      const sky = emptySkyline(WIDTH, WIDTH);
      clearSkyline(sky);
      const plain = new Array<number>(WIDTH).fill(0);
      for (let times = 0; times < 12; times++) {
        const left = Math.floor(random() * WIDTH);
        const right = left + 1 + Math.floor(random() * (WIDTH - left));
        const height = Math.max(...plain.slice(left, right)) + Math.floor(3 * random());
        cover(sky, left, right, height);
        plain.fill(height, left, right);
        expect(heights(sky)).toEqual(plain);
        expect(neighboursDiffer(sky)).toBe(true);
      }
    }
  });

  test.each([
    { name: 'the whole of a gap', change: (sky: Skyline) => lift(sky, 1, 2), becomes: [5, 5, 2, 2, 2, 3, 3] },
    { name: 'flush with its right wall', change: (sky: Skyline) => lift(sky, 1, 3), becomes: [5, 5, 3, 3, 3, 3, 3] },
    { name: 'flush with its left wall', change: (sky: Skyline) => lift(sky, 1, 5), becomes: [5, 5, 5, 5, 5, 3, 3] },
    { name: 'its left part', change: (sky: Skyline) => liftLeft(sky, 1, 1, 2), becomes: [5, 5, 2, 0, 0, 3, 3] },
    { name: 'its left part, flush', change: (sky: Skyline) => liftLeft(sky, 1, 1, 5), becomes: [5, 5, 5, 0, 0, 3, 3] },
    { name: 'its right part', change: (sky: Skyline) => liftRight(sky, 1, 2, 2), becomes: [5, 5, 0, 2, 2, 3, 3] },
    {
      name: 'its right part, flush',
      change: (sky: Skyline) => liftRight(sky, 1, 2, 3),
      becomes: [5, 5, 0, 3, 3, 3, 3],
    },
  ])('lifted by $name', ({ change, becomes }) => {
    const sky = skylineOf([5, 5, 0, 0, 0, 3, 3]);
    change(sky);
    expect(heights(sky)).toEqual(becomes);
    expect(neighboursDiffer(sky)).toBe(true);
  });

  test.each([
    { name: 'lowest and narrowest apart', of: [4, 0, 0, 0, 4, 2, 4], lowest: 1, narrowest: 3 },
    { name: 'a gap at the end of the strip', of: [4, 0, 0, 4, 4, 1], lowest: 1, narrowest: 3 },
    { name: 'a step is no gap', of: [4, 3, 0, 0], lowest: 2, narrowest: 2 },
    { name: 'the leftmost of several', of: [1, 2, 1], lowest: 0, narrowest: 0 },
    { name: 'an empty strip', of: [0, 0, 0], lowest: 0, narrowest: 0 },
  ])('$name', ({ of, lowest, narrowest }) => {
    expect([lowestGap(skylineOf(of)), narrowestGap(skylineOf(of))]).toEqual([lowest, narrowest]);
  });
});
