import * as z from 'zod';
import {
  choice,
  energy,
  exposureTime,
  fNumber,
  magnification,
  number,
  numberOrList,
  roomDistance,
  section,
  text,
} from './fields.js';
import { headField } from './head-field.js';
import { lineTrouble } from './names.js';

/*
 * What a sitting is exposed by: keys of the design file, each with a flag of the same words for what differs today. None
 * of them shapes a part.
 */

/** In place of the name of a filter set: none of them. */
const NO_SET = 'none';

/** More gels than anyone can see through. */
const MOST_FILTERS = 12;
const MOST_SETS = 24;
const MOST_ROWS = 40;

/** A room, a hall, a street. */
const FARTHEST_SUBJECT = 1e6;
export const FARTHEST_LAMP = 1e5;
/** Nearer the lens no face is, and nearer the face no lamp: both are choices of ours, below all that is sensible. */
const NEAREST_SUBJECT = 50;
const NEAREST_LAMP = 100;

const TO_SUBJECT = { between: 'from the lens to the sitter', least: NEAREST_SUBJECT, most: FARTHEST_SUBJECT };
/** From a doll's to that of a statue. */
const OF_HEAD = { between: 'from chin to crown', least: 50, most: 5000 };
const FROM_LAMP = { between: 'from the lamp to the sitter', least: NEAREST_LAMP, most: FARTHEST_LAMP };

/** 1 asks for nothing; the darkest neutral glass that is sold asks for some hundred thousand. */
export const FACTORS = { least: 1, most: 1e6 };
export const DENSITIES = { least: 0, most: 6 };
/** From the slowest emulsion that was ever coated to the fastest film. */
export const SPEEDS = { least: 0.01, most: 102400 };
/** Above 1, or a long exposure would ask for less. */
const EXPONENTS = { least: 1, most: 2 };

const reciprocityExponent = number({ description: 'exponent', example: '1.31' }, EXPONENTS);

const reciprocityTable = z
  .array(
    z.strictObject({
      metered: exposureTime({ description: 'time by the meter and the factors', example: '10 s' }),
      given: exposureTime({ description: 'time that the paper or film asks for then', example: '25 s' }),
    }),
  )
  .min(1)
  .max(MOST_ROWS);

const reciprocitySchema = z
  .union([reciprocityExponent, reciprocityTable], {
    error: ({ input }) => reciprocityExponent.safeParse(input, { jitless: true }).error?.issues[0]?.message ?? '',
  })
  .meta(
    section({
      description:
        'what a long exposure loses: an exponent for the time above 1 s, or a table of your own, shortest first',
      example: '1.31',
      whenAbsent: 'unknown: times above 1 s are left as they are, and it is said',
    }),
  );

const setFilterSchema = z.strictObject({
  name: text(
    { description: 'what it is', example: 'straw gel', whenAbsent: 'called after its factor or density' },
    lineTrouble,
  ).optional(),
  factor: number(
    {
      description: 'factor by which it lengthens the exposure',
      example: '1.5',
      whenAbsent: 'its density is given instead',
    },
    FACTORS,
  ).optional(),
  density: number(
    { description: 'density, which is neutral', example: '0.2', whenAbsent: 'its factor is given instead' },
    DENSITIES,
  ).optional(),
});

const filterSetSchema = z.strictObject({
  name: text({ description: 'what the set is called', example: 'warm' }, (input) =>
    input === NO_SET
      ? { what: `"${NO_SET}" says that no set is used.`, accepted: 'Write another name.' }
      : lineTrouble(input),
  ),
  filters: z
    .array(setFilterSchema)
    .min(1)
    .max(MOST_FILTERS)
    .meta(
      section({
        description: 'what stands in the light together',
        example: '[{ name: straw gel, factor: 1.5 }, { density: 0.2 }]',
      }),
    ),
});

