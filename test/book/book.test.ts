import { describe, expect, test } from 'vitest';
import type { Mark } from '../../src/model/page.js';
import { wordsWidth } from '../../src/paper/words-width.js';
import { readPdf } from '../files/read-pdf.js';
import { madeBook, textOf } from './made-book.js';

/** The smallest letters that may be printed: 9 pt of 1/72 in. */
const NINE_POINTS = (9 * 25.4) / 72;
/** Of the list of parts; on drawings numbers are smaller. */
const TEN_POINTS = (10 * 25.4) / 72;
/** What a printer leaves blank all round, at most: common practice, no source. */
const UNPRINTABLE = 8;

const books = [
  { name: 'heron', paper: 'A4', size: [210, 297], waived: null, book: madeBook('heron') },
  {
    name: 'curlew',
    paper: 'Letter',
    size: [215.9, 279.4],
    waived: 'kerf-plausible',
    book: madeBook(
      'curlew',
      (design) => ({ ...design, book: { paper: 'Letter' }, laser: { ...design.laser, kerf: 0.6 } }),
      ['kerf-plausible'],
    ),
  },
] as const;

type Words = Extract<Mark, { readonly kind: 'words' }>;

describe.each(books)('the book of $name on $paper', async ({ size: [width, height], waived, book }) => {
  const { pages, pdf } = book;
  const { pages: read, outline } = await readPdf(pdf);
  const wordsOn = pages.map(({ marks }) => marks.filter((mark): mark is Words => mark.kind === 'words'));

  test('has pages of that paper, counted at their feet', () => {
    expect(read.length).toBe(pages.length);
    read.forEach((page, i) => {
      expect(page.width).toBeCloseTo(width, 3);
      expect(page.height).toBeCloseTo(height, 3);
      expect(page.lines.at(-1)?.text).toBe(`page ${i + 1} of ${pages.length}`);
    });
  });

  test('has bookmarks and contents that lead to the pages on which the titles stand', () => {
    const linesOn = read.map(({ lines }) => lines.map(({ text }) => text));
    expect(outline.length).toBeGreaterThan(20);
    // a title that is broken stands in two lines
    for (const { title, page } of outline.slice(1))
      expect(linesOn[page]?.join(' ').includes(title), `${title} on page ${page + 1}`).toBe(true);
    const contents = outline.findIndex(({ title }) => title === 'Contents');
    const [from, to] = [outline[contents]?.page ?? 0, outline[contents + 1]?.page ?? 0];
    expect(to - from, 'contents on one page, and at the head of the next').toBe(1);
    const listed: { title: string; number: string }[] = [];
    let words: string[] = [];
    // after the title, before the foot: a title of one line or more, then its number
    const over = read[to]?.lines ?? [];
    const next = over.findIndex(({ text, size }) => text === outline[contents + 1]?.title && size > 1.3 * TEN_POINTS);
    const isFoot = (text: string) => /, revision \w+$|^page \d+ of \d+$/.test(text.trim());
    for (const { text } of [...(read[from]?.lines.slice(1) ?? []), ...over.slice(0, next)].filter(
      (one) => !isFoot(one.text),
    ))
      if (/^\d+$/.test(text)) {
        listed.push({ title: words.join(' '), number: text });
        words = [];
      } else if (text.trim() !== '') words.push(text.trim());
    expect(listed).toEqual(outline.slice(contents + 1).map(({ title, page }) => ({ title, number: `${page + 1}` })));
  });

  test('has no heading alone at the foot of a page, and each step at the head of one', () => {
    for (const [i, words] of wordsOn.entries()) {
      const texts = words.slice(0, -2);
      const lowest = texts.reduce((low, one) => (one.at.y > low.at.y ? one : low), texts[0] as Words);
      expect({ page: i + 1, heading: lowest.bold === true && lowest.size > 4 }).toEqual({
        page: i + 1,
        heading: false,
      });
    }
    const steps = outline.filter(({ title }) => /^Step \d+\./.test(title));
    expect(steps.length).toBeGreaterThan(20);
    for (const { title, page } of steps) {
      const [first] = wordsOn[page] ?? [];
      expect(title.startsWith(first?.text ?? 'nothing'), `${title} | ${first?.text}`).toBe(true);
    }
  });

  test('lists each tool and each thing that is bought once', () => {
    const from = outline.find(({ title }) => title === 'Bought parts')?.page ?? 0;
    const to = outline.find(({ title }) => title === 'The test piece first')?.page ?? 0;
    const tools = read.slice(from, to + 1).flatMap(({ lines }) => lines.map(({ text }) => text));
    // a need of a step that is bought is not listed as a tool, too
    expect(tools.filter((text) => /^card 0.2 mm thick/.test(text))).toEqual([]);
    for (const once of ['wood glue', 'try square', 'contact adhesive', 'magnifier; tape measure'])
      expect({ once, count: tools.filter((text) => text === once).length }).toEqual({ once, count: 1 });
  });

  test('says on its cover and at every foot what it was built despite', () => {
    const texts = wordsOn.map((words) => words.map(({ text }) => text));
    expect(texts[0]?.filter((text) => text.startsWith('Built despite'))).toEqual(
      waived === null ? [] : [`Built despite ${waived}`],
    );
    for (const own of texts)
      expect(own.filter((text) => text.includes(', built despite'))).toEqual(
        waived === null ? [] : [expect.stringMatching(new RegExp(`, built despite ${waived}$`))],
      );
  });

  test('has no letters below nine points', () => {
    const small = wordsOn.flat().filter(({ size }) => size < NINE_POINTS);
    expect(small.map(({ text }) => text)).toEqual([]);
  });

  test('has nothing in the margins that a printer leaves blank', () => {
    pages.forEach(({ marks }, i) => {
      for (const { x, y } of marks.flatMap(cornersOf))
        expect(
          [x > UNPRINTABLE, x < width - UNPRINTABLE, y > UNPRINTABLE, y < height - UNPRINTABLE],
          `page ${i + 1}`,
        ).toEqual([true, true, true, true]);
    });
  });

  test('has no words on other words', () => {
    const found = wordsOn.flatMap((words, page) =>
      words.flatMap((a, i) =>
        words.slice(i + 1).flatMap((b) => (overlap(a, b) ? [`page ${page + 1}: ${a.text} | ${b.text}`] : [])),
      ),
    );
    expect(found).toEqual([]);
  });

  test('lists every part with as many pieces as there are', () => {
    const { parts } = JSON.parse(textOf(book, 'parts.json')) as {
      parts: readonly { id: string; kind: string; count: number }[];
    };
    const made = parts.filter(({ kind }) => kind !== 'bought');
    const from = outline.find(({ title }) => title === 'Cut parts, by sheet')?.page ?? 0;
    const to = outline.find(({ title }) => title === 'Bought parts')?.page ?? 0;
    const lines = read.slice(from, to + 1).flatMap(({ lines: own }, page) => own.map((line) => ({ ...line, page })));
    const counted = made.map(({ id }) => {
      const rows = lines.filter(({ text }) => text === id);
      const pieces = rows.map((row) =>
        // the first number to the right of it on its line
        lines.find(
          ({ page, y, x, text }) => page === row.page && Math.abs(y - row.y) < 0.01 && x > row.x && /^\d+$/.test(text),
        ),
      );
      return { id, count: pieces.reduce((sum, piece) => sum + Number(piece?.text), 0) };
    });
    expect(made.length).toBeGreaterThan(30);
    expect(counted).toEqual(made.map(({ id, count }) => ({ id, count })));
  });

  test('shows every piece of every sheet by its number', () => {
    const { parts } = JSON.parse(textOf(book, 'parts.json')) as {
      parts: readonly { id: string; kind: string; count: number }[];
    };
    const chapter = outline.findIndex(({ title }) => title === 'Cutting and sorting the sheets');
    // the next chapter may begin on the page of its last sheet
    const on = read.slice(outline[chapter]?.page, (outline[chapter + 1]?.page ?? 0) + 1).flatMap(({ lines }) => lines);
    for (const { id, count } of parts.filter(({ kind }) => kind === 'flat'))
      expect({ id, count: on.filter(({ text, font }) => text === id && /Bold/.test(font.name)).length }).toEqual({
        id,
        count,
      });
  });

  test('brings every part into the camera in exactly one step', () => {
    const { parts } = JSON.parse(textOf(book, 'parts.json')) as {
      parts: readonly { id: string; kind: string; count: number; name: string }[];
    };
    const chapter = outline.findIndex(({ title }) => title === 'Putting it together');
    const after = outline.slice(chapter).find(({ title, level }) => level === 0 && title !== 'Putting it together');
    const on = read
      .slice(outline[chapter]?.page, (after?.page ?? 0) + 1)
      .flatMap(({ lines }) => lines)
      .filter(({ text }) => text.trim() !== '');
    const made = parts.filter(({ kind }) => kind !== 'bought');
    for (const { id, count, name } of made) {
      // the lens clamp has no other number than its name
      const named = id.replaceAll('-', ' ') === name;
      const steps = on.filter(
        ({ text, size }, i) =>
          Math.abs(size - TEN_POINTS) < 0.01 &&
          (named ? text === name && on[i - 1]?.text.trim() === `${count} ×` : text === `${count} × ${id}`),
      );
      expect({ id, steps: steps.length }).toEqual({ id, steps: 1 });
    }
  });
});

