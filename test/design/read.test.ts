import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printProblem } from '../../src/design/problem.js';
import { readDesign } from '../../src/design/read.js';
import { changed, designOf, problemsOf } from './reading.js';
import { bittern, fewest, heron } from './worked-designs.js';

describe('a design as a builder writes it', () => {
  test('its figures are read in mm, kg and plain ratios', () => {
    const design = designOf(heron);
    expect(design).toMatchObject({
      name: 'Heron',
      slug: 'heron',
      format: { width: 127, height: 177.8, image: { short: 120.6, long: 171.4 } },
      lens: {
        focalLength: 210,
        flangeDistance: 203.5,
        maxAperture: 6.3,
        coverage: { diameter: 420, at: 1 },
        flange: null,
      },
      focus: { nearest: 0.4, farthest: 0, pastInfinity: 4, pastNearest: null },
      plywood: { thickness: 4.05, readings: [4.05], sheet: { width: 600, height: 400 }, material: 'plywood-4.05' },
      groundGlass: { thickness: 2, depth: 5.8, frosted: 'lens', refractiveIndex: 1.52 },
      shims: [0.1, 0.25, 0.5],
    });
    expect(design.lens.barrel.massKg).toBeCloseTo(0.64, 12);
    expect(design.holders.map(({ name, filmDepth }) => [name, filmDepth])).toEqual([
      ['paper holder', 5.8],
      ['processing holder', 24],
    ]);
  });

  test('a lens with a flange is held by as many screws as its flange has', () =>
    expect(designOf(bittern).lens.mount).toEqual({ by: 'flange', side: 'inside', screws: 6 }));

  test('inches, fractions and block style say the same', () => {
    const inches = changed(changed(heron, '127 mm', '5 in'), '177.8 mm', '7"');
    expect(designOf(inches).format).toMatchObject({ width: 127, height: expect.closeTo(177.8, 9) });
    const block = changed(
      heron,
      'plywood: { thickness: 4.05 mm, sheet: [600 mm, 400 mm] }',
      'plywood:\n  thickness: 4.05\n  sheet:\n    - 60 cm\n    - 0.4 m',
    );
    expect(designOf(block).plywood).toEqual(designOf(heron).plywood);
  });

  test('line ends of any system and a byte order mark make no difference', () =>
    expect(designOf(`\ufeff${heron.replaceAll('\n', '\r\n')}`)).toEqual(designOf(heron)));

  test('an anchor may be named again', () =>
    expect(
      designOf(`${changed(fewest, '4.05 mm }', '&t 4.05 mm }')}stock: [{ thickness: *t }]\n`).stock[0]?.thickness,
    ).toBe(4.05));

  test('the thickest of several readings rules', () => {
    const { plywood } = designOf(changed(heron, '4.05 mm', '[4.02 mm, 4.08 mm, 4.05 mm]'));
    expect(plywood).toMatchObject({ thickness: 4.08, readings: [4.02, 4.08, 4.05] });
  });

  test('a subject distance becomes a magnification: m = f/(u − f)', () => {
    // 210 mm at 945 mm from the front principal plane: 210/735 = 2/7 [derived in camera.md section 3: u = f(1 + 1/m)]
    expect(designOf(changed(heron, 'nearest: 1:2.5', 'nearest: 0.945 m')).focus.nearest).toBeCloseTo(2 / 7, 12);
    // 3 ft are 914.4 mm [international yard and pound agreement, 1959]: 210/(914.4 − 210)
    expect(designOf(changed(heron, 'nearest: 1:2.5', 'nearest: 3 ft')).focus.nearest).toBeCloseTo(210 / 704.4, 12);
    expect(designOf(changed(heron, 'pastInfinity: 4 mm', 'farthest: 4.2 m')).focus.farthest).toBeCloseTo(1 / 19, 12);
  });

  test('a format lies as it was typed, and stands upright all the same', () => {
    const lying = changed(
      heron,
      '{ width: 127 mm, height: 177.8 mm, image: [120.6 mm, 171.4 mm] }',
      '{ width: 177.8 mm, height: 127 mm, image: [171.4 mm, 120.6 mm] }',
    );
    expect(designOf(lying).format).toEqual(designOf(heron).format);
  });

  test('a published slot depth becomes the depth of the emulsion', () => {
    // V1.22: 8x10, T 6.604, paper 0.010 in: 6.350, tol 0.002 [verified: S16a]; paper thickness [common practice, no source]
    const { holders } = designOf(
      changed(bittern, 'filmDepth: 6.5 mm', 'filmDepth: 0.260 in, depthTo: slot, sheetThickness: 0.010 in'),
    );
    expect(Math.abs((holders[0]?.filmDepth ?? 0) - 6.35)).toBeLessThanOrEqual(0.002);
  });

  test('the physical depth of the glass stays physical whichever way it is turned', () =>
    expect(designOf(changed(heron, 'frosted: lens', 'frosted: eye')).groundGlass.depth).toBe(5.8));
});

