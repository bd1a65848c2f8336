import type { Exposure, GivenFilter, Reading } from './exposure.js';

/** Something that nobody said and that was taken for granted. */
export interface Assumed {
  /** Key that would have said it. */
  readonly key: string;
  readonly message: string;
}

/** What a sitting is told beside its figures: no rule of the design, and no error. */
export interface Remark {
  /** Such as hold-still. */
  readonly id: string;
  readonly message: string;
  readonly hint: string;
}

/** An exposure for one sitting as `expose --json` prints it. What does not apply is null; mm, s, J. */
export interface SittingDocument extends Exposure {
  readonly schema: 1;
  /** Exposure index of the paper or film. */
  readonly speed: number | null;
  /** From the lens seat, which is easier to reach with a tape; the lens taken as thin, so to a centimetre or two. */
  readonly subjectFromSeat: number | null;
  /** From the lens seat to the film. */
  readonly filmDistance: number;
  readonly lampDistance: number | null;
  /** Of each pop, where the energy is shared out among several. */
  readonly popEnergy: number | null;
  /** The same as a share of full power. */
  readonly popPower: number | null;
  /** What would do with a single pop at full power, all else left as it is; no aperture where the lens opens no wider. */
  readonly onePop: { readonly lampDistance: number; readonly aperture: number | null } | null;
  /** The depth of field from the eyes towards the camera and away from it. */
  readonly aboutEyes: { readonly fore: number | null; readonly aft: number | null };
  readonly filters: readonly GivenFilter[];
  /** What was carried over; null where there was none. */
  readonly reading: (Reading & { readonly tested: boolean }) | null;
  readonly paper: string | null;
  /** What is wanting for an energy or a time. */
  readonly wanting: readonly string[];
  readonly assumed: readonly Assumed[];
  readonly remarks: readonly Remark[];
}
