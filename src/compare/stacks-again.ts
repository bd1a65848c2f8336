import type { BuiltPlan } from '../model/built-camera.js';
import type { PlanSpacer } from '../model/plan.js';

/** Stacks of plies and shims that are others than they were, in words; shims are no parts that are cut again. */
export interface StacksAgain {
  readonly spacers: readonly string[];
  readonly glassFrame: readonly string[];
}

/** The stacks of a later camera that the earlier one does not have as they are. */
export function stacksAgain(before: BuiltPlan, after: BuiltPlan): StacksAgain {
  const spacers = after.spacers.flatMap((spacer): readonly string[] => {
    const { holder, under } = spacer;
    const was = before.spacers.find((one) => one.holder === holder);
    if (under === 'none') return [];
    if (was === undefined || was.under === 'none') return [`the spacer of the ${holder}`];
    if (was.under !== under) return [`the spacer of the ${holder}, now under the ${under}`];
    return areSame(was, spacer) ? [] : [`the spacer of the ${holder}, of other layers`];
  });
  const isKept = areSame(before.groundGlass, after.groundGlass);
  return { spacers, glassFrame: isKept ? [] : ['the glass frame, of other layers'] };
}

type Layers = Pick<PlanSpacer, 'plies' | 'shims'>;

/** What is read from a file was rounded to a thousandth. */
const ROUNDING = 1e-3;

const areSame = (a: Layers, b: Layers): boolean => areAlike(a.plies, b.plies) && areAlike(a.shims, b.shims);

const areAlike = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((size, i) => Math.abs(size - (b[i] ?? 0)) <= ROUNDING);
