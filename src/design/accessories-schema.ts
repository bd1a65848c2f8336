import * as z from 'zod';
import { formats } from '../standards/formats.js';
import { choice, flag, fNumber, length, lengthPair, section, text, whole } from './fields.js';
import { nameTrouble } from './names.js';

/** Small things that are made only where somebody asks for them. */

export const boxesSchema = whole(
  {
    description:
      'boxes that slide in each other: a third one, between the two, reaches nearer and makes the camera wider',
    example: '3',
    whenAbsent: '2',
  },
  { least: 2, most: 3 },
).optional();

export const baffleSchema = flag({
  description: 'a black frame in the rear box that keeps glancing light from its walls',
  example: 'true',
  whenAbsent: 'false: none is made',
}).optional();

export const handleSchema = flag({
  description: 'a carrying handle on the top of the front box, above the middle of the weight',
  example: 'true',
  whenAbsent: 'false: none is made',
}).optional();

/** More would not lie under the cords. */
const MOST_MASKS = 4;

export const masksSchema = z
  .array(
    z.strictObject({
      name: text({ description: 'what it is called', example: 'square' }, nameTrouble),
      image: lengthPair({
        description: 'what the film receives, across and up with the back upright',
        example: '[110 mm, 110 mm]',
        whenAbsent: 'that of the format',
      }).optional(),
      format: choice(
        {
          description: 'a smaller size that it makes of this one, in place of image',
          example: '4x5',
          whenAbsent: 'image says it',
        },
        formats.map(({ name }) => name) as [string, ...string[]], // the table is not empty
      ).optional(),
      corners: length(
        { description: 'radius of the corners of the picture', example: '5 mm' },
        { sign: 'not-negative' },
      ).prefault('0 mm'),
      holder: text(
        {
          description: 'the holder that the picture has this size in',
          example: 'paper holder',
          whenAbsent: 'the first holder',
        },
        nameTrouble,
      ).optional(),
    }),
  )
  .max(MOST_MASKS)
  .meta(
    section({
      description: 'plates that drop into the opening of the back and make the picture smaller',
      example: '[{ name: square, image: [110 mm, 110 mm], corners: 5 mm }]',
      whenAbsent: 'none is made',
    }),
  )
  .optional();

/** More plates than a wallet holds. */
const MOST_STOPS = 12;

export const stopsSchema = z
  .strictObject({
    fullAperture: length({
      description: 'hole of the lens at its widest stop, measured where the plates go in',
      example: '30 mm',
    }),
    marked: fNumber({
      description: 'f-number of the lens with that hole; an old U.S. 4 is f/8, U.S. 16 is f/16',
      example: 'f/6.3',
      whenAbsent: 'lens.maxAperture',
    }).optional(),
    slot: lengthPair({ description: 'width and thickness of the slot in the barrel', example: '[40 mm, 1 mm]' }),
    depth: length({
      description: 'from the mouth of the slot to the middle of the barrel',
      example: '29 mm',
      whenAbsent: 'half the diameter of the barrel',
    }).optional(),
    board: length({
      description: 'thickness of the board that they are cut from, measured',
      example: '0.8 mm',
      whenAbsent: '0.2 mm less than the slot',
    }).optional(),
    series: z
      .array(fNumber({ description: 'an f-number', example: 'f/11' }))
      .min(1)
      .max(MOST_STOPS)
      .meta(
        section({
          description: 'f-numbers, a plate each',
          example: '[f/8, f/11, f/16, f/22]',
          whenAbsent: 'the four whole stops after the widest',
        }),
      )
      .optional(),
  })
  .meta(
    section({
      description: 'plates with a hole for a lens that has a slot for them: Waterhouse stops, and a wallet for them',
      example: '{ fullAperture: 30 mm, slot: [40 mm, 1 mm], series: [f/8, f/11, f/16, f/22] }',
      whenAbsent: 'none is made',
    }),
  )
  .optional();
