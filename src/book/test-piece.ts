import { flatten, type Point } from '../geometry/path.js';
import type { Drawing } from '../model/page.js';
import type { Block } from '../paper/blocks.js';
import { figure } from '../paper/figure.js';
import { caution, heading, INK, kept, note, numbered, paragraph } from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';
import { table } from '../paper/table.js';
import type { Sheet } from '../sheets/sheet.js';
import { mm, plainNumber } from '../units/print.js';
import type { Chapter } from './chapter.js';

type Fit = 'press' | 'glueSlip' | 'slide' | 'dropIn';

export interface TestPieceGiven {
  readonly material: string;
  /** What the sheets of this book were cut for. */
  readonly kerf: number;
  readonly thickness: number;
  readonly readings: readonly number[];
  readonly fits: Readonly<Record<Fit, number>>;
  /** Strips of a comb, what they measure as drawn, and how far the kerfs of both combs may differ. */
  readonly strips: number;
  readonly combSum: number;
  readonly combsAgree: number;
  /** A kerf that is so far from the one drawn for misleads the hand that feels the notches. */
  readonly feltKerf: number;
  readonly sheet: Sheet;
}

/** How each fit feels in the hand, in the order of the ladder. */
const FITS: readonly { readonly key: Fit; readonly name: string; readonly feels: string; readonly use: string }[] = [
  { key: 'press', name: 'press', feels: 'Is tapped in, and stays put.', use: 'What must hold without glue.' },
  {
    key: 'glueSlip',
    name: 'glue slip',
    feels: 'Goes in by hand, and has no play.',
    use: 'Every finger, tab and slot of this camera.',
  },
  { key: 'slide', name: 'slide', feels: 'Runs freely, and does not rattle.', use: 'What moves.' },
  { key: 'dropIn', name: 'drop-in', feels: 'Falls in by itself.', use: 'What is lifted out again.' },
];

/** Sums of a comb for kerfs on both sides of the one that was drawn for. */
const KERFS_ASIDE = [-0.06, -0.04, -0.02, 0, 0.02, 0.04, 0.06];
const LEAST_KERF = 0.03;

/** What a comb measures with a kerf, and the other way round: every strip is short of its line by one cut. */
export const combReads = ({ combSum, strips }: Pick<TestPieceGiven, 'combSum' | 'strips'>, kerf: number): number =>
  combSum - strips * kerf;

export const testPiece = (given: TestPieceGiven): Chapter => ({
  title: 'The test piece first',
  blocks: [...madeFor(given), ...cutIt(given), ...measureIt(given), ...putBack(given)],
});

function madeFor({ kerf, thickness, readings, material }: TestPieceGiven): readonly Block[] {
  return [
    paragraph([
      'A laser takes away a little wood along each line, and a sheet is never as thick as it says. Every joint of this camera hangs on these two figures. So before the first sheet of the camera is cut, cut the test piece, measure it, and give its readings back.',
    ]),
    ...table(
      [{ title: 'This book was made for' }, { title: 'Figure', align: 'right' }],
      [
        ['width of the cut, called kerf', mm(kerf)],
        [
          `thickness of the sheet, ${material}`,
          readings.length > 1 ? `${readings.map((one) => plainNumber(one)).join(', ')} mm` : mm(thickness),
        ],
        ...(readings.length > 1 ? [['the thickest reading, by which the slots are cut', mm(thickness)]] : []),
      ],
      { width: 120 },
    ),
    note(
      'Did somebody else cut your parts? Then the test piece was their work. Measure one part with the caliper: if it is as thick as the table says, go on to the assembly. If not, ask them before you glue anything.',
    ),
  ];
}

function cutIt({ sheet, kerf }: TestPieceGiven): readonly Block[] {
  const size = `${plainNumber(sheet.width, 0)} × ${plainNumber(sheet.height, 0)} mm`;
  return [
    heading('Cut it'),
    ...numbered([
      'Let the computer write it: tailboard coupon <design file>. It makes a drawing for the laser and a form, readings.yaml.',
      `Take a remnant of the very sheet of which the camera will be cut. It must be ${size} at least.`,
      'Lay it on a flat board that may be scorched. Its strips are narrow enough to fall between the slats of the bed.',
      `Cut it with the settings that the camera will be cut with. It is drawn for a kerf of ${mm(kerf)}.`,
    ]),
    caution(
      'Never leave the laser alone while it runs. Keep the extraction on and an extinguisher at hand. The machine’s own instructions and local rules come first.',
    ),
    figure(pieceDrawing(sheet), {
      caption: 'The test piece as it is cut, smaller than it is. What to do is engraved on it, too.',
    }),
  ];
}

