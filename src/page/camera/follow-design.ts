import type { PlanDocument } from '../../model/plan.js';
import type { ShownSolids } from '../../model/shown.js';
import type { Pose } from '../pose.js';
import { focusRange, magnificationAt, rearAt } from './focus.js';

/** A camera with the plan that it is of. */
export interface Standing {
  readonly plan: PlanDocument;
  readonly solids: ShownSolids;
}

/**
 * How one looks on when a design has changed: the first camera is met at its far end; later ones stay in their set-up and at
 * their magnification, as far as the slide goes.
 */
export function followDesign(pose: Pose, { plan, solids }: Standing, before: PlanDocument | null): Partial<Pose> {
  const setup = solids.setups.find(({ name }) => name === pose.setup) ?? solids.setups[0];
  if (setup === undefined) return {};
  const { holder } = setup;
  const isKept = before?.holders.some(({ name }) => name === holder) === true;
  const rear =
    before !== null && isKept
      ? rearAt(plan, holder, magnificationAt(before, holder, pose.rear))
      : focusRange(plan, holder).farEnd;
  const parts = new Set(solids.bodies.map(({ part }) => part));
  return {
    setup: setup.name,
    rear: Math.min(farthest(solids), Math.max(0, rear)),
    chosen: pose.chosen !== null && parts.has(pose.chosen) ? pose.chosen : null,
  };
}

export const farthest = ({ stations }: ShownSolids): number => Math.max(0, ...stations.map(({ rear }) => rear));
