import * as z from 'zod';
import type { Fault } from '../design/explain.js';
import { BREAK, choice, flag, measured, section, type Told, temperature, text, whole } from '../design/fields.js';
import { jsonSchemaOf } from '../design/json-schema.js';
import { lineTrouble } from '../design/names.js';
import type { FileKind } from '../design/source.js';
import { stepLights, timeRules } from '../model/step-sheet.js';
import { duration, millilitres } from '../units/print.js';
import { quoted } from '../units/quantity.js';
import { parseBathTime } from '../units/time.js';
import { parseVolume } from '../units/volume.js';

/*
 * The form of a process file: the steps that a print goes through, as the maker of its chemicals gives them. The program
 * brings none of its own.
 */

/** More steps than any process has, and more than a card holds. */
const MOST_STEPS = 24;
const MOST_PRINTS = 200;
/** Longer than any wash, s. */
const LONGEST_STEP = 36000;
/** A tank that takes longer to fill is no tank for a print, s. */
const LONGEST_POUR = 600;
/** For the largest sheet of the table of formats a few litres do, ml. */
const MOST_LIQUID = 20000;
/** Drops; more is a tank that was not drained, ml. */
const MOST_CARRIED = 100;
/** What is read beside a tray, characters. */
const LONGEST_WORDS = 120;

export const processFile: FileKind = {
  noun: 'process',
  begin: 'Write name: and at least one step: steps: [{ name: first bath, time: 1m30s }].',
  largest: 32 * 1024,
  mostValues: 1000,
};

const bathTime = (about: Told, range: { readonly least: number; readonly most: number }) =>
  measured(about, parseBathTime, range, duration);

const liquid = (about: Told, most = MOST_LIQUID) => measured(about, parseVolume, { least: 1, most }, millilitres);

const poured = liquid({ description: 'ml', example: '250 ml' });

/** A volume, or one of two words for it. */
const bathVolume = z
  .union([z.number(), z.string()], {
    error: ({ input }) => `${quoted(input)} is not a volume.${BREAK}Write 250 ml, as the tank, or none.`,
  })
  .transform((input, context): number | 'tank' | 'none' => {
    if (input === 'as the tank') return 'tank';
    if (input === 'none') return 'none';
    const outcome = poured.safeParse(input, { jitless: true });
    if (outcome.success) return outcome.data;
    const [what] = (outcome.error.issues[0]?.message ?? '').split(BREAK);
    context.issues.push({ code: 'custom', message: `${what}${BREAK}Write 250 ml, as the tank, or none.`, input });
    return z.NEVER;
  })
  .meta({
    description:
      'poured for one print: a volume; `as the tank`, what covers the print in it; `none`, where nothing is poured',
    example: '250 ml',
  });

/** How many prints: a number, or the words for one. */
const served = z
  .union([z.number(), z.string()], { error: ({ input }) => notServed(input) })
  .transform((input, context): number => {
    if (input === 'one-shot') return 1;
    if (typeof input === 'number' && Number.isInteger(input) && input >= 1 && input <= MOST_PRINTS) return input;
    context.issues.push({ code: 'custom', message: notServed(input), input });
    return z.NEVER;
  })
  .meta({
    description:
      'how many prints one bath serves before it is thrown away, or `one-shot`: every print gets a fresh one',
    example: '4',
  });

const notServed = (input: unknown): string =>
  `${quoted(input)} is not a number of prints from 1 to ${MOST_PRINTS}.${BREAK}Write 4, or one-shot.`;

const sentence = (about: Told) => text(about, (input) => lineTrouble(input, LONGEST_WORDS));

const stepSchema = z
  .strictObject({
    name: text({ description: 'what the step is called', example: 'first bath' }, lineTrouble),
    time: bathTime(
      { description: 'how long it takes, counted as timesFrom says', example: '1m30s' },
      { least: 1, most: LONGEST_STEP },
    ),
    volume: bathVolume.prefault('as the tank'),
    temperature: temperature({
      description: 'of this bath',
      example: '24 C',
      whenAbsent: 'that of the process',
    }).optional(),
    agitation: sentence({
      description: 'how the bath is kept moving',
      example: 'rock without a pause',
      whenAbsent: 'nothing is said of it',
    }).optional(),
    light: choice(
      {
        description:
          'what light the print stands in: `safe`, that of the darkroom or none; `window`, white light falls through the open slide, the second exposure; `any`, white light does no harm',
        example: 'safe',
        whenAbsent: 'as in the step before, after `window` any; in the first step safe',
      },
      stepLights,
    ).optional(),
    fixes: flag({
      description: 'whether a print that has been through this step is harmed by no light any more',
      example: 'true',
    }).default(false),
    reuse: served.prefault('one-shot'),
    caution: sentence({
      description: 'what to beware of in this step, printed with it',
      example: 'stains skin and cloth',
      whenAbsent: 'nothing beside the cautions for all chemicals',
    }).optional(),
  })
  .meta(section({ description: 'a step', example: '{ name: first bath, time: 1m30s, volume: 250 ml }' }));

