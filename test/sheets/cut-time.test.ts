import { describe, expect, test } from 'vitest';
import { cutMinutes } from '../../src/sheets/cut-time.js';
import { layers, type Sheet } from '../../src/sheets/sheet.js';

/** A square of 100 mm with a hole of 10 mm square and a stroke of 40 mm; derived by hand. */
const sheet: Sheet = {
  name: 'plywood-4-1',
  material: 'plywood-4',
  thickness: 4,
  width: 200,
  height: 200,
  margin: 5,
  spacing: 2,
  placed: [],
  operations: layers.map((layer) => ({
    layer,
    paths:
      layer === 'engrave'
        ? [{ id: 'A.1.1', path: { vertices: [at(20, 20), at(60, 20)], closed: false } }]
        : layer === 'cut-inside'
          ? [{ id: 'A.1.2', path: square(80, 10) }]
          : layer === 'cut-outside'
            ? [{ id: 'A.1.3', path: square(10, 100) }]
            : [],
  })),
  usedArea: 9900,
  cutLength: 440,
  travelLength: 150,
};

const pace = { cutSpeed: 10, engraveSpeed: 200, travelSpeed: 300, pierceTime: 0.5 };

describe('the minutes of a sheet', () => {
  test('440 mm cut at 10 mm/s, 40 engraved at 200, 150 travelled at 300, through the wood twice', () =>
    expect(cutMinutes(sheet, pace)).toBeCloseTo((44 + 0.2 + 0.5 + 1) / 60, 12));

  // camera.md section 19: about 44 m and 74 min at 10 mm/s, 0.5 s a piercing [P]; 44 m alone are 73.3 min
  test('a whole camera: 44 m at 10 mm/s take about 74 minutes, 80 piercings less than one of them', () => {
    const camera = { ...sheet, cutLength: 44_000, travelLength: 0 };
    expect(cutMinutes(camera, { ...pace, pierceTime: 0 })).toBeCloseTo(73.3, 1);
    expect(cutMinutes(withCuts(camera, 80), pace)).toBeCloseTo(74, 9);
  });

  test.each([
    ['cutSpeed', 20, -22],
    ['engraveSpeed', 20, 1.8],
    ['travelSpeed', 100, 1],
    ['pierceTime', 2, 3],
  ] as const)('%s %d changes it by %d s', (key, value, seconds) =>
    expect(60 * (cutMinutes(sheet, { ...pace, [key]: value }) - cutMinutes(sheet, pace))).toBeCloseTo(seconds, 9),
  );
});

/** The same with so many cuts; what they are long is told by the sheet. */
function withCuts(given: Sheet, count: number): Sheet {
  const paths = Array.from({ length: count }, (_, i) => ({ id: `A.1.${i + 1}`, path: square(10, 10) }));
  return { ...given, operations: [{ layer: 'cut-outside', paths }] };
}

function at(x: number, y: number) {
  return { x, y, bulge: 0 };
}

function square(from: number, side: number) {
  const to = from + side;
  return { vertices: [at(from, from), at(to, from), at(to, to), at(from, to)], closed: true };
}
