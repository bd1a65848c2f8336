import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { plausibility } from '../../src/design/plausibility.js';
import { changed, designOf } from './reading.js';
import { bittern, fewest, heron } from './worked-designs.js';

const found = (text: string, rule: string) => plausibility(designOf(text)).filter((finding) => finding.rule === rule);
const levels = (text: string, rule: string) => found(text, rule).map(({ level }) => level);
const about = (text: string, rule: string) => found(text, rule).map((finding) => finding.about);

/** Each limit is the one of the table of rules in camera.md section 16, common practice, no source. */
describe('flange-plausible: 0.5 f < V < 1.3 f, and V is not f', () => {
  const V = (length: string) => levels(changed(heron, '203.5 mm', length), 'flange-plausible');
  test.each(['105.1 mm', '203.5 mm', '209.9 mm', '272.9 mm'])('%s passes', (length) => expect(V(length)).toEqual([]));
  test.each(['105 mm', '210 mm', '273 mm', '300 mm'])('%s is odd', (length) => expect(V(length)).toEqual(['warning']));

  test('a focal length typed in inches is asked about', () => {
    const inches = changed(changed(heron, '  focalLength: 210 mm', '  focalLength: 8.25'), '203.5 mm', '8');
    expect(about(inches, 'unit-plausible')).toEqual(['lens.focalLength', 'lens.flangeDistance']);
    expect(found(inches, 'unit-plausible')[0]?.hint).toMatch(/209\.55 mm/); // 8.25 x 25.4
  });
});

describe('lens-seat-known', () => {
  test('a flange without its size', () => {
    expect(levels(changed(heron, 'by: clamp', 'by: flange'), 'lens-seat-known')).toEqual(['error']);
    expect(levels(bittern, 'lens-seat-known')).toEqual([]);
  });

  test('a clamp round a barrel that nobody measured', () => {
    const design: Design = { ...designOf(heron), defaulted: ['lens.barrel'] };
    expect(plausibility(design).filter(({ rule }) => rule === 'lens-seat-known')).toMatchObject([
      { level: 'error', about: 'lens.barrel' },
    ]);
    expect(levels(heron, 'lens-seat-known')).toEqual([]);
  });
});

describe('lens-seat-known: the front of the barrel must stop at the clamp', () => {
  // bore 58.2, and a step of half a millimetre all round: common practice, no source
  const front = (diameter: string) =>
    found(changed(heron, 'frontDiameter: 64 mm', `frontDiameter: ${diameter}`), 'lens-seat-known');
  test('59.2 mm stops', () => expect(front('59.2 mm')).toEqual([]));
  test('59.1 mm slips through', () => {
    const [told] = front('59.1 mm');
    expect(told).toMatchObject({ level: 'warning', limit: 1, unit: 'mm', about: 'lens.barrel.frontDiameter' });
    expect(told?.value).toBeCloseTo(0.9, 9);
    expect(told?.hint).toMatch(/ring over the barrel to end 18 mm behind its front rim/);
  });
  test('a flange needs no step', () =>
    expect(levels(changed(bittern, 'frontDiameter: 74 mm', 'frontDiameter: 60 mm'), 'lens-seat-known')).toEqual([]));
});

describe('lens-goes-in: the rear of the barrel passes the bore of the clamp, 58.2', () => {
  const rear = (diameter: string) =>
    found(changed(heron, 'rearDiameter: 52 mm', `rearDiameter: ${diameter}`), 'lens-goes-in');
  test('58.2 mm passes', () => expect(rear('58.2 mm')).toEqual([]));
  test('58.3 mm does not', () =>
    expect(rear('58.3 mm')).toMatchObject([
      {
        level: 'error',
        value: 58.3,
        limit: 58.2,
        unit: 'mm',
        about: 'lens.barrel.rearDiameter',
        hint: expect.stringMatching(/wrap the grip to 58\.3 mm.*rear cell unscrews.*flange or ring/),
      },
    ]));
  test('what it proposes goes in', () => {
    const wide = changed(heron, 'rearDiameter: 52 mm', 'rearDiameter: 61 mm');
    expect(levels(changed(wide, 'diameter: 58 mm', 'diameter: 61 mm'), 'lens-goes-in')).toEqual([]);
  });
  test('a flange stands beside the hole, whatever passes it', () =>
    expect(levels(changed(bittern, 'rearDiameter: 66 mm', 'rearDiameter: 90 mm'), 'lens-goes-in')).toEqual([]));
});

