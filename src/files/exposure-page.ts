import type { Dialling } from '../model/dialling.js';
import type { Remark, SittingDocument } from '../model/sitting.js';
import { energy, exposureTime, fNumber, metres, mm, plainNumber, scale } from '../units/print.js';
import { documentNumber } from './document-number.js';
import type { Colour } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

/** The sitting as other programs read it, with what a log says of it; ends with a line break. */
export const exposureJson = (sitting: SittingDocument & { readonly dialling?: Dialling }): string =>
  `${JSON.stringify(sitting, (_, value: unknown) => (typeof value === 'number' ? documentNumber(value) : value), 2)}\n`;

/** What a figure is called, the figure, and what is said beside it. */
type Row = readonly [label: string, figure: string, beside: string];

/** What is said of an exposure, part by part, for whoever has better means to set it than a terminal. */
export interface ExposureWords {
  readonly settings: readonly Row[];
  /** What was carried over; empty where there was nothing. */
  readonly from: string;
  /** What asks for more or less than the reading, times and stops. */
  readonly factors: readonly Row[];
  readonly assumed: readonly string[];
  readonly wanting: readonly string[];
  readonly remarks: readonly Remark[];
  readonly cautions: readonly string[];
}

export const exposureWords = (sitting: SittingDocument): ExposureWords => ({
  settings: [stopRow(sitting), ...lightRows(sitting), ...placeRows(sitting), depthRow(sitting)],
  from: sitting.reading === null ? '' : readingText(sitting.reading),
  factors: [...factorsOf(sitting), ...togetherRows(sitting)].map(([what, count]) => [
    what,
    times(count),
    signed(count),
  ]),
  assumed: sitting.assumed.map(({ message }) => message),
  wanting: sitting.wanting.map((what) => `${what}.`),
  remarks: sitting.remarks,
  cautions: cautions(sitting),
});

