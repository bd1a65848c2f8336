import * as z from 'zod';
import type { Fault } from '../design/explain.js';
import { lengthOrList, number, section, text } from '../design/fields.js';
import { jsonSchemaOf } from '../design/json-schema.js';
import { lineTrouble } from '../design/names.js';
import type { BenchReading, BenchReadings } from '../model/lens-bench.js';
import { lengthDoubt, magnificationDoubt, readLength, readMagnification } from './bench-fields.js';

/*
 * What was read with a lens on the bench: the one description of the file, as YAML, and of the columns of the same readings
 * as CSV.
 */

const MOST_READINGS = 200;
const MOST_COVERAGE = 24;
const MOST_DIAMETERS = 24;

const rowSchema = z
  .strictObject({
    magnification: readMagnification({
      description: 'image over object: 1:3 where the image is a third as long; infinity where the horizon was focused',
      example: '1:3',
      whenAbsent: 'image over object, which must then be given',
    }).optional(),
    image: readLength({
      description: 'length of the image on the ground glass',
      example: '40 mm',
      whenAbsent: 'the magnification must be given',
    }).optional(),
    object: readLength({
      description: 'length of the object that is imaged, not how far away it stands',
      example: '120 mm',
      whenAbsent: 'the magnification must be given',
    }).optional(),
    distance: readLength({
      description: 'from the lens seat to the ground surface of the glass, when the image is sharp',
      example: '267.3 mm',
    }),
    object_distance: readLength({
      description: 'from the lens seat to the object; it is looked at, not fitted',
      example: '850 mm',
      whenAbsent: 'not looked at',
    }).optional(),
    u_magnification: magnificationDoubt({
      description: 'standard uncertainty of the magnification, or the limits of it with ± before them',
      example: '0.002',
      whenAbsent: 'not known',
    }).optional(),
    u_image: lengthDoubt({
      description: 'the same of the image',
      example: '0.3 mm',
      whenAbsent: 'not known',
    }).optional(),
    u_object: lengthDoubt({
      description: 'the same of the object',
      example: '0.3 mm',
      whenAbsent: 'not known',
    }).optional(),
    u_distance: lengthDoubt({
      description: 'the same of the distance: a scale read to ±0.5 mm has 0.29 mm',
      example: '±0.5 mm',
      whenAbsent: 'not known',
    }).optional(),
  })
  .meta(section({ description: 'one sharp image', example: '{ magnification: 1:3, distance: 267.3 mm }' }));

const diameters = (description: string, example: string) =>
  lengthOrList({ description, example, whenAbsent: 'not measured' }, {}, MOST_DIAMETERS);

export const benchSchema = z
  .strictObject({
    name: text(
      { description: 'what lens it is', example: 'unmarked copying lens', whenAbsent: 'it has none' },
      lineTrouble,
    ).optional(),
    readings: z
      .array(rowSchema)
      .max(MOST_READINGS)
      .meta(
        section({
          description: 'sharp images at three magnifications at least, the farther apart the better',
          example: '[{ magnification: 1:3, distance: 267.3 mm }]',
        }),
      ),
    pupils: z
      .strictObject({
        front: diameters(
          'diameter of the bright disc at full aperture, seen from the front at some distance',
          '[23.7 mm, 23.9 mm]',
        ).optional(),
        rear: diameters('the same, seen from the rear', '[23.1 mm, 23 mm]').optional(),
      })
      .meta(
        section({
          description: 'the pupils of the lens: the rear one over the front one is the pupil magnification',
          example: '{ front: [23.7 mm, 23.9 mm], rear: [23.1 mm, 23 mm] }',
          whenAbsent: 'the pupil magnification is not measured, and taken as 1 where it is needed',
        }),
      )
      .optional(),
    coverage: z
      .array(
        z.strictObject({
          diameter: readLength({
            description: 'diameter within which the image is bright and sharp enough',
            example: '410 mm',
          }),
          magnification: readMagnification({
            description: 'the magnification at which it was seen',
            example: '1:2',
            whenAbsent: 'from the distance',
          }).optional(),
          distance: readLength({
            description: 'or the distance from the lens seat to the glass',
            example: '300 mm',
            whenAbsent: 'the magnification must be given',
          }).optional(),
        }),
      )
      .max(MOST_COVERAGE)
      .meta(
        section({
          description: 'circles of good light on the glass',
          example: '[{ diameter: 410 mm, magnification: 1:2 }]',
          whenAbsent: 'the coverage is not measured',
        }),
      )
      .optional(),
    hole: z
      .strictObject({
        diameter: lengthOrList(
          { description: 'of the hole itself, at full aperture', example: '23.1 mm' },
          {},
          MOST_DIAMETERS,
        ),
        enlargement: number(
          {
            description: 'how much larger the hole looks from the front, through the front group',
            example: '1.03',
            whenAbsent: 'pupils.front over the hole; else 1, told in a note',
          },
          { least: 0.2, most: 5 },
        ).optional(),
      })
      .meta(
        section({
          description: 'the hole of the full aperture, measured with the lens open',
          example: '{ diameter: 23.1 mm, enlargement: 1.03 }',
          whenAbsent: 'the widest stop comes from pupils.front',
        }),
      )
      .optional(),
  })
  .meta(section({ description: 'readings of a lens on the bench', example: '' }));

