import * as z from 'zod';
import { section, text } from '../design/fields.js';
import { jsonSchemaOf } from '../design/json-schema.js';
import { lineTrouble, nameTrouble } from '../design/names.js';
import {
  focusSchema,
  formatSchema,
  groundGlassSchema,
  holderSchema,
  lensSchema,
  plywoodSchema,
  workshopSchema,
} from '../design/schema.js';
import type { FileKind } from '../design/source.js';

/*
 * The form of a list of lenses: the keys of a design file wherever the two say the same thing, so that a line that was
 * tried here can be carried into a design as it stands. What may be left out here and not there is what somebody with a
 * lens in the hand does not know yet.
 */

const MOST_LENSES = 2000;
const MOST_FORMATS = 24;
const MOST_HOLDERS = 200;

/** Twenty values and 200 letters for a lens that is measured through and through; a list of 1,000 is then 400 kB. */
export const lensesFile: FileKind = {
  noun: 'list of lenses',
  begin: 'Write the sheet and at least one lens: plywood: { thickness: 4.05 mm }, then lenses: with an entry for each.',
  largest: 1024 * 1024,
  mostValues: 100000,
};

const { flangeDistance, maxAperture, mount } = lensSchema.shape;
const mountKeys = mount.unwrap().shape;

const surveyedLens = lensSchema
  .extend({
    name: text({ description: 'what the lens is; no two are called alike', example: 'copying lens' }, lineTrouble),
    flangeDistance: flangeDistance.optional().meta({
      description: 'lens seat to film at infinity',
      example: '196 mm',
      whenAbsent: 'the focal length, flagged',
    }),
    maxAperture: maxAperture
      .unwrap()
      .optional()
      .meta({ description: 'widest stop', example: 'f/9', whenAbsent: 'f/8, flagged' }),
    barrel: lensSchema.shape.barrel.meta(
      section({
        description: 'the body of the lens; all lengths count from the lens seat',
        example:
          '{ diameter: 58 mm, grip: 22 mm, front: 18 mm, rear: 31 mm, frontDiameter: 64 mm, rearDiameter: 52 mm, mass: 640 g }',
        whenAbsent: 'a stand-in of f/N across, flagged',
      }),
    ),
    mount: z
      .strictObject({
        by: mountKeys.by.unwrap().optional().meta({
          description: 'what holds the lens',
          example: 'clamp',
          whenAbsent: 'its flange where it has one, else a clamp',
        }),
        side: mountKeys.side.unwrap().optional().meta({
          description: 'from which side of the board',
          example: 'inside',
          whenAbsent: 'the side from which the camera focuses nearer',
        }),
        screws: mountKeys.screws,
      })
      .meta(section({ description: 'how the lens is held', example: '{ by: clamp, side: inside, screws: 4 }' }))
      .prefault({}),
  })
  .meta(section({ description: 'a lens', example: '{ name: copying lens, focalLength: 214 mm, maxAperture: f/9 }' }));

const ownFormat = formatSchema.options[1]
  .extend({
    name: text({ description: 'what the size is called', example: '6x9' }, nameTrouble),
  })
  .meta(section({ description: 'a size of your own', example: '{ name: 6x9, width: 60 mm, height: 90 mm }' }));

const holderKeys = holderSchema.shape;

const surveyedHolder = holderSchema
  .omit({ make: true, measured: true, insert: true })
  .extend({
    // what lies in a drawer is there to be measured
    filmDepth: holderKeys.filmDepth.unwrap().meta({
      description: 'from its face to the film; the effective one where a window stands before the film',
      example: '5.8 mm',
    }),
    width: holderKeys.width.unwrap().meta({ description: 'outside, across', example: '150 mm' }),
    length: holderKeys.length.unwrap().meta({
      description: 'outside, from the closed end to the open end',
      example: '210 mm',
    }),
    thickness: holderKeys.thickness.unwrap().meta({ description: 'outside, front to back', example: '13.9 mm' }),
    format: text({ description: 'the format that it is for, by its name', example: '5x7' }, lineTrouble),
  })
  .meta(
    section({
      description: 'a holder',
      example:
        '{ format: 5x7, name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm }',
    }),
  );

export const lensesSchema = z.strictObject({
  plywood: plywoodSchema,
  formats: z
    .array(
      z
        .union([formatSchema.options[0], ownFormat])
        .meta(section({ description: 'a name from the table of formats, or a size of your own', example: '5x7' })),
    )
    .min(1)
    .max(MOST_FORMATS)
    .meta(
      section({
        description: 'what could be exposed: names from the table of formats, or sizes of your own with a name',
        example: '[4x5, 5x7, whole-plate]',
        whenAbsent: 'all of the table',
      }),
    )
    .optional(),
  holders: z
    .array(surveyedHolder)
    .min(1)
    .max(MOST_HOLDERS)
    .meta(
      section({
        description: 'holders at hand; a camera takes all that are for its format',
        example:
          '[{ format: 5x7, name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm }]',
        whenAbsent: 'a paper holder cut from the same sheet, flagged',
      }),
    )
    .optional(),
  focus: focusSchema,
  groundGlass: groundGlassSchema,
  workshop: workshopSchema,
  lenses: z
    .array(surveyedLens)
    .min(1)
    .max(MOST_LENSES)
    .meta(
      section({
        description: 'what lies in the drawer',
        example: '[{ name: copying lens, focalLength: 214 mm, flangeDistance: 196 mm, maxAperture: f/9 }]',
      }),
    ),
});

/** The JSON Schema (2020-12) of a list of lenses, for editors and other programs. */
export const lensesJsonSchema = (): Record<string, unknown> => jsonSchemaOf(lensesSchema, 'Lenses to be surveyed');

/** A list of lenses as it was read: lengths in mm, masses in kg, fixed defaults filled in. */
export type WrittenLenses = z.output<typeof lensesSchema>;
export type SurveyedLens = WrittenLenses['lenses'][number];
export type SurveyedFormat = NonNullable<WrittenLenses['formats']>[number];

/** What a lens is taken to have where nobody says: as in a design. */
export const usualAperture = (): number => maxAperture.parse(undefined, { jitless: true });
