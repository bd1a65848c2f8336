import type { Point } from '../geometry/path.js';

/** Corners one after the other, edges straight, the first corner not repeated. */
type Loop = readonly Point[];

/**
 * A piece of sheet that is left of an earlier job, or an odd piece that lies about: what stands in its file. Lengths from
 * its lower left corner, the face grain along x.
 */
export interface Remnant {
  /** With its thickness: plywood-4.05. */
  readonly material: string;
  readonly thickness: number;
  /** The edge of the piece as it is, no margin taken off; anticlockwise. */
  readonly outline: Loop;
  /** What has been cut out of it; clockwise. They may overlap each other and the edge. */
  readonly holes: readonly Loop[];
}
