import { measured, type Range, type Told } from '../design/fields.js';
import { parseLength } from '../units/length.js';
import { mm, plainNumber } from '../units/print.js';
import { quoted, type Reading } from '../units/quantity.js';
import { parseMagnification, parseNumber } from '../units/ratio.js';

/** Nothing on a bench at home is longer. */
const LONGEST = 20000;
const lengths: Range = { least: 0.001, most: LONGEST };

/** Beyond it nobody focuses a camera. */
const magnifications: Range = { least: 0, most: 20 };

const VIRTUAL =
  'A real image stands upside down, and its magnification is positive here all the same; an upright one is virtual, and no ground glass shows it.';

/** A reading that may not be negative, with the reason. */
const real =
  (parse: (input: unknown) => Reading) =>
  (input: unknown): Reading => {
    const reading = parse(input);
    const negative = 'reason' in reading && /^\s*[-−]/.test(String(input));
    return negative ? { reason: `${quoted(input)} is negative. ${VIRTUAL}`, accepted: reading.accepted } : reading;
  };

/** `01:06:00`, which a spreadsheet makes of 1:6. */
const TIME_OF_DAY = /^\d+:\d\d:\d\d$/;

function benchMagnification(input: unknown): Reading {
  if (typeof input === 'string' && TIME_OF_DAY.test(input.trim()))
    return {
      reason: `${quoted(input)} is a time of day: a spreadsheet has taken the ratio for one.`,
      accepted: 'Write the ratio as a number, such as 0.1667 for 1:6.',
    };
  const reading = parseMagnification(input);
  return 'reason' in reading && /\bzero\.$/.test(reading.reason)
    ? {
        ...reading,
        accepted: 'Write infinity where something as far as the horizon was focused; else image over object.',
      }
    : reading;
}

export const readMagnification = (about: Told) =>
  measured(about, real(benchMagnification), magnifications, plainNumber);

export const readLength = (about: Told) => measured(about, real(parseLength), lengths, mm);

/** A reading to ±a lies anywhere within: its standard uncertainty is a/√3 (JCGM 100:2008, 4.3.7). */
const LIMITS = /^\s*(?:±|\+\/?-)\s*/;

const orLimits =
  (parse: (input: unknown) => Reading) =>
  (input: unknown): Reading => {
    if (typeof input !== 'string' || !LIMITS.test(input)) return parse(input);
    const reading = parse(input.replace(LIMITS, ''));
    return 'value' in reading ? { value: reading.value / Math.sqrt(3) } : reading;
  };

/** A standard uncertainty, or the limits of a reading, with ± before them. */
export const lengthDoubt = (about: Told) => measured(about, orLimits(parseLength), { least: 1e-6, most: LONGEST }, mm);
export const magnificationDoubt = (about: Told) =>
  measured(
    about,
    orLimits((input) => parseNumber(input)),
    { least: 1e-9, most: 20 },
    plainNumber,
  );
