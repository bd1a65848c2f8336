import { describe, expect, test } from 'vitest';
import { readLenses } from '../../src/forms/read-lenses.js';
import { formatsAsked } from '../../src/survey/formats.js';

const text = (formats: string, i: number) =>
  `plywood: { thickness: 4 mm }
formats: ${formats}
lenses: [{ name: lens ${i}, focalLength: 200 mm }]
`;
const drawersOf = (...formats: readonly string[]) => {
  const read = readLenses(formats.map((own, i) => ({ file: `${i}.yaml`, text: text(own, i) })));
  if ('problems' in read) throw new Error(read.problems[0]?.what);
  return read.drawers;
};
const drawers = drawersOf('[4x5, { name: 6x9, width: 60 mm, height: 90 mm }]', '[5x7]');

describe('formats that are asked for', () => {
  test('none: those of the lists', () => expect(formatsAsked(drawers, [])).toEqual({ formats: null }));

  test('by name, from the lists or the table, each once', () =>
    expect(formatsAsked(drawers, ['8x10', '6x9', '8x10'])).toMatchObject({
      formats: ['8x10', { name: '6x9', width: 60 }],
    }));

  test('a name that may mean several is answered with them', () =>
    expect(formatsAsked(drawers, ['half plate'])).toMatchObject({
      accepted: 'Write half-plate-british, half-plate-american.',
    }));

  test('a name that is not known is answered with those that are', () => {
    const asked = formatsAsked(drawers, ['5x8']);
    expect(asked).toMatchObject({ what: '"5x8" is neither in the table of formats nor in the list.' });
    expect('accepted' in asked && asked.accepted).toContain('6x9');
  });
});
