/**
 * The stop of a lens. An f-number goes by the entrance pupil, the stop as the subject sees it through the glass before it:
 * of a lens with its stop between the glasses the hole is smaller. Sources: encyclopedia article F-number; Cassell's
 * Cyclopaedia of Mechanics, "Aperture of stops".
 */

/** Diameter of the entrance pupil, f/N, mm. */
export const entrancePupil = (f: number, N: number): number => f / N;

/** f-number of an entrance pupil, by its diameter in mm. */
export const fNumberOfPupil = (f: number, diameter: number): number => f / diameter;

/**
 * How much larger the hole of a stop looks from the front than it is, from the hole that a lens has at its widest f-number,
 * as measured: one reading that holds for every stop put into the same slot.
 */
export const enlargementOfStop = (f: number, N: number, hole: number): number => entrancePupil(f, N) / hole;

/** Diameter of the hole to cut for an entrance pupil, mm; `enlargement` is how much larger it looks from the front. */
export const holeOfPupil = (pupil: number, enlargement: number): number => pupil / enlargement;

/**
 * f-number of an old Uniform System number, N²/16: U.S. 4 is f/8, U.S. 16 is f/16, and U.S. 8 the exact f/11.3.
 * Sources: encyclopedia article F-number, numbering systems; Dictionary of Photography, "Diaphragms".
 */
export const fNumberOfUniformSystem = (number: number): number => 4 * Math.sqrt(number);

/** Green light, to which eye and most emulsions are bright, mm (common practice, no source). */
const GREEN = 550e-6;

/**
 * Diameter of a pinhole at a distance from the film, mm: √(k·λ·F). k = 2.44 makes the hole as wide as the middle of the
 * disc that diffraction throws (list of sundial makers, "Pinhole"); 1.9² is the usual constant of pinhole makers.
 */
export const pinhole = (distance: number, k = 2.44): number => Math.sqrt(k * GREEN * distance);
