/** Columns of a reading on the bench, in the order in which they are written. */
export const benchColumns = [
  'magnification',
  'image',
  'object',
  'distance',
  'object_distance',
  'u_magnification',
  'u_image',
  'u_object',
  'u_distance',
] as const;

export type BenchColumn = (typeof benchColumns)[number];

/** One sharp image as it was typed; a column that has nothing is left out. */
export type BenchRow = Readonly<Partial<Record<BenchColumn, string>>>;

/** Readings of a lens as a person fills them in: every cell as it was typed, empty where nothing was. */
export interface BenchSheet {
  readonly name: string;
  readonly readings: readonly BenchRow[];
  /** Several readings of one diameter stand between commas. */
  readonly pupils: { readonly front: string; readonly rear: string };
  readonly coverage: readonly CoverageRow[];
  readonly hole: { readonly diameter: string; readonly enlargement: string };
}

export interface CoverageRow {
  readonly diameter: string;
  readonly magnification: string;
  readonly distance: string;
}
