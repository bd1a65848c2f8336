import type { Cited } from './cited.js';

/** Standard acceleration of free fall, m/s²: kg to N. */
export const standardGravity: Cited<number> = {
  value: 9.80665,
  source: '3rd CGPM (1901), declaration on mass and weight; read at en.wikipedia.org/wiki/Standard_gravity',
};
