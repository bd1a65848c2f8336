import type { Cited } from './cited.js';

/** Length of the slot of a falling shutter, in diameters of the light that it crosses; shorter, it is a stop itself. */
export const slotInDiameters: Cited<{ readonly least: number; readonly most: number }> = {
  value: { least: 1, most: 3 },
  source:
    'Dictionary of Photography, "Shutters, Instantaneous", rodsmith.org.uk; Encyclopedic Dictionary of Photography, "Shutter", gluedideas.com',
};
