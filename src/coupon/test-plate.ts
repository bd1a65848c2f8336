import { lettering } from '../geometry/lettering.js';
import { type ClosedPath, moved, type Path, reversed, type Vertex } from '../geometry/path.js';
import { box, circle, hexagon, type Step, stepped } from '../geometry/shapes.js';
import type { FlatPart, Mark } from '../model/part.js';
import { clearanceHole, nuts, sharpCorners } from '../standards/screws.js';
import { plainNumber } from '../units/print.js';
import { STRIPS } from './comb.js';
import { type CouponGiven, couponPart, LARGE, SMALL } from './given.js';
import { type Fits, fitNames, fitSamples, slotSamples } from './ladder.js';

/** The tongue of the ladder is as wide as the narrowest finger of a camera, mm. */
export const TONGUE = 8;
/** Solid beside a notch, a slot or a hole, mm. */
const LAND = 5;
/** How deep the sheet's edge goes into its slots, mm. */
const SLOT_DEPTH = 10;
const MOST_SLOTS = 9;
const LEAST_SLOTS = 3;

/** By how much a pocket is wider than its nut in the camera, mm, and how far the samples beside it are. */
const NUT_PLAY = 0.2;
const BESIDE_NUT = 0.1;

/** Engraved values are hundredths, mm. */
const HALF_SHOWN = 0.005;

/** From one line of words to the next, and to the next block of them, mm. */
const LINE = 4.2;
const BLOCK = 6.3;
/** Between words and what they belong to, and from words to the edge of the plate, mm. */
const CLEAR = 2;
const INDENT = 3;
/** What an underline takes. */
const UNDER = 0.6;
/** Words side by side stay this far apart, mm. */
const APART = 1.2;

export interface TestPlate {
  readonly part: FlatPart;
  /** Fits of the finger ladder and widths of the slots, as engraved. */
  readonly fits: readonly number[];
  readonly slots: readonly number[];
}

/**
 * Everything that is read by trying: fits along the top, thickness along the bottom, bolts and nuts between; and, in
 * words, what is to be done with it and with the combs.
 */
export function testPlate(given: CouponGiven, room: { width: number; height: number; combSum: number }): TestPlate {
  const ladder = fingerLadder(given.fits);
  const slots = thicknessSlots(given.thickness, room.width);
  const bolts = row(boltsAndNuts());
  const width = Math.max(room.width, ladder.width, slots.width, bolts.width);
  const upper = upperWords(given, { width, ladder, bolts, combSum: room.combSum });
  const lower = slotWords(slots, width);
  // thick sheet has deep notches: then the plate grows, and the words stay where they can be read
  const height = Math.max(room.height, upper.reach + lower.reach);
  const outline = stepped(box(0, 0, width, height), {
    top: onPlate(ladder, width).map(({ item, x }) => notch(x, TONGUE + item.fit, given.thickness)),
    bottom: onPlate(slots, width).map(({ item, x }) => notch(x, item.width, SLOT_DEPTH)),
  });
  return {
    part: couponPart(given, {
      id: 'test-plate',
      name: 'test plate',
      outline,
      holes: upper.holes.map((hole) => raised(hole, height)),
      engraving: [...upper.lines.map((line) => ({ ...line, vertices: raised(line.vertices, height) })), ...lower.lines],
      marks: [...upper.words.map((word) => ({ ...word, y: word.y + height })), ...lower.words],
    }),
    fits: ladder.places.map(({ item }) => item.fit),
    slots: slots.places.map(({ item }) => item.width),
  };
}

/** What is engraved, the holes in it, and how far it all reaches from its edge into the plate. */
interface Block {
  readonly words: readonly Mark[];
  readonly lines: readonly Path[];
  readonly holes: readonly ClosedPath[];
  readonly reach: number;
}

interface Upper {
  readonly width: number;
  readonly ladder: Row<FitSample>;
  readonly bolts: Row<Hole>;
  readonly combSum: number;
}

/** From the top edge, at y 0, down to the bolts and nuts. */
function upperWords({ thickness, kerf, material }: CouponGiven, { width, ladder, bolts, combSum }: Upper): Block {
  const words: Mark[] = [];
  const lines: Path[] = [];
  const holes: ClosedPath[] = [];
  let y = -thickness - CLEAR - SMALL;
  const say = (text: string, height = SMALL) => {
    words.push(indented(text, y, height));
    y -= LINE;
  };
  const values = <Item extends Sample>(row: Row<Item>) => {
    for (const { item, x } of onPlate(row, width)) {
      words.push(centred(item.value, x, y));
      if (item.named === undefined) continue;
      lines.push(underline(item.value, x, y));
      words.push(centred(item.named, x, y - LINE - UNDER));
    }
    y -= LINE + UNDER + BLOCK;
  };

  values(ladder);
  say('FITS  Push the tongue into the notches, the loosest first. Which is a press fit (stays put,');
  say('tapped in), a glue slip (by hand, no play), a slide (runs freely), a drop-in (falls in)?');
  y -= BLOCK - LINE + UNDER;
  say(`TEST PIECE  ${material}, drawn for a cut of ${plainNumber(kerf)} mm`, LARGE);
  y -= BLOCK - LINE;
  say(`KERF  Brush the soot off. Push the ${STRIPS} strips X together, flat; measure across all: S.`);
  say(`Drawn ${combSum} mm with ${STRIPS} cuts in it: kerf = (${combSum} - S) / ${STRIPS}. Strips Y likewise.`);
  say('The two agree within 0.03 mm, or one of them was misread.');
  y -= BLOCK - LINE;
  say('BOLTS, NUTS  The camera has the underlined ones: bolts pass them, nuts go in.');
  y += LINE - CLEAR - bolts.height / 2;
  for (const { item, x } of onPlate(bolts, width))
    holes.push(reversed(item.shape === 'nut' ? hexagon(x, y, item.size) : circle(x, y, item.size)));
  y -= bolts.height / 2 + CLEAR + SMALL;
  values(bolts);
  return { words, lines, holes, reach: -y - SMALL };
}

