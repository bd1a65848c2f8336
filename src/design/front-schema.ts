import * as z from 'zod';
import { exposureTime, flag, length, mass, section, whole } from './fields.js';

/*
 * What hangs ahead of the lens. Each is made where its key stands in the design, be it empty: `shutter: {}`.
 */

const MOST_FILTERS = 12;

export const filterHolderSchema = z
  .strictObject({
    filters: whole(
      { description: 'how many gels it takes at once', example: '4' },
      { least: 1, most: MOST_FILTERS },
    ).prefault(4),
    side: length({
      description: 'side of the square gels',
      example: '75 mm',
      whenAbsent: 'the smallest of 75, 100, 125 and 150 mm that covers the light',
    }).optional(),
  })
  .meta(
    section({
      description: 'a frame for a stack of gels ahead of the lens',
      example: '{ filters: 4, side: 75 mm }',
      whenAbsent: 'none is made',
    }),
  );

export const shutterSchema = z
  .strictObject({
    time: exposureTime({
      description: 'how long it exposes, with the lens wide open: its slot follows from it',
      example: '1/30 s',
      whenAbsent: '1/30 s, unless the slot is given',
    }).optional(),
    slot: length({
      description: 'length of its slot along the fall, where that is wanted and not a time',
      example: '60 mm',
      whenAbsent: 'as long as the time asks',
    }).optional(),
    elastic: z
      .strictObject({
        pull: mass({
          description: 'what the elastic pulls when the slide is cocked, as a spring balance shows it',
          example: '400 g',
        }),
        over: length({
          description: 'how far the slide moves before the elastic hangs slack',
          example: '120 mm',
          whenAbsent: 'the whole fall',
        }).optional(),
      })
      .meta(
        section({
          description: 'elastic that pulls the slide down, for times that its weight does not reach',
          example: '{ pull: 400 g }',
          whenAbsent: 'the slide falls by its weight',
        }),
      )
      .optional(),
  })
  .meta(
    section({
      description: 'a drop shutter ahead of the lens: a slide with a slot, which falls',
      example: '{ time: 1/30 s }',
      whenAbsent: 'none is made',
    }),
  );

export const hoodSchema = z
  .strictObject({
    depth: length({
      description: 'how far its mouth stands ahead of the lens; it is as wide as that asks',
      example: '60 mm',
      whenAbsent: 'as far as the picture lets a hood stand that is as wide as the accessory frame, 80 mm at most',
    }).optional(),
  })
  .meta(
    section({
      description: 'a lens hood: a square tunnel that keeps light from beside the picture off the lens',
      example: '{ depth: 60 mm }',
      whenAbsent: 'none is made',
    }),
  );

export const capSchema = flag({
  description: 'a cap ahead of the lens, which is pushed in from above and pinned for the road',
  example: 'true',
  whenAbsent: 'false: none is made',
}).optional();
