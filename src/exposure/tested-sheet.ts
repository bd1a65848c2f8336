import type { ColourPack, SheetResult } from '../model/sitting-log.js';
import { stopsInWords } from '../units/print.js';

/** Near enough: a third of a stop is what meters are marked in. */
export const CLOSE = 1 / 3;

/** The first answer of an unknown paper moves the setting by no more than this, stops. */
export const FIRST_STEP = 1;

export interface TestedSheet {
  readonly sheet: number;
  /** More exposure than was reckoned, stops; of a strip its middle. */
  readonly given: number;
  /** The same for each strip, in the order of their numbers; empty where the sheet was exposed as a whole. */
  readonly strips: readonly number[];
  readonly pack: ColourPack;
  /** The developer as the sheet went in, °C; null where it was not noted. */
  readonly bath: number | null;
  readonly result: SheetResult | null;
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
  result !== null && (result.density !== null || result.densities.length > 0);

/** `Sheet 2`, `Strip 3 of sheet 2` */
export const sheetInWords = (sheet: number, strip: number | null): string =>
  strip === null ? `Sheet ${sheet}` : `Strip ${strip} of sheet ${sheet}`;

/** `half a stop more than sheet 1` */
export function changeInWords(change: number, sheet: number, strip: number | null): string {
  const from = sheetInWords(sheet, strip).replace(/^S/, 's');
  const text = stopsInWords(change);
  return text === '0 stops' ? `the same as ${from}` : `${text} ${change > 0 ? 'more' : 'less'} than ${from}`;
}
