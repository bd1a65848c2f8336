import type { GivenFilter } from '../model/exposure.js';
import type { CardRow, ExposureCard } from '../model/exposure-card.js';
import type { Mark, Page } from '../model/page.js';
import type { SittingDocument } from '../model/sitting.js';
import { exposureTime, fNumber, magnification, metres, plainNumber, stops } from '../units/print.js';
import { type Block, placed, type Style, words } from './page-blocks.js';
import { type Column, columnsOfNumbers, grid, gridWidth } from './page-grid.js';

/** A5, upright. */
const WIDTH = 148;
const HEIGHT = 210;
const MARGIN = 8;
const ROOM = WIDTH - 2 * MARGIN;

/** A point of type in mm. */
const POINT = 25.4 / 72;
/** What is read in the dim light of a studio, and what is the least that is read there at all (common practice, no source). */
const LETTERS = 8.5 * POINT;
const SMALLEST = 6.5 * POINT;
/** From one try to the next smaller letters. */
const STEP = 0.97;

const MINUTE = 60;

const INK = '#111111';
const FAINT = '#666666';

/** What is written by hand needs room, however small the print. */
const NOTE_PITCH = 6;
const NOTES = ['Paper, batch', 'Baths, °C', 'Times', 'Volumes'] as const;

const FLASH = 'Flash units hold their charge after they are switched off: never open one.';
const CHEMICALS = "Chemicals: gloves, goggles, fresh air; acid into water; keep to the maker's data sheet.";
const DEFERRING = "The makers' instructions and local rules go before anything written here.";

export interface CardRefused {
  readonly refused: { readonly what: string; readonly accepted: string };
}

/** The card on one page, in the largest letters that leave room for everything; refused where the smallest do not. */
export function exposureCardPage(card: ExposureCard): Page | CardRefused {
  for (let size = LETTERS; size > SMALLEST * STEP; size *= STEP) {
    const page = pageOf(card, Math.max(size, SMALLEST));
    if (page !== null) return page;
  }
  return tooMuch(card);
}

function tooMuch(card: ExposureCard): CardRefused {
  const sets = card.sets.filter((set) => set !== null).length;
  const what = `${card.rows.length} distances with ${sets} filter sets do not fit on one card in letters that can be read.`;
  for (let count = card.rows.length - 1; count > 0; count--) {
    if (pageOf({ ...card, rows: card.rows.slice(0, count) }, SMALLEST) !== null)
      return { refused: { what, accepted: `Write at most ${count} under sitting.distances, or fewer filterSets.` } };
  }
  return { refused: { what, accepted: 'Write fewer sets under sitting.filterSets, or shorter names.' } };
}

function pageOf(card: ExposureCard, size: number): Page | null {
  const style: Style = { size, colour: INK, width: ROOM };
  const tables = exposureTables(card, size);
  if (tables === null) return null;
  const above: readonly Block[] = [
    heading(card, size),
    words(settingOf(card), { ...style, bold: true }),
    words([readingOf(card), ...card.assumed].join(' '), style),
    ...tables,
    words(setsInWords(card), style),
    ...(card.warnings.length === 0 ? [] : [words(card.warnings, { ...style, bold: true })]),
  ];
  const cautions = [...(firstOf(card).reading?.kind === 'flash' ? [FLASH] : []), CHEMICALS, DEFERRING];
  const below = words(cautions.join(' '), { ...style, size: SMALLEST, colour: FAINT });
  const gap = 0.6 * size;
  const left = HEIGHT - 2 * MARGIN - below.height - above.reduce((sum, { height }) => sum + height + gap, 0);
  const lines = Math.floor(left / NOTE_PITCH);
  if (lines < NOTES.length) return null;
  const notes = ruled(lines, size);
  const marks = placed([...above, notes], { left: MARGIN, top: MARGIN, gap });
  return {
    title: `${card.camera.name}, revision ${card.camera.revision}: exposure card`,
    description: `Exposures at ${card.rows.length} distances with ${card.sets.length} sets of filters, and lines for notes.`,
    width: WIDTH,
    height: HEIGHT,
    marks: [...marks, ...below.marks({ x: MARGIN, y: HEIGHT - MARGIN - below.height })],
  };
}

