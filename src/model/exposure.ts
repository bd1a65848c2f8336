/** What an exposure is reckoned from: every figure resolved, lengths in mm, times in s, energies in J. */
export interface ExposureGiven {
  readonly lens: {
    readonly focalLength: number;
    readonly pupilMagnification: number;
  };
  /** Largest circle that still looks like a point, on the film. */
  readonly circleOfConfusion: number;
  /** Of the subject, the eyes of a sitter; 0 at infinity. */
  readonly magnification: number;
  /** As marked and set; taken as the number that it is. */
  readonly aperture: number;
  /** Exposure index of paper or film; null where nobody says. */
  readonly speed: number | null;
  /** What stands in the light, each with the factor by which it lengthens the exposure. */
  readonly filters: readonly GivenFilter[];
  readonly reading: Reading | null;
  /** From lamp to subject; null where it stands as at the reading. */
  readonly lampDistance: number | null;
  /** Energy of one pop at most, J; null where nobody says. */
  readonly flashMost: number | null;
  readonly reciprocity: Reciprocity | null;
  /** More exposure than all this asks for, stops: what earlier sheets of a log have taught. Left out without a log. */
  readonly dialled?: number;
}

export interface GivenFilter {
  readonly name: string;
  readonly factor: number;
}

/** One setting that is known to be right: read from a meter, or found by a test. */
export type Reading = (MeterReading | FlashReading) & {
  readonly speed: number;
  readonly aperture: number;
  /** A test made with the camera has its own extension in it, a meter none: 0. */
  readonly magnification: number;
  /** Of the filters that were in the light at a test; 1 for a meter. */
  readonly filterFactor: number;
};

interface MeterReading {
  readonly kind: 'meter';
  /** As metered: of a long test exposure, without what the paper or film lost in it. */
  readonly time: number;
}

interface FlashReading {
  readonly kind: 'flash';
  readonly energy: number;
  /** From lamp to subject. */
  readonly distance: number;
}

/** How a long exposure is lengthened: t^p above 1 s, or the maker's or the user's own table, times in s. */
export type Reciprocity =
  | { readonly exponent: number }
  | { readonly table: readonly { readonly metered: number; readonly given: number }[] };

/**
 * The setting for a sitting: what `expose --json` prints before the remarks. What does not apply is null. Lengths in mm,
 * times in s, energies in J (watt seconds).
 */
export interface Exposure {
  readonly magnification: number;
  /** From the front principal plane; null at infinity. */
  readonly subjectDistance: number | null;
  readonly extensionFactor: number;
  readonly filterFactor: number;
  readonly aperture: number;
  readonly workingAperture: number;
  /** In all pops together. */
  readonly energy: number | null;
  readonly pops: number | null;
  /** By the meter and the factors. */
  readonly time: number | null;
  /** With what the paper or film loses in a long exposure; null where that is not known and the time is above 1 s. */
  readonly correctedTime: number | null;
  /** How much more exposure each asks for than the reading had, in stops; the total without reciprocity. */
  readonly stops: {
    readonly extension: number;
    readonly filter: number;
    readonly speed: number | null;
    readonly aperture: number | null;
    readonly distance: number | null;
    /** What was found by dialling in; null without a log. */
    readonly dialled: number | null;
    readonly total: number;
  };
  /** From the front principal plane; far is null where it is infinite. */
  readonly depthOfField: { readonly near: number; readonly far: number | null };
}
