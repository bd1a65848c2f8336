import type { CastColour, ColourPack } from '../model/sitting-log.js';
import { plainNumber } from '../units/print.js';

/*
 * A colour cast on reversal material is taken away by a weak filter of its complement on the lens. Filters are held as
 * densities in the three bands that filters of the trade are made for: yellow holds back blue, magenta green, cyan red.
 */

export const noPack: ColourPack = { cyan: 0, magenta: 0, yellow: 0 };

const bands = ['cyan', 'magenta', 'yellow'] as const satisfies readonly (keyof ColourPack)[];

/** What takes a cast away: the filter that holds back just that colour. */
const complements: Readonly<Record<CastColour, readonly (keyof ColourPack)[]>> = {
  red: ['cyan'],
  green: ['magenta'],
  blue: ['yellow'],
  cyan: ['magenta', 'yellow'],
  magenta: ['cyan', 'yellow'],
  yellow: ['cyan', 'magenta'],
};

/** What such filters are sold in, density. */
const SMALLEST_FILTER = 0.05;
export const STRONGEST_STEP = 0.2;

/** A cast of 0.1 seen on the paper moves by more than 0.1 on the lens, since the paper's contrast multiplies it. */
const SHARE = 0.5;

/**
 * How much exposure a filter of density 1 in one band would cost, stops. CC30Y asks for a third of a stop, CC30M for two
 * thirds ("Color compensating filters", olympus-lifescience.com, from the maker's table). CC30C like CC30M: from memory of
 * the same table. In between in proportion to density: the table itself is rounded to thirds.
 */
const STOPS_PER_DENSITY: ColourPack = { cyan: 2 / 3 / 0.3, magenta: 2 / 3 / 0.3, yellow: 1 / 3 / 0.3 };

/** A half of half the smallest filter must not be lost to floating point. */
const ROUNDING = 1e-9;

/**
 * The pack that goes against a cast of so much density: half of what the eye asks, in whole smallest filters, at most 0.20
 * at a time. What all three bands would hold back alike is only grey, and is left out.
 */
export function packAgainst(cast: CastColour, by: number, pack: ColourPack): ColourPack {
  const added = Math.min(askedOf(by), STRONGEST_STEP);
  const against = complements[cast];
  const sum = (band: keyof ColourPack) => pack[band] + (against.includes(band) ? added : 0);
  const grey = Math.min(...bands.map(sum));
  const rest = (band: keyof ColourPack) => Math.round((sum(band) - grey) * 100) / 100;
  return { cyan: rest('cyan'), magenta: rest('magenta'), yellow: rest('yellow') };
}

const askedOf = (by: number): number => Math.floor((by * SHARE) / SMALLEST_FILTER + ROUNDING) * SMALLEST_FILTER;

/** Whether half of so strong a cast is more than is put on the lens at a time. */
export const heldBack = (by: number): boolean => askedOf(by) > STRONGEST_STEP + ROUNDING;

/** The pack as filters in the light, each with what it costs in stops: `CC10M`. */
export const filtersOf = (pack: ColourPack): readonly { readonly name: string; readonly stops: number }[] =>
  bands
    .filter((band) => pack[band] > 0)
    .map((band) => ({
      name: `CC${plainNumber(pack[band] * 100, 0).padStart(2, '0')}${band.charAt(0).toUpperCase()}`,
      stops: pack[band] * STOPS_PER_DENSITY[band],
    }));

export const stopsOfPack = (pack: ColourPack): number => filtersOf(pack).reduce((sum, { stops }) => sum + stops, 0);

/** `CC10M + CC05Y`, or `no filter`. */
export const packInWords = (pack: ColourPack): string =>
  filtersOf(pack)
    .map(({ name }) => name)
    .join(' + ') || 'no filter';
