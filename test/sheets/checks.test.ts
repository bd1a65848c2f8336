import { describe, expect, test } from 'vitest';
import { reversed } from '../../src/geometry/path.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import { partsPart } from '../../src/sheets/checks.js';
import { layOut } from '../../src/sheets/lay-out.js';
import type { Sheet } from '../../src/sheets/sheet.js';
import { plate } from './invented-camera.js';

const stock = [{ material: 'plywood-4.05', thickness: 4.05, sheet: { width: 600, height: 400 } }];
const frame = plate('A', rectangle(boxAt(0, 0, 200, 200)), { holes: [reversed(rectangle(boxAt(0, 0, 150, 150)))] });
const small = plate('B', rectangle(boxAt(0, 0, 60, 60)));
const outer = plate('C', rectangle(boxAt(0, 0, 180, 180)));
const [sheet] = layOut(
  [frame, small, outer].map((part) => ({ part, count: 1 })),
  { materials: stock, kerf: 0.15 },
).sheets;

/** The same sheet with all lines of one piece pushed aside. */
function pushed(part: string, x: number, y: number): Sheet {
  if (sheet === undefined) throw new Error('nothing was laid out');
  const operations = sheet.operations.map(({ layer, paths }) => ({
    layer,
    paths: paths.map(({ id, path }) => {
      if (!id.startsWith(`${part}.`)) return { id, path };
      return { id, path: { ...path, vertices: path.vertices.map((v) => ({ ...v, x: v.x + x, y: v.y + y })) } };
    }),
  }));
  return { ...sheet, operations };
}

/** The way from one part's place to another's. */
function from(part: string, to: string) {
  const place = (id: string) => sheet?.placed.find((p) => p.part === id) ?? { x: NaN, y: NaN };
  return { x: place(to).x - place(part).x, y: place(to).y - place(part).y };
}

describe('parts-part, measured on the lines', () => {
  test('is silent on a sheet as it was packed', () => expect(partsPart(pushed('A', 0, 0))).toEqual([]));

  test.each([
    { what: 'a part pushed over the margin', part: 'A', x: -1, y: 0, says: 'A.1 comes within 4 mm' },
    { what: 'a part in a window pushed to its edge', part: 'B', x: -0.5, y: 0, says: 'A.1 and B.1 lie closer than' },
    {
      what: 'a part in a window pushed through its edge',
      part: 'B',
      x: 0,
      y: 110,
      says: 'A.1 and B.1 lie closer than',
    },
    {
      what: 'a part pushed onto its neighbour',
      part: 'C',
      x: from('C', 'A').x,
      y: from('C', 'A').y,
      says: 'A.1 and C.1 lie closer than',
    },
  ])('sees $what', ({ part, x, y, says }) => {
    expect(partsPart(pushed(part, x, y))).toContainEqual(
      expect.objectContaining({ rule: 'parts-part', level: 'error', message: expect.stringContaining(says) }),
    );
  });
});
