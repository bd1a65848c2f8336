import type { Kit, KitPart } from '../model/kits.js';
import type { FlatPart } from '../model/part.js';
import type { Sheet } from '../sheets/sheet.js';

/** A part and how many of it are in one kit. */
export interface PerKit {
  readonly part: Pick<FlatPart, 'id' | 'name'>;
  readonly count: number;
}

/**
 * Which pieces go into which kit. Pieces of one part are numbered over the whole run, in the order of the sheets: the
 * first so many are for the first kit, the next for the second. Kits are alike, so pieces bear no number of their kit.
 */
export function kitsOf(pieces: readonly PerKit[], copies: number, sheets: readonly Sheet[]): readonly Kit[] {
  const sheetOf = new Map(
    sheets.flatMap(({ name, placed }) => placed.map(({ part, instance }) => [`${part}.${instance}`, name] as const)),
  );
  const names = sheets.map(({ name }) => name);
  return Array.from({ length: copies }, (_, n): Kit => {
    const parts = pieces
      .filter(({ count }) => count > 0)
      .map(({ part: { id, name }, count }): KitPart => {
        const own = Array.from({ length: count }, (_, i) => n * count + i + 1);
        return {
          id,
          name,
          // what found no room on any sheet is told as a broken rule
          pieces: own.flatMap((instance) => {
            const sheet = sheetOf.get(`${id}.${instance}`);
            return sheet === undefined ? [] : [{ instance, sheet }];
          }),
        };
      });
    const cut = new Set(parts.flatMap((part) => part.pieces.map(({ sheet }) => sheet)));
    return { kit: n + 1, parts, sheets: names.filter((name) => cut.has(name)) };
  });
}

/**
 * The order in which sheets are cut: the materials of which there are few sheets come first, so that every sheet of the one
 * that takes days can fill boxes.
 */
export function inCuttingOrder(sheets: readonly Sheet[]): readonly Sheet[] {
  const countOf = (material: string) => sheets.filter((sheet) => sheet.material === material).length;
  const kinds = [...new Set(sheets.map(({ material }) => material))];
  const order = [...kinds].sort((a, b) => countOf(a) - countOf(b) || kinds.indexOf(a) - kinds.indexOf(b));
  return order.flatMap((material) => sheets.filter((sheet) => sheet.material === material));
}
