import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type DesignChange, editDesign } from '../../src/design/edit.js';
import { printProblem } from '../../src/design/problem.js';
import { readDesign } from '../../src/design/read.js';
import { seeded } from '../../src/packing/random.js';
import { changed, designOf } from './reading.js';

/** What every design needs, in the block style; each test writes the measured keys in its own way. */
const head =
  'name: Swift\nformat: 4x5\nlens:\n  focalLength: 150 mm\n  flangeDistance: 146 mm\n  mount: { by: ring }\n';

const edit = (text: string, changes: readonly DesignChange[]) => {
  const outcome = editDesign(text, 'swift.yaml', changes);
  if ('problems' in outcome) throw new Error(outcome.problems.map(printProblem).join('\n'));
  return outcome;
};
const refusal = (text: string, changes: readonly DesignChange[]): string => {
  const outcome = editDesign(text, 'swift.yaml', changes);
  if (!('problems' in outcome)) throw new Error('the change was made');
  return outcome.problems.map(printProblem).join('\n');
};

const kerf: DesignChange = { path: 'laser.kerf', value: 0.163 };
const doubt: DesignChange = { path: 'laser.kerfUncertainty', value: 0.004 };
const sheet = (...value: readonly number[]): DesignChange => ({ path: 'plywood.thickness', value });
const press: DesignChange = { path: 'workshop.fits.press', value: -0.03 };
const slide: DesignChange = { path: 'workshop.fits.slide', value: 0.25 };

/** Each row: the lines that hold the measured keys, what is changed, and the lines as they must then be, every byte. */
describe('a length keeps the way it was written', () => {
  test.each([
    ['mm', 'laser: { kerf: 0.15 mm }', 'laser: { kerf: 0.163 mm }'],
    ['bare', 'laser: { kerf: 0.15 }', 'laser: { kerf: 0.163 }'],
    ['without a blank', 'laser: { kerf: 0.15mm }', 'laser: { kerf: 0.163mm }'],
    ['in double quotes', 'laser: { kerf: "0.15 mm" }', 'laser: { kerf: "0.163 mm" }'],
    ['in single quotes', "laser: { 'kerf': '0.15 mm' }", "laser: { 'kerf': '0.163 mm' }"],
    ['in inches: becomes mm', 'laser: { kerf: 0.006 in }', 'laser: { kerf: 0.163 mm }'],
    ['with odd blanks', 'laser:   {kerf:  0.15 mm   ,  }', 'laser:   {kerf:  0.163 mm   ,  }'],
    ['in a block, with a comment', 'laser:\n    kerf: 0.15 mm   # old\n', 'laser:\n    kerf: 0.163 mm   # old\n'],
    ['over two lines', 'laser:\n  kerf:\n    0.15 mm # here', 'laser:\n  kerf:\n    0.163 mm # here'],
    ['with a name that nobody uses', 'laser: { kerf: &k 0.15 mm }', 'laser: { kerf: &k 0.163 mm }'],
  ])('%s', (_, before, after) => {
    const text = `${head}plywood: { thickness: 3.9 mm }\n${before}`;
    expect(edit(text, [kerf]).text).toBe(`${head}plywood: { thickness: 3.9 mm }\n${after}`);
  });
});

