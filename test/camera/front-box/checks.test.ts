import { describe, expect, test } from 'vitest';
import { frontFingers, thinPanel } from '../../../src/camera/front-box/checks.js';
import { altered, cutTo } from '../altered.js';
import { heron, moving } from '../worked.js';

const { frontBox } = heron.camera.objects;

describe('thin-panel', () => {
  // camera.md section 16: free span over thickness 60, common practice, no source; Heron spans 199.25 (section 17)
  const spanning = (span: number) => thinPanel(frontBox, moving('F2R', { x: span - 199.25 }));
  test('60 thicknesses of 4.05 span 243', () => {
    expect(spanning(242.99)).toEqual([]);
    const [told] = spanning(243.5);
    expect(told).toMatchObject({
      rule: 'thin-panel',
      level: 'warning',
      limit: 60,
      about: 'plywood.thickness',
      message:
        'The walls of the front box span 60 times their thickness: they bow inwards in damp weather, and the rear box rubs.',
    });
    expect(told?.value).toBeCloseTo(60.12, 2);
    expect(told?.hint).toMatch(/sheet of 4\.1 mm/);
  });

  test('pushed with 10 N it may bow by half the air to the rear box', () => {
    // P L³/(48 E I), I = b t³/12: with E 7000 and b 169.45 of wall 0.251 on a span of 199.25, from floor to top (handbooks of statics)
    expect(spanning(199.25 - 0.99)).toEqual([]);
    const [told] = spanning(199.25 - 1.01);
    expect(told).toMatchObject({
      rule: 'thin-panel',
      level: 'warning',
      unit: 'mm',
      message:
        'Pushed with 10 N, a wall of the front box bows 0.25 mm, more than half of the 0.5 mm to the rear box: it rubs.',
      hint: expect.stringMatching(/^Use sheet of 4\.1 mm or more/),
    });
    expect(told?.value).toBeCloseTo((10 * 199.25 ** 3) / (48 * 7000 * ((169.45 * 4.05 ** 3) / 12)), 3);
    expect(told?.limit).toBeCloseTo(0.245, 6);
  });
});

describe('finger-rule: every edge of the front box is looked at', () => {
  test('as it is made', () => expect(frontFingers(frontBox, heron.build)).toEqual([]));

  /** The part with a finger in the middle of an edge cut to this width; the edge lies beyond `at` along the other axis. */
  const narrowed = (id: string, axis: 'x' | 'y', at: number, width: number) =>
    cutTo(heron.build, id, ({ outline }) => {
      const other = axis === 'x' ? 'y' : 'x';
      const onEdge = outline.filter((v) => v[other] > at).map((v) => v[axis]);
      const ends = [...new Set(onEdge.map((end) => Math.round(end * 1e6) / 1e6))].sort((a, b) => a - b);
      const middle = Math.floor(ends.length / 2);
      const [from = 0, to = 0] = [ends[middle], ends[middle + 1]];
      return {
        outline: outline.map((v) =>
          v[other] > at && Math.abs(v[axis] - to) < 1e-4 ? { ...v, [axis]: from + width } : v,
        ),
      };
    });

  test.each([
    // Heron's front box is 207.35 wide outside (section 17): its edges lie beyond 103.675 - 4.05
    { id: 'F1', axis: 'y', words: 'panel to side' },
    { id: 'F1', axis: 'x', words: 'panel to top' },
    { id: 'F2L', axis: 'x', words: 'side to top' },
    { id: 'F2R', axis: 'x', words: 'side to top' },
  ] as const)('$words, in $id', ({ id, axis, words }) => {
    // 2 t = 8.1: camera.md section 14, common practice, no source
    expect(frontFingers(frontBox, narrowed(id, axis, 99, 8.11))).toEqual([]);
    const told = frontFingers(frontBox, narrowed(id, axis, 99, 8.05));
    expect(told).toHaveLength(1);
    expect(told[0]?.message).toMatch(
      new RegExp(`^Front box, ${words}: \\d+ fingers of 8\\.05 mm on [\\d.]+ mm crumble\\.$`),
    );
    expect(told[0]?.value).toBeCloseTo(8.05, 5);
    expect(told[0]?.limit).toBeCloseTo(8.1, 9);
  });

  test('left and right are told once where they are alike', () => {
    const both = cutTo(heron.build, 'F1', ({ outline }) => ({ outline: outline.map((v) => ({ ...v, y: v.y / 2 })) }));
    const words = frontFingers(frontBox, both).map(({ message }) => message);
    expect(words.filter((message) => message.includes('panel to side'))).toHaveLength(1);
  });

  test('the wood that is looked at is the wood as it stands: thicker sheet wants wider fingers', () => {
    const thick = altered(heron.build, 'F1', (part) => (part.kind === 'flat' ? { ...part, thickness: 6.2 } : part));
    // fingers of 11.5 to 12.7 in sheet of 6.2 would have to be 12.4: camera.md section 14
    const limits = frontFingers(frontBox, thick).map(({ limit }) => limit);
    expect(limits.length).toBeGreaterThan(0);
    for (const limit of limits) expect(limit).toBeCloseTo(12.4, 9);
  });
});
