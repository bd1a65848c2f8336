import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { inverse } from '../../src/assembly/screens.js';
import { stands } from '../../src/assembly/setups.js';
import { firstMet } from '../../src/assembly/sight-line.js';
import { type ClosedPath, flatten, inside, type Point, polygon, reversed } from '../../src/geometry/path.js';
import { apply, type Point3 } from '../../src/geometry/placement.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import type { FlatPart, Part } from '../../src/model/part.js';
import { type Leak, leakOf } from '../../src/proof/light-leak.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { searchLight } from '../../src/proof/light-search.js';
import { heron } from '../camera/worked.js';
import { acrossZ, buildOf, darkBox, plateAt, recut } from './dark-box.js';

/** Every leak that the search finds, as far as `enough`. */
function leaks(build: Build, enough: (leak: Leak) => boolean = () => false): readonly Leak[] {
  const scene = sceneOf(build);
  const found: Leak[] = [];
  searchLight(scene, (glimpse) => {
    const leak = leakOf(scene, glimpse);
    if (leak === null) return true;
    found.push(leak);
    return !enough(leak);
  });
  return found;
}

const first = (build: Build): Leak | undefined => leaks(build, () => true)[0];

describe('a closed box', () => {
  test('is dark', () => expect(leaks(buildOf(darkBox))).toEqual([]));

  test('with its front left off is not', () =>
    expect(first(buildOf(darkBox.filter(({ id }) => id !== 'front')))).toBeDefined());

  test('a slit of 0.3 mm × 10 mm in its front is found, with its width', () => {
    const slit = rectangle(boxAt(12, 7, 0.3, 10));
    const leak = first(buildOf(recut('front', ({ holes }) => ({ holes: [...holes, reversed(slit)] }))));
    expect(leak?.parts.map(({ id }) => id)).toEqual(['front', 'front']);
    expect(leak?.width).toBeGreaterThan(0.2);
    expect(leak?.width).toBeLessThan(0.31);
    expect(Math.abs((leak?.at.x ?? 0) - 12)).toBeLessThan(1);
    expect(Math.abs((leak?.at.y ?? 0) - 7)).toBeLessThan(6);
  });

  test('a slit of 0.05 mm counts as shut', () => {
    const slit = rectangle(boxAt(12, 7, 0.05, 30));
    expect(leaks(buildOf(recut('front', ({ holes }) => ({ holes: [...holes, reversed(slit)] }))))).toEqual([]);
  });
});

describe('a front of two plates with a gap of 0.3 mm between their edges', () => {
  const half = (id: string, from: number, to: number, z: number): FlatPart =>
    plateAt({
      id,
      outline: rectangle({ left: from, right: to, bottom: -54, top: 54 }),
      matrix: acrossZ(z),
      joins: [{ to: 'B1', by: 'glue' }],
    });
  const open = darkBox.filter(({ id }) => id !== 'front');

  test('leaks: light goes in without a turn', () => {
    const leak = first(buildOf([...open, half('one', -54, 3, -4), half('two', 3.3, 54, -4)]));
    expect(leak?.parts.map(({ id }) => id)).toEqual(['one', 'two']);
    expect(leak?.at.x).toBeCloseTo(3.15, 0);
  });

  test('leaks where one stands behind the other, and light slants in between', () => {
    // from the edge of one at x 3, z −8 to that of two at x 5.9, z 0 the line rises by 2.9 in 8: it meets the gate 104 on
    const leak = first(buildOf([...open, half('one', -54, 3, -12), half('two', 3, 54, -4), half('cap', -54, 54, -30)]));
    expect(leak?.parts.map(({ id }) => id)).not.toContain('cap');
  });

  test.each([
    { turns: 1, cover: 4 },
    { turns: 2, cover: 10 },
  ])('is dark where a strip of $cover mm on either side gives it a turn and more', ({ cover }) => {
    const strip = half('strip', 3.15 - cover, 3.15 + cover, 0);
    expect(leaks(buildOf([...open, half('one', -54, 3, -4), half('two', 3.3, 54, -4), strip]))).toEqual([]);
  });
});

