import { mm, tenth } from '../units/print.js';

/** From corner to corner, as it is read on a rule: `281.8 mm`. */
export const diagonal = (width: number, height: number): string =>
  mm(tenth(Math.sqrt(width * width + height * height)));
