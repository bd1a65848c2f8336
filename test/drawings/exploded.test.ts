import { describe, expect, test } from 'vitest';
import { piecesOf } from '../../src/assembly/pieces.js';
import { workbench } from '../../src/assembly/workbench.js';
import { explodedDrawings, explodedGroups } from '../../src/drawings/exploded.js';
import { bodiesOf } from '../../src/drawings/scene.js';
import { seenLines } from '../../src/drawings/seen-lines.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Point } from '../../src/geometry/path.js';
import type { Drawing } from '../../src/model/page.js';
import { wordsWidth } from '../../src/paper/words-width.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { orderOf } from '../../src/proof/order.js';
import { designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';
import { firstOf } from './first-of.js';

const kernel = await loadKernel();

/**
 * Of the lines that a made part would show if it stood there alone. A tenth of the outline of a square board is four
 * tenths of one side: a corner and the stretches to both sides of it, enough to know it by.
 */
const SHARE = 0.1;

function draw(name: string) {
  const planned = planCamera(keptDesign(name));
  const { build } = planned;
  const { moves } = orderOf(build, kernel);
  return kernel.stage((bench) => {
    const on = workbench(bench);
    const given = { build, plan: planOf(planned), on, room: { width: 174, height: 225 }, moves };
    const shares = new Map<string, number>();
    const pieces = new Map(piecesOf(build.parts).map((piece) => [piece.key, piece]));
    for (const { apart } of explodedGroups(given))
      for (const { key, seen } of apart.lines) {
        const piece = pieces.get(key);
        if (piece === undefined || piece.part.kind === 'bought') continue;
        const alone = seenLines(bodiesOf(on, [{ piece }]), apart.look.view)[0]?.seen ?? [];
        const { id } = piece.part;
        shares.set(id, Math.max(shares.get(id) ?? 0, lengthOf(seen) / lengthOf(alone)));
      }
    const made = build.parts
      .filter(({ kind, placements }) => kind !== 'bought' && placements.length > 0)
      .map(({ id }) => id);
    return { drawing: firstOf(explodedDrawings(given)), shares, made };
  });
}

const lengthOf = (paths: readonly (readonly Point[])[]): number =>
  paths
    .flatMap((path) => path.slice(1).map((to, i) => Math.hypot(to.x - (path[i]?.x ?? 0), to.y - (path[i]?.y ?? 0))))
    .reduce((sum, length) => sum + length, 0);

type Leader = readonly [Point, Point];

const leadersOf = ({ marks }: Drawing): readonly Leader[] =>
  marks.flatMap((mark): readonly Leader[] => {
    if (mark.kind !== 'line' || mark.role !== 'leader') return [];
    const [from, to] = mark.points;
    return from && to ? [[from, to]] : [];
  });

const turn = (a: Point, b: Point, c: Point): number => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));

const cross = ([a, b]: Leader, [c, d]: Leader): boolean =>
  turn(a, b, c) !== turn(a, b, d) && turn(c, d, a) !== turn(c, d, b);

/** Corners of what a number covers: its capitals. */
const boxesOf = ({ marks }: Drawing) =>
  marks.flatMap((mark) => {
    if (mark.kind !== 'words') return [];
    const { at, text, size, bold } = mark;
    const right = at.x + wordsWidth(text, { size, heavy: bold === true });
    return [{ text, left: at.x, right, top: at.y - 0.73 * size, bottom: at.y }];
  });

const known = new Map<string, ReturnType<typeof draw>>();

describe.each(keptDesigns)('the exploded view of %s', { timeout: 300_000 }, (name) => {
  const drawn = () => {
    const one = known.get(name) ?? draw(name);
    known.set(name, one);
    return one;
  };

  test('no leader crosses another', () => {
    const leaders = leadersOf(drawn().drawing);
    expect(leaders.length).toBeGreaterThan(5);
    for (const [i, one] of leaders.entries())
      for (const other of leaders.slice(0, i)) expect(cross(one, other), JSON.stringify([one, other])).toBe(false);
  });

  test('no leader runs through words', () => {
    const { drawing } = drawn();
    for (const { text, left, right, top, bottom } of boxesOf(drawing)) {
      const diagonals: readonly Leader[] = [
        [
          { x: left, y: top },
          { x: right, y: bottom },
        ],
        [
          { x: left, y: bottom },
          { x: right, y: top },
        ],
      ];
      for (const leader of leadersOf(drawing))
        expect(
          diagonals.some((one) => cross(one, leader)),
          text,
        ).toBe(false);
    }
  });

  test('a good part of every made part is seen', () => {
    const { shares, made } = drawn();
    expect([...shares.keys()].sort()).toEqual([...made].sort());
    const hidden = [...shares].filter(([, share]) => share < SHARE);
    expect(hidden).toEqual([]);
  });
});

describe('many groups', () => {
  const room = { width: 174, height: 225 };
  /** Heron with its paper holder made, and what hangs ahead of its lens. */
  const text = heronText
    .replace(/- { name: paper holder.*/, '- { name: paper holder, filmDepth: 5.8 mm, make: true }')
    .concat('\nfilterHolder: {}\nshutter: { time: 1/30 s }\n');

  test('take as many pages as they need, none higher than a page, each made part on one of them', () => {
    const planned = planCamera(designOf(text));
    const { build } = planned;
    const { moves } = orderOf(build, kernel);
    const drawings = kernel.stage((bench) =>
      explodedDrawings({ build, plan: planOf(planned), on: workbench(bench), room, moves }),
    );
    expect(drawings.map(({ name }) => name)).toEqual(['exploded', 'exploded-2']);
    for (const { height } of drawings) expect(height).toBeLessThanOrEqual(room.height);
    const words = drawings.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])));
    for (const id of ['F1', 'T1U', 'R3', 'A1', 'FH1', 'D4', 'HF1', 'HD1'])
      expect(words.filter((one) => one.replace(/^\d+ × /, '') === id)).toHaveLength(1);
  });
});
