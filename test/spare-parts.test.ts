import { describe, expect, test } from 'vitest';
import { readRemnant } from '../src/index.js';
import { askParts, writeParts } from '../src/spare-parts.js';
import { designOf } from './design/reading.js';
import { heron } from './design/worked-designs.js';
import { keptDesign } from './designs/kept-design.js';

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

describe('what is glued to a part in the camera that stands', () => {
  const summary = (...ids: string[]) => {
    const found = askParts(keptDesign('heron'), { ids, remnants: [], despite: [] });
    if ('refused' in found) throw new Error(found.refused);
    return writeParts(found, null).summary;
  };
  const go = 'Of a camera that is glued up they go with it: cut them too, or part the joint.';

  test('the top of the front box: panel and sides by their fingers, and the handle on it', () => {
    expect(summary('F3')).toContainEqual(`Glued to F3: F1, F2L, F2R, F11. ${go}`);
  });

  test('what is cut along goes unsaid, and so does what is only screwed', () => {
    expect(summary('F3', 'F1', 'F2L')).toContainEqual(`Glued to F3, F1, F2L: F2R, F4, F5, F10, T1U, F11. ${go}`);
    expect(summary('R6').join()).not.toContain('Glued');
  });
});

describe('what is bought is no part to be made', () => {
  const refusal = (id: string) => {
    const outcome = askParts(keptDesign('heron'), { ids: [id], remnants: [], despite: [] });
    return 'refused' in outcome ? outcome.refused : '';
  };

  test.each(['nut', 'Nut', 'thumb screw', 'thumb-screw', 'dowel'])('%s: where it is listed, and no marks', (word) => {
    expect(refusal(word)).toBe(
      `${word} is bought: there is nothing to cut or to print. See To buy in what tailboard plan prints.`,
    );
  });

  test('a thing of the drawings is told by its name; the lens is there already', () => {
    expect(refusal('clamp-nut')).toBe(
      'clamp-nut (M4 nut in the clamp’s flange) is bought: there is nothing to cut or to print. See To buy in what tailboard plan prints.',
    );
    expect(refusal('lens-front')).toMatch(/is bought: there is nothing to cut or to print\.$/);
  });

  // board is bought for the channel of a holder, and a funnel stands among what is bought though it is printed
  test.each(['board', 'funnel', 'F66', '?'])('%s: the marks that there are', (word) => {
    expect(refusal(word)).toContain(`The design has no part ${word}.`);
    expect(refusal(word)).toContain('It has: F1, F2L');
  });
});
