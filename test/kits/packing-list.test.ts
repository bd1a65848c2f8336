import { expect, test } from 'vitest';
import { inCuttingOrder, kitsOf } from '../../src/kits/packing-list.js';
import { sheetRows } from '../../src/kits/sheet-rows.js';
import type { Sheet } from '../../src/sheets/sheet.js';

const sheet = (name: string, ...placed: readonly string[]): Sheet => ({
  name,
  material: name.slice(0, name.lastIndexOf('-')),
  thickness: 4,
  width: 600,
  height: 400,
  margin: 5,
  spacing: 2,
  placed: placed.map((piece) => {
    const [part = '', instance] = piece.split('.');
    return { part, instance: Number(instance), x: 0, y: 0, rotation: 0 };
  }),
  operations: [],
  usedArea: 1,
  cutLength: 1,
  travelLength: 1,
});

const pieces = [
  { part: { id: 'A', name: 'plate' }, count: 1 },
  { part: { id: 'B', name: 'strip' }, count: 2 },
  { part: { id: 'C', name: 'left out' }, count: 0 },
];
const sheets = [sheet('ply-1', 'A.1', 'B.1', 'B.2'), sheet('ply-2', 'B.3', 'A.2'), sheet('board-1', 'B.4')];

test('each kit gets the next pieces of every part, and says on which sheets they lie', () => {
  expect(kitsOf(pieces, 2, sheets)).toEqual([
    {
      kit: 1,
      parts: [
        { id: 'A', name: 'plate', pieces: [{ instance: 1, sheet: 'ply-1' }] },
        { id: 'B', name: 'strip', pieces: [1, 2].map((instance) => ({ instance, sheet: 'ply-1' })) },
      ],
      sheets: ['ply-1'],
    },
    {
      kit: 2,
      parts: [
        { id: 'A', name: 'plate', pieces: [{ instance: 2, sheet: 'ply-2' }] },
        {
          id: 'B',
          name: 'strip',
          pieces: [
            { instance: 3, sheet: 'ply-2' },
            { instance: 4, sheet: 'board-1' },
          ],
        },
      ],
      sheets: ['ply-2', 'board-1'],
    },
  ]);
});

test('the material of which there are few sheets is cut first, and a box is full at its last sheet', () => {
  const order = inCuttingOrder(sheets);
  expect(order.map(({ name }) => name)).toEqual(['board-1', 'ply-1', 'ply-2']);
  const rows = sheetRows({ kits: kitsOf(pieces, 2, order) }, order);
  expect(rows.map(({ sheet: { name }, full }) => [name, full])).toEqual([
    ['board-1', []],
    ['ply-1', [1]],
    ['ply-2', [2]],
  ]);
  expect(rows[0]?.boxes).toEqual([{ kit: 2, parts: [{ id: 'B', count: 1 }] }]);
});
