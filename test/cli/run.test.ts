import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { heronDesign } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch, snapshot, tailboard } from './scratch.js';

const commands = ['new', 'plan', 'check', 'build', 'spacer', 'explain'];

describe('help', () => {
  test('of the program names every command, on stdout', async () => {
    const { code, out, err } = await runHere('--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const command of commands) expect(out).toMatch(new RegExp(`^ +${command} `, 'm'));
  });

  test.each(commands)('of %s tells what it takes, on stdout', async (command) => {
    const { code, out, err } = await runHere(command, '--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(`Usage: tailboard ${command}`);
  });

  test('asked for as a command, and the version', async () => {
    expect(await runHere('help', 'plan')).toMatchObject({ code: 0, err: '' });
    expect(await runHere('--version')).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) });
  });
});

describe('a wrong call ends with 2, a message on stderr and nothing on stdout', () => {
  test.each([
    [[]],
    [['saw']],
    [['--frobnicate']],
    [['plan']],
    [['plan', 'a.yaml', 'b.yaml']],
    [['plan', 'a.yaml', '--colour']],
    [['check', 'a.yaml', '--only']],
    [['check', 'a.yaml', '--only', 'no-such-rule']],
    [['build', 'a.yaml', '--despite', 'no-such-rule']],
    [['build', 'a.yaml', '-o']],
    [['spacer', 'a.yaml', '--depth']],
    [['explain']],
    [['explain', 'a.yaml', 'slide.travel', 'slide.closest']],
    [['new']],
    [['new', 'a.yaml', '--kerf']],
  ])('tailboard %j', async (words) => {
    const { code, out, err } = await runHere(...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err.trim()).not.toBe('');
  });

  test('a misspelt rule is told the one that was meant', async () => {
    const { err } = await runHere('check', 'a.yaml', '--only', 'overlap-fra');
    expect(err).toContain('Did you mean overlap-far?');
  });

  test('seen from outside as well', async () => {
    expect(await tailboard(['plan'], scratch())).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('design'),
    });
  });
});

describe('new', () => {
  const figures = ['--format', '5x7', '--focal-length', '210mm', '--flange-distance', '203.5', '--thickness', '4.05mm'];
  const all = [...figures, '--kerf', '0.15 mm'];

  test('writes a design that can be read again, named after the file', async () => {
    const file = join(scratch(), 'night-heron.yaml');
    expect(await runHere('new', file, ...all)).toMatchObject({ code: 0, err: '' });
    const text = snapshot(join(file, '..'))['night-heron.yaml'];
    expect(text).toContain('Night heron');
    expect(text).toMatch(/focalLength: 210 mm/);
    expect(text).toMatch(/kerf: 0\.15 mm/);
  });

  test('never over what exists: a file, a folder, a link that leads nowhere', async () => {
    const place = scratch();
    writeFileSync(join(place, 'file'), 'mine');
    mkdirSync(join(place, 'folder'));
    symlinkSync('nowhere', join(place, 'link'));
    const before = snapshot(place);
    for (const name of ['file', 'folder', 'link'])
      expect(await runHere('new', join(place, name), ...all)).toMatchObject({
        code: 2,
        err: expect.stringContaining('exists'),
      });
    expect(snapshot(place)).toEqual(before);
  });

  test.each([
    { what: 'a flag is missing and nobody can be asked', words: figures, says: '--kerf' },
    { what: 'a format is not known', words: [...all, '--format', '5x8'], says: 'quarter-plate' },
    { what: 'a length has a decimal comma', words: [...all, '--thickness', '4,05'], says: 'comma' },
    { what: 'a length is negative', words: [...all, '--kerf=-1'], says: '--kerf' },
    { what: 'a length is no length', words: [...all, '--focal-length', 'long'], says: '--focal-length' },
    { what: 'a length is beyond reason', words: [...all, '--thickness', '4.05 m'], says: 'plywood.thickness' },
  ])('writes nothing and ends with 2 where $what', async ({ words, says }) => {
    const place = scratch();
    const { code, out, err } = await runHere('new', join(place, 'a.yaml'), ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(snapshot(place)).toEqual({});
  });

  test('names the folder that is missing', async () => {
    const { code, err } = await runHere('new', join(scratch(), 'no', 'a.yaml'), ...all);
    expect(code).toBe(2);
    expect(err).toContain('folder does not exist');
  });
});

describe('spacer asks back before it works', () => {
  test.each([
    { words: ['--holder', 'tin box'], says: 'It has: paper holder, processing holder' },
    { words: ['--holder', 'paper holder', '--depth', '24mm'], says: 'not both' },
    { words: ['--depth', '24 apples'], says: '--depth' },
    { words: ['--depth', '24mm', '--name', '../..'], says: '--name' },
    // its mark, its files and its folder are another's
    {
      words: ['--depth', '14.3mm', '--name', 'Paper Holder'],
      says: '--name: The design has a holder "paper holder" already. Give another name, or --holder "paper holder" for that one.',
    },
    { words: ['--depth', '14.3mm', '--name', 'Front'], says: '--name: "front" is the name of a part of the camera' },
    // as plywood.thickness and holders[].filmDepth are refused
    {
      words: ['--thickness', '4.05in'],
      says: '--thickness: "4.05in" is more than can be made use of. Write a value from 0.001 mm to 100 mm.',
    },
    {
      words: ['--depth', '6 m'],
      says: '--depth: "6 m" is more than can be made use of. Write a value from 0.001 mm to 5000 mm.',
    },
    { words: ['--name', 'tin box'], says: '--depth' },
  ])('$words', async ({ words, says }) => {
    const place = scratch();
    const file = join(place, 'heron.yaml');
    writeFileSync(file, heronDesign);
    const { code, out, err } = await runHere('spacer', file, ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(Object.keys(snapshot(place))).toEqual(['heron.yaml']);
  });
});
