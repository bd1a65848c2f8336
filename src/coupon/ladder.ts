import type { Design } from '../design/design.js';

export type Fits = Design['workshop']['fits'];
export type FitName = keyof Fits;

/** From the tightest to the loosest. */
export const fitNames = ['press', 'glueSlip', 'slide', 'dropIn'] as const satisfies readonly FitName[];

/** How far the samples beside each fit are from it, mm: as fine as a hand feels there. Choices of ours. */
const BESIDE: Readonly<Record<FitName, number>> = { press: 0.04, glueSlip: 0.03, slide: 0.1, dropIn: 0.1 };

/** The fits that the ladder has: each of the design's four with a sample on either side, from tight to loose, mm. */
export const fitSamples = (fits: Fits): readonly number[] =>
  rising(fitNames.flatMap((name) => [fits[name] - BESIDE[name], fits[name], fits[name] + BESIDE[name]]));

const SLOT_STEP = 0.05;

/** Widths of the slots round the thickness of the sheet, narrow to wide, mm. */
export const slotSamples = (thickness: number, count: number): readonly number[] =>
  rising(Array.from({ length: count }, (_, i) => thickness + (i - (count - 1) / 2) * SLOT_STEP));

/** As they are engraved: in hundredths, each once. */
const rising = (values: readonly number[]): readonly number[] =>
  [...new Set(values.map((value) => Math.round(value * 100) / 100 || 0))].sort((a, b) => a - b);

/** How wide the beam was taken to be when a piece was cut, and how wide it turned out. */
export interface Beams {
  readonly assumed: number;
  readonly measured: number;
}

/**
 * The fit that a sample really had. A beam wider than was allowed for has made the notch wider and the tongue narrower,
 * each by the difference.
 */
export const fitAsCut = (marked: number, { assumed, measured }: Beams): number => marked + 2 * (measured - assumed);

/** The width that a slot really has; what goes into it is the sheet itself, which no beam has touched. */
export const slotAsCut = (marked: number, { assumed, measured }: Beams): number => marked + (measured - assumed);
