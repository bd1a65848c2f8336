import * as z from 'zod';
import type { Fault } from '../design/explain.js';
import {
  BREAK,
  choice,
  energy,
  exposureTime,
  fNumber,
  length,
  magnification,
  number,
  orList,
  section,
  temperature,
  text,
  whole,
} from '../design/fields.js';
import { lineTrouble } from '../design/names.js';
import { DENSITIES, FACTORS, FARTHEST_LAMP, SPEEDS } from '../design/sitting-schema.js';
import type { FileKind } from '../design/source.js';
import { castColours, looks, processes } from '../model/sitting-log.js';
import { quoted } from '../units/quantity.js';

/*
 * One entry of a sitting log: a setting that was given out, or what came of a sheet. A log is a stream of such entries,
 * each between a line --- and a line ..., and it is only ever added to: read-sitting-log.ts says why.
 */

const MOST_SHEETS = 99999;
const MOST_STRIPS = 8;
const LONGEST_NOTE = 300;
/** More than a thousand times too much or too little is another mistake. */
const DIALLED = { least: -12, most: 12 };
/** Density of a cast; a choice of ours, twice what a strong filter against one has. */
const STRONGEST_CAST = 0.6;
/** What an eye can still put a number to, stops. */
const MOST_OFF = 4;

/** One entry is a few lines. */
export const logEntry: FileKind = {
  noun: 'sitting log',
  begin: 'Let `tailboard expose --log` begin one.',
  largest: 16 * 1024,
  mostValues: 200,
};

const at = text(
  { description: 'date and time of day, for people alone', example: '2026-11-29 14:03', whenAbsent: 'not noted' },
  lineTrouble,
).optional();

const sheet = whole(
  { description: 'number of the sheet, counted through the whole log', example: '2' },
  { least: 1, most: MOST_SHEETS },
);

const bandDensity = (colour: string) =>
  number({ description: `density of ${colour} filters`, example: '0.1', whenAbsent: '0' }, DENSITIES).default(0);

const settingSchema = z.strictObject({
  sheet,
  at,
  process: choice({ description: 'what the material becomes', example: 'reversal' }, processes),
  paper: text(
    { description: 'what is exposed', example: 'glossy paper, grade 2', whenAbsent: 'not named' },
    lineTrouble,
  ).optional(),
  batch: text(
    { description: 'batch of the paper, from its box', example: 'B 1184', whenAbsent: 'not noted' },
    lineTrouble,
  ).optional(),
  dialled: number(
    {
      description:
        'more exposure than was reckoned for the day, in stops: what dialling in has found; less is negative',
      example: '0.5',
      whenAbsent: '0',
    },
    DIALLED,
  ).default(0),
  strips: z
    .array(number({ description: 'one strip', example: '-1' }, DIALLED))
    .min(2)
    .max(MOST_STRIPS)
    .meta(
      section({
        description: 'of a test strip, the same for each strip, from the one that got least',
        example: '[-1, 0, 1]',
        whenAbsent: 'the sheet is exposed as a whole',
      }),
    )
    .optional(),
  colourFilters: z
    .strictObject({ cyan: bandDensity('cyan'), magenta: bandDensity('magenta'), yellow: bandDensity('yellow') })
    .meta(
      section({
        description: 'colour compensating filters on the lens against a cast, by density',
        example: '{ magenta: 0.1 }',
        whenAbsent: 'none',
      }),
    )
    .prefault({}),
  magnification: magnification({ description: 'size on the film to life size', example: '1:4' }),
  aperture: fNumber({ description: 'stop that is set', example: 'f/16' }),
  speed: number(
    { description: 'exposure index that was reckoned with', example: '6', whenAbsent: 'unknown' },
    SPEEDS,
  ).optional(),
  filterFactor: number(
    { description: 'factor of all filters in the light', example: '2', whenAbsent: '1' },
    FACTORS,
  ).default(1),
  energy: energy({
    description: 'energy of the flash, all pops together',
    example: '800 J',
    whenAbsent: 'not by flash',
  }).optional(),
  pops: whole(
    { description: 'number of pops; of a strip all of them', example: '1', whenAbsent: 'not said' },
    { least: 1, most: 9999 },
  ).optional(),
  lampDistance: length(
    { description: 'from the lamp to the sitter', example: '1.5 m', whenAbsent: 'not said' },
    { most: FARTHEST_LAMP },
  ).optional(),
  time: exposureTime({
    description: 'time to be given, with what a long exposure loses',
    example: '2 s',
    whenAbsent: 'not by time',
  }).optional(),
});

const halves = z
  .number({ error: ({ input }) => `${quoted(input)} is not a number of stops.${BREAK}Write 0.5, 1, 1.5 or so.` })
  .refine((by) => by >= 0.5 && by <= MOST_OFF && Number.isInteger(2 * by), {
    error: ({ input }) =>
      `${quoted(input)} is not in half stops from 0.5 to ${MOST_OFF}.${BREAK}Write 0.5, 1, 1.5 or so; write looks: right for less.`,
  })
  .meta({
    description: 'by how much, in stops, judged in halves',
    example: '1',
    whenAbsent: 'asked for where looks says too dark or too light and no density was read',
  });

