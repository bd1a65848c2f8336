import type { Cited } from '../standards/cited.js';

/** How far things stray from the size that was written down, each way, where nobody has measured. mm if not said otherwise. */

const PRACTICE = 'common practice, no source';

/** A sheet read at one place: mills let a panel vary by 0.6 within itself. */
export const oneReading: Cited<number> = {
  value: 0.3,
  source: 'plywood mills’ size sheets to EN 315, read in excerpt: 0.6 within a panel',
};

/** Fibre sheet or hard card read at one place: it is rolled, and varies little. */
export const oneReadingOfBoard: Cited<number> = { value: 0.05, source: PRACTICE };

/** A reading of a sheet's edge between the jaws of a caliper: limits, two sigmas. */
export const caliperOnWood: Cited<number> = { value: 0.02, source: PRACTICE };

/** A depth read with the caliper's rod, to a frosted face or to a soft sheet: limits, two sigmas. */
export const depthReading: Cited<number> = { value: 0.05, source: PRACTICE };

/** What a glue line adds. */
export const glueLine: Cited<{ readonly least: number; readonly most: number }> = {
  value: { least: 0.03, most: 0.1 },
  source: PRACTICE,
};

/** Shim stock, as a share of its thickness. */
export const shimStock: Cited<number> = { value: 0.1, source: PRACTICE };

/** Float glass up to 6 mm. */
export const paneThickness: Cited<number> = { value: 0.2, source: 'from memory: EN 572-2; not read' };

/** Moisture of the wood, as a share of its dry mass, between a heated room and a damp one: from 9 hundredths, each way. */
export const moistureChange: Cited<number> = { value: 0.03, source: PRACTICE };
