import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isScalar, isSeq, parse, parseDocument } from 'yaml';
import { printProblem } from '../../src/design/problem.js';
import { readDesign } from '../../src/design/read.js';
import { writeKeys } from '../../src/design/write-keys.js';
import type { FormNode, KeyEdit } from '../../src/model/design-form.js';
import { asOthersWrite, nodeAt, nodesOf, worked, workedDesign } from './form-nodes.js';
import { changed, designOf, problemsOf } from './reading.js';

const write = (path: string, value: string): KeyEdit => ({ kind: 'write', path, value });
const remove = (path: string): KeyEdit => ({ kind: 'remove', path });
const add = (path: string, entry: string): KeyEdit => ({ kind: 'add', path, entry });

function edited(text: string, ...edits: readonly KeyEdit[]): string {
  const outcome = writeKeys(text, 'swift.yaml', edits);
  if ('problems' in outcome) throw new Error(outcome.problems.map(printProblem).join('\n'));
  return outcome.text;
}

function refusal(text: string, ...edits: readonly KeyEdit[]): string {
  const outcome = writeKeys(text, 'swift.yaml', edits);
  if ('text' in outcome) throw new Error(`it was written: ${outcome.text}`);
  return outcome.problems.map(printProblem).join('\n');
}

const heron = workedDesign('heron');
const teal = workedDesign('teal');
const head = 'name: Swift\nformat: 4x5\nlens: { focalLength: 150 mm, flangeDistance: 146 mm }\n';

