/**
 * Depth of field and of focus, mm. N is the f-number as marked, c the circle of confusion, m the magnification, P the
 * pupil magnification, u the subject's distance from the front principal plane.
 */

/** Circles of confusion in the image's diagonal (Zeiss formula's d/1500; common practice, no source for the choice). */
const CIRCLES_IN_DIAGONAL = 1500;

/** Largest circle that still looks like a point, from the image's diagonal. */
export const circleOfConfusion = (imageDiagonal: number, circlesInDiagonal = CIRCLES_IN_DIAGONAL): number =>
  imageDiagonal / circlesInDiagonal;

/** How far the film may stand from its place, each way, N c(1 + m/P). Source: "Depth of Focus", liquisearch.com. */
export const depthOfFocus = (N: number, c: number, m: number, P = 1): number => N * c * (1 + m / P);

/**
 * How far register may be out: a quarter of the depth of focus at infinity, N c/4 (common practice, no source). The
 * other three quarters are left to the holder, the film in it and the eye.
 */
export const registerTolerance = (N: number, c: number): number => depthOfFocus(N, c, 0) / 4;

/** Nearest distance that keeps infinity sharp, f²/(N c) + f. Source: encyclopedia article Hyperfocal distance. */
export const hyperfocal = (f: number, N: number, c: number): number => (f * f) / (N * c) + f;

/**
 * Nearest and farthest sharp distance when focused at u, for P = 1: near = u(H − f)/(H + u − 2f), far = u(H − f)/(H − u),
 * infinite from u = H on. Valid for u > f. The forms that leave f out differ by a per cent at portrait distances and
 * must not be mixed with these. Source: encyclopedia article Hyperfocal distance.
 */
export function depthOfField(
  f: number,
  N: number,
  c: number,
  u: number,
): { readonly near: number; readonly far: number } {
  const H = hyperfocal(f, N, c);
  return {
    near: (u * (H - f)) / (H + u - 2 * f),
    far: u >= H ? Number.POSITIVE_INFINITY : (u * (H - f)) / (H - u),
  };
}

/** A subject close enough that magnification says more than distance. */
interface CloseUp {
  readonly N: number;
  readonly c: number;
  readonly m: number;
  readonly P?: number;
  /** Left out, its term is dropped, which at 1:1 costs a hundredth of a per cent (240 mm at f/22). */
  readonly f?: number;
}

/**
 * Whole depth of field, 2 N c(1 + m/P)/(m² − (N c/f)²); infinite where m·f ≤ N·c, from the hyperfocal distance on.
 * Source: encyclopedia article Depth of field, from memory; the values with P ≠ 1 were found again by tracing rays.
 */
export function closeUpDepth({ N, c, m, P = 1, f = Number.POSITIVE_INFINITY }: CloseUp): number {
  const blur = (N * c) / f;
  return m <= blur ? Number.POSITIVE_INFINITY : (2 * depthOfFocus(N, c, m, P)) / (m * m - blur * blur);
}

/**
 * How far a plane plate of glass between lens and film moves the focus away from the lens, t(1 − 1/n).
 * Source: "Focus Shift in Camera Filters", basiccameraphotography.com: a third of the thickness at n = 1.5.
 */
export const glassShift = (thickness: number, n: number): number => thickness * (1 - 1 / n);

/**
 * Optical depth of a surface that the image reaches through glass: what the lens sees of the physical depth. So of a
 * ground glass with its frosted side to the eye, and of a holder with a window.
 */
export const effectiveDepth = (physical: number, glass: { readonly thickness: number; readonly n: number }): number =>
  physical - glassShift(glass.thickness, glass.n);

/** A lens that is focused and stopped down. */
interface StoppedDown {
  readonly f: number;
  readonly N: number;
  readonly c: number;
  readonly m: number;
  readonly P: number;
}

/**
 * Nearest and farthest sharp distance, from the front principal plane, for any pupils and any magnification, 0 included;
 * far is null where it is infinite, from m·f ≤ N·c on.
 *
 * By rays: the exit pupil, P·f/N across, stands f(m + P) ahead of the film. The cone from it to an image point spreads to
 * c on the film where that point lies at w = f(m + P)·E/(E ∓ c) from the pupil; 1/u + 1/v = 1/f leads back to the subject,
 * the pupil standing f(1 − P) behind the rear principal plane. At P = 1 it is `depthOfField`. A lens stopped down so far
 * that its exit pupil is no wider than c has no near limit but its front focus.
 */
export function depthAbout({ f, N, c, m, P }: StoppedDown): { readonly near: number; readonly far: number | null } {
  const pupil = (P * f) / N;
  const conjugate = (w: number) => f + (f * f) / (w - f * P);
  const film = f * (m + P);
  return {
    near: pupil > c ? conjugate((film * pupil) / (pupil - c)) : f,
    far: m * f <= N * c ? null : conjugate((film * pupil) / (pupil + c)),
  };
}
