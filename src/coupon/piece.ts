import { boundsOf } from '../geometry/path.js';
import { box, rectangle, type Step, stepped } from '../geometry/shapes.js';
import type { FlatPart } from '../model/part.js';
import { mm } from '../units/print.js';
import { STRIPS } from './comb.js';
import { type CouponGiven, couponPart, gapOf } from './given.js';
import { centred, TONGUE, testPlate } from './test-plate.js';

/** A part of the test piece, and where on the sheet the cut lines of each of its pieces begin, from the lower left. */
export interface CouponPart {
  readonly part: FlatPart;
  readonly at: readonly { readonly x: number; readonly y: number }[];
}

export interface Coupon {
  /** In the order in which their outlines are cut, the plate last. */
  readonly parts: readonly CouponPart[];
  /** What the cut lines take, over all. */
  readonly width: number;
  readonly height: number;
  /** Sum of the strips of one comb as drawn. */
  readonly combSum: number;
  /** The fits of the finger ladder and the widths of the slots, as engraved. */
  readonly fits: readonly number[];
  readonly slots: readonly number[];
}

/** A5, the remnant that is always there, and what a margin of 5 mm leaves of it. */
export const REMNANT = { width: 210, height: 148 } as const;
const ROOM = { width: 200, height: 138 } as const;

/** Longer than the slats of a bed are apart, so that no strip drops between them, mm. */
const LONG = 26;
const WIDEST_STRIP = 8;
const NARROWEST_STRIP = 5;

/** The tongue goes through the sheet and is held by the rest, mm. */
const TONGUE_BODY = 24;
const TONGUE_LENGTH = 8;

/**
 * The test piece, laid out to be cut from one remnant:
 *
 *      +---+------------------------------+
 *      | c | finger ladder along the top  |
 *      | o |                              |
 *      | m | what to do; bolts and nuts   |
 *      | b |                              |
 *      | Y | slots along the bottom       |
 *      |   +------------------------------+
 *      +---+------------+--------+--------+
 *      |    comb X      | tongue | tongue |
 *      +----------------+--------+--------+
 *
 * A strip is finished a kerf narrower than its cut line, whatever the kerf is taken to be: so its line is exactly as
 * wide as is engraved, and what the strip falls short of it is the true kerf.
 */
export function drawCoupon(given: CouponGiven): Coupon {
  const { kerf } = given;
  const gap = gapOf(given);
  const left = LONG + gap;
  const wide = stripWidth(gap);
  const pitch = wide + gap;
  const combLength = STRIPS * pitch - gap;
  const along = Array.from({ length: STRIPS }, (_, i) => i * pitch);

  const tongue = tonguePiece(given);
  const tongueWide = boundsOf(tongue.outline).right + kerf;
  const tongues = [0, 1].map((i) => ({ x: combLength + gap + i * (tongueWide + gap), y: 0 }));

  const plate = testPlate(given, {
    width: ROOM.width - left - kerf,
    height: ROOM.height - left - kerf,
    combSum: STRIPS * wide,
  });
  const size = boundsOf(plate.part.outline);
  return {
    parts: [
      { part: strip(given, 'X', wide, LONG), at: along.map((x) => ({ x, y: 0 })) },
      { part: strip(given, 'Y', LONG, wide), at: along.map((y) => ({ x: 0, y: left + y })) },
      { part: tongue, at: tongues },
      { part: plate.part, at: [{ x: left, y: left }] },
    ],
    width: Math.max(left + size.right + kerf, combLength + 2 * (gap + tongueWide)),
    height: left + Math.max(size.top + kerf, combLength),
    combSum: STRIPS * wide,
    fits: plate.fits,
    slots: plate.slots,
  };
}

/** Whole millimetres, so that the drawn sum is a round number; as wide as the remnant is high enough for. */
function stripWidth(gap: number): number {
  const high = ROOM.height - LONG - gap;
  const most = Math.floor((high - (STRIPS - 1) * gap) / STRIPS);
  return Math.max(NARROWEST_STRIP, Math.min(WIDEST_STRIP, most));
}

/** Its letter keeps the two combs apart, which are read one after the other. */
function strip(given: CouponGiven, letter: 'X' | 'Y', lineWidth: number, lineHeight: number): FlatPart {
  const [width, height] = [lineWidth - given.kerf, lineHeight - given.kerf];
  return couponPart(given, {
    id: `comb-${letter.toLowerCase()}`,
    name: `strip of comb ${letter}`,
    outline: rectangle(box(0, 0, width, height)),
    marks: [centred(letter, width / 2, height / 2 - 1.25)],
  });
}

/** A tongue at either end: the second for when the first is worn from being pressed in. */
function tonguePiece(given: CouponGiven): FlatPart {
  const height = LONG - given.kerf;
  const tongue: Step = { from: (height - TONGUE) / 2, to: (height + TONGUE) / 2, depth: TONGUE_LENGTH };
  const body = box(TONGUE_LENGTH, 0, TONGUE_LENGTH + TONGUE_BODY, height);
  const middle = TONGUE_LENGTH + TONGUE_BODY / 2;
  const line = (text: string, i: number) => centred(text, middle, height / 2 - 1.25 + 4.2 * (1 - i));
  return couponPart(given, {
    id: 'tongue',
    name: 'tongue for the finger ladder',
    outline: stepped(body, { left: [tongue], right: [tongue] }),
    marks: [line('TONGUE', 0), line(mm(TONGUE), 1), line('loose first', 2)],
  });
}