/** From the bottom edge up: the slots' widths and what to do with them. */
function slotWords(slots: Row<Sample>, width: number): Block {
  const places = onPlate(slots, width);
  const y = SLOT_DEPTH + CLEAR;
  const first = y + SMALL + CLEAR;
  return {
    words: [
      ...places.map(({ item, x }) => centred(item.value, x, y)),
      indented(
        'SHEET  Measure it in several places. Push its edge into the slots, from the widest down:',
        first + LINE,
      ),
      indented('which is the narrowest that it enters without force? The width is marked, in mm.', first),
    ],
    lines: places.flatMap(({ item, x }) => (item.named === undefined ? [] : [underline(item.value, x, y)])),
    holes: [],
    reach: first + LINE + SMALL,
  };
}

/** As short as they are engraved. */
const NAMES: Readonly<Record<keyof Fits, string>> = {
  press: 'PRESS',
  glueSlip: 'GLUE',
  slide: 'SLIDE',
  dropIn: 'DROP',
};

/** One of a ladder, with the value under it; the camera's own has a name, and a line under its value. */
interface Sample {
  readonly across: number;
  readonly value: string;
  readonly named?: string;
}

/** Samples side by side, each with solid and its words about it: where the middle of each lies, from the left end. */
interface Row<Item> {
  readonly places: readonly { readonly item: Item; readonly middle: number }[];
  readonly width: number;
  readonly height: number;
}

function row<Item extends Sample>(items: readonly Item[]): Row<Item> {
  let x = LAND / 2;
  const places = items.map((item) => {
    const pitch = Math.max(item.across + LAND, lettering(item.value, SMALL).width + APART);
    x += pitch;
    return { item, middle: x - pitch / 2 };
  });
  return { places, width: x + LAND / 2, height: Math.max(...items.map(({ across }) => across)) };
}

/** The row in the middle of a plate. */
const onPlate = <Item>({ places, width }: Row<Item>, plate: number) =>
  places.map(({ item, middle }) => ({ item, x: (plate - width) / 2 + middle }));

interface FitSample extends Sample {
  readonly fit: number;
}

const fingerLadder = (fits: Fits): Row<FitSample> =>
  row(
    fitSamples(fits).map((fit) => {
      const name = fitNames.find((known) => Math.abs(fits[known] - fit) < HALF_SHOWN);
      return { fit, across: TONGUE + fit, value: shown(fit), ...(name === undefined ? {} : { named: NAMES[name] }) };
    }),
  );

/** As many slots as there is room for, an odd number, so that the sheet's own thickness is the middle one. */
function thicknessSlots(thickness: number, room: number): Row<Sample & { readonly width: number }> {
  for (let count = MOST_SLOTS; ; count -= 2) {
    const slots = row(
      slotSamples(thickness, count).map((width, i) => {
        const own = i === (count - 1) / 2 ? { named: '' } : {};
        return { width, across: width, value: shown(width), ...own };
      }),
    );
    if (slots.width <= room || count <= LEAST_SLOTS) return slots;
  }
}

interface Hole extends Sample {
  readonly shape: 'bolt' | 'nut';
  readonly size: number;
}

/** What the camera is screwed together with: clearance holes of the three series, and pockets round the nut's flats. */
function boltsAndNuts(): readonly Hole[] {
  const threads = ['M4', 'M6'] as const;
  const bolts = threads.flatMap((thread) => {
    const { fine, medium, coarse } = clearanceHole[thread];
    return three(`BOLT ${thread}`, [fine.value, medium.value, coarse.value], 'bolt');
  });
  const pockets = threads.flatMap((thread) => {
    const usual = nuts[thread].acrossFlats.value + NUT_PLAY;
    return three(`NUT ${thread}`, [usual - BESIDE_NUT, usual, usual + BESIDE_NUT], 'nut');
  });
  return [...bolts, ...pockets];
}

/** Three of a kind: the middle one is the camera's. */
const three = (named: string, sizes: readonly number[], shape: Hole['shape']): readonly Hole[] =>
  sizes.map((size, i) => ({
    shape,
    size,
    across: shape === 'nut' ? sharpCorners(size) : size,
    value: shown(size),
    ...(i === 1 ? { named } : {}),
  }));

/** As it is engraved. */
const shown = (value: number): string => plainNumber(value, 2);

const raised = (path: readonly Vertex[], by: number): readonly Vertex[] => moved(path, { x: 0, y: by, turn: 0 });

const notch = (middle: number, width: number, depth: number): Step => ({
  from: middle - width / 2,
  to: middle + width / 2,
  depth: -depth,
});

const indented = (text: string, y: number, height = SMALL): Mark => ({ text, x: INDENT, y, height, turn: 0 });

/** Words in the middle over a place. */
export const centred = (text: string, middle: number, y: number, height = SMALL): Mark => ({
  text,
  x: middle - lettering(text, height).width / 2,
  y,
  height,
  turn: 0,
});

const underline = (text: string, middle: number, y: number): Path => {
  const half = lettering(text, SMALL).width / 2;
  return {
    closed: false,
    vertices: [middle - half, middle + half].map((x) => ({ x, y: y - UNDER - 0.4, bulge: 0 })),
  };
};
