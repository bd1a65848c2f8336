import type { Build } from '../assembly/build.js';
import type { PlacedPart } from '../assembly/placed-parts.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';

/**
 * A rule about wood. Its value is measured on the placed parts; its limit is the trade's, from what was typed and from
 * other lengths that are measured. It knows nothing of how the parts came by their sizes.
 */
export type ProofRule = (design: Design, build: Build) => readonly Finding[];

/** A rule that looks at every part in all of its places. */
export type PieceRule = (design: Design, build: Build, pieces: readonly PlacedPart[]) => readonly Finding[];
