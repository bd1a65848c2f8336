import { describe, expect, test } from 'vitest';
import { costOf } from '../../src/kits/cost.js';
import { hardwareFor } from '../../src/kits/hardware.js';
import type { Prices } from '../../src/model/prices.js';

const prices: Prices = {
  currency: 'EUR',
  spares: 10,
  sheets: [
    { material: 'plywood', sheet: null, price: 5 },
    { material: 'plywood-4.05', sheet: { width: 600, height: 400 }, price: 7.5 },
  ],
  bought: [
    { name: 'nut', size: 'm4', price: 2.4, pack: 50, spares: null },
    { name: 'dowel', size: null, price: 0.08, pack: 1, spares: 0 },
    { name: 'tee nut', size: null, price: null, pack: 1, spares: 50 },
  ],
  printed: [{ material: 'petg', perKg: 24 }],
  perMinute: 0.35,
};

const line = (name: string, size: string, count: number) => ({ name, size, count, for: 'a use' });

const hardware = [
  line('nut', 'M4', 8),
  line('dowel', '5 × 9', 3),
  line('dowel', '6 × 9, rounded', 1),
  line('tee nut', '1/4-20, flange 19', 1),
];

const run = {
  copies: 10,
  sheets: [
    { material: 'plywood-4.05', width: 600, height: 400, sheets: 54, atHand: 2, buy: 52 },
    { material: 'plywood-3', width: 300, height: 200, sheets: 3, atHand: 0, buy: 3 },
    { material: 'board-1', width: 600, height: 400, sheets: 1, atHand: 0, buy: 1 },
  ],
  laser: { minutes: 700, metres: 400 },
  prints: [{ id: 'clamp', name: 'clamp', material: 'PETG', file: 'prints/clamp', each: 1, wanted: 10, mass: 0.083 }],
  hardware: hardwareFor(hardware, 10, prices),
  around: [{ name: 'a lens', with: null, each: 1, wanted: 10 }],
};

describe('spares', () => {
  test('are so many per cent of what the kits take, rounded up to whole pieces, of each line', () => {
    // 10 % of 80; of 30 and 10 none; 50 % of 10
    expect(run.hardware.map(({ wanted, spares, total }) => [wanted, spares, total])).toEqual([
      [80, 8, 88],
      [30, 0, 30],
      [10, 0, 10],
      [10, 5, 15],
    ]);
  });

  test.each([
    { count: 1, copies: 1, percent: 10, spares: 1 },
    { count: 7, copies: 10, percent: 10, spares: 7 }, // in binary 70 × 10 / 100 must not come to a little more than 7
    { count: 3, copies: 7, percent: 10, spares: 3 }, // 2.1
    { count: 5, copies: 20, percent: 0, spares: 0 },
    { count: 11, copies: 10, percent: 110, spares: 121 },
  ])('$percent % of $copies × $count are $spares', ({ count, copies, percent, spares }) =>
    expect(hardwareFor([line('nut', 'M4', count)], copies, { spares: percent, bought: [] })[0]?.spares).toBe(spares),
  );
});

describe('the cost of a run', () => {
  const cost = costOf(run, prices);

  test('is line by line what its prices say, and the sum of that', () => {
    expect(cost.lines.map(({ what, quantity, unit, amount }) => [what, quantity, unit, amount])).toEqual([
      ['plywood-4.05, 600 × 400 mm', 52, 'sheets', 390], // 52 × 7.50: those at hand are not bought
      ['plywood-3, 300 × 200 mm', 3, 'sheets', 15], // every other plywood
      ['nut M4', 2, 'packs of 50', 4.8], // 88 of 50
      ['dowel 5 × 9; 6 × 9', 40, 'pieces', 3.2], // one entry for all sizes
      ['PETG to print', 0.83, 'kg', 19.92],
      ['time at the laser', 700, 'min', 245],
    ]);
    expect(cost.total).toBe(677.92); // 390 + 15 + 4.80 + 3.20 + 19.92 + 245
    expect(cost.perKit).toBe(67.79);
  });

  test('leaves out what has no price, and names it', () =>
    expect(cost.notPriced).toEqual(['board-1, 600 × 400 mm', 'tee nut 1/4-20', 'a lens']));

  test('names what is priced and not needed: most often it is written otherwise', () => {
    const odd = { ...prices, bought: [...prices.bought, { ...prices.bought[0], name: 'nuts', size: 'M4', price: 1, pack: 1, spares: null }] }; // biome-ignore format: one line
    expect(cost.notUsed).toEqual([]);
    expect(costOf(run, odd).notUsed).toEqual(['nuts M4']);
  });

  test('is none without prices, and everything is named', () => {
    const { currency, lines, notPriced } = costOf(run, null);
    expect([currency, lines]).toEqual([null, []]);
    expect(notPriced).toEqual([
      'plywood-4.05, 600 × 400 mm',
      'plywood-3, 300 × 200 mm',
      'board-1, 600 × 400 mm',
      'nut M4',
      'dowel 5 × 9',
      'dowel 6 × 9',
      'tee nut 1/4-20',
      'a lens',
      'PETG to print',
      'time at the laser',
    ]);
  });

  test('is rounded to hundredths before it is added up', () => {
    const thirds = { ...prices, sheets: [{ material: 'plywood', sheet: null, price: 1.115 }], bought: [], printed: [], perMinute: null }; // biome-ignore format: one line
    const { lines, total } = costOf(run, thirds);
    // 52 × 1.115 = 57.98, 3 × 1.115 = 3.345
    expect(lines.map(({ amount }) => amount)).toEqual([57.98, 3.35]);
    expect(total).toBe(61.33);
  });
});