describe('what is typed is written where it belongs', () => {
  test.each([
    [
      'over a value',
      'laser: { kerf: 0.15 mm } # l\n',
      [write('laser.kerf', '0.2 mm')],
      'laser: { kerf: 0.2 mm } # l\n',
    ],
    [
      'without the blanks round it',
      'laser:\n  kerf: 1 # k\n',
      [write('laser.kerf', ' 7/64 in ')],
      'laser:\n  kerf: 7/64 in # k\n',
    ],
    [
      'in the quotes that stand there',
      "laser: { kerf: '1 mm' }\n",
      [write('laser.kerf', '1"')],
      "laser: { kerf: '1\"' }\n",
    ],
    [
      'nonsense too',
      'laser: { kerf: 1 }\n',
      [write('laser.kerf', 'a, b: [c # d')],
      'laser: { kerf: "a, b: [c # d" }\n',
    ],
    [
      'two sides as they are spoken',
      'plywood: { sheet: [1, 2] }\n',
      [write('plywood.sheet', '800 x 600')],
      'plywood: { sheet: [800, 600] }\n',
    ],
    [
      'two sides with one unit',
      'plywood: { sheet: [1, 2] }\n',
      [write('plywood.sheet', '31 1/2 × 23.5 in')],
      'plywood: { sheet: [31 1/2 in, 23.5 in] }\n',
    ],
    [
      'a decimal comma, for the reader to find',
      'laser:\n  kerf: 1\n',
      [write('laser.kerf', '0,15 mm')],
      'laser:\n  kerf: 0,15 mm\n',
    ],
    [
      'a decimal comma that is mended',
      'laser: { kerf: 0,15 mm }\n',
      [write('laser.kerf', '0.15 mm')],
      'laser: { kerf: 0.15 mm }\n',
    ],
    [
      'behind a colon with nothing behind it',
      'laser:\n  kerf: # soon\n',
      [write('laser.kerf', '0.2')],
      'laser:\n  kerf: 0.2 # soon\n',
    ],
    [
      'where it is written already',
      'laser: {kerf:   0.15 mm}\n',
      [write('laser.kerf', '0.15 mm')],
      'laser: {kerf:   0.15 mm}\n',
    ],
    [
      'a key behind its neighbour',
      'laser: { kerf: 1, palette: {} }\n',
      [write('laser.cutSpeed', '9 mm/s')],
      'laser: { kerf: 1, cutSpeed: 9 mm/s, palette: {} }\n',
    ],
    [
      'a key before all others',
      'laser: { cutSpeed: 9 }\n',
      [write('laser.kerf', '1')],
      'laser: { kerf: 1, cutSpeed: 9 }\n',
    ],
    [
      'a key above what is said of the next',
      'laser:\n  # slow\n  cutSpeed: 9\n',
      [write('laser.kerf', '1')],
      'laser:\n  kerf: 1\n  # slow\n  cutSpeed: 9\n',
    ],
    [
      'a colour in quotes, in its groups',
      'laser: { kerf: 1 }\n',
      [write('laser.palette.engrave', '#aabbcc')],
      'laser: { kerf: 1, palette: { engrave: "#aabbcc" } }\n',
    ],
    [
      'groups in the order of the schema',
      'laser: { kerf: 1 }\nshims: [0.1]\n',
      [write('focus.nearest', '1:3')],
      'laser: { kerf: 1 }\nshims: [0.1]\n',
    ],
    [
      'a group that is begun',
      'workshop:\nshims: [0.1]\n',
      [write('workshop.fits.press', '0')],
      'workshop: { fits: { press: 0 } }\nshims: [0.1]\n',
    ],
    [
      'several where one was',
      'plywood: { thickness: 4 }\n',
      [write('plywood.thickness', '4 mm, 4.1 mm')],
      'plywood: { thickness: [4 mm, 4.1 mm] }\n',
    ],
    [
      'several, comments between them',
      'plywood:\n  thickness:\n    - 4 # left\n    - 4.1 # right\n',
      [write('plywood.thickness', '4, 4.2, 4.3')],
      'plywood:\n  thickness:\n    - 4 # left\n    - 4.2 # right\n    - 4.3\n',
    ],
    [
      'one where several were',
      'plywood: { thickness: [4, 4.1] }\n',
      [write('plywood.thickness', '4')],
      'plywood: { thickness: [4] }\n',
    ],
    ['one in a list of one', 'shims: [0.1, 0.2]\n', [write('shims', '0.3')], 'shims: [0.3]\n'],
    ['no shims', 'shims: [0.1, 0.2] # s\n', [write('shims', 'none')], 'shims: [] # s\n'],
    [
      'a number that does not end a sentence, in plain',
      'stock:\n  - count: "2"\n',
      [write('stock[0].count', '3')],
      'stock:\n  - count: 3\n',
    ],
    ['true', 'stock: [{ count: 2 }]\n', [write('stock[0].first', 'true')], 'stock: [{ count: 2, first: true }]\n'],
  ] as const)('%s', (name, before, edits, then) => {
    const whole = edited(head + before, ...edits);
    if (!name.startsWith('groups')) expect(whole).toBe(head + then);
    else expect(whole).toBe(`${head}focus: { nearest: 1:3 }\n${then}`);
  });

  test.each([
    [
      'a word becomes a group',
      'format: 5x7 # f\n',
      [write('format.height', '9 mm'), write('format.width', '8 mm')],
      'format: { width: 8 mm, height: 9 mm } # f\n',
    ],
    ['a group becomes a word', 'format: { width: 8, height: 9 } # f\n', [write('format', '5x7')], 'format: 5x7 # f\n'],
    [
      'a group down the page becomes a word',
      'format: # f\n  width: 8\n  height: 9 # h\nname: A\n',
      [write('format', '5x7')],
      'format: 5x7 # f\n  # h\nname: A\n',
    ],
    [
      'an exponent becomes a table',
      'sitting: { reciprocity: 1.3 }\n',
      [add('sitting.reciprocity', '{ metered: 1, given: 2 }')],
      'sitting: { reciprocity: [{ metered: 1, given: 2 }] }\n',
    ],
    [
      'a table becomes an exponent',
      'sitting: { reciprocity: [{ metered: 1, given: 2 }] }\n',
      [write('sitting.reciprocity', '1.3')],
      'sitting: { reciprocity: 1.3 }\n',
    ],
    ['a name that YAML takes for a number', 'name: Swift\n', [write('name', '1e3')], 'name: "1e3"\n'],
    ['a name that was a number', 'name: 100\n', [write('name', '100')], 'name: "100"\n'],
    [
      'a magnification becomes a distance',
      'focus: { nearest: 1:3 }\n',
      [write('focus.nearest', '0.8 m')],
      'focus: { nearest: 0.8 m }\n',
    ],
    [
      'a length down the page',
      'laser:\n  kerf: >-\n    0.15\n    mm\n  cutSpeed: 9\n',
      [write('laser.kerf', '0.2 mm')],
      'laser:\n  kerf: 0.2 mm\n  cutSpeed: 9\n',
    ],
  ] as const)('%s', (_, before, edits, then) => expect(edited(before, ...edits)).toBe(then));
});

