import { inch } from '../units/length.js';
import { mm, tenth } from '../units/print.js';

/** As `plan` has it: outside of these a focal length is odd for a camera that is carried, mm. */
const LEAST = 40;
const MOST = 1500;

/** What is odd about a focal length that came of readings, and what may have been meant; null where nothing is. */
export function focalSlip(f: number): { readonly message: string; readonly hint: string } | null {
  if (f >= LEAST && f <= MOST) return null;
  const message = `By these readings the focal length is ${mm(tenth(f))}; ${mm(LEAST)} to ${mm(MOST)} would be usual. A bare number is read as mm.`;
  const inInches = f < LEAST && f * inch >= LEAST && f * inch <= MOST;
  return {
    message,
    hint: inInches
      ? `If the lengths were meant in inches, the focal length is ${mm(tenth(f * inch))}: write in behind each of them, such as 9 1/8 in.`
      : 'Look at the lengths and their unit again: 9 1/8 in, or 23.2 cm.',
  };
}
