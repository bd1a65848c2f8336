import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterEach, describe, expect, test } from 'vitest';
import { unzip, zip } from '../../src/files/zip.js';

const entries = [
  { path: 'b.txt', bytes: strToU8('second letter first') },
  { path: 'folder/a.txt', bytes: strToU8('a'.repeat(500)) },
];

describe('an archive', () => {
  const zone = process.env.TZ;
  afterEach(() => {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });

  test('reads back what went in, in its order', () => {
    const read = Object.entries(unzipSync(zip(entries))).map(([path, data]) => [path, strFromU8(data)]);
    expect(read).toEqual([
      ['b.txt', 'second letter first'],
      ['folder/a.txt', 'a'.repeat(500)],
    ]);
  });

  test('is the same, byte for byte, in every time zone', () => {
    const made = ['Pacific/Kiritimati', 'America/Los_Angeles', 'UTC'].map((place) => {
      process.env.TZ = place;
      return { clock: new Date(0).getTimezoneOffset(), bytes: zip(entries) };
    });
    expect(new Set(made.map(({ clock }) => clock)).size).toBe(3); // the clocks did differ
    for (const { bytes } of made) expect(bytes).toEqual(made[0]?.bytes);
  });

  test('gives what is wanted of it, and none where it is no archive or a broken one', () => {
    // as another program packs: stored, not pressed
    const theirs = zipSync({ 'a/x.txt': strToU8('one'), 'b.txt': strToU8('two') }, { level: 0 });
    expect(unzip(theirs, (path) => path.endsWith('x.txt'))).toEqual([{ path: 'a/x.txt', bytes: strToU8('one') }]);
    expect(unzip(strToU8('no archive'), () => true)).toBeNull();
    expect(unzip(zip(entries).slice(0, 60), () => true)).toBeNull();
  });
});
