import { footRules } from './foot-rules.js';
import { lightRules } from './light-rules.js';
import { seatRules } from './seat-rules.js';
import { slideRules } from './slide-rules.js';
import type { WholeRule } from './whole-rule.js';

/** Rules of the whole that need no solid geometry. Each finding names value, limit, unit and the cheapest cure. */
export const checkWhole: WholeRule = (design, camera, build) =>
  [...lightRules, ...slideRules, ...seatRules, ...footRules].flatMap((rule) => rule(design, camera, build));
