import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { withBlocks } from './blocks.js';

const root = join(import.meta.dirname, '../..');
const pages = ['README.md', 'DEVELOPERS.md'].map((name) => ({ name, text: readFileSync(join(root, name), 'utf8') }));
const [readme] = pages as [{ name: string; text: string }, ...unknown[]];

describe('README.md', () => {
  test('shows the plan, the formats and the keys as they are (else: npx tsx test/readme/refresh.ts)', () =>
    expect(withBlocks(readme.text)).toBe(readme.text));

  test('a block that differs from the program would be found', () => {
    const spoiled = readme.text.replace('| must be given |', '| may be given |');
    expect(withBlocks(spoiled)).not.toBe(spoiled);
  });
});

describe.each(pages)('$name', ({ text }) => {
  test('every file and folder that it names is there', () => {
    const named = [
      ...text.matchAll(/\]\(([^)#:]+)\)|`((?:src|test|designs|output\/heron|output\/pictures)\/[\w./-]*)`/g),
    ];
    const paths = named.map(([, linked, quoted]) => linked ?? quoted ?? '');
    expect(paths.length).toBeGreaterThan(3);
    expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });
});

test('every design is told of in README.md', () => {
  const names = readdirSync(join(root, 'designs')).filter((file) => file.endsWith('.yaml'));
  expect(names.filter((file) => !readme.text.includes(`designs/${file}`))).toEqual([]);
});
