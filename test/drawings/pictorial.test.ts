import { describe, expect, test } from 'vitest';
import { piecesOf } from '../../src/assembly/pieces.js';
import { workbench } from '../../src/assembly/workbench.js';
import { atStep } from '../../src/drawings/at-step.js';
import { coverDrawing } from '../../src/drawings/cover.js';
import { explodedDrawings } from '../../src/drawings/exploded.js';
import { stepDrawing } from '../../src/drawings/step-drawing.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Point } from '../../src/geometry/path.js';
import { stepsOfCamera } from '../../src/model/assembly-steps.js';
import type { Drawing, Mark, MarkRole } from '../../src/model/page.js';
import { wordsWidth } from '../../src/paper/words-width.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { orderOf } from '../../src/proof/order.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';

const kernel = await loadKernel();
const room = { width: 174, height: 225 };

/** Of the size: letters of this font rise no more than their capitals, and hang no more than a comma does. */
const RISE = 0.73;
const HANG = 0.2;

interface Rectangle {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What a line of words covers. */
function covered(mark: Mark): Rectangle {
  if (mark.kind !== 'words') throw new Error('no words');
  const { at, text, size, bold } = mark;
  const width = wordsWidth(text, { size, heavy: bold === true });
  return { left: at.x, right: at.x + width, top: at.y - RISE * size, bottom: at.y + HANG * size };
}

const overlap = (a: Rectangle, b: Rectangle): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const pathsOf = ({ marks }: Drawing, ...roles: readonly MarkRole[]): readonly (readonly Point[])[] =>
  marks.flatMap((mark) => {
    if (mark.role === undefined || !roles.includes(mark.role)) return [];
    return mark.kind === 'strokes' ? mark.paths : mark.kind === 'line' ? [mark.points] : [];
  });

/** Points along a path, a tenth of a millimetre apart. */
const walked = (path: readonly Point[]): readonly Point[] =>
  path.slice(1).flatMap((to, i) => {
    const from = path[i] as Point;
    const steps = Math.max(1, Math.ceil(Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) / 0.1));
    return Array.from({ length: steps + 1 }, (_, k) => ({
      x: from.x + ((to.x - from.x) * k) / steps,
      y: from.y + ((to.y - from.y) * k) / steps,
    }));
  });

const inside = ({ left, right, top, bottom }: Rectangle, { x, y }: Point): boolean =>
  x > left && x < right && y > top && y < bottom;

/** Less line than this is no more than a dot, mm. */
const LEAST = 1;

const lengthOf = (paths: readonly (readonly Point[])[]): number =>
  paths
    .flatMap((path) =>
      path.slice(1).map((to, i) => Math.hypot(to.x - (path[i] as Point).x, to.y - (path[i] as Point).y)),
    )
    .reduce((sum, length) => sum + length, 0);

/** Texts of a drawing's words that cover a line that matters. */
function onLines(drawing: Drawing): readonly string[] {
  const points = pathsOf(drawing, 'added', 'outline', 'there').flatMap(walked);
  return drawing.marks.flatMap((mark) => {
    if (mark.kind !== 'words') return [];
    const patch = covered(mark);
    return points.some((point) => inside(patch, point)) ? [mark.text] : [];
  });
}

/** Pairs of texts that cover each other. */
function onEachOther({ marks }: Drawing): readonly string[] {
  const words = marks.filter((mark) => mark.kind === 'words');
  return words.flatMap((a, i) =>
    words.slice(i + 1).flatMap((b) => (overlap(covered(a), covered(b)) ? [`${a.text} | ${b.text}`] : [])),
  );
}

/** What sticks out of the paper. */
function outside(drawing: Drawing): readonly string[] {
  const { width, height, marks } = drawing;
  const paper = { left: -0.001, top: -0.001, right: width + 0.001, bottom: height + 0.001 };
  return marks.flatMap((mark): readonly string[] => {
    if (mark.kind === 'words') {
      const { left, right, top, bottom } = covered(mark);
      const corners = [
        { x: left, y: top },
        { x: right, y: bottom },
      ];
      return corners.every((corner) => inside(paper, corner)) ? [] : [mark.text];
    }
    const points = mark.kind === 'strokes' ? mark.paths.flat() : mark.kind === 'line' ? mark.points : [mark.centre];
    return points.every((point) => inside(paper, point)) ? [] : [String(mark.role)];
  });
}

const numbersIn = ({ marks }: Drawing): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === 'words' && mark.role === 'number' ? [mark.text] : []));

/** Without the count before it. */
const named = (text: string): string => text.replace(/^\d+ × /u, '');

