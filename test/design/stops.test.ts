import { describe, expect, test } from 'vitest';
import { revisionOf } from '../../src/design/revision.js';
import { designOf, problemsOf } from './reading.js';
import { heron } from './worked-designs.js';

const asked = (keys: string) => `${heron}stops: { fullAperture: 30 mm, slot: [40 mm, 1 mm]${keys} }\n`;

describe('stops', () => {
  test('in order, from the board that is named', () =>
    expect(designOf(asked(', series: [f/22, 8, f/5.6], marked: f/4.5, depth: 31 mm, board: 0.75 mm')).stops).toEqual({
      fullAperture: 30,
      marked: 4.5,
      slot: { width: 40, thickness: 1 },
      depth: 31,
      board: { material: 'board-0.75', thickness: 0.75 },
      series: [5.6, 8, 22],
    }));
  test('they are in the mark of the design', () =>
    expect(revisionOf(designOf(asked('')))).not.toBe(revisionOf(designOf(heron))));
  test.each([
    ['a stop wider than the lens', ', series: [f/4]', 'stops.series[0]', /wider than the lens opens: f\/6\.3/],
    ['a stop twice', ', series: [f/8, f/8]', 'stops.series[1]', /there already/],
    ['a board as thick as the slot', ', board: 1 mm', 'stops.board', /does not go into/],
    ['an empty series', ', series: []', 'stops.series', /./],
  ])('%s is refused', (_, keys, path, what) =>
    expect(problemsOf(asked(keys))[0]).toMatchObject({ path, what: expect.stringMatching(what) }),
  );
  test('a slot no wider than the hole is refused', () =>
    expect(problemsOf(`${heron}stops: { fullAperture: 30 mm, slot: [1 mm, 40 mm] }\n`)[0]).toMatchObject({
      path: 'stops.slot',
      accepted: expect.stringMatching(/36 mm wide or more, and its width is written first/),
    }));
});
