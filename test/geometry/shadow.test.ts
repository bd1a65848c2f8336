import { describe, expect, test } from 'vitest';
import { frame } from '../../src/geometry/placement.js';
import { holds, leftOf, type Patch, screenOf, shadowMaker } from '../../src/geometry/shadow.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';

const areaOf = (patch: Patch): number => {
  let twice = 0;
  for (let i = 0; i < patch.length; i += 2) {
    const k = (i + 2) % patch.length;
    twice += (patch[i] as number) * (patch[k + 1] as number) - (patch[k] as number) * (patch[i + 1] as number);
  }
  return Math.abs(twice) / 2;
};

/** A cube of 2, its foot at z. */
const cube = (x: number, y: number, z: number) =>
  screenOf(rectangle(boxAt(0, 0, 2, 2)), 2, frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [x, y, z]));

/** What is left of a square of 40 round the eye's foot, on a plane 20 behind the eye. */
function left(screen: ReturnType<typeof cube>, side: 'before' | 'behind', plane = 20): number | 'everything' {
  const hidden = shadowMaker()(screen, { x: 0, y: 0, z: 0, plane }, side);
  if (hidden === 'everything') return 'everything';
  const square = [-20, -20, 20, -20, 20, 20, -20, 20];
  if (hidden === 'nothing') return 1600;
  const rest = leftOf(square, hidden);
  return rest === 'all' ? 1600 : rest.reduce((sum, patch) => sum + areaOf(patch), 0);
}

describe('the shadow of a cube on a plane 20 away', () => {
  // similar triangles: its near face, 2 wide at 5 away, is 8 wide on the plane; the far face lies in that shadow
  test('straight ahead', () => expect(left(cube(0, 0, 5), 'before')).toBeCloseTo(1600 - 64, 9));
  // at 4 to the side: near face from 3 to 5 at 5 away: 12 … 20; the far face, 7 away, from 8.57 to 14.3: 20 − 8.57 wide
  // and 8 high at the near face, 5.71 at the far one: hull of both rectangles
  test('to one side, where a flank is seen as well', () =>
    expect(left(cube(4, 0, 5), 'before')).toBeCloseTo(1600 - (8 * 8 + ((8 + 40 / 7) / 2) * (12 - 60 / 7)), 9));
  // what stands 5 behind the eye throws the same shadow through it, upside down
  test('from behind the eye', () => expect(left(cube(0, 0, -7), 'behind')).toBeCloseTo(1600 - 64, 9));
  test('behind it hides nothing before it', () => expect(left(cube(0, 0, -7), 'before')).toBe(1600));
  test('beyond the plane hides nothing', () => expect(left(cube(0, 0, 21), 'before')).toBe(1600));
  // only the half that stands ahead of the plane: a cube on the plane hides its own foot, 2 × 2, and as much more as its top
  // at 19 throws: 2 · 20/19
  test('through the plane, as far as it stands ahead of it', () =>
    expect(left(cube(0, 0, 19), 'before')).toBeCloseTo(1600 - (40 / 19) ** 2, 9));
  test('round the eye hides everything', () => expect(left(cube(0, 0, -1), 'before')).toBe('everything'));
  test('a turned one, edge ahead', () => {
    const h = Math.SQRT1_2;
    const turned = screenOf(
      rectangle(boxAt(0, 0, 2, 2)),
      2,
      frame([h, 0, h], [0, 1, 0], [-h, 0, h], [0, 0, 5 + Math.SQRT2]),
    );
    // seen from above a square on its corner: the near one at x −h, z 5 + h; the two that bound what is seen at x −3h and
    // h, z 5 + 3h. Everything is 2 high: 40/z on the plane, so two trapezoids with their parallel sides upright
    const [near, far] = [5 + h, 5 + 3 * h];
    const mean = (40 / near + 40 / far) / 2;
    const [edge, low, high] = [(20 * -h) / near, (20 * -3 * h) / far, (20 * h) / far];
    expect(left(turned, 'before')).toBeCloseTo(1600 - mean * (edge - low) - mean * (high - edge), 6);
  });
});

test.each([
  { at: { x: 0.9, y: 0, z: 6 }, is: true },
  { at: { x: 1.1, y: 0, z: 6 }, is: false },
  { at: { x: 0, y: 0, z: 4.9 }, is: false },
])('$at lies in a cube at z 5 … 7: $is', ({ at, is }) => expect(holds(cube(0, 0, 5), at)).toBe(is));
