import { expect, test } from 'vitest';
import { parseTemperature } from '../../src/units/temperature.js';

// water freezes at 0 °C = 32 °F and boils at 100 °C = 212 °F: the definition of the scales
test.each([
  { input: '32 F', celsius: 0 },
  { input: '212°F', celsius: 100 },
  { input: '68F', celsius: 20 },
  { input: '24 C', celsius: 24 },
  { input: '24.5 °C', celsius: 24.5 },
  { input: '-2 C', celsius: -2 },
  { input: 24, celsius: 24 },
])('$input is $celsius °C', ({ input, celsius }) => {
  const reading = parseTemperature(input);
  expect('value' in reading ? reading.value : reading).toBeCloseTo(celsius, 9);
});

test.each(['24,5 C', '24 K', 'warm', ''])('"%s" is refused with what would be taken', (input) => {
  expect(parseTemperature(input)).toHaveProperty('accepted');
});
