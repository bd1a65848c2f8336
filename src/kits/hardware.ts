import type { KitHardware } from '../model/kits.js';
import type { Hardware } from '../model/part.js';
import type { Prices } from '../model/prices.js';
import { priceOf } from './price-of.js';

/** A share that comes to a whole piece must not become one more by rounding. */
const ROUNDING = 1e-9;

/**
 * The hardware of all kits, and spares: of each line so many per cent of what the kits take, rounded up to whole pieces,
 * since what is dropped is a whole screw.
 */
export const hardwareFor = (
  hardware: readonly Hardware[],
  copies: number,
  prices: Pick<Prices, 'spares' | 'bought'>,
): readonly KitHardware[] =>
  hardware.map((line) => {
    const { name, size, count, for: use } = line;
    const wanted = copies * count;
    const percent = priceOf(line, prices.bought)?.spares ?? prices.spares;
    const spares = Math.max(0, Math.ceil((wanted * percent) / 100 - ROUNDING));
    return { name, size, for: use, each: count, wanted, spares, total: wanted + spares };
  });
