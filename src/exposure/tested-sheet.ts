import { stops as stopsText } from '../units/print.js';
import type { CastColour, ColourPack } from './colour-cast.js';

/** Exposure makes a negative darker, and what is developed by reversal lighter. */
export const processes = ['negative', 'reversal'] as const;

export type Process = (typeof processes)[number];

/** Near enough: a third of a stop is what meters are marked in. */
export const CLOSE = 1 / 3;

/** The first answer of an unknown paper moves the setting by no more than this, stops. */
export const FIRST_STEP = 1;

export const looks = ['too dark', 'too light', 'right'] as const;

export interface TestedSheet {
  readonly sheet: number;
  /** More exposure than was reckoned, stops; of a strip its middle. */
  readonly given: number;
  /** The same for each strip, in the order of their numbers; empty where the sheet was exposed as a whole. */
  readonly strips: readonly number[];
  readonly pack: ColourPack;
  readonly result: SheetResult | null;
}

/** What came out, as far as it was looked at. */
export interface SheetResult {
  readonly looks: (typeof looks)[number] | null;
  /** How much too dark or too light, in stops, judged in halves. */
  readonly by: number | null;
  /** Number of the strip that is spoken of, from 1; null for the whole sheet. */
  readonly strip: number | null;
  readonly density: number | null;
  /** Density of each strip; null where one was not measured. */
  readonly densities: readonly (number | null)[];
  /** The density that was meant. */
  readonly wanted: number | null;
  readonly cast: CastColour | null;
  /** Strength of the cast, density. */
  readonly castBy: number | null;
}

export interface Advice {
  /** For the next sheet: more exposure than was reckoned, stops. */
  readonly given: number;
  /** Against the sheet, or the strip, that the advice starts from; null where nothing was tested. */
  readonly change: number | null;
  readonly pack: ColourPack;
  /** Whether the setting is within a third of a stop already. */
  readonly done: boolean;
  /** How likely the next sheet comes within a third of a stop, 0 to 1; null where it cannot be said. */
  readonly chance: number | null;
  /** Plain sentences. */
  readonly reasoning: readonly string[];
}

/** What the sheets say of exposure alone. */
export type Step = Pick<Advice, 'given' | 'done' | 'chance' | 'reasoning'> & { readonly change: number };

export const wasMeasured = ({ result }: TestedSheet): boolean =>
  result !== null && (result.density !== null || result.densities.some((density) => density !== null));

/** `Sheet 2`, `Strip 3 of sheet 2` */
export const sheetInWords = (sheet: number, strip: number | null): string =>
  strip === null ? `Sheet ${sheet}` : `Strip ${strip} of sheet ${sheet}`;

/** `0.5 stops more than sheet 1` */
export function changeInWords(change: number, sheet: number, strip: number | null): string {
  const from = sheetInWords(sheet, strip).replace(/^S/, 's');
  const text = stopsText(Math.abs(change));
  return text === '0 stops' ? `the same as ${from}` : `${text} ${change > 0 ? 'more' : 'less'} than ${from}`;
}
