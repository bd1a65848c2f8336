import { describe, expect, test } from 'vitest';
import { bodiesOf, loosened, type Push } from '../../src/assembly/bodies.js';
import { piecesOf } from '../../src/assembly/pieces.js';
import { opaque } from '../../src/assembly/screens.js';
import { heron } from '../camera/worked.js';

const bodies = bodiesOf(heron.parts);
const shifts = loosened(bodies, opaque(piecesOf(heron.parts), bodies));

/** How far a part stands from its place in a set-up of Heron. */
function shiftOf(id: string, push: Push, name: string): readonly number[] {
  const setup = heron.build.setups.find((s) => s.name === name);
  if (setup === undefined) throw new Error(`there is no set-up ${name}`);
  return shifts(setup, push)[bodies.of(id)] ?? [];
}

describe('rigid bodies of Heron', () => {
  test.each([
    { a: 'F1', b: 'T4', one: true, why: 'glued to the tailboard' },
    { a: 'R1L', b: 'R4L', one: true, why: 'fingers and tenons' },
    { a: 'B1', b: 'B2', one: true, why: 'laminated' },
    { a: 'F6', b: 'lens-rear', one: true, why: 'clamped' },
    { a: 'F1', b: 'F6', one: false, why: 'the board comes out' },
    { a: 'F1', b: 'R3', one: false, why: 'the rear slides' },
    { a: 'R3', b: 'B1', one: false, why: 'the back turns' },
    { a: 'G1', b: 'ground-glass', one: false, why: 'the glass only lies in its frame' },
  ])('$a and $b: $why', ({ a, b, one }) => expect(bodies.of(a) === bodies.of(b)).toBe(one));

  test('each is carried by the next one towards the front box', () => {
    expect(bodies.carrier(bodies.of('R3'))).toBe(bodies.of('F1'));
    expect(bodies.carrier(bodies.of('B1'))).toBe(bodies.of('R3'));
    expect(bodies.carrier(bodies.of('holder-2'))).toBe(bodies.of('B1'));
    expect(bodies.carrier(bodies.of('F1'))).toBeNull();
  });
});

describe('every clearance of Heron at its loosest', () => {
  const EXPOSING = 'processing holder, upright';
  // plays of sections 6 to 10: rail 0.25, keeper 0.3 over the sole, ring 0.3, well 0.4, plug 0.3; faces part by 0.2
  test.each<{ id: string; push: Push; x: number; y: number; z: number }>([
    { id: 'F1', push: 'right', x: 0, y: 0, z: 0 },
    { id: 'R3', push: 'right', x: 0.25, y: 0, z: 0 },
    { id: 'R3', push: 'up', x: 0, y: 0.3, z: 0 },
    { id: 'R3', push: 'down', x: 0, y: 0, z: 0 },
    { id: 'B1', push: 'right', x: 0.25 + 0.3, y: 0, z: 0.2 },
    { id: 'B1', push: 'down', x: 0, y: -0.3, z: 0.2 },
    { id: 'holder-2', push: 'left', x: -(0.25 + 0.3 + 0.4), y: 0, z: 0.4 },
    { id: 'F6', push: 'left', x: -0.3, y: 0, z: -0.2 },
    { id: 'holder-2', push: 'none', x: 0, y: 0, z: 0 },
  ])('$id pushed $push', ({ id, push, x, y, z }) => {
    const [sx = NaN, sy = NaN, sz = NaN] = shiftOf(id, push, EXPOSING);
    expect(sx).toBeCloseTo(x, 6);
    expect(sy).toBeCloseTo(y, 6);
    expect(sz).toBeCloseTo(z, 6);
  });

  test('a spacer lifts off the seat, and the frame off the spacer', () => {
    const name = 'glass for processing holder, upright';
    expect(shiftOf('SP2', 'up', name)[2]).toBeCloseTo(0.4, 6);
    expect(shiftOf('G1', 'up', name)[2]).toBeCloseTo(0.6, 6);
  });

  test('nothing moves farther than a millimetre by its own play', () => {
    // 150 wide in a well of 156.8: pins hold it, but they are made to be taken out
    const [x = NaN] = shiftOf('holder-1', 'right', 'paper holder, upright');
    expect(x).toBeCloseTo(0.25 + 0.3 + 1, 6);
  });
});
