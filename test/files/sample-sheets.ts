import { layOut } from '../../src/sheets/lay-out.js';
import { inventedCamera, stock } from '../sheets/invented-camera.js';

export const kerf = 0.15;

/** The sheets of the invented camera: fingers, windows with parts in them, slots, circles, open and closed engraving. */
export const { sheets: sampleSheets, offcuts } = layOut(inventedCamera, { materials: stock, kerf, effort: 0 });