describe('clamp-grip: a bore that neither keeps the barrel out nor lets it slip', () => {
  const bored = (allowance: number) => {
    const design = designOf(heron);
    return plausibility({ ...design, workshop: { ...design.workshop, boreAllowance: allowance } }).filter(
      ({ rule }) => rule === 'clamp-grip',
    );
  };
  test.each([0, 0.2, 1])('%d mm wider', (allowance) => expect(bored(allowance)).toEqual([]));
  test.each([
    { allowance: -0.01, limit: 0 },
    { allowance: 1.01, limit: 1 },
  ])('$allowance mm wider', ({ allowance, limit }) =>
    expect(bored(allowance)).toMatchObject([
      {
        level: 'error',
        value: allowance,
        limit,
        about: 'workshop.boreAllowance',
        hint: expect.stringMatching(/test ring/),
      },
    ]),
  );
});

describe('lens-reversed: the ends differ by 2 mm or more', () => {
  const rear = (length: string) =>
    levels(changed(heron, 'rearDiameter: 52 mm', `rearDiameter: ${length}`), 'lens-reversed');
  test('62 mm against 64 passes, and so does 66', () => expect([...rear('62 mm'), ...rear('66 mm')]).toEqual([]));
  test('62.1 mm against 64 does not', () => expect(rear('62.1 mm')).toEqual(['warning']));
  test('a flange fits one way only', () =>
    expect(levels(changed(bittern, 'rearDiameter: 66 mm', 'rearDiameter: 74 mm'), 'lens-reversed')).toEqual([]));
});

describe('thickness-measured: not a nominal value to 0.01', () => {
  const t = (thickness: string) => levels(changed(heron, '4.05 mm', thickness), 'thickness-measured');
  test.each(['4 mm', '4.01 mm', '3.99 mm', '6.5 mm', '1/8 in', '1/4 in', '[4 mm, 4 mm]'])(
    '%s was read on a label',
    (thickness) => expect(t(thickness)).toEqual(['warning']),
  );
  test.each(['4.05 mm', '4.02 mm', '3.98 mm', '5.9 mm', '[3.95 mm, 4 mm]'])('%s was measured', (thickness) =>
    expect(t(thickness)).toEqual([]),
  );
});

describe('thickness-spread: 0.15 noticed, 0.3 refused', () => {
  const spread = (readings: string) => levels(changed(heron, '4.05 mm', readings), 'thickness-spread');
  test.each([
    ['[4 mm, 4.15 mm]', []],
    ['[4 mm, 4.1 mm, 4.16 mm]', ['warning']],
    ['[4 mm, 4.3 mm]', ['warning']],
    ['[4 mm, 4.31 mm]', ['error']],
  ])('%s', (readings, expected) => expect(spread(readings)).toEqual(expected));
});

describe('kerf-plausible: 0.03 to 0.5', () => {
  const kerf = (width: string) => found(changed(heron, 'kerf: 0.15 mm', `kerf: ${width}`), 'kerf-plausible');
  test.each(['0.03 mm', '0.5 mm'])('%s passes', (width) => expect(kerf(width)).toEqual([]));
  test.each([
    ['0.029 mm', 0.03],
    ['0.51 mm', 0.5],
    ['6', 0.5],
    ['0.006', 0.03],
  ])('%s does not', (width, limit) =>
    expect(kerf(width)).toMatchObject([{ level: 'error', limit, unit: 'mm', about: 'laser.kerf' }]),
  );
});

describe('fit-ladder', () => {
  const fits = (keys: string, thickness = '4.05 mm') =>
    levels(
      changed(changed(heron, '4.05 mm', thickness), 'shims:', `workshop: { fits: { ${keys} } }\nshims:`),
      'fit-ladder',
    );
  test('a press fit beyond 0.05 is told for thin sheet', () => {
    expect(fits('press: -0.05 mm')).toEqual([]);
    expect(fits('press: -0.06 mm')).toEqual(['note']);
    expect(fits('press: -0.06 mm', '5 mm')).toEqual([]);
  });
  test('the fits widen in the order of their names', () => expect(fits('slide: 0.7 mm')).toEqual(['warning']));
});

