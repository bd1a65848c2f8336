import type { Problem } from '../design/problem.js';
import { readDocument } from '../design/read-document.js';
import type { Prices } from '../model/prices.js';
import { priceFaults, priceFile, priceSchema, type WrittenPrices } from './price-file.js';

/** Reads what things cost, or tells what is wrong with the file, each at its place. */
export function readPrices(
  text: string,
  file: string,
): { readonly prices: Prices } | { readonly problems: readonly Problem[] } {
  const read = readDocument(text, file, {
    schema: priceSchema,
    kind: priceFile,
    firstKey: 'currency: EUR',
    check: priceFaults,
  });
  return 'problems' in read ? read : { prices: pricesOf(read.value) };
}

const pricesOf = ({ currency, spares, sheets, bought, printed, laser }: WrittenPrices): Prices => ({
  currency,
  spares,
  sheets: sheets.map(({ material, sheet, price }) => ({
    material,
    sheet: sheet === undefined ? null : { width: sheet[0], height: sheet[1] },
    price,
  })),
  bought: bought.map(({ name, size, price, pack, spares: own }) => ({
    name,
    size: size ?? null,
    price: price ?? null,
    pack,
    spares: own ?? null,
  })),
  printed,
  perMinute: laser?.perMinute ?? null,
});
