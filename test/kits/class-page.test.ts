import { describe, expect, test } from 'vitest';
import { classPage } from '../../src/kits/class-page.js';
import { kitPages } from '../../src/kits/kits-pages.js';
import type { KitsDocument } from '../../src/model/kits.js';
import { saidUnder } from '../book/plain-book.js';
import { textOf } from '../book/text-rows.js';

const line = (name: string, size: string, each: number, spares = 0) => ({ name, size, for: `use of ${name}`, each, wanted: 3 * each, spares, total: 3 * each + spares }); // biome-ignore format: one line

const run: KitsDocument = {
  schema: 1,
  name: 'Wren',
  revision: 'ABC234',
  copies: 3,
  sheets: [],
  laser: { minutes: 0, metres: 0 },
  prints: [],
  hardware: [
    line('epoxy', '5 g, two parts', 1),
    line('shim', '0.5 thick, 120 × 161 frame', 2, 1),
    line('nut', 'M4', 4),
    line('shim', '0.5 thick, as large as G1', 1, 1),
    line('shim', '0.1 thick, as large as G1', 2, 1),
  ],
  around: [
    { name: 'enlarging lens', with: 'its retaining ring', each: 1, wanted: 3 },
    { name: 'film holder', with: null, each: 1, wanted: 3 },
  ],
  cost: { currency: null, lines: [], total: 0, perKit: 0, notPriced: [], notUsed: [] },
  kits: [],
  findings: [],
  despite: [],
};

describe('the page for the class', () => {
  const said = textOf(classPage(run));

  test('puts into the bag as many of a thing as all its uses take', () =>
    expect(said).toContain('a bag: 3 × shim 0.5 thick; 4 × nut M4; 2 × shim 0.1 thick'));

  test('sets epoxy out for all, and cautions of it', () => {
    expect(said).toContain('for all: epoxy (5 g, two parts for each)');
    expect(said).toContain('epoxy and silicone are handed out by the teacher');
  });

  test('says what the lens is sold with, which is on no list', () =>
    expect(said).toContain('enlarging lens, with its retaining ring, film holder'));
});

test('what is set out is bought once for the class, in a list of its own', () => {
  const pages = kitPages({ run, sheets: [], minutesOf: () => 0, bare: [] }, { width: 210, height: 297 });
  expect(saidUnder(pages, 'Set out for all')).toContain('3 epoxy 5 g, two parts use of epoxy');
  expect(saidUnder(pages, 'Hardware')).not.toContain('epoxy');
  expect(saidUnder(pages, 'Hardware')).toContain('4 1 1 shim 0.5 thick, as large as G1');
});