describe('values of other kinds keep the way they were written, too', () => {
  const at = (lens: string) =>
    `name: Swift\nformat: 4x5\nlens:\n  focalLength: 150 mm\n  flangeDistance: 146 mm\n${lens}  mount: { by: ring }\nplywood: { thickness: 3.9 mm }\nlaser: { kerf: 0.15 mm }\n`;
  const aperture: DesignChange = { path: 'lens.maxAperture', kind: 'f-number', value: 9.02 };
  const pupils: DesignChange = { path: 'lens.pupilMagnification', kind: 'number', value: 0.971 };
  const circle = (of: number): DesignChange => ({ path: 'lens.coverage.at', kind: 'magnification', value: of });
  const cover = (written: string) => `  coverage: { diameter: 200, at: ${written} }\n`;
  test.each([
    ['f/', '  maxAperture: f/8 # a\n', [aperture], '  maxAperture: f/9.02 # a\n'],
    ['as engraved', "  maxAperture: '1:8'\n", [aperture], "  maxAperture: '1:9.02'\n"],
    ['an f-number that is bare', '  maxAperture: 8\n', [aperture], '  maxAperture: 9.02\n'],
    ['a number', '  pupilMagnification: 1 # p\n', [pupils], '  pupilMagnification: 0.971 # p\n'],
    ['a ratio', cover('1:1'), [circle(1 / 3)], cover('1:3')],
    ['a magnification as a number', cover('1'), [circle(0.5)], cover('0.5')],
    ['infinity', cover('0.5'), [circle(0)], cover('infinity')],
    ['a ratio that no pair of short figures is', cover('1:1'), [circle(0.37)], cover('0.37')],
    ['one that is there already', cover('0.50'), [circle(0.5)], cover('0.50')],
    [
      'a group that is not there',
      '  maxAperture: f/8\n',
      [
        { path: 'lens.uncertainty.focalLength', value: 0.37 },
        { path: 'lens.uncertainty.correlation', kind: 'number', value: -0.86 },
        { path: 'lens.uncertainty.readings', kind: 'number', value: 8 },
        { path: 'lens.uncertainty.flangeDistance', value: 0.21 },
      ],
      '  uncertainty: { focalLength: 0.37 mm, flangeDistance: 0.21 mm, correlation: -0.86, readings: 8 }\n  maxAperture: f/8\n',
    ],
    ['an aperture that is not there', '', [aperture], '  maxAperture: f/9.02\n'],
  ] as const)('%s', (_, before, changes, after) => expect(edit(at(before), changes).text).toBe(at(after)));

  test('what the design does not take is refused, whatever its kind, with what is wrong with it', () => {
    const slow: DesignChange = { path: 'lens.maxAperture', kind: 'f-number', value: 1000 };
    const said =
      /^swift\.yaml:(\d+:\d+) {2}lens\.maxAperture: With the new values the design will not do: "f\/1000" is more than[\s\S]*Write a value from/;
    expect(said.exec(refusal(at(''), [slow]))?.[1]).toBe('3:1');
    expect(said.exec(refusal(at('  maxAperture: f/8\n'), [slow]))?.[1]).toBe('6:3');
  });
});

describe('thickness', () => {
  const at = (line: string) => `${head}laser: { kerf: 0.15 mm }\n${line}`;
  test.each([
    ['one for one', 'plywood: { thickness: 3.9 mm }', [4.02], 'plywood: { thickness: 4.02 mm }'],
    ['one bare', 'plywood: { thickness: 3.9 }', [4.02], 'plywood: { thickness: 4.02 }'],
    ['several for one', 'plywood: { thickness: 3.9 mm } # x', [4, 4.02], 'plywood: { thickness: [4 mm, 4.02 mm] } # x'],
    ['several for one, block', 'plywood:\n  thickness: 3.9\n', [4, 4.02], 'plywood:\n  thickness: [4, 4.02]\n'],
    [
      'as many as before, comments between them',
      'plywood:\n  thickness: [4.02 mm,  # left\n    4.05 mm ]  # right\n',
      [4.03, 4.06],
      'plywood:\n  thickness: [4.03 mm,  # left\n    4.06 mm ]  # right\n',
    ],
    [
      'only the one that differs',
      'plywood: { thickness: [4.02 mm, 4.050 mm] }',
      [4.03, 4.05],
      'plywood: { thickness: [4.03 mm, 4.050 mm] }',
    ],
    ['more than before', 'plywood: { thickness: [4.02,4.05] }', [4, 4.1, 4.2], 'plywood: { thickness: [4, 4.1, 4.2] }'],
    [
      'a list down the page, as many',
      'plywood:\n  thickness:\n  - 4.02 mm # left\n  - 4.05 mm # right\n  sheet: [600, 400]\n',
      [4.03, 4.06],
      'plywood:\n  thickness:\n  - 4.03 mm # left\n  - 4.06 mm # right\n  sheet: [600, 400]\n',
    ],
    [
      'a list down the page, fewer',
      'plywood:\n  thickness:\n    - 4.02 mm\n    - 4.05 mm # right\n  sheet: [600, 400]\n',
      [4.03],
      'plywood:\n  thickness:\n    - 4.03 mm # right\n  sheet: [600, 400]\n',
    ],
    [
      'a list down the page, more',
      'plywood:\n  thickness:\n    - 4.02 mm\n  sheet: [600, 400]\n',
      [4.03, 4.04],
      'plywood:\n  thickness:\n    - 4.03 mm\n    - 4.04 mm\n  sheet: [600, 400]\n',
    ],
  ])('%s', (_, before, values, after) => expect(edit(at(before), [sheet(...values)]).text).toBe(at(after)));
});