describe('depth-meaning: a published depth typed as the depth of the emulsion', () => {
  const T = (keys: string) => about(changed(heron, 'filmDepth: 5.8 mm', keys), 'depth-meaning');
  test('within 0.06 of it, where nothing says what was measured', () => {
    expect(T('filmDepth: 5.8 mm')).toEqual(['holders[0].filmDepth']); // published 5.7912, M1.14 [verified: R1]
    expect(T('filmDepth: 5.732 mm')).toEqual(['holders[0].filmDepth']);
    expect(T('filmDepth: 5.73 mm')).toEqual([]);
    expect(T('filmDepth: 5.852 mm')).toEqual([]);
  });
  test('not where it is said', () => expect(T('filmDepth: 5.8 mm, depthTo: emulsion')).toEqual([]));
  test('not for the published holder itself', () => expect(about(fewest, 'depth-meaning')).toEqual([]));

  test('the depth of the film typed for a glass that is looked through', () => {
    const eye = changed(heron, 'frosted: lens', 'frosted: eye');
    expect(about(eye, 'depth-meaning')).toContain('groundGlass.depth');
    expect(about(changed(eye, 'depth: 5.8 mm', 'depth: 6.48 mm'), 'depth-meaning')).not.toContain('groundGlass.depth');
  });
});

describe('unit-plausible: inches typed for mm', () => {
  test.each([
    ['4.05 mm', '0.16', 'plywood.thickness', /4\.064 mm/],
    ['[600 mm, 400 mm]', '[24, 16]', 'plywood.sheet', /406\.4 mm/],
    ['thickness: 2 mm', 'thickness: 0.08', 'groundGlass.thickness', /2\.032 mm/],
    ['filmDepth: 5.8 mm', 'filmDepth: 0.228', 'holders[0].filmDepth', /5\.791 mm/],
    ['width: 150 mm', 'width: 6', 'holders[0].width', /152\.4 mm/],
    ['diameter: 58 mm', 'diameter: 2.3', 'lens.barrel.diameter', /58\.42 mm/],
  ])('%s as %s', (from, to, path, hint) =>
    expect(found(changed(heron, from, to), 'unit-plausible')).toMatchObject([
      { level: 'error', about: path, unit: 'mm', hint: expect.stringMatching(hint) },
    ]),
  );

  test('a figure that is odd in either unit is only asked about', () =>
    expect(levels(changed(heron, 'filmDepth: 24 mm', 'filmDepth: 0.02'), 'unit-plausible')).toEqual(['warning']));
  test('a distance without its unit is a magnification, and is asked about', () => {
    const metres = changed(heron, 'nearest: 1:2.5', 'nearest: 1.2');
    expect(found(metres, 'unit-plausible')).toMatchObject([
      { level: 'warning', about: 'focus.nearest', value: 1.2, hint: expect.stringContaining('nearest: 1.2 m') },
    ]);
    expect(levels(changed(heron, 'nearest: 1:2.5', 'nearest: 1:1'), 'unit-plausible')).toEqual([]);
  });
  test('far too large', () =>
    expect(about(changed(heron, 'thickness: 4.05 mm', 'thickness: 40.5 mm'), 'unit-plausible')).toEqual([
      'plywood.thickness',
    ]));
  test('the worked designs are not odd', () =>
    expect([...found(heron, 'unit-plausible'), ...found(bittern, 'unit-plausible')]).toEqual([]));
});

test('assumed: what was taken for granted is told, and only that', () => {
  expect(about(fewest, 'assumed')).toEqual(['lens.maxAperture', 'lens.coverage', 'lens.barrel', 'holders']);
  expect(levels(fewest, 'assumed').every((level) => level === 'note')).toBe(true);
  expect(found(heron, 'assumed')).toEqual([]);
});

test('every finding names a cure and the key that it is about', () => {
  const odd = [heron, bittern, fewest, changed(heron, 'kerf: 0.15 mm', 'kerf: 6'), changed(heron, '4.05 mm', '0.16')];
  for (const finding of odd.flatMap((text) => plausibility(designOf(text)))) {
    expect(finding.hint).toMatch(/\S/);
    expect(finding.about).toMatch(/^\w/);
    expect(finding.rule).toMatch(/^[a-z]+(-[a-z]+)*$/);
  }
});