describe('what is taken out', () => {
  test.each([
    [
      'a key of a group, in the middle',
      'laser: { kerf: 1, cutSpeed: 2, travelSpeed: 3 }\n',
      'laser.cutSpeed',
      'laser: { kerf: 1, travelSpeed: 3 }\n',
    ],
    ['the first', 'laser: { kerf: 1, cutSpeed: 2 }\n', 'laser.kerf', 'laser: { cutSpeed: 2 }\n'],
    ['the last', 'laser: {kerf: 1, cutSpeed: 2}\n', 'laser.cutSpeed', 'laser: {kerf: 1}\n'],
    [
      'between braces down the page',
      'laser: {\n  kerf: 1, # k\n  cutSpeed: 2, # c\n}\n',
      'laser.cutSpeed',
      'laser: {\n  kerf: 1, # k\n  # c\n}\n',
    ],
    [
      'the last of these',
      'laser: {\n  kerf: 1, # k\n  cutSpeed: 2\n}\n',
      'laser.cutSpeed',
      'laser: {\n  kerf: 1 # k\n}\n',
    ],
    [
      'a key with its line',
      'laser:\n  # k\n  kerf: 1\n\n  cutSpeed: 2\n',
      'laser.kerf',
      'laser:\n  # k\n\n  cutSpeed: 2\n',
    ],
    [
      'a key, not what is said behind it',
      'laser:\n  kerf: 1   # measured\n  cutSpeed: 2\n',
      'laser.kerf',
      'laser:\n  # measured\n  cutSpeed: 2\n',
    ],
    [
      'a group that holds nothing else',
      'name: A\nworkshop:\n  fits:\n    press: 0 # p\n',
      'workshop.fits.press',
      'name: A\n# p\n',
    ],
    [
      'a group with what is said in it',
      'name: A\nworkshop:\n  # own\n  friction: 0.3\n  # end\n',
      'workshop',
      'name: A\n  # end\n',
    ],
    [
      'the first key of an entry',
      'stock:\n  - thickness: 3\n    count: 2\n',
      'stock[0].thickness',
      'stock:\n  - count: 2\n',
    ],
    [
      'the only key of an entry',
      'stock:\n  - thickness: 3\n  - count: 2\n',
      'stock[0].thickness',
      'stock:\n  - {}\n  - count: 2\n',
    ],
    ['an entry', 'stock: [{ count: 1 }, { count: 2 }]\n', 'stock[0]', 'stock: [{ count: 2 }]\n'],
    [
      'an entry down the page',
      'stock:\n  # a\n  - count: 1\n    first: true\n  # b\n  - count: 2\n',
      'stock[0]',
      'stock:\n  # a\n  # b\n  - count: 2\n',
    ],
    [
      'the only entry',
      'name: A\nstock:\n  # a\n  - { count: 1 } # one\nshims: []\n',
      'stock[0]',
      'name: A\n# a\n# one\nshims: []\n',
    ],
    ['the end of a file that has no line end', 'name: A\nshims: [1]', 'shims', 'name: A'],
    ['what is not there', 'name: A\n', 'lens.coverage.at', 'name: A\n'],
    ['what no design has', 'name: A\nnmae: B\n', 'nmae', 'name: A\n'],
  ])('%s', (_, before, path, then) => expect(edited(before, remove(path))).toBe(then));
});

describe('an entry is added as the others are written', () => {
  const holder = '{ name: film holder, filmDepth: 4.8 mm }';
  test.each([
    [
      'in lines',
      'holders:\n  - { name: a } # a\n  # end\nshims: [1]\n',
      'holders:\n  - { name: a } # a\n  - { name: film holder, filmDepth: 4.8 mm }\n  # end\nshims: [1]\n',
    ],
    [
      'down the page',
      'holders:\n- name: a\n  filmDepth: 1\n',
      'holders:\n- name: a\n  filmDepth: 1\n- name: film holder\n  filmDepth: 4.8 mm\n',
    ],
    [
      'within brackets',
      'holders: [{ name: a }]\n',
      'holders: [{ name: a }, { name: film holder, filmDepth: 4.8 mm }]\n',
    ],
    ['in an empty list', 'holders: [] # h\n', 'holders: [{ name: film holder, filmDepth: 4.8 mm }] # h\n'],
    [
      'in a list that is not there',
      'laser: {}\nshims: [1]\n',
      'laser: {}\nholders:\n  - { name: film holder, filmDepth: 4.8 mm }\nshims: [1]\n',
    ],
    [
      'in a design within braces',
      '{ name: A, shims: [1] }\n',
      '{ name: A, holders: [{ name: film holder, filmDepth: 4.8 mm }], shims: [1] }\n',
    ],
  ])('%s', (_, before, then) => expect(edited(before, add('holders', holder))).toBe(then));

  test('down the page as Teal has it, with what the form offers', () => {
    const list = nodeAt(teal, 'holders');
    if (list.kind !== 'list') throw new Error('holders are a list');
    expect(designOf(edited(teal, add('holders', list.fresh))).holders.map(({ name }) => name)).toEqual([
      'paper holder',
      'film holder',
      'paper holder 2',
    ]);
  });
});

