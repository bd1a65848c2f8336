import type { Mark } from '../model/page.js';
import { type Block, words } from './blocks.js';
import { TEXT_WIDTH } from './sheet-size.js';
import { wordsWidth } from './words-width.js';

/*
 * What a text is made of. Each function gives one block, or several where a page may end between them:
 *
 *   heading(text)            a part of a chapter, in the contents      subheading(text)         not in the contents
 *   paragraph(text)          a text or several                         note(text)               beside a bar
 *   bullets(items)           numbered(items, from?)                    tickList(items)          boxes to tick
 *   caution(text)            framed, with its word                     kept(blocks)             one block that no page parts
 *   onOnePage(blocks)        on one page where it holds them all       see table.ts for tables, figure.ts for drawings
 *
 * All that takes a width can be set in smaller letters, too, where the usual ones run over a page.
 */

/** A point of type in mm. */
const POINT = 25.4 / 72;
export const INK = '#111111';
export const FAINT = '#5f5f5f';
/** What is read at arm's length on a bench; no letter of the book is smaller than 9 pt. */
export const TEXT = 10 * POINT;
export const SMALL = 3.2;
const HEADING = 13 * POINT;
const CHAPTER = 19 * POINT;

/** Before a paragraph, mm; the items of a list stand closer. */
export const PARAGRAPH = 2.2;
const ITEM = 0.9;

interface Within {
  /** Narrower than the page, where it stands in something. */
  readonly width?: number;
  /** Of the letters: TEXT where left out. */
  readonly size?: number;
}

export function paragraph(
  text: string | readonly string[],
  { width = TEXT_WIDTH, bold }: Within & { readonly bold?: true } = {},
): Block {
  return { ...words(text, { size: TEXT, colour: INK, width, ...(bold ? { bold } : {}) }), above: PARAGRAPH };
}

/** What stands beside what matters: the source of a figure, a second way. */
export const smallPrint = (text: string | readonly string[], { width = TEXT_WIDTH }: Within = {}): Block => ({
  ...words(text, { size: SMALL, colour: FAINT, width }),
  above: PARAGRAPH,
});

/** A chapter begins a page where less is left of one, mm: a third of it. */
const CHAPTER_WANTS = 88;

export function chapterTitle(text: string): Block {
  const own = words(text, { size: CHAPTER, colour: INK, width: TEXT_WIDTH, bold: true });
  const height = own.height + 2;
  return {
    height,
    marks: ({ x, y }) => [...own.marks({ x, y }), ruleAcross({ x, y: y + height }, TEXT_WIDTH, 0.6)],
    above: 12,
    wants: CHAPTER_WANTS,
    withNext: true,
    entry: { title: text, level: 0 },
  };
}

export const heading = (text: string): Block => ({
  ...words(text, { size: HEADING, colour: INK, width: TEXT_WIDTH, bold: true }),
  above: 6,
  withNext: true,
  entry: { title: text, level: 1 },
});

export const subheading = (text: string): Block => ({
  ...words(text, { size: TEXT, colour: INK, width: TEXT_WIDTH, bold: true }),
  above: 3.5,
  withNext: true,
});

const INDENT = 7;

/** An item of a list: its sign at the left, its words beside it. */
function item(
  text: string,
  { width = TEXT_WIDTH, size = TEXT }: Within,
  sign: (at: { readonly x: number; readonly y: number }) => Mark,
): Block {
  const own = words(text, { size, colour: INK, width: width - INDENT });
  return {
    height: own.height,
    marks: ({ x, y }) => [sign({ x, y }), ...own.marks({ x: x + INDENT, y })],
    above: ITEM,
  };
}

/** The first item stands off as a paragraph does. */
const listed = (items: readonly Block[]): readonly Block[] =>
  items.map((block, i) => (i === 0 ? { ...block, above: PARAGRAPH } : block));

export const bullets = (items: readonly string[], within: Within = {}): readonly Block[] =>
  listed(
    items.map((text) =>
      item(text, within, ({ x, y }) => ({
        kind: 'circle',
        centre: { x: x + 3, y: y + 0.66 * (within.size ?? TEXT) },
        radius: 0.6,
        fill: INK,
      })),
    ),
  );

