import { boundsOf } from '../geometry/path.js';
import { comesWithLens } from '../model/comes-with-lens.js';
import type { FlatPart, PrintedPart } from '../model/part.js';
import type { Block } from '../paper/blocks.js';
import { heading, paragraph, tickBox } from '../paper/prose.js';
import { type Cell, table } from '../paper/table.js';
import type { Sheet } from '../sheets/sheet.js';
import { plainNumber, tenth } from '../units/print.js';
import type { Chapter } from './chapter.js';
import type { BookGiven, Counted } from './given.js';
import { AT_THE_CAMERA_THAT_STANDS } from './standing-camera.js';
import { thumbnail } from './thumbnail.js';

/** Everything that must be at hand before the first step, in lists to tick. */
export function whatYouNeed(given: BookGiven): Chapter {
  const { parts, sheets, bought, since } = given;
  const made = (id: string) => since === null || since.recut.some(([again]) => again === id);
  const flat = parts.flatMap(({ part, count }) => (part.kind === 'flat' ? [{ part, count }] : []));
  // what is used away from the camera stands among what is not cut, with its file
  const printed = parts.flatMap(({ part, count }) =>
    part.kind === 'printed' && part.usedOn === undefined && made(part.id) ? [{ part, count }] : [],
  );
  return {
    title: 'What you need',
    blocks: [
      paragraph([
        'Lay everything out and tick it before you begin. Nothing is bought twice: a thing that several steps use is listed once, with the count for all of them.',
      ]),
      ...(since !== null && sheets.length === 0 ? [] : sheetsHeading(sheets)),
      ...sheets.flatMap((sheet) => cutFrom(sheet, flat)),
      ...printedParts(printed),
      heading('Bought parts'),
      ...(since === null
        ? []
        : [
            paragraph(
              `This is the list of the whole camera. What of it the one that stands does not have is told in the chapter “${AT_THE_CAMERA_THAT_STANDS}”.`,
            ),
          ]),
      ...table(
        [
          { title: '', width: 3 },
          { title: 'Pieces', align: 'right' },
          { title: 'What' },
          { title: 'Size, mm' },
          { title: 'For' },
        ],
        bought.map(({ name, size, count, for: use, toChooseFrom }) => [
          BOX,
          `${count}`,
          toChooseFrom ? `${name}, to choose from` : name,
          size,
          use,
        ]),
      ),
      ...boughtByDesign(parts, given),
      heading('Tools and what is used up'),
      ...table(
        [{ title: '', width: 3 }, { title: 'At the bench' }, { title: 'For' }],
        toolsOf(given).map(({ what, use }) => [BOX, what, use]),
      ),
      ...table(
        [{ title: '', width: 3 }, { title: 'When it stands' }, { title: 'For' }],
        AFTER.map(({ what, use }) => [BOX, what, use]),
      ),
    ],
  };
}

/** To be ticked. */
const BOX: Block = { height: 3.6, marks: ({ x, y }) => [tickBox({ x, y: y + 0.5 })] };

function sheetsHeading(sheets: readonly Sheet[]): readonly Block[] {
  const kinds = [...new Set(sheets.map(({ material }) => material))].map((material) => {
    const own = sheets.filter((sheet) => sheet.material === material);
    const sizes = [...new Set(own.map(({ width, height }) => `${plainNumber(width)} × ${plainNumber(height)}`))];
    const [{ thickness } = { thickness: 0 }] = own;
    const count = own.length === 1 ? '1 sheet' : `${own.length} sheets`;
    return `${count} of ${material}, ${plainNumber(thickness)} thick, ${sizes.join(' and ')} mm`;
  });
  return [
    heading('Cut parts, by sheet'),
    paragraph([
      `${kinds.join('; ')}. Where each part lies on its sheet is shown in the chapter on the cut sheets.`,
      'The pictures show the outline only; each has a size of its own. Sizes are those of the finished part.',
    ]),
  ];
}

type CountedFlat = { readonly part: FlatPart; readonly count: number };

function cutFrom(sheet: Sheet, flat: readonly CountedFlat[]): readonly Block[] {
  const rows = flat.flatMap(({ part, count }): readonly (readonly Cell[])[] => {
    const here = sheet.placed.filter((placed) => placed.part === part.id).length;
    if (here === 0) return [];
    return [[BOX, thumbnail(part), part.id, `${here}`, here === count ? '' : `of ${count}`, part.name, sizeOf(part)]];
  });
  return table(
    [
      { title: '', width: 3 },
      { title: sheet.name, width: 30 },
      { title: 'Part', width: 12 },
      { title: 'Pieces', align: 'right' },
      { title: '', width: 9 },
      { title: 'What it is' },
      { title: 'Size, mm', width: 42 },
    ],
    rows,
  );
}

function sizeOf({ outline, thickness }: FlatPart): string {
  const { left, right, bottom, top } = boundsOf(outline);
  return [right - left, top - bottom, thickness].map((length) => plainNumber(length, 2)).join(' × ');
}

