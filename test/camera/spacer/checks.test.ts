import { describe, expect, test } from 'vitest';
import { register, spacerHeld, spacerLayers, spacerShims } from '../../../src/camera/spacer/checks.js';
import { laminate } from '../../../src/joinery/lamination.js';
import { spacerAlone } from '../../../src/spare-spacer.js';
import { keptDesign } from '../../designs/kept-design.js';
import { altered, bought, replaced, without } from '../altered.js';
import { heron, moving } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. Heron's spacer: 18.2 = 4 plies of 4.05 and 4 shims of 0.5. */
const [placed] = heron.camera.objects.spacers;
if (!placed) throw new Error('Heron has a spacer');

describe('register: 0.22006, a quarter of the depth of focus at infinity', () => {
  test.each([0, 0.22, -0.22])('its last ply %d mm off', (z) =>
    expect(register(placed, moving('SP2T', { z }))).toEqual([]),
  );
  test.each([
    { z: -0.221, message: /the glass stands 0\.221 mm ahead of its place, 1 times the tolerance of 0\.22 mm/ },
    { z: 0.221, message: /the glass stands 0\.221 mm behind its place/ },
  ])('its last ply $z mm off', ({ z, message }) => {
    const [told, ...more] = register(placed, moving('SP2T', { z }));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'register',
      level: 'error',
      unit: 'mm',
      about: 'shims',
      message: expect.stringMatching(message),
      hint: expect.stringMatching(/shim of 0\.2 mm/),
    });
    expect(told?.value).toBeCloseTo(-z, 9);
  });
  test('a ply of other sheet is measured', () => {
    const thick = altered(heron.build, 'SP2T', (part) => ({ ...part, thickness: 4.35 }));
    expect(register(placed, thick)).toMatchObject([{ message: expect.stringMatching(/0\.3 mm behind/) }]);
  });
});

/** The spacer on so many shims of 0.5 in place of four. */
const onShims = (count: number) =>
  replaced(heron.build, 'SP2-shim-500', (places) => {
    const perLayer = places.length / 4;
    return Array.from({ length: count }, (_, i) => places.slice((i % 4) * perLayer, ((i % 4) + 1) * perLayer)).flat();
  });

test('spacer-layers: forty, not forty-one', () => {
  const layers = (count: number) => spacerLayers(placed, onShims(count - 4));
  expect(layers(40)).toEqual([]);
  expect(layers(41)).toMatchObject([
    {
      rule: 'spacer-layers',
      level: 'error',
      value: 41,
      limit: 40,
      message: expect.stringMatching(/^The spacer for processing holder would be glued of 41 layers/),
      hint: expect.stringMatching(/film depth.*glass.*thickness of the sheet/),
    },
  ]);
});

test('spacer-shims: four, not five', () => {
  const shims = (count: number) => spacerShims(placed, onShims(count));
  expect(shims(4)).toEqual([]);
  expect(shims(5)).toMatchObject([
    {
      rule: 'spacer-shims',
      level: 'warning',
      value: 5,
      limit: 4,
      message: 'The spacer for processing holder takes 5 shims on 4 plies of 4.05 mm: they slide about.',
      // 18.2 less four plies, and less three
      hint: 'Add a sheet near 2 mm to the stock for one ply, or one near 6.05 mm in place of a ply.',
    },
  ]);
});

test.each([
  // 18.35 less four plies of 4.05 is 2.15: shims of 0.5 and 0.1 come no nearer than 2.1
  { depth: 24.15, sheets: [2.15, 6.2] },
  // 20.13 less four plies is 3.93
  { depth: 25.93, sheets: [3.93, 7.98] },
])('spacer-shims: of the sheets that it names, depth $depth comes out whole', ({ depth, sheets }) => {
  const design = keptDesign('heron');
  const { findings, spacer } = spacerAlone(design, { name: 'other holder', filmDepth: depth });
  const [told] = findings.filter(({ rule }) => rule === 'spacer-shims');
  expect(told?.hint).toBe(
    `Add a sheet near ${sheets[0]} mm to the stock for one ply, or one near ${sheets[1]} mm in place of a ply.`,
  );
  for (const sheet of sheets) {
    const { plywood, shims } = design;
    const given = { thickness: spacer.thickness, ply: plywood.thickness, shims, within: spacer.tolerance / 2 };
    const made = laminate({ ...given, stock: [sheet] });
    // glue is reckoned as nothing: plies and shims alone
    expect(made.plies).toContain(sheet);
    expect(made.shims).toEqual([]);
    expect(Math.abs(made.remainder)).toBeLessThan(0.005);
    const sum = made.plies.reduce((all, ply) => all + ply, 0);
    expect(sum).toBeCloseTo(depth - 5.8, 9);
  }
});

describe('spacer-held: thicker than the fence it needs pins that stand proud', () => {
  const bare = without(heron.build, 'SP2-pin-5', 'SP2-pin-6');
  test('18.2 behind a fence of 4.05, on its pins', () => expect(spacerHeld(placed, heron.build)).toEqual([]));
  test('without pins the fence must hold it', () => {
    // the fence's face that looks at the holder lies the more to the rear
    expect(spacerHeld(placed, altered(bare, 'B3', raised(14.151)))).toEqual([]);
    expect(spacerHeld(placed, altered(bare, 'B3', raised(14.14)))).toMatchObject([
      {
        rule: 'spacer-held',
        level: 'error',
        about: 'stock',
        message: expect.stringMatching(/has no ply to carry pins/),
      },
    ]);
    expect(spacerHeld(placed, bare)).toMatchObject([
      { rule: 'spacer-held', hint: expect.stringMatching(/sheet of 4\.05 mm or less/) },
    ]);
  });
  test('pins that end in the wood hold nothing', () => {
    const short = (length: number) =>
      spacerHeld(placed, bought(bought(heron.build, 'SP2-pin-5', { length }), 'SP2-pin-6', { length }));
    // through a ply of 4.05, and 2 beyond
    expect(short(6.06)).toEqual([]);
    expect(short(6.04)).toMatchObject([{ message: expect.stringMatching(/its pins do not stand proud/) }]);
  });
});

/** A fence that stands so much further to the rear. */
const raised = (by: number) => (part: (typeof heron.parts)[number]) => ({
  ...part,
  placements: part.placements.map((place) => ({
    ...place,
    matrix: place.matrix.map((v, i) => (i === 14 ? v + by : v)),
  })),
});
