import { describe, expect, test } from 'vitest';
import { rectangle } from '../../src/geometry/shapes.js';
import type { Part } from '../../src/model/part.js';
import { coneOnParts } from '../../src/proof/cone.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { heron } from '../camera/worked.js';
import { acrossZ, plateAt } from './dark-box.js';

/** A plate across the axis at z, from x on to the right, in Heron. */
const found = (x: number, z: number) => {
  const shade: Part = plateAt({
    id: 'shade',
    outline: rectangle({ left: x, right: 90, bottom: -5, top: 5 }),
    matrix: acrossZ(z),
    thickness: 1,
  });
  return coneOnParts(heron.design, sceneOf({ ...heron.build, parts: [...heron.build.parts, shade] }));
};

describe('light from the rear rim of the lens to the film', () => {
  test('meets no part of Heron', () => expect(coneOnParts(heron.design, sceneOf(heron.build))).toEqual([]));

  // rear rim at z 53, radius 26; widest where the long side of the film (171.4) lies across and stands closest, its film
  // 181.3 from the axis's origin (175.5 + 5.8): half width at z is 26 + (85.7 − 26)(z − 53)/128.3, similar triangles:
  // at z 101 it is 26 + 59.7 · 48/128.3 = 48.33
  test('is met by what stands in it', () => {
    const [one] = found(47.3, 100);
    expect(one).toMatchObject({ rule: 'cone-clear', level: 'error', unit: 'mm', limit: 0 });
    expect(-(one?.value ?? 0)).toBeCloseTo(48.33 - 47.3, 1);
    expect(one?.message).toContain('shade (plate shade)');
  });

  test('is not met by what stands beside it', () => expect(found(48.4, 100)).toEqual([]));
});
