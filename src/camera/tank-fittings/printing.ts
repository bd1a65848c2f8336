/** Three lines of 0.4 are 1.2, though the numbers of a machine say a little more. */
const ROUNDING = 1e-9;

/** A wall is a whole number of lines; M8.06 [verified: R67], with 1.2 as a floor. */
const lines = (least: number, nozzle: number): number => Math.ceil(least / nozzle - ROUNDING) * nozzle;

const LEAST_WALL = 1.2;
/** Where liquid stands or glue holds, a line more. Common practice, no source. */
const OUTER_WALL = 1.6;

/** Thicknesses that a nozzle prints. */
export const wallsOf = (nozzle: number) => ({
  outer: lines(OUTER_WALL, nozzle),
  inner: lines(LEAST_WALL, nozzle),
  /** Counted along the bed: there a wall at 45° is 1.41 times as thick as it is. */
  sloping: lines(LEAST_WALL * Math.SQRT2, nozzle),
});

/** How far a prism reaches into its neighbour, or a cut into the air, so that no two faces of a step coincide. */
export const PAST = 1;

/** Air kept to the dark slide's channel and to its handle. Common practice, no source. */
export const SLIDE_AIR = 1;
