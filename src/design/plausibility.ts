import type { Finding } from '../model/finding.js';
import { assumptions } from './assumptions.js';
import type { Design } from './design.js';
import { glassDepth, holderDepths } from './plausible-depths.js';
import { boreAllowed, flangePlausible, lensGoesIn, lensReversed, lensSeatKnown } from './plausible-lens.js';
import { fitLadder, kerfPlausible, thicknessMeasured, thicknessSpread } from './plausible-sheet.js';
import { unitsPlausible } from './plausible-units.js';

/** What was typed can be read but is odd; and what was assumed because it was not typed. */
export const plausibility = (design: Design): readonly Finding[] =>
  [
    flangePlausible,
    lensSeatKnown,
    lensGoesIn,
    lensReversed,
    boreAllowed,
    thicknessMeasured,
    thicknessSpread,
    kerfPlausible,
    fitLadder,
    holderDepths,
    glassDepth,
    unitsPlausible,
    assumptions,
  ].flatMap((rule) => rule(design));
