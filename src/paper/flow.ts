import type { Mark, Page } from '../model/page.js';
import type { Block, Entry } from './blocks.js';
import { FAINT, PARAGRAPH, ruleAcross, SMALL } from './prose.js';
import { BOTTOM, type Paper, TEXT_WIDTH, TOP } from './sheet-size.js';

export interface FlowGiven {
  readonly paper: Paper;
  /** At the left of each foot; the number of the page stands at its right. */
  readonly foot: string;
}

/** A line of the contents with the number of its page. */
export interface Listed extends Entry {
  readonly page: number;
}

interface Set {
  readonly block: Block;
  readonly y: number;
}

/** Sums of heights that fill a page exactly must not open another, mm. */
const ROUNDING = 1e-6;

/**
 * Blocks over pages, one below the other: none is cut by the end of a page, and what stands with the next is on its page.
 *
 * @param blocksFor the document, given its own contents; the numbers of their pages are 0 at first, which must change no
 *   height
 */
export function flow(
  blocksFor: (contents: readonly Listed[]) => readonly Block[],
  { paper, foot }: FlowGiven,
): readonly Page[] {
  const unnumbered = blocksFor([]).flatMap(({ entry }) => (entry ? [{ ...entry, page: 0 }] : []));
  const listed = listedIn(setOnPages(blocksFor(unnumbered), paper));
  const pages = setOnPages(blocksFor(listed), paper);
  if (listedIn(pages).some(({ page }, i) => page !== listed[i]?.page))
    throw new Error('the numbers of its pages change how long a document is');
  const left = (paper.width - TEXT_WIDTH) / 2;
  return pages.map((set, i) => {
    const entries = set.flatMap(({ block }) => block.entry ?? []);
    return {
      title: entries[0]?.title ?? `page ${i + 1}`,
      description: entries.map(({ title }) => title).join('; '),
      width: paper.width,
      height: paper.height,
      marks: [
        ...set.flatMap(({ block, y }) => block.marks({ x: left, y })),
        ...footOf(foot, `page ${i + 1} of ${pages.length}`, { left, base: paper.height - BOTTOM + 8.5 }),
      ],
      ...(entries.length > 0 ? { bookmarks: entries } : {}),
    };
  });
}

const listedIn = (pages: readonly (readonly Set[])[]): readonly Listed[] =>
  pages.flatMap((set, i) => set.flatMap(({ block: { entry } }) => (entry ? [{ ...entry, page: i + 1 }] : [])));

function setOnPages(blocks: readonly Block[], { height }: Paper): readonly (readonly Set[])[] {
  const bottom = height - BOTTOM;
  const pages: Set[][] = [];
  let y = 0;
  const put = (block: Block) => {
    pages.at(-1)?.push({ block, y });
    y += block.height;
  };
  const begin = ({ head }: Block) => {
    pages.push([]);
    y = TOP;
    // the entry of a head is in the contents already, where it stands first
    if (head !== undefined) put({ height: head.height, marks: head.marks });
  };
  blocks.forEach((block, i) => {
    if (block.height > bottom - TOP + ROUNDING)
      throw new Error(`a block of ${block.height.toFixed(1)} mm is higher than a page`);
    const above = block.above ?? PARAGRAPH;
    const empty = pages.length === 0 || y === TOP;
    const tied = heightTied(blocks, i);
    const fits = y + above + tied <= bottom + ROUNDING;
    const wanting = y + above + Math.min(block.wants ?? 0, bottom - TOP) > bottom + ROUNDING;
    const alone = tied > bottom - TOP && y + above + block.height <= bottom + ROUNDING;
    if (pages.length === 0 || (block.beginsPage && !empty) || (!empty && (wanting || (!fits && !alone)))) begin(block);
    else if (!empty) y += above;
    put(block);
  });
  return pages;
}

/** Of a block and all that must stand on its page. */
function heightTied(blocks: readonly Block[], from: number): number {
  let height = 0;
  for (let i = from; i < blocks.length; i++) {
    const block = blocks[i];
    if (block === undefined) break;
    height += block.height + (i === from ? 0 : (block.above ?? PARAGRAPH));
    if (!block.withNext) break;
  }
  return height;
}

function footOf(
  foot: string,
  number: string,
  { left, base }: { readonly left: number; readonly base: number },
): readonly Mark[] {
  const letters = { kind: 'words', size: SMALL, colour: FAINT } as const;
  return [
    ruleAcross({ x: left, y: base - 4.6 }, TEXT_WIDTH, 0.15),
    { ...letters, at: { x: left, y: base }, text: foot, anchor: 'start' },
    { ...letters, at: { x: left + TEXT_WIDTH, y: base }, text: number, anchor: 'end' },
  ];
}
