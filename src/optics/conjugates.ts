/**
 * Conjugate distances, in mm, of a lens described by its focal length f and the magnification m. m is 0 at infinity and
 * positive for a real image, which stands upside down (textbooks print it negative). u and v count from the front and
 * the rear principal plane. The equations are those of the thin lens, 1/u + 1/v = 1/f, which hold for any lens between
 * its principal planes: OpenStax, University Physics vol. 3, "Thin Lenses".
 */

/** From the front principal plane to the subject, u = f(1 + 1/m); infinite at m = 0. */
export const subjectDistance = (f: number, m: number): number => f * (1 + 1 / m);

/** From the rear principal plane to the film, v = f(1 + m). */
export const imageDistance = (f: number, m: number): number => f * (1 + m);

/**
 * Magnification of a subject at distance u, m = f/(u − f); 0 for one infinitely far.
 *
 * @returns null where no real image is formed, u ≤ f: such a camera is refused, not designed
 */
export const magnificationAt = (f: number, u: number): number | null => (u > f ? f / (u - f) : null);

/**
 * Magnification of an image at distance v, m = (v − f)/f. v is the whole distance, not the extension beyond infinity.
 *
 * @returns null where no real image can stand, v < f
 */
export const magnificationFromImage = (f: number, v: number): number | null => (v >= f ? (v - f) / f : null);

/** How far the film stands behind its place at infinity, x' = f·m: Newton's form, whatever the flange distance is. */
export const extension = (f: number, m: number): number => f * m;

/** How far the subject stands ahead of the front focal point, x = f/m; x·x' = f² (Newton). */
export const beyondFrontFocus = (f: number, m: number): number => f / m;

/** What says where a lens focuses: its focal length, and its flange distance behind the seat at z = `seat`. */
export interface LensFigures {
  readonly focalLength: number;
  /** From the lens seat to the film at infinity. */
  readonly flangeDistance: number;
  /** z of the lens seat. */
  readonly seat: number;
}

/**
 * z of the film plane at a magnification, seat + V + f·m.
 *
 * The flange distance V is measured at infinity; from there the extension alone grows. V is not f: most salvaged lenses
 * differ by several per cent, telephotos by half.
 */
export const filmPlane = ({ focalLength, flangeDistance, seat }: LensFigures, m: number): number =>
  seat + flangeDistance + extension(focalLength, m);

/**
 * From subject to film, f(2 + m + 1/m) + HH'.
 *
 * @param hiatus HH', from the front to the rear principal plane, positive where the rear one is nearer the image
 */
export const totalDistance = (f: number, m: number, hiatus = 0): number => f * (2 + m + 1 / m) + hiatus;

/** From the lens seat to the subject, f(2 + 1/m) + HH' − V; `hiatus` as in `totalDistance`. */
export const seatToSubject = (
  { focalLength, flangeDistance }: Pick<LensFigures, 'focalLength' | 'flangeDistance'>,
  m: number,
  hiatus = 0,
): number => focalLength * (2 + 1 / m) + hiatus - flangeDistance;

/**
 * Factor by which exposure grows as the film moves back, (1 + m/P)².
 *
 * Holds for every lens. The square of draw over focal length is the same only where V = f: a telephoto at 1:2 would be
 * given no factor at all. Source: encyclopedia article F-number, "Working f-number".
 *
 * @param P pupil magnification, exit over entrance pupil
 */
export const extensionFactor = (m: number, P = 1): number => (1 + m / P) ** 2;

/** The extension factor in stops, 2·log2(1 + m/P). */
export const extensionStops = (m: number, P = 1): number => 2 * Math.log2(1 + m / P);

/** f-number at which the film is lit, N(1 + m/P). Source as `extensionFactor`. */
export const workingAperture = (N: number, m: number, P = 1): number => N * (1 + m / P);
