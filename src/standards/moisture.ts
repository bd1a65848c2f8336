import type { Cited } from './cited.js';

/** What wood does in damp air, as shares of its length. */

const TESTS =
  'The Technique of Furniture Making, "Stability" (tests of the Forest Products Research Laboratory), msd.com.ua';

/** Three-ply of 5 mm from 30 to 90 % of humidity, which takes its own moisture from 7 to 20 %: in the plane of the sheet. */
export const panelSwelling: Cited<{ readonly along: number; readonly across: number }> = {
  value: { along: 0.0018, across: 0.0027 },
  source: TESTS,
};

/** The same by the rule of a panel association, for each 10 % of humidity, any way. Sources differ by a factor of 1.5 to 2.3. */
export const panelRule: Cited<number> = {
  value: 0.0002,
  source: 'thread quoting a panel association, sawmillcreek.org/archive/index.php/t-188461.html',
};

/** Shrinkage of solid wood from green to oven-dry: never that of a panel in its plane, where veneers hold each other. */
export const woodShrinkage: Cited<{ readonly along: number; readonly radial: number; readonly tangential: number }> = {
  value: { along: 0.004, radial: 0.04, tangential: 0.08 },
  source: 'encyclopaedia article Wood, "Shrinkage and swelling", britannica.com/EBchecked/topic/647253/wood/26161',
};

/** Moisture at which wood has swollen all that it will, as a share of its dry mass. */
export const fibreSaturation: Cited<number> = { value: 0.28, source: 'from memory; sources give 0.25 to 0.30' };

/**
 * By how much a sheet grows thicker for a change of its own moisture (0.03 for three points of a hundred), as a share.
 * Through its thickness nothing holds the veneers, so they swell as solid wood does across the rings; linear up to
 * fibre saturation.
 */
export const thicknessSwelling = (moistureChange: number): number =>
  (woodShrinkage.value.radial * moistureChange) / fibreSaturation.value;
