import type { Finding } from './finding.js';

/**
 * Lenses by formats, and what camera each pair could become: what `survey --json` prints. Lengths in mm, areas in mm²,
 * masses in kg, magnifications as numbers with 0 for infinity. What there is not is null.
 */
export interface SurveyDocument {
  readonly schema: 1;
  readonly lists: readonly ListSurveyed[];
  readonly lenses: readonly LensSurveyed[];
  /** From the smallest image to the largest. */
  readonly formats: readonly FormatSurveyed[];
  /** In the order asked for. */
  readonly pairs: readonly SurveyPair[];
}

/** A list of lenses, and what holds for all of them. */
export interface ListSurveyed {
  readonly file: string;
  /** Whether the list says nothing of a nearest focus, so that the usual one is taken. */
  readonly nearestAssumed: boolean;
  /** What is odd about the sheet, the focus, the holders and the formats of the list, in the words of `plan`. */
  readonly findings: readonly Finding[];
}

export interface LensSurveyed {
  readonly name: string;
  /** The list that it stands in. */
  readonly file: string;
  readonly focalLength: number;
  readonly flangeDistance: number;
  /** As an f-number. */
  readonly maxAperture: number;
  /** Diameter of the image circle at infinity; null where nobody says. */
  readonly imageCircle: number | null;
  /** What is odd about its own figures, in the words of `plan`. */
  readonly findings: readonly Finding[];
}

export interface FormatSurveyed {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly image: { readonly short: number; readonly long: number };
  /** Whether nobody said how large the image is: the nominal size less the rebate. */
  readonly imageAssumed: boolean;
}

/**
 * - covers: the whole image, wherever the camera focuses
 * - covers-from: from a magnification on that lies within its reach
 * - never-covers: nowhere within its reach
 * - coverage-unknown: nobody says how large the image circle is
 * - does-not-close: two boxes with this lens do not even close on the farthest focus asked for
 */
export type SurveyState = 'covers' | 'covers-from' | 'never-covers' | 'coverage-unknown' | 'does-not-close';

/** What nobody said and was taken from elsewhere. */
export type Assumption = 'flangeDistance' | 'maxAperture' | 'barrel' | 'holder';

export interface SurveyPair {
  readonly lens: string;
  readonly format: string;
  readonly state: SurveyState;
  /** Magnification from which the circle covers the image, within reach or not; 0 at infinity, null where it is unknown. */
  readonly coversFrom: number | null;
  /** The nearest focus asked for; null where it lies within the focal length: as near as it goes. */
  readonly asked: number | null;
  /** The nearest that two boxes could reach with this lens; null where they do not close. */
  readonly reachable: number | null;
  /** The nearest that the camera below is sized for: the one asked for, or what is reached of it. */
  readonly nearest: number | null;
  /** Of the nearest, from the front principal plane. */
  readonly subjectDistance: number | null;
  /** Magnifications between which the camera below focuses and the lens covers; null where there are none, or unknown. */
  readonly use: { readonly from: number; readonly to: number } | null;
  /** How the lens is held; where nobody says, from the side that reaches nearer. */
  readonly mount: { readonly by: 'clamp' | 'flange' | 'ring'; readonly side: 'front' | 'inside' };
  readonly holders: readonly string[];
  readonly assumed: readonly Assumption[];
  readonly camera: CameraSurveyed | null;
}

export interface CameraSurveyed {
  readonly travel: number;
  readonly width: number;
  readonly height: number;
  /** Over everything but the lens. */
  readonly depthClosed: number;
  /** Over everything but the lens. */
  readonly depthOpen: number;
  /** kg, with the glass and the lens, no holder. */
  readonly mass: number;
  /** Of all parts of plywood, holders not counted, mm². */
  readonly plywoodArea: number;
  /** That area over what can be used of a sheet: fewer will not do, more may be needed. */
  readonly sheets: number;
  /** Ids of the parts that are larger than a sheet. */
  readonly largerThanSheet: readonly string[];
  /**
   * Rules of level error that `plan` would find broken, but for those of `brokenAsAssumed`; what the lens covers is told by
   * the state, and not here. Null where they were not looked at: the lens never covers, and nobody builds that camera.
   */
  readonly broken: readonly string[] | null;
  /** Those that hang on what nobody said of the lens, such as its barrel: once that is measured they may be kept. */
  readonly brokenAsAssumed: readonly string[] | null;
}
