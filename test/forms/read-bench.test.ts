import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { printProblem } from '../../src/design/problem.js';
import { benchJsonSchema } from '../../src/forms/bench-readings.js';
import { readBench } from '../../src/forms/read-bench.js';

const read = (text: string, file = 'bench.csv') => {
  const outcome = readBench(text, file);
  if ('problems' in outcome) throw new Error(outcome.problems.map(printProblem).join('\n'));
  return outcome;
};
const pairs = (text: string, file?: string) =>
  read(text, file).bench.readings.map(({ magnification, distance }) => [magnification, distance]);
const refusal = (text: string, file = 'bench.csv'): string => {
  const outcome = readBench(text, file);
  if (!('problems' in outcome)) throw new Error('it was read');
  return outcome.problems.map(printProblem).join('\n');
};

const three = [
  [0.25, 249.5],
  [0.5, 303],
  [1, 410],
];

describe('the same three readings', () => {
  test.each([
    ['with a header', 'magnification,distance\n0.25,249.5\n0.5,303\n1,410\n'],
    ['with ratios and units', 'magnification,distance\n1:4,249.5 mm\n1:2,30.3 cm\n1:1,410\n'],
    ['the columns the other way', 'distance,magnification\n249.5,1:4\n303,1:2\n410,1:1\n'],
    ['with comments and empty lines', '# table\n\nmagnification,distance\n# first\n1:4,249.5\n\n1:2,303\n,\n1:1,410\n'],
    ['with line ends of the other kind', 'magnification,distance\r\n1:4,249.5\r\n1:2,303\r\n1:1,410\r\n'],
    ['with the mark at its head', '\ufeffmagnification,distance\n1:4,249.5\n1:2,303\n1:1,410'],
    ['in quotes', '"magnification","distance"\n"1:4","249.5"\n"1:2","303 mm"\n"1:1","410"\n'],
    ['between tabs', 'magnification\tdistance\n1:4\t249.5\n1:2\t303\n1:1\t410\n'],
    ['between semicolons, with decimal commas', 'Magnification;Distance (mm)\n0,25;249,5\n0,5;303,0\n1;410\n'],
    ['with more cells than are filled', 'magnification,distance,u_distance\n1:4,249.5,\n1:2,303\n1:1,410,,\n'],
    ['with an empty last column', 'magnification;distance;\n1:4;249,5;\n1:2;303;\n1:1;410;\n'],
    ['after empty rows of separators', ';;\nmagnification;distance;\n;;\n1:4;249,5;\n1:2;303;\n;;\n1:1;410;\n'],
    ['with the unit in the header', 'magnification,distance (cm)\n1:4,24.95\n1:2,30.3 cm\n1:1,410 mm\n'],
    ['with the unit behind the word', 'magnification,distance_mm\n1:4,249.5\n1:2,303\n1:1,410\n'],
    ['as lengths', 'image,object,distance\n25,100,249.5\n50 mm,100,303\n10 cm,100,410\n'],
  ])('as a table %s', (_, text) => expect(pairs(text)).toEqual(three));

  test('as YAML, under any name', () => {
    const text =
      'readings:\n  - { magnification: 1:4, distance: 249.5 mm }\n  - { image: 50, object: 100, distance: 303 }\n  - { magnification: 1, distance: 410 }\n';
    expect(pairs(text, 'bench.yaml')).toEqual(three);
    expect(pairs(text, 'bench')).toEqual(three);
  });

  test('as a table under any name', () =>
    expect(pairs('magnification,distance\n1:4,249.5\n', 'bench.txt')).toEqual([three[0]]));
});

