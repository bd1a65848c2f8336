import { plainNumber } from '../units/print.js';
import { slugOf } from './names.js';

/** The name of a sheet: its material with the measured thickness, such as `plywood-4.05`. */
export const materialName = (material: string, thickness: number): string =>
  `${slugOf(material)}-${plainNumber(thickness)}`;
