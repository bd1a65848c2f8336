import type { Build } from './assembly/build.js';
import { ROUNDING } from './assembly/limit.js';
import { assemble, type Camera } from './camera/camera.js';
import { checkWhole } from './camera/check-whole.js';
import { checkObjects } from './camera/objects.js';
import { sizeAsItStands } from './camera/standing.js';
import type { Design } from './design/design.js';
import { plausibility } from './design/plausibility.js';
import { revisionOf } from './design/revision.js';
import { planDocument } from './files/plan-json.js';
import type { Finding } from './model/finding.js';
import type { Part } from './model/part.js';
import type { PlanDocument } from './model/plan.js';
import { woodRules } from './proof/wood-rules.js';

/** A camera sized, cut out and put together, with everything that was found on the way. */
export interface Planned {
  readonly design: Design;
  readonly revision: string;
  readonly camera: Camera;
  readonly parts: readonly Part[];
  readonly build: Build;
  readonly findings: readonly Finding[];
  /** Whether there is a camera to put together: not where a figure is misread, no boxes fit, or no board fits an old panel. */
  readonly drawable: boolean;
}

/**
 * The way through, first half; `workshop.ts` goes on from parts to sheets, prints and files.
 *
 * ```
 * design file ─read─▶ Design ─size, cut out─▶ Camera ─assemble─▶ Build ─check─▶ Finding[]
 * ```
 *
 * Each arrow is a pure function from immutable records to an immutable record; nothing flows back.
 */
export function planCamera(asked: Design): Planned {
  const { design, camera } = sizeAsItStands(asked);
  const build = assemble(camera);
  const typed = plausibility(asked);
  const misread = isMisread(typed);
  const measured = misread ? [] : measuredOn(design, camera, build);
  const { rearLength, frontLength, overlapRequired } = camera.settingOut;
  const { boardAsks, opening } = camera.objects.lensBoard;
  const drawable =
    !misread &&
    Math.min(rearLength.value, frontLength.value) >= overlapRequired.value &&
    // holes that do not lie in the plug are no plug
    boardAsks.value <= opening + ROUNDING;
  const findings = inOrder([...typed, ...measured]);
  return { design, revision: revisionOf(asked), camera, parts: camera.parts, build, findings, drawable };
}

/** Whether a length was read in the wrong unit: it makes a hundred others wrong, and what follows from it would only bury it. */
export const isMisread = (typed: readonly Finding[]): boolean =>
  typed.some(({ rule, level }) => rule === 'unit-plausible' && level === 'error');

/** What can be said against a camera without solids. */
export const measuredOn = (design: Design, camera: Camera, build: Build): readonly Finding[] => [
  ...checkWhole(design, camera),
  ...woodRules(design, build),
  ...checkObjects(camera.objects, build),
];

/** The camera in figures, as `plan --json` prints them. */
export const planOf = (
  planned: Planned,
  more: readonly Finding[] = [],
  despite: readonly string[] = [],
): PlanDocument => planDocument({ ...planned, findings: inOrder([...planned.findings, ...more]), despite });

/** The most serious first; within a level as they were found. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  const levels = ['error', 'warning', 'note'] as const;
  return levels.flatMap((level) => findings.filter((finding) => finding.level === level));
}
