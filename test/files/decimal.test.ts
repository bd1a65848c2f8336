import { expect, test } from 'vitest';
import { decimal } from '../../src/files/decimal.js';

// M7.30 [verified: R63 for toFixed, the rest run in Node 20]: what JavaScript writes by itself must not reach a file;
// M7.31 [common practice, no source]: no −0, no exponent, no comma
test.each([
  { value: 1.005, text: '1.005' },
  { value: -0.0001 / 4, text: '0' },
  { value: -0, text: '0' },
  { value: 1e-7, text: '0' },
  { value: 1234567.00004, text: '1234567' },
  { value: 0.1 + 0.2, text: '0.3' },
  { value: -12.34567, text: '-12.3457' },
])('$value is written as $text', ({ value, text }) => expect(decimal(value)).toBe(text));
