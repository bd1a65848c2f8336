import type { Cited } from './cited.js';

/** Water and air as baths and what they push out are reckoned: thin baths differ from water by a few per cent. */

interface Fluid {
  /** kg/m³ */
  readonly density: number;
  /** N/m, against air; what wets well (a drop of wetting agent) has half of it and less. */
  readonly surfaceTension: number;
  /** Pa·s */
  readonly viscosity: number;
}

export const water: Cited<Fluid> = {
  value: { density: 998.2, surfaceTension: 0.0728, viscosity: 1.002e-3 },
  source: 'at 20 °C, from memory: tables of the properties of water',
};

/** kg/m³ */
export const airDensity: Cited<number> = { value: 1.204, source: 'dry, 20 °C, 101.325 kPa; from memory: gas law' };

/** kPa */
export const atmosphere: Cited<number> = {
  value: 101.325,
  source: 'standard atmosphere, 10th CGPM (1954); from memory',
};

/** What 0 °C is in kelvins. */
export const zeroCelsius: Cited<number> = { value: 273.15, source: 'definition of the degree Celsius; from memory' };

/** J/(mol·K) */
export const gasConstant: Cited<number> = { value: 8.314462618, source: 'CODATA 2018, exact; from memory' };

/** Litres that a mole of gas takes at 0 °C and 101.325 kPa, at which the strength of peroxide is told. */
export const molarVolume: Cited<number> = { value: 22.414, source: 'gas law; from memory' };

/** g/mol */
export const molarMass: Cited<{ readonly peroxide: number; readonly potash: number; readonly soda: number }> = {
  value: { peroxide: 34.01, potash: 138.21, soda: 105.99 },
  source: 'hydrogen peroxide, potassium and sodium carbonate without water; from memory: atomic masses',
};

/** Poisson's ratio, and the stress under a load that stays, N/mm², up to which a pane of plain glass is trusted. */
export const paneGlass: Cited<{ readonly poisson: number; readonly lastingStress: number }> = {
  value: { poisson: 0.22, lastingStress: 7 },
  source: 'float glass as it comes from the cutter, not toughened; from memory: handbooks of glazing',
};

/** Angle, rad, at which a bath meets emulsion that it does not yet wet well: 0 would spread by itself, a right angle bead. */
export const contactOnEmulsion: Cited<number> = {
  value: Math.PI / 4,
  source: 'common practice, no source: wet gelatin has less, the edge of resin-coated paper more',
};
