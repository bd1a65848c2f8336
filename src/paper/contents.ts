import type { Mark } from '../model/page.js';
import { type Block, words } from './blocks.js';
import type { Listed } from './flow.js';
import { FAINT, INK, SMALL } from './prose.js';
import { TEXT_WIDTH } from './sheet-size.js';
import { wordsWidth } from './words-width.js';

const COLUMNS = 2;
const BETWEEN = 8;
const WIDTH = (TEXT_WIDTH - BETWEEN * (COLUMNS - 1)) / COLUMNS;
const INDENT = 4;
/** Kept for the number of a page. */
const NUMBER = 8;

/** A line for each entry, its page at the right: two columns, read down the left one first; a page of them after another where one does not hold all. */
export function contentsList(listed: readonly Listed[], room: number): readonly Block[] {
  const whole = inTwoColumns(listed);
  if (whole.height <= room) return [whole];
  const fitting = listed.map((_, i) => i).filter((i) => i > 0 && inTwoColumns(listed.slice(0, i)).height <= room);
  // rather before a chapter than within one
  const most = fitting.findLast((i) => listed[i]?.level === 0) ?? fitting.at(-1);
  if (most === undefined) return [whole];
  return [inTwoColumns(listed.slice(0, most)), ...contentsList(listed.slice(most), room)];
}

function inTwoColumns(listed: readonly Listed[]): Block {
  const lines = listed.map(line);
  const heightOf = (blocks: readonly Block[]) => blocks.reduce((sum, { height, above = 0 }) => sum + above + height, 0);
  // as far down on the left as is needed for the right one to be no longer
  const first = lines.findIndex((_, i) => heightOf(lines.slice(0, i)) >= heightOf(lines.slice(i)));
  // no chapter stands alone at the foot
  const split = listed[first - 1]?.level === 0 ? first - 1 : first;
  const columns = first < 0 ? [lines] : [lines.slice(0, split), lines.slice(split)];
  return {
    height: Math.max(...columns.map(heightOf)),
    marks: ({ x, y }) =>
      columns.flatMap((column, c) => {
        let top = y;
        return column.flatMap(({ height, above = 0, marks }, i) => {
          top += i === 0 ? 0 : above;
          const own = marks({ x: x + c * (WIDTH + BETWEEN), y: top });
          top += height;
          return own;
        });
      }),
  };
}

function line({ title, level, page }: Listed): Block {
  const chapter = level === 0;
  const left = level * INDENT;
  const own = words(title, {
    size: SMALL,
    colour: INK,
    ...(chapter ? ({ bold: true } as const) : {}),
    width: WIDTH - left - NUMBER,
  });
  return {
    height: own.height,
    above: chapter ? 2 : 0.3,
    marks: ({ x, y }): readonly Mark[] => {
      const texts = own.marks({ x: x + left, y });
      const last = texts.at(-1);
      if (last?.kind !== 'words') return texts;
      const reach = last.at.x + wordsWidth(last.text, { size: SMALL, heavy: chapter }) + 2;
      const end = x + WIDTH - NUMBER + 2;
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
          at: { x: x + WIDTH, y: last.at.y },
          text: `${page}`,
          size: SMALL,
          anchor: 'end',
          colour: INK,
        },
      ];
    },
  };
}