/** How far letters rise above their base line and hang below it, of their size: tables hhea and OS/2 of the font, rounded. */
const RISE = 0.76;
const HANG = 0.24;

function patch({ at, text, size, anchor, bold, turned }: Words) {
  const width = wordsWidth(text, { size, heavy: bold === true });
  const left = -{ start: 0, middle: 0.5, end: 1 }[anchor] * width;
  const corners = [
    { x: left, y: -RISE * size },
    { x: left + width, y: HANG * size },
  ];
  const upright = turned !== undefined && Math.abs(Math.sin(turned)) > 0.5;
  const [a, b] = corners.map(({ x, y }) => (upright ? { x: at.x + y, y: at.y - x } : { x: at.x + x, y: at.y + y }));
  if (a === undefined || b === undefined) throw new Error('words have corners');
  return { left: Math.min(a.x, b.x), right: Math.max(a.x, b.x), top: Math.min(a.y, b.y), bottom: Math.max(a.y, b.y) };
}

function overlap(one: Words, other: Words): boolean {
  const [a, b] = [patch(one), patch(other)];
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function cornersOf(mark: Mark): readonly { readonly x: number; readonly y: number }[] {
  switch (mark.kind) {
    case 'line':
      return mark.points;
    case 'strokes':
      return mark.paths.flat();
    case 'circle':
      return [-1, 1].flatMap((side) => [
        { x: mark.centre.x + side * mark.radius, y: mark.centre.y },
        { x: mark.centre.x, y: mark.centre.y + side * mark.radius },
      ]);
    case 'words': {
      const { left, right, top, bottom } = patch(mark);
      return [
        { x: left, y: top },
        { x: right, y: bottom },
      ];
    }
  }
}
