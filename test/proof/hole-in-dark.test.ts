import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { reversed } from '../../src/geometry/path.js';
import { circle } from '../../src/geometry/shapes.js';
import type { Finding } from '../../src/model/finding.js';
import { holesInDark } from '../../src/proof/hole-in-dark.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { heron } from '../camera/worked.js';

const told = (build: Build): readonly Finding[] => holesInDark(sceneOf(build));
const without = (...ids: readonly string[]): Build => ({
  ...heron.build,
  parts: heron.build.parts.filter(({ id }) => !ids.includes(id)),
});
/** Heron with a hole of 5 mm more in a part, in the part's own frame. */
const drilled = (id: string, x: number, y: number): Build => ({
  ...heron.build,
  parts: heron.build.parts.map((part) =>
    part.id === id && part.kind === 'flat' ? { ...part, holes: [...part.holes, reversed(circle(x, y, 5))] } : part,
  ),
});

describe('holes into the dark', () => {
  test('of Heron are all filled, blind or covered', () => expect(told(heron.build)).toEqual([]));

  test('a dowel left out leaves a hole through board and plug', () => {
    const found = told(without('board-dowel-5'));
    expect(found.map(({ message }) => message.match(/in (\w+) \(/)?.[1])).toEqual(['F6', 'F7']);
    expect(found[0]).toMatchObject({ rule: 'hole-in-dark', level: 'error', value: 5, limit: 0, unit: 'mm' });
  });

  test('a screw of the clamp left out is told at its place', () => {
    // the screws stand on a circle at 45°: 31.2 to either side (placed by the clamp's bolt circle, section 10)
    const [first] = told(without('clamp-screw'));
    expect(first?.message).toContain('in F6 (lens board) at x 31.2 mm, y 31.2 mm');
  });

  test.each([
    // the panel's own x runs to the left; 87 lies between packing (80.4) and corner strip (91.6)
    { id: 'F1', x: -87, y: 20, where: 'into the front box' },
    // the sides are drawn in (z, y), the left one from its outside, where z runs the other way: 20 behind the panel,
    // where the rear box is at its closest and leaves it free farther out
    { id: 'F2L', x: -20, y: 30, where: 'into the front box, once the rear box is drawn out' },
  ])('a hole drilled in $id leads $where', ({ id, x, y }) => {
    const found = told(drilled(id, x, y));
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain(`a hole of 5 mm in ${id}`);
  });

  test.each([
    // under the packing of a retainer, 66.4 … 80.4 to either side
    { id: 'F1', x: 73, y: 20, why: 'covered by wood' },
    // over the standard's land, from the rear box (98.1) outwards
    { id: 'B1', x: 104, y: 0, why: 'covered by the standard' },
    // beside the rear box's place on the standard: the back covers it behind
    { id: 'R3', x: 106, y: 20, why: 'covered by the back' },
    // far outside
    { id: 'T1L', x: 100, y: 0, why: 'outside the dark' },
  ])('a hole drilled in $id is $why', ({ id, x, y }) => expect(told(drilled(id, x, y))).toEqual([]));
});
