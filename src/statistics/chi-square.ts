import { lowerGammaOfHalf } from './gamma.js';

/**
 * Share of cases in which the sum of the squares of `freedom` independent standard normal deviations is at most x
 * (Abramowitz and Stegun 26.4.1, 26.4.19).
 */
export const chiSquareShare = (x: number, freedom: number): number => (x <= 0 ? 0 : lowerGammaOfHalf(freedom, x / 2));