// the inch is 25.4 mm, exact: international yard and pound agreement of 1959
describe('inches in a table', () => {
  const inches = [
    [0.25, 8 * 25.4],
    [0.5, 8.125 * 25.4],
  ];
  test.each([
    ['by the header', 'magnification,distance (in)\n1:4,8\n1:2,8 1/8\n'],
    ['by the header, each column by its own', 'image (in),object (mm),distance (inches)\n1,101.6,8\n1,50.8,8.125\n'],
    ['by bare marks', 'magnification;distance\n1:4;8,00"\n1:2;8 1/8"\n'],
    ['by marks in a quoted cell', 'magnification,distance\n1:4,"8"""\n1:2,"8 1/8"""\n'],
  ])('%s', (_, text) => {
    const found = pairs(text);
    expect(found).toHaveLength(inches.length);
    for (const [i, [m, distance]] of inches.entries()) {
      expect(found[i]?.[0]).toBeCloseTo(m ?? 0, 9);
      expect(found[i]?.[1]).toBeCloseTo(distance ?? 0, 9);
    }
  });
});

test.each([
  ['a unit that nobody knows', 'image (ell),object (ell),distance (ell)\n1,4,8\n', '"ell" is no unit of this column'],
  ['a unit of a magnification', 'magnification (mm),distance\n1:4,8\n', '"mm" is no unit of this column'],
  ['decimal commas between commas', 'magnification,distance\n1:4,249,5\n1:2,303,0\n1:1,410,2\n', 'have 2 others'],
])('one slip makes one message: %s', (_, text, said) => {
  const outcome = readBench(text, 'bench.csv');
  if (!('problems' in outcome)) throw new Error('it was read');
  expect(outcome.problems).toHaveLength(1);
  expect(outcome.problems[0]?.what).toContain(said);
});

test('decimal commas are told where they were read as such', () => {
  expect(read('magnification;distance\n0,25;249,5\n').bench.taken).toHaveLength(1);
  expect(read('magnification;distance\n0.25;249.5\n').bench.taken).toEqual([]);
});

test('the horizon is infinity', () => expect(pairs('magnification,distance\ninfinity,196\n')).toEqual([[0, 196]]));

describe('uncertainties', () => {
  test('an image of 40 ± 0.2 over an object of 100 ± 0.1 is 0.4 with 0.0020396', () => {
    const { readings } = read('image,object,distance,u_image,u_object\n40,100,280,0.2,0.1\n').bench;
    // V7.12, from memory: JCGM 100:2008, 5.1.6
    expect(readings[0]?.magnification).toBeCloseTo(0.4, 12);
    expect(Math.abs((readings[0]?.magnificationDoubt ?? 0) - 0.0020396)).toBeLessThan(1e-6);
  });

  test.each(['±0.5', '± 0.5 mm', '+/-0.5 mm', '+-0.5'])('a scale read to %s has 0.288675', (limits) => {
    const { readings } = read(`magnification,distance,u_distance\n1:4,249.5,${limits}\n`).bench;
    // V7.13, from memory: JCGM 100:2008, 4.3.7
    expect(Math.abs((readings[0]?.distanceDoubt ?? 0) - 0.288675)).toBeLessThan(1e-6);
  });

  test('one that is given bare is a standard uncertainty', () =>
    expect(
      read('magnification,distance,u_magnification\n1:4,249.5,0.002\n').bench.readings[0]?.magnificationDoubt,
    ).toBe(0.002));
});

