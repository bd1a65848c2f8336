import * as z from 'zod';
import { parseEnergy } from '../units/energy.js';
import { acceptedLength, hasLengthUnit, parseLength, unitMeant } from '../units/length.js';
import { parseMass } from '../units/mass.js';
import {
  energy as energyText,
  metres,
  mm,
  plainNumber,
  seconds as secondsText,
  speed as speedText,
} from '../units/print.js';
import { quoted, type Reading, type Sign } from '../units/quantity.js';
import {
  acceptedNumber,
  parseDensity,
  parseFNumber,
  parseMagnification,
  parseModulus,
  parseNumber,
} from '../units/ratio.js';
import { parseSpeed } from '../units/speed.js';
import { parseTemperature } from '../units/temperature.js';
import { parseExposureTime, parseSeconds } from '../units/time.js';

/** What the schema says about a key, beside what it takes. */
export interface Told {
  readonly description: string;
  /** What could be written after the key, as in the design file. */
  readonly example: string;
  /** For a default that depends on other keys; a fixed one stands in the schema as `default`. */
  readonly whenAbsent?: string;
}

export interface Range {
  readonly least: number;
  readonly most: number;
}

/** Nothing on a camera that is carried to a sitter is longer. */
const LONGEST = 5000;

/** The writers round to it, so nothing smaller can be made. */
const SMALLEST = 0.001;

/** Splits what is wrong from what would be taken: a schema's message is one text, a problem has two. */
export const BREAK = '\n';

/** Of a value in a file that is out of range. */
export const BEYOND_USE = 'than can be made use of';

const told = ({ description, example, whenAbsent }: Told) => ({
  description,
  example,
  ...(whenAbsent === undefined ? {} : { whenAbsent }),
});

/** What was read, where it is of use. */
function within(input: unknown, reading: Reading, { least, most }: Range, print: (value: number) => string): Reading {
  if (!('value' in reading) || (reading.value >= least && reading.value <= most)) return reading;
  return {
    reason: `${quoted(input)} is ${reading.value < least ? 'less' : 'more'} ${BEYOND_USE}.`,
    accepted: `Write a value from ${print(least)} to ${print(most)}.`,
  };
}

/** A value that is written as a number or a text and read by a parser of units. */
export function measured(
  about: Told,
  parse: (input: unknown) => Reading,
  range: Range,
  print: (value: number) => string,
) {
  const say = (input: unknown): string | number => {
    const reading = within(input, parse(input), range, print);
    return 'value' in reading ? reading.value : `${reading.reason}${BREAK}${reading.accepted}`;
  };
  return z
    .union([z.number(), z.string()], { error: (issue) => String(say(issue.input)) })
    .transform((input, context): number => {
      const said = say(input);
      if (typeof said === 'number') return said;
      context.issues.push({ code: 'custom', message: said, input });
      return z.NEVER;
    })
    .meta(range.least < 0 ? { ...told(about), mayBeNegative: true } : told(about));
}

interface LengthLimits {
  readonly sign?: Sign;
  /** Of a length that must be positive; the smallest that can be made, if it is left out. */
  readonly least?: number;
  readonly most?: number;
}

const lengthRange = ({ sign = 'positive', least = SMALLEST, most = LONGEST }: LengthLimits): Range => ({
  least: sign === 'positive' ? least : sign === 'not-negative' ? 0 : -most,
  most,
});

export const length = (about: Told, limits: LengthLimits = {}) =>
  measured(about, (input) => exampleFitting(parseLength(input, limits.sign), about), lengthRange(limits), mm);

/** A length that is typed elsewhere, with the limits that it would have in the design file. */
export const readLength = (input: string, limits: LengthLimits = {}): Reading =>
  within(input, parseLength(input, limits.sign), lengthRange(limits), mm);

/** The parser's own example is the thickness of a sheet; what is typed for a lens is better shown a lens. */
const exampleFitting = (reading: Reading, { example }: Told): Reading =>
  'reason' in reading && reading.accepted === acceptedLength('4.05 mm')
    ? { ...reading, accepted: acceptedLength(example) }
    : reading;

interface Between extends Range {
  /** The two ends, for messages: "from the lamp to the sitter". */
  readonly between: string;
}

/** A distance in a room. A number alone is mm here as everywhere, and nowhere is a unit so often forgotten. */
export const roomDistance = (about: Told, { between, ...range }: Between) =>
  measured(
    about,
    (input) => {
      const reading = exampleFitting(parseLength(input), about);
      if ('reason' in reading || reading.value >= range.least) return reading;
      const meant = hasLengthUnit(String(input)) ? null : unitMeant(reading.value);
      return {
        reason: `${mm(reading.value)} ${between}?`,
        accepted: meant === null ? `Write ${metres(range.least)} or more.` : `Write ${meant}.`,
      };
    },
    range,
    metres,
  );

const HEAVIEST_KG = 100;

export const mass = (about: Told) =>
  measured(about, parseMass, { least: 0.001, most: HEAVIEST_KG }, (value) => `${plainNumber(value)} kg`);

export const magnification = (about: Told) => measured(about, parseMagnification, { least: 0, most: 20 }, plainNumber);

export const fNumber = (about: Told) => measured(about, parseFNumber, { least: 0.5, most: 256 }, plainNumber);

