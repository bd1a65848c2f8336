import * as z from 'zod';
import { workshopPalette } from '../model/palette.js';
import { formats } from '../standards/formats.js';
import { baffleSchema, boxesSchema, handleSchema, masksSchema, stopsSchema } from './accessories-schema.js';
import {
  choice,
  density,
  flag,
  fNumber,
  length,
  lengthOrList,
  lengthPair,
  magnification,
  mass,
  modulus,
  number,
  readLength,
  seconds,
  section,
  speed,
  text,
  whole,
} from './fields.js';
import { focusField } from './focus-field.js';
import { capSchema, filterHolderSchema, hoodSchema, shutterSchema } from './front-schema.js';
import { lineTrouble, nameTrouble, pathTrouble } from './names.js';
import { sittingSchema } from './sitting-schema.js';

/*
 * The one description of the design file: types, checks, the published JSON Schema and the table of keys come from it.
 * A fixed default stands here, written as in the design file (`prefault`: it is read as if the user had written it); one
 * that depends on other keys is told in `whenAbsent` and filled in by complete.ts.
 */

const THICKEST_SHEET = 100;
/** Of a sheet that is at hand today, typed beside the design file: the same limits as there. */
export const readSheetThickness = (text: string) => readLength(text, { most: THICKEST_SHEET });

/** The same of the film depth of a holder. */
export const readFilmDepth = (text: string) => readLength(text);

/** Less than one veneer is no plywood; what is more may be an inch that was typed for a millimetre, and is questioned; a choice of ours. */
const THINNEST_PLYWOOD = 0.1;
/** A camera round a lens of less would be as wide as a barn; what is less than usual is questioned; a choice of ours. */
const SHORTEST_FOCAL_LENGTH = 1;
/** What is thinner is no hole when its round is drawn in chords; what is less than usual is questioned; a choice of ours. */
const THINNEST_BARREL = 1;
const MOST_ENTRIES = 24;
const MOST_READINGS = 100;
const MOST_BENCH_READINGS = 1000;
const MOST_SHEETS = 1000;

export const formatSchema = z
  .union([
    z.enum(formats.map(({ name }) => name) as [string, ...string[]]), // the table is not empty
    z
      .strictObject({
        width: length({ description: 'nominal size across', example: '127 mm' }),
        height: length({ description: 'nominal size up', example: '177.8 mm' }),
        image: lengthPair({
          description: 'what the film really receives, across and up',
          example: '[120.6 mm, 171.4 mm]',
          whenAbsent: 'the nominal size less 6.4 mm each way, as sheet film in its holder',
        }).optional(),
      })
      .meta(
        section({ description: 'a size that is not in the table', example: '{ width: 127 mm, height: 177.8 mm }' }),
      ),
  ])
  .meta(
    section({
      description: 'size of the film or plate: a name from the table of formats, or a size of your own',
      example: '5x7',
    }),
  );

const barrelSchema = z
  .strictObject({
    diameter: length({ description: 'of the part that is gripped', example: '58 mm' }, { least: THINNEST_BARREL }),
    grip: length({ description: 'length that can be gripped, behind the lens seat', example: '22 mm' }),
    front: length({ description: 'what stands ahead of the lens seat', example: '18 mm' }, { sign: 'not-negative' }),
    rear: length({ description: 'what follows behind the grip', example: '31 mm' }, { sign: 'not-negative' }),
    frontDiameter: length(
      { description: 'of the part ahead of the lens seat', example: '64 mm' },
      { least: THINNEST_BARREL },
    ),
    rearDiameter: length({ description: 'of the rear rim', example: '52 mm' }, { least: THINNEST_BARREL }),
    mass: mass({
      description: 'mass of the whole lens',
      example: '640 g',
      whenAbsent: 'estimated from the volume, at 3600 kg/m3',
    }).optional(),
  })
  .meta(
    section({
      description: 'the body of the lens; all lengths count from the lens seat',
      example:
        '{ diameter: 58 mm, grip: 22 mm, front: 18 mm, rear: 31 mm, frontDiameter: 64 mm, rearDiameter: 52 mm, mass: 640 g }',
      whenAbsent: 'asked for where the lens is clamped; else a stand-in of f/N across, told in a note',
    }),
  );

