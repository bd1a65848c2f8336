import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { FormNode } from '../../src/model/design-form.js';
import { found } from '../../src/page/design/find.js';
import { unbroken } from '../../src/page/unbroken.js';
import { formOf } from '../design/form-nodes.js';

const HERON = readFileSync(join(import.meta.dirname, '..', '..', 'designs', 'heron.yaml'), 'utf8');

const fieldsIn = (nodes: readonly FormNode[]): readonly string[] =>
  nodes.flatMap((node) =>
    node.kind === 'field' ? [node.path] : node.kind === 'group' ? fieldsIn(node.nodes) : [node.path],
  );

test('a key is found by a value that it may have, behind those that are called so', () => {
  const paths = fieldsIn(found(formOf(HERON).nodes, 'flange'));
  expect(paths).toContain('lens.mount.by');
  expect(paths.indexOf('lens.flangeDistance')).toBeLessThan(paths.indexOf('lens.mount.by'));
  expect(paths[0]).toBe('lens.flangeDistance');
});

test('a number and its unit stay on one line, and nothing else does', () => {
  const kept = '\u00a0';
  expect(unbroken('sharp at 1:27, 0.61 m')).toBe(`sharp at 1:27, 0.61${kept}m`);
  expect(unbroken('7.41 s at 22 °C, 30 % more')).toBe(`7.41${kept}s at 22${kept}°C, 30${kept}% more`);
  expect(unbroken('3 sheets of 600 × 400 mm, 2 metres')).toBe(`3 sheets of 600 × 400${kept}mm, 2 metres`);
  expect(unbroken('7000 N/mm2 and 10 mm/s')).toBe('7000 N/mm2 and 10 mm/s');
});
