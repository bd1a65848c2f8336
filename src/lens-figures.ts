import { type ChangedKey, type DesignChange, editDesign } from './design/edit.js';
import { plausibility } from './design/plausibility.js';
import type { Problem } from './design/problem.js';
import { readDesign } from './design/read.js';
import type { FindRemnant } from './design/stock.js';
import { readBench } from './forms/read-bench.js';
import { focalSlip } from './lens-bench/focal-slip.js';
import { measureLens } from './lens-bench/measure-lens.js';
import { residualPage } from './lens-bench/residual-page.js';
import type { Finding } from './model/finding.js';
import type { LensDocument } from './model/lens-bench.js';
import type { Page } from './model/page.js';
import { lineDoubt } from './statistics/line-doubt.js';

interface TextFile {
  readonly file: string;
  readonly text: string;
}

export interface LensTaken {
  readonly lens: LensDocument;
  /** What the readings leave over, drawn. */
  readonly page: Page;
  /** The design file with the lens in it, where one was given. */
  readonly design: {
    readonly text: string;
    readonly changed: readonly ChangedKey[];
    /** What the design's own rules say of the new figures. */
    readonly findings: readonly Finding[];
  } | null;
}

interface Wanted {
  /** Magnifications to predict the place of the film at. */
  readonly at: readonly number[];
  /** The design that takes the figures. */
  readonly design: (TextFile & { readonly find: FindRemnant }) | null;
}

/** A lens from its readings on the bench, and into a design where one is given; or what is wrong, and nothing is changed. */
export function takeLens(
  readings: TextFile,
  { at, design }: Wanted,
): LensTaken | { readonly problems: readonly Problem[] } {
  const read = readBench(readings.text, readings.file);
  if ('problems' in read) return read;
  const before = design === null ? null : readDesign(design.text, design.file, design.find);
  if (before !== null && 'problems' in before) return before;
  const coverageAt = before?.design.lens.coverage?.at ?? 0;
  const measured = measureLens(read.bench, { at, coverageAt });
  if ('faults' in measured) return { problems: measured.faults.map(read.locate) };
  const { lens } = measured;
  const page = residualPage(lens, bandOf(lens));
  if (design === null) return { lens, page, design: null };
  // a figure in the wrong unit must not take the place of a good one
  const slip = focalSlip(lens.focalLength);
  if (slip !== null)
    return { problems: [read.locate({ path: ['readings'], what: slip.message, accepted: slip.hint })] };
  const edited = editDesign(design.text, design.file, changesOf(lens), design.find);
  if ('problems' in edited) return edited;
  const after = readDesign(edited.text, design.file, design.find);
  if ('problems' in after) return after;
  const findings = plausibility(after.design).filter(({ about = '' }) => about.startsWith('lens'));
  return { lens, page, design: { ...edited, findings } };
}

const bandOf =
  ({ standardErrors, correlation, readings }: LensDocument) =>
  (m: number): number =>
    lineDoubt(
      {
        slopeError: standardErrors.focalLength,
        interceptError: standardErrors.flangeDistance,
        correlation,
        freedom: readings - 2,
      },
      m,
    );

/** What goes into a design, as finely as it is worth: hundredths of a millimetre, and of a stop. */
function changesOf(lens: LensDocument): readonly DesignChange[] {
  const { focalLength, flangeDistance, standardErrors, correlation, readings } = lens;
  const { pupilMagnification: P, coverage, maxAperture: N } = lens;
  return [
    { path: 'lens.focalLength', value: rounded(focalLength, 2) },
    { path: 'lens.flangeDistance', value: rounded(flangeDistance, 2) },
    { path: 'lens.uncertainty.focalLength', value: rounded(standardErrors.focalLength, 2) },
    { path: 'lens.uncertainty.flangeDistance', value: rounded(standardErrors.flangeDistance, 2) },
    { path: 'lens.uncertainty.correlation', kind: 'number', value: roundedCorrelation(correlation) },
    { path: 'lens.uncertainty.readings', kind: 'number', value: readings },
    ...(N === null ? [] : [{ path: 'lens.maxAperture', kind: 'f-number', value: rounded(N.value, 2) } as const]),
    ...(coverage === null
      ? []
      : [
          { path: 'lens.coverage.diameter', value: Math.floor(coverage.value) },
          { path: 'lens.coverage.at', kind: 'magnification', value: coverage.at } as const,
        ]),
    ...(P === null ? [] : [{ path: 'lens.pupilMagnification', kind: 'number', value: rounded(P.value, 3) } as const]),
  ];
}

/** A design takes no finer number. */
const MOST_DECIMALS = 6;

/**
 * Three digits of what is missing to ±1. Of readings that lie near together both errors are large and nearly cancel where
 * the readings are: there the last digits of the correlation are all that is left of the doubt.
 */
function roundedCorrelation(correlation: number): number {
  const missing = Math.max(10 ** -MOST_DECIMALS, 1 - Math.abs(correlation));
  return rounded(correlation, Math.min(MOST_DECIMALS, Math.max(3, 2 - Math.floor(Math.log10(missing)))));
}

const rounded = (value: number, decimals: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals;