interface Row {
  readonly from: string;
  readonly to: string;
  readonly line: number;
  /** What the caret stands under. */
  readonly token: string;
  readonly path: string;
  readonly what: RegExp;
  readonly accepted: RegExp;
}

const rows: readonly Row[] = [
  {
    from: '4.05 mm',
    to: '4,05 mm',
    line: 14,
    token: '4,05 mm',
    path: 'plywood.thickness',
    what: /"4,05 mm" has a decimal comma/,
    accepted: /^Write 4\.05 mm, with a point/,
  },
  {
    from: '4.05 mm',
    to: '[4,05 mm, 4,08 mm]',
    line: 14,
    token: '4,05 mm',
    path: 'plywood.thickness[0]',
    what: /"4,05 mm" has a decimal comma/,
    accepted: /4\.05 mm/,
  },
  {
    from: '4.05 mm',
    to: '[4,1 mm]',
    line: 14,
    token: '4,1 mm',
    path: 'plywood.thickness[0]',
    what: /"4,1 mm" has a decimal comma/,
    accepted: /4\.1 mm/,
  },
  {
    from: '  focalLength: 210 mm',
    to: '  focalLength: 210,5 mm',
    line: 6,
    token: '210,5 mm',
    path: 'lens.focalLength',
    what: /decimal comma/,
    accepted: /210\.5 mm/,
  },
  {
    from: '[120.6 mm, 171.4 mm]',
    to: '[120,6, 171,4]',
    line: 3,
    token: '120,6',
    path: 'format.image[0]',
    what: /"120,6" has a decimal comma/,
    accepted: /120\.6/,
  },
  {
    from: '1:2.5',
    to: '1:2,5',
    line: 13,
    token: '1:2,5',
    path: 'focus.nearest',
    what: /decimal comma/,
    accepted: /1:2\.5/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf: 0,15 mm',
    line: 15,
    token: '0,15 mm',
    path: 'laser.kerf',
    what: /"0,15 mm" has a decimal comma/,
    accepted: /0\.15 mm/,
  },
  {
    from: '4.05 mm',
    to: '.nan',
    line: 14,
    token: '.nan',
    path: 'plywood.thickness',
    what: /"\.nan" is not a length/,
    accepted: /4\.05 mm/,
  },
  {
    from: '4.05 mm',
    to: '.inf',
    line: 14,
    token: '.inf',
    path: 'plywood.thickness',
    what: /"\.inf" is not a length/,
    accepted: /4\.05 mm/,
  },
  {
    from: '4.05 mm',
    to: '1e999',
    line: 14,
    token: '1e999',
    path: 'plywood.thickness',
    what: /Infinity is not a length/,
    accepted: /4\.05 mm/,
  },
  {
    from: '4.05 mm',
    to: '0x10',
    line: 14,
    token: '0x10',
    path: 'plywood.thickness',
    what: /"0x10" is not a length/,
    accepted: /4\.05 mm/,
  },
  {
    from: '4.05 mm',
    to: '-4.05 mm',
    line: 14,
    token: '-4.05 mm',
    path: 'plywood.thickness',
    what: /negative/,
    accepted: /4\.05 mm/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf: 0',
    line: 15,
    token: '0',
    path: 'laser.kerf',
    what: /zero/,
    accepted: /0\.15 mm/,
  },
  {
    from: 'nearest: 1:2.5',
    to: 'nearest: -0.9 m',
    line: 13,
    token: '-0.9 m',
    path: 'focus.nearest',
    what: /negative/,
    accepted: /a subject distance with its unit such as 0\.9 m/,
  },
  {
    from: '4.05 mm',
    to: '5/32',
    line: 14,
    token: '5/32',
    path: 'plywood.thickness',
    what: /fraction .* no unit/,
    accepted: /5\/32 in/,
  },
  {
    from: '203.5 mm',
    to: '6 m',
    line: 7,
    token: '6 m',
    path: 'lens.flangeDistance',
    what: /more than can be made use of/,
    accepted: /5000 mm/,
  },
  { from: '4.05 mm', to: '[]', line: 14, token: '[]', path: 'plywood.thickness', what: /empty/, accepted: /4\.05 mm/ },
  {
    from: '4.05 mm',
    to: '{ a: 1 }',
    line: 14,
    token: '{ a: 1 }',
    path: 'plywood.thickness',
    what: /not a length/,
    accepted: /4\.05 mm/,
  },
  {
    from: 'mass: 640 g',
    to: 'mass: 640',
    line: 11,
    token: '640',
    path: 'lens.barrel.mass',
    what: /no unit/,
    accepted: /640 g/,
  },
  {
    from: 'f/6.3\n',
    to: 'wide\n',
    line: 8,
    token: 'wide',
    path: 'lens.maxAperture',
    what: /"wide" is not an f-number/,
    accepted: /f\/6\.3/,
  },
  {
    from: '1:2.5',
    to: '0.2 m',
    line: 13,
    token: '0.2 m',
    path: 'focus.nearest',
    what: /within the focal length of 210 mm/,
    accepted: /longer distance/,
  },
  {
    from: '1:2.5',
    to: '210 mm',
    line: 13,
    token: '210 mm',
    path: 'focus.nearest',
    what: /within the focal length/,
    accepted: /longer distance/,
  },
  {
    from: '1:2.5',
    to: '900',
    line: 13,
    token: '900',
    path: 'focus.nearest',
    what: /needs its unit/,
    accepted: /0\.9 m/,
  },
  {
    from: '1:2.5',
    to: 'infinity',
    line: 13,
    token: 'infinity',
    path: 'focus.nearest',
    what: /not nearer than the farthest/,
    accepted: /nearest/,
  },
  {
    from: 'by: clamp',
    to: 'by: glue',
    line: 12,
    token: 'glue',
    path: 'lens.mount.by',
    what: /"glue" is not known here/,
    accepted: /clamp, flange or ring/,
  },
  {
    from: 'screws: 4',
    to: 'screws: 2.5',
    line: 12,
    token: '2.5',
    path: 'lens.mount.screws',
    what: /2\.5 is not a whole number/,
    accepted: /4/,
  },
  {
    from: 'shims:',
    to: 'boxes: 1\nshims:',
    line: 20,
    token: '1',
    path: 'boxes',
    what: /1 is not a whole number from 2 to 3/,
    accepted: /^Write 2 or 3\.$/,
  },
  {
    from: 'thickness: 4.05 mm, sheet',
    to: 'thickness: 0.05 mm, sheet',
    line: 14,
    token: '0.05 mm',
    path: 'plywood.thickness',
    what: /is less than can be made use of/,
    accepted: /from 0.1 mm to 100 mm/,
  },
  {
    // its camera would be 11 km wide, and have millions of fingers
    from: 'focalLength: 210 mm',
    to: 'focalLength: 0.001246 mm',
    line: 6,
    token: '0.001246 mm',
    path: 'lens.focalLength',
    what: /is less than can be made use of/,
    accepted: /from 1 mm to/,
  },
  {
    // its hole in the clamp had no area, and so no middle
    from: 'barrel: { diameter: 58 mm',
    to: 'barrel: { diameter: 0.001 mm',
    line: 11,
    token: '0.001 mm',
    path: 'lens.barrel.diameter',
    what: /is less than can be made use of/,
    accepted: /from 1 mm to/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf:',
    line: 15,
    token: 'kerf',
    path: 'laser.kerf',
    what: /Nothing stands after the colon/,
    accepted: /kerf: 0\.15 mm/,
  },
  {
    from: 'kerf:',
    to: 'krf:',
    line: 15,
    token: 'krf',
    path: 'laser.krf',
    what: /not known here/,
    accepted: /Did you mean kerf/,
  },
  {
    from: 'flangeDistance',
    to: 'flangedistance',
    line: 7,
    token: 'flangedistance',
    path: 'lens.flangedistance',
    what: /not known here/,
    accepted: /Did you mean flangeDistance/,
  },
  {
    from: 'shims:',
    to: 'kerf: 0.15 mm\nshims:',
    line: 20,
    token: 'kerf',
    path: 'kerf',
    what: /not known here/,
    accepted: /belongs to laser/,
  },
  {
    from: 'shims:',
    to: '__proto__: { kerf: 1 }\nshims:',
    line: 20,
    token: '__proto__',
    path: '__proto__',
    what: /not known here/,
    accepted: /Known here/,
  },
  {
    from: 'shims:',
    to: '? [a]\n: b\nshims:',
    line: 20,
    token: '[a]',
    path: '',
    what: /not a key/,
    accepted: /key: value/,
  },
  {
    from: 'shims:',
    to: 'name: Egret\nshims:',
    line: 20,
    token: 'name',
    path: 'name',
    what: /written twice/,
    accepted: /one of the two/,
  },
  {
    from: 'grip: 22 mm,',
    to: 'grip: 22 mm, grip: 23 mm,',
    line: 11,
    token: 'grip',
    path: 'lens.barrel.grip',
    what: /written twice/,
    accepted: /one of the two/,
  },
  {
    from: 'name: Heron',
    to: 'name: ../x',
    line: 2,
    token: '../x',
    path: 'name',
    what: /another folder/,
    accepted: /Heron/,
  },
  {
    from: 'name: Heron',
    to: 'name: "a\\\\b"',
    line: 2,
    token: '"a\\\\b"',
    path: 'name',
    what: /another folder/,
    accepted: /Heron/,
  },
  { from: 'name: Heron', to: 'name: ""', line: 2, token: '""', path: 'name', what: /empty/, accepted: /letter/ },
  {
    from: 'name: Heron',
    to: 'name: "..."',
    line: 2,
    token: '"..."',
    path: 'name',
    what: /neither a letter nor a digit/,
    accepted: /Heron/,
  },
  {
    from: 'name: Heron',
    to: 'name: Con',
    line: 2,
    token: 'Con',
    path: 'name',
    what: /No folder can be called/,
    accepted: /Heron/,
  },
  {
    from: 'name: Heron',
    to: 'name: LPT1.',
    line: 2,
    token: 'LPT1.',
    path: 'name',
    what: /No folder can be called/,
    accepted: /Heron/,
  },
  {
    from: 'name: Heron',
    to: `name: ${'x'.repeat(61)}`,
    line: 2,
    token: `${'x'.repeat(61)}`,
    path: 'name',
    what: /longer than 60/,
    accepted: /shorter/,
  },
  { from: 'name: Heron', to: 'name: 1e3', line: 2, token: '1e3', path: 'name', what: /not a text/, accepted: /quotes/ },
  {
    from: 'name: Heron',
    to: 'name: "a\\e[31mb"',
    line: 2,
    token: '"a\\e[31mb"',
    path: 'name',
    what: /cannot be written/,
    accepted: /plain text/,
  },
  {
    from: 'name: Heron',
    to: 'name: "a\\u202eb"',
    line: 2,
    token: '"a\\u202eb"',
    path: 'name',
    what: /cannot be written/,
    accepted: /plain text/,
  },
  {
    from: 'name: processing holder',
    to: 'name: Paper  holder',
    line: 19,
    token: 'Paper  holder',
    path: 'holders[1].name',
    what: /has this name already/,
    accepted: /own name/,
  },
  {
    from: 'name: paper holder',
    to: 'name: Front',
    line: 18,
    token: 'Front',
    path: 'holders[0].name',
    what: /part of the camera itself/,
    accepted: /another name/,
  },
  {
    from: 'filmDepth: 5.8 mm,',
    to: 'filmDepth: 5.8 mm, depthTo: slot,',
    line: 18,
    token: 'slot',
    path: 'holders[0].depthTo',
    what: /without its thickness/,
    accepted: /sheetThickness/,
  },
  {
    from: 'filmDepth: 5.8 mm,',
    to: 'filmDepth: 15 mm,',
    line: 18,
    token: '15 mm',
    path: 'holders[0].filmDepth',
    what: /behind a holder that is 12 mm thick/,
    accepted: /front to back/,
  },
  {
    from: 'filmDepth: 5.8 mm,',
    to: 'filmDepth: 5.8 mm, locating: rib,',
    line: 18,
    token: 'rib',
    path: 'holders[0].locating',
    what: /rib is not given/,
    accepted: /rib: \{/,
  },
  {
    from: 'image: [120.6 mm, 171.4 mm]',
    to: 'image: [130 mm, 171.4 mm]',
    line: 3,
    token: '[130 mm, 171.4 mm]',
    path: 'format.image',
    what: /larger than the format/,
    accepted: /127 mm/,
  },
  {
    from: 'image: [120.6 mm, 171.4 mm]',
    to: 'image: [120.6 mm]',
    line: 3,
    token: '[120.6 mm]',
    path: 'format.image',
    what: /too short/,
    accepted: /image: \[/,
  },
  {
    from: '{ width: 127 mm, height: 177.8 mm, image: [120.6 mm, 171.4 mm] }',
    to: 'half plate',
    line: 3,
    token: 'half plate',
    path: 'format',
    what: /more than one size/,
    accepted: /half-plate-british or half-plate-american/,
  },
  {
    from: '{ width: 127 mm, height: 177.8 mm, image: [120.6 mm, 171.4 mm] }',
    to: '5x8',
    line: 3,
    token: '5x8',
    path: 'format',
    what: /not in the table/,
    accepted: /4x5/,
  },
  {
    from: '{ width: 127 mm, height: 177.8 mm, image: [120.6 mm, 171.4 mm] }',
    to: '{ width: 5, height: 7 }',
    line: 3,
    token: '{ width: 5, height: 7 }',
    path: 'format',
    what: /hidden by its holder/,
    accepted: /5 in/,
  },
  {
    from: 'mount: { by: clamp, side: inside, screws: 4 }',
    to: 'mount: clamp',
    line: 12,
    token: 'clamp',
    path: 'lens.mount',
    what: /Here stands "clamp"/,
    accepted: /by: clamp/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf: 0.15 mm, palette: { engrave: "#12345" }',
    line: 15,
    token: '"#12345"',
    path: 'laser.palette.engrave',
    what: /not a colour/,
    accepted: /in quotes/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf: 0.15 mm, cutSpeed: 10 mn/s',
    line: 15,
    token: '10 mn/s',
    path: 'laser.cutSpeed',
    what: /"10 mn\/s" is not a speed/,
    accepted: /10 mm\/s/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf: 0.15 mm, engraveSpeed: 0',
    line: 15,
    token: '0',
    path: 'laser.engraveSpeed',
    what: /0 is zero/,
    accepted: /mm\/s/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf: 0.15 mm, travelSpeed: 300 m/s',
    line: 15,
    token: '300 m/s',
    path: 'laser.travelSpeed',
    what: /more than can be made use of/,
    accepted: /to 10000 mm\/s/,
  },
  {
    from: 'kerf: 0.15 mm',
    to: 'kerf: 0.15 mm, pierceTime: 0.5 mm',
    line: 15,
    token: '0.5 mm',
    path: 'laser.pierceTime',
    what: /"0.5 mm" is not a time/,
    accepted: /0\.5 s/,
  },
  {
    from: 'kerf: 0.15 mm }',
    to: 'kerf: 0.15 mm, cutSped: 10 mm/s }',
    line: 15,
    token: 'cutSped',
    path: 'laser.cutSped',
    what: /not known/,
    accepted: /cutSpeed/,
  },
  {
    from: 'shims: [0.1 mm, 0.25 mm, 0.5 mm]',
    to: 'shims: [0,1 mm]',
    line: 20,
    token: '0,1 mm',
    path: 'shims[0]',
    what: /"0,1 mm" has a decimal comma/,
    accepted: /0\.1 mm/,
  },
];

describe('one thing wrong: one message, at its place, with what would be taken', () => {
  test.each(rows)('$from became $to', ({ from, to, line, token, path, what, accepted }) => {
    const problems = problemsOf(changed(heron, from, to));
    const [first] = problems;
    expect(first).toMatchObject({
      line,
      path,
      what: expect.stringMatching(what),
      accepted: expect.stringMatching(accepted),
    });
    const marked = first?.sourceLine?.slice(first.column - 1, first.column - 1 + first.length);
    expect(marked).toBe(token);
    expect(new Set(problems.map(({ what: said }) => said.replace(/".*"/, ''))).size).toBe(1);
  });

  test('printed as compilers do, with a caret under the token', () => {
    // The form is fixed in the house's description of its style: position, path, source line, caret, what would be taken.
    const [problem] = problemsOf(changed(heron, '4.05 mm', '4.05 mn'));
    expect(problem && printProblem(problem)).toBe(
      [
        'design.yaml:14:23  plywood.thickness: "4.05 mn" is not a length.',
        '    plywood: { thickness: 4.05 mn, sheet: [600 mm, 400 mm] }',
        '                          ^^^^^^^',
        '    Write 4.05 mm, or an inch fraction such as 5/32 in.',
      ].join('\n'),
    );
  });
});

describe('keys that are asked for', () => {
  test.each([
    ['name: Wren\n', 'name'],
    ['format: 4x5\n', 'format'],
    ['focalLength: 150 mm, ', 'lens.focalLength'],
    ['flangeDistance: 141.5 mm, ', 'lens.flangeDistance'],
    ['plywood: { thickness: 4.05 mm }\n', 'plywood'],
    [' thickness: 4.05 mm ', 'plywood.thickness'],
    ['laser: { kerf: 0.15 mm }\n', 'laser'],
    [' kerf: 0.15 mm ', 'laser.kerf'],
  ])('without %s', (passage, path) => {
    const problems = problemsOf(changed(fewest, passage, ''));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      path,
      what: expect.stringMatching(/not given/),
      accepted: expect.stringMatching(/^Write \w+: \S/),
    });
  });

  test('the barrel, where the lens is clamped by it', () => {
    expect(problemsOf(changed(fewest, ', mount: { by: ring }', ''))[0]).toMatchObject({ path: 'lens.barrel', line: 3 });
    expect(problemsOf(changed(fewest, 'ring', 'clamp'))[0]).toMatchObject({ path: 'lens.barrel' });
    expect(designOf(changed(fewest, 'ring', 'flange')).lens.mount.by).toBe('flange');
  });

  test('holders, where none is published for the format', () => {
    expect(problemsOf(changed(fewest, '4x5', '11x14'))[0]).toMatchObject({
      path: 'holders',
      what: expect.stringMatching(/11 x 14/),
    });
    expect(problemsOf(`${fewest}holders: []\n`)[0]).toMatchObject({
      path: 'holders',
      what: expect.stringMatching(/too short/),
    });
  });

  test('a size that no design needs is refused, whatever key it stands at', () => {
    for (const passage of ['150 mm', '141.5 mm', '4.05 mm', '0.15 mm'])
      expect(problemsOf(changed(fewest, passage, '5001 mm'))[0]?.what).toMatch(/more than can be made use of/);
  });
});

