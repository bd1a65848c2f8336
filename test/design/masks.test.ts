import { describe, expect, test } from 'vitest';
import { revisionOf } from '../../src/design/revision.js';
import { designOf, problemsOf } from './reading.js';
import { heron } from './worked-designs.js';

const asked = (masks: string) => `${heron}masks: [${masks}]\n`;

describe('masks', () => {
  test('by the size of the picture, or by the name of a smaller format', () => {
    expect(designOf(asked('{ name: square, image: [110 mm, 11 cm], corners: 5 mm }')).masks).toEqual([
      { name: 'square', image: { width: 110, height: 110 }, corners: 5, holder: 'paper holder' },
    ]);
    // 82.55 × 107.95 less 5 each way: standards/formats
    expect(designOf(asked('{ name: quarter, format: quarter-plate, holder: processing holder }')).masks).toEqual([
      { name: 'quarter', image: { width: 77.55, height: 102.95 }, corners: 0, holder: 'processing holder' },
    ]);
  });
  test.each([
    ['neither of the two', '{ name: a }', 'masks[0].image', /not given, nor is a format/],
    ['both of them', '{ name: a, image: [90 mm, 90 mm], format: 9x12 }', 'masks[0].format', /given twice/],
    ['more than the film receives', '{ name: a, image: [130 mm, 90 mm] }', 'masks[0].image', /larger than what/],
    ['a larger format', '{ name: a, format: 8x10 }', 'masks[0].format', /larger than what/],
    ['corners rounder than round', '{ name: a, image: [60 mm, 90 mm], corners: 31 mm }', 'masks[0].corners', /rounder/],
    ['a holder that is not there', '{ name: a, format: 9x12, holder: mine }', 'masks[0].holder', /called mine/],
    ['a name twice', '{ name: a, format: 9x12 }, { name: A, format: 4x5 }', 'masks[1].name', /has this name/],
  ])('%s is refused', (_, mask, path, what) =>
    expect(problemsOf(asked(mask))[0]).toMatchObject({ path, what: expect.stringMatching(what) }),
  );
  test('an empty list is none, and leaves the mark of the design as it was', () => {
    const none = designOf(asked(''));
    expect(none.masks).toBeUndefined();
    expect(revisionOf(none)).toBe(revisionOf(designOf(heron)));
    expect(revisionOf(designOf(asked('{ name: a, format: 4x5 }')))).not.toBe(revisionOf(none));
  });
  test('nor does a baffle or a handle that is not wanted', () => {
    expect(revisionOf(designOf(`${heron}baffle: false\nhandle: false\n`))).toBe(revisionOf(designOf(heron)));
    expect(revisionOf(designOf(`${heron}baffle: true\n`))).not.toBe(revisionOf(designOf(heron)));
  });
});
