/**
 * A number as documents have it: to a millionth, a small one to a billionth (a magnification of 1:30 keeps its six
 * figures), no -0; so that the last bits of the arithmetic never reach a file.
 */
export function documentNumber(value: number): number {
  const grid = Math.abs(value) < 10 ? 1e9 : 1e6;
  return Math.round(value * grid) / grid || 0;
}