function measureIt(given: TestPieceGiven): readonly Block[] {
  const { kerf, combSum, strips, combsAgree, thickness, fits } = given;
  const kerfs = KERFS_ASIDE.map((aside) => kerf + aside).filter((one) => one >= LEAST_KERF);
  return [
    heading('Measure it'),
    ...numbered([
      'Brush the soot off, and lay the strips flat.',
      `Push the ${strips} strips X together. Measure across all of them at once with the caliper. They were drawn ${mm(combSum)}; with a kerf of ${mm(kerf)} they measure ${mm(combReads(given, kerf))}.`,
      `Do the same with the ${strips} strips Y. If the two sums differ by more than ${mm(strips * combsAgree)}, one of them was misread.`,
      'Measure the thickness of the sheet at its four corners and in the middle. Write all five down.',
      'Push the edge of the sheet into the slots along the bottom, from the widest down. Note the narrowest that it enters without force.',
      'Push the tongue into the notches along the top, the loosest first. Note which notch is which fit.',
    ]),
    kept([
      paragraph(`Kerf = (${plainNumber(combSum)} − what you measure) / ${strips}:`),
      ...table(
        [
          { title: 'Across the strips', width: 40, align: 'right' },
          ...kerfs.map(() => ({ title: '', align: 'right' as const, width: 13 })),
        ],
        [
          ['measured, mm', ...kerfs.map((one) => plainNumber(combReads(given, one), 1))],
          ['kerf, mm', ...kerfs.map((one) => plainNumber(one))],
        ],
        { width: 40 + 17 * kerfs.length },
      ),
    ]),
    heading('What the four fits mean'),
    paragraph(
      'A fit is the width of the slot less the width of the tongue, both as they come off the laser. Below zero the tongue is the wider one.',
    ),
    ...table(
      [
        { title: 'Fit' },
        { title: 'In this design, mm', align: 'right' },
        { title: 'How it feels' },
        { title: 'What it is for' },
      ],
      FITS.map(({ key, name, feels, use }) => [name, minus(plainNumber(fits[key])), feels, use]),
    ),
    heading('Your readings'),
    ...table(
      [{ title: 'What' }, { title: 'As drawn', align: 'right' }, { title: 'You read', width: 60 }],
      [
        ['Comb X, all strips together', mm(combReads(given, kerf)), ''],
        ['Comb Y, all strips together', mm(combReads(given, kerf)), ''],
        ['Thickness, five places', mm(thickness), ''],
        ['Narrowest slot that the edge enters', mm(thickness), ''],
        ...FITS.map(({ key, name }) => [`Notch that is a ${name}`, minus(mm(fits[key])), '']),
      ],
      { toFillIn: true },
    ),
  ];
}

function putBack({ kerf, thickness, feltKerf }: TestPieceGiven): readonly Block[] {
  return [
    heading('Put the readings back'),
    ...numbered([
      'Write them into readings.yaml, behind the colons. The two combs must be there; what you did not read may stay empty.',
      'Give them back: tailboard coupon <design file> --readings readings.yaml. It writes the kerf, the thickness and the fits into the design file, and touches nothing else in it.',
      'If it refuses, it says which reading cannot be true, and changes nothing. Measure that one again.',
      'Build again: tailboard build <design file>. The sheets and this book come out new.',
    ]),
    paragraph(
      `What changes: with another kerf than ${mm(kerf)} the lines of the laser move, and the finished parts stay as they are. With another thickness than ${mm(thickness)} the parts themselves change: slots, boxes, spacers. The revision on the cover then changes, too. Never mix parts of two revisions.`,
    ),
    note(
      `If the kerf came out more than ${mm(feltKerf)} off, the notches felt looser or tighter than they are marked. The computer allows for it. Cut the piece once more if you want to feel the fits as they are marked.`,
    ),
  ];
}

const minus = (text: string): string => text.replace(/^-/, '−');

/** The cut lines dark, what is engraved paler. */
function pieceDrawing(sheet: Sheet): Drawing {
  const scale = (TEXT_WIDTH - 2) / sheet.width;
  const place = ({ x, y }: Point): Point => ({ x: rounded(x * scale), y: rounded((sheet.height - y) * scale) });
  const drawn = (engraved: boolean) =>
    sheet.operations
      .filter(({ layer }) => (layer === 'engrave') === engraved)
      .flatMap(({ paths }) =>
        paths.map(({ path: { vertices, closed } }) => {
          const points = flatten(vertices, 0.05, closed).map(place);
          return closed ? [...points, points[0] as Point] : points;
        }),
      );
  const corners = [
    { x: 0, y: 0 },
    { x: sheet.width, y: 0 },
    { x: sheet.width, y: sheet.height },
    { x: 0, y: sheet.height },
  ];
  return {
    name: 'test-piece',
    title: 'The test piece',
    description: 'Two combs of strips, two tongues, and a plate with notches, slots and holes.',
    scale: null,
    width: sheet.width * scale,
    height: sheet.height * scale,
    marks: [
      { kind: 'line', points: corners.map(place), closed: true, stroke: { colour: '#999999', width: 0.18 } },
      { kind: 'strokes', paths: drawn(true), stroke: { colour: '#555555', width: 0.18 } },
      { kind: 'strokes', paths: drawn(false), stroke: { colour: INK, width: 0.3 } },
    ],
  };
}

const rounded = (value: number): number => Math.round(value * 100) / 100 || 0;
