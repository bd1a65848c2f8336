import { wholeMinutes } from '../sheets/cut-time.js';
import type { LayOut, SheetUse } from '../sheets/lay-out.js';
import type { Sheet } from '../sheets/sheet.js';
import { duration, mm, plainNumber } from '../units/print.js';

/**
 * What a builder wants to know of the sheets before driving to the laser, in a line or two a material: how many and
 * whether fewer would do, what is used and left, how far the beam goes and for how long.
 *
 * @param minutesOf a sheet, as told in layout.json
 */
export function sheetsPage(
  { sheets, uses, offcuts }: Pick<LayOut, 'sheets' | 'uses' | 'offcuts'>,
  minutesOf: (sheet: Sheet) => number,
): readonly string[] {
  if (sheets.length === 0) return ['Nothing is cut from sheet.'];
  const metres = sheets.reduce((sum, { cutLength }) => sum + cutLength, 0) / 1000;
  // what is read sheet by sheet adds up to what is read in all
  const minutes = new Map(sheets.map((sheet) => [sheet, wholeMinutes(minutesOf(sheet))]));
  const total = [...minutes.values()].reduce((sum, each) => sum + each, 0);
  const [only] = sheets.length === 1 ? sheets : [];
  return [
    ...uses.map((use) => useLine(use, ofMaterial(sheets, use.material))),
    ...leftLine(offcuts),
    `${plainNumber(metres, 1)} m to cut in about ${total} ${total === 1 ? 'minute' : 'minutes'}${hoursOf(total)}${only ? '' : ' at the laser'}.`,
    ...(only || sheets.length > MOST_LISTED
      ? []
      : uses.map((use) => minutesLine(ofMaterial(sheets, use.material), minutes))),
  ];
}

/** Sheets whose minutes are told one by one; those of a run of kits stand on its papers. */
const MOST_LISTED = 20;

/** Who plans a day at the laser counts in hours. */
const HOURS_FROM = 240;
const hoursOf = (minutes: number): string => (minutes < HOURS_FROM ? '' : ` (${duration(60 * minutes)})`);

const ofMaterial = (sheets: readonly Sheet[], material: string): readonly Sheet[] =>
  sheets.filter((sheet) => sheet.material === material);

/** `plywood-4.05: 3 sheets of 600 × 400 mm; fewer than 3 is impossible; 71 % used.` */
function useLine({ material, sheets: count, atHand, bound, use }: SheetUse, sheets: readonly Sheet[]): string {
  const sizes = new Map<string, number>();
  for (const { width, height, remnant } of sheets) {
    const size = remnant ? 'remnant' : `${plainNumber(width, 1)} × ${mm(height)}`;
    sizes.set(size, (sizes.get(size) ?? 0) + 1);
  }
  const [first, ...others] = [...sizes].map(([size, n]) =>
    size === 'remnant' ? counted(n, 'remnant') : `${counted(n, 'sheet')} of ${size}`,
  ) as [string, ...string[]];
  return [
    `${material}: ${[first, ...others].join(' and ')}`,
    ...(atHand > 0 ? [atHand === count ? 'all at hand' : `${atHand} at hand`] : []),
    ...boundWords(count, bound),
    `${plainNumber(100 * use, 0)} % used.`,
  ].join('; ');
}

/** One sheet cannot be fewer, and nobody doubts it. */
function boundWords(count: number, bound: number | null): readonly string[] {
  if (count === 1 || bound === null) return [];
  if (count <= bound) return [`fewer than ${bound} is impossible`];
  return [`at least ${bound} ${bound === 1 ? 'is' : 'are'} needed`];
}

function leftLine(offcuts: LayOut['offcuts']): readonly string[] {
  const sizes = offcuts.map(({ sheet, left, right, bottom, top }) => ({
    sheet,
    // a builder measures what is left, and must not find less
    width: Math.floor(right - left + 1e-6),
    height: Math.floor(top - bottom + 1e-6),
  }));
  const [first, ...others] = sizes;
  if (first === undefined) return [];
  const largest = others.reduce((most, one) => (one.width * one.height > most.width * most.height ? one : most), first);
  return [`Largest piece left: ${largest.width} × ${largest.height} mm of ${largest.sheet}.`];
}

/** `plywood-4.05-1 to 3: 18, 17 and 5 minutes.` */
function minutesLine(sheets: readonly Sheet[], minutes: ReadonlyMap<Sheet, number>): string {
  const each = sheets.map((sheet) => String(minutes.get(sheet)));
  const names = sheets.length === 1 ? sheets[0]?.name : `${sheets[0]?.name} to ${sheets.length}`;
  const last = each.at(-1) as string;
  const list = each.length === 1 ? last : `${each.slice(0, -1).join(', ')} and ${last}`;
  return `${names}: ${list} ${list === '1' ? 'minute' : 'minutes'}.`;
}

const counted = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
