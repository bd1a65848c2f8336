import { describe, expect, test } from 'vitest';
import { lettering } from '../../../src/geometry/lettering.js';
import { moved, type Point } from '../../../src/geometry/path.js';
import type { FlatPart, Mark } from '../../../src/model/part.js';
import { planCamera } from '../../../src/pipeline.js';
import { designOf } from '../../design/reading.js';

import { bareHeronText, keptDesign, keptDesigns } from '../../designs/kept-design.js';

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

describe('the numbers of the index lines', () => {
  const holder = (name: string, depth: number) =>
    `  - { name: ${name}, filmDepth: ${depth} mm, depthTo: emulsion, width: 160 mm, length: 210 mm, thickness: ${depth + 10} mm }\n`;
  const soleOf = (depths: readonly number[]) => {
    const holders = depths.map((depth, i) => holder(`holder ${i + 1}`, depth)).join('');
    const { parts } = planCamera(designOf(bareHeronText().replace(/^holders:\n( .*\n)+/m, `holders:\n${holders}`)));
    const sole = parts.find(({ id }) => id === 'R4U');
    if (sole?.kind !== 'flat') throw new Error('the sole is cut from sheet');
    return sole;
  };
  const middleOf = (points: readonly Point[], axis: 'x' | 'y') =>
    (Math.min(...points.map((p) => p[axis])) + Math.max(...points.map((p) => p[axis]))) / 2;

  test.each([
    { what: 'far apart', depths: [6, 24], words: ['1', '2'] },
    { what: 'nearer than they are high', depths: [14, 15.2], words: ['1', '2'] },
    { what: 'four of them, in no order', depths: [16, 14, 15, 14.6], words: ['2', '4', '3', '1'] },
    { what: 'at one place', depths: [14, 14], words: ['1+2'] },
    { what: 'two at one place, a third near them', depths: [14, 15, 14.1], words: ['1+3', '2'] },
  ])('$what: each stands by its own line, and none on another', ({ depths, words }) => {
    const { marks, engraving } = soleOf(depths);
    const lines = engraving.map(({ vertices }) => vertices);
    expect(lines).toHaveLength(2 * words.length);
    for (const side of [1, -1]) {
      const here = (points: readonly Point[]) => Math.sign(middleOf(points, 'x')) === side;
      const own = lines.filter(here).sort((a, b) => middleOf(a, 'y') - middleOf(b, 'y'));
      const inks = marks
        .map((mark) => ({ text: mark.text, ink: inkOf(mark) }))
        .filter(({ ink }) => here(ink))
        .sort((a, b) => middleOf(a.ink, 'y') - middleOf(b.ink, 'y'));
      const ordered = inks.map(({ text }) => text);
      // which way the sole is drawn does not matter
      expect([words, [...words].reverse()]).toContainEqual(ordered);
      inks.forEach(({ text, ink }, i) => {
        const middle = middleOf(ink, 'y');
        const off = own.map((line) => Math.abs(middleOf(line, 'y') - middle));
        // of more than three at one place the outer numbers lie beyond their neighbours' lines: there the order tells
        if (words.length <= 3) expect.soft(off.indexOf(Math.min(...off)), text).toBe(i);
        const before = inks[i - 1];
        if (before === undefined) return;
        const air = Math.min(...ink.map(({ y }) => y)) - Math.max(...before.ink.map(({ y }) => y));
        expect.soft(air, `${before.text}, ${text}`).toBeGreaterThan(0.5);
      });
    }
  });
});