const uncertaintySchema = z
  .strictObject({
    focalLength: length(
      { description: 'standard error of the focal length', example: '0.37 mm' },
      { sign: 'not-negative' },
    ),
    flangeDistance: length(
      { description: 'standard error of the flange distance', example: '0.21 mm' },
      { sign: 'not-negative' },
    ),
    correlation: number(
      {
        description:
          'how the two errors go together: -0.86 where a focal length too long means a flange distance too short',
        example: '-0.86',
      },
      { least: -1, most: 1 },
    ),
    readings: whole(
      {
        description: 'how many readings on the bench they come from',
        example: '8',
        whenAbsent: 'so many that more would tell nothing new',
      },
      { least: 3, most: MOST_BENCH_READINGS },
    ).optional(),
  })
  .meta(
    section({
      description: 'how well the two are known, as `tailboard lens` found it: the reserve of the slide is judged by it',
      example: '{ focalLength: 0.37 mm, flangeDistance: 0.21 mm, correlation: -0.86, readings: 8 }',
      whenAbsent: 'the focal length is taken to be 3 % off, the flange distance 1 %',
    }),
  );

export const lensSchema = z
  .strictObject({
    name: text(
      {
        description: 'what the lens is, for the titles',
        example: '210 mm f/6.3 process lens',
        whenAbsent: 'made from focal length and aperture',
      },
      lineTrouble,
    ).optional(),
    focalLength: length(
      { description: 'focal length, measured if you can', example: '210 mm' },
      { least: SHORTEST_FOCAL_LENGTH },
    ),
    flangeDistance: length({ description: 'lens seat to film at infinity', example: '203.5 mm' }),
    uncertainty: uncertaintySchema.optional(),
    maxAperture: fNumber({ description: 'widest stop', example: 'f/6.3' }).prefault('f/8'),
    coverage: z
      .strictObject({
        diameter: length({ description: 'diameter of the image circle', example: '420 mm' }),
        at: magnification({
          description: 'the magnification for which it is stated: copying and process lenses 1:1, others infinity',
          example: '1:1',
        }),
      })
      .meta(
        section({
          description: 'image circle',
          example: '{ diameter: 420 mm, at: 1:1 }',
          whenAbsent: 'unknown: the figures of coverage are left out, told in a note',
        }),
      )
      .optional(),
    pupilMagnification: number(
      { description: 'exit pupil over entrance pupil', example: '1' },
      { least: 0.1, most: 10 },
    ).prefault(1),
    barrel: barrelSchema.optional(),
    flange: z
      .strictObject({
        diameter: length({ description: 'across the flange', example: '80 mm' }),
        boltCircle: length({ description: 'diameter of the circle of screws', example: '70 mm' }),
        screws: whole({ description: 'number of screws', example: '3' }, { least: 2, most: 12 }),
        thickness: length({ description: 'of the flange', example: '4 mm' }),
      })
      .meta(
        section({
          description: 'the flange of the lens, where it has one',
          example: '{ diameter: 80 mm, boltCircle: 70 mm, screws: 3, thickness: 4 mm }',
        }),
      )
      .optional(),
    mount: z
      .strictObject({
        by: choice({ description: 'what holds the lens', example: 'clamp' }, ['clamp', 'flange', 'ring']).prefault(
          'clamp',
        ),
        side: choice({ description: 'from which side of the board', example: 'inside' }, ['front', 'inside']).prefault(
          'inside',
        ),
        screws: whole(
          {
            description: 'screws that hold clamp, flange or ring to the board',
            example: '4',
            whenAbsent: '4; by flange, as many as the flange has',
          },
          { least: 2, most: 12 },
        ).optional(),
        opening: length({
          description:
            'side of the square opening that the front panel has already: plug, board and retainers follow it',
          example: '104.2 mm',
          whenAbsent: 'as wide as lens and mount ask; with builtFor, as it was built',
        }).optional(),
      })
      .meta(section({ description: 'how the lens is held', example: '{ by: clamp, side: inside, screws: 4 }' }))
      .prefault({}),
  })
  .meta(section({ description: 'the lens', example: '{ focalLength: 210 mm, flangeDistance: 203.5 mm }' }));

