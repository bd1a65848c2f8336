import type { BoughtPrice, SheetPrice } from '../model/prices.js';
import { sameSize, sameWord } from '../model/same-thing.js';

/** The entry that a thing goes by: the one with its size before the one for all sizes of that name. */
export function priceOf(
  { name, size }: { readonly name: string; readonly size: string },
  bought: readonly BoughtPrice[],
): BoughtPrice | null {
  const named = bought.filter((entry) => sameWord(entry.name, name));
  const [short = size] = size.split(',');
  return (
    named.find((entry) => entry.size !== null && sameSize(entry.size, size)) ??
    named.find((entry) => entry.size !== null && sameSize(entry.size, short)) ??
    named.find((entry) => entry.size === null) ??
    null
  );
}

interface SheetKind {
  readonly material: string;
  readonly width: number;
  readonly height: number;
}

/** plywood, of plywood-4.05 */
const wordOf = (material: string): string => material.replace(/-[\d.]+$/, '');

/** The entry that a sheet goes by: what names it most closely, by its material first. */
export function sheetPriceOf({ material, width, height }: SheetKind, sheets: readonly SheetPrice[]): SheetPrice | null {
  const ofSize = sheets.filter(({ sheet }) => sheet === null || (sheet.width === width && sheet.height === height));
  const closest = (own: readonly SheetPrice[]) => own.find(({ sheet }) => sheet !== null) ?? own[0];
  return (
    closest(ofSize.filter((entry) => sameWord(entry.material, material))) ??
    closest(ofSize.filter((entry) => sameWord(entry.material, wordOf(material)))) ??
    null
  );
}
