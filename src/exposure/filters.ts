/**
 * Filters in the light, by factor, density or stops: F = 10^D = 2^stops. One is kept and the others derived, since tables
 * that print two of them contradict themselves. A density of 0.30 is 0.997 stop.
 *
 * A factor or density from a table or a test was found with the filter in place: what its own surfaces reflect, about 4 %
 * each (common practice, no source), is in it already and is not added again. Of clear glass in the light nobody's table
 * speaks: who wants its two surfaces counted gives it the factor 1.085.
 *
 * The number of a colour compensating filter is a hundred times its density in one band of colours, not a density of all
 * the light: CC30Y asks for a third of a stop, not for one.
 */

export const factorOfDensity = (density: number): number => 10 ** density;

export const factorOfStops = (stops: number): number => 2 ** stops;

export const stopsOfFactor = (factor: number): number => Math.log2(factor);

/** Of filters one behind the other: factors multiply, as densities and stops add; 1 for none. */
export const stackFactor = (filters: readonly { readonly factor: number }[]): number =>
  filters.reduce((product, { factor }) => product * factor, 1);
