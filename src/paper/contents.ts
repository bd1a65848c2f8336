import { type Block, words } from './blocks.js';
import type { Listed } from './flow.js';
import { FAINT, INK, TEXT } from './prose.js';
import { TEXT_WIDTH } from './sheet-size.js';
import { wordsWidth } from './words-width.js';

const INDENT = 7;
/** Kept for the number of a page. */
const NUMBER = 12;

/** A line for each entry, its page at the right. */
export const contentsList = (listed: readonly Listed[]): readonly Block[] => listed.map(line);

function line({ title, level, page }: Listed): Block {
  const chapter = level === 0;
  const left = level * INDENT;
  const style = { size: TEXT, colour: INK, ...(chapter ? ({ bold: true } as const) : {}) };
  const own = words(title, { ...style, width: TEXT_WIDTH - left - NUMBER });
  return {
    height: own.height,
    above: chapter ? 2.4 : 0.4,
    ...(chapter ? { withNext: true } : {}),
    marks: ({ x, y }) => {
      const texts = own.marks({ x: x + left, y });
      const last = texts.at(-1);
      if (last?.kind !== 'words') return texts;
      const reach = last.at.x + wordsWidth(last.text, { size: TEXT, heavy: chapter }) + 2;
      const end = x + TEXT_WIDTH - NUMBER + 2;
      return [
        ...texts,
        ...(end - reach < 4
          ? []
          : [
              {
                kind: 'line',
                points: [
                  { x: reach, y: last.at.y - 0.4 },
                  { x: end, y: last.at.y - 0.4 },
                ],
                stroke: { colour: FAINT, width: 0.2, dash: [0.4, 1.2] },
              } as const,
            ]),
        {
          kind: 'words',
          at: { x: x + TEXT_WIDTH, y: last.at.y },
          text: `${page}`,
          size: TEXT,
          anchor: 'end',
          colour: INK,
        },
      ];
    },
  };
}