describe('a key that is not there', () => {
  const rest = 'plywood: { thickness: 3.9 mm }\n';
  test.each([
    [
      'in a flow group',
      'laser: { kerf: 0.15 mm } # l\n',
      [doubt],
      'laser: { kerf: 0.15 mm, kerfUncertainty: 0.004 mm } # l\n',
    ],
    [
      'behind its neighbour, not at the end',
      'laser: { kerf: 0.15 mm, palette: {} }\n',
      [doubt],
      'laser: { kerf: 0.15 mm, kerfUncertainty: 0.004 mm, palette: {} }\n',
    ],
    [
      'in a block, under its neighbour, indented alike',
      'laser:\n   kerf: 0.15 mm # k\n   # then\n   palette: {}\n',
      [doubt],
      'laser:\n   kerf: 0.15 mm # k\n   kerfUncertainty: 0.004 mm\n   # then\n   palette: {}\n',
    ],
    [
      'in a flow group down the page',
      'laser: {\n  kerf: 0.15 mm, # k\n}\n',
      [doubt],
      'laser: {\n  kerf: 0.15 mm, kerfUncertainty: 0.004 mm, # k\n}\n',
    ],
    [
      'with groups round it, at the end of the file',
      'laser: { kerf: 0.15 mm }\nshims: [0.1]\n# the end\n',
      [press, slide],
      'laser: { kerf: 0.15 mm }\nshims: [0.1]\nworkshop: { fits: { press: -0.03 mm, slide: 0.25 mm } }\n# the end\n',
    ],
    [
      'in a workshop that has other keys',
      'laser: { kerf: 0.15 mm }\nworkshop: { friction: 0.3 }',
      [press],
      'laser: { kerf: 0.15 mm }\nworkshop: { friction: 0.3, fits: { press: -0.03 mm } }',
    ],
    [
      'in a workshop down the page that has other keys',
      'laser: { kerf: 0.15 mm }\nworkshop:\n  railPlay: 0.2 mm # r\n  glueLine: 0.05 mm\n\n# end\n',
      [press],
      'laser: { kerf: 0.15 mm }\nworkshop:\n  railPlay: 0.2 mm # r\n  fits: { press: -0.03 mm }\n  glueLine: 0.05 mm\n\n# end\n',
    ],
    [
      'in fits that have others',
      'laser: { kerf: 0.15 mm }\nworkshop:\n  fits:\n    press: -0.01 mm # p\n    dropIn: 0.7 mm # d\n',
      [press, slide],
      'laser: { kerf: 0.15 mm }\nworkshop:\n  fits:\n    press: -0.03 mm # p\n    slide: 0.25 mm\n    dropIn: 0.7 mm # d\n',
    ],
    [
      'in an empty group',
      'laser: { kerf: 0.15 mm }\nworkshop: {}\n',
      [press],
      'laser: { kerf: 0.15 mm }\nworkshop: { fits: { press: -0.03 mm } }\n',
    ],
    [
      'before the end that a document may have',
      'laser: { kerf: 0.15 mm }\n...\n',
      [press],
      'laser: { kerf: 0.15 mm }\nworkshop: { fits: { press: -0.03 mm } }\n...\n',
    ],
    [
      'where the last line has no end',
      'laser:\n  kerf: 0.15 mm',
      [doubt],
      'laser:\n  kerf: 0.15 mm\n  kerfUncertainty: 0.004 mm',
    ],
  ])('%s', (_, before, changes, after) =>
    expect(edit(`${head}${rest}${before}`, changes).text).toBe(`${head}${rest}${after}`),
  );

  test('in a design that is one flow group', () => {
    const flow = (laser: string, end: string) =>
      `{ name: Swift, format: 4x5, lens: { focalLength: 150, flangeDistance: 146, mount: { by: ring } }, plywood: { thickness: 3.9 }, laser: ${laser}${end} }\n`;
    expect(edit(flow('{ kerf: 0.15 }', ''), [kerf, press]).text).toBe(
      flow('{ kerf: 0.163 }', ', workshop: { fits: { press: -0.03 mm } }'),
    );
  });
});

