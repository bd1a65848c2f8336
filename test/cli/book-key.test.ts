import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { heronDesign } from './heron-design.js';
import { scratch, snapshot, tailboard } from './scratch.js';

test.each([
  { book: '{ paper: A3 }', column: 16, says: ['"A3" is not known here.', 'Write A4 or Letter.'] },
  { book: '{ papr: A4 }', column: 9, says: ['This key is not known here.', 'Did you mean paper?'] },
  { book: 'A4', column: 7, says: ['Here stands "A4".', 'Write book: { paper: A4 }.'] },
])(
  'a design with book: $book is refused with the place and what to write; nothing is written',
  async ({ book, column, says }) => {
    const place = scratch();
    const design = `${heronDesign.trimEnd()}\nbook: ${book}\n`;
    writeFileSync(join(place, 'heron.yaml'), design);
    const { code, err, out } = await tailboard(['build', 'heron.yaml', '--output', 'out'], place);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    const line = design.split('\n').findIndex((text) => text.startsWith('book:')) + 1;
    expect(err).toMatch(new RegExp(`^heron\\.yaml:${line}:${column}  book`));
    for (const text of says) expect(err).toContain(text);
    // one message: its head, the line, the mark under it, what to write
    expect(err.trimEnd().split('\n')).toHaveLength(4);
    expect(Object.keys(snapshot(place))).toEqual(['heron.yaml']);
  },
);