function heading({ camera }: ExposureCard, size: number): Block {
  const title = words(camera.name, { size: 1.5 * size, colour: INK, width: 0.6 * ROOM, bold: true });
  const lens = words(camera.lens, { size, colour: INK, width: ROOM });
  const rule = 0.6 * size;
  return {
    height: title.height + lens.height + rule,
    marks: ({ x, y }) => {
      const bottom = y + title.height + lens.height + rule;
      return [
        ...title.marks({ x, y }),
        {
          kind: 'words',
          at: { x: x + ROOM, y: y + 1.5 * size },
          text: `revision ${camera.revision}`,
          size,
          anchor: 'end',
          colour: INK,
        },
        ...lens.marks({ x, y: y + title.height }),
        line({ x, y: bottom }, ROOM, 0.5),
      ];
    },
  };
}

const line = ({ x, y }: { readonly x: number; readonly y: number }, length: number, width: number): Mark => ({
  kind: 'line',
  points: [
    { x, y },
    { x: x + length, y },
  ],
  stroke: { colour: INK, width },
});

const firstOf = ({ rows }: ExposureCard): SittingDocument => {
  const first = rows[0]?.exposures[0];
  if (first === undefined) throw new Error('a card has a row and a column');
  return first;
};

/** What is set on the lens and lies in the holder. */
function settingOf(card: ExposureCard): string {
  return [
    `Stop ${fNumber(firstOf(card).aperture)}`,
    ...(card.speed === null ? [] : [`speed ${plainNumber(card.speed)}`]),
    ...(card.paper === null ? [] : [card.paper]),
    card.process,
  ].join(' · ');
}

function readingOf(card: ExposureCard): string {
  const { reading, lampDistance } = firstOf(card);
  if (reading === null)
    return 'No reading is given: the columns say how many stops more than without extension and filters.';
  const test = reading.tested ? ` by a test at ${magnification(reading.magnification)}` : '';
  const speed = reading.tested ? '' : ` for speed ${plainNumber(reading.speed)}`;
  if (reading.kind === 'meter')
    return `From the meter: ${exposureTime(reading.time)} at ${fNumber(reading.aperture)}${speed}${test}.`;
  const most = card.flashMost === null ? '' : ` One pop has ${plainNumber(card.flashMost, 1)} J at most.`;
  return (
    `From a flash of ${plainNumber(reading.energy, 1)} J at ${metres(reading.distance)}: ${fNumber(reading.aperture)}${speed}${test}. ` +
    `The lamp stands at ${metres(lampDistance ?? reading.distance)}.${most}`
  );
}

/** A time as a shutter or a watch has it, without its unit: minutes would not fit into a column. */
const time = (value: number): string =>
  value < MINUTE ? exposureTime(value).replace(' s', '') : plainNumber(value, 0);
const energy = (value: number): string => plainNumber(value, value < 100 ? 1 : 0);

/** One table where everything goes side by side, else where to stand in one, and what to give in another or several. */
function exposureTables(card: ExposureCard, size: number): readonly Block[] | null {
  const places = placeColumns(card.rows, card.flangeDistance);
  const settings = card.sets.map((set, i) => settingColumns(card, set, i));
  const fits = (columns: readonly Column[]) => gridWidth(columns, size) <= ROOM;
  const drawn = (columns: readonly Column[]) => grid(columns, { size, width: ROOM, colour: INK });
  const together = [...places, ...settings.flat()];
  if (fits(together)) return [drawn(together)];
  const tables = [places];
  for (const columns of settings) {
    const last = tables.at(-1) ?? [];
    if (last !== places && fits([...last, ...columns])) tables[tables.length - 1] = [...last, ...columns];
    else tables.push([...places.slice(0, 1), ...columns]);
  }
  return tables.every(fits) ? tables.map(drawn) : null;
}