const drawnOf = new Map(
  keptDesigns.map((name) => {
    let known: ReturnType<typeof draw> | undefined;
    return [
      name,
      () => {
        known ??= draw(name);
        return known;
      },
    ] as const;
  }),
);

function draw(name: string) {
  const planned = planCamera(keptDesign(name));
  const { build } = planned;
  const { moves } = orderOf(build, kernel);
  return kernel.stage((bench) => {
    const given = { build, plan: planOf(planned), on: workbench(bench), room, moves };
    const steps = stepsOfCamera(build.parts).map(({ number }) => ({
      number,
      at: atStep(build, moves, number),
      drawing: stepDrawing(given, number),
    }));
    return { build, moves, steps, exploded: explodedDrawings(given), cover: coverDrawing(given) };
  });
}

describe.each(keptDesigns)('pictorial drawings of %s', { timeout: 300_000 }, (name) => {
  const drawn = () => (drawnOf.get(name) as () => ReturnType<typeof draw>)();
  const all = () => [...drawn().steps.map(({ drawing }) => drawing), ...drawn().exploded, drawn().cover];

  test('fit their room, and nothing sticks out', () => {
    for (const drawing of all()) {
      expect(drawing.width).toBeLessThanOrEqual(room.width);
      expect(drawing.height).toBeLessThanOrEqual(room.height);
      expect(outside(drawing), drawing.title).toEqual([]);
    }
  });

  test('no words cover each other, or a line of a part', () => {
    for (const drawing of all()) {
      expect(onEachOther(drawing), drawing.title).toEqual([]);
      expect(onLines(drawing), drawing.title).toEqual([]);
    }
  });

  test('letters are 9 pt at least', () => {
    const sizes = all().flatMap(({ marks }) => marks.flatMap((one) => (one.kind === 'words' ? [one.size] : [])));
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual((9 * 25.4) / 72);
  });

  test('every made part that a step brings by itself has its number there', () => {
    for (const { number, at, drawing } of drawn().steps) {
      const texts = numbersIn(drawing).map(named);
      const brought = at.arrivals
        .filter(({ whole }) => whole === null)
        .flatMap(({ pieces }) => pieces.map(({ part }) => part))
        .filter(({ kind }) => kind !== 'bought');
      for (const { id } of brought) expect(texts, `step ${number}`).toContain(id.replaceAll('-', ' '));
    }
  });

  test('something is seen of everything that a step brings, and of three in four of equal pieces', () => {
    for (const { number, at, drawing } of drawn().steps) {
      const seen = new Map(
        drawing.marks.flatMap((one) =>
          one.kind === 'strokes' && one.id !== undefined ? [[one.id, lengthOf(one.paths)] as const] : [],
        ),
      );
      const told = new Set<string>();
      const equals = new Map<string, number[]>();
      for (const { pieces, whole, way } of at.arrivals) {
        const [first] = pieces;
        if (first === undefined || told.has(first.key) || (whole !== null && way === null)) continue;
        for (const { key } of pieces) told.add(key);
        const { id } = first.part;
        equals.set(id, [...(equals.get(id) ?? []), seen.get(`comes-${first.key}`) ?? 0]);
      }
      for (const [id, lengths] of equals) {
        const shown = lengths.filter((length) => length > LEAST).length;
        expect(shown / lengths.length, `${id} in step ${number}`).toBeGreaterThanOrEqual(3 / 4);
      }
    }
  });

  test('every part that a step brings comes in its drawing, in whichever set-up it stands', () => {
    for (const { number, at } of drawn().steps) {
      const brought = (keys: readonly string[]) => [...new Set(keys.map((key) => key.split('#')[0]))].sort();
      const own = drawn().moves.filter(({ step }) => step === number);
      expect(brought(at.after.map(({ key }) => key)), `step ${number}`).toEqual(
        expect.arrayContaining(brought(own.flatMap(({ pieces }) => pieces))),
      );
    }
  });

  test('the turn-buttons’ screws are all put in from the front', () => {
    const screws = drawn()
      .steps.flatMap(({ at }) => at.arrivals)
      .filter(({ pieces: [first] }) => first?.part.id === 'button-screw');
    expect(screws).toHaveLength(4);
    for (const { way } of screws) expect(way).toEqual({ axis: 'z', sign: 1 });
  });

  test('the exploded view has every made part once', () => {
    const made = new Set(
      piecesOf(drawn().build.parts)
        .filter(({ part }) => part.kind !== 'bought')
        .map(({ part }) => part.id.replaceAll('-', ' ')),
    );
    expect(drawn().exploded.flatMap(numbersIn).map(named).sort()).toEqual([...made].sort());
  });
});
