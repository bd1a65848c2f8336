import { describe, expect, test } from 'vitest';
import type { Page } from '../../src/model/page.js';
import type { Block } from '../../src/paper/blocks.js';
import { flow } from '../../src/paper/flow.js';
import { chapterTitle, heading, kept, numbered, onOnePage, paragraph, tickList } from '../../src/paper/prose.js';
import { BOTTOM, TEXT_WIDTH, TOP } from '../../src/paper/sheet-size.js';
import { table } from '../../src/paper/table.js';
import { wordsWidth } from '../../src/paper/words-width.js';

const paper = { width: 210, height: 297 };
/** What a page holds. */
const ROOM = paper.height - TOP - BOTTOM;

const flowed = (blocks: readonly Block[]): readonly Page[] => flow(() => blocks, { paper, foot: 'Heron' });
const textsOn = ({ marks }: Page): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));

/** A block of so much height that says its name. */
const block = (name: string, height: number, more: Partial<Block> = {}): Block => ({
  height,
  above: 0,
  marks: (at) => [{ kind: 'words', at, text: name, size: 3.5, anchor: 'start', colour: '#000000' }],
  ...more,
});

const pagesOf = (blocks: readonly Block[]): readonly (readonly string[])[] =>
  flowed(blocks).map((page) => textsOn(page).filter((text) => /^[a-z]$/.test(text)));

describe('blocks over pages', () => {
  test('fill a page to its last millimetre, and go on with the next', () => {
    expect(pagesOf([block('a', ROOM - 50), block('b', 50), block('c', 1)])).toEqual([['a', 'b'], ['c']]);
    expect(pagesOf([block('a', ROOM - 50), block('b', 50.1)])).toEqual([['a'], ['b']]);
  });

  test('have no blank above them where they begin a page', () => {
    const [, second] = flowed([block('a', ROOM), block('b', 10, { above: 20 })]);
    expect(second?.marks[0]).toMatchObject({ text: 'b', at: { y: TOP } });
  });

  test('take what stands before them along, a whole chain of it', () => {
    const tied = { withNext: true } as const;
    expect(pagesOf([block('a', ROOM - 30), block('b', 10, tied), block('c', 10, tied), block('d', 11)])).toEqual([
      ['a'],
      ['b', 'c', 'd'],
    ]);
    expect(pagesOf([block('a', ROOM - 31), block('b', 10, tied), block('c', 10, tied), block('d', 11)])).toHaveLength(
      1,
    );
  });

  test('begin a page where they must, but leave none empty', () => {
    expect(pagesOf([block('a', 5, { beginsPage: true }), block('b', 5, { beginsPage: true })])).toEqual([['a'], ['b']]);
  });

  test('begin a page where the rest of one is too little for all that belongs to them', () => {
    const four = onOnePage(['b', 'c', 'd', 'e'].map((name) => block(name, ROOM / 4 - 1)));
    expect(pagesOf([block('a', 20), ...four])).toEqual([['a'], ['b', 'c', 'd', 'e']]);
    expect(pagesOf([block('a', 3), ...four])).toHaveLength(1);
  });

  test('are never cut: what is higher than a page is a mistake of ours', () => {
    expect(() => flowed([block('a', ROOM + 1)])).toThrow('higher than a page');
    expect(() => flowed([kept([block('a', ROOM / 2), block('b', ROOM / 2 + 1)])])).toThrow('higher than a page');
  });

  test('are told by page in contents that stand before them, however long these are', () => {
    const chapters = Array.from({ length: 80 }, (_, i) => `Chapter ${i + 1}`);
    const pages = flow(
      (contents) => [
        chapterTitle('Contents'),
        ...contents.map(({ title, page }) => paragraph(`${title} on ${page}`)),
        ...chapters.flatMap((title) => [chapterTitle(title), paragraph('text')]),
      ],
      { paper, foot: 'Heron' },
    );
    for (const title of chapters) {
      const page = pages.findIndex(({ bookmarks = [] }) => bookmarks.some((mark) => mark.title === title));
      expect(
        pages.slice(0, page).some((own) => textsOn(own).includes(`${title} on ${page + 1}`)),
        title,
      ).toBe(true);
    }
  });
});

