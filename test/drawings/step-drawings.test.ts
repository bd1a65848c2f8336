import { beforeAll, describe, expect, test } from 'vitest';
import { workbench } from '../../src/assembly/workbench.js';
import { explodedDrawings } from '../../src/drawings/exploded.js';
import { looksAt } from '../../src/drawings/look-from.js';
import { stepDrawing } from '../../src/drawings/step-drawing.js';
import { pageSvg } from '../../src/files/page-svg.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Move } from '../../src/model/assembly-move.js';
import type { Part } from '../../src/model/part.js';
import { wordsWidth } from '../../src/paper/words-width.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { putTogether } from '../../src/proof/prove.js';
import { keptDesign } from '../designs/kept-design.js';
import { ROOM } from './camera-drawings.js';
import { type ReadLine, type ReadWords, readDrawing } from './read-drawing.js';

const kernel = await loadKernel();

interface Read {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly ReadLine[];
  readonly words: readonly ReadWords[];
}

/** What the words of a row cover: l and g of DejaVu Sans rise 0.76 of their size and hang 0.24 (from memory). */
const boxOf = ({ text, size, heavy, anchor, at }: ReadWords) => {
  const width = wordsWidth(text, { size, heavy });
  const left = at.x - { start: 0, middle: width / 2, end: width }[anchor];
  return { left, right: left + width, top: at.y - 0.76 * size, bottom: at.y + 0.24 * size };
};

/** Rows that stand close below each other from one left edge are one number: `M4 × 20` over `countersunk`. */
const numbersOf = (words: readonly ReadWords[]): readonly string[] => {
  const joined: { text: string; last: ReadWords }[] = [];
  for (const row of words.filter(({ role }) => role === 'number')) {
    const above = joined.at(-1);
    if (
      above &&
      // lines of one label; what stands farther off is another one
      Math.abs(row.at.y - above.last.at.y - 1.25 * row.size) < 0.05 &&
      Math.abs(row.at.x - above.last.at.x) < 30 &&
      !/^(\d+ × )?[A-Z]{1,2}\d/.test(row.text) &&
      !/^\d+ × /.test(row.text)
    ) {
      above.text += ` ${row.text}`;
      above.last = row;
    } else joined.push({ text: row.text, last: row });
  }
  return joined.map(({ text }) => text);
};

