import type { Build } from '../assembly/build.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import type { LightJoint } from '../model/proof.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import { capDark } from './cap-dark.js';
import { coneOnParts } from './cone.js';
import { holdersDark } from './holder-dark.js';
import { holesInDark } from './hole-in-dark.js';
import { leakDrawing } from './leak-drawing.js';
import { jointFindings, lightJoints } from './light-joints.js';
import type { Leak } from './light-leak.js';
import { gapWords, leaksIn, WORN } from './light-leaks.js';
import { sceneOf } from './light-scene.js';

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
  readonly onProgress?: (share: number) => void;
}

/** light-path, hole-in-dark, and cone-clear once more on all parts. */
export function proveLight(design: Design, build: Build, { most = 8, onProgress }: LightOptions = {}): LightProof {
  const scene = sceneOf(build);
  const joints = lightJoints(scene);
  const leaks = leaksIn(scene, most, onProgress);
  const holders = holdersDark(design, build, most);
  const cap = capDark(build, most);
  return {
    findings: [
      ...leaks.map(leakFinding),
      ...jointFindings(joints),
      ...holesInDark(scene),
      ...coneOnParts(design, scene),
      ...holders.findings,
      ...cap.findings,
    ],
    joints: [...joints, ...holders.joints],
    leaks,
    drawings: [...leaks.map((leak) => leakDrawing(scene, leak)), ...holders.drawings, ...cap.drawings],
  };
}

function leakFinding(leak: Leak): Finding {
  const { at, width, across, stance } = leak;
  const { setup, station, push } = stance;
  const where = `x ${mm(tenth(at.x))}, y ${mm(tenth(at.y))}, z ${mm(tenth(at.z))}`;
  return {
    rule: 'light-path',
    level: 'error',
    value: width,
    limit: 0,
    unit: 'mm',
    message: `A streak of fog: light falls in a straight line onto the film through ${gapWords(leak)}, ${plainNumber(width, 1)} mm wide at ${where}; ${WORN[push]}, with ${setup.name}, ${station.name}.`,
    hint:
      across === null
        ? 'Nothing stands there: a part is missing, or the boxes have let go of each other. Cure that first.'
        : push === 'none'
          ? 'Give the light a turn there: a strip, a fence or a ply that covers the gap by 10 mm.'
          : 'It is dark while the camera is new. Make what overlaps there higher or longer, so that it stays dark when things wear.',
  };
}
