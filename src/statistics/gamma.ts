import { continuedFraction } from './continued-fraction.js';

/*
 * The gamma function at halves and its incomplete form: what the distributions of a few readings are made of. Degrees of
 * freedom are whole numbers, so no argument is anything but a half or a whole one, and no table of coefficients is needed.
 */

/** Further terms no longer move a sum of doubles. */
const NEGLIGIBLE = 1e-16;

/**
 * ln Γ(n/2) by Γ(x + 1) = x Γ(x), from Γ(1/2) = √π or Γ(1) = 1.
 *
 * @param n a positive whole number
 */
export function logGammaOfHalf(n: number): number {
  let sum = n % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let x = n / 2 - 1; x > 0; x--) sum += Math.log(x);
  return sum;
}

/**
 * The regularised lower incomplete gamma function P(n/2, x): a series below x = n/2 + 1, the continued fraction of the
 * upper function from there on (Abramowitz and Stegun, Handbook of Mathematical Functions, 6.5.29 and 6.5.31).
 *
 * @param n a positive whole number
 * @param x not negative
 */
export function lowerGammaOfHalf(n: number, x: number): number {
  if (x === 0) return 0;
  const a = n / 2;
  const front = Math.exp(a * Math.log(x) - x - logGammaOfHalf(n));
  if (x < a + 1) return front * series(a, x);
  return 1 - front / continuedFraction(x + 1 - a, (k) => ({ over: k * (a - k), under: x + 2 * k + 1 - a }));
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; term > sum * NEGLIGIBLE; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}
