import type { Block } from '../paper/blocks.js';
import { words } from '../paper/blocks.js';
import { figure } from '../paper/figure.js';
import {
  BOX,
  caution,
  heading,
  heightOf,
  INK,
  kept,
  note,
  numbered,
  onOnePage,
  paragraph,
  SMALL,
  subheading,
  TEXT,
  tickBox,
  tickList,
} from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';
import { wordsWidth } from '../paper/words-width.js';
import type { Chapter } from './chapter.js';
import { type BookStep, isNamedAlike, type StepPart } from './given.js';
import { AT_THE_CAMERA_THAT_STANDS, stepNote } from './standing-camera.js';

/** Each step with its drawing, what comes in, what to do and what to check; `room` is what a page holds. */
export const assembly = (steps: readonly BookStep[], room: number): Chapter => ({
  title: 'Putting it together',
  blocks: [
    paragraph([
      'Try every joint dry before you glue it. Glue thinly, wipe off what comes out, and make the checks while the glue is still wet: a box that sets out of square stays so.',
      'Before each step lay its parts ready and tick them. What has a number is cut or printed; what has none is bought. Mind the order of what you do: it is numbered.',
    ]),
    ...(steps.some(({ since }) => since !== null)
      ? [
          note(
            `Most of these steps are done already: “${AT_THE_CAMERA_THAT_STANDS}” names those to do, and each step says it below its drawing.`,
          ),
        ]
      : []),
    inColumns(
      steps.map(({ number, title }) => {
        const own = words(title, { size: TEXT, colour: INK, width: COLUMN - TITLE_LEFT });
        return {
          height: own.height,
          marks: ({ x, y }) => [
            tickBox({ x, y: y + 0.72 }),
            { kind: 'words', at: { x: x + TITLE_LEFT - 2, y: y + TEXT }, text: `${number}`, anchor: 'end', ...NUMBER },
            ...own.marks({ x: x + TITLE_LEFT, y }),
          ],
        };
      }),
    ),
    ...steps.flatMap((step) => onItsPage(step, room)),
  ],
});

/** A step begins a page. Where it runs over it by a little, smaller letters keep it on one. */
function onItsPage(step: BookStep, room: number): readonly Block[] {
  const usual = blocksOf(step, TEXT, room);
  const smaller = heightOf(usual) > room ? blocksOf(step, SMALL, room) : usual;
  const [first, ...rest] = onOnePage(heightOf(smaller) > room ? usual : smaller);
  return first === undefined ? [] : [{ ...first, beginsPage: true }, ...rest];
}

function blocksOf(
  { number, title, words: told, parts, borrowed, drawing, since }: BookStep,
  size: number,
  room: number,
): readonly Block[] {
  const cautions = told.flatMap(({ cautions: own = [] }) => own);
  const acts = told.flatMap(({ acts: own }) => own);
  const checks = told.flatMap(({ checks: own = [] }) => own);
  const list = partsList(parts);
  const shown = [heading(`Step ${number}. ${title}`), ...(drawing === null ? [] : [figure(drawing, { caption: '' })])];
  const listed = list === null ? [] : [list];
  // the drawing stands with its title, and where a page holds it too, with the list of what it shows
  const together = kept([...shown, ...listed]);
  return [
    ...(together.height <= room
      ? [{ ...together, above: 9, withNext: true } as const]
      : [{ ...kept(shown), above: 9 }, ...listed.map((one) => ({ ...one, withNext: true }) as const)]),
    ...(since === null ? [] : [note(stepNote(since), { size })]),
    ...(borrowed.length === 0
      ? []
      : [
          note(
            `Have at hand too, without glue: ${borrowed.map(({ part }) => `${part.id} (${part.name})`).join(', ')}.`,
            { size },
          ),
        ]),
    ...(cautions.length === 0 ? [] : [caution(cautions, { size })]),
    ...numbered(acts, { size }),
    // together, where they have to stand overleaf
    ...(checks.length === 0 ? [] : [kept([subheading('Check before you go on'), ...tickList(checks, { size })])]),
  ];
}

const COLUMNS = 2;
const GAP = 6;
const COLUMN = (TEXT_WIDTH - GAP * (COLUMNS - 1)) / COLUMNS;
/** Right of the box and the number of a step. */
const TITLE_LEFT = 14;
const NUMBER = { size: TEXT, colour: INK, bold: true } as const;

/** Boxes to tick as the parts are laid ready, side by side. */
function partsList(parts: readonly StepPart[]): Block | null {
  if (parts.length === 0) return null;
  const cells = parts.map(({ id, name, count }): Block => {
    const number = `${count} ×${id === null || isNamedAlike(id, name) ? '' : ` ${id}`}`;
    const heavy = words(number, { size: TEXT, colour: INK, width: COLUMN, bold: true });
    const left = BOX + 3 + wordsWidth(`${number} `, { size: TEXT, heavy: true });
    const text = words(name, { size: TEXT, colour: INK, width: COLUMN - left });
    return {
      height: text.height,
      marks: ({ x, y }) => [
        tickBox({ x, y: y + 0.72 }),
        ...heavy.marks({ x: x + BOX + 3, y }),
        ...text.marks({ x: x + left, y }),
      ],
    };
  });
  return inColumns(cells);
}

/** Side by side, the first column read down first. */
function inColumns(cells: readonly Block[]): Block {
  const rows = Math.ceil(cells.length / COLUMNS);
  const columns = Array.from({ length: COLUMNS }, (_, c) => cells.slice(c * rows, (c + 1) * rows));
  const heightOf = (column: readonly Block[]) => column.reduce((sum, { height }) => sum + height + 0.6, 0);
  return {
    height: Math.max(...columns.map(heightOf)),
    above: 3,
    marks: ({ x, y }) =>
      columns.flatMap((column, c) => {
        let top = y;
        return column.flatMap((cell) => {
          const own = cell.marks({ x: x + c * (COLUMN + GAP), y: top });
          top += cell.height + 0.6;
          return own;
        });
      }),
  };
}