export const number = (about: Told, range: Range) =>
  measured(
    about,
    (input) => {
      const sign = range.least < 0 ? 'any' : range.least === 0 ? 'not-negative' : 'positive';
      const reading = parseNumber(input, sign);
      const plain = 'reason' in reading && reading.accepted === acceptedNumber('1.52');
      return plain ? { ...reading, accepted: acceptedNumber(about.example) } : reading;
    },
    range,
    plainNumber,
  );

export const density = (about: Told) => measured(about, parseDensity, { least: 10, most: 20000 }, plainNumber);

export const modulus = (about: Told) => measured(about, parseModulus, { least: 10, most: 500000 }, plainNumber);

/** From a crawl to the idle moves of the fastest gantry. */
export const speed = (about: Told) => measured(about, parseSpeed, { least: 0.1, most: 10000 }, speedText);

/** Of a single act of the machine. */
export const seconds = (about: Told) => measured(about, parseSeconds, { least: 0, most: 60 }, secondsText);

/** From the shortest that a shutter gives to a night. */
export const exposureTime = (about: Told) =>
  measured(about, parseExposureTime, { least: 0.0001, most: 36000 }, secondsText);

/** From a spark to all the packs of a studio. */
export const energy = (about: Told) => measured(about, parseEnergy, { least: 0.1, most: 100000 }, energyText);

/** Of a bath: what is colder is ice, what is hotter steam. */
export const temperature = (about: Told) =>
  measured(about, parseTemperature, { least: 0, most: 100 }, (value) => `${plainNumber(value)} C`);

/** Width and height, or short and long side. */
export const lengthPair = (about: Told) => {
  const example = /\[([^,]*),/.exec(about.example)?.[1] ?? about.example;
  const side = (description: string) => length({ description, example });
  return z.tuple([side('the first of the two'), side('the second')]).meta(told(about));
};

interface ListOf {
  readonly item: ReturnType<typeof measured>;
  /** With its article, for messages: "a length". */
  readonly noun: string;
  readonly longest: number;
  /** What to write where there are more. */
  readonly instead: string;
}

/** A list, or one value alone, which is a list of one. */
function oneOrList(about: Told, { item, noun, longest, instead }: ListOf) {
  return z
    .union([z.number(), z.string(), z.array(z.union([z.number(), z.string()])).max(longest)], {
      error: ({ input }) =>
        Array.isArray(input) && input.length > longest
          ? `The list has more than ${longest} entries.${BREAK}${instead}`
          : `${quoted(input)} is not ${noun}.${BREAK}Write ${about.example}.`,
    })
    .transform((input, context): readonly number[] => {
      const listed = Array.isArray(input);
      if (listed && input.length === 0)
        context.issues.push({ code: 'custom', message: `The list is empty.${BREAK}Write ${about.example}.`, input });
      return (listed ? input : [input]).map((text, index) => {
        const outcome = item.safeParse(text, { jitless: true });
        if (outcome.success) return outcome.data;
        const message = outcome.error.issues[0]?.message ?? '';
        context.issues.push({ code: 'custom', message, input: text, path: listed ? [index] : [] });
        return Number.NaN;
      });
    })
    .meta(told(about));
}

/** A list of lengths, or one length alone. */
export const lengthOrList = (about: Told, limits: LengthLimits, longest: number) =>
  oneOrList(about, {
    item: length(about, limits),
    noun: 'a length',
    longest,
    instead: 'Write the readings of one sheet.',
  });

/** A list of numbers, or one number alone. */
export const numberOrList = (about: Told, range: Range, longest: number) =>
  oneOrList(about, {
    item: number({ ...about, example: /^\[([^,\]]*)/.exec(about.example)?.[1] ?? about.example }, range),
    noun: 'a number',
    longest,
    instead: 'Write one number for what they do together.',
  });

export const whole = (about: Told, { least, most }: Range) => {
  // of two values each is an example
  const taken = most === least + 1 ? `${least} or ${most}` : about.example;
  const error = (issue: { readonly input?: unknown }) =>
    `${quoted(issue.input)} is not a whole number from ${least} to ${most}.${BREAK}Write ${taken}.`;
  return z.int({ error }).min(least, { error }).max(most, { error }).meta(told(about));
};

export const flag = (about: Told) =>
  z
    .boolean({ error: (issue) => `${quoted(issue.input)} is neither true nor false.${BREAK}Write true or false.` })
    .meta(told(about));

export const choice = <const T extends readonly [string, ...string[]]>(about: Told, words: T) =>
  z
    .enum(words, { error: (issue) => `${quoted(issue.input)} is not known here.${BREAK}Write ${orList(words)}.` })
    .meta(told(about));

/** `clamp, flange or ring` */
export const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

/** Text that is shown or engraved, refused by a check that gives what is wrong and what would be taken. */
export const text = (
  about: Told,
  check: (input: string) => { readonly what: string; readonly accepted: string } | null,
) =>
  z
    .string({
      error: (issue) =>
        typeof issue.input === 'number' || typeof issue.input === 'boolean'
          ? `${quoted(issue.input)} is not a text.${BREAK}Put it in quotes.`
          : `${quoted(issue.input)} is not a text.${BREAK}Write ${about.example}.`,
    })
    .superRefine((input, context) => {
      const trouble = check(input);
      if (trouble !== null) context.addIssue(`${trouble.what}${BREAK}${trouble.accepted}`);
    })
    .meta(told(about));

/** What a group of keys is for: kept beside the schema of the group. */
export const section = told;
