import { expect, test } from 'vitest';
import { lightsOf } from '../../src/step-sheet/lights.js';

test('what a step does not say is as before, and after the window any', () =>
  expect(
    lightsOf([
      { light: null },
      { light: null },
      { light: 'window' },
      { light: null },
      { light: 'safe' },
      { light: null },
    ]),
  ).toEqual(['safe', 'safe', 'window', 'any', 'safe', 'safe']));
