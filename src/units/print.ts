/** The only place where numbers become text, the writers aside: no exponent, no `-0`, no locale. */

/** From here on toFixed turns to exponents; the integers are exact then, so their digits are written out. */
const EXPONENTS_BEGIN = 1e21;

/**
 * A number with at most so many decimals, zeros at the end left out.
 *
 * @param value finite: anything else is a mistake of ours, and it is said at once
 */
export function plainNumber(value: number, decimals = 3): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be printed`);
  if (Math.abs(value) >= EXPONENTS_BEGIN) return BigInt(value).toString();
  const fixed = value.toFixed(decimals);
  const short = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return short === '-0' ? '0' : short;
}

/** Figures in a sentence: a tenth of a millimetre is what a builder reads. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** A length in mm, to the micrometre: `4.05 mm`. */
export const mm = (length: number): string => `${plainNumber(length)} mm`;

/** A mass in kg, to the gram: `0.64 kg`. */
export const kg = (massKg: number): string => `${plainNumber(massKg)} kg`;

/** A magnification as the trade says it: `1:2.15`, `2:1`, and `infinity` for 0. */
export function magnification(m: number): string {
  if (m === 0) return 'infinity';
  return m > 1 ? `${plainNumber(m, 2)}:1` : `1:${plainNumber(1 / m, 2)}`;
}

/** An f-number: `f/6.3`. */
export const fNumber = (n: number): string => `f/${plainNumber(n, 2)}`;

/** A difference of exposure, in stops: `0.97 stops`. */
export function stops(count: number): string {
  const text = plainNumber(count, 2);
  return text === '1' || text === '-1' ? `${text} stop` : `${text} stops`;
}

/** A difference of exposure within a sentence that says more or less: `half a stop`, `0.54 stop`, `1.5 stops`. */
export function stopsInWords(count: number): string {
  const text = plainNumber(Math.abs(count), 2);
  if (text === '0.5') return 'half a stop';
  return text === '0' || Number(text) > 1 ? `${text} stops` : `${text} stop`;
}

/** A density in kg/m³: `680 kg/m3`, as the design file takes it. */
export const density = (kgPerCubicMetre: number): string => `${plainNumber(kgPerCubicMetre)} kg/m3`;

/** A speed in mm/s: `10 mm/s`. */
export const speed = (mmPerSecond: number): string => `${plainNumber(mmPerSecond)} mm/s`;

/** A time in seconds: `0.5 s`. */
export const seconds = (time: number): string => `${plainNumber(time)} s`;

/** The energy of a flash in joules: `400 J`. */
export const energy = (joules: number): string => `${plainNumber(joules, 1)} J`;

/** From here on a shutter has no mark as a fraction, s. */
const WHOLE_SECONDS = 0.3;
const MINUTE = 60;

/** The time of an exposure as a shutter or a watch has it: `1/60 s`, `8.33 s`, `109 s (1 min 49 s)`. */
export function exposureTime(time: number): string {
  if (time < WHOLE_SECONDS) return `1/${plainNumber(1 / time, 0)} s`;
  const whole = Math.round(time);
  if (whole < MINUTE) return `${plainNumber(time, time < 10 ? 2 : 1)} s`;
  return `${whole} s (${Math.floor(whole / MINUTE)} min ${whole % MINUTE} s)`;
}

/** A distance in a room, to the centimetre: `1.07 m`. */
export const metres = (length: number): string => `${plainNumber(length / 1000, 2)} m`;

/** The temperature of a bath: `22.5 °C`. */
export const celsius = (temperature: number): string => `${plainNumber(temperature, 1)} °C`;

/** A modulus in N/mm²: `7000 N/mm2`, as the design file takes it. */
export const modulus = (newtonPerSquareMm: number): string => `${plainNumber(newtonPerSquareMm)} N/mm2`;

/**
 * A number in a formula: five digits that count, six below 1, hundredths at least for lengths; a real minus sign, since
 * it is read as one.
 */
export function legible(value: number): string {
  const size = Math.abs(value);
  const wholeDigits = size < 1 ? 0 : String(Math.floor(size)).length;
  const leadingZeros = size > 0 && size < 0.1 ? Math.ceil(-Math.log10(size)) - 1 : 0;
  const decimals = size < 1 ? Math.min(12, 6 + leadingZeros) : Math.max(2, 5 - wholeDigits);
  return plainNumber(value, decimals).replace('-', '−');
}
