import type { Push } from '../assembly/bodies.js';
import type { Build } from '../assembly/build.js';
import type { Opaque } from '../assembly/screens.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import type { LightJoint } from '../model/proof.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import { coneOnParts } from './cone.js';
import { holesInDark } from './hole-in-dark.js';
import { leakDrawing } from './leak-drawing.js';
import { jointFindings, lightJoints } from './light-joints.js';
import { type Leak, leakOf } from './light-leak.js';
import { type Scene, sceneOf } from './light-scene.js';
import { searchLight } from './light-search.js';

/** What was proven of the dark in a camera. */
export interface LightProof {
  readonly findings: readonly Finding[];
  /** Every way in that section 11 of the camera's description knows, with its turns and its land. */
  readonly joints: readonly LightJoint[];
  readonly leaks: readonly Leak[];
  /** A small section through each leak, as SVG. */
  readonly drawings: readonly string[];
}

interface LightOptions {
  /** So many gaps are told at most: a side left off lets light past every edge behind it. */
  readonly most?: number;
}

/** light-path, hole-in-dark, and cone-clear once more on all parts. */
export function proveLight(design: Design, build: Build, { most = 8 }: LightOptions = {}): LightProof {
  const scene = sceneOf(build);
  const joints = lightJoints(scene);
  const leaks = leaksIn(scene, most);
  return {
    findings: [
      ...leaks.map(leakFinding),
      ...jointFindings(joints),
      ...holesInDark(scene),
      ...coneOnParts(design, scene),
    ],
    joints,
    leaks,
    drawings: leaks.map((leak) => leakDrawing(scene, leak)),
  };
}

/** Glimpses past the edges of one part that are followed up, as drawn and worn: many are of one gap. */
const FOLLOWED = 12;

/** The gaps, each once: as drawn rather than worn, and where it is widest. */
export function leaksIn(scene: Scene, most: number): readonly Leak[] {
  const found = new Map<string, Leak>();
  const followed = new Map<string, number>();
  const past = (solid: Opaque, push: Push) => `${solid.piece.part.id} ${push === 'none'}`;
  searchLight(
    scene,
    (glimpse) => {
      const key = past(glimpse.solid, glimpse.stance.push);
      const before = followed.get(key) ?? 0;
      if (before >= FOLLOWED) return true;
      followed.set(key, before + 1);
      const leak = leakOf(scene, glimpse);
      if (leak === null) return true;
      const gap = leak.across === null ? 'a whole side' : leak.parts.map(({ id }) => id).join(' ');
      const known = found.get(gap);
      if (known === undefined || worse(leak, known)) found.set(gap, leak);
      return found.size < most;
    },
    (solid, push) => (followed.get(past(solid, push)) ?? 0) >= FOLLOWED,
  );
  const gaps = [...found.values()].filter(({ across }) => across !== null);
  return gaps.length > 0 ? gaps : [...found.values()];
}

const worse = (one: Leak, other: Leak): boolean =>
  one.stance.push === other.stance.push || (one.stance.push !== 'none') === (other.stance.push !== 'none')
    ? one.width > other.width
    : one.stance.push === 'none';

function leakFinding({ parts: [a, b], at, width, across, stance: { setup, station, push } }: Leak): Finding {
  const where = `x ${mm(tenth(at.x))}, y ${mm(tenth(at.y))}, z ${mm(tenth(at.z))}`;
  const gap =
    across === null
      ? `what is open beside ${a.id} (${a.name})`
      : a.id === b.id
        ? `an opening in ${a.id} (${a.name})`
        : `the gap between ${a.id} (${a.name}) and ${b.id} (${b.name})`;
  return {
    rule: 'light-path',
    level: 'error',
    value: width,
    limit: 0,
    unit: 'mm',
    message: `A streak of fog: light falls in a straight line onto the film through ${gap}, ${plainNumber(width, 1)} mm wide at ${where}; ${WHEN[push]}, with ${setup.name}, ${station.name}.`,
    hint:
      across === null
        ? 'Nothing stands there: a part is missing, or the boxes have let go of each other. Cure that first.'
        : push === 'none'
          ? 'Give the light a turn there: a strip, a fence or a ply that covers the gap by 10 mm.'
          : 'It is dark while the camera is new. Make what overlaps there higher or longer, so that it stays dark when things wear.',
  };
}

const WHEN: { readonly [P in Push]: string } = {
  none: 'as it is cut',
  right: 'once the felt is gone and everything sits at the right end of its play',
  left: 'once the felt is gone and everything sits at the left end of its play',
  up: 'once the felt is gone and everything sits at the upper end of its play',
  down: 'once the felt is gone and everything sits at the lower end of its play',
};
