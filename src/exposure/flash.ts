/**
 * A flash cannot be compensated by time: what extension and filters cost goes into aperture, energy, distance or pops.
 * Light on the subject goes with the energy of the flash and with the inverse square of the distance from the lamp.
 */

/** 50 × 2400 J must not become 51 pops to floating point; a billionth of the light is never seen. */
const ROUNDING = 1e-9;

/** Pops that an energy takes, in J, at so much a pop. Pops add linearly; rounded down they would leave the sheet dark. */
export const popsFor = (energy: number, most: number): number => Math.ceil((energy / most) * (1 - ROUNDING));

/** From lamp to subject, mm, where another energy lights it as this one does from its distance. */
export const distanceFor = (energy: number, lit: { readonly energy: number; readonly distance: number }): number =>
  lit.distance * Math.sqrt(energy / lit.energy);

/** f-number at which another energy, or another time, exposes as this one does at its own. */
export const apertureFor = (amount: number, right: { readonly amount: number; readonly aperture: number }): number =>
  right.aperture * Math.sqrt(amount / right.amount);