/** @param from the number of the first */
export const numbered = (
  items: readonly string[],
  { from = 1, ...within }: Within & { readonly from?: number } = {},
): readonly Block[] =>
  listed(
    items.map((text, i) =>
      item(text, within, ({ x, y }) => ({
        kind: 'words',
        at: { x: x + INDENT - 1.6, y: y + (within.size ?? TEXT) },
        text: `${from + i}`,
        size: within.size ?? TEXT,
        anchor: 'end',
        colour: INK,
        bold: true,
      })),
    ),
  );

/** Of a box to tick. */
export const BOX = 3;

export const tickBox = ({ x, y }: { readonly x: number; readonly y: number }): Mark => ({
  kind: 'line',
  points: [
    { x, y },
    { x: x + BOX, y },
    { x: x + BOX, y: y + BOX },
    { x, y: y + BOX },
  ],
  closed: true,
  stroke: { colour: INK, width: 0.3 },
});

export const tickList = (items: readonly string[], within: Within = {}): readonly Block[] =>
  listed(items.map((text) => item(text, within, ({ x, y }) => tickBox({ x: x + 1.5, y: y + 0.72 }))));

/** Something that can hurt the builder or the camera, where it is met. */
export function caution(text: string | readonly string[], { width = TEXT_WIDTH, size = TEXT }: Within = {}): Block {
  const word = 'Caution';
  const side = wordsWidth(word, { size: TEXT, heavy: true }) + 6;
  const title = words(word, { size: TEXT, colour: INK, width: side, bold: true });
  const own = words(text, { size, colour: INK, width: width - side - 4 });
  const height = own.height + 4;
  return {
    height,
    marks: ({ x, y }) => [
      {
        kind: 'line',
        points: [
          { x: x + 0.4, y: y + 0.4 },
          { x: x + width - 0.4, y: y + 0.4 },
          { x: x + width - 0.4, y: y + height - 0.4 },
          { x: x + 0.4, y: y + height - 0.4 },
        ],
        closed: true,
        fill: '#f1f1f1',
        stroke: { colour: INK, width: 0.8 },
      },
      ...title.marks({ x: x + 3, y: y + 1.7 }),
      ...own.marks({ x: x + side, y: y + 1.7 }),
    ],
    above: 3,
  };
}

/** Something good to know. */
export function note(text: string | readonly string[], { width = TEXT_WIDTH, size = TEXT }: Within = {}): Block {
  const own = words(text, { size, colour: INK, width: width - 5 });
  return {
    height: own.height,
    marks: ({ x, y }) => [
      {
        kind: 'line',
        points: [
          { x: x + 1.2, y },
          { x: x + 1.2, y: y + own.height },
        ],
        stroke: { colour: FAINT, width: 0.8 },
      },
      ...own.marks({ x: x + 5, y }),
    ],
    above: 3,
  };
}

/** Blocks one below the other, without the blank above the first. */
export const heightOf = ([first, ...rest]: readonly Block[]): number =>
  rest.reduce((sum, { height, above = PARAGRAPH }) => sum + above + height, first?.height ?? 0);

/** Blocks that should stand on one page, where it holds them all. */
export function onOnePage(blocks: readonly Block[]): readonly Block[] {
  const [first, ...rest] = blocks;
  return first === undefined ? [] : [{ ...first, wants: heightOf(blocks) }, ...rest];
}

/** One block of several, that no page parts. It comes into the contents as its first. */
export function kept(blocks: readonly Block[]): Block {
  const tops: number[] = [];
  let height = 0;
  blocks.forEach((block, i) => {
    height += i === 0 ? 0 : (block.above ?? PARAGRAPH);
    tops.push(height);
    height += block.height;
  });
  const [first] = blocks;
  const last = blocks.at(-1);
  return {
    height,
    marks: ({ x, y }) => blocks.flatMap((block, i) => block.marks({ x, y: y + (tops[i] ?? 0) })),
    ...(first?.above === undefined ? {} : { above: first.above }),
    ...(first?.entry === undefined ? {} : { entry: first.entry }),
    ...(last?.withNext === undefined ? {} : { withNext: last.withNext }),
  };
}

export const ruleAcross = (
  { x, y }: { readonly x: number; readonly y: number },
  length: number,
  width: number,
): Mark => ({
  kind: 'line',
  points: [
    { x, y },
    { x: x + length, y },
  ],
  stroke: { colour: INK, width },
});
