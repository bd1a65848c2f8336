import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeFolder } from '../../src/cli/write-folder.js';
import { heronDesign, spoiled } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch, snapshot, tailboard } from './scratch.js';

/** What a person may give for a design file, where the program should point, and with what word. */
interface BadInput {
  readonly what: string;
  readonly holds: string | Uint8Array;
  /** Line and column, counted from 1 in the text above. */
  readonly at: string;
  readonly says: string;
  /** What the caret should stand under; left out where the file as a whole is meant. */
  readonly token?: string;
}

const bomb = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]'];
for (let n = 1; n < 10; n++)
  bomb.push(
    `a${n}: &a${n} [${Array(10)
      .fill(`*a${n - 1}`)
      .join(', ')}]`,
  );

const inputs: readonly BadInput[] = [
  { what: 'an empty file', holds: '', at: '1:1', says: 'empty' },
  { what: 'blanks alone', holds: ' \n\n', at: '1:1', says: 'empty' },
  { what: 'a comment alone', holds: '# to be written\n', at: '1:1', says: '' },
  { what: 'a picture', holds: Uint8Array.from({ length: 4096 }, (_, i) => (i * 7) % 256), at: '1:1', says: 'binary' },
  {
    what: 'a text that is not UTF-8',
    holds: Uint8Array.from(Buffer.from(spoiled('name: Heron', 'name: H\u00e9ron'), 'latin1')),
    at: '1:8',
    says: 'UTF-8',
    token: '\ufffd',
  },
  {
    what: 'a key twice',
    holds: spoiled('format: 5x7', 'format: 5x7\nname: Owl'),
    at: '3:1',
    says: 'name',
    token: 'name',
  },
  {
    what: 'a key that there is none of',
    holds: spoiled('shims:', 'shimms:'),
    at: '18:1',
    says: 'shims',
    token: 'shimms',
  },
  {
    what: 'a decimal comma',
    holds: spoiled('focalLength: 210 mm', 'focalLength: 210,5 mm'),
    at: '5:16',
    says: 'comma',
    token: '210,5 mm',
  },
  {
    what: 'a decimal comma between braces, where it parts two entries',
    holds: spoiled('kerf: 0.15 mm', 'kerf: 0,15 mm'),
    at: '13:16',
    says: 'comma',
    token: '0,15 mm',
  },
  { what: 'not a number', holds: spoiled('210 mm\n', '.nan\n'), at: '5:16', says: 'lens.focalLength', token: '.nan' },
  {
    what: 'an endless length',
    holds: spoiled('203.5 mm', '.inf'),
    at: '6:19',
    says: 'lens.flangeDistance',
    token: '.inf',
  },
  {
    what: 'a negative length',
    holds: spoiled('4.05 mm', '-4.05 mm'),
    at: '12:23',
    says: 'plywood.thickness',
    token: '-4.05 mm',
  },
  {
    what: 'a length of nothing',
    holds: spoiled('kerf: 0.15 mm', 'kerf: 0'),
    at: '13:16',
    says: 'laser.kerf',
    token: '0',
  },
  {
    what: 'an unknown unit',
    holds: spoiled('4.05 mm', '4.05 mn'),
    at: '12:23',
    says: 'plywood.thickness',
    token: '4.05 mn',
  },
  {
    what: 'a list where a length is due',
    holds: spoiled('210 mm\n', '[210 mm]\n'),
    at: '5:16',
    says: 'lens.focalLength',
    token: '[210 mm]',
  },
  {
    what: 'a word where a group is due',
    holds: spoiled('{ kerf: 0.15 mm }', 'thin'),
    at: '13:8',
    says: 'laser',
    token: 'thin',
  },
  { what: 'a list for the whole', holds: '- name: Heron\n', at: '1:1', says: 'list' },
  { what: 'a tab before a key', holds: spoiled('  focalLength', '\tfocalLength'), at: '5:1', says: 'tab' },
  {
    what: 'a name that leads out of the folder',
    holds: spoiled('Heron', '../x'),
    at: '1:7',
    says: 'name',
    token: '../x',
  },
  { what: 'a brace that is not shut', holds: spoiled('{ kerf: 0.15 mm }', '{ kerf: 0.15 mm'), at: '13:8', says: '' },
  { what: 'a bomb of aliases', holds: `${bomb.join('\n')}\n`, at: '', says: '' },
];

describe.each(inputs)('$what', ({ holds, at, says, token }) => {
  test('ends plan, check and build with 2 and one message that points at it, and nothing is written', async () => {
    const { place, design } = await camera(holds);
    const before = snapshot(place);
    const output = join(place, 'output', 'heron');
    for (const words of [
      ['plan', design],
      ['plan', design, '--json'],
      ['check', design],
      ['build', design, '-o', output],
    ]) {
      const { code, out, err } = await runHere(...words);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err.startsWith(`${design}:${at}`), err).toBe(true);
      expect(err.toLowerCase()).toContain(says.toLowerCase());
      if (token !== undefined) expect(underCaret(err)).toBe(token);
      expect(err.length).toBeLessThan(5000);
      if (at !== '') expect(err.split(`${design}:`)).toHaveLength(2);
    }
    expect(snapshot(place)).toEqual(before);
  });
});

describe('a design file that is not there to be read ends with 2 and one line', () => {
  test.each([
    { what: 'missing', name: 'no-such.yaml', says: 'no such file' },
    { what: 'a folder', name: 'output', says: 'folder' },
    { what: 'below a file', name: 'heron.yaml/heron.yaml', says: 'not a folder' },
    { what: 'too long a name', name: `${'a'.repeat(300)}.yaml`, says: 'too long' },
    { what: 'five megabytes of nonsense', name: 'large.yaml', says: '256 KB' },
    { what: 'without an end', name: '/dev/zero', says: '256 KB' },
  ])('$what', async ({ name, says }) => {
    const { place } = await camera(heronDesign);
    writeFileSync(join(place, 'large.yaml'), 'nonsense: [ '.repeat((5 * 1024 * 1024) / 12));
    const before = snapshot(place);
    for (const command of ['plan', 'check', 'build', 'spacer']) {
      const { code, out, err } = await runHere(command, resolve(place, name));
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toContain(says);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
    expect(snapshot(place)).toEqual(before);
  });
});

test('the compiled program says the same, from outside', async () => {
  const { place } = await camera(spoiled('4.05 mm', '4.05 mn'));
  const { code, out, err } = await tailboard(['build', 'heron.yaml'], place);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toBe(
    [
      'heron.yaml:12:23  plywood.thickness: "4.05 mn" is not a length.',
      '    plywood: { thickness: 4.05 mn, sheet: [600 mm, 400 mm] }',
      '                          ^^^^^^^',
      '    Write 4.05 mm, or an inch fraction such as 5/32 in.',
      '',
    ].join('\n'), // the message of the house's style sheet, word for word
  );
});

/** A folder with a design file in it and the output of an earlier build. */
async function camera(holds: string | Uint8Array): Promise<{ readonly place: string; readonly design: string }> {
  const place = scratch();
  const design = join(place, 'heron.yaml');
  writeFileSync(design, holds);
  mkdirSync(join(place, 'output'));
  await writeFolder(join(place, 'output', 'heron'), [{ path: 'plan.json', bytes: new TextEncoder().encode('{}') }]);
  return { place, design };
}

/** What the caret of a message stands under. */
function underCaret(message: string): string {
  const lines = message.split('\n');
  const at = lines.findIndex((line) => /^ *\^+$/.test(line));
  const caret = lines[at] ?? '';
  return (lines[at - 1] ?? '').slice(caret.indexOf('^'), caret.length);
}