/** The JSON Schema (2020-12) of the file. */
export const benchJsonSchema = (): Record<string, unknown> =>
  jsonSchemaOf(benchSchema, 'Readings of a lens on the bench');

export type WrittenBench = z.output<typeof benchSchema>;
type WrittenRow = WrittenBench['readings'][number];

/** What cannot be true of two keys of a reading together. */
export function benchFaults({ readings, coverage = [], pupils }: WrittenBench): readonly Fault[] {
  return [
    ...readings.flatMap((row, i) =>
      rowFaults(row).map((fault) => ({ ...fault, path: ['readings', i, ...fault.path] })),
    ),
    ...coverage.flatMap(({ magnification, distance }, i): readonly Fault[] =>
      (magnification === undefined) === (distance === undefined)
        ? [
            {
              path: ['coverage', i],
              at: 'value',
              what:
                magnification === undefined
                  ? 'It is not said at which focus this was seen.'
                  : 'The focus is said twice.',
              accepted: 'Write one of magnification and distance.',
            },
          ]
        : [],
    ),
    ...(pupils !== undefined && pupils.front === undefined && pupils.rear === undefined
      ? [{ path: ['pupils'], at: 'key', what: 'No pupil is given.', accepted: 'Write front and rear.' } as const]
      : []),
  ];
}

function rowFaults({ magnification, image, object, u_magnification, u_image, u_object }: WrittenRow): readonly Fault[] {
  const fault = (key: string | null, what: string, accepted: string): readonly Fault[] => [
    { path: key === null ? [] : [key], at: 'value', what, accepted },
  ];
  if (magnification !== undefined) {
    const twice = image !== undefined ? 'image' : object !== undefined ? 'object' : null;
    if (twice !== null) return fault(twice, 'The magnification is given already.', 'Write one of the two ways.');
    const stray = u_image !== undefined ? 'u_image' : u_object !== undefined ? 'u_object' : null;
    return stray === null ? [] : fault(stray, `${stray} goes with image and object.`, 'Write u_magnification.');
  }
  if (image === undefined && object === undefined)
    return fault(null, 'This reading has no magnification.', 'Write magnification: 1:3, or image and object.');
  if (image === undefined || object === undefined)
    return fault(
      image === undefined ? 'object' : 'image',
      `Without the length of the ${image === undefined ? 'image' : 'object'} this tells no magnification.`,
      'Write image and object, both as lengths.',
    );
  return u_magnification === undefined
    ? []
    : fault('u_magnification', 'u_magnification goes with magnification.', 'Write u_image and u_object.');
}

/** The readings in the terms of the bench. */
export function benchOf(
  { name, readings, pupils, coverage = [], hole }: WrittenBench,
  taken: readonly string[],
): BenchReadings {
  return {
    name: name ?? null,
    readings: readings.map(readingOf),
    pupils: { front: pupils?.front ?? [], rear: pupils?.rear ?? [] },
    coverage: coverage.map(({ diameter, magnification, distance = 0 }) =>
      magnification === undefined ? { diameter, distance } : { diameter, magnification },
    ),
    hole: hole === undefined ? null : { diameters: hole.diameter, enlargement: hole.enlargement ?? null },
    taken,
  };
}

/** The uncertainty of a ratio goes with those of its parts, each relative to it (JCGM 100:2008, 5.1.6). */
function readingOf(row: WrittenRow): BenchReading {
  const { image = 0, object = 1, distance, object_distance, u_magnification, u_image, u_object, u_distance } = row;
  const magnification = row.magnification ?? image / object;
  const ofRatio =
    u_image === undefined && u_object === undefined
      ? null
      : magnification * Math.sqrt(((u_image ?? 0) / image) ** 2 + ((u_object ?? 0) / object) ** 2);
  return {
    magnification,
    distance,
    magnificationDoubt: u_magnification ?? ofRatio,
    distanceDoubt: u_distance ?? null,
    objectDistance: object_distance ?? null,
  };
}
