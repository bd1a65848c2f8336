import { placedOf } from '../assembly/placed-parts.js';
import { holderClears, slidePath } from './dark-slide.js';
import { register, ribInGroove } from './film-and-glass.js';
import { indexRoom, scaleSense } from './focus-scale.js';
import { foot } from './foot.js';
import { coneClear, wallFlare } from './light-cone.js';
import type { PieceRule, ProofRule } from './proof-rule.js';
import { bothEnds, inequalities } from './slide.js';
import { well } from './well.js';

const rules: readonly PieceRule[] = [
  coneClear,
  wallFlare,
  bothEnds,
  inequalities,
  register,
  ribInGroove,
  well,
  slidePath,
  holderClears,
  scaleSense,
  indexRoom,
  foot,
];

/** The rules of the whole camera that are measured on wood and need no solids: `plan` tells them too. */
export const woodRules: ProofRule = (design, build) => {
  const placed = placedOf(build);
  const pieces = [...placed.byId.values()];
  return rules.flatMap((rule) => rule(design, { ...build, placed }, pieces));
};
