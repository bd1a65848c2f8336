import { describe, expect, test } from 'vitest';
import { lettering } from '../../../src/geometry/lettering.js';
import { moved, type Point } from '../../../src/geometry/path.js';
import type { FlatPart, Mark } from '../../../src/model/part.js';
import { planCamera } from '../../../src/pipeline.js';
import { keptDesign, keptDesigns } from '../../designs/kept-design.js';

/** Across the head of a countersunk wood screw of 3 mm [common practice, no source]. */
const HEAD = 6;

const keepersOf = (name: string): readonly FlatPart[] =>
  planCamera(keptDesign(name)).parts.flatMap((part) =>
    part.kind === 'flat' && (part.id === 'T3' || part.id === 'T3S') ? [part] : [],
  );

const inkOf = ({ text, x, y, height, turn }: Mark): readonly Point[] =>
  lettering(text, height).strokes.flatMap(({ vertices }) => moved(vertices, { x, y, turn }));

describe.each(keptDesigns)('the scales of %s', (name) => {
  const [left, right] = keepersOf(name) as [FlatPart, FlatPart];

  test('say what they count in: metres on the one, 1:n and stops on the other', () => {
    const [metres, ratios] = [left, right].map(({ marks }) => marks.map(({ text }) => text)) as [string[], string[]];
    expect(metres.filter((text) => text === 'm')).toHaveLength(1);
    expect(metres.filter((text) => !/^(m|inf|\d+(\.\d+)?)$/.test(text))).toEqual([]);
    expect(ratios.filter((text) => text === 'stops')).toHaveLength(1);
    expect(ratios.filter((text) => !/^(stops|inf|1:\d+(\.\d+)?|\+\d(\.\d)?)$/.test(text))).toEqual([]);
  });

  test('no screw head lies on a word', () => {
    for (const { id, holes, marks } of [left, right])
      for (const hole of holes) {
        const middle = {
          x: ((hole[0]?.x ?? 0) + (hole[1]?.x ?? 0)) / 2,
          y: ((hole[0]?.y ?? 0) + (hole[1]?.y ?? 0)) / 2,
        };
        for (const mark of marks)
          for (const { x, y } of inkOf(mark))
            expect.soft(Math.hypot(x - middle.x, y - middle.y), `${id} ${mark.text}`).toBeGreaterThan(HEAD / 2);
      }
  });

  test('every correction stands beside its magnification: (1 + m)² as long at m', () => {
    const corrections = right.marks.filter(({ text }) => text.startsWith('+'));
    expect(corrections.length).toBeGreaterThan(0);
    for (const { text, y } of corrections) {
      const ratio = right.marks.find((other) => other.text.startsWith('1:') && Math.abs(other.y - y) < 1e-9);
      const m = 1 / Number(ratio?.text.slice(2));
      // pupil magnification 1 in all kept designs; 2 log2(1 + m) stops [common practice]
      expect.soft(Math.abs(Number(text) - 2 * Math.log2(1 + m)), ratio?.text).toBeLessThanOrEqual(0.05 + 1e-9);
    }
  });
});
