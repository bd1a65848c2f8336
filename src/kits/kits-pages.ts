import type { KitsDocument } from '../model/kits.js';
import type { Page } from '../model/page.js';
import type { Block } from '../paper/blocks.js';
import { flow } from '../paper/flow.js';
import { bullets, caution, chapterTitle, heading, note, onOnePage, paragraph, tickBox } from '../paper/prose.js';
import type { Paper } from '../paper/sheet-size.js';
import { table } from '../paper/table.js';
import type { Sheet } from '../sheets/sheet.js';
import { kg, money, plainNumber, tenth } from '../units/print.js';
import { aroundName, classPage, isSetOut } from './class-page.js';
import { kitsInWords } from './run-folder.js';
import { sheetRows } from './sheet-rows.js';

export interface KitPagesGiven {
  readonly run: KitsDocument;
  readonly sheets: readonly Sheet[];
  /** Whole minutes at the laser. */
  readonly minutesOf: (sheet: Sheet) => number;
  /** Cut parts that bear no engraved number. */
  readonly bare: readonly string[];
}

/** The papers of a run: a page for the class, what it costs and what to buy, the sheets in their order, and a list for each box. */
export function kitPages(given: KitPagesGiven, paper: Paper): readonly Page[] {
  const { run } = given;
  const blocks: readonly Block[] = [
    ...classPage(run),
    { ...chapterTitle('What it costs'), beginsPage: true },
    ...cost(run),
    chapterTitle('What to buy'),
    ...toBuy(run),
    chapterTitle('At the laser: which piece goes into which box'),
    ...atTheLaser(given),
    { ...chapterTitle('Packing lists'), beginsPage: true },
    paragraph([
      'One list for each box. Kits are alike, and so are the pieces of one part: any of them does. The lists follow the order of the sheets on the pages before, so that the first boxes are full early.',
      'Tick a line when all of it lies in the box.',
    ]),
    ...run.kits.flatMap((_, n) => onOnePage(packingList(n, given))),
  ];
  const waived = run.despite.length === 0 ? '' : `, built despite ${run.despite.join(', ')}`;
  return flow(() => blocks, {
    paper,
    foot: `${run.name}, revision ${run.revision}, ${kitsInWords(run.copies)}${waived}`,
  });
}

/** To be ticked. */
const BOX: Block = { height: 3.6, marks: ({ x, y }) => [tickBox({ x, y: y + 0.5 })] };

function cost({
  cost: { currency, lines, total, perKit, notPriced, notUsed },
  copies,
}: KitsDocument): readonly Block[] {
  if (currency === null)
    return [paragraph('No price file was given, so nothing is priced here. What is needed stands on the next lists.')];
  return [
    paragraph(
      copies === 1
        ? `${money(total, currency)} for one kit.`
        : `${money(total, currency)} for all ${copies} kits, ${money(perKit, currency)} for one.`,
      { bold: true },
    ),
    ...table(
      [
        { title: 'What' },
        { title: 'Quantity', align: 'right' },
        { title: 'of', width: 24 },
        { title: 'Price', align: 'right' },
        { title: `Amount, ${currency}`, align: 'right' },
      ],
      [
        ...lines.map(({ what, quantity, unit, price, amount }) => [
          what,
          plainNumber(quantity),
          unit,
          unitPrice(price),
          money(amount),
        ]),
        ['Together', '', '', '', money(total)],
      ],
    ),
    paragraph(
      'Amounts are rounded to hundredths line by line. Bought things are in whole packs, spares among them. Time at the laser is what cutting takes; laying in sheets and focusing come on top. Prints are reckoned as solid.',
    ),
    ...(notPriced.length === 0
      ? [paragraph('Everything that is needed has a price.')]
      : [
          heading('Not priced'),
          paragraph('The price file says nothing of these; nothing is guessed, and they are not in the sum.'),
          ...bullets(notPriced),
        ]),
    ...(notUsed.length === 0
      ? []
      : [
          heading('Priced, and not needed'),
          paragraph('Nothing of this run goes by these entries. Look whether one of them is written otherwise here.'),
          ...bullets(notUsed),
        ]),
  ];
}

/** A pin may cost less than a hundredth. */
const unitPrice = (price: number): string =>
  Math.abs(price * 100 - Math.round(price * 100)) < 1e-9 ? money(price) : plainNumber(price, 6);

