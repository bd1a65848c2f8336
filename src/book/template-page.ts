import type { Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { type Block, words } from '../paper/blocks.js';
import { INK, SMALL } from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';

/** Something that is printed at true size, or a drawing beside it. mm. */
export interface Template {
  /** Ids of the parts that it is for; none where it only shows a place. */
  readonly parts: readonly string[];
  readonly width: number;
  readonly height: number;
  /** @param at its upper left corner */
  readonly marks: (at: Point) => readonly Mark[];
}

/** A page of templates is as high as both papers allow, and no printer fails to print that far out. */
const HEIGHT = 240;
/** Printers leave 10 mm at the edge; the text of the narrower paper begins 18 mm from it. */
const BESIDE = 8;
const BAR = 100;
const BAR_TOP = 9;
const HEAD = 20;
const BETWEEN = 8;

/** What a template may take. */
export const TEMPLATE_ROOM = { width: TEXT_WIDTH + 2 * BESIDE - 2, height: HEIGHT - HEAD } as const;

const LINE = { colour: INK, width: 0.2 } as const;

/** A bar by which the print is measured, with a tick every centimetre, and what to do with it. */
function scaleBar({ x, y }: Point): readonly Mark[] {
  const tick = (along: number, high: number): readonly Point[] => [
    { x: x + along, y: y - high },
    { x: x + along, y: y + high },
  ];
  const ticks = Array.from({ length: BAR / 10 + 1 }, (_, i) =>
    tick(10 * i, i % 10 === 0 ? 2.5 : i % 5 === 0 ? 1.6 : 1),
  );
  return [
    {
      kind: 'strokes',
      paths: [
        [
          { x, y },
          { x: x + BAR, y },
        ],
        ...ticks,
      ],
      stroke: LINE,
    },
    ...words(['Print at 100 %, measure the bar:', `it must be ${BAR} mm long.`], {
      size: SMALL,
      colour: INK,
      width: TEXT_WIDTH - BAR - 6,
      bold: true,
    }).marks({ x: x + BAR + 6, y: y - 4.4 }),
  ];
}

/** Templates from the left to the right and from the top down, over as many pages as they take; each has its bar. */
export function templatePages(title: string, templates: readonly Template[]): readonly Block[] {
  const pages: { readonly template: Template; readonly at: Point }[][] = [];
  let [x, y, row] = [0, 0, 0];
  for (const template of templates) {
    const { width, height } = template;
    if (pages.length > 0 && x > 0 && x + width > TEXT_WIDTH) [x, y, row] = [0, y + row + BETWEEN, 0];
    if (pages.length === 0 || y + height > TEMPLATE_ROOM.height) {
      pages.push([]);
      [x, y, row] = [0, 0, 0];
    }
    // what is wider than the text stands out on both sides alike
    pages.at(-1)?.push({ template, at: { x: width > TEXT_WIDTH ? (TEXT_WIDTH - width) / 2 : x, y } });
    x += width + BETWEEN;
    row = Math.max(row, height);
  }
  return pages.map((own, i) => ({
    height: HEAD + Math.max(...own.map(({ template, at }) => at.y + template.height)),
    above: BETWEEN,
    ...(i === 0 ? { entry: { title, level: 1 } } : {}),
    marks: ({ x: left, y: top }) => [
      ...words(i === 0 ? title : `${title}, continued`, {
        size: 4.6,
        colour: INK,
        width: TEXT_WIDTH,
        bold: true,
      }).marks({
        x: left,
        y: top,
      }),
      ...scaleBar({ x: left, y: top + BAR_TOP + 2.5 }),
      ...own.flatMap(({ template, at }) => template.marks({ x: left + at.x, y: top + HEAD + at.y })),
    ],
  }));
}
