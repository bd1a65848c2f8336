import { describe, expect, test } from 'vitest';
import { revisionOf } from '../../src/design/revision.js';
import { changed, designOf } from './reading.js';
import { heron } from './worked-designs.js';

const mark = (text: string) => revisionOf(designOf(text));

describe('the revision of a design', () => {
  test('is a short mark that can be engraved and read', () => expect(mark(heron)).toMatch(/^[A-HJ-NP-Z2-9]{6}$/));

  test.each([
    ['the name', 'name: Heron', 'name: Egret'],
    ["the lens's name", '210 mm f/6.3 process lens', 'a lens'],
    ['a comment', '# a 5x7', '# another'],
    ['the way a length is written', '127 mm', '5 in'],
    ['what is a default anyway', 'frosted: lens', 'frosted: lens, refractiveIndex: 1.52'],
    ['the order of keys', 'thickness: 2 mm, depth: 5.8 mm', 'depth: 5.8 mm, thickness: 2 mm'],
    [
      'how well the lens is known',
      'flangeDistance: 203.5 mm',
      'flangeDistance: 203.5 mm\n  uncertainty: { focalLength: 0.37 mm, flangeDistance: 0.21 mm, correlation: -0.86, readings: 8 }',
    ],
    ['colours', 'kerf: 0.15 mm', 'kerf: 0.15 mm, palette: { engrave: "#123456" }'],
    [
      'speeds',
      'kerf: 0.15 mm',
      'kerf: 0.15 mm, cutSpeed: 8 mm/s, engraveSpeed: 90 mm/s, travelSpeed: 1 m/s, pierceTime: 1 s',
    ],
    ['where parts lie on the sheet', 'shims:', 'workshop: { spacing: 3 mm, margin: 8 mm }\nshims:'],
    ['how a sitter is exposed', 'shims:', 'sitting: { aperture: f/16, speed: 6, subject: 1.2 m }\nshims:'],
    ['the paper of the book', 'shims:', 'book: { paper: Letter }\nshims:'],
    ['the size of the sheets', '[600 mm, 400 mm]', '[900 mm, 600 mm]'],
  ])('does not change with %s', (_, from, to) => expect(mark(changed(heron, from, to))).toBe(mark(heron)));

  test('changes with whatever shapes parts, each time to another mark', () => {
    const changes: (readonly [string, string])[] = [
      ['4.05 mm', '4.06 mm'],
      ['203.5 mm', '203.501 mm'],
      ['kerf: 0.15 mm', 'kerf: 0.16 mm'],
      ['1:2.5', '1:3'],
      ['side: inside', 'side: front'],
      ['filmDepth: 24 mm', 'filmDepth: 24.1 mm'],
      ['width: 156 mm', 'width: 157 mm'],
      ['[0.1 mm, 0.25 mm, 0.5 mm]', '[0.1 mm, 0.5 mm]'],
      ['shims:', 'workshop: { slideClearance: 1.6 mm }\nshims:'],
      ['mass: 640 g', 'mass: 641 g'],
    ];
    const marks = [mark(heron), ...changes.map(([from, to]) => mark(changed(heron, from, to)))];
    expect(new Set(marks).size).toBe(marks.length);
  });

  test('rarely falls together by chance', () => {
    const design = designOf(heron);
    const marks = Array.from({ length: 2000 }, (_, i) => revisionOf({ ...design, shims: [0.1 + i / 1000] }));
    expect(new Set(marks).size).toBe(marks.length);
  });
});