test('a heading never stands alone at the foot of a page', () => {
  for (let height = ROOM - 30; height < ROOM; height += 0.5) {
    const pages = flowed([block('a', height), heading('Heading'), paragraph('text')]);
    const found = pages.filter((page) => textsOn(page).includes('Heading'));
    expect(found.map((page) => textsOn(page).includes('text'))).toEqual([true]);
  }
});

describe('a table', () => {
  const columns = [{ title: 'What' }, { title: 'Pieces', align: 'right' }] as const;
  const rows = Array.from({ length: 100 }, (_, i) => [`thing ${i + 1}`, `${i}`]);

  test('over several pages has its head on each', () => {
    const pages = flowed(table(columns, rows));
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(textsOn(page).filter((text) => text === 'Pieces')).toHaveLength(1);
    expect(pages.flatMap((page) => textsOn(page).filter((text) => text.startsWith('thing')))).toEqual(
      rows.map(([name]) => name),
    );
  });

  test('keeps to the width of the page and breaks no word, however much is in it', () => {
    const long = 'a rather long text that nobody can set in one line of a narrow column of a page';
    const wide = [
      { title: 'Magnification' },
      { title: 'Text' },
      { title: 'More', width: 60 },
      { title: 'Measured places', width: 40 },
    ];
    for (const toFillIn of [{}, { toFillIn: true }] as const) {
      const [page] = flowed(table(wide, [[long, long, long, long]], toFillIn));
      const words = page?.marks.filter((mark) => mark.kind === 'words').slice(0, -2) ?? [];
      const left = (paper.width - TEXT_WIDTH) / 2;
      for (const { at, text, size, bold } of words) {
        expect(at.x).toBeGreaterThanOrEqual(left);
        expect(at.x + wordsWidth(text, { size, heavy: bold === true })).toBeLessThanOrEqual(left + TEXT_WIDTH + 0.01);
        for (const word of text.split(' '))
          expect(`${long} Magnification Text More Measured places`.split(' ')).toContain(word);
      }
      const across = page?.marks.flatMap((mark) => (mark.kind === 'line' ? mark.points.map(({ x }) => x) : [])) ?? [];
      expect(Math.max(...across)).toBeLessThanOrEqual(left + TEXT_WIDTH + 0.01);
      expect(Math.min(...across)).toBeGreaterThanOrEqual(left - 0.01);
    }
  });
});

test('a list to tick has a box before each of its lines', () => {
  const [page] = flowed(tickList(['one', 'two', 'three']));
  const boxes = page?.marks.filter((mark) => mark.kind === 'line' && mark.closed) ?? [];
  expect(boxes).toHaveLength(3);
});

test('a numbered list counts from 1, each number before its line', () => {
  const [page] = flowed(numbered(['one', 'two', 'three']));
  const words = page?.marks.flatMap((mark) => (mark.kind === 'words' ? [mark] : [])) ?? [];
  for (const [i, text] of ['one', 'two', 'three'].entries()) {
    const line = words.find((mark) => mark.text === text);
    const number = words.find((mark) => mark.text === `${i + 1}` && mark.at.y === line?.at.y);
    expect(number?.at.x).toBeLessThan(line?.at.x ?? 0);
  }
});

test('cells that are written in are 8 mm high, and numbers of a column end below each other', () => {
  const columns = [{ title: 'What' }, { title: 'Pieces', align: 'right' }] as const;
  const blocks = table(
    columns,
    [
      ['a', '9'],
      ['b', '1000'],
    ],
    { toFillIn: true },
  );
  for (const { height } of blocks.slice(1)) expect(height).toBeGreaterThanOrEqual(8);
  const ends = blocks.slice(1).map((one) => {
    const number = one.marks({ x: 0, y: 0 }).find((mark) => mark.kind === 'words' && /^\d+$/.test(mark.text));
    if (number?.kind !== 'words') throw new Error('no number');
    const width = wordsWidth(number.text, { size: number.size, heavy: false });
    return number.at.x + { start: width, middle: width / 2, end: 0 }[number.anchor];
  });
  expect(ends[0]).toBeCloseTo(ends[1] ?? 0, 6);
});
