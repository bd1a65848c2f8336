import { describe, expect, test } from 'vitest';
import { tankOf } from '../../src/step-sheet/tank-of.js';

const tank = { fillSeconds: 7, drainSeconds: 11, workingVolume: 122, fullVolume: 300 };
const paper = { name: 'paper holder' };
const one = { name: 'tank', tank };
const other = { name: 'large tank', tank: { ...tank, fillSeconds: 20 } };

describe('the tank of a camera', () => {
  test.each([
    ['the only one, unasked', [paper, one], undefined, tank],
    ['the one that is named', [one, other], 'large tank', other.tank],
  ])('is %s', (_, holders, wanted, expected) => expect(tankOf(holders, wanted)).toEqual({ tank: expected }));

  test.each([
    ['none', [paper], undefined, /No holder of the design is a tank.*--fill and --drain/],
    ['several', [one, other], undefined, /name one with --holder: tank, large tank\./],
    ['a name that is not there', [paper, one], 'tnak', /no holder "tnak"\. It has: paper holder, tank\./],
    ['a holder that is none', [paper, one], 'paper holder', /no tank that the design knows\. Tanks of it: tank; or/],
    ['a holder where there is none', [paper], 'paper holder', /Write make: true and a window at it, or/],
  ])('is refused where there is %s', (_, holders, wanted, says) =>
    expect(tankOf(holders, wanted)).toEqual({ refused: expect.stringMatching(says) }),
  );
});