describe('what cannot be changed safely is refused, with the place', () => {
  const named = 'plywood: { thickness: &t 3.9 mm }\nlaser: { kerf: *t }\n';
  test.each([
    ['an alias', head + named, write('laser.kerf', '1'), /^swift\.yaml:5:10 {2}laser\.kerf: .* alias/],
    [
      'what an alias points at',
      head + named,
      write('plywood.thickness', '1'),
      /^swift\.yaml:4:12 .* in another place, too/,
    ],
    ['a group with such a value in it', head + named, remove('plywood'), /in another place, too/],
    ['a merge that would change two groups', `a: &l { kerf: 1 }\nlaser: *l\n`, write('laser.kerf', '2'), /alias/],
    ['the last key of the file', 'name: A\n', remove('name'), /hold nothing/],
    ['an entry that is not there', head, write('holders[2].mass', '1'), /no such entry/],
    ['no key of a design', head, write('lens.colour', 'red'), /No design has this key/],
    [
      'fewer values than comments',
      'plywood:\n  thickness: [4, # a\n    4.1]\n',
      write('plywood.thickness', '4'),
      /2 values with comments/,
    ],
    ['an entry that is no YAML', head, add('stock', '{ count: 1'), /cannot be changed safely/],
    [
      'an entry that is two',
      'stock: [{ count: 1 }]\n',
      add('stock', '{ count: 1 }, { count: 2 }'),
      /cannot be changed safely/,
    ],
    ['what is no YAML', 'name: [A\n', write('name', 'B'), /not closed/],
    ['a list in place of a group', 'lens: [1, 2]\n', write('lens.name', 'B'), /no such entry/],
  ] as const)('%s', (_, text, edit, says) => expect(refusal(text, edit)).toMatch(says));

  test('of several edits all or none', () =>
    expect(refusal(heron, write('laser.kerf', '0.2 mm'), write('holders[7].mass', '1 kg'))).toMatch(
      new RegExp(`^swift\\.yaml:${heron.split('\n').indexOf('holders:') + 1}:1`),
    ));
});

test('a value that no design takes is in the text, and the reader finds it there', () => {
  const text = edited(heron, write('lens.focalLength', '210 mn'));
  expect(text).toBe(changed(heron, 'focalLength: 210 mm', 'focalLength: 210 mn'));
  expect(problemsOf(text)).toMatchObject([{ path: 'lens.focalLength', line: 10 }]);
  expect(edited(text, write('lens.focalLength', '210 mm'))).toBe(heron);
});

const takesText = (node: FormNode) => node.kind === 'field' || (node.kind === 'group' && node.words.length > 0);

/** As another reader of YAML finds it: single values, or those of a list with commas between. */
function witnessed(text: string, path: string): string | null {
  const node: unknown = parseDocument(text).getIn(
    path.split(/\.|\[(\d+)\]\.?/).filter((step) => step !== undefined && step !== ''),
    true,
  );
  if (isScalar(node)) return node.source ?? null;
  return isSeq(node) ? node.items.map((item) => (isScalar(item) ? item.source : '?')).join(', ') : null;
}

const styles = Object.keys(asOthersWrite);
const anyPlace = fc.record({
  name: fc.constantFrom(...worked.keys()),
  as: fc.constantFrom(...styles),
  which: fc.nat(),
});
const textOf = ({ name, as }: { readonly name: string; readonly as: string }) =>
  asOthersWrite[as]?.(workedDesign(name)) ?? '';
