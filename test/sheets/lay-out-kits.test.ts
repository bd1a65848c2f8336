import { describe, expect, test } from 'vitest';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import { type LayOut, layOut, type Piece } from '../../src/sheets/lay-out.js';
import type { SheetStock } from '../../src/sheets/stock.js';
import { inventedCamera, plate, stock } from './invented-camera.js';

const kerf = 0.15;
const COPIES = 4;
const total = (pieces: readonly Piece[]) => pieces.reduce((sum, { count }) => sum + count, 0);

/** Every piece so often as it is wanted, under a number of its own from 1 on: counted from the cut lines, too. */
function miscounted({ sheets }: Pick<LayOut, 'sheets'>, pieces: readonly Piece[], copies: number): readonly string[] {
  const placed = sheets.flatMap((sheet) => sheet.placed.map(({ part, instance }) => `${part}.${instance}`));
  const cut = sheets.flatMap(({ operations }) =>
    operations
      .filter(({ layer }) => layer === 'cut-outside' || layer === 'cut-nested')
      .flatMap(({ paths }) => paths.map(({ id }) => id.replace(/\.\d+$/, ''))),
  );
  const wanted = pieces.flatMap(({ part, count }) =>
    Array.from({ length: copies * count }, (_, n) => `${part.id}.${n + 1}`),
  );
  const differs = (found: readonly string[]) =>
    [...found].sort().join() === [...wanted].sort().join() ? [] : [`${found.length} of ${wanted.length}`];
  return [...differs(placed), ...differs(cut)];
}

describe('kits of an invented camera', () => {
  const given = { materials: stock, kerf, effort: 2 };
  const one = layOut(inventedCamera, given);
  const run = layOut(inventedCamera, { ...given, copies: COPIES });

  test('have every piece of every kit, once', () => {
    expect(miscounted(run, inventedCamera, COPIES)).toEqual([]);
    // the count can fail
    const [first, ...others] = run.sheets;
    expect(miscounted({ sheets: others }, inventedCamera, COPIES)).not.toEqual([]);
    expect(miscounted({ sheets: [first, first, ...others] as typeof run.sheets }, inventedCamera, COPIES)).not.toEqual(
      [],
    );
  });

  test('take no more sheets than as many single ones, and no fewer than their area', () => {
    expect(run.sheets.length).toBeLessThanOrEqual(COPIES * one.sheets.length);
    const area = run.sheets.reduce((sum, { usedArea }) => sum + usedArea, 0);
    expect(area).toBeCloseTo(COPIES * one.sheets.reduce((sum, { usedArea }) => sum + usedArea, 0), 3);
    for (const { material, sheets, bound } of run.uses) {
      const own = run.sheets.filter((sheet) => sheet.material === material);
      const [{ width, height } = { width: 1, height: 1 }] = own;
      const need = own.reduce((sum, { usedArea }) => sum + usedArea, 0) / (width * height);
      expect(bound ?? 0).toBeGreaterThanOrEqual(Math.ceil(need) > sheets ? 0 : 1);
      expect(sheets).toBeGreaterThanOrEqual(Math.ceil(need));
      expect(sheets).toBeGreaterThanOrEqual(bound ?? Infinity);
    }
  });

  test('say the same of their parts as one does', () => {
    const rules = ({ findings }: LayOut) => [...new Set(findings.map(({ rule }) => rule))].sort();
    expect(rules(run)).toEqual(rules(one));
  });

  test('without effort take what single ones take', () => {
    const quick = { ...given, effort: 0 };
    const alone = layOut(inventedCamera, quick).sheets.length;
    expect(layOut(inventedCamera, { ...quick, copies: 2 }).sheets.length).toBeLessThanOrEqual(2 * alone);
  });

  test('lie the same each time', () =>
    expect(layOut(inventedCamera, { ...given, copies: COPIES }).sheets).toEqual(run.sheets));
});

describe('where some sheets are at hand', () => {
  // a sheet of 210 × 110 takes two plates of 100 × 100, whatever the margin of 5
  const plates = [{ part: plate('P', rectangle(boxAt(0, 0, 96, 96))), count: 2 }];
  const sheet = { width: 210, height: 110 };
  const kind = { material: 'plywood-4.05', thickness: 4.05 };
  const of = (materials: readonly SheetStock[], copies: number) =>
    layOut(plates, { materials, kerf, effort: 0.5, copies, margin: 5, spacing: 2 });

  test('each is taken once, and the rest is bought', () => {
    const { sheets, uses } = of(
      [
        { ...kind, sheet },
        { ...kind, sheet, count: 2 },
      ],
      5,
    );
    expect(miscounted({ sheets }, plates, 5)).toEqual([]);
    expect(sheets).toHaveLength(5);
    expect(uses[0]?.atHand).toBe(2);
    expect(sheets.filter(({ atHand }) => atHand)).toHaveLength(2);
  });

  test('what they do not suffice for is told, with how many pieces lack', () => {
    const { sheets, findings } = of([{ ...kind, sheet, count: 3 }], 5);
    expect(total(plates) * 5 - sheets.flatMap(({ placed }) => placed).length).toBe(4);
    expect(findings.map(({ rule }) => rule)).toContain('part-on-bed');
    expect(findings.find(({ rule }) => rule === 'part-on-bed')?.message).toContain('4');
  });
});

test('sheets come in an order in which the first kit is whole early', () => {
  // a kit is three plates that fill a sheet each, so after three sheets of nine the first is whole
  const plates = ['A', 'B', 'C'].map((id) => ({ part: plate(id, rectangle(boxAt(0, 0, 560, 380))), count: 1 }));
  const { sheets } = layOut(plates, { materials: stock, kerf, effort: 0.5, copies: 3 });
  const firstThree = sheets.slice(0, 3).flatMap(({ placed }) => placed.map(({ part }) => part));
  expect(sheets).toHaveLength(9);
  expect([...firstThree].sort()).toEqual(['A', 'B', 'C']);
});