/** Numbers from 0 to 1 in an order of their own (a linear congruence; constants of Numerical Recipes). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

const minus = (a: Point3, b: Point3): Point3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const cross = (a: Point3, b: Point3): Point3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
const plus = (a: Point3, s: number, b: Point3): Point3 => ({ x: a.x + s * b.x, y: a.y + s * b.y, z: a.z + s * b.z });
const size = (a: Point3): number => Math.hypot(a.x, a.y, a.z);

/** A straight bundle of light, 0.3 mm by 10 mm, that ends on the gate. */
interface Bundle {
  readonly gate: Point3;
  readonly out: Point3;
  readonly thin: Point3;
  readonly wide: Point3;
}

function bundleAt({ gate }: Build, random: () => number): Bundle {
  const end = { x: (random() - 0.5) * 0.8 * gate.width, y: (random() - 0.5) * 0.8 * gate.height, z: gate.z };
  const [turn, slant, roll] = [2 * Math.PI * random(), 1.3 * random(), Math.PI * random()];
  const out = { x: Math.sin(slant) * Math.cos(turn), y: Math.sin(slant) * Math.sin(turn), z: -Math.cos(slant) };
  const aside = cross(out, Math.abs(out.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 });
  const u = plus({ x: 0, y: 0, z: 0 }, 1 / size(aside), aside);
  const v = cross(out, u);
  const thin = plus(plus({ x: 0, y: 0, z: 0 }, Math.cos(roll), u), Math.sin(roll), v);
  return { gate: end, out, thin, wide: cross(out, thin) };
}

/** Convex hull (Andrew's monotone chain). */
function hull(points: readonly Point[]): readonly Point[] {
  const half = (list: readonly Point[]) => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length >= 2) {
        const [a, b] = chain.slice(-2) as [Point, Point];
        if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  return [...half(sorted), ...half([...sorted].reverse())];
}

/** The build with the bundle cut through every plate in its way; null where it meets what is no plate, or nothing. */
function cutThrough(build: Build, { gate, out, thin, wide }: Bundle): Build | null {
  const [setup] = build.setups;
  if (setup === undefined) return null;
  const corners = [
    [-0.15, -5],
    [0.15, -5],
    [0.15, 5],
    [-0.15, 5],
  ].map(([a, b]) => plus(plus(gate, a as number, thin), b as number, wide));
  let [cut, spoilt] = [0, false];
  const parts = build.parts.map((part): Part => {
    const shape = part.kind === 'flat' ? part : part.kind === 'bought' ? part.shape : null;
    let holes = shape !== null && 'outline' in shape ? shape.holes : [];
    for (const placement of part.placements.filter((p) => stands(p, setup))) {
      const own = inverse(placement.matrix);
      if (shape === null || !('outline' in shape)) {
        const long = shape?.length ?? 22;
        const middle = minus(apply(placement.matrix, { x: 0, y: 0, z: long / 2 }), gate);
        const along = middle.x * out.x + middle.y * out.y + middle.z * out.z;
        const reach = shape === null ? 60 : Math.hypot(shape.diameter / 2, long / 2);
        if (along > 0 && size(plus(middle, -along, out)) < reach + 8) spoilt = true;
        continue;
      }
      const points: Point[] = [];
      let way = 0;
      for (const corner of corners) {
        const from = apply(own, corner);
        const by = minus(apply(own, plus(corner, 1, out)), from);
        for (const z of [0, shape.thickness]) {
          const t = (z - from.z) / (Math.abs(by.z) < 1e-9 ? 1e-9 : by.z);
          way += t / 8;
          points.push({ x: from.x + t * by.x, y: from.y + t * by.y });
        }
      }
      const loop = flatten(shape.outline);
      const slit = hull(points);
      if (way <= 0.3 || !(slit.some((p) => inside(loop, p)) || loop.some((p) => inside(slit, p)))) continue;
      holes = [...holes, reversed(polygon(slit.map(({ x, y }) => [x, y] as const)))];
      cut++;
    }
    if (part.kind === 'flat') return { ...part, holes };
    return part.kind === 'bought' && part.shape.form === 'plate' ? { ...part, shape: { ...part.shape, holes } } : part;
  });
  return spoilt || cut === 0 ? null : { ...build, parts };
}

