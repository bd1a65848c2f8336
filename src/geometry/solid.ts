import type { ClosedPath } from './path.js';
import type { Matrix4 } from './placement.js';

/** A profile drawn out along its own z from 0 to `height`, then placed. */
export interface Prism {
  readonly profile: ClosedPath;
  readonly holes: readonly ClosedPath[];
  readonly height: number;
  readonly matrix: Matrix4;
}

/** What a printed part is made of: the prisms that are joined, less the prisms that are taken away. */
export interface SolidRecipe {
  readonly add: readonly Prism[];
  readonly cut: readonly Prism[];
}
