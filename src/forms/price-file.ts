import * as z from 'zod';
import type { Fault } from '../design/explain.js';
import { lengthPair, measured, number, section, text, whole } from '../design/fields.js';
import { jsonSchemaOf } from '../design/json-schema.js';
import { lineTrouble } from '../design/names.js';
import type { FileKind } from '../design/source.js';
import { sameSize, sameWord } from '../model/same-thing.js';
import { plainNumber } from '../units/print.js';
import { parsePercent } from '../units/share.js';

/*
 * The form of a price file: what sheets, bought things, print and the laser cost where a run of kits is made. The program
 * brings no prices of its own.
 */

/** Of a currency: a sign, a code, a word. */
const LONGEST_CURRENCY = 12;
/** Longer than any line of hardware. */
const LONGEST_WORDS = 120;
/** More than a run of kits has to buy. */
const MOST_ENTRIES = 300;
/** Currencies with small units have large figures. */
const DEAREST = 1e8;
const LARGEST_PACK = 100_000;

export const priceFile: FileKind = {
  noun: 'price file',
  begin: 'Write the currency and a price: currency: EUR, then sheets: [{ material: plywood, price: 7.50 }].',
  largest: 64 * 1024,
  mostValues: 3000,
};

const words = (about: Parameters<typeof text>[0], longest = LONGEST_WORDS) =>
  text(about, (input) => lineTrouble(input, longest));

const amount = (description: string, example: string) => number({ description, example }, { least: 0, most: DEAREST });

const percent = (about: Parameters<typeof text>[0]) =>
  measured(about, parsePercent, { least: 0, most: 1000 }, (value) => `${plainNumber(value)} %`);

const listOf = <Entry extends z.ZodType>(entry: Entry, description: string, example: string) =>
  z
    .array(entry)
    .max(MOST_ENTRIES)
    .default([])
    .meta(section({ description, example, whenAbsent: 'none of them is priced' }));

const sheetEntry = z
  .strictObject({
    material: words({
      description: 'as the sheets are called, or the word before the thickness for every thickness of it',
      example: 'plywood',
    }),
    sheet: lengthPair({
      description: 'size of the sheets that the price holds for',
      example: '[600 mm, 400 mm]',
      whenAbsent: 'every size',
    }).optional(),
    price: amount('of one sheet', '7.50'),
  })
  .meta(section({ description: 'a kind of sheet', example: '{ material: plywood, price: 7.50 }' }));

const boughtEntry = z
  .strictObject({
    name: words({ description: 'as in the list of hardware', example: 'nut' }),
    size: words({
      description: 'as in the list of hardware, or what stands there before its first comma',
      example: 'M4',
      whenAbsent: 'every size of that name',
    }).optional(),
    price: amount('of one pack', '2.40').optional().meta({
      description: 'of one pack',
      example: '2.40',
      whenAbsent: 'it is not priced, and the entry says its spares alone',
    }),
    pack: whole({ description: 'pieces in a pack; only whole packs are bought', example: '50' }, { least: 1, most: LARGEST_PACK }).default(1), // biome-ignore format: one line
    spares: percent({
      description: 'of this thing, where its spares are others',
      example: '0 %',
      whenAbsent: 'those of the file',
    }).optional(),
  })
  .meta(section({ description: 'a bought thing', example: '{ name: nut, size: M4, pack: 50, price: 2.40 }' }));

const printedEntry = z
  .strictObject({
    material: words({ description: 'as in the list of parts', example: 'PETG' }),
    perKg: amount('of one kilogram', '24'),
  })
  .meta(section({ description: 'a material that is printed', example: '{ material: PETG, perKg: 24 }' }));

export const priceSchema = z.strictObject({
  currency: words({ description: 'printed behind every amount, free text', example: 'EUR' }, LONGEST_CURRENCY),
  spares: percent({
    description:
      'bought beyond what the kits take, of each line of the hardware list, rounded up to whole pieces (common practice, no source)',
    example: '10 %',
  }).prefault('10 %'),
  sheets: listOf(sheetEntry, 'what sheets cost', '[{ material: plywood, price: 7.50 }]'),
  bought: listOf(boughtEntry, 'what bought things cost', '[{ name: nut, size: M4, pack: 50, price: 2.40 }]'),
  printed: listOf(printedEntry, 'what is printed, by mass', '[{ material: PETG, perKg: 24 }]'),
  laser: z
    .strictObject({ perMinute: amount('of a minute at the laser', '0.50') })
    .meta(section({ description: 'what the laser costs', example: '{ perMinute: 0.50 }', whenAbsent: 'its time is not priced' })) // biome-ignore format: one line
    .optional(),
});

export type WrittenPrices = z.output<typeof priceSchema>;

/** Two prices for one thing: nobody could say which of them holds. */
export function priceFaults({ sheets, bought, printed }: WrittenPrices): readonly Fault[] {
  return [
    ...twice('sheets', sheets, (a, b) => sameWord(a.material, b.material) && sameSheet(a.sheet, b.sheet)),
    ...twice('bought', bought, (a, b) => sameWord(a.name, b.name) && sameSizes(a.size, b.size)),
    ...twice('printed', printed, (a, b) => sameWord(a.material, b.material)),
  ];
}

const sameSheet = (a: WrittenPrices['sheets'][number]['sheet'], b: typeof a): boolean =>
  a === undefined || b === undefined ? a === b : a[0] === b[0] && a[1] === b[1];

const sameSizes = (a: string | undefined, b: string | undefined): boolean =>
  a === undefined || b === undefined ? a === b : sameSize(a, b);

function twice<Entry>(key: string, entries: readonly Entry[], same: (a: Entry, b: Entry) => boolean): readonly Fault[] {
  return entries.flatMap((entry, n): readonly Fault[] => {
    const first = entries.findIndex((other) => same(other, entry));
    if (first === n) return [];
    return [
      {
        path: [key, n],
        at: 'value',
        what: `This is the same thing as ${key}[${first}].`,
        accepted: 'Keep one of the two, or say with a size which is which.',
      },
    ];
  });
}

/** The JSON Schema (2020-12) of a price file, for editors and other programs. */
export const pricesJsonSchema = (): Record<string, unknown> => jsonSchemaOf(priceSchema, 'Prices for a run of kits');
