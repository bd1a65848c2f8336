import type { LightJoint } from '../model/proof.js';
import type { Block } from '../paper/blocks.js';
import { bullets, caution, heading, note, numbered, paragraph } from '../paper/prose.js';
import { table } from '../paper/table.js';
import type { Chapter } from './chapter.js';

export interface LeakTestGiven {
  readonly joints: readonly LightJoint[];
  /** How the back may be put on with a holder in it. */
  readonly holders: readonly string[];
  /** Those of them that have no holes for the pins of the seat. */
  readonly pinless: readonly string[];
}

export const leakTest = (given: LeakTestGiven): Chapter => ({
  title: 'The leak test',
  blocks: [...darkRoom(given), ...joints(given), ...paperTest(given)],
});

/** Pins that have no hole to go into hold a holder off its seat, and light comes in. */
const pinsOut = ({ pinless }: LeakTestGiven): string =>
  pinless.length === 0 ? '' : ` Pull the seat pins out first for the ${pinless.join(' and the ')}.`;

function darkRoom(given: LeakTestGiven): readonly Block[] {
  return [
    paragraph(
      'The camera must be dark inside. The computer has looked for light along straight lines through the parts as they are drawn. It cannot see a joint without glue or a torn felt. Your eye can, once it is used to the dark.',
    ),
    heading('With a lamp inside'),
    ...numbered([
      'Take a room that can be made quite dark, in the evening.',
      'Put the cap on the lens, or cover it with black tape. Put a small lamp with its battery into the rear box: a bright torch without its reflector is good.',
      `Shut the back: a holder in, its dark slide pushed home, the cords on.${pinsOut(given)}`,
      'Switch off the light and sit for ten minutes. Before that an eye sees nothing of a small leak.',
      'Look at every joint of the list below, from close by: with the slide pushed in, in the middle, and drawn out. A small mirror shows what lies under the front box. Turn the back and look again.',
      'Press on the boxes and on the holder, and lift the rear box as far as it goes. What shows only then counts, too.',
      'Mark what you find with chalk, and mend it in daylight.',
    ]),
    caution('The lamp must stay cool: it stands in a shut wooden box. Use no lamp that gets hot and none on mains.'),
  ];
}

interface Cure {
  readonly look: string;
  readonly cure: string;
}

const BETWEEN_BOXES: Cure = {
  look: 'Drawn half out: the gap between the boxes, from behind, all round; most at the four corners.',
  cure: 'Felt that is short or pressed flat: fit a new band, butted at its ends without a gap.',
};

/** Where to look, and what to do, for each way in that the proof knows by name. */
const CURES: Readonly<Record<string, Cure>> = {
  'panel to side': {
    look: 'Front edges of the front box, left and right.',
    cure: 'Run glue into the joint from inside, press the strip F5 on again, paint.',
  },
  'panel to top': {
    look: 'Front edge of the front box, above.',
    cure: 'Run glue into the joint from inside, press the strip F5 on again, paint.',
  },
  'floor in panel': {
    look: 'Front of F1, round the tabs of the floor; then under the box from behind, with the mirror.',
    cure: 'Run glue into the joint from inside, press the strip F5 on again, paint.',
  },
  'side to top': {
    look: 'Upper edges of the front box, left and right, along all fingers.',
    cure: 'Fill the gap with glue and wood dust, paint both sides black.',
  },
  'tabs of the floor in the sides': {
    look: 'Outside of both sides, where the tabs of the floor show.',
    cure: 'Fill the slots with glue and wood dust, paint inside.',
  },
  'lens board in the panel': {
    look: 'All round the board, and at its clipped corner.',
    cure: 'Board not home, or warped. The retainers rest on their packing and press no harder: lay a thin black thread of wool in the land.',
  },
  'lens in the board': {
    look: 'All round the lens, from the front.',
    cure: 'A ring of black felt outside the seat, never on it.',
  },
  'shutter on the accessory frame': {
    look: 'Round the rail plate of the shutter, its slide shut, from the front and from both sides.',
    cure: 'The plate does not lie on the ring. Look for glue or a bent lip A5; glue thin black felt on the ring, outside its opening.',
  },
  'filter holder in its channel': {
    look: 'Above the filter holder, along both cheeks of its handle, and round the window that the gels go into.',
    cure: 'It must come out again: no glue here. Push it home, and glue thin black felt under the cheeks FH3 where they lie on the rings.',
  },
  'cap on the accessory frame': {
    look: 'All round the cap, most at its upper edge.',
    cure: 'Push it home and put its peg in. If light still shows, glue thin black felt on its rear, outside the opening of the ring.',
  },
  'rear box in the front box': BETWEEN_BOXES,
  'middle box in the front box': BETWEEN_BOXES,
  'rear box in the middle box': BETWEEN_BOXES,
  'back in the standard': {
    look: 'All round the back, at its edges.',
    cure: 'A turn-button does not press, or the back is warped. Tighten the nut; where it still does not press, take the card out from under its packing.',
  },
  'back in the standard, at its clipped corners': {
    look: 'The four clipped corners of the back, beside the turn-buttons.',
    cure: 'As for the back; look for dried glue on the ring.',
  },
};

