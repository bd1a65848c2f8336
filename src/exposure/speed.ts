/**
 * Speeds of film and paper. The ISO speed P of a printing paper is not a film's: another density is looked for and another
 * constant is used, so that paper of P500 is exposed in the camera at about 4.
 */

/** Mean exposure on the film, lx s, that a meter aims for at a speed. Source: thread quoting the exposure-meter standard, photrio.com. */
export const aimedExposure = (speed: number): number => 8 / speed;

/** The logarithmic speed in degrees, 1 + 10·log10 S, rounded. From memory: ISO 6, article Film speed. */
export const degrees = (speed: number): number => Math.round(1 + 10 * Math.log10(speed));

/** Exposure that gives a paper of speed P a density of 0.60 above its base, lx s. From memory: ISO 6846:1992. */
export const paperExposure = (P: number): number => 1000 / P;

/**
 * Where to begin with a paper in the camera: the index at which a meter aims for that density. To half a stop at best; a
 * test says the rest (common practice, no source).
 */
export const roughPaperIndex = (P: number): number => aimedExposure(1) / paperExposure(P);

/**
 * ISO range R of a paper, from its exposures at the shadow and the highlight point, 100·(log Hs − log Ht).
 * Source: ISO 6846:1992, abstract; Focal Encyclopedia, p. 679.
 */
export const exposureRange = (shadow: number, highlight: number): number => 100 * Math.log10(shadow / highlight);