export const focusSchema = z
  .strictObject({
    nearest: focusField({
      description: 'nearest focus: a magnification, or a subject distance from the front principal plane',
      example: '1:2.5',
    }).prefault('1:5'),
    farthest: focusField({
      description: 'farthest focus: infinity, a magnification or a subject distance',
      example: 'infinity',
    }).prefault('infinity'),
    pastInfinity: length(
      {
        description: 'how far the slide runs past infinity, for a lens that is shorter than engraved',
        example: '4 mm',
      },
      { sign: 'not-negative' },
    ).prefault('4 mm'),
    pastNearest: length(
      {
        description: 'how far the slide runs past the nearest',
        example: '8 mm',
        whenAbsent: 'the slack of the slide, at most 0.05 of the focal length',
      },
      { sign: 'not-negative' },
    ).optional(),
  })
  .meta(section({ description: 'how near and how far the camera focuses', example: '{ nearest: 1:2.5 }' }))
  .prefault({});

const builtForSchema = z
  .strictObject({
    lens: lensSchema.meta(
      section({
        description: 'the lens that it was built for, with the same keys as `lens`',
        example: '{ focalLength: 210 mm, flangeDistance: 203.5 mm }',
      }),
    ),
    focus: focusSchema.meta(
      section({
        description: 'the focus that it was built for, with the same keys as `focus`',
        example: '{ nearest: 1:2.5 }',
        whenAbsent: 'that of a design that says nothing of it',
      }),
    ),
  })
  .meta(
    section({
      description:
        'a camera that stands, for which this design has a new lens: its boxes, panel and tailboard stay as they are; move `lens` and `focus` of its design here, and write the new ones in their place',
      example: '{ lens: { focalLength: 210 mm, flangeDistance: 203.5 mm }, focus: { nearest: 1:2.5 } }',
      whenAbsent: 'boxes and panel are made for the lens',
    }),
  );

export const plywoodSchema = z
  .strictObject({
    thickness: lengthOrList(
      {
        description: 'measured with a caliper: one length, or readings at the corners and the middle of the sheet',
        example: '4.05 mm',
      },
      { least: THINNEST_PLYWOOD, most: THICKEST_SHEET },
      MOST_READINGS,
    ),
    sheet: lengthPair({ description: 'size of the sheets', example: '[600 mm, 400 mm]' }).prefault([
      '600 mm',
      '400 mm',
    ]),
    material: text(
      { description: 'a word for it, from which the sheets are named', example: 'plywood' },
      nameTrouble,
    ).prefault('plywood'),
  })
  .meta(section({ description: 'the sheet that the camera is cut from', example: '{ thickness: 4.05 mm }' }));

const stockSchema = z
  .array(
    z.strictObject({
      material: text(
        {
          description: 'a word for it',
          example: 'plywood',
          whenAbsent: 'as plywood.material; of a remnant, as its file says',
        },
        nameTrouble,
      ).optional(),
      thickness: length(
        {
          description: 'measured',
          example: '3 mm',
          whenAbsent: 'of a remnant, as its file says; else it must be given',
        },
        { most: THICKEST_SHEET },
      ).optional(),
      sheet: lengthPair({
        description: 'size of the sheets, the first along the face grain',
        example: '[600 mm, 400 mm]',
        whenAbsent: 'as plywood.sheet; of a remnant, as its file says',
      }).optional(),
      count: whole(
        {
          description: 'how many of them are there; more are not bought',
          example: '2',
          whenAbsent: 'as many as are needed; of a remnant, one',
        },
        { least: 1, most: MOST_SHEETS },
      ).optional(),
      remnant: text(
        {
          description: 'file of a piece that is left of an earlier job, found from the folder of the design file',
          example: 'rack/plywood-4.05-6.json',
          whenAbsent: 'it is a whole sheet',
        },
        pathTrouble,
      ).optional(),
      first: flag({
        description: 'whether it is used before all that does not say so',
        example: 'true',
        whenAbsent: 'false: it is used where that saves a sheet that must be bought',
      }).optional(),
    }),
  )
  .max(MOST_ENTRIES)
  .meta(
    section({
      description:
        'other sheets at hand: for the parts of the camera where their material and thickness are those of the plywood, else for single layers',
      example: '[{ thickness: 3 mm, sheet: [600 mm, 400 mm] }]',
    }),
  )
  .prefault([]);

const colour = (what: string, word: string) =>
  text({ description: `colour of ${what}`, example: `"${word}"` }, (input) =>
    /^#[0-9a-f]{6}$/i.test(input)
      ? null
      : { what: `${JSON.stringify(input)} is not a colour.`, accepted: `Write "${word}", in quotes.` },
  ).prefault(word);

