/**
 * Guide number of a flash, f-number times distance from the lamp, mm, at a stated speed: the setting on which a flash is
 * sold. It goes with distance, so light goes with its square: 80 counted in feet is 24.4 in metres. Source: "Flash Guide
 * Numbers", openphotographicsociety.org.
 */
export const guideNumber = (N: number, distance: number): number => N * distance;

/** f-number for a distance from the lamp, mm. */
export const apertureByGuide = (guide: number, distance: number): number => guide / distance;

/** The guide number with so many times the energy, or of a film so many times as fast. */
export const guideWithLight = (guide: number, times: number): number => guide * Math.sqrt(times);

/** Of several flashes that light the subject together. */
export const guideTogether = (guides: readonly number[]): number =>
  Math.sqrt(guides.reduce((sum, guide) => sum + guide * guide, 0));
