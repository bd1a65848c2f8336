import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { designJsonSchema } from '../../src/design/json-schema.js';
import { keyTable } from '../../src/design/key-table.js';
import { changed, designOf } from './reading.js';
import { bittern, fewest, heron } from './worked-designs.js';

const accepts = new Ajv2020({ strict: false }).compile(designJsonSchema());

describe('the published schema', () => {
  test.each([
    ['a 5x7', heron],
    ['an 8x10', bittern],
    ['the fewest keys', fewest],
  ])('takes %s', (_, text) => {
    accepts(parse(text));
    expect(accepts.errors).toBeNull();
  });

  test.each([
    ['a slip in a key', 'flangeDistance', 'flangeDistanse'],
    ['a missing key', '  focalLength: 210 mm\n', ''],
    ['a slip in a word', 'by: clamp', 'by: clmp'],
    ['a key that is not known', 'kerf: 0.15 mm', 'kerf: 0.15 mm, power: 40'],
    ['a list for a speed', 'kerf: 0.15 mm', 'kerf: 0.15 mm, cutSpeed: [10 mm/s]'],
    ['a list for a length', 'kerf: 0.15 mm', 'kerf: [0.15 mm]'],
    ['a stray entry of a decimal comma', 'thickness: 4.05 mm', 'thickness: 4,05 mm'],
    ['three sides of a sheet', '[600 mm, 400 mm]', '[600 mm, 400 mm, 1 mm]'],
  ])('refuses %s', (_, from, to) => expect(accepts(parse(changed(heron, from, to)))).toBe(false));

  test('is the same each time', () =>
    expect(JSON.stringify(designJsonSchema())).toBe(JSON.stringify(designJsonSchema())));
});

describe('the table of keys', () => {
  const table = keyTable(designJsonSchema());
  const row = (path: string) => table.find((key) => key.path === path);

  test('every key is described, with an example, and with what holds where it is left out if it may be', () => {
    const silent = [
      'lens.flange',
      'builtFor.lens.flange',
      'holders[].rib',
      'holders[].window',
      'holders[].sheetThickness',
    ];
    for (const { path, description, example, required, whenAbsent } of table) {
      expect.soft(description, path).not.toBe('');
      expect.soft(example, path).not.toBe('');
      expect.soft(required || whenAbsent !== null || silent.includes(path), path).toBe(true);
    }
  });

  test('says what the contract promises', () => {
    expect(row('lens.maxAperture')).toMatchObject({ whenAbsent: 'f/8', required: false });
    expect(row('focus.nearest')?.whenAbsent).toBe('1:5');
    expect(row('plywood.sheet')?.whenAbsent).toBe('[600 mm, 400 mm]');
    expect(row('laser.cutSpeed')?.whenAbsent).toBe('10 mm/s');
    expect(row('laser.engraveSpeed')?.whenAbsent).toBe('200 mm/s');
    expect(row('laser.travelSpeed')?.whenAbsent).toBe('300 mm/s');
    expect(row('laser.pierceTime')?.whenAbsent).toBe('0.5 s');
    expect(row('workshop.fits.press')?.whenAbsent).toBe('-0.02 mm');
    expect(row('laser.kerf')).toMatchObject({ whenAbsent: null, required: true });
    expect(row('holders[].name')).toMatchObject({ required: true, example: 'paper holder' });
    expect(row('holders[].filmDepth')).toMatchObject({ required: false, example: '5.8 mm' });
  });

  test('the keys that must be given are those of the contract', () =>
    // holders[], barrel and flange, stock[] and rib, once begun, have keys of their own that must be given
    expect(
      table
        .filter(({ required, path }) => required && /^(lens\.)?\w+$|^(plywood|laser)\./.test(path))
        .map(({ path }) => path),
    ).toEqual([
      'name',
      'format',
      'lens',
      'lens.focalLength',
      'lens.flangeDistance',
      'plywood',
      'plywood.thickness',
      'laser',
      'laser.kerf',
    ]));

  test('its examples can be written as they stand', () => {
    for (const { path, example } of table.filter(({ path: key }) =>
      /^(focus|groundGlass|workshop|shims|stock|sitting)\b[^[]*$/.test(key),
    )) {
      const nested = path.split('.').reduceRight((inner, key) => `{ ${key}: ${inner} }`, example);
      expect(() => designOf(`${fewest}${nested.slice(2, -2)}\n`), path).not.toThrow();
    }
  });
});
