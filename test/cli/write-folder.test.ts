import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeFolder } from '../../src/cli/write-folder.js';
import { compiled, ended, scratch, snapshot } from './scratch.js';

const file = (path: string, text: string) => ({ path, bytes: new TextEncoder().encode(text) });
const first = [
  file('plan.json', '{"run":1}'),
  file('sheets/plywood-1.svg', '<svg/>'),
  file('sheets/layout.json', '{}'),
];
const second = [file('plan.json', '{"run":2}'), file('sheets/plywood-1.svg', '<svg>2</svg>')];

describe('writing an output folder', () => {
  test('holds what was asked for, in folders that are made on the way', async () => {
    const place = scratch();
    await writeFolder(join(place, 'output', 'heron'), first);
    const found = snapshot(join(place, 'output'));
    for (const { path, bytes } of first) expect(found[`heron/${path}`]).toBe(new TextDecoder().decode(bytes));
    expect(readdirSync(join(place, 'output'))).toEqual(['heron']);
  });

  test('replaces an earlier run whole: what is no longer written is gone', async () => {
    const folder = join(scratch(), 'heron');
    await writeFolder(folder, first);
    await writeFolder(folder, second);
    expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe('{"run":2}');
    expect(existsSync(join(folder, 'sheets/layout.json'))).toBe(false);
  });

  test('gives the same bytes for the same files, whatever their order', async () => {
    const place = scratch();
    await writeFolder(join(place, 'a'), first);
    await writeFolder(join(place, 'b'), [...first].reverse());
    expect(snapshot(join(place, 'b'))).toEqual(snapshot(join(place, 'a')));
  });

  test('takes an empty folder, and one from which files of ours were deleted', async () => {
    const folder = join(scratch(), 'heron');
    mkdirSync(folder);
    await writeFolder(folder, first);
    rmSync(join(folder, 'plan.json'));
    await writeFolder(folder, second);
    expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe('{"run":2}');
  });
});

describe('a folder that holds anything else is refused and left as it is', () => {
  test.each([
    {
      what: 'notes beside our files',
      spoil: (f: string) => writeFileSync(join(f, 'notes.txt'), 'glue first'),
      says: 'notes.txt',
    },
    {
      what: 'a file in one of our folders',
      spoil: (f: string) => writeFileSync(join(f, 'sheets', 'extra.svg'), ''),
      says: 'sheets/extra.svg',
    },
    { what: 'a folder', spoil: (f: string) => mkdirSync(join(f, 'photos')), says: 'photos/' },
    {
      what: 'a file of ours that somebody changed',
      spoil: (f: string) => writeFileSync(join(f, 'sheets/plywood-1.svg'), '<svg>moved a part</svg>'),
      says: 'plywood-1.svg was changed',
    },
    { what: 'a link', spoil: (f: string) => symlinkSync('..', join(f, 'up')), says: 'up' },
    {
      what: 'a link in place of a file of ours',
      spoil: (f: string) => {
        rmSync(join(f, 'plan.json'));
        symlinkSync('../elsewhere.json', join(f, 'plan.json'));
      },
      says: 'plan.json',
    },
    {
      what: 'files without the list of what was written',
      spoil: (f: string) => rmSync(join(f, '.tailboard.json')),
      says: 'no earlier run wrote',
    },
    {
      what: 'a list of what was written that makes no sense',
      spoil: (f: string) => writeFileSync(join(f, '.tailboard.json'), '{"files": 7'),
      says: 'no earlier run wrote',
    },
  ])('$what', async ({ spoil, says }) => {
    const place = scratch();
    const folder = join(place, 'heron');
    await writeFolder(folder, first);
    writeFileSync(join(place, 'elsewhere.json'), 'not ours');
    spoil(folder);
    const before = snapshot(place);
    await expect(writeFolder(folder, second)).rejects.toMatchObject({
      exitCode: 2,
      message: expect.stringContaining(says),
    });
    expect(snapshot(place)).toEqual(before);
  });

  test('a folder of somebody else', async () => {
    const place = scratch();
    writeFileSync(join(place, 'plan.json'), 'my own plans');
    await expect(writeFolder(place, first)).rejects.toMatchObject({ exitCode: 2 });
    expect(snapshot(place)).toEqual({ 'plan.json': 'my own plans' });
  });

  test('a file, and a link to a folder', async () => {
    const place = scratch();
    writeFileSync(join(place, 'file'), '');
    mkdirSync(join(place, 'folder'));
    symlinkSync('folder', join(place, 'link'));
    const before = snapshot(place);
    for (const name of ['file', 'link'])
      await expect(writeFolder(join(place, name), first)).rejects.toMatchObject({ exitCode: 2 });
    expect(snapshot(place)).toEqual(before);
  });

  test('the folder in which the user stands', async () => {
    await expect(writeFolder('.', first)).rejects.toMatchObject({
      exitCode: 2,
      message: expect.stringContaining('standing in this folder'),
    });
  });
});

