import { describe, expect, test } from 'vitest';
import {
  type LabelRoom,
  labelRoom,
  type Patch,
  type Placed,
  type Wanted,
  wordsPatch,
} from '../../src/drawings/label-room.js';
import type { Point } from '../../src/geometry/path.js';
import { seeded } from '../../src/packing/random.js';

const letters = { size: 3.2, heavy: false };
const paper = { width: 120, height: 90 };

const wanted = (text: string, at: Point, more: Partial<Wanted> = {}): Wanted => ({
  text,
  letters,
  at,
  from: 3,
  to: 60,
  ...more,
});

function placedIn(room: LabelRoom, ask: Wanted): Placed {
  const placed = room.place(ask);
  if (placed === null) throw new Error(`${ask.text} found no room`);
  return placed;
}

/** Points along a segment, a tenth of a millimetre apart. */
function along([a, b]: readonly [Point, Point]): readonly Point[] {
  const steps = Math.ceil(Math.max(Math.abs(b.x - a.x), Math.abs(b.y - a.y)) / 0.1);
  return Array.from({ length: steps + 1 }, (_, k) => ({
    x: a.x + ((b.x - a.x) * k) / steps,
    y: a.y + ((b.y - a.y) * k) / steps,
  }));
}

const inside = ({ left, top, right, bottom }: Patch, { x, y }: Point): boolean =>
  x > left && x < right && y > top && y < bottom;

describe('words among random lines', () => {
  const random = seeded(20);
  const somewhere = (): Point => ({ x: 5 + random() * (paper.width - 10), y: 5 + random() * (paper.height - 10) });

  test('stand on no line, no other words and no leader, and no leader runs under words', () => {
    for (let trial = 0; trial < 30; trial++) {
      const room = labelRoom(paper);
      const lines = Array.from({ length: 12 }, (): [Point, Point] => [somewhere(), somewhere()]);
      room.keepClear(lines);
      const placed = Array.from({ length: 14 }, (_, i) => room.place(wanted(`R${i}`, somewhere()))).flatMap(
        (p) => p ?? [],
      );
      expect(placed.length).toBeGreaterThan(7);
      for (const [i, { patch, leader }] of placed.entries()) {
        expect(Math.min(patch.left, patch.top)).toBeGreaterThanOrEqual(0);
        expect(patch.right).toBeLessThanOrEqual(paper.width);
        expect(patch.bottom).toBeLessThanOrEqual(paper.height);
        for (const line of lines) expect(along(line).some((p) => inside(patch, p))).toBe(false);
        for (const [k, other] of placed.entries()) {
          if (k !== i && leader !== null) expect(along(leader).some((p) => inside(other.patch, p))).toBe(false);
          if (k > i) {
            const corners = [other.patch.left, other.patch.right].flatMap((x) =>
              [other.patch.top, other.patch.bottom].map((y) => ({ x, y })),
            );
            expect(corners.some((p) => inside(patch, p))).toBe(false);
          }
        }
      }
    }
  });
});

test('words stand on the spot itself where they may and nothing is in the way', () => {
  const { patch, leader } = placedIn(labelRoom(paper), wanted('B1', { x: 50, y: 40 }, { from: 0 }));
  expect(leader).toBeNull();
  expect((patch.left + patch.right) / 2).toBeCloseTo(50, 1);
  expect((patch.top + patch.bottom) / 2).toBeCloseTo(40, 1);
});

test('a leader begins at what is named and ends at the edge of the words', () => {
  const { patch, leader } = placedIn(labelRoom(paper), wanted('B1', { x: 50, y: 40 }, { from: 12 }));
  const [from, to] = leader ?? [];
  expect(from).toEqual({ x: 50, y: 40 });
  // half a millimetre is kept bare round the words
  const off = (at: number, low: number, high: number) => Math.max(low - at, at - high, 0);
  expect(to && Math.max(off(to.x, patch.left, patch.right), off(to.y, patch.top, patch.bottom))).toBeCloseTo(0.5, 6);
});

test('words go where they are told, if there is nothing else to choose by', () => {
  for (const toward of [
    { x: 1, y: 0 },
    { x: -1, y: 0 },
    { x: 0, y: 1 },
    { x: 0, y: -1 },
  ]) {
    const { patch } = placedIn(labelRoom(paper), wanted('T5', { x: 60, y: 45 }, { from: 10, toward }));
    const middle = { x: (patch.left + patch.right) / 2 - 60, y: (patch.top + patch.bottom) / 2 - 45 };
    expect(middle.x * toward.x + middle.y * toward.y).toBeGreaterThan(9);
  }
});

test('of several spots the one is taken that is reached across no line', () => {
  const room = labelRoom(paper);
  // the first spot lies in a narrow slit, the other in the open
  room.keepClear([
    [
      { x: 20, y: 38 },
      { x: 20, y: 52 },
    ],
    [
      { x: 22, y: 38 },
      { x: 22, y: 52 },
    ],
  ]);
  const { leader } = placedIn(room, wanted('F4', { x: 21, y: 45 }, { or: [{ x: 70, y: 45 }] }));
  expect(leader?.[0]).toEqual({ x: 70, y: 45 });
});

test('paper without room gives none', () => {
  const room = labelRoom({ width: 20, height: 10 });
  room.take({ left: 0, top: 0, right: 20, bottom: 10 });
  expect(room.place(wanted('G1', { x: 10, y: 5 }))).toBeNull();
});

test('several lines of words cover each line', () => {
  const one = wordsPatch('film of', { x: 0, y: 0 }, letters);
  const two = wordsPatch('film of\nprocessing holder', { x: 0, y: 0 }, letters);
  expect(two.bottom - one.bottom).toBeCloseTo(1.25 * 3.2, 9);
  expect(two.right).toBe(wordsPatch('processing holder', { x: 0, y: 0 }, letters).right);
  const { rows, patch } = placedIn(labelRoom(paper), wanted('film of\nprocessing holder', { x: 60, y: 45 }));
  expect(rows.map(({ text }) => text)).toEqual(['film of', 'processing holder']);
  for (const { text, start } of rows) {
    const own = wordsPatch(text, start, letters);
    expect(own.left).toBe(patch.left);
    expect(own.top).toBeGreaterThanOrEqual(patch.top - 0.01);
    expect(own.bottom).toBeLessThanOrEqual(patch.bottom + 0.01);
  }
});
