import type { BathNeed } from '../model/step-sheet.js';

interface Bath {
  /** Poured for one print, ml. */
  readonly volume: number;
  /** Prints that one bath serves. */
  readonly serves: number;
  /** Whether another bath went before it: what is carried out of it is then carried into it too. */
  readonly afterAnother: boolean;
}

/**
 * What a bath takes for all prints, and how much it is thinned.
 *
 * A bath that follows another gets as much from it as it loses to the next. The first one is poured into a dry tank: each
 * print but the last of a bath takes some away that must be made up for, or the next one is poured too little.
 *
 * Thinned: each print brings `carryOver` c of the bath before into the volume V, they mix, and V is drained again, so that
 * after k prints `1 - (V/(V + c))^k` of the bath is liquid of the one before. Taken whole from the bath before, which may be
 * thinned itself: the figure is at the upper end.
 *
 * @param carryOver ml
 */
export function bathNeed(
  { volume, serves, afterAnother }: Bath,
  { prints, carryOver }: { readonly prints: number; readonly carryOver: number },
): BathNeed {
  const baths = Math.ceil(prints / serves);
  const lost = afterAnother ? 0 : (prints - baths) * carryOver;
  const inFullest = Math.min(prints, serves);
  return {
    baths,
    total: baths * volume + lost,
    thinned: afterAnother ? 1 - (volume / (volume + carryOver)) ** inFullest : null,
  };
}