/** The proof takes a corner of glued fingers for shut; drawn out, those of the rear box stand in daylight. */
const REAR_SEAMS: readonly (readonly [joint: string, look: string, shutBy: string, cure: string])[] = [
  [
    'walls of the rear box',
    'Drawn out: its four long edges, along all fingers.',
    'fingers and glue',
    'Fill the gap with glue and wood dust, paint both sides black.',
  ],
  [
    'rear box in the rear standard',
    'Drawn out: where its walls enter R3, all round.',
    'fingers and glue',
    'Run glue into the joint, paint.',
  ],
];

const WELL: Cure = {
  look: 'All round the holder, most at the end where the slide is drawn.',
  cure: 'Something lies on the seat, or the holder is warped. Clean the seat; both cords on; a loose fence glued again.',
};

/** The joints in the order in which the proof found them, each once; what lies in the well is one of them. */
function joints({ joints: all, holders }: LeakTestGiven): readonly Block[] {
  const inWell = (joint: string) => joint.endsWith(' in the well');
  const named = all.filter(({ joint }, i) => !inWell(joint) && all.findIndex((one) => one.joint === joint) === i);
  const well = all.find(({ joint }) => inWell(joint));
  const rows = named.map(({ joint, shutBy }) => {
    const { look, cure } = cureOf(joint);
    return [joint, look, shutBy, cure, ''];
  });
  const wells = well === undefined ? [] : [[holdersInWell(holders), WELL.look, well.shutBy, WELL.cure, '']];
  if (all.length === 0) return [];
  return [
    heading('Where to look'),
    ...table(
      [
        { title: 'Joint', width: 28 },
        { title: 'Look at', width: 36 },
        { title: 'Kept dark by', width: 34 },
        { title: 'Light there? Then', width: 45 },
        { title: 'Dark', width: 10 },
      ],
      [...rows, ...REAR_SEAMS.map((seam) => [...seam, '']), ...wells],
      { toFillIn: true },
    ),
  ];
}

const holdersInWell = (holders: readonly string[]): string =>
  holders.length === 1 ? 'holder in the well' : 'each holder in the well';

const LID: Cure = {
  look: 'The holder alone, with a small lamp in it, its lid and its slide shut: all round the lid, most at its corners.',
  cure: 'The lid is not home, or the pad has gone flat: a new pad. Never glue the lid.',
};

/** A joint that has no words of its own is still looked at. */
export const cureOf = (joint: string): Cure =>
  CURES[joint] ??
  (joint.startsWith('lid of the ') ? LID : null) ?? {
    look: 'Along the whole joint.',
    cure: 'Fill it with glue and wood dust, and paint it black.',
  };

function paperTest(given: LeakTestGiven): readonly Block[] {
  const { holders } = given;
  return [
    heading('With a sheet in the sun'),
    paragraph('A lamp does not find everything. A sheet of photographic paper in bright sun does.'),
    ...numbered([
      'First the holder alone. Load a sheet of the paper that you will work with, and lay the holder, its slide shut, in the sun for ten minutes, five on each face. Develop the sheet.',
      `Then the camera. Load a second sheet. Put the cap on the lens, the holder in, the cords on, and draw the slide.${pinsOut(given)}`,
      'Carry the camera into the sun. Turn each of its sides to the sun for a minute, the back and the end where the slide is drawn for two.',
      'Push the slide home, and develop this sheet, too. A sheet without any grey at its edges or across it is right.',
    ]),
    ...bullets([
      'Grey on the second sheet only: the camera leaks. Light runs straight: a streak points at the hole that it came through. It is not turned upside down as the picture is.',
      'Grey on both, at the open end: the holder leaks where its slide is drawn. New velvet there, or a cloth over it while the slide is out.',
      'Grey all over, edges too: the paper was fogged before, or the safelight is not safe.',
    ]),
    ...(holders.length > 1 ? [note(`Do this with each holder: ${holders.join(', ')}.`)] : []),
    caution('Chemicals: gloves, goggles, fresh air; keep to the maker’s data sheet.'),
  ];
}
