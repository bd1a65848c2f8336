import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { pricesJsonSchema } from '../../src/forms/price-file.js';
import { readPrices } from '../../src/forms/read-prices.js';
import { NO_PRICES } from '../../src/kit-run.js';
import { changed } from '../design/reading.js';

const example = readFileSync(join(import.meta.dirname, '../../designs/class/prices.yaml'), 'utf8');

const file = `currency: EUR
sheets:
  - { material: plywood, sheet: [600 mm, 400 mm], price: 7.50 }
bought:
  - { name: nut, size: M4, pack: 50, price: 2.40 }
printed: [{ material: PETG, perKg: 24 }]
laser: { perMinute: 0.5 }
`;

function pricesOf(text: string) {
  const read = readPrices(text, 'p.yaml');
  if ('problems' in read) throw new Error(read.problems.map(({ what }) => what).join());
  return read.prices;
}

function problemOf(text: string) {
  const read = readPrices(text, 'p.yaml');
  if (!('problems' in read)) throw new Error('the file was accepted');
  expect(read.problems).toHaveLength(1);
  return read.problems[0];
}

describe('a price file', () => {
  test('is read as it stands, and what is left out has its default', () => {
    expect(pricesOf(file)).toEqual({
      currency: 'EUR',
      spares: 10,
      sheets: [{ material: 'plywood', sheet: { width: 600, height: 400 }, price: 7.5 }],
      bought: [{ name: 'nut', size: 'M4', price: 2.4, pack: 50, spares: null }],
      printed: [{ material: 'PETG', perKg: 24 }],
      perMinute: 0.5,
    });
  });

  test('may be a currency alone: then nothing is priced', () =>
    expect(pricesOf('currency: shillings\n')).toMatchObject({ sheets: [], bought: [], printed: [], perMinute: null }));

  test('without one the spares are those of a file that says none', () =>
    expect(NO_PRICES.spares).toBe(pricesOf('currency: EUR\n').spares));

  test.each([
    [
      'a price with its currency',
      'price: 7.50',
      'price: 7.50 EUR',
      'sheets[0].price',
      '3:58',
      '"7.50 EUR" is not a number.',
    ],
    ['a decimal comma', 'price: 7.50', 'price: "7,50"', 'sheets[0].price', '3:58', '"7,50" has a decimal comma.'],
    ['a negative price', 'price: 2.40', 'price: -2.40', 'bought[0].price', '5:45', '-2.4 is negative.'],
    ['half a pack', 'pack: 50', 'pack: 2.5', 'bought[0].pack', '5:34', '2.5 is not a whole number from 1 to 100000.'],
    [
      'a key that is none',
      'perMinute: 0.5',
      'perMinute: 0.5, perHour: 30',
      'laser.perHour',
      '7:26',
      'This key is not known here.',
    ],
    [
      'spares that are no share',
      'currency: EUR',
      'currency: EUR\nspares: some',
      'spares',
      '2:9',
      '"some" is not a percentage.',
    ],
    [
      'one thing priced twice',
      '\nprinted',
      '\n  - { name: Nut, size: m4, price: 1 }\nprinted',
      'bought[1]',
      '6:5',
      'This is the same thing as bought[0].',
    ],
  ])('%s is refused where it stands', (_, from, to, path, at, what) => {
    const problem = problemOf(changed(file, from, to));
    expect(problem).toMatchObject({ path });
    expect(`${problem?.line}:${problem?.column}`).toBe(at);
    expect(problem?.what).toContain(what);
    expect(problem?.accepted).not.toBe('');
  });

  test('without a currency is asked for it', () =>
    expect(problemOf(changed(file, 'currency: EUR\n', ''))).toMatchObject({ path: 'currency' }));

  test('its JSON Schema takes what the reader takes, and the example is one', () => {
    const valid = new Ajv2020({ strict: false, allowUnionTypes: true }).compile(pricesJsonSchema());
    expect(valid(parse(file))).toBe(true);
    expect(valid(parse(example))).toBe(true);
    expect(valid(parse(changed(file, 'perMinute', 'perHour')))).toBe(false);
    expect(pricesOf(example).bought.length).toBeGreaterThan(20);
  });
});