const ofTank = (description: string, example: string) =>
  liquid({ description, example, whenAbsent: 'that of the tank of the design where one is given, else unknown' });

/** What may be given for today beside what the file says; each has a flag of the command line. */
export const todaySchema = z.strictObject({
  prints: whole({ description: 'how many prints are made', example: '4' }, { least: 1, most: MOST_PRINTS }).optional(),
  fill: bathTime(
    {
      description: 'from the beginning of pouring until the bath is in, timed with as much water as covers the print',
      example: '8 s',
      whenAbsent: 'that of the tank of the design where one is given, else none, which is told',
    },
    { least: 0, most: LONGEST_POUR },
  ).optional(),
  drain: bathTime(
    {
      description: 'from the beginning of draining until the tank is empty, timed with as much water',
      example: '12 s',
      whenAbsent: 'that of the tank of the design where one is given, else none, which is told',
    },
    { least: 0, most: LONGEST_POUR },
  ).optional(),
});

export const processSchema = z.strictObject({
  name: text({ description: 'what the process is called, on its card', example: 'Trial in four baths' }, lineTrouble),
  temperature: temperature({
    description: 'of the baths, where a step says no other; °C, or °F with its letter',
    example: '24 C',
    whenAbsent: 'asked for: times hold at one temperature',
  }).optional(),
  prints: todaySchema.shape.prints.unwrap().default(1),
  timesFrom: choice(
    {
      description:
        'from when to when a time counts: `pouring-in`, from the beginning of pouring until the tank is empty, so that filling and draining are part of it; `covered`, from when the bath is in until draining begins, so that they come on top',
      example: 'pouring-in',
    },
    timeRules,
  ).default('pouring-in'),
  fill: todaySchema.shape.fill,
  drain: todaySchema.shape.drain,
  workingVolume: ofTank('what covers the print while the tank lies', '120 ml').optional(),
  fullVolume: ofTank('what the tank holds when it is full', '330 ml').optional(),
  carryOver: measured(
    {
      description: 'what a print and its tank take along from one bath into the next (common practice, no source)',
      example: '4 ml',
    },
    parseVolume,
    { least: 0, most: MOST_CARRIED },
    millilitres,
  ).prefault('4 ml'),
  steps: z
    .array(stepSchema)
    .min(1)
    .max(MOST_STEPS)
    .meta(
      section({
        description: 'the steps, in their order',
        example: '[{ name: first bath, time: 1m30s, volume: 250 ml }]',
      }),
    ),
});

export type WrittenProcess = z.output<typeof processSchema>;

/** What cannot be true of two keys together, though each of them could be. */
export function processFaults({ workingVolume, fullVolume, steps }: WrittenProcess): readonly Fault[] {
  const full: readonly Fault[] =
    workingVolume === undefined || fullVolume === undefined || workingVolume <= fullVolume
      ? []
      : [
          {
            path: ['workingVolume'],
            at: 'value',
            what: `${millilitres(workingVolume)} is more than the ${millilitres(fullVolume)} that the tank holds.`,
            accepted: 'Write the volume that covers the print, which is the smaller of the two.',
          },
        ];
  return [
    ...full,
    ...steps.flatMap(({ volume, reuse }, i): readonly Fault[] =>
      volume === 'none' && reuse > 1
        ? [
            {
              path: ['steps', i, 'reuse'],
              at: 'value',
              what: 'Nothing is poured in this step, so nothing is used again.',
              accepted: 'Delete the key, or write a volume.',
            },
          ]
        : [],
    ),
  ];
}

/** The JSON Schema (2020-12) of a process file, for editors and other programs. */
export const processJsonSchema = (): Record<string, unknown> => jsonSchemaOf(processSchema, 'Process of a print');
