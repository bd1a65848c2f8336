import { heron } from '../design/worked-designs.js';

/** A design as somebody may write it, its format by name; each test spoils one line of it. */
export const heronDesign = heron
  .replace('# a 5x7\n', '')
  .replace(/format: .*/, 'format: 5x7')
  .replace(/ +pupilMagnification: 1\n/, '');

/** The design with one text in it replaced. */
export function spoiled(from: string, to: string): string {
  if (!heronDesign.includes(from)) throw new Error(`the design does not hold ${from}`);
  return heronDesign.replace(from, to);
}