const laserSchema = z
  .strictObject({
    kerf: length(
      { description: 'full width that the beam removes, from the test piece', example: '0.15 mm' },
      { most: THICKEST_SHEET },
    ),
    kerfUncertainty: length(
      { description: 'how far the width of the cut strays over the bed, each way', example: '0.02 mm' },
      { sign: 'not-negative', most: THICKEST_SHEET },
    ).prefault('0.02 mm'),
    cutSpeed: speed({ description: 'at which it cuts this sheet', example: '10 mm/s' }).prefault('10 mm/s'),
    engraveSpeed: speed({ description: 'at which it engraves', example: '200 mm/s' }).prefault('200 mm/s'),
    travelSpeed: speed({ description: 'with the beam off, from cut to cut', example: '300 mm/s' }).prefault('300 mm/s'),
    pierceTime: seconds({ description: 'to go through the sheet where a cut begins', example: '0.5 s' }).prefault(
      '0.5 s',
    ),
    palette: z
      .strictObject({
        engrave: colour('engraved lines', workshopPalette.engrave),
        cutInside: colour('holes with nothing in them', workshopPalette.cutInside),
        cutNested: colour("outlines of parts in another part's window", workshopPalette.cutNested),
        cutWindow: colour('windows that hold parts', workshopPalette.cutWindow),
        cutOutside: colour('all other outlines', workshopPalette.cutOutside),
      })
      .meta(
        section({
          description: 'a colour for each operation, as #rrggbb in quotes; the layer names carry the meaning',
          example: `{ engrave: "${workshopPalette.engrave}" }`,
        }),
      )
      .prefault({}),
  })
  .meta(section({ description: 'the laser', example: '{ kerf: 0.15 mm }' }));

export const groundGlassSchema = z
  .strictObject({
    thickness: length({ description: 'of the pane', example: '2 mm' }, { most: THICKEST_SHEET }).prefault('2 mm'),
    depth: length({
      description: 'physical, from the holder seat to the frosted face, whichever way the glass lies',
      example: '5.8 mm',
      whenAbsent: 'the film depth of the first holder',
    }).optional(),
    measured: length({
      description:
        'the same as measured on the glued frame, the mean of four places: the register is then reckoned for the camera that stands',
      example: '5.86 mm',
      whenAbsent: 'the register is reckoned from plies, glue and shims that nobody measured',
    }).optional(),
    frosted: choice({ description: 'which way the frosted face looks', example: 'lens' }, ['lens', 'eye']).prefault(
      'lens',
    ),
    refractiveIndex: number({ description: 'of the glass', example: '1.52' }, { least: 1, most: 2.5 }).prefault(1.52),
  })
  .meta(section({ description: 'the ground glass', example: '{ thickness: 2 mm, depth: 5.8 mm, frosted: lens }' }))
  .prefault({});

/** How the default of a holder that is cut from the sheet is told. */
const MADE = 'of one that is made';