describe('keys of parts that this camera does not have are refused', () => {
  test.each(['prices'])('%s', (key) =>
    expect(problemsOf(`${fewest}${key}: {}\n`)[0]).toMatchObject({
      path: key,
      line: 6,
      what: expect.stringMatching(/not known/),
    }),
  );

  test.each([
    ['thickness: 12 mm,', 'thickness: 12 mm, measured: 5 mm,', 'holders[0].measured'],
    ['kerf: 0.15 mm', 'kerf: 0.15 mm, power: 40', 'laser.power'],
    ['shims:', 'stock: [{ thickness: 3 mm, price: 4 }]\nshims:', 'stock[0].price'],
  ])('%s', (from, to, path) => expect(problemsOf(changed(heron, from, to))[0]).toMatchObject({ path }));
});

describe('files that are no design', () => {
  test.each([
    ['nothing', '', /empty/],
    ['blanks', ' \n\t\n', /empty/],
    ['comments alone', '# a\n# b\n', /no design/],
    ['bytes', 'name: \0\u0001', /binary/],
    ['what was not UTF-8', 'name: H\ufffdron\n', /cannot be read/],
    ['a control character', 'name: H\u0007ron\n', /cannot be read/],
    ['half a pair', 'name: H\ud800ron\n', /cannot be read/],
    ['a list', '- name: Heron\n', /a list, not the keys/],
    ['one word', 'Heron\n', /a single value, not the keys/],
    ['two documents', `${fewest}---\n${fewest}`, /second document/],
    ['a tab', changed(fewest, 'lens:', '\tlens:'), /A tab/],
    ['an open bracket', changed(fewest, ' } }', ' }'), /bracket is not closed/],
    ['an open quote', changed(fewest, 'Wren', '"Wren'), /quote is not closed/],
    ['a tag', changed(fewest, 'Wren', '!!binary aGk='), /tag/],
    ['two colons', changed(fewest, 'name: Wren', 'name: Wren: the second'), /second key/],
    ['an alias of nothing', changed(fewest, 'Wren', '*wren'), /points at nothing/],
    ['nothing but nesting', '['.repeat(100_000), /nested deeper/],
    ['a ladder of dashes', '- '.repeat(100_000), /nested deeper/],
  ])('%s', (_, text, what) => {
    const [problem] = problemsOf(text);
    expect(problem?.what).toMatch(what);
    expect(problem?.accepted).not.toBe('');
    expect(printProblem(problem ?? expect.fail())).toMatch(/^design\.yaml:\d+:\d+ {2}\S/);
  });

  test('an unclosed bracket is shown where it opens', () =>
    expect(problemsOf(changed(heron, 'pastInfinity: 4 mm }', 'pastInfinity: 4 mm'))[0]).toMatchObject({
      line: 13,
      column: 8,
    }));

  test('a bomb of aliases is refused before it goes off', () => {
    const rows = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]'];
    for (let i = 1; i < 12; i++)
      rows.push(`a${i}: &a${i} [${Array.from({ length: 10 }, () => `*a${i - 1}`).join(', ')}]`);
    const problems = problemsOf(rows.join('\n'));
    expect(problems).toHaveLength(1);
    expect(problems[0]?.what).toMatch(/far more values/);
  });

  test('megabytes of nonsense are refused by their size alone, and so is a long list of keys', () => {
    expect(problemsOf('nonsense '.repeat(600_000))[0]?.what).toMatch(/5274 kB/);
    expect(problemsOf(Array.from({ length: 20_000 }, (_, i) => `a${i}: 1`).join('\n')).length).toBeLessThanOrEqual(10);
  });
});

