import dxfParser from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { sheetDxf } from '../../src/files/dxf.js';
import { area, flatten, type Path, type Vertex } from '../../src/geometry/path.js';
import { boxAt, circle, rounded } from '../../src/geometry/shapes.js';
import { layers, type Sheet } from '../../src/sheets/sheet.js';
import { departure } from '../sheets/measure.js';
import { sampleSheets } from './sample-sheets.js';

/** What is imported is the class itself; its types speak of a module that holds it. */
const DxfParser = dxfParser as unknown as new () => { parseSync(text: string): unknown };

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly shape?: boolean;
  readonly vertices?: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
  readonly center?: { readonly x: number; readonly y: number };
  readonly radius?: number;
}

/** A second reader: another library's parser, its entities turned into paths. */
function readDxf(text: string) {
  const file = new DxfParser().parseSync(text) as {
    readonly header: { readonly [name: string]: unknown };
    readonly tables: { readonly layer: { readonly layers: { readonly [name: string]: unknown } } };
    readonly entities: readonly Entity[];
  };
  return { units: file.header.$INSUNITS, layers: Object.keys(file.tables.layer.layers), entities: file.entities };
}

function pathOf({ vertices, center, radius, shape }: Entity): Path {
  if (center && radius) return { closed: true, vertices: circle(center.x, center.y, 2 * radius) };
  return { closed: shape === true, vertices: (vertices ?? []).map(({ x, y, bulge = 0 }): Vertex => ({ x, y, bulge })) };
}

const names = ['ENGRAVE', 'CUT_INSIDE', 'CUT_NESTED', 'CUT_WINDOW', 'CUT_OUTSIDE'];

const sheetWith = (...paths: readonly Path[]): Sheet => ({
  name: 'card-1',
  material: 'card-1',
  thickness: 1,
  width: 200,
  height: 100,
  margin: 5,
  spacing: 2,
  placed: [],
  operations: layers.map((layer) => ({
    layer,
    paths: layer === 'cut-outside' ? paths.map((path, i) => ({ id: `P.1.${i + 1}`, path })) : [],
  })),
  usedArea: 0,
  cutLength: 0,
  travelLength: 0,
});
const only = (path: Path) => readDxf(sheetDxf(sheetWith(path))).entities;

describe('a sheet as DXF', () => {
  test.each(sampleSheets.map((sheet) => ({ sheet, name: sheet.name })))(
    '$name holds every path, in cutting order, on its layer',
    ({ sheet }) => {
      const { units, layers: table, entities } = readDxf(sheetDxf(sheet));
      expect(units).toBe(4); // millimetres, M7.06 [verified: R55]
      expect(table).toEqual(names);
      const drawn = sheet.operations.flatMap(({ paths }, i) => paths.map(({ path }) => ({ path, layer: names[i] })));
      expect(entities.map(({ layer }) => layer)).toEqual(drawn.map(({ layer }) => layer));
      entities.forEach((entity, i) => {
        const { path } = drawn[i] as (typeof drawn)[number];
        const read = pathOf(entity);
        expect(read.closed).toBe(path.closed);
        const points = ({ vertices, closed }: Path) => {
          const there = flatten(vertices, 0.0004, closed);
          return closed ? there : [...there, ...[...there].reverse()];
        };
        expect(departure(points(read), points(path))).toBeLessThan(0.001);
      });
    },
  );

  test('y runs up: what lies low on the sheet has a small y, M7.15 [common practice, no source]', () => {
    const [entity] = only({ closed: true, vertices: rounded(boxAt(50, 10, 20, 10), 2) });
    for (const { y } of entity?.vertices ?? []) expect(y).toBeLessThanOrEqual(15);
  });

  test('whole circles stay circles', () => {
    expect(only({ closed: true, vertices: circle(50, 40, 9) })).toEqual([
      expect.objectContaining({ type: 'CIRCLE', center: expect.objectContaining({ x: 50, y: 40 }), radius: 4.5 }),
    ]);
  });

  // bulges of quarter and three quarters of a circle, M7.10 [verified: R57, R54 formula]; area, M7.14 [common practice, no source]
  test('arcs are bulges of the vertex that they leave', () => {
    const [entity] = only({ closed: true, vertices: rounded(boxAt(100, 50, 100, 60), 8) });
    const bulges = entity?.vertices?.map(({ bulge = 0 }) => bulge).filter((b) => b !== 0);
    expect(bulges).toHaveLength(4);
    for (const bulge of bulges ?? []) expect(Math.abs(bulge)).toBeCloseTo(0.4142135624, 5);
    expect(Math.abs(area(pathOf(entity as Entity).vertices))).toBeCloseTo(5945.06193, 3);
  });

  test('an open stroke stays open, its arc with it', () => {
    const vertices = [
      { x: 10, y: 10, bulge: 0 },
      { x: 30, y: 10, bulge: -0.5 },
      { x: 50, y: 10, bulge: 0 },
    ];
    const [entity, ...more] = only({ closed: false, vertices });
    expect(more).toEqual([]);
    expect(entity?.shape).toBeFalsy();
    expect(entity?.vertices).toHaveLength(3);
    // M7.12 [common practice, no source]: sagitta 5 on a chord of 20, above the chord since the arc turns clockwise
    expect(Math.max(...flatten(pathOf(entity as Entity).vertices, 0.001, false).map(({ y }) => y))).toBeCloseTo(15, 2);
  });

  test('has no number with an exponent, M7.31 [common practice, no source]', () => {
    for (const sheet of sampleSheets) expect(sheetDxf(sheet)).not.toMatch(/^-?[\d.]+e[-+]?\d+$/im);
  });

  test('is the same bytes each time, and an empty sheet is still a file', () => {
    const [sheet] = sampleSheets as [Sheet];
    expect(sheetDxf(sheet)).toBe(sheetDxf(sheet));
    const empty = readDxf(sheetDxf(sheetWith()));
    expect([empty.units, empty.entities.length]).toEqual([4, 0]);
  });
});
