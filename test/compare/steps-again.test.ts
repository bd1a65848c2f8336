import { describe, expect, test } from 'vitest';
import { newHardware } from '../../src/compare/new-hardware.js';
import { stepsAgain } from '../../src/compare/steps-again.js';
import { across } from '../../src/geometry/placement.js';
import { boughtRod, joined, standing } from '../../src/joinery/plate.js';

const part = (id: string, ...to: readonly string[]) =>
  boughtRod({
    id,
    name: id,
    diameter: 1,
    length: 1,
    massKg: 0,
    placements: [standing('front', across(0, 0, 0))],
    joins: joined('glue', ...to),
  });

/** A lid of two plies goes on a box of two walls and a floor; a knob is put on the lid last. */
const parts = [part('wall', 'floor'), part('floor'), part('ply', 'cover'), part('cover'), part('hinge', 'wall', 'ply'), part('knob', 'cover')]; // biome-ignore format: one line
const steps = [
  { number: 1, says: ['Glue the wall on the floor.'], acts: [{ into: 'box', each: ['floor', 'wall'] }] },
  { number: 2, says: ['The knob comes later.'], acts: [{ into: 'lid', each: ['ply', 'cover'] }] },
  { number: 3, says: [], acts: [{ into: 'whole', whole: 'box' }, { into: 'whole', whole: 'lid' }, { into: 'whole', each: ['hinge'] }] }, // biome-ignore format: one line
  {
    number: 4,
    says: ['Put the knob on.', 'Paint the ply-wood and the floor.'],
    acts: [{ into: 'whole', each: ['knob'] }],
  },
];

describe('the steps that are done again', () => {
  test('are where a new part comes in, and where something kept is joined to it later', () =>
    expect(stepsAgain(steps, parts, ['cover'])).toEqual([
      { number: 2, brings: ['cover'], meets: [] },
      { number: 3, brings: [], meets: ['cover'] }, // it goes on the box with its lid
      { number: 4, brings: [], meets: ['cover'] },
    ]));

  test('are not those that bring a kept part before the new one is there to be joined', () =>
    // the wall that the new hinge is joined to stands since step 1
    expect(stepsAgain(steps, parts, ['hinge'])).toEqual([{ number: 3, brings: ['hinge'], meets: [] }]));

  test('are those, too, that speak of a new part that is there: it may be painted', () =>
    expect(stepsAgain(steps, parts, ['floor'])).toEqual([
      { number: 1, brings: ['floor'], meets: [] },
      { number: 3, brings: [], meets: ['floor'] }, // the whole box is put in
      { number: 4, brings: [], meets: ['floor'] },
    ]));

  test('are not those that speak of it before it is there, or of another by a longer name', () =>
    expect([stepsAgain(steps, parts, ['knob']), stepsAgain(steps, parts, ['ply'])]).toEqual([
      [{ number: 4, brings: ['knob'], meets: [] }],
      [
        { number: 2, brings: ['ply'], meets: [] },
        { number: 3, brings: [], meets: ['ply'] },
      ],
    ]));

  test('are none where nothing is cut again', () => expect(stepsAgain(steps, parts, [])).toEqual([]));
});

test('hardware is new where its line is, or where more of it is wanted; what is left over is not', () => {
  const line = (name: string, size: string, count: number) => ({ name, size, count, for: 'a use' });
  const before = [line('nut', 'M4', 8), line('dowel', '5 × 9', 3), line('shim', '0.5 thick', 2)];
  const after = [line('nut', 'M4', 10), line('dowel', '5 × 12', 3), line('shim', '0.5 thick', 1)];
  expect(newHardware(before, after)).toEqual([line('nut', 'M4', 2), line('dowel', '5 × 12', 3)]);
});
