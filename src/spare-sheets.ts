import { sheetsOf } from './cutting.js';
import type { Design } from './design/design.js';
import { materialName } from './design/material-name.js';
import type { Part } from './model/part.js';
import type { SheetStock } from './sheets/stock.js';

/** The plywood of a design as it is called at another thickness. */
export const ofThickness = ({ material, thickness }: Design['plywood'], now: number): string => {
  const ending = materialName('', thickness);
  return materialName(material.endsWith(ending) ? material.slice(0, -ending.length) : material, now);
};

/**
 * What single parts are cut from: the sheets of the design that are of their material, and where it has none of that, a sheet
 * of the plywood's size.
 */
export function sheetsFor(design: Design, parts: readonly Part[]): readonly SheetStock[] {
  const flat = parts.flatMap((part) => (part.kind === 'flat' ? [part] : []));
  const materials = new Map(flat.map(({ material, thickness }) => [material, thickness]));
  return [...materials].flatMap(([material, thickness]) => {
    const had = sheetsOf(design).filter((sheet) => sheet.material === material);
    return had.length > 0 ? had : [{ material, thickness, sheet: design.plywood.sheet }];
  });
}