const comments = (text: string) => [...text.matchAll(/(?<=^|\s)#.*/gm)].map(([comment]) => comment.trimEnd());

describe('whatever is typed into whichever field of whichever design', () => {
  const pick = <T>(of: readonly T[], which: number): T => of[which % of.length] as T; // none of the lists is empty

  test('reads back, and nothing else has changed', () =>
    fc.assert(
      fc.property(anyPlace, fc.oneof(fc.string({ unit: 'grapheme' }), nasty()), (place, typed) => {
        const text = textOf(place);
        const { path, kind } = pick(nodesOf(text).filter(takesText), place.which);
        const wanted = typed.trim();
        // several values are written as a list, the commas between them with a blank; so are two sides, as 0x10
        fc.pre(wanted !== '' && !(kind === 'field' && /,|^none$|\d\s*[x×]\s*[\d.]/i.test(wanted)));
        const then = edited(text, write(path, typed));
        expect(witnessed(then, path)).toBe(wanted);
        const rest = (one: string) => valuesBut(one, path);
        expect(rest(then)).toEqual(rest(text));
      }),
      { numRuns: 60 },
    ));

  test('can be taken out again, and every byte is as it was', () =>
    fc.assert(
      fc.property(anyPlace, (place) => {
        const text = textOf(place);
        const absent = nodesOf(text).filter(
          (node) => takesText(node) && !node.written && !node.path.startsWith('format'),
        );
        const { path, example } = pick(absent, place.which);
        expect(edited(edited(text, write(path, example)), remove(path))).toBe(text);
      }),
      { numRuns: 40 },
    ));

  test('what is there can be taken out: all other values stay, and all comments outside it', () =>
    fc.assert(
      fc.property(anyPlace, (place) => {
        const text = textOf(place);
        const there = nodesOf(text).filter(({ written }) => written);
        const { path, kind } = pick(there, place.which);
        const then = edited(text, remove(path));
        // where an entry went, the next one of its list has its place
        expect(path.endsWith(']') ? parse(then) : valuesBut(then, path)).toEqual(valuesBut(text, path));
        if (kind === 'field') expect(comments(then)).toEqual(comments(text));
        else expect(comments(text)).toEqual(expect.arrayContaining(comments(then)));
        if (place.as.startsWith('line ends')) expect(then).not.toMatch(/(?<!\r)\n/);
      }),
      { numRuns: 40 },
    ));

  test('a value that is written over leaves every other line as it was', () =>
    fc.assert(
      fc.property(anyPlace, (place) => {
        const text = textOf(place);
        const there = nodesOf(text).filter((node) => node.kind === 'field' && node.written && !node.several);
        const [before, then] = [text, edited(text, write(pick(there, place.which).path, '7.25 mm'))].map((one) =>
          one.split('\n'),
        );
        expect(then?.length).toBe(before?.length);
        expect(then?.filter((line, at) => line !== before?.[at]).length).toBe(1);
      }),
      { numRuns: 40 },
    ));
});

/** What YAML would read as something else. */
function nasty() {
  const signs = [
    '1e3',
    '#x',
    'a: b',
    'a #b',
    '[',
    ']',
    '{ a: 1 }',
    '&a',
    '*b',
    '!!t',
    '|',
    '>',
    '%',
    '@',
    '`',
    '"',
    "'",
    '- x',
    '? x',
    'x:',
    'null',
    '~',
    'true',
    '0x10',
    '.nan',
    '---',
    '\u2028x',
    'a\tb',
    'a\nb',
    '<<',
  ];
  return fc.constantFrom(...signs);
}

/** The values of a text without the one at a path, and without groups that hold nothing else. */
function valuesBut(text: string, path: string): unknown {
  const steps = path.split(/\.|\[(\d+)\]\.?/).filter((step) => step !== undefined && step !== '');
  return without(parse(text), steps);
}

function without(value: unknown, [step, ...rest]: readonly string[]): unknown {
  if (typeof value !== 'object' || value === null || step === undefined) return undefined;
  const inner: unknown = without((value as Readonly<Record<string, unknown>>)[step], rest);
  if (Array.isArray(value)) {
    const left = value.flatMap((item: unknown, index) =>
      String(index) !== step ? [item] : rest.length > 0 ? [inner ?? {}] : [],
    );
    return left.length === 0 ? undefined : left;
  }
  const left = Object.entries(value).filter(([key]) => key !== step);
  if (inner !== undefined && rest.length > 0) left.push([step, inner]);
  return left.length === 0 ? undefined : Object.fromEntries(left);
}

test('a design that is written over stays one that can be read', () =>
  expect(readDesign(edited(heron, write('holders[0].filmDepth', '6 mm'), add('shims', '1 mm')), '')).toMatchObject({
    design: { holders: [{ filmDepth: 6 }, {}], shims: [0.1, 0.25, 0.5, 1] },
  }));