export const sittingSchema = z.strictObject({
  subject: roomDistance(
    {
      description: 'from the front principal plane of the lens to the eyes of the sitter',
      example: '1.2 m',
      whenAbsent: 'magnification or head says where the sitter is; else it is asked for',
    },
    TO_SUBJECT,
  ).optional(),
  magnification: magnification({
    description: 'size on the film to life size, at the eyes',
    example: '1:4',
    whenAbsent: 'subject or head says it; else it is asked for',
  }).optional(),
  head: headField({
    description: "height of the sitter's head on the ground glass, or its share of the picture's height",
    example: '60 %',
    whenAbsent: 'subject or magnification says it; else it is asked for',
  }).optional(),
  headHeight: roomDistance(
    {
      description: "height of the sitter's own head, chin to crown; only head needs it",
      example: '230 mm',
      whenAbsent: '250 mm (common practice)',
    },
    OF_HEAD,
  ).optional(),
  aperture: fNumber({
    description: 'stop that is set, as marked and taken as the number that it is',
    example: 'f/16',
    whenAbsent: 'the widest of the lens',
  }).optional(),
  speed: number(
    {
      description: 'exposure index of the paper or film, on the scale of the meter',
      example: '6',
      whenAbsent: 'unknown: only a test on the same paper can then be carried over',
    },
    SPEEDS,
  ).optional(),
  filter: numberOrList(
    {
      description: 'factors of filters in the light, one or several',
      example: '[2, 1.5]',
      whenAbsent: 'none',
    },
    FACTORS,
    MOST_FILTERS,
  ).optional(),
  density: numberOrList(
    {
      description: 'densities of neutral filters and diffusers in the light, one or several',
      example: '0.3',
      whenAbsent: 'none',
    },
    DENSITIES,
    MOST_FILTERS,
  ).optional(),
  filterSet: text(
    {
      description: `name of the one of filterSets that is in the light, beside filter and density; ${NO_SET} is none of them`,
      example: NO_SET,
      whenAbsent: NO_SET,
    },
    lineTrouble,
  ).optional(),
  filterSets: z
    .array(filterSetSchema)
    .max(MOST_SETS)
    .meta(
      section({
        description: 'filters that are used together, under a name; the card has a column for each',
        example: '[{ name: warm, filters: [{ name: straw gel, factor: 1.5 }, { density: 0.2 }] }]',
        whenAbsent: 'none',
      }),
    )
    .optional(),
  meterTime: exposureTime({
    description: 'a meter reading (or a test by steady light): the time',
    example: '1/4 s',
    whenAbsent: 'the flash reading holds; with neither, no time and no energy is reckoned',
  }).optional(),
  meterAperture: fNumber({
    description: 'its aperture',
    example: 'f/16',
    whenAbsent: 'asked for where meterTime is given',
  }).optional(),
  meterSpeed: number(
    {
      description: 'the speed that was set on the meter',
      example: '100',
      whenAbsent: 'asked for where meterTime is given; at a test it was the same paper',
    },
    SPEEDS,
  ).optional(),
  flashEnergy: energy({
    description: 'a flash reading (or a test by flash): the energy at which it was made, in joules or watt seconds',
    example: '400 J',
    whenAbsent: 'the meter reading holds; with neither, no time and no energy is reckoned',
  }).optional(),
  flashAperture: fNumber({
    description: 'its aperture',
    example: 'f/16',
    whenAbsent: 'asked for where flashEnergy is given',
  }).optional(),
  flashDistance: roomDistance(
    {
      description: 'from the lamp to where it was made',
      example: '2 m',
      whenAbsent: 'asked for where flashEnergy is given',
    },
    FROM_LAMP,
  ).optional(),
  flashSpeed: number(
    {
      description: 'the speed for which it was made',
      example: '100',
      whenAbsent: 'asked for where flashEnergy is given; at a test it was the same paper',
    },
    SPEEDS,
  ).optional(),
  testMagnification: magnification({
    description: 'where the reading was found by a test with the camera: the magnification, whose extension is in it',
    example: '1:4',
    whenAbsent: 'it was read from a meter, which knows of no extension',
  }).optional(),
  testFilter: number(
    {
      description: 'factor of all that stood in the light at that test',
      example: '2',
      whenAbsent: 'nothing did',
    },
    FACTORS,
  ).optional(),
  lampDistance: roomDistance(
    {
      description: 'from the flash lamp to the sitter',
      example: '1.5 m',
      whenAbsent: 'as at the flash reading',
    },
    FROM_LAMP,
  ).optional(),
  flashMost: energy({
    description: 'energy of one pop at full power',
    example: '1200 J',
    whenAbsent: 'unknown: the energy is not shared out among pops',
  }).optional(),
  reciprocity: reciprocitySchema.optional(),
  process: choice(
    {
      description: 'what the material becomes: a negative, or by reversal a positive',
      example: 'reversal',
      whenAbsent: 'negative',
    },
    ['negative', 'reversal'],
  ).optional(),
  paper: text(
    {
      description: 'what is exposed, for the card and the log',
      example: 'glossy paper of grade 2',
      whenAbsent: 'not named',
    },
    lineTrouble,
  ).optional(),
  distances: z
    .array(roomDistance({ description: 'a subject distance', example: '1.2 m' }, TO_SUBJECT))
    .max(MOST_ROWS)
    .meta(
      section({
        description: 'subject distances for which the card has a row each',
        example: '[0.9 m, 1.2 m, 2 m]',
        whenAbsent: 'where the sitter is today',
      }),
    )
    .optional(),
});
