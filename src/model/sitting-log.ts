/** What a sitting log tells: settings that were given out and what came of them. Lengths in mm, times in s. */

/** What the material becomes: exposure makes a negative darker, and what is developed by reversal lighter. */
export const processes = ['negative', 'reversal'] as const;

export type Process = (typeof processes)[number];

/** A void sheet was botched: it is kept in the log and tells nothing of exposure. */
export const looks = ['too dark', 'too light', 'right', 'void'] as const;

export const castColours = ['red', 'green', 'blue', 'cyan', 'magenta', 'yellow'] as const;

export type CastColour = (typeof castColours)[number];

/** Densities of the colour compensating filters on the lens: what each holds back is its complement alone. */
export interface ColourPack {
  readonly cyan: number;
  readonly magenta: number;
  readonly yellow: number;
}

/** A setting that was given out: what the sheet was to be exposed by. */
export interface SettingEntry {
  /** Counted from 1 through the whole log. */
  readonly sheet: number;
  /** Local date and time; nothing depends on it. */
  readonly at: string | null;
  readonly process: Process;
  readonly paper: string | null;
  readonly batch: string | null;
  /** More exposure than was reckoned, stops: what dialling in has found; of a strip its middle. */
  readonly dialled: number;
  /** The same for each strip, in the order in which they are counted; empty where the sheet is exposed as a whole. */
  readonly strips: readonly number[];
  readonly colourPack: ColourPack;
  readonly magnification: number;
  readonly aperture: number;
  readonly speed: number | null;
  readonly filterFactor: number;
  /** In all pops together, J. */
  readonly energy: number | null;
  readonly pops: number | null;
  readonly lampDistance: number | null;
  /** What the watch or the shutter is to show. */
  readonly time: number | null;
}

/** What came out, as far as it was looked at. */
export interface SheetResult {
  readonly looks: (typeof looks)[number] | null;
  /** How much too dark or too light, in stops, judged in halves. */
  readonly by: number | null;
  /** Number of the strip that is spoken of, from 1; null for the whole sheet. */
  readonly strip: number | null;
  readonly density: number | null;
  /** Density of each strip, in their order. */
  readonly densities: readonly number[];
  /** The density that is meant. */
  readonly wanted: number | null;
  readonly cast: CastColour | null;
  /** Strength of the cast, density. */
  readonly castBy: number | null;
}

export interface ResultEntry extends SheetResult {
  readonly sheet: number;
  readonly at: string | null;
  /** What was really given, where it was not what was advised. */
  readonly gave: { readonly energy: number | null; readonly time: number | null };
  /** Temperature of the developer, °C. */
  readonly bath: { readonly start: number | null; readonly end: number | null };
  readonly note: string | null;
}

export type LogEntry =
  | { readonly kind: 'setting'; readonly setting: SettingEntry }
  | { readonly kind: 'result'; readonly result: ResultEntry };