function toBuy({ sheets, hardware, around, prints, copies }: KitsDocument): readonly Block[] {
  return [
    heading('Sheets'),
    ...table(
      [
        { title: '', width: 3 },
        { title: 'To buy', align: 'right' },
        { title: 'Sheets' },
        { title: 'At hand', align: 'right' },
      ],
      sheets.map(({ material, width, height, atHand, buy }) => [
        BOX,
        `${buy}`,
        `${material}, ${plainNumber(tenth(width))} × ${plainNumber(tenth(height))} mm`,
        atHand === 0 ? '' : `${atHand}`,
      ]),
    ),
    heading('Hardware'),
    paragraph(
      `For ${kitsInWords(copies)}, and spares: so many per cent of each line as the price file says (10 % where it says nothing), rounded up to whole pieces.`,
    ),
    ...table(
      [
        { title: '', width: 3 },
        { title: 'To buy', align: 'right' },
        { title: 'Spares', align: 'right' },
        { title: 'A kit', align: 'right' },
        { title: 'What', width: 32 },
        { title: 'Size, mm', width: 40 },
        { title: 'For' },
      ],
      hardware
        .filter((line) => !isSetOut(line))
        .map(({ total, spares, each, name, size, for: use }) => [
          BOX,
          `${total}`,
          `${spares}`,
          `${each}`,
          name,
          size,
          use,
        ]),
    ),
    ...setOut(hardware.filter(isSetOut)),
    heading('What the cameras are built round'),
    ...table(
      [{ title: '', width: 3 }, { title: 'Wanted', align: 'right' }, { title: 'What' }],
      around.map((one) => [BOX, `${one.wanted}`, aroundName(one)]),
    ),
    ...(prints.length === 0
      ? []
      : [
          heading('To print'),
          ...table(
            [
              { title: '', width: 3 },
              { title: 'Pieces', align: 'right' },
              { title: 'What' },
              { title: 'File' },
              { title: 'Material' },
              { title: 'Together' },
            ],
            prints.map(({ wanted, name, file, material, mass }) => [
              BOX,
              `${wanted}`,
              name,
              `${file}.stl`,
              material,
              kg(Math.round(1000 * wanted * mass) / 1000),
            ]),
          ),
        ]),
  ];
}

/** Nobody buys a bottle for each kit. */
const setOut = (hardware: KitsDocument['hardware']): readonly Block[] =>
  hardware.length === 0
    ? []
    : [
        heading('Set out for all'),
        paragraph(
          'Bought once for the class: from one bottle or pack that holds as many lots. A lot is what one camera takes at most.',
        ),
        ...table(
          [
            { title: '', width: 3 },
            { title: 'Lots', align: 'right' },
            { title: 'What', width: 32 },
            { title: 'A lot', width: 40 },
            { title: 'For' },
          ],
          hardware.map(({ total, name, size, for: use }) => [BOX, `${total}`, name, size, use]),
        ),
      ];

function atTheLaser({ run, sheets, minutesOf, bare }: KitPagesGiven): readonly Block[] {
  return [
    paragraph(
      `${sheets.length} sheets, ${plainNumber(run.laser.metres, 1)} m of cuts, about ${run.laser.minutes} minutes of cutting. As a sheet comes off the bed its pieces go into the boxes that stand beside it here; “3: F1, 2 × R4” is one piece of F1 and two of R4 for kit 3.`,
    ),
    caution([
      'Never leave the laser alone while it cuts: plywood burns. Keep an extinguisher at hand and the extraction on. Cut only wood that you know.',
      'The instructions of your machine and the rules of your place come first.',
    ]),
    ...(bare.length === 0
      ? []
      : [note(`No number is engraved on ${bare.join(', ')}: pencil it on as you lift the piece off.`)]),
    ...table(
      [
        { title: '', width: 3 },
        { title: 'Sheet', width: 34 },
        { title: 'min', align: 'right' },
        { title: 'Into the boxes' },
        { title: 'Full then', width: 18 },
      ],
      sheetRows(run, sheets).map(({ sheet, boxes, full }) => [
        BOX,
        sheet.name,
        `${minutesOf(sheet)}`,
        boxes.map(({ kit, parts }) => `${kit}: ${parts.map(pieces).join(', ')}`).join('; '),
        full.length === 0 ? '' : `kit ${full.join(', ')}`,
      ]),
    ),
  ];
}

const pieces = ({ id, count }: { readonly id: string; readonly count: number }): string =>
  count === 1 ? id : `${count} × ${id}`;

/** A kit in its box: cut parts by the sheet that they come from, then what is printed and bought. */
function packingList(n: number, { run, sheets }: KitPagesGiven): readonly Block[] {
  const kit = run.kits[n];
  if (kit === undefined) throw new Error(`there is no kit ${n + 1}`);
  const rows = sheetRows(run, sheets).flatMap(({ sheet, boxes }) =>
    boxes
      .filter((box) => box.kit === kit.kit)
      .map(({ parts }) => [
        BOX,
        sheet.name,
        `${parts.reduce((sum, { count }) => sum + count, 0)}`,
        parts.map(pieces).join(', '),
      ]),
  );
  const cut = kit.parts.reduce((sum, part) => sum + part.pieces.length, 0);
  return [
    { ...heading(`Kit ${kit.kit} of ${run.copies}`), above: 8 },
    paragraph(`${cut} cut pieces. Name: ______________________________`),
    ...table(
      [{ title: '', width: 3 }, { title: 'From', width: 34 }, { title: 'Pieces', align: 'right' }, { title: 'What' }],
      [
        ...rows,
        ...(run.prints.length === 0
          ? []
          : [
              [
                BOX,
                'printer',
                `${count(run.prints)}`,
                run.prints.map(({ each, name }) => `${each} × ${name}`).join(', '),
              ],
            ]),
        [BOX, 'bag of hardware', '', 'as on the page for the class'],
      ],
    ),
  ];
}

const count = (things: readonly { readonly each: number }[]): number => things.reduce((sum, { each }) => sum + each, 0);