/** A setting for one sitting as a page for a person beside the camera: first what to set. Ends with a line break. */
export function exposurePage(name: string, sitting: SittingDocument, page: Page): string {
  const words = exposureWords(sitting);
  const sections = [
    [page.colour.heading(name)],
    settings(words, page),
    factors(words, page),
    listed('Taken for granted', words.assumed, page),
    listed('Not reckoned', words.wanting, page),
    remarks(words.remarks, page),
    listed('Mind', words.cautions, page),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

const INDENT = 2;

function settings({ settings: rows }: ExposureWords, { width, colour }: Page): readonly string[] {
  const labels = Math.max(...rows.map(([label]) => label.length)) + 2;
  // what has nothing beside it may run on
  const figures = Math.max(...rows.map(([, figure, beside]) => (beside === '' ? 0 : figure.length))) + 2;
  return [
    colour.heading('Set'),
    ...rows.flatMap(([label, figure, beside]) => {
      const lines = wrap(beside, width - INDENT - labels - figures);
      const first = `${' '.repeat(INDENT)}${label.padEnd(labels)}${colour.heading(figure)}`;
      const [beginning] = lines;
      return [
        beginning === undefined ? first : `${first}${' '.repeat(figures - figure.length)}${beginning}`,
        ...lines.slice(1).map((line) => `${' '.repeat(INDENT + labels + figures)}${line}`),
      ];
    }),
  ];
}

const stopRow = ({ aperture, workingAperture }: SittingDocument): Row => [
  'Stop',
  fNumber(aperture),
  `works as ${fNumber(workingAperture)} where the sitter is`,
];

function lightRows(sitting: SittingDocument): readonly Row[] {
  const { energy: wanted, time, lampDistance } = sitting;
  return [
    ...(wanted === null ? [] : [flashRow(wanted, sitting)]),
    ...(lampDistance === null ? [] : [['Lamp', metres(lampDistance), 'to the sitter'] as const]),
    ...(time === null ? [] : [timeRow(time, sitting)]),
  ];
}

function flashRow(wanted: number, { pops, popEnergy, popPower }: SittingDocument): Row {
  if (pops === null || popEnergy === null || popPower === null)
    return ['Flash', energy(wanted), 'in all; with --flash-most it is shared out among pops'];
  const power = `${plainNumber(popPower * 100, 0)} % of full power`;
  return pops === 1
    ? ['Flash', `1 pop of ${energy(wanted)}`, power]
    : ['Flash', `${pops} pops of ${energy(popEnergy)}`, `${power} each; ${energy(wanted)} in all`];
}

function timeRow(time: number, { correctedTime }: SittingDocument): Row {
  if (correctedTime === null) return ['Time', exposureTime(time), 'without reciprocity, which is not known'];
  if (correctedTime === time) return ['Time', exposureTime(time), ''];
  return ['Time', exposureTime(correctedTime), `with reciprocity; ${exposureTime(time)} without`];
}

function placeRows({
  magnification: m,
  subjectDistance,
  subjectFromSeat,
  filmDistance,
}: SittingDocument): readonly Row[] {
  const film = `film ${mm(tenths(filmDistance))} behind the lens seat`;
  if (subjectDistance === null || subjectFromSeat === null) return [['Scale', scale(m), film]];
  return [
    ['Scale', scale(m), film],
    [
      'Sitter',
      metres(subjectDistance),
      `from the front principal plane; about ${metres(subjectFromSeat)} from the lens seat`,
    ],
  ];
}

function depthRow({ aboutEyes: { fore, aft }, depthOfField: { near } }: SittingDocument): Row {
  if (fore === null) return ['Sharp', near === null ? 'far things' : `from ${metres(near)}`, 'on'];
  const behind = aft === null ? 'all' : mm(Math.round(aft));
  return ['Sharp', `${mm(Math.round(fore))} before, ${behind} behind the eyes`, ''];
}

const tenths = (value: number): number => Math.round(value * 10) / 10;

const COLUMNS: readonly Column[] = [
  { title: 'Against the reading', align: 'left' },
  { title: 'times', align: 'right' },
  { title: 'stops', align: 'right' },
];

function factors({ from, factors: rows }: ExposureWords, { width, colour }: Page): readonly string[] {
  const { titles, rows: lines } = table(COLUMNS, rows, width - INDENT);
  return [
    colour.heading('How it comes about'),
    ...[...(from === '' ? [] : wrap(from, width - INDENT)), ...titles.map(colour.faint), ...lines.flat()].map(
      (line) => `${' '.repeat(INDENT)}${line}`,
    ),
  ];
}

function factorsOf(sitting: SittingDocument): readonly (readonly [string, number])[] {
  const { stops: by, reading, filters } = sitting;
  const rows: (readonly [string, number])[] = [[`extension to ${scale(sitting.magnification)}`, by.extension]];
  if (reading !== null && reading.magnification > 0)
    rows[0] = [`extension, ${scale(reading.magnification)} to ${scale(sitting.magnification)}`, by.extension];
  for (const { name, factor } of filters) rows.push([name, Math.log2(factor)]);
  if (reading !== null && reading.filterFactor !== 1)
    rows.push(['filters of the test, no longer there', -Math.log2(reading.filterFactor)]);
  if (reading !== null && by.speed !== null && sitting.speed !== null)
    rows.push([`speed, ${plainNumber(reading.speed)} to ${plainNumber(sitting.speed)}`, by.speed]);
  if (reading !== null && by.aperture !== null)
    rows.push([`stop, ${fNumber(reading.aperture)} to ${fNumber(sitting.aperture)}`, by.aperture]);
  if (reading?.kind === 'flash' && by.distance !== null && sitting.lampDistance !== null)
    rows.push([`lamp, ${metres(reading.distance)} to ${metres(sitting.lampDistance)}`, by.distance]);
  if (by.dialled !== null) rows.push(['dialled in', by.dialled]);
  return rows;
}

/** Reciprocity comes last, on all that stands above it, and the page says what it has added up. */
function togetherRows({
  time,
  correctedTime,
  stops: { total },
}: SittingDocument): readonly (readonly [string, number])[] {
  if (time === null || correctedTime === time) return [['together', total]];
  if (correctedTime === null) return [['together, without reciprocity', total]];
  const reciprocity = Math.log2(correctedTime / time);
  return [
    ['together', total],
    ['reciprocity', reciprocity],
    ['with reciprocity', total + reciprocity],
  ];
}

function readingText(reading: NonNullable<SittingDocument['reading']>): string {
  const found = reading.tested ? `A test at ${scale(reading.magnification)}` : 'A reading';
  return reading.kind === 'flash'
    ? `${found}: ${energy(reading.energy)} at ${metres(reading.distance)}, ${fNumber(reading.aperture)}.`
    : `${found}: ${exposureTime(reading.time)} at ${fNumber(reading.aperture)}.`;
}

/** A factor to three digits or so: nobody sets an exposure finer. */
function times(count: number): string {
  const factor = 2 ** count;
  return `× ${factor.toFixed(factor < 10 ? 2 : 1)}`;
}

const signed = (count: number): string => {
  const text = count.toFixed(2);
  if (Number(text) === 0) return '0.00';
  return count < 0 ? text : `+${text}`;
};

function listed(title: string, texts: readonly string[], { width, colour }: Page): readonly string[] {
  if (texts.length === 0) return [];
  return [colour.heading(title), ...texts.flatMap((text) => wrap(text, width - INDENT)).map((line) => `  ${line}`)];
}

function remarks(all: readonly Remark[], { width, colour }: Page): readonly string[] {
  if (all.length === 0) return [];
  return [
    colour.heading('Remarks'),
    ...all.flatMap(({ id, message, hint }) => [
      `  ${colour.warning(id)}`,
      ...wrap(message, width - 4).map((line) => `    ${line}`),
      ...wrap(hint, width - 4).map((line) => `    ${colour.faint(line)}`),
    ]),
  ];
}

function cautions({ reading }: SittingDocument): readonly string[] {
  if (reading === null) return [];
  return reading.kind === 'flash'
    ? [
        "A flash unit keeps a dangerous charge, switched off and unplugged too: never open it. Its maker's instructions go before ours.",
      ]
    : ["Where lamps are hot, keep gels, cloth and hands away, and go by their maker's instructions."];
}