const printedParts = (printed: readonly { readonly part: PrintedPart; readonly count: number }[]): readonly Block[] =>
  printed.length === 0
    ? []
    : [
        heading('Printed parts'),
        ...table(
          [
            { title: '', width: 3 },
            { title: 'Part' },
            { title: 'Pieces', align: 'right' },
            { title: 'What it is' },
            { title: 'Material' },
            { title: 'Size on the bed, mm' },
          ],
          printed.map(({ part: { id, name, material, size }, count }) => [
            BOX,
            id,
            `${count}`,
            name,
            material,
            size.map((length) => plainNumber(tenth(length))).join(' × '),
          ]),
        ),
      ];

/** What the camera is built round: the builder has it before there is a camera. */
function boughtByDesign(parts: readonly Counted[], { lens }: BookGiven): readonly Block[] {
  const holders = parts.flatMap(({ part }) => (part.kind === 'bought' && part.role === 'holder' ? [part.name] : []));
  const sold = comesWithLens(parts.map(({ part }) => part));
  const made = parts.flatMap(({ part }) => (part.kind === 'flat' && part.role === 'holder' ? part.placements : []));
  const cut = [...new Set(made.flatMap(({ group }) => (typeof group === 'string' ? [] : [group.holder])))];
  const bored = parts.flatMap(({ part }) =>
    part.kind === 'bought' && part.role === 'holder' && part.shape.form === 'plate' && part.shape.holes.length > 0
      ? [part.name]
      : [],
  );
  return [
    heading('What the camera is built round'),
    paragraph(
      [
        `The lens: ${lens}${sold === null ? '' : `, with ${sold}`}.`,
        ...(holders.length > 0 ? [`The holders: ${holders.join(', ')}.`] : []),
        ...(cut.length > 0 ? [`Cut with the camera: ${cut.join(', ')}.`] : []),
        'The camera is drawn for these; another lens of the same focal length may need another camera.',
      ].join(' '),
    ),
    ...(bored.length === 0
      ? []
      : [
          paragraph(
            `Bore two holes for the pins of the seat into the face of the ${bored.join(' and the ')} before you try ${bored.length === 1 ? 'it' : 'them'} on the camera: the templates of the seat, at the end of this book, show where.`,
          ),
        ]),
  ];
}

interface Tool {
  readonly what: string;
  readonly use: string;
}

/** What every step takes. Common practice, no source. */
const BASE: readonly Tool[] = [
  {
    what: 'caliper that reads 0.05 mm or better',
    use: 'test piece, plywood, register; what is longer than its jaws open is read with the ruler',
  },
  { what: 'straight edge and ruler, 300 mm or longer', use: 'diagonals, templates' },
  { what: 'try square', use: 'boxes, standard, rails' },
  { what: 'flat board, larger than the back, with paper or film on it', use: 'gluing flat' },
  { what: 'clamps, 6 or more; masking tape', use: 'gluing' },
  { what: 'fine sandpaper on a block, 180 and 240', use: 'easing edges, never a joint that fits' },
  { what: 'brush for the paint, cloth for the glue', use: 'blackening, wiping' },
  { what: 'drill bits and a screwdriver for each screw of the list', use: 'screws' },
  { what: 'safety glasses; dust mask', use: 'cutting glass and card, springs and cords, sanding' },
];

/** For the chapters after the assembly. Common practice, no source. */
const AFTER: readonly Tool[] = [
  { what: 'small cool lamp with a battery; small mirror; chalk', use: 'leak test' },
  { what: 'photographic paper, two sheets for each holder; what develops them', use: 'leak test, darkroom' },
  { what: 'lens cap, or black tape', use: 'leak test, and exposing with a lens that has no shutter' },
  { what: 'steel rule on its edge, or a strip of thick glass', use: 'measuring depths of the register' },
  { what: 'magnifier; tape measure', use: 'focusing; proof of the register by a picture' },
  { what: 'dark cloth; tripod', use: 'focusing' },
  { what: 'glue stick, fresh blades, thick card to cut on', use: 'templates' },
];

/** Those of the base, then what single steps ask for, each with its steps. */
function toolsOf({ steps, plan }: BookGiven): readonly Tool[] {
  const bought = new Set(plan.hardware.flatMap(({ name, size }) => [name, ...cardsIn(name, size)]));
  const known = new Set(BASE.map(({ what }) => what));
  const asked = new Map<string, number[]>();
  for (const { number, words } of steps)
    for (const need of words.flatMap(({ needs = [] }) => needs)) {
      if (bought.has(need) || known.has(need)) continue;
      const own = asked.get(need) ?? [];
      if (own.at(-1) !== number) own.push(number);
      asked.set(need, own);
    }
  return [
    ...BASE,
    ...[...asked].map(([what, numbers]) => ({
      what,
      use: `${numbers.length === 1 ? 'step' : 'steps'} ${numbers.join(', ')}`,
    })),
  ];
}

/** As the steps call card that stands among the bought parts: strips of one thickness, or sheets of one or two. */
function cardsIn(name: string, size: string): readonly string[] {
  const thick = /^card( strip)?$/.test(name) ? /^([\d.]+)(?: mm)?(?: and ([\d.]+) mm)? thick/.exec(size) : null;
  return (thick ?? []).slice(1).flatMap((one) => (one === undefined ? [] : [`card ${one} mm thick`]));
}
