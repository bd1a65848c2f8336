import { expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { piecesOf } from '../../src/assembly/pieces.js';
import { placedParts } from '../../src/assembly/placed-parts.js';
import { setupsOf } from '../../src/assembly/setups.js';
import { atStep } from '../../src/drawings/at-step.js';
import { across } from '../../src/geometry/placement.js';
import { boughtRod, joined, standing } from '../../src/joinery/plate.js';

/** A screw along the axis, and the way that the proof found free for it. */
function drawnFrom(head: 'behind' | undefined, sign: 1 | -1) {
  const parts = [
    boughtRod({
      id: 'screw',
      name: 'a screw',
      diameter: 3,
      length: 10,
      ...(head ? { head } : {}),
      placements: [standing('front', across(0, 0, 0))],
      joins: joined('screw', 'wood'),
      massKg: 0,
    }),
  ];
  const build: Build = {
    parts,
    placed: placedParts(parts),
    stations: [{ name: 'closest', rear: 0 }],
    setups: setupsOf([{ name: 'holder' }]),
    gate: { z: 0, width: 1, height: 1 },
    opening: { z: 0, diameter: 1 },
  };
  const pieces = piecesOf(parts).map(({ key }) => key);
  const move = { step: 1, title: 'A screw', pieces, into: 'camera', way: { axis: 'z', sign } } as const;
  return atStep(build, [move], 1).arrivals[0]?.way;
}

// a way of sign 1 runs towards the film: the thing comes from the front
test.each([1, -1] as const)('a screw is drawn from where its head is, whichever way is free (%i)', (free) => {
  expect(drawnFrom(undefined, free)).toEqual({ axis: 'z', sign: 1 });
  expect(drawnFrom('behind', free)).toEqual({ axis: 'z', sign: -1 });
});