describe.each(['heron', 'wren', 'bittern'])('step drawings of %s', (name) => {
  let steps: readonly (Read & { readonly step: number })[];
  let exploded: readonly Read[];
  let moves: readonly Move[];
  let parts: ReadonlyMap<string, Part>;
  beforeAll(() => {
    const planned = planCamera(keptDesign(name));
    const { build, design } = planned;
    moves = putTogether(design, build, kernel).moves;
    parts = new Map(build.parts.map((part) => [part.id, part]));
    kernel.stage((bench) => {
      const given = { build, plan: planOf(planned), on: workbench(bench), room: ROOM, moves };
      const read = <T extends { readonly name: string; readonly width: number; readonly height: number }>(drawing: T & Parameters<typeof pageSvg>[0]): Read => ({ name: drawing.name, width: drawing.width, height: drawing.height, ...readDrawing(pageSvg(drawing)) }); // biome-ignore format: one line
      const numbers = [...new Set(moves.map(({ step }) => step))];
      steps = numbers.map((step) => ({ step, ...read(stepDrawing(given, step)) }));
      exploded = explodedDrawings(given).map((drawing) => read(drawing));
    });
  }, 120_000);

  test('name every made part that comes in a step on its own, and no part that does not', () => {
    for (const { step, words } of steps) {
      const numbered = numbersOf(words).map((text) => text.replace(/^\d+ × /, ''));
      const isDrawn = (id: string) => parts.get(id)?.kind === 'flat';
      const alone = moves.filter((move) => move.step === step && move.whole === undefined && move.pieces.length === 1);
      const due = alone.flatMap(({ pieces: [key = ''] }) => key.split('#')[0] ?? []).filter((id) => isDrawn(id)); // biome-ignore format: one line
      const coming = new Set(moves.filter((move) => move.step === step).flatMap(({ pieces }) => pieces.map((key) => key.split('#')[0]))); // biome-ignore format: one line
      for (const id of due)
        expect(
          numbered.filter((text) => text === id),
          `${id} in step ${step}`,
        ).toHaveLength(1);
      for (const text of numbered)
        if (parts.get(text)?.kind === 'flat') expect(coming.has(text), `${text} in step ${step}`).toBe(true);
    }
  });

  test('say how many pieces come', () => {
    for (const { step, words } of steps) {
      const alone = moves.filter((move) => move.step === step && move.whole === undefined && move.pieces.length === 1);
      const keys = new Set(alone.flatMap(({ pieces }) => pieces));
      for (const [id, part] of parts) {
        // what stands in every set-up; the rest is in another place in each
        if (part.kind !== 'flat' || part.placements.some(({ when }) => when !== undefined)) continue;
        const count = [...keys].filter((key) => key.split('#')[0] === id).length;
        if (count > 0) expect(numbersOf(words), `step ${step}`).toContain(count === 1 ? id : `${count} × ${id}`);
      }
    }
  });

  test('the exploded view has every flat part once', () => {
    const numbered = exploded.flatMap(({ words }) => numbersOf(words)).map((text) => text.replace(/^\d+ × /, ''));
    const flat = [...parts.values()].filter(({ kind }) => kind === 'flat').map(({ id }) => id);
    expect(numbered.filter((text) => flat.includes(text)).sort()).toEqual([...flat].sort());
  });

  test('no number stands on a line or on other words, and none is smaller than 9 pt', () => {
    for (const { name: drawing, lines, words, width, height } of [...steps, ...exploded]) {
      expect(width).toBeLessThanOrEqual(ROOM.width);
      expect(height).toBeLessThanOrEqual(ROOM.height);
      const boxes = words.map((each) => ({ text: each.text, ...boxOf(each) }));
      for (const { size } of words) expect(size).toBeGreaterThanOrEqual((9 * 25.4) / 72);
      for (const [i, a] of boxes.entries()) {
        expect(Math.min(a.left, a.top, width - a.right, height - a.bottom), `${drawing}: ${a.text}`).toBeGreaterThan(
          -0.3,
        );
        for (const b of boxes.slice(i + 1))
          expect(
            a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top,
            `${drawing}: ${a.text} and ${b.text}`,
          ).toBe(true);
      }
      for (const { role, points } of lines)
        for (const [k, q] of points.entries()) {
          const p = points[Math.max(0, k - 1)] ?? q;
          const steps_ = Math.max(1, Math.ceil(Math.max(Math.abs(q.x - p.x), Math.abs(q.y - p.y)) / 0.2));
          for (let s = 0; s <= steps_; s++) {
            const [x, y] = [p.x + ((q.x - p.x) * s) / steps_, p.y + ((q.y - p.y) * s) / steps_];
            const under = boxes.find((b) => x > b.left && x < b.right && y > b.top && y < b.bottom);
            if (under !== undefined) expect.fail(`${drawing}: ${under.text} stands on a line of ${role}`);
          }
        }
    }
  });
});

test('from where a step is seen is told as the photographer stands', () => {
  const still = { x: 0, y: 0, z: 0 };
  const fromBelow = { pieces: [], into: 'camera', whole: null, way: { axis: 'y', sign: 1 } } as const;
  const pulled = { pieces: [], ways: [{ arrival: fromBelow, from: still, to: still }] };
  for (const underneath of ['looked at', 'turned over', 'never'] as const) {
    const all = looksAt(pulled, new Set(), underneath);
    expect(all).toHaveLength(underneath === 'never' ? 4 : 8);
    for (const { view, words } of all) {
      const { x, y, z } = view.toward;
      expect(words).toContain(x > 0 ? 'from the right' : 'from the left');
      expect(words).toMatch(z > 0 ? /from behind/ : /from the front/);
      const turned = view.up.y < 0;
      expect(/upside down/.test(words)).toBe(turned);
      if (!turned) expect(words).toContain(y > 0 ? 'above' : 'below');
    }
  }
});
