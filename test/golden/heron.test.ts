import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, test } from 'vitest';
import { pagePdf } from '../../src/files/pdf.js';
import { loadWorkshop } from '../../src/index.js';
import { keptDesign } from '../designs/kept-design.js';
import { bookFonts } from '../files/read-pdf.js';

/**
 * Detects change and nothing else: the bytes kept in output/heron were written by this program and have no opinion about
 * what is right. Where a change is meant, write the sample anew and look at it before it is committed:
 *
 *     npm run compile && node dist/cli/main.js build designs/heron.yaml
 */
const kept = join(import.meta.dirname, '../../output/heron');
const MANIFEST = '.tailboard.json';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

test('Heron is built as it was before, to the last byte', { timeout: 240_000 }, async () => {
  const { build } = await loadWorkshop();
  const { files } = build(keptDesign('heron'), {
    despite: [],
    onProgress: () => {},
    writeDocument: (pages, about) => pagePdf(pages, bookFonts, about),
  });
  const before = keptFiles().filter((path) => path !== MANIFEST);
  expect(files.map(({ path }) => path).sort()).toEqual(before);
  const changed = files.filter(({ path, bytes }) => sha256(bytes) !== sha256(readFileSync(join(kept, path))));
  expect(changed.map(({ path }) => path)).toEqual([]);
});

test('the manifest of the sample names its files and their digests', () => {
  const { files } = JSON.parse(readFileSync(join(kept, MANIFEST), 'utf8'));
  const found = keptFiles()
    .filter((path) => path !== MANIFEST)
    .map((path) => ({ path, sha256: sha256(readFileSync(join(kept, path))) }));
  expect(files).toEqual(found);
});

function keptFiles(): readonly string[] {
  return readdirSync(kept, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(kept, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}
