import { expect, test } from 'vitest';
import { engrave } from '../../src/camera/engrave.js';
import { area, boundsOf, type ClosedPath, flatten, inside, type Point } from '../../src/geometry/path.js';
import { frame, type Matrix4 } from '../../src/geometry/placement.js';
import type { FlatPart, Part } from '../../src/model/part.js';
import { type Planned, planOf } from '../../src/pipeline.js';
import { lawsFrom } from './law.js';

const { law, lawOfSoundCameras } = lawsFrom(1);

const RUNS = 100;

/** How far a motion is from a turn and a shift: from unit axes at right angles, right-handed. */
function offRigid(m: Matrix4): number {
  const column = (i: number) => [m[4 * i], m[4 * i + 1], m[4 * i + 2]] as [number, number, number];
  const [x, y, z] = [column(0), column(1), column(2)];
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, v, i) => sum + v * (b[i] as number), 0);
  const cross = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
  const lastRow = [3, 7, 11].map((i) => Math.abs(m[i] as number));
  const square = [dot(x, y), dot(y, z), dot(z, x)].map(Math.abs);
  const unit = [dot(x, x), dot(y, y), dot(z, z), dot(cross, z), m[15] as number].map((v) => Math.abs(v - 1));
  return Math.max(...lastRow, ...square, ...unit);
}

test('every part is placed by a turn and a shift, never by a mirror', () =>
  law(RUNS, ({ parts }) => {
    const off = parts.filter(({ placements }) => placements.some(({ matrix }) => offRigid(matrix) > 1e-9));
    expect(off.map(({ id }) => id)).toEqual([]);
  }));

test('a mirror would be noticed', () => expect(offRigid(frame([-1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, 0]))).toBe(2));

test('as many pieces are cut and bought as stand in the fullest set-up', () =>
  law(RUNS, (planned) => {
    const { parts, setups } = planned.build;
    const count = new Map(planOf(planned).parts.map((part) => [part.id, part.count]));
    for (const part of parts) {
      if (part.kind === 'bought') continue;
      // in a set-up stand those that name it and those that name none; a holder's own only where it is in
      const standing = setups.map(
        (setup) =>
          part.placements.filter(({ when, group }) =>
            when
              ? when.includes(setup.name)
              : typeof group === 'string' || (group.holder === setup.holder && !setup.focusing),
          ).length,
      );
      expect(count.get(part.id), part.id).toBe(Math.max(...standing));
      expect(count.get(part.id), part.id).toBeGreaterThan(0);
    }
  }));

test('part ids are words, and each stands for one part', () =>
  law(RUNS, ({ parts }) => {
    const ids = parts.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[^\s.]+$/);
  }));

test('every part is joined to parts that are there, and to some', () =>
  law(RUNS, ({ parts }) => {
    const ids = new Set(parts.map(({ id }) => id));
    const joined = new Set(
      parts.flatMap(({ id, joins }) => joins.filter(({ to }) => ids.has(to)).flatMap(({ to }) => [id, to])),
    );
    expect([...ids].filter((id) => !joined.has(id))).toEqual([]);
  }));

/** Loops of a part with its curves as chords, in its own frame. */
function loopsOf(part: Part): { readonly outline: ClosedPath; readonly holes: readonly ClosedPath[] } | null {
  if (part.kind === 'flat') return part;
  return part.kind === 'bought' && part.shape.form === 'plate' ? part.shape : null;
}

test('outlines run anticlockwise and holes clockwise, none crosses itself or another, and holes lie inside', () =>
  lawOfSoundCameras(80, ({ parts }) => {
    for (const part of parts) {
      const loops = loopsOf(part);
      if (!loops) continue;
      expect(area(loops.outline), part.id).toBeGreaterThan(0);
      for (const hole of loops.holes) expect(area(hole), part.id).toBeLessThan(0);
      const [outline, ...holes] = [loops.outline, ...loops.holes].map((loop) => flatten(loop, 0.05));
      if (!outline) continue;
      expect(crossings([outline, ...holes]), part.id).toEqual([]);
      for (const hole of holes) {
        expect(inside(outline, hole[0] as Point), part.id).toBe(true);
        expect(
          holes.some((other) => other !== hole && inside(other, hole[0] as Point)),
          part.id,
        ).toBe(false);
      }
    }
  }));

interface Edge {
  readonly loop: number;
  readonly i: number;
  readonly of: number;
  readonly a: Point;
  readonly b: Point;
}

/** Where edges of the loops cross or touch, neighbours on one loop aside. */
function crossings(loops: readonly (readonly Point[])[]): readonly Point[] {
  const edges = loops
    .flatMap((points, loop) =>
      points.map((a, i): Edge => ({ loop, i, of: points.length, a, b: points[(i + 1) % points.length] as Point })),
    )
    .sort((p, q) => Math.min(p.a.x, p.b.x) - Math.min(q.a.x, q.b.x));
  const found: Point[] = [];
  edges.forEach((e, k) => {
    const right = Math.max(e.a.x, e.b.x);
    for (let n = k + 1; n < edges.length; n++) {
      const f = edges[n] as Edge;
      if (Math.min(f.a.x, f.b.x) > right) break;
      const next = e.loop === f.loop && [1, e.of - 1].includes(Math.abs(e.i - f.i));
      if (!next && meet(e, f)) found.push(e.a);
    }
  });
  return found;
}

function meet({ a, b }: Edge, { a: c, b: d }: Edge): boolean {
  if (Math.max(a.y, b.y) < Math.min(c.y, d.y) || Math.max(c.y, d.y) < Math.min(a.y, b.y)) return false;
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

const engraved = (parts: readonly Part[], planned: Planned) =>
  engrave(parts, planned).parts.flatMap((part) => (part.kind === 'flat' ? [part] : []));

test('scales and index lines lie on the wood: inside the outline, clear of every hole', () =>
  lawOfSoundCameras(15, (planned) => {
    const scales = engraved(
      planned.parts.filter((part) => part.kind === 'flat' && part.marks.length > 0),
      planned,
    );
    expect(scales.map(({ id }) => id)).toEqual(['R4U', 'T3', 'T3S']);
    for (const part of scales) onTheWood(part);
  }));

test('so do the marks of all parts', () =>
  lawOfSoundCameras(3, (planned) => {
    for (const part of engraved(planned.parts, planned)) onTheWood(part);
  }));

function onTheWood({ id, outline, holes, engraving }: FlatPart): void {
  const wood = flatten(outline, 0.05);
  const gaps = holes.map((hole) => ({ box: boundsOf(hole), points: flatten(hole, 0.05) }));
  const strokes = engraving.flatMap(({ vertices, closed }) => flatten(vertices, 0.05, closed));
  // a scale's lines may start on the very edge
  expect(
    strokes.filter((p) => !inside(wood, p) && toEdge(wood, p) > 1e-6),
    `${id}: engraved beyond the edge`,
  ).toEqual([]);
  const over = strokes.filter((p) =>
    gaps.some(
      ({ box, points }) => p.x > box.left && p.x < box.right && p.y > box.bottom && p.y < box.top && inside(points, p),
    ),
  );
  expect(over, `${id}: engraved over a hole`).toEqual([]);
}

const toEdge = (loop: readonly Point[], p: Point): number =>
  Math.min(
    ...loop.map((a, i) => {
      const b = loop[(i + 1) % loop.length] as Point;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const k = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
      return Math.sqrt((a.x + k * dx - p.x) ** 2 + (a.y + k * dy - p.y) ** 2);
    }),
  );
