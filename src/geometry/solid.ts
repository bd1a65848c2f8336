import type { ClosedPath } from './path.js';
import type { Matrix4 } from './placement.js';

/**
 * A profile drawn out along its own z from 0 to `height`, then placed. Where it tapers it grows or shrinks evenly on the way,
 * about its own origin: a circle round it gives a cone.
 */
export interface Prism {
  readonly profile: ClosedPath;
  readonly holes: readonly ClosedPath[];
  readonly height: number;
  readonly matrix: Matrix4;
  /**
   * The profile at `height` over that at 0, above 0; 1 where left out. All of a profile that tapers is seen from its origin,
   * so that what is smaller lies within what is larger.
   */
  readonly taper?: number;
}

/** How many times its profile a prism is at a height of its own. */
export const scaleAt = ({ taper = 1, height }: Pick<Prism, 'taper' | 'height'>, z: number): number =>
  1 + ((taper - 1) * z) / height;

/** What a printed part is made of: the prisms that are joined, less the prisms that are taken away. */
export interface SolidRecipe {
  readonly add: readonly Prism[];
  readonly cut: readonly Prism[];
}
