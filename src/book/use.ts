import type { Block } from '../paper/blocks.js';
import { figure } from '../paper/figure.js';
import { bullets, caution, heading, note, numbered, paragraph, smallPrint } from '../paper/prose.js';
import { table } from '../paper/table.js';
import { fNumber, kg, magnification, metres, mm, plainNumber, stops } from '../units/print.js';
import type { Chapter } from './chapter.js';
import { onTheGlass } from './on-the-glass.js';

/** What a magnification asks of the camera; mm. */
export interface UseRow {
  readonly m: number;
  /** From the front principal plane to the subject; null at infinity. */
  readonly subject: number | null;
  /** From the lens seat to the film. */
  readonly filmDistance: number;
  /** How far the slide is drawn out from its place for infinity. */
  readonly extension: number;
  readonly factor: number;
  readonly stops: number;
  /** What the upright picture takes in at the subject; null at infinity. */
  readonly takesIn: { readonly width: number; readonly height: number } | null;
  /** Whether the lens's circle covers the picture; null where nobody knows. */
  readonly covers: boolean | null;
}

export interface UseGiven {
  readonly format: string;
  readonly maxAperture: number;
  readonly rows: readonly UseRow[];
  /** Magnification from which the lens covers; 0 at infinity, null where unknown or never. */
  readonly coversFrom: number | null;
  /** In the order of their index lines. */
  readonly holders: readonly {
    readonly name: string;
    /** As engraved beside its index line: the numbers of all holders that share it. */
    readonly mark: string;
    /** How far its index line stands behind the first one's, signed. */
    readonly offset: number;
    readonly spacer: {
      readonly id: string | null;
      readonly under: 'glass' | 'holder' | 'none';
      readonly thickness: number;
    };
    /** What puts it in its place on the seat. */
    readonly locating: 'pins' | 'rib' | 'well';
  }[];
  readonly tripod: {
    readonly thread: string;
    readonly massKg: number;
    /** What head and legs that takes. */
    readonly advice: string;
    readonly balance: readonly [number, number];
    readonly z: number;
  };
  /** The back has a tongue, and may not stand with its open end down. */
  readonly tongue: boolean;
  readonly mount: 'clamp' | 'flange' | 'ring';
  /** What is to be said of kept parts that bear the scale or the index lines of an earlier camera; null where none do. */
  readonly otherScale: readonly string[] | null;
  /** The same of index lines that a kept part lacks; null where it has all. */
  readonly lackingLine: readonly string[] | null;
  /** kg, of the lens. */
  readonly lensKg: number;
}

export const usingTheCamera = (given: UseGiven): Chapter => ({
  title: 'Using the camera',
  blocks: [
    ...upsideDown(),
    ...setUp(given),
    ...onePicture(given),
    ...whichSpacer(given),
    ...focusScale(given),
    ...distances(given),
    ...turningTheBack(given),
    ...changingTheBoard(given),
  ],
});

function upsideDown(): readonly Block[] {
  return [
    heading('The image on the glass'),
    paragraph(
      'On the ground glass the image stands upside down, and left for right. It does so upright and lengthwise alike. Nothing is wrong with the camera: every lens makes its image like that. After a few pictures you no longer notice.',
    ),
    figure(onTheGlass()),
    bullets([
      'Is there too much room above the sitter? On the glass it shows at the bottom. Tilt the camera down.',
      'The sitter’s right hand shows at the right on the glass, for you stand face to face and the glass turns it once more.',
    ]),
    paragraph('Put a dark cloth over your head and the back, and look at the glass from two hands away.'),
  ].flat();
}

function setUp({ tripod }: UseGiven): readonly Block[] {
  const [closed, open] = tripod.balance;
  return [
    heading('On the tripod'),
    ...bullets([
      `The nut under the tailboard takes a ${tripod.thread} screw.`,
      `With the heaviest holder in it the camera weighs ${kg(Math.round(tripod.massKg * 100) / 100)}. ${tripod.advice}`,
      `Its weight moves as the slide is drawn: it lies ${plainNumber(Math.abs(closed - tripod.z), 0)} mm ${closed < tripod.z ? 'ahead of' : 'behind'} the nut when closed and empty, ${plainNumber(Math.abs(open - tripod.z), 0)} mm ${open < tripod.z ? 'ahead of' : 'behind'} it when drawn out and loaded. Hold the camera while you loosen the head.`,
      'Set one leg forward, under the lens. The camera then tips neither forward nor backward.',
      'Carry it by the tailboard, never by the back or by the front box alone.',
    ]),
  ];
}

