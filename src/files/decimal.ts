/**
 * A number as the writers print it: at most four decimals (a tenth of a micrometre), no exponent, no −0, always a
 * point. This is the one place where lengths on sheets are rounded.
 */
export const decimal = (value: number): string => String(rounded(value));

/** The same as a number. */
export const rounded = (value: number): number => Math.round(value * 1e4) / 1e4 || 0;