describe('what is refused, with its line and column', () => {
  test.each([
    ['no header', '0.25,249.5\n0.5,303\n', /^bench\.csv:1:1 .*columns have no names[\s\S]*magnification,distance or/],
    [
      'a slip in a column',
      'magnificaton,distance\n1:4,249\n',
      /:1:1 .*no column of bench readings[\s\S]*Did you mean magnification\?/,
    ],
    ['a column that nobody knows', 'magnification,distance,colour\n', /:1:24 [\s\S]*Known here: magnification, image/],
    ['a column twice', 'magnification,distance,distance\n', /:1:24 .*earlier column/],
    ['a column that is missing', 'image,distance\n25,249\n', /column object is missing/],
    [
      'a decimal comma between commas',
      'magnification,distance\n0,25,249,5\n',
      /:2:6 .*4 cells, the header 2\. A decimal comma/,
    ],
    [
      'a decimal comma in quotes',
      'magnification,distance\n1:4,"249,5"\n',
      /:2:5 .*row 1, distance.*decimal comma[\s\S]*249\.5/,
    ],
    ['an empty cell', 'magnification,distance\n1:4,249\n1:2,\n', /:3:\d+ .*row 2, distance: The cell is empty/],
    ['a word', 'magnification,distance\n1:4,far\n', /:2:5 .*"far" is not a length/],
    ['no number at all', 'magnification,distance\n1:4,NaN\n', /"NaN" is not a length/],
    ['what is not finite', 'magnification,distance\n1:4,Infinity\n', /"Infinity" is not a length/],
    ['a virtual image', 'magnification,distance\n-0.25,249\n', /:2:1 .*negative.*virtual/],
    ['a virtual image as a length', 'image,object,distance\n-25,100,249\n', /:2:1 .*negative.*virtual/],
    ['a magnification of nothing', 'magnification,distance\n0,196\n', /:2:1 .*is zero[\s\S]*Write infinity/],
    ['a time of day', 'magnification,distance\n01:06:00,231\n', /:2:1 .*time of day[\s\S]*0\.1667/],
    ['more than life size by far', 'magnification,distance\n30,231\n', /more than can be made use of/],
    ['nothing', '', /empty[\s\S]*Begin with the line/],
    ['nothing but comments', '# later\n', /nothing but comments/],
    ['a picture', 'magnification\0', /binary/],
  ])('%s', (_, text, says) => expect(refusal(text)).toMatch(says));

  const yaml = (row: string) => `readings:\n  - ${row}\n`;
  test.each([
    ['neither ratio nor lengths', yaml('{ distance: 249 }'), /:2:5 .*no magnification/],
    ['both', yaml('{ magnification: 1:4, image: 25, object: 100, distance: 249 }'), /given already/],
    ['half of it', yaml('{ image: 25, distance: 249 }'), /Without the length of the object/],
    [
      'an uncertainty of what is not there',
      yaml('{ magnification: 1:4, u_image: 1, distance: 249 }'),
      /u_image goes with image/,
    ],
    [
      'and the other way',
      yaml('{ image: 25, object: 100, u_magnification: 0.1, distance: 249 }'),
      /u_magnification goes with/,
    ],
    [
      'a slip in a key',
      yaml('{ magnification: 1:4, distanse: 249 }'),
      /:2:27 .*not known here[\s\S]*Did you mean distance\?/,
    ],
    [
      'a circle without its focus',
      `${yaml('{ magnification: 1:4, distance: 249 }')}coverage: [{ diameter: 300 }]\n`,
      /at which focus/,
    ],
    ['pupils without a pupil', `${yaml('{ magnification: 1:4, distance: 249 }')}pupils: {}\n`, /No pupil/],
    ['a list', '- 1\n', /not the keys/],
  ])('in YAML %s', (_, text, says) => expect(refusal(text, 'bench.yaml')).toMatch(says));
});

describe('a place in the file', () => {
  const trouble = { what: 'What.', accepted: 'Accepted.' };
  test('of a cell, a row, and the whole table', () => {
    const { locate } = read('magnification,distance\n1:4,249.5\n# note\n1:2,303\n');
    expect(locate({ path: ['readings', 1, 'distance'], ...trouble })).toMatchObject({
      line: 4,
      column: 5,
      length: 3,
      path: 'row 2, distance',
    });
    expect(locate({ path: ['readings', 1], ...trouble })).toMatchObject({ line: 4, column: 1, length: 7 });
    expect(locate({ path: ['readings'], ...trouble })).toMatchObject({ line: 1, column: 1 });
  });
});

test('the published schema takes the YAML form and knows a slip', () => {
  const accepts = new Ajv2020({ strict: false }).compile(benchJsonSchema());
  const text =
    'name: x\nreadings: [{ magnification: 1:4, distance: 249 }]\npupils: { front: 20, rear: [19, 20] }\nhole: { diameter: 19, enlargement: 1.03 }\n';
  accepts(parse(text));
  expect(accepts.errors).toBeNull();
  expect(accepts(parse(text.replace('distance', 'distanse')))).toBe(false);
});
