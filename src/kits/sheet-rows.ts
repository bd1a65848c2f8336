import type { KitsDocument } from '../model/kits.js';
import type { Sheet } from '../sheets/sheet.js';

/** A sheet, what of it goes into which kit, and the kits that lack nothing more when it is cut. */
export interface SheetRow {
  readonly sheet: Sheet;
  readonly boxes: readonly {
    readonly kit: number;
    readonly parts: readonly { readonly id: string; readonly count: number }[];
  }[];
  readonly full: readonly number[];
}

export const sheetRows = ({ kits }: Pick<KitsDocument, 'kits'>, sheets: readonly Sheet[]): readonly SheetRow[] =>
  sheets.map((sheet) => ({
    sheet,
    boxes: kits.flatMap(({ kit, parts }) => {
      const here = parts
        .map(({ id, pieces }) => ({ id, count: pieces.filter((piece) => piece.sheet === sheet.name).length }))
        .filter(({ count }) => count > 0);
      return here.length === 0 ? [] : [{ kit, parts: here }];
    }),
    full: kits.flatMap((kit) => (kit.sheets.at(-1) === sheet.name ? [kit.kit] : [])),
  }));