function onePicture({ maxAperture, holders, otherScale }: UseGiven): readonly Block[] {
  const spaced = holders.filter(({ spacer }) => spacer.under !== 'none');
  return [
    heading('From the first look to the picture'),
    ...numbered([
      'Load the holders in the dark. Push the dark slides home, the white side of their rims outward: white means not yet exposed.',
      spaced.length > 0
        ? 'Camera on the tripod, protector off the glass. Decide which holder you will use: the table below says whether a spacer goes under the glass or under the holder.'
        : 'Camera on the tripod, protector off the glass.',
      spaced.some(({ spacer }) => spacer.under === 'glass')
        ? 'If it is under the glass, lay the spacer on the seat first, its pins away from the seat. Then the glass, G1 towards the lens. Both cords on.'
        : 'Glass on the seat, G1 towards the lens. Both cords on.',
      `Open the lens fully, to ${fNumber(maxAperture)}. Loosen the knob below the tailboard, and slide the rear box until the image is sharp. Use a magnifier, and look at the near eye.`,
      'Tighten the knob. Look again: tightening must not move the image.',
      otherScale === null
        ? 'Read the focus scale. It tells the distance, the magnification and the stops to add.'
        : 'Take the distance, the magnification and the stops to add from the table “Distance, draw and exposure”. The focus scale tells them once its lines are those of this camera, not before.',
      'Set the stop. Close the shutter; where the lens has none, put the cap on.',
      outAndIn(holders),
      'Wait until the camera has stopped swinging. Draw the dark slide straight out, with one hand flat on the back.',
      'Expose: with the shutter, or take the cap off for the time and put it on again.',
      'Push the dark slide home, the black side of its rim outward. Only then take the cords off, and the holder out.',
    ]),
    caution(
      'The cords are under tension. Keep your face away when you let go of one, and hold the hook’s end with a finger.',
    ),
    paragraph(
      'For the exposure ask the computer: tailboard expose <design file> --subject <distance>. It reckons stop, time or flash from one reading that is known to be right, and prints a card for the camera’s lid with --card. The table below only says what the extension costs.',
    ),
  ];
}

/** The seat is empty between the two: what lay under the glass would hold the holder off it. */
function outAndIn(holders: UseGiven['holders']): string {
  const under = holders.map(({ spacer }) => spacer.under);
  const pins = holders.some(({ locating }) => locating !== 'pins')
    ? ' A holder without holes for them: pull the seat pins out.'
    : '';
  const rib = holders.some(({ locating }) => locating === 'rib') ? ', its rib in the groove' : '';
  const out = under.includes('glass') ? 'Cords off. Glass and spacer out: the seat is empty.' : 'Cords off, glass out.';
  const first = under.includes('holder') ? ' If the holder has a spacer of its own, lay that on the seat first.' : '';
  return `${out}${pins}${first} Holder in, its face to the seat${rib}. Cords on.`;
}

function whichSpacer({ holders }: UseGiven): readonly Block[] {
  const rows = holders.map(({ name, mark, spacer }) => {
    const { under, thickness } = spacer;
    const own = `${spacer.id ?? ''}, ${plainNumber(thickness, 2)} mm`;
    return [
      name,
      mark,
      under === 'glass' ? `glass on its spacer (${own})` : 'glass on the seat',
      under === 'holder' ? `holder on its spacer (${own})` : 'holder on the seat',
    ];
  });
  const indexed = table(
    [
      { title: 'Holder' },
      { title: 'Index line', align: 'right', width: 20 },
      { title: 'While you focus' },
      { title: 'While you expose' },
    ],
    rows,
  );
  if (holders.every(({ spacer }) => spacer.under === 'none'))
    return [
      heading('Glass and holder'),
      paragraph('This camera needs no spacer: the film lies as deep behind the seat as the ground glass does.'),
      ...indexed,
      ...pinsOut(holders),
    ];
  return [
    heading('Which spacer, which line'),
    paragraph(
      'Film lies deeper in one holder than in another. A spacer makes up for it. It goes under the ground glass while you focus, or under the holder while you expose, never both.',
    ),
    ...indexed,
    ...pinsOut(holders),
    note('The wrong spacer is the commonest cause of a soft picture. Say it aloud: “this holder, this spacer”.'),
  ];
}

/** Pins that have no hole to go into hold a holder off its seat. */
function pinsOut(holders: UseGiven['holders']): readonly Block[] {
  const without = holders.filter(({ locating }) => locating !== 'pins').map(({ name }) => name);
  if (without.length === 0) return [];
  return [
    paragraph(
      `The two pins in the seat are for what has holes for them. The ${without.join(' and the ')} ${without.length === 1 ? 'has' : 'have'} none: pull the pins out before you put ${without.length === 1 ? 'it' : 'them'} in, and push them in again for the glass.`,
    ),
  ];
}