describe('what stays', () => {
  const all = [kerf, doubt, sheet(4.03, 4.06), press, slide];
  const heron = readFileSync(join(import.meta.dirname, '../../designs/heron.yaml'), 'utf8');

  test('every line of Heron but those that hold a new figure', () => {
    const after = edit(heron, all).text.split('\n');
    const added = after.filter((line) => !heron.split('\n').includes(line));
    expect(added).toEqual([
      'plywood: { thickness: [4.03 mm, 4.06 mm], sheet: [600 mm, 400 mm] }',
      'laser: { kerf: 0.163 mm, kerfUncertainty: 0.004 mm }',
      'workshop: { fits: { press: -0.03 mm, slide: 0.25 mm } }',
    ]);
    expect(after.filter((line) => !added.includes(line))).toEqual(
      heron.split('\n').filter((line) => !/^(plywood|laser):/.test(line)),
    );
  });

  test('line ends of either kind, also where a line is added', () => {
    const crlf = heron.replaceAll('\n', '\r\n');
    expect(edit(crlf, all).text).toBe(edit(heron, all).text.replaceAll('\n', '\r\n'));
  });

  test('the mark at the head of the file that some editors put there', () =>
    expect(edit(`\ufeff${heron}`, all).text).toBe(`\ufeff${edit(heron, all).text}`));

  test('comments on every line', () => {
    const commented = heron.replaceAll(/(?<=\S)\n/g, '   # was here\n');
    const after = edit(commented, all).text;
    expect(after.match(/ {3}# was here$/gm)?.length).toBe(commented.match(/ {3}# was here$/gm)?.length);
    expect(designOf(after).laser).toMatchObject({ kerf: 0.163, kerfUncertainty: 0.004 });
  });

  test('everything, where the figures are there already', () => {
    const once = edit(heron, all).text;
    expect(edit(once, all)).toEqual({ text: once, changed: [] });
    expect(edit(heron, [sheet(4.05), { path: 'laser.kerf', value: 0.15 }])).toEqual({ text: heron, changed: [] });
  });

  test('names and aliases elsewhere in the file', () => {
    const named = changed(heron, 'shims: [0.1 mm, 0.25 mm, 0.5 mm]', 'shims: [&thin 0.1 mm, 0.25 mm, 0.5 mm]').replace(
      'laser: {',
      'laser: { engraveSpeed: 200,',
    );
    const text = named.replace('pastInfinity: 4 mm', 'pastInfinity: &four 4 mm, pastNearest: *four');
    expect(edit(text, [kerf]).text).toBe(changed(text, 'kerf: 0.15 mm', 'kerf: 0.163 mm'));
  });

  test('the report says what was and what is', () =>
    expect(edit(heron, all).changed).toEqual([
      { path: 'laser.kerf', from: '0.15 mm', to: '0.163 mm' },
      { path: 'laser.kerfUncertainty', from: null, to: '0.004 mm' },
      { path: 'plywood.thickness', from: '4.05 mm', to: '[4.03 mm, 4.06 mm]' },
      { path: 'workshop.fits.press', from: null, to: '-0.03 mm' },
      { path: 'workshop.fits.slide', from: null, to: '0.25 mm' },
    ]));
});

describe('what is refused, with the place', () => {
  const rest = 'plywood: { thickness: 3.9 mm }\n';
  test.each([
    ['an alias', `${head}plywood: { thickness: &t 3.9 mm }\nlaser: { kerf: *t }\n`, [kerf], 'alias'],
    [
      'a value that an alias points at',
      `${head}plywood: { thickness: &t 3.9 mm }\nlaser: { kerf: *t }\n`,
      [sheet(4)],
      'in another place, too',
    ],
    [
      'a key within a list',
      `${head}${rest}laser: { kerf: 0.15 mm }\nstock: [{ thickness: 3 mm }]\n`,
      [{ path: 'stock.thickness', value: 4 }],
      'no group of keys',
    ],
    ['a length down the page', `${head}${rest}laser:\n  kerf: >-\n    0.15 mm\n`, [kerf], 'several lines'],
    [
      'a list whose comments would be lost',
      `${head}laser: { kerf: 0.15 }\nplywood:\n  thickness: [4.02, # left\n    4.05]\n`,
      [sheet(4)],
      '2 readings with comments',
    ],
    [
      'a list that borrows a reading',
      `${head}laser: { kerf: 0.15 }\ngroundGlass: { thickness: &k 4 }\nplywood: { thickness: [4.02, *k] }\n`,
      [sheet(4, 4.1)],
      'plain lengths',
    ],
    ['what is no design', 'name: Swift\n', [kerf], 'format'],
    [
      'a figure that no design takes',
      `${head}${rest}laser: { kerf: 0.15 }\n`,
      [{ path: 'laser.kerf', value: -1 }],
      'With the new values the design will not do',
    ],
  ])('%s', (_, text, changes, says) => expect(refusal(text, changes)).toContain(says));

  test('points at the line', () =>
    expect(refusal(`${head}plywood: { thickness: &t 3.9 mm }\nlaser: { kerf: *t }\n`, [kerf])).toMatch(
      /^swift\.yaml:8:10 {2}laser\.kerf: /,
    ));
});

test('whatever is written where it may be written, the file reads back with the new figures and all else as it was', () => {
  const random = seeded(7);
  const one = <T>(...of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  for (let i = 0; i < 40; i++) {
    const blank = () => one('', ' ', '  ');
    const note = () => one('', ' # why', '   # 4.05 mm, { a: 1 }');
    const size = (mm: number) => one(`${mm}`, `${mm} mm`, `${mm}mm`, `"${mm} mm"`);
    const groups = [
      one(
        `plywood: { thickness:  ${size(4)}${blank()}}${note()}`,
        `plywood:${note()}\n  thickness: ${size(4)}${note()}`,
      ),
      one(`laser: {${blank()}kerf: ${size(0.2)}${blank()}}${note()}`, `laser:\n    kerf: ${size(0.2)}${note()}`),
      one(
        '',
        'workshop: {}',
        `workshop: { friction: 0.3 }${note()}`,
        `workshop:\n  fits: { press: ${size(-0.01)} }${note()}`,
      ),
      `shims: [0.1]${note()}`,
    ].filter((line) => line !== '');
    groups.sort(() => random() - 0.5);
    const text = `${head}${groups.join(one('\n', '\n\n', '\n# between\n'))}${one('', '\n', '\n\n# end')}`.replaceAll(
      '\n',
      one('\n', '\r\n'),
    );
    const value = Math.round(1000 * (0.05 + 0.3 * random())) / 1000;
    const after = edit(text, [{ path: 'laser.kerf', value }, doubt, sheet(4.1, 4.2), press]).text;
    const [was, is] = [readDesign(text, ''), readDesign(after, '')];
    if ('problems' in was || 'problems' in is) throw new Error(`${text}\n---\n${after}`);
    expect(is.design.laser).toEqual({ ...was.design.laser, kerf: value, kerfUncertainty: 0.004 });
    expect(is.design.plywood.readings).toEqual([4.1, 4.2]);
    expect(is.design.workshop).toEqual({ ...was.design.workshop, fits: { ...was.design.workshop.fits, press: -0.03 } });
    const untouched = (lines: string) =>
      lines.split(/\r?\n/).filter((line) => !/thickness|kerf|workshop|fits/.test(line));
    expect(untouched(after)).toEqual(untouched(text));
    if (!/(?<!\r)\n/.test(text)) expect(after).not.toMatch(/(?<!\r)\n/);
    if (!/\r/.test(text)) expect(after).not.toMatch(/\r/);
    expect(after.match(/#.*/g) ?? []).toEqual(text.match(/#.*/g) ?? []);
  }
});

describe('a comment that says of a figure that nobody has measured it', () => {
  const whole = `${head}plywood: { thickness: 4 mm }\n`;
  const made = `${whole}laser:\n  # the full width\n  kerf: 0.15 mm # PLACEHOLDER: until the test piece says otherwise\n`;

  test('goes when a measured one is put in its place, and no other comment', () =>
    expect(edit(made, [kerf]).text).toBe(`${whole}laser:\n  # the full width\n  kerf: 0.163 mm\n`));
  test('goes when the measured one is the same', () =>
    expect(edit(made, [{ ...kerf, value: 0.15 }]).text).toBe(`${whole}laser:\n  # the full width\n  kerf: 0.15 mm\n`));
  test('stays behind what was not measured', () => {
    const both = made.replace('flangeDistance: 146 mm', 'flangeDistance: 146 mm # NOT MEASURED');
    expect(edit(both, [kerf]).text).toContain('flangeDistance: 146 mm # NOT MEASURED');
  });
  test('stays where it speaks of other figures too', () => {
    const shared = `${whole}laser: { kerf: 0.15 mm, kerfUncertainty: 0.01 mm } # PLACEHOLDER\n`;
    expect(edit(shared, [kerf]).text).toContain('# PLACEHOLDER');
  });
});
