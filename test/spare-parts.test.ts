import { expect, test } from 'vitest';
import { readRemnant } from '../src/index.js';
import { askParts } from '../src/spare-parts.js';
import { designOf } from './design/reading.js';
import { heron } from './design/worked-designs.js';

const square = [[0, 0], [300, 0], [300, 300], [0, 300]]; // biome-ignore format: one line

/** A piece of the sheet that Heron is cut from, in a file of this name. */
function piece(file: string) {
  const read = readRemnant(JSON.stringify({ schema: 1, material: 'plywood-4.05', thickness: 4.05, outline: square }));
  if ('what' in read) throw new Error(read.what);
  return { ...read, file };
}

const asked = (...files: string[]) =>
  askParts(designOf(heron), { ids: ['F6'], remnants: files.map(piece), despite: [] });

test('one file is one piece', () => {
  expect(asked('one.json', 'other.json')).not.toHaveProperty('refused');
  expect(asked('one.json', 'other.json', 'one.json')).toEqual({
    refused: expect.stringContaining('The remnant one.json is named twice'),
  });
});
