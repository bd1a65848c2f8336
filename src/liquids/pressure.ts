import { standardGravity } from '../standards/gravity.js';
import { atmosphere, gasConstant, molarMass, molarVolume, water, zeroCelsius } from '../standards/liquids.js';

/*
 * What presses on the walls of a chamber that is shut. Pressures kPa, temperatures °C, amounts of gas mol, rooms ml, areas
 * mm², pushes N, lengths mm. They say how much a holder that was capped would have to bear: it is to be vented instead.
 */

const kelvins = (celsius: number): number => celsius + zeroCelsius.value;

/**
 * Absolute pressure of a gas in a fixed room when it is warmed, p₂/p₁ = T₂/T₁ in kelvins: OpenStax, College Physics, chapter
 * on the ideal gas law. What a gauge shows is above the air outside and does not go in here.
 */
export const warmedPressure = (absolute: number, from: number, to: number): number =>
  (absolute * kelvins(to)) / kelvins(from);

/**
 * Pressure of water vapour over water, Magnus's formula with the constants of Alduchov and Eskridge (1996), from memory: four
 * parts in a thousand from −40 to 50 °C.
 */
export const vapourPressure = (celsius: number): number => 0.61094 * Math.exp((17.625 * celsius) / (celsius + 243.04));

/** How far above the air outside the pressure rises at most in a room shut at one temperature and warmed: dry air, and vapour over the bath. */
export const sealedRise = (from: number, to: number): number =>
  warmedPressure(atmosphere.value, from, to) - atmosphere.value + vapourPressure(to) - vapourPressure(from);

/** What an amount of gas adds in a room, nRT/V. */
export const gasPressure = (mol: number, roomMl: number, celsius: number): number =>
  (1000 * mol * gasConstant.value * kelvins(celsius)) / roomMl;

/** Oxygen that hydrogen peroxide gives off when all of it falls apart: 2 H₂O₂ → 2 H₂O + O₂. */
export const oxygenOf = (peroxideGrams: number): number => peroxideGrams / molarMass.value.peroxide / 2;

/** Strength of peroxide as bottles tell it, volumes of oxygen at 0 °C for one of liquid, from grams in a millilitre. */
export const volumesOfPeroxide = (gramsInMl: number): number => 1000 * oxygenOf(gramsInMl) * molarVolume.value;

/** Carbonic gas that the carbonate of a developer gives off into an acid bath: CO₃²⁻ + 2 H⁺ → H₂O + CO₂. */
export const carbonicGasOf = (grams: number, carbonate: 'potash' | 'soda'): number =>
  grams / molarMass.value[carbonate];

/** Push of a pressure on a flat lid or pane. */
export const pushOf = (pressure: number, area: number): number => (pressure * area) / 1000;

/** Push of the liquid alone on the wall of a chamber that stands filled to a height: ½ρgh² times its width. */
export const pushOfLiquid = ({ width, height }: { readonly width: number; readonly height: number }): number =>
  (water.value.density * standardGravity.value * height * height * width) / 2e9;

interface ScrewedLid {
  /** Push on the whole lid, N. */
  readonly push: number;
  /** What the seal must be pressed with, N for each mm of it. */
  readonly squeeze: number;
  /** Length of the seal. */
  readonly seal: number;
  readonly screws: number;
}

/** What each screw of a lid holds, N, all of them alike. */
export const pullOfScrew = ({ push, squeeze, seal, screws }: ScrewedLid): number => (push + squeeze * seal) / screws;

interface LidEdge {
  /** What lifts the edge, N for each mm of it. */
  readonly load: number;
  /** From screw to screw. */
  readonly spacing: number;
  /** Of the strip that carries it, and of the lid. */
  readonly width: number;
  readonly thickness: number;
  /** Modulus of elasticity along the edge, N/mm². */
  readonly modulus: number;
}

/**
 * How far the edge of a lid lifts half way between two screws: a strip that goes on evenly over many of them is held at each
 * as if it were built in, q s⁴/(384 E I) with I = b t³/12 (handbooks of beams, from memory).
 */
export const liftBetweenScrews = ({ load, spacing, width, thickness, modulus }: LidEdge): number =>
  (load * spacing ** 4) / (32 * modulus * width * thickness ** 3);

interface Pane {
  readonly short: number;
  readonly long: number;
  readonly thickness: number;
  readonly poisson: number;
}

/** Odd waves of Navier's series to either side; as many again move the stress by less than a thousandth. */
const WAVES = 100;

/**
 * Greatest stress, N/mm², of a pane that lies on its four edges under an even pressure: 6M/t², M by Navier's series for the
 * middle of a plate (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, art. 30, from memory). Small bending:
 * less than half of its thickness.
 */
export function paneStress({ short, long, thickness, poisson }: Pane, pressure: number): number {
  let sum = 0;
  for (let i = 0; i < WAVES; i++)
    for (let k = 0; k < WAVES; k++) {
      const [m, n] = [2 * i + 1, 2 * k + 1];
      const [across, along] = [(m / short) ** 2, (n / long) ** 2];
      const sign = (i + k) % 2 === 0 ? 1 : -1;
      sum += (sign * (across + poisson * along)) / (m * n * (across + along) ** 2);
    }
  const moment = (16 * (pressure / 1000) * sum) / Math.PI ** 4;
  return (6 * moment) / (thickness * thickness);
}