function focusScale({ holders, otherScale, lackingLine }: UseGiven): readonly Block[] {
  const [first, ...others] = [...new Map(holders.map(({ mark, offset }) => [mark, { mark, offset }])).values()];
  const each = first && others.map((line) => ({ ...line, behind: line.offset - first.offset }));
  const named = (line: string): string =>
    holders.flatMap(({ mark, name }) => (mark === line ? [`the ${name}`] : [])).join(' and ');
  const several =
    first === undefined || each === undefined || holders.length === 1
      ? []
      : each.length === 0
        ? [
            paragraph(
              `All holders share one index line, marked ${first.mark}. Read there with any of them, with its spacer in.`,
            ),
          ]
        : [
            paragraph(
              `${each.length + 1 === holders.length ? 'Each holder has an index line of its own' : 'Holders whose film lies in one place share an index line'}, marked ${[first, ...each].map(({ mark }) => `${mark} for ${named(mark)}`).join(', ')}. ${each
                .map(
                  ({ mark, behind }) =>
                    `Line ${mark} stands ${mm(hundredth(Math.abs(behind)))} ${behind < 0 ? 'ahead of' : 'behind'} line ${first.mark}.`,
                )
                .join(' ')} Read at the line of the holder that you will use, with its spacer in.`,
            ),
          ];
  return [
    heading('The focus scale'),
    ...(otherScale === null ? [] : [caution(otherScale)]),
    ...(lackingLine === null ? [] : [caution(lackingLine)]),
    paragraph(
      'The scale is engraved on the two strips beside the sole, the keepers. The left one tells the distance of the subject in metres, counted from the lens. The right one tells the magnification, and beside it the stops that the extension costs. Read where the index line on the sole points.',
    ),
    ...several,
    paragraph(
      'The scale finds the focus to a finger’s breadth. The glass is the judge. Where nothing can be seen on it, set the scale and trust it.',
    ),
  ];
}

function distances({ rows, coversFrom, format }: UseGiven): readonly Block[] {
  const uncovered = rows.some(({ covers }) => covers === false);
  return [
    heading('Distance, draw and exposure'),
    ...table(
      [
        { title: 'Magnification', align: 'right', width: 26 },
        { title: 'Subject from the lens', align: 'right', width: 21 },
        { title: 'Takes in, upright', align: 'right', width: 27 },
        { title: 'Seat to film, mm', align: 'right', width: 18 },
        { title: 'Drawn out, mm', align: 'right', width: 17 },
        { title: 'Exposure ×', align: 'right', width: 19 },
        { title: 'Open by', align: 'right', width: 18 },
      ],
      rows.map(({ m, subject, takesIn, filmDistance, extension, factor, stops: count, covers }) => [
        `${m === 0 ? 'infinity' : magnification(m)}${covers === false ? ' *' : ''}`,
        subject === null ? 'far' : subject < 1000 ? `${plainNumber(subject, 0)} mm` : metres(subject),
        takesIn === null ? '' : `${metres(takesIn.width).replace(' m', '')} × ${metres(takesIn.height)}`,
        filmDistance.toFixed(1),
        extension.toFixed(1),
        factor.toFixed(2),
        count === 0 ? '0' : stops(Math.round(count * 10) / 10),
      ]),
    ),
    smallPrint([
      `Distances count from the front principal plane, which in most lenses lies near the stop. Drawn out: from where the slide ${rows[0]?.m === 0 ? 'stands' : 'would stand'} for infinity. Exposure: how many times longer than a meter beside the camera says; “open by” is the same in stops.`,
      ...(uncovered ? ['* The corners are dark here: the lens does not cover the whole picture.'] : []),
    ]),
    ...(coversFrom !== null && coversFrom > 0
      ? [
          paragraph(
            `The lens covers the whole ${format} picture from ${magnification(coversFrom, 'nearer')} on, not farther away. Farther subjects have dark corners.`,
          ),
        ]
      : []),
  ];
}

function turningTheBack({ tongue }: UseGiven): readonly Block[] {
  return [
    heading('Upright and lengthwise'),
    ...numbered([
      'Holder or glass out, so that nothing falls.',
      'Turn the four turn-buttons aside, with one hand on the back.',
      'Draw the back straight off, turn it, and set it in again until it lies flat on the standard.',
      'Close all four buttons. One that stays open lets light in.',
    ]),
    paragraph(
      `The end at which the dark slide is drawn may look up, left or right. ${tongue ? 'Not down: the back has a tongue there that would stand on the tailboard.' : 'Not down with a holder in it: there is no room to draw the slide.'}`,
    ),
  ];
}

function changingTheBoard({ mount, lensKg }: UseGiven): readonly Block[] {
  const watch =
    mount === 'clamp'
      ? 'Look that the lens still sits against its step in the clamp: if it has slipped, the scale is wrong.'
      : mount === 'flange'
        ? 'Look that the screws of the flange are tight.'
        : 'Look that the ring is tight.';
  return [
    heading('Changing the lens board'),
    ...numbered([
      'Take holder or glass out and the back off. Lay the camera on the rear standard with the lens up, a block under each edge so that the turn-buttons hang free. Or leave it standing, and hold the lens from below with one hand.',
      'Loosen both thumb screws, and slide both retainers outward.',
      `Lift the board off together with its lens: the two weigh more than ${kg(Math.round(lensKg * 100) / 100)}.`,
      'Set the other board in: its clipped corner goes to the block on the panel.',
      'Slide both retainers in over the board, and tighten both thumb screws.',
    ]),
    paragraph(`${watch} Each lens has a scale of its own; for another one this scale does not hold.`),
  ];
}

const hundredth = (value: number): number => Math.round(value * 100) / 100 || 0;
