import { describe, expect, test } from 'vitest';
import { threeMf } from '../../src/files/3mf.js';
import { stl } from '../../src/files/stl.js';
import { rounded } from '../../src/geometry/mesh.js';
import { buildPrism } from '../../src/geometry/modelling.js';
import { reversed } from '../../src/geometry/path.js';
import { across } from '../../src/geometry/placement.js';
import { circle } from '../../src/geometry/shapes.js';
import { readStl, readThreeMf, tally, volumeOf } from './read-print.js';

const mesh = rounded(
  buildPrism(
    { profile: circle(0, 0, 74.2), holes: [reversed(circle(0, 0, 58.2))], height: 22, matrix: across(0, 0, 0) },
    'add',
  ),
);
const written = readThreeMf(threeMf({ name: 'Ring <58.2> & "test"', mesh }));

describe('a 3MF package', () => {
  test('holds its content types, the way to the model, and the model', () => {
    // M7.21 [verified: R61]; content types [from memory: OPC, ECMA-376 part 2]
    expect(Object.keys(written.files)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
    expect(written.files['_rels/.rels']).toContain(
      'Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"',
    );
    expect(written.files['_rels/.rels']).toContain('Target="/3D/3dmodel.model"');
    expect(written.files['[Content_Types].xml']).toContain(
      'Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"',
    );
    expect(written.files['[Content_Types].xml']).toContain(
      'Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"',
    );
  });

  test('counts in millimetres and carries the core namespace', () => {
    expect(written.model).toMatch(/<model [^>]*unit="millimeter"/); // M7.20 [verified: R61]
    expect(written.model).toContain('xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"'); // M7.21 [verified: R61]
  });

  test('names the part, whatever characters the name has', () =>
    expect(written.model).toContain('<object id="1" type="model" name="Ring &lt;58.2&gt; &amp; &quot;test&quot;">'));

  test('builds one object and stands it in the octant where all coordinates are positive', () => {
    expect(written.model.match(/<object /g)).toHaveLength(1);
    expect(written.model.match(/<item /g)).toHaveLength(1);
    expect(written.model.match(/<(model|resources|build)[ >]/g)).toEqual(['<model ', '<resources>', '<build>']); // M7.22 [verified: R61]
    const [, transform = ''] = /<item objectid="1" transform="([^"]*)"/.exec(written.model) ?? [];
    const shift = transform.split(' ').map(Number).slice(9);
    expect(shift).toHaveLength(3);
    for (const corner of written.corners)
      corner.forEach((v, axis) => {
        expect(v + (shift[axis] ?? Number.NaN)).toBeGreaterThanOrEqual(0);
      });
  });

  test('shares its corners: every edge by index between two triangles, outwards', () => {
    // M7.23 [verified: R61]
    expect(tally(written)).toMatchObject({ unpaired: 0, shells: 1, genus: 1 });
    expect(written.faces.every((face) => new Set(face).size === 3)).toBe(true);
    expect(written.faces.length).toBeGreaterThanOrEqual(4);
    expect(volumeOf(written)).toBeGreaterThan(0);
    expect(new Set(written.corners.map(String)).size).toBe(written.corners.length);
  });

  test('holds the same body as the STL', () => {
    const other = readStl(stl(mesh));
    expect(tally(written)).toEqual(tally(other));
    expect(volumeOf(written) / volumeOf(other)).toBeCloseTo(1, 6); // 32-bit floats carry seven digits
  });

  test('writes numbers without exponent, minus before zero or more than four decimals', () => {
    const numbers = [...written.model.matchAll(/ [xyz]="([^"]*)"/g)].map(([, text]) => text);
    expect(numbers.length).toBe(3 * written.corners.length);
    for (const text of numbers) expect(text).toMatch(/^(?!-0$)-?\d+(\.\d{1,4})?$/); // M7.31 [common practice, no source]
  });
});
