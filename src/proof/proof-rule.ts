import type { Build } from '../assembly/build.js';
import type { PlacedBox } from '../assembly/extent.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';

/**
 * A rule about wood. Its value is measured on the placed parts; its limit is the trade's, from what was typed and from
 * other lengths that are measured. It knows nothing of how the parts came by their sizes.
 */
export type ProofRule = (design: Design, build: Build) => readonly Finding[];

/** The boxes of a part in all of its places. */
export interface Boxed {
  readonly part: Part;
  readonly boxes: readonly PlacedBox[];
}

/** A rule that looks at every piece; their boxes are measured once for all such rules. */
export type PieceRule = (design: Design, build: Build, pieces: readonly Boxed[]) => readonly Finding[];
