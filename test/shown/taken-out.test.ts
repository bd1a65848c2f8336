import { beforeAll, describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { type Piece, piecesOf } from '../../src/assembly/pieces.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Point3 } from '../../src/geometry/placement.js';
import type { Axis, Move } from '../../src/model/assembly-move.js';
import type { TakenOut, TakenStep } from '../../src/model/shown.js';
import { planCamera } from '../../src/pipeline.js';
import { putTogether } from '../../src/proof/prove.js';
import { takenOut } from '../../src/shown/taken-out.js';
import { keptDesign } from '../designs/kept-design.js';

const AXES = ['x', 'y', 'z'] as const satisfies readonly Axis[];
/** What lies side by side is drawn so: boxes that meet by less are beside each other, mm. */
const BESIDE = 0.1;

const kernel = await loadKernel();

describe.each(['heron', 'teal'] as const)('%s taken apart', (name) => {
  let build: Build;
  let moves: readonly Move[];
  let apart: TakenOut;
  let pieces: ReadonlyMap<string, Piece>;
  beforeAll(() => {
    const design = keptDesign(name);
    ({ build } = planCamera(design));
    ({ moves } = putTogether(design, build, kernel));
    apart = takenOut(build, moves);
    pieces = new Map(piecesOf(build.parts).map((piece) => [piece.key, piece]));
  });

  const all = (): readonly TakenStep[] => Object.values(apart).flat();
  const movesOf = ({ step, pieces: keys }: TakenStep) =>
    moves.filter((move) => move.step === step && move.pieces.join() === keys.join());

  test('every set-up comes apart, in the order in which it was put together', () => {
    expect(Object.keys(apart)).toEqual(build.setups.map((setup) => setup.name));
    for (const steps of Object.values(apart)) {
      expect(steps.length).toBeGreaterThan(10);
      const numbers = steps.map(({ step }) => step);
      expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
      // a holder that the proof brings in set-up after set-up leaves each of them once
      const told = steps.map(({ step, pieces: keys }) => `${step} ${keys.join(' ')}`);
      expect(told.filter((one, i) => told.indexOf(one) !== i)).toEqual([]);
    }
  });

  test('each thing goes straight back the way by which the proof brought it', () => {
    for (const taken of all()) {
      const ways = movesOf(taken).flatMap(({ way }) => way ?? []);
      const back = ways.some(({ axis, sign }) =>
        AXES.every((one) => (one === axis ? taken.by[one] * sign < -BESIDE : taken.by[one] === 0)),
      );
      expect(back, `step ${taken.step}: ${taken.pieces.join(' ')}`).toBe(true);
    }
  });

  test('what is laid down first is not taken away, and all else is', () => {
    const away = new Set(all().flatMap(({ pieces: keys }) => keys));
    const brought = moves.filter(({ way }) => way !== null).flatMap(({ pieces: keys }) => keys);
    expect([...away].sort()).toEqual([...new Set(brought)].sort());
  });

  test('when all is out, nothing lies in the box of what it had been put to', () => {
    for (const [setup, steps] of Object.entries(apart)) {
      const out = (key: string): Point3 =>
        steps
          .filter(({ pieces: keys }) => keys.includes(key))
          .reduce((sum, { by }) => ({ x: sum.x + by.x, y: sum.y + by.y, z: sum.z + by.z }), { x: 0, y: 0, z: 0 });
      const boxOf = (key: string, axis: Axis): readonly [number, number] => {
        const [from, to] = pieces.get(key)?.extent[axis] ?? [0, 0];
        return [from + out(key)[axis], to + out(key)[axis]];
      };
      const apartBy = (a: string, b: string): number =>
        Math.max(
          ...AXES.map((axis) => {
            const [p, q] = [boxOf(a, axis), boxOf(b, axis)];
            return Math.max(p[0], q[0]) - Math.min(p[1], q[1]);
          }),
        );
      const there = new Map<string, readonly string[]>();
      const touching: string[] = [];
      for (const taken of steps) {
        const [move] = movesOf(taken);
        const before = there.get(move?.into ?? '') ?? [];
        for (const key of taken.pieces)
          for (const other of before) {
            if (taken.pieces.includes(other)) continue;
            if (apartBy(key, other) < -BESIDE) touching.push(`${setup}, step ${taken.step}: ${key} and ${other}`);
          }
        there.set(move?.into ?? '', [...before, ...taken.pieces]);
      }
      expect(touching).toEqual([]);
    }
  });
});