test.each([
  '../plan.json',
  'sheets/../../plan.json',
  '/plan.json',
  'sheets//a.svg',
  'sheets\\a.svg',
  '.tailboard.json',
])('a file called %s is a mistake of ours, and nothing is written', async (path) => {
  const place = scratch();
  await expect(writeFolder(join(place, 'heron'), [file(path, '')])).rejects.toThrow(
    'cannot be a file of an output folder',
  );
  expect(snapshot(place)).toEqual({});
});

describe('a machine that fails leaves the earlier output whole and no litter', () => {
  test('half-way through: a file stands where a folder is wanted', async () => {
    const place = scratch();
    await writeFolder(join(place, 'heron'), first);
    const before = snapshot(place);
    const clash = [file('sheets', 'a file'), file('sheets/plywood-1.svg', '<svg/>')];
    await expect(writeFolder(join(place, 'heron'), clash)).rejects.toMatchObject({ exitCode: 3 });
    expect(snapshot(place)).toEqual(before);
  });

  test('a path below an ordinary file', async () => {
    const place = scratch();
    writeFileSync(join(place, 'file'), 'mine');
    await expect(writeFolder(join(place, 'file', 'heron'), first)).rejects.toMatchObject({
      exitCode: 3,
      message: expect.stringMatching(/file, not a folder/),
    });
    expect(snapshot(place)).toEqual({ file: 'mine' });
  });

  test('folders made on the way are taken away again', async () => {
    const place = scratch();
    const clash = [file('a', ''), file('a/b', '')];
    await expect(writeFolder(join(place, 'one', 'two', 'heron'), clash)).rejects.toMatchObject({ exitCode: 3 });
    expect(snapshot(place)).toEqual({});
  });

  test('no room for a file: the disk takes no more than 64 KB of one', async () => {
    const place = scratch();
    await writeFolder(join(place, 'heron'), first);
    const before = snapshot(place);
    // the limit on the size of a file fails a write as a full disk does, and needs no disk of its own
    const { code, err } = await ended(
      ['sh', '-c', 'ulimit -f 128; exec "$@"', 'sh', ...writing('heron', 3, 1_000_000)],
      place,
    );
    expect({ code, err }).toEqual({ code: 3, err: 'heron: the file is larger than this disk takes.\n' });
    expect(snapshot(place)).toEqual(before);
  });
});

test.each([
  { signal: 'SIGINT', expected: 130 },
  { signal: 'SIGTERM', expected: 143 },
] as const)(
  '$signal half-way ends with $expected, the earlier output whole and no litter',
  async ({ signal, expected }) => {
    const place = scratch();
    await writeFolder(join(place, 'heron'), first);
    const before = snapshot(place);
    const { code } = await ended(writing('heron', 100_000, 10), place, (send) => {
      const watch = setInterval(() => {
        const under = readdirSync(place).find((name) => name.endsWith('.tmp'));
        if (under === undefined || readdirSync(join(place, under)).length < 3) return;
        clearInterval(watch);
        send(signal);
      }, 2);
    });
    expect(code).toBe(expected);
    expect(snapshot(place)).toEqual(before);
  },
);

test('of several runs into one folder one wins, and it is whole', async () => {
  const place = scratch();
  const runs = ['a', 'b', 'c'].map((mark) => ended(writing('heron', 20, 10, mark, 15), place));
  for (const { code, err } of await Promise.all(runs)) expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(readdirSync(place)).toEqual(['heron']);
  const marks = new Set(
    readdirSync(join(place, 'heron')).flatMap((name) => (name.startsWith('.') ? [] : [name.charAt(0)])),
  );
  expect(marks.size).toBe(1);
  expect(readdirSync(join(place, 'heron'))).toHaveLength(21);
});

/** A process of its own that writes files of a size into a folder, several times over. */
function writing(folder: string, count: number, size: number, mark = 'x', times = 1): readonly string[] {
  const script = `
    const { writeFolder } = await import(${JSON.stringify(compiled('cli/write-folder.js'))});
    const { endOnSignals } = await import(${JSON.stringify(compiled('cli/interrupt.js'))});
    endOnSignals();
    const bytes = new Uint8Array(${size});
    const files = Array.from({ length: ${count} }, (_, i) => ({ path: '${mark}' + i, bytes }));
    try {
      for (let k = 0; k < ${times}; k++) await writeFolder(${JSON.stringify(folder)}, files);
    } catch (error) {
      console.error(error.message);
      process.exitCode = error.exitCode ?? 99;
    }`;
  return [process.execPath, '--input-type=module', '-e', script];
}
