import { arrange } from '../assembly/arrangement.js';
import type { Build } from '../assembly/build.js';
import { spanOf } from '../assembly/span-of.js';
import { workbench } from '../assembly/workbench.js';
import type { Design } from '../design/design.js';
import type { Kernel } from '../geometry/kernel.js';
import type { Finding } from '../model/finding.js';
import { collisions } from './collisions.js';
import { contacts } from './contacts.js';
import { type Clearance, clearances, groupsPart } from './groups.js';

/** What was proven of a camera, with the figures that prove it. */
export interface Proof {
  readonly findings: readonly Finding[];
  /** Pieces of all set-ups, and pairs of them that come near each other. */
  readonly pieces: number;
  readonly pairs: number;
  /** Air round what moves. */
  readonly clearances: readonly Clearance[];
}

/**
 * Proves, or refutes with the place and the number, that the parts go together, move, and keep out light. It looks at the
 * finished parts where they stand, and knows nothing of how they came by their sizes.
 */
export function prove({ workshop }: Design, build: Build, kernel: Kernel): Proof {
  return kernel.stage((bench) => {
    const arrangement = arrange(build, workbench(bench), reserveOf(build));
    const found = clearances(arrangement);
    return {
      findings: [
        ...collisions(build, arrangement, Math.max(0, -workshop.fits.press)),
        ...contacts(build.parts, arrangement),
        ...groupsPart(build.parts, found),
      ],
      pieces: arrangement.pieces.length,
      pairs: arrangement.pairs(0).length,
      clearances: found,
    };
  });
}

/** From the sole's rear edge at the farthest seat to the end stop: so far the slide runs past the nearest focus. */
function reserveOf(build: Build): number {
  const farthest = Math.max(...build.stations.map(({ rear }) => rear));
  return Math.max(0, spanOf(build, 'T5').z[0] - spanOf(build, 'R4L', { rear: farthest }).z[1]);
}
