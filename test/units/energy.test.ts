import { describe, expect, test } from 'vitest';
import { parseEnergy } from '../../src/units/energy.js';

describe('the energy of a flash', () => {
  // a watt second is a joule [SI Brochure, derived units]
  test.each([
    ['400', 400],
    [400, 400],
    ['400 J', 400],
    ['400Ws', 400],
    ['400 ws', 400],
    ['1.2 kJ', 1200],
    ['1.2kWs', 1200],
  ])('%s', (text, joules) => expect(parseEnergy(text)).toEqual({ value: joules }));

  test.each([['400 W'], ['0'], ['-400'], ['1,2 kJ'], ['f/16'], ['']])('not %s', (text) =>
    expect(parseEnergy(text)).toHaveProperty('accepted'),
  );
});
