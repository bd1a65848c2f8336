/** Green, to which the eye is keenest and for which pinholes are reckoned, mm. */
const WAVELENGTH = 550e-6;

/**
 * What two published rules put for k. The first makes the hole as wide as the disc that diffraction makes of a point
 * (sundial list, "Pinhole", mail-archive.com); the second, which is wider, is the constant 1.9 of builders
 * (henricvs.blogspot.de, April 2012).
 */
export const pinholeRules = { diffractionDisc: 2.44, builders: 1.9 ** 2 } as const;

/** Diameter of the sharpest pinhole for a film so far behind it, √(k·λ·F), mm: nothing is focused, so F may be any distance. */
export const pinhole = (distance: number, k: number = pinholeRules.diffractionDisc): number =>
  Math.sqrt(k * WAVELENGTH * distance);