export const resultSchema = z.strictObject({
  sheet,
  at,
  looks: choice(
    {
      description: 'what it looks like; void is a botched sheet, which is not judged and counts for nothing',
      example: 'too dark',
      whenAbsent: 'a density was read',
    },
    looks,
  ).optional(),
  by: halves.optional(),
  strip: whole(
    {
      description: 'of a test strip, the strip that is meant: the best one; counted from the one that got least',
      example: '3',
      whenAbsent: 'the whole sheet',
    },
    { least: 1, most: MOST_STRIPS },
  ).optional(),
  density: number(
    { description: 'density that was read', example: '0.9', whenAbsent: 'not read' },
    DENSITIES,
  ).optional(),
  densities: z
    .array(number({ description: 'one strip', example: '0.9' }, DENSITIES))
    .min(2)
    .max(MOST_STRIPS)
    .meta(
      section({
        description: 'of a test strip, the density of each strip, from the one that got least',
        example: '[0.4, 0.7, 1.1]',
        whenAbsent: 'not read',
      }),
    )
    .optional(),
  wanted: number(
    { description: 'the density that is wanted there', example: '1.1', whenAbsent: 'as said for an earlier sheet' },
    DENSITIES,
  ).optional(),
  cast: choice(
    { description: 'colour that lies over the picture', example: 'green', whenAbsent: 'none' },
    castColours,
  ).optional(),
  castBy: number(
    { description: 'its strength as a density, by eye', example: '0.2', whenAbsent: 'not said: filters stay' },
    DENSITIES,
  )
    .refine((by) => by <= STRONGEST_CAST, {
      error: ({ input }) =>
        `${quoted(input)} is no cast that an eye can weigh: it would hide the colours of the picture, and no weak filter takes it away.${BREAK}Write 0.2 or so, ${STRONGEST_CAST} at most.`,
    })
    .optional(),
  gave: z
    .strictObject({
      energy: energy({
        description: 'energy, all pops together',
        example: '700 J',
        whenAbsent: 'as advised',
      }).optional(),
      time: exposureTime({ description: 'time by the watch', example: '3 s', whenAbsent: 'as advised' }).optional(),
    })
    .meta(
      section({
        description: 'what was really given, where it was not what was advised',
        example: '{ energy: 700 J }',
        whenAbsent: 'as advised',
      }),
    )
    .prefault({}),
  bath: z
    .strictObject({
      start: temperature({
        description: 'of the developer as the sheet went in',
        example: '24 C',
        whenAbsent: 'not noted',
      }).optional(),
      end: temperature({ description: 'as it came out', example: '22.5 C', whenAbsent: 'not noted' }).optional(),
    })
    .meta(
      section({
        description: 'temperatures of the developer',
        example: '{ start: 24 C, end: 22.5 C }',
        whenAbsent: 'not noted',
      }),
    )
    .prefault({}),
  note: text({ description: 'anything else', example: 'new flash tube', whenAbsent: 'nothing' }, (input) =>
    input.length > LONGEST_NOTE
      ? { what: `The text is longer than ${LONGEST_NOTE} characters.`, accepted: 'Write a shorter one.' }
      : null,
  ).optional(),
});

export const logEntrySchema = z.strictObject({
  setting: settingSchema
    .meta(
      section({
        description: 'a setting that was given out',
        example: '{ sheet: 2, process: reversal, aperture: f/16, magnification: 1:4, energy: 800 J }',
        whenAbsent: 'the entry is a result',
      }),
    )
    .optional(),
  result: resultSchema
    .meta(
      section({
        description: 'what came out',
        example: '{ sheet: 2, looks: too dark, by: 1 }',
        whenAbsent: 'the entry is a setting',
      }),
    )
    .optional(),
});

export type WrittenEntry = z.output<typeof logEntrySchema>;

/** What cannot be true of two keys of an entry together. */
export function entryFaults({ setting, result }: WrittenEntry): readonly Fault[] {
  const fault = (path: readonly PropertyKey[], at: Fault['at'], what: string, accepted: string): readonly Fault[] => [
    { path, at, what, accepted },
  ];
  if (setting !== undefined && result !== undefined)
    return fault(['result'], 'key', 'An entry is a setting or a result, not both.', 'Begin another entry with ---.');
  if (setting === undefined && result === undefined)
    return fault([], 'key', 'The entry says nothing.', 'Write setting: or result: with the keys below it.');
  if (result === undefined) return [];
  const { looks: look, by, density, densities, castBy, cast, strip } = result;
  const measured = density !== undefined || densities !== undefined;
  if (look === 'void') {
    const judged = (['by', 'strip', 'density', 'densities', 'wanted', 'cast', 'castBy'] as const).find(
      (key) => result[key] !== undefined,
    );
    return judged === undefined
      ? []
      : fault(
          ['result', judged],
          'key',
          'A void sheet is not judged.',
          'Delete the key, or say what the sheet looks like.',
        );
  }
  return [
    ...(look === undefined && !measured
      ? fault(['result'], 'key', 'What came out is not said.', `Write looks: ${orList(looks)}, or a density.`)
      : []),
    ...(look !== undefined && look !== 'right' && by === undefined && !measured
      ? fault(['result', 'looks'], 'value', 'By how much is not said.', 'Write by: 1, in stops, judged in halves.')
      : []),
    ...((look === 'right' || look === undefined) && by !== undefined
      ? fault(
          ['result', 'by'],
          'key',
          'This says how much too dark or too light.',
          'Write looks: too dark or too light.',
        )
      : []),
    ...(castBy !== undefined && cast === undefined
      ? fault(['result', 'castBy'], 'key', 'Of which colour the cast is, is not said.', 'Write cast: green.')
      : []),
    ...(densities !== undefined && strip !== undefined
      ? fault(['result', 'strip'], 'key', 'All strips were measured.', 'Keep strip or densities.')
      : []),
  ];
}
