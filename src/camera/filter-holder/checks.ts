import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { holeRound, plateOf, sidesOf } from '../../assembly/measure.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import type { FilterHolder } from './size.js';

/** A gel over the edge of the opening, each side: less, and it falls through when it curls; a choice of ours. */
const LAP = 2;

/** gel-covers: the gels reach over the edge of the holder's opening all round, wherever they lie in their room. */
export function gelCovers({ gel, pocket }: FilterHolder, build: Build): readonly Finding[] {
  const hole = holeRound(plateOf(build, 'FH1'));
  if (hole === null) return [];
  const lap = (gel - sidesOf(hole).width) / 2 - (pocket - gel / 2);
  return unless(lap >= LAP - ROUNDING, {
    rule: 'gel-covers',
    level: 'warning',
    value: lap,
    limit: LAP,
    unit: 'mm',
    about: 'filterHolder.side',
    message: `Light comes in beside the gels: they are ${mm(gel)} wide, and the opening of their holder, which the corners of the picture ask for, ${mm(tenth(sidesOf(hole).width))}.`,
    hint: `Take gels of ${mm(Math.ceil(gel + 2 * (LAP - lap)))} or more.`,
  });
}

export const filterHolderChecks = [gelCovers];
