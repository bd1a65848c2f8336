/**
 * Angle off the axis of the light that meets the film at radius r, tan a = r/(f(1 + m)), rad. It is taken at the working
 * distance, not at infinity, for a symmetric lens (P = 1).
 */
export const angleOffAxis = (r: number, f: number, m: number): number => Math.atan(r / (f * (1 + m)));

/**
 * Light at an angle off the axis against the middle, cos⁴ a. For a lens that neither vignettes nor distorts its pupils;
 * real ones do better or worse. Source: Airplane Photography, "Illumination"; limits: NBS Research Paper RP1824 (1947).
 */
export const naturalFalloff = (angle: number): number => Math.cos(angle) ** 4;

/** The same in stops, −4·log2 cos a: how much darker the corner is. */
export const falloffStops = (angle: number): number => -4 * Math.log2(Math.cos(angle));
