/** What was read with a lens on the bench, and what came of it. Lengths in mm. */

/** One sharp image on the ground glass. */
export interface BenchReading {
  /** Image over object; 0 where something infinitely far was focused. */
  readonly magnification: number;
  /** From the lens seat to the ground surface of the glass. */
  readonly distance: number;
  /** Standard uncertainties, where they were stated. */
  readonly magnificationDoubt: number | null;
  readonly distanceDoubt: number | null;
  /** From the lens seat to the object, where it was measured. */
  readonly objectDistance: number | null;
}

export interface BenchReadings {
  readonly name: string | null;
  readonly readings: readonly BenchReading[];
  /** Diameters of the bright disc at full aperture, seen from the front and from the rear; empty where not read. */
  readonly pupils: { readonly front: readonly number[]; readonly rear: readonly number[] };
  /** Diameters of good light on the glass, each at a magnification or at a distance from the lens seat. */
  readonly coverage: readonly (
    | { readonly diameter: number; readonly magnification: number }
    | { readonly diameter: number; readonly distance: number }
  )[];
  /** The hole of the full aperture itself, and how much the front group enlarges it (null: not known). */
  readonly hole: { readonly diameters: readonly number[]; readonly enlargement: number | null } | null;
  /** What the reader of the file took for granted. */
  readonly taken: readonly string[];
}

/** Why no lens comes of the readings: where in the file, what, and what to do. */
export interface BenchFault {
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly accepted: string;
}

/** A measured figure. What a single reading cannot tell is null. */
export interface Measured {
  readonly value: number;
  readonly standardError: number | null;
  /** Half of the interval that holds it in 95 of 100 cases. */
  readonly interval: number | null;
}

export interface LensPrediction {
  readonly magnification: number;
  readonly distance: number;
  readonly standardError: number;
  readonly interval: number;
}

export interface LensOutlier {
  /** Number among the readings, from 1. */
  readonly row: number;
  readonly residual: number;
  /** Its residual in standard errors of the line through the others. */
  readonly studentised: number;
  /** What that may be at most. */
  readonly critical: number;
  /** Whether it lies on the line of the others where its magnification is turned over. */
  readonly turnedOver: boolean;
}

export interface LensRemark {
  readonly level: 'warning' | 'note';
  readonly message: string;
  readonly hint: string;
}

/** The document of `tailboard lens --json`. */
export interface LensDocument {
  readonly schema: 1;
  readonly name: string | null;
  readonly readings: number;
  readonly focalLength: number;
  readonly flangeDistance: number;
  readonly standardErrors: { readonly focalLength: number; readonly flangeDistance: number };
  /** Half of the intervals that hold them in 95 of 100 cases. */
  readonly intervals: { readonly focalLength: number; readonly flangeDistance: number };
  readonly correlation: number;
  readonly residualStandardDeviation: number;
  readonly weighted: boolean;
  /** In the order of the readings. */
  readonly residuals: readonly {
    readonly row: number;
    readonly magnification: number;
    readonly distance: number;
    readonly residual: number;
  }[];
  readonly outliers: readonly number[];
  readonly outlierTest: {
    readonly name: string;
    readonly critical: number | null;
    readonly found: readonly LensOutlier[];
    /** The line without them; null where there are none, or too few readings are left. */
    readonly without: {
      readonly focalLength: number;
      readonly flangeDistance: number;
      readonly standardErrors: { readonly focalLength: number; readonly flangeDistance: number };
    } | null;
  };
  readonly predictions: readonly LensPrediction[];
  readonly pupilMagnification: Measured | null;
  /** Brought to one magnification, 0 being infinity. */
  readonly coverage: (Measured & { readonly at: number }) | null;
  readonly maxAperture: Measured | null;
  /** The entrance pupil over the hole of the full aperture, where both were measured. */
  readonly frontEnlargement: number | null;
  readonly remarks: readonly LensRemark[];
}