export const holderSchema = z
  .strictObject({
    name: text(
      { description: 'what it is called, on the camera and in its files', example: 'paper holder' },
      nameTrouble,
    ),
    make: flag({
      description:
        'whether it is cut from the sheet of the camera: a single holder for paper or film, loaded from behind',
      example: 'true',
      whenAbsent: 'false: it is there already, and drawn as a block',
    }).optional(),
    filmDepth: length({
      description: 'from its face to the film; the effective one where a window stands before the film',
      example: '5.8 mm',
      whenAbsent: `${MADE}: face ply, slide channel and lip; else it must be given`,
    }).optional(),
    measured: length({
      description:
        'film depth of a holder that is made, from its face to the lip as the caliper reads it once it is glued, a window in it or not: its spacer has its shims chosen for it, the register is reckoned with it, and nothing is cut anew',
      example: '5.85 mm',
      whenAbsent: 'as its layers come to',
    }).optional(),
    depthTo: choice(
      {
        description: 'where the film depth ends: at the emulsion, or as published at the back of the slot',
        example: 'emulsion',
      },
      ['emulsion', 'slot'],
    ).prefault('emulsion'),
    sheetThickness: length({
      description: 'thickness of film or paper, needed with depthTo: slot',
      example: '0.18 mm',
      whenAbsent: `${MADE}: 0.25 mm`,
    }).optional(),
    tolerance: length(
      {
        description: 'how far its film depth strays, each way',
        example: '0.1 mm',
        whenAbsent: 'the published one where the depth is the published one, else that of a careful reading',
      },
      { sign: 'not-negative' },
    ).optional(),
    width: length({
      description: 'outside, across',
      example: '150 mm',
      whenAbsent: `${MADE}: its pocket and 11 mm on each side; else it must be given`,
    }).optional(),
    length: length({
      description: 'outside, from the closed end to the open end',
      example: '210 mm',
      whenAbsent: `${MADE}: the image, its closed end, and 24 mm for the velvet at the open end; else it must be given`,
    }).optional(),
    thickness: length({
      description: 'outside, front to back',
      example: '13.9 mm',
      whenAbsent: `${MADE}: the film depth and two plies, what turns over its lid left out; else it must be given`,
    }).optional(),
    mass: mass({
      description: 'mass, loaded',
      example: '330 g',
      whenAbsent: `estimated as a solid block of the density of the workshop; ${MADE}, weighed from its parts`,
    }).optional(),
    closedEnd: length(
      {
        description: 'from the image to the closed end',
        example: '20 mm',
        whenAbsent: '20 mm, or half of what the length exceeds the image by where that is less',
      },
      { sign: 'not-negative' },
    ).optional(),
    slideDepth: length(
      {
        description: 'from the face to the dark slide',
        example: '4.05 mm',
        whenAbsent: 'as in a home-made holder, the thickness of the plywood, but at least 1 mm ahead of the film',
      },
      { sign: 'not-negative' },
    ).optional(),
    locating: choice(
      {
        description: 'what puts it in its place: seat pins, its lock rib, or the fences of the well alone',
        example: 'pins',
        whenAbsent: 'rib where a rib is given, else pins',
      },
      ['pins', 'rib', 'well'],
    ).optional(),
    rib: z
      .strictObject({
        fromAxis: length({
          description: 'from the axis to the middle of the rib, towards the open end',
          example: '98 mm',
        }),
        width: length({ description: 'of the rib', example: '4 mm' }),
        height: length({ description: 'of the rib', example: '1.5 mm' }),
      })
      .meta(section({ description: 'the lock rib', example: '{ fromAxis: 98 mm, width: 4 mm, height: 1.5 mm }' }))
      .optional(),
    window: z
      .strictObject({ thickness: length({ description: 'of the window', example: '2 mm' }, { most: THICKEST_SHEET }) })
      .meta(section({ description: 'a glass window before the film', example: '{ thickness: 2 mm }' }))
      .optional(),
    spacer: z
      .strictObject({
        measured: length({
          description:
            'its thickness as measured on the glued spacer with the shims that are in it, the mean of four places: the register is then reckoned for the camera that stands',
          example: '18.27 mm',
        }),
      })
      .meta(
        section({
          description: 'the spacer of this holder, once it is glued',
          example: '{ measured: 18.27 mm }',
          whenAbsent: 'the register is reckoned from plies, glue and shims that nobody measured',
        }),
      )
      .optional(),
    insert: formatSchema
      .meta(
        section({
          description: 'a smaller size that can be put into a holder that is made: a mask and a pocket are cut for it',
          example: '4x5',
          whenAbsent: 'none is cut',
        }),
      )
      .optional(),
  })
  .meta(
    section({
      description: 'a holder',
      example: '{ name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm }',
    }),
  );