function placeColumns(rows: readonly CardRow[], flangeDistance: number): readonly Column[] {
  const places = rows.map(({ exposures: [first] }) => {
    if (first === undefined) throw new Error('a row has an exposure');
    return first;
  });
  const about = 'depth of field';
  return [
    {
      head: ['distance', 'm'],
      cells: columnsOfNumbers(
        places.map((p) => inMetres(p.subjectDistance)),
        2,
      ),
      bold: true,
    },
    { head: ['scale', ''], cells: places.map((p) => magnification(p.magnification)) },
    {
      head: ['past inf', 'mm'],
      cells: columnsOfNumbers(
        places.map((p) => p.filmDistance - flangeDistance),
        1,
      ),
    },
    {
      head: ['extension', 'stops'],
      cells: columnsOfNumbers(
        places.map((p) => 2 * Math.log2(p.workingAperture / p.aperture)),
        2,
      ),
    },
    {
      head: ['works at', 'f/'],
      cells: columnsOfNumbers(
        places.map((p) => p.workingAperture),
        1,
      ),
    },
    {
      group: about,
      head: ['fore', 'mm'],
      cells: columnsOfNumbers(
        places.map((p) => p.aboutEyes.fore),
        0,
      ),
    },
    {
      group: about,
      head: ['aft', 'mm'],
      cells: columnsOfNumbers(
        places.map((p) => p.aboutEyes.aft),
        0,
      ),
    },
  ];
}

const inMetres = (length: number | null): number | null => (length === null ? null : length / 1000);

function settingColumns(card: ExposureCard, set: string | null, i: number): readonly Column[] {
  const exposures = card.rows.map(({ exposures: all }) => all[i]).filter((one) => one !== undefined);
  const group = set ?? (firstOf(card).filters.length === 0 ? 'no filter' : 'no set');
  const { reading } = firstOf(card);
  if (reading === null)
    return [
      {
        group,
        head: ['more', 'stops'],
        cells: columnsOfNumbers(
          exposures.map((e) => e.stops.total),
          2,
        ),
      },
    ];
  if (reading.kind === 'meter') return [{ group, head: ['time', 's'], cells: exposures.map(timeCell) }];
  const energies: Column = {
    group,
    head: ['', 'J'],
    cells: exposures.map((e) => (e.energy === null ? '–' : energy(e.energy))),
  };
  if (card.flashMost === null) return [energies];
  return [
    energies,
    { group, head: ['', 'pops'], cells: exposures.map(({ pops }) => (pops === null ? '–' : plainNumber(pops))) },
  ];
}

/** The time to be given; with a question mark where what the paper loses in it is not known. */
function timeCell({ time: plain, correctedTime }: SittingDocument): string {
  if (correctedTime !== null) return time(correctedTime);
  return plain === null ? '–' : `${time(plain)} ?`;
}

/** What stands in the light in each column. */
function setsInWords(card: ExposureCard): readonly string[] {
  return card.sets.flatMap((set, i) => {
    const exposure = card.rows[0]?.exposures[i];
    if (exposure === undefined || exposure.filters.length === 0) return [];
    const factor = exposure.filterFactor;
    const sum = `together × ${plainNumber(factor, 2)}, +${stops(Math.log2(factor))}`;
    return [`${set ?? 'no set'}: ${exposure.filters.map(inWords).join(', ')}; ${sum}`];
  });
}

/** A filter without a name is called after its factor already. */
const inWords = ({ name, factor }: GivenFilter): string =>
  name === `factor ${plainNumber(factor)}` ? name : `${name} × ${plainNumber(factor, 2)}`;

/** Lines to write on, the first ones with a word of what goes there. */
function ruled(count: number, size: number): Block {
  return {
    height: count * NOTE_PITCH,
    marks: ({ x, y }) =>
      Array.from({ length: count }, (_, i) => i).flatMap((i): readonly Mark[] => {
        const base = y + (i + 1) * NOTE_PITCH;
        return [
          { kind: 'words', at: { x, y: base - 1 }, text: NOTES[i] ?? '', size, anchor: 'start', colour: FAINT },
          { ...line({ x, y: base }, ROOM, 0.2) },
        ];
      }),
  };
}
