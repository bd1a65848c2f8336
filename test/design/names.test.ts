import fc from 'fast-check';
import { expect, test } from 'vitest';
import { materialName } from '../../src/design/material-name.js';
import { nameTrouble, slugOf } from '../../src/design/names.js';

test('a folder is called after the name, in lower case, its words joined by hyphens', () => {
  expect(slugOf('Heron')).toBe('heron');
  expect(slugOf('Grey Heron  No. 2')).toBe('grey-heron-no-2');
  expect(slugOf('  (Bittern)  ')).toBe('bittern');
  expect(slugOf('Großer Brachvogel')).toBe('großer-brachvogel');
  expect(slugOf('e\u0301gret')).toBe(slugOf('\u00e9gret'));
});

test('a sheet is called after its material and its measured thickness', () => {
  expect(materialName('plywood', 4.05)).toBe('plywood-4.05'); // as in the contract
  expect(materialName('Birch ply', 5.9)).toBe('birch-ply-5.9');
  expect(materialName('plywood', 3)).toBe('plywood-3');
});

test('no name that is let through leads out of the folder or is kept for a device', () =>
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: fc.constantFrom('.', '/', '\\', 'a', ' ', '-', ':') })),
      (name) => {
        if (nameTrouble(name) !== null) return;
        const slug = slugOf(name);
        expect(slug).toMatch(/^[\p{L}\p{M}\p{N}]+(-[\p{L}\p{M}\p{N}]+)*$/u);
        expect(slug).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)$/);
        expect(slug.length).toBeLessThanOrEqual(200);
      },
    ),
    { numRuns: 1000 },
  ));