/** Whether all the bundle is free, by lines through it. */
function isFree(build: Build, { gate, out, thin, wide }: Bundle): boolean {
  const { solids, standing } = sceneOf(build);
  const [setup] = build.setups;
  if (setup === undefined) return false;
  const cast = standing(setup, 'none').all;
  const here = solids.filter((_, k) => cast[k] === 1).map(({ piece }) => ({ piece, shift: [0, 0, 0] as const }));
  return [-0.149, 0, 0.149].every((a) =>
    [-4.99, -2.5, 0, 2.5, 4.99].every((b) => {
      const through = plus(plus(gate, a, thin), b, wide);
      return firstMet({ from: plus(through, (gate.z - through.z) / out.z, out), towards: out }, here) === null;
    }),
  );
}

describe('a gap of 0.3 mm along two straight edges, of which 10 mm are left open', () => {
  /** A front of two halves, and a mask before it that leaves a window over their gap. */
  const masked = (x: number, y: number): Build => {
    const flat = (id: string, z: number, outline: ClosedPath, holes: readonly ClosedPath[] = []) =>
      plateAt({ id, outline, holes, matrix: acrossZ(z), joins: [{ to: 'B1', by: 'glue' }] });
    // off the middle, so that no edge of the window has a point in line with the gap
    const window = rectangle({ left: x - 14, right: x + 17, bottom: y - 5, top: y + 5 });
    return buildOf([
      ...darkBox.filter(({ id }) => id !== 'front'),
      flat('one', -4, rectangle({ left: -54, right: x - 0.15, bottom: -54, top: 54 })),
      flat('two', -4, rectangle({ left: x + 0.15, right: 54, bottom: -54, top: 54 })),
      flat('mask', -8, rectangle(boxAt(0, 0, 108, 108)), [window]),
    ]);
  };

  test('is found wherever it is left open', () => {
    const random = numbers(3);
    const places = Array.from({ length: 40 }, () => [30 * (random() - 0.5), 24 * (random() - 0.5)] as const);
    const missed = places.filter(([x, y]) => {
      const leak = first(masked(x, y));
      return leak?.parts.map(({ id }) => id).join() !== 'one,two' || Math.abs(leak.at.y - y) > 8;
    });
    expect(missed).toEqual([]);
  });
});

/** How far a point lies off the middle of a bundle. */
const off = ({ gate, out }: Bundle, at: Point3): number => {
  const away = minus(at, gate);
  return size(plus(away, -(away.x * out.x + away.y * out.y + away.z * out.z), out));
};

describe('a slit of 0.3 mm × 10 mm, anywhere, in any direction, through whatever stands there', () => {
  const closed = buildOf(darkBox);
  const one = heron.build.setups.find(({ focusing }) => !focusing);
  const camera: Build = { ...heron.build, setups: one ? [one] : [], stations: heron.build.stations.slice(0, 1) };

  test.each([
    { name: 'a closed box', build: closed, seed: 1, slits: 40 },
    { name: 'Heron', build: camera, seed: 7, slits: 12 },
  ])('is found in $name', { timeout: 60_000 }, ({ build, seed, slits }) => {
    const random = numbers(seed);
    const missed: Bundle[] = [];
    for (let tried = 0; tried < slits; ) {
      const bundle = bundleAt(build, random);
      const slit = cutThrough(build, bundle);
      if (slit === null || !isFree(slit, bundle)) continue;
      tried++;
      // the longer side of the bundle is 10: what is found in it lies no farther than half of that from its middle
      const here = (leak: Leak) => leak.stance.push === 'none' && off(bundle, leak.at) < 6;
      if (!leaks(slit, here).some(here)) missed.push(bundle);
    }
    expect(missed).toEqual([]);
  });
});
