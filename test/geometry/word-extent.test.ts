import { expect, test } from 'vitest';
import { lettering } from '../../src/geometry/lettering.js';
import { boundsOfPoints } from '../../src/geometry/path.js';
import { wordExtent } from '../../src/geometry/word-extent.js';

// the font itself draws them
test.each(['inf', 'm', 'stops', '1:4.5', '1:30', '+0.1', '+2', '0.55', '0123456789', '7', '.'])(
  '%s is as wide as it is drawn',
  (word) => {
    const { left, right } = boundsOfPoints(lettering(word, 2.5).strokes.flatMap(({ vertices }) => vertices));
    const extent = wordExtent(word, 2.5);
    expect(extent.left).toBeCloseTo(left, 6);
    expect(extent.right).toBeCloseTo(right, 6);
  },
);

test('a letter that is not in the table is a mistake of ours', () => expect(() => wordExtent('€', 2.5)).toThrow('€'));
