import { describe, expect, test } from 'vitest';
import { reversed } from '../../src/geometry/path.js';
import { circle } from '../../src/geometry/shapes.js';
import { emptyHoles } from '../../src/proof/empty-hole.js';
import { buildOf, plank } from '../assembly/planks.js';
import { heron, removePart } from '../planted.js';

/** A board with a hole of a diameter at 20, 20, and a pin that may stand in it. */
const board = (diameter: number) => ({
  ...plank({ id: 'A', x: [10, 60], y: [10, 60], z: [0, 4] }),
  holes: [reversed(circle(10, 10, diameter))],
});
const pin = (at: number) => plank({ id: 'P', x: [at - 1, at + 1], y: [19, 21], z: [-2, 6] });

describe('empty-hole', () => {
  test('a hole with a pin in it', () => expect(emptyHoles(buildOf(board(5), pin(20)))).toEqual([]));

  test('the same with the pin beside it', () => {
    expect(emptyHoles(buildOf(board(5), pin(40)))).toMatchObject([
      {
        rule: 'empty-hole',
        level: 'warning',
        message:
          'Nothing goes through the hole of A (plank A) at x 20 mm, y 20 mm, z 2 mm: something was forgotten there.',
      },
    ]);
  });

  test.each([
    { what: 'a pilot hole of 2 mm is full of its screw', diameter: 2 },
    { what: 'an opening of 41 mm may be empty', diameter: 41 },
  ])('$what', ({ diameter }) => expect(emptyHoles(buildOf(board(diameter), pin(80)))).toEqual([]));

  test('Heron has a use for each of its holes', () => expect(emptyHoles(heron.build)).toEqual([]));

  test.each(['R5', 'B5', 'stop-screw', 'seat-pin-6', 'button-screw', 'tripod-barrel'])('and misses its %s', (id) =>
    expect(emptyHoles(removePart(heron.build, id)).length).toBeGreaterThan(0),
  );
});
