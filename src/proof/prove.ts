import { arrange } from '../assembly/arrangement.js';
import type { Build } from '../assembly/build.js';
import { spanOf } from '../assembly/span-of.js';
import { workbench } from '../assembly/workbench.js';
import type { Design } from '../design/design.js';
import type { Kernel } from '../geometry/kernel.js';
import { type Move, wordsFor } from '../model/assembly-move.js';
import { assemblySteps } from '../model/assembly-steps.js';
import type { Finding } from '../model/finding.js';
import type { ProofDocument } from '../model/proof.js';
import { collisions } from './collisions.js';
import { contacts } from './contacts.js';
import { cornerOwners } from './corner-owner.js';
import { nutEdge } from './edges.js';
import { emptyHoles } from './empty-hole.js';
import { clearances, groupsPart } from './groups.js';
import { slidesRun } from './holder-slide.js';
import { type LightProof, proveLight } from './light.js';
import { markRules } from './marks.js';
import { oneWayRules } from './one-way.js';
import { orderOn } from './order.js';
import { registerBudgets, registerRules } from './register.js';
import { staticsRules } from './statics.js';
import { webLeast } from './web.js';

/** What was proven of a camera, and what was found on the way. */
export interface Proof {
  readonly findings: readonly Finding[];
  readonly document: ProofDocument;
  /** A small section through each leak that was found, as SVG. */
  readonly leaks: readonly string[];
}

/** The parts put together as solids: all of the proof that knows nothing of light, and the moves that the book tells. */
export interface PutTogether {
  readonly findings: readonly Finding[];
  readonly pieces: number;
  readonly pairs: number;
  readonly air: ProofDocument['clearances'];
  readonly moves: readonly Move[];
}

export const putTogether = (design: Design, build: Build, kernel: Kernel): PutTogether =>
  kernel.stage((bench) => {
    const on = workbench(bench);
    const arrangement = arrange(build, on, reserveOf(build));
    const air = clearances(arrangement);
    const collided = collisions(build, arrangement, Math.max(0, -design.workshop.fits.press));
    const order = orderOn(build, on, assemblySteps, collided.pairs);
    return {
      findings: [
        ...collided.findings,
        ...contacts(build.parts, arrangement),
        ...groupsPart(build.parts, air),
        ...cornerOwners(build),
        ...order.findings,
      ],
      pieces: arrangement.pieces.length,
      pairs: arrangement.pairs(0).length,
      air,
      moves: order.moves,
    };
  });

export interface ProveOptions {
  /** Gives the proof of the dark, for whoever has it made at the same time on another thread. */
  readonly lightOf?: () => LightProof;
  /** For whoever had the parts put together before. */
  readonly together?: PutTogether;
}

/**
 * Proves, or refutes with the place and the number, that the parts go together, move, and keep out light. It looks at the
 * finished parts where they stand, and knows nothing of how they came by their sizes.
 */
export function prove(
  design: Design,
  build: Build,
  kernel: Kernel,
  { lightOf = () => proveLight(design, build), together = putTogether(design, build, kernel) }: ProveOptions = {},
): Proof {
  const budgets = registerBudgets(design, build);
  const light = lightOf();
  return {
    findings: [
      ...together.findings,
      ...oneWayRules(build),
      ...markRules(build),
      ...emptyHoles(build),
      ...webLeast(design, build),
      ...nutEdge(design, build),
      ...slidesRun(design, build),
      ...light.findings,
      ...registerRules(design, build, budgets),
      ...staticsRules(design, build),
    ],
    document: {
      pieces: together.pieces,
      pairs: together.pairs,
      setups: build.setups.map(({ name }) => name),
      clearances: together.air,
      register: budgets,
      joints: light.joints,
      assembly: together.moves.map(({ step, title, pieces, way }) => ({
        step,
        title,
        pieces,
        from: way === null ? null : wordsFor(way),
      })),
    },
    leaks: light.drawings,
  };
}

/** From the sole's rear edge at the farthest seat to the end stop: so far the slide runs past the nearest focus. */
function reserveOf(build: Build): number {
  const farthest = Math.max(...build.stations.map(({ rear }) => rear));
  return Math.max(0, spanOf(build, 'T5').z[0] - spanOf(build, 'R4L', { rear: farthest }).z[1]);
}