test('several problems come in the order of the file, and no more than ten', () => {
  const wrong = heron
    .replace('210 mm\n', 'long\n')
    .replace('0.15 mm', '0,15 mm')
    .replace('frosted: lens', 'frosted: both');
  expect(problemsOf(wrong).map(({ path }) => path)).toEqual(['lens.focalLength', 'laser.kerf', 'groundGlass.frosted']);
  expect(problemsOf(`${fewest}${Array.from({ length: 30 }, (_, i) => `x${i}: 1\n`).join('')}`)).toHaveLength(10);
});

test('a long line is shown around its token, and nothing of it acts on the terminal', () => {
  const [problem] = problemsOf(`${fewest}shims: [${'0.1 mm, '.repeat(20)}\u202e0.2 mn]\n`);
  const lines = printProblem(problem ?? expect.fail()).split('\n');
  expect(lines.every((line) => line.length < 130)).toBe(true);
  expect(lines[1]?.slice(lines[2]?.indexOf('^'))).toMatch(/^�0\.2 mn/);
});

test('the same text gives the same answer', () => {
  expect(readDesign(heron, 'a.yaml')).toEqual(readDesign(heron, 'b.yaml'));
  const wrong = changed(heron, '4.05 mm', '4,05 mm');
  expect(readDesign(wrong, 'a.yaml')).toEqual(readDesign(wrong, 'a.yaml'));
});

test('whatever a slip makes of a design, it is read or refused, never thrown at', () => {
  const slip = fc.oneof(
    fc.constantFrom('', ',', ':', '"', '{', ']', '\t', '\n', '#', '&a ', '*a', '!x ', '---\n', '- ', '|', '? ', '<<'),
    fc.string({ maxLength: 3 }),
  );
  fc.assert(
    fc.property(fc.nat(heron.length), fc.nat(12), slip, (at, cut, put) => {
      const outcome = readDesign(heron.slice(0, at) + put + heron.slice(at + cut), 'design.yaml');
      if ('design' in outcome) expect(outcome.design.plywood.thickness).toBeGreaterThan(0);
      else for (const problem of outcome.problems) expect(printProblem(problem)).toMatch(/^design\.yaml:\d+:\d+ {2}\S/);
      if ('problems' in outcome) expect(outcome.problems.length).toBeGreaterThan(0);
    }),
    { numRuns: 500 },
  );
});
