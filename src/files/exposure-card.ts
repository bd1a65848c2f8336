import type { GivenFilter } from '../model/exposure.js';
import type { CardRow, ExposureCard } from '../model/exposure-card.js';
import type { Mark, Page } from '../model/page.js';
import type { SittingDocument } from '../model/sitting.js';
import { type Block, placed, type Style, words } from '../paper/blocks.js';
import { type Column, columnsOfNumbers, grid, gridWidth } from '../paper/grid.js';
import { exposureTime, fNumber, metres, plainNumber, scale, stops } from '../units/print.js';

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
    words([readingOf(card), ...reciprocityIn(card), ...countedFrom(card), ...card.assumed].join(' '), style),
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
  const test = reading.tested ? ` by a test at ${scale(reading.magnification)}` : '';
  const speed = reading.tested ? '' : ` for speed ${plainNumber(reading.speed)}`;
  if (reading.kind === 'meter')
    return `From the meter: ${exposureTime(reading.time)} at ${fNumber(reading.aperture)}${speed}${test}.`;
  const most = card.flashMost === null ? '' : ` One pop has ${plainNumber(card.flashMost, 1)} J at most.`;
  return (
    `From a flash of ${plainNumber(reading.energy, 1)} J at ${metres(reading.distance)}: ${fNumber(reading.aperture)}${speed}${test}. ` +
    `The lamp stands at ${metres(lampDistance ?? reading.distance)}.${most}`
  );
}

const reciprocityIn = ({ rows }: ExposureCard): readonly string[] =>
  rows.some(({ exposures }) => exposures.some(({ time, correctedTime }) => (correctedTime ?? 0) > (time ?? Infinity)))
    ? ['Reciprocity is in the times.']
    : [];

/** The plane from which distances count lies on no edge of the lens, so it is told from one that a tape reaches. */
function countedFrom({ rows }: ExposureCard): readonly string[] {
  const place = rows.flatMap(({ exposures: [first] }) => first ?? []).find((one) => one.subjectDistance !== null);
  if (place === undefined) return [];
  const before = Math.round((place.subjectFromSeat ?? 0) - (place.subjectDistance ?? 0));
  const side = before < 0 ? 'behind' : 'before';
  return [`Distances count from the front principal plane, about ${Math.abs(before)} mm ${side} the lens seat.`];
}

/** A time as a shutter has it, which is no figure of seconds. */
const asFraction = (time: number): string | null => /^1\/\d+/.exec(exposureTime(time))?.[0] ?? null;

/** So many decimals that the smallest figure of a column is out by 0.02 stop at most; all have them, so that points stand below each other. */
function decimalsFor(values: readonly number[]): number {
  const smallest = Math.min(...values);
  return smallest >= 30 ? 0 : smallest >= 3 ? 1 : 2;
}

/** Energies in J: in several pops that of each, since it is what is set; what they sum up to would be set for one. */
function energyCells(exposures: readonly SittingDocument[]): readonly string[] {
  const ofEach = exposures.map(({ popEnergy, energy }) => popEnergy ?? energy);
  const decimals = decimalsFor(ofEach.filter((each) => each !== null));
  return exposures.map(({ pops }, i) => {
    const each = ofEach[i]?.toFixed(decimals) ?? '–';
    return pops === null ? each : `${pops} × ${each}`;
  });
}

/** The times to be given, s; with a question mark where what the paper loses in them is not known. */
function timeCells(exposures: readonly SittingDocument[]): readonly string[] {
  const given = exposures.map(({ time, correctedTime }) => correctedTime ?? time);
  const decimals = decimalsFor(given.flatMap((time) => (time === null || asFraction(time) !== null ? [] : [time])));
  return exposures.map(({ correctedTime }, i) => {
    const time = given[i] ?? null;
    if (time === null) return '–';
    return `${asFraction(time) ?? time.toFixed(decimals)}${correctedTime === null ? ' ?' : ''}`;
  });
}

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
      head: ['lens to eyes', 'm'],
      cells: columnsOfNumbers(
        places.map((p) => inMetres(p.subjectDistance)),
        2,
      ),
      bold: true,
    },
    { head: ['scale', ''], cells: places.map((p) => scale(p.magnification)) },
    {
      head: ['film past ∞', 'mm'],
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
  if (reading.kind === 'meter') return [{ group, head: ['time', 's'], cells: timeCells(exposures) }];
  return [{ group, head: ['', card.flashMost === null ? 'J in all' : 'pops × J'], cells: energyCells(exposures) }];
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