export const workshopSchema = z
  .strictObject({
    slideClearance: length({
      description: 'gap a side between the boxes, the pressed felt in it',
      example: '1.5 mm',
    }).prefault('1.5 mm'),
    railPlay: length({ description: 'play a side between sole and rails', example: '0.25 mm' }).prefault('0.25 mm'),
    fits: z
      .strictObject({
        press: fitOf('of a tongue that is pressed in', '-0.02 mm'),
        glueSlip: fitOf('of a tongue that is glued', '0.08 mm'),
        slide: fitOf('of what slides', '0.3 mm'),
        dropIn: fitOf('of what drops in', '0.6 mm'),
      })
      .meta(section({ description: 'slot less tongue after cutting, in all', example: '{ press: -0.02 mm }' }))
      .prefault({}),
    glueLine: length({ description: 'what a glue line adds', example: '0.05 mm' }, { sign: 'not-negative' }).prefault(
      '0.05 mm',
    ),
    friction: number(
      { description: 'coefficient of friction, wood on waxed wood', example: '0.35' },
      { least: 0.01, most: 2 },
    ).prefault(0.35),
    density: density({ description: 'of the sheet', example: '680 kg/m3' }).prefault('680 kg/m3'),
    modulus: modulus({ description: 'modulus of elasticity of the sheet', example: '7000 N/mm2' }).prefault(
      '7000 N/mm2',
    ),
    spacing: length(
      { description: 'between the cut lines of two parts', example: '2 mm' },
      { sign: 'not-negative' },
    ).prefault('2 mm'),
    margin: length(
      { description: 'from a cut line to the edge of the sheet', example: '5 mm' },
      { sign: 'not-negative' },
    ).prefault('5 mm'),
    boreAllowance: length(
      { description: 'by which a printed bore is wider than the barrel', example: '0.2 mm' },
      { sign: 'not-negative' },
    ).prefault('0.2 mm'),
    nozzle: length(
      {
        description: 'width of the lines that the printer lays: walls of a tank’s fittings are whole lines',
        example: '0.4 mm',
      },
      { most: 1.2 },
    ).prefault('0.4 mm'),
    boards: z
      .strictObject({
        channel: boardOf('that dark slides run in', '1.25 mm'),
        lip: boardOf('of the lip that the film lies against, a tough card', '0.5 mm'),
        slide: boardOf('of a dark slide, black through', '1 mm'),
        velvet: boardOf('of velvet, its pile standing', '1 mm'),
      })
      .meta(
        section({
          description:
            'thicknesses, measured, of what holders are made of beside the plywood: they enter the film depth',
          example: '{ channel: 1.25 mm, lip: 0.5 mm }',
        }),
      )
      .prefault({}),
  })
  .meta(
    section({
      description: 'habits of the shop; every value is common practice and yours to change',
      example: '{ slideClearance: 1.5 mm }',
    }),
  )
  .prefault({});

function boardOf(what: string, usual: string) {
  return length({ description: `thickness ${what}`, example: usual }, { most: 10 }).prefault(usual);
}

function fitOf(what: string, usual: string) {
  return length({ description: `fit ${what}`, example: usual }, { sign: 'any', most: 10 }).prefault(usual);
}

const bookSchema = z
  .strictObject({
    paper: choice({ description: 'paper of the build book', example: 'A4' }, ['A4', 'Letter']).prefault('A4'),
  })
  .meta(section({ description: 'how the build book is printed', example: '{ paper: A4 }' }))
  .prefault({});

export const designSchema = z.strictObject({
  name: text(
    { description: 'name of the camera; its output folder is called after it', example: 'Heron' },
    nameTrouble,
  ),
  format: formatSchema,
  lens: lensSchema,
  focus: focusSchema,
  builtFor: builtForSchema.optional(),
  plywood: plywoodSchema,
  stock: stockSchema,
  laser: laserSchema,
  groundGlass: groundGlassSchema,
  holders: z
    .array(holderSchema)
    .min(1)
    .max(MOST_ENTRIES)
    .meta(
      section({
        description: 'every holder that the camera takes',
        example: '[{ name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm }]',
        whenAbsent: "the format's published film holder with its film, where the table has one; else asked for",
      }),
    )
    .optional(),
  shims: z
    .array(length({ description: 'a thickness of shim', example: '0.1 mm' }, { most: 10 }))
    .max(MOST_ENTRIES)
    .meta(section({ description: 'thicknesses of shim at hand', example: '[0.1 mm, 0.25 mm, 0.5 mm]' }))
    .prefault(['0.1 mm', '0.25 mm', '0.5 mm']),
  boxes: boxesSchema,
  baffle: baffleSchema,
  handle: handleSchema,
  filterHolder: filterHolderSchema.optional(),
  shutter: shutterSchema.optional(),
  hood: hoodSchema.optional(),
  cap: capSchema,
  masks: masksSchema,
  stops: stopsSchema,
  workshop: workshopSchema,
  book: bookSchema,
  sitting: sittingSchema
    .meta(
      section({
        description: 'how a sitter is exposed; each key has a flag of expose, and none shapes a part',
        example: '{ aperture: f/16, speed: 6 }',
        whenAbsent: 'all of it is said to expose',
      }),
    )
    .optional(),
});

/** A design file as it was read: lengths in mm, masses in kg, fixed defaults filled in. */
export type Written = z.output<typeof designSchema>;
export type WrittenHolder = NonNullable<Written['holders']>[number];
