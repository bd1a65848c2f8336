import type { Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { wrapWords } from './words-width.js';

/**
 * Something on a page of which the height is known before its place. mm.
 *
 * What else is said of it counts only where a document flows over pages (flow.ts).
 */
export interface Block {
  readonly height: number;
  /** @param at its upper left corner */
  readonly marks: (at: Point) => readonly Mark[];
  /** Blank before it where it does not begin a page; that of a paragraph where left out. */
  readonly above?: number;
  /** Stands on the same page as the block after it, as a heading does. */
  readonly withNext?: true;
  readonly beginsPage?: true;
  /** Height of all that should stand on its page: it begins one where less is left, mm. */
  readonly wants?: number;
  /** Drawn once more over it where it begins a page: the head of its table. */
  readonly head?: Block;
  /** How the contents and the bookmarks call it. */
  readonly entry?: Entry;
}

/** A line of the contents; `level` 0 is a chapter, 1 a part of one. */
export interface Entry {
  readonly title: string;
  readonly level: number;
}

export interface Style {
  readonly size: number;
  readonly colour: string;
  readonly width: number;
  readonly bold?: true;
}

/** From base line to base line, of the size. */
const LEADING = 1.25;

/** One paragraph or several, each beginning on a line of its own. */
export function words(text: string | readonly string[], { size, colour, width, bold }: Style): Block {
  const paragraphs = typeof text === 'string' ? [text] : text;
  const lines = paragraphs.flatMap((each) => wrapWords(each, width, { size, heavy: bold === true }));
  return {
    height: lines.length * LEADING * size,
    marks: ({ x, y }) =>
      lines.map((line, i) => ({
        kind: 'words',
        at: { x, y: y + size + i * LEADING * size },
        text: line,
        size,
        anchor: 'start',
        colour,
        ...(bold ? { bold } : {}),
      })),
  };
}

/** Blocks one below the other. */
export function placed(
  blocks: readonly Block[],
  { left, top, gap }: { readonly left: number; readonly top: number; readonly gap: number },
): readonly Mark[] {
  let y = top;
  return blocks.flatMap(({ height, marks }) => {
    const own = marks({ x: left, y });
    y += height === 0 ? 0 : height + gap;
    return own;
  });
}
