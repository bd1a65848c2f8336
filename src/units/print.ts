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

/** So much of the last figure that is printed is no promise: 1:3.0009, a distance as it was typed, is 1:3. */
const NO_PROMISE = 0.1;

/** From 1:20 on nobody reads, or types, hundredths of what a lens begins to cover. */
const WHOLE_FROM = 20;

/**
 * A magnification as the trade says it: `1:2.15`, `2:1`, and `infinity` for 0. What is between two hundredths is rounded
 * to the one that is farther away, so that a reach is the same wherever it stands and never more than the camera has.
 *
 * @param side `nearer` for what holds from there on: the least that a lens covers
 */
export function magnification(m: number, side: 'farther' | 'nearer' = 'farther'): string {
  if (m === 0) return 'infinity';
  if (m > 1) return `${ratioFigure(m, { up: side === 'nearer', decimals: 2 })}:1`;
  const decimals = side === 'nearer' && 1 / m >= WHOLE_FROM ? 0 : 2;
  return `1:${ratioFigure(1 / m, { up: side === 'farther', decimals })}`;
}

/** The scale of a picture as it was measured or set: it promises nothing, and is rounded like any other figure. */
export function scale(m: number): string {
  if (m === 0) return 'infinity';
  return m > 1 ? `${plainNumber(m, 2)}:1` : `1:${plainNumber(1 / m, 2)}`;
}

/** The larger figure of a magnification. */
function ratioFigure(figure: number, { up, decimals }: { readonly up: boolean; readonly decimals: number }): string {
  const steps = figure * 10 ** decimals;
  return plainNumber((up ? Math.ceil(steps - NO_PROMISE) : Math.floor(steps + NO_PROMISE)) / 10 ** decimals, decimals);
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

/** A time as a clock in the darkroom has it, to the second: `1:30`, `1:02:05`. */
export function clockTime(time: number): string {
  const whole = Math.round(time);
  const two = (count: number) => String(count).padStart(2, '0');
  const [hours, minutes, left] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(left)}` : `${minutes}:${two(left)}`;
}

/** How long something takes, in a sentence, to the second: `45 s`, `1 min 30 s`, `1 h 5 min`. */
export function duration(time: number): string {
  const whole = Math.round(time);
  const parts = [
    { count: Math.floor(whole / 3600), unit: 'h' },
    { count: Math.floor(whole / 60) % 60, unit: 'min' },
    { count: whole % 60, unit: 's' },
  ].filter(({ count }) => count > 0);
  return parts.length === 0 ? '0 s' : parts.map(({ count, unit }) => `${count} ${unit}`).join(' ');
}

/** A volume of liquid in ml, to the tenth: `250 ml`. */
export const millilitres = (volume: number): string => `${plainNumber(volume, 1)} ml`;

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

/** A figure of the plan as it is explained: to the micrometre for lengths, in the trade's way where it has one. */
export function quantity(value: number, unit: string, withSign = false): string {
  const number = (decimals: number) => {
    const fine = value !== 0 && Math.abs(value) < 10 ** -decimals ? legible(value) : plainNumber(value, decimals);
    return `${withSign && value > 0 ? '+' : ''}${fine.replace('-', '−')}`;
  };
  switch (unit) {
    case 'magnification':
      return value >= 0 ? magnification(value) : number(4);
    case 'f-number':
      return fNumber(value);
    case 'times':
    case 'count':
    case '':
      return number(4);
    case 's':
      return `${number(4)} s`;
    default:
      return `${number(3)} ${unit}`;
  }
}

/** A value of a key as a design file takes it. */
export function asWritten(value: number, unit: string): string {
  switch (unit) {
    case 'mm':
      return mm(value);
    case 'kg':
      return kg(value);
    case 'kg/m³':
      return density(value);
    case 'N/mm²':
      return modulus(value);
    case 'mm/s':
      return speed(value);
    case 's':
      return seconds(value);
    case 'f-number':
      return fNumber(value);
    case 'magnification':
      return magnification(value);
    default:
      return plainNumber(value);
  }
}

/** A number changed by so much; of what the trade counts in its own way, what it becomes. */
export const changeOf = (value: number, by: number, unit: string): string =>
  unit === 'magnification' || unit === 'f-number' ? quantity(value + by, unit) : quantity(by, unit, true);

/** A figure that is explained: a magnification to one figure more than elsewhere, so that a small step shows. */
export const explainedFigure = (value: number, unit: string): string =>
  unit === 'magnification' ? finely(value) : quantity(value, unit);

/**
 * By how much a figure moves; of what the trade counts in its own way, what it becomes. A magnification says whether that
 * is nearer: a larger figure behind the colon looks like a gain, and is a loss.
 */
export function movedBy(now: number, by: number, unit: string): string {
  if (Math.abs(by) < 1e-9) return 'the same';
  if (unit === 'magnification') return `${finely(now + by)}, ${by > 0 ? 'nearer' : 'farther'}`;
  if (unit === 'f-number') return quantity(now + by, unit);
  const size = Math.abs(by);
  const text = size < 0.1 ? legible(Number(size.toPrecision(3))) : plainNumber(size, 3);
  return `${by > 0 ? '+' : '−'}${text}${unit === 'times' || unit === 'count' || unit === '' ? '' : ` ${unit}`}`;
}

/** To thousandths of 1:n. */
const finely = (m: number): string =>
  m === 0
    ? magnification(m)
    : m > 0 && m <= 1
      ? `1:${ratioFigure(1 / m, { up: true, decimals: 3 })}`
      : plainNumber(m, 3);

/**
 * From where on the image circle covers the whole image.
 *
 * @param from magnification, 0 at infinity; null where never within reach
 * @param circle diameter of the image circle at infinity, mm; null where it is not known
 */
export function coverage(from: number | null, circle: number | null): string {
  if (circle === null) return 'not known: the design does not give lens.coverage';
  if (from === null) return 'nowhere within reach';
  return from === 0
    ? 'the whole image, from infinity on'
    : `the whole image from ${magnification(from, 'nearer')} on, not farther away`;
}

/** An amount of money, its currency behind it where there is one: `12.50 EUR`. */
export const money = (amount: number, currency = ''): string => `${amount.toFixed(2)} ${currency}`.trim();
