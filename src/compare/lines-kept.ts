import type { BuiltPlan } from '../model/built-camera.js';
import { SAME } from './same-edges.js';

/**
 * The holders that a sole of an earlier camera has no index line for, or no number; null where a line on it is wrong now.
 * From the standard a line lies as far as its holder's film lies deeper than the shallowest, whatever the lens: lines stay
 * right where both stay, and where each holder keeps its number.
 */
export function withoutIndexLine(before: BuiltPlan, after: BuiltPlan): readonly string[] | null {
  const depths = ({ holders }: BuiltPlan) => holders.map(({ effectiveDepth }) => effectiveDepth);
  const [was, is] = [depths(before), depths(after)];
  const differ = (a: number, b = Number.POSITIVE_INFINITY) => Math.abs(a - b) > SAME;
  if (differ(Math.min(...was), Math.min(...is)) || was.some((depth, i) => differ(depth, is[i]))) return null;
  return after.holders.slice(was.length).map(({ name }) => name);
}
