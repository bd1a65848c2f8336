import { holderRules } from './holder-rules.js';
import { lightRules } from './light-rules.js';
import { slideRules } from './slide-rules.js';
import type { WholeRule } from './whole-rule.js';

/** Rules that look at no wood. Each finding names value, limit, unit and the cheapest cure. */
export const checkWhole: WholeRule = (design, camera) =>
  [...lightRules, ...slideRules, ...holderRules].flatMap((rule) => rule(design, camera));
