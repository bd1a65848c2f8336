import type { Wood } from '../wood.js';

/** A pin through two or more layers: where, seen from behind with the open end up. */
export interface Pin {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

export interface Back {
  readonly wood: Wood;
  /** B */
  readonly side: number;
  /** z of the holder seat at the closest station. */
  readonly seat: number;
  readonly opening: { readonly width: number; readonly height: number };
  readonly ringOutside: number;
  readonly ringSlip: number;
  /** W_ri: what the ring turns in. */
  readonly standardOpening: number;
  readonly holderWidth: number;
  readonly narrowest: number;
  readonly closedExtent: number;
  readonly openExtent: number;
  readonly wellPlay: number;
  readonly fenceWidth: number;
  /** y to which the tongue reaches, where the holder overhangs the square. */
  readonly tongue: number | null;
  /** Open-end fence: how high, how deep along y. */
  readonly openFence: { readonly height: number; readonly depth: number; readonly layers: number };
  readonly pins: readonly Pin[];
  readonly rims: Rims;
  /** Across the seat, for the lock ribs of holders: from and to in y, each as wide as the well. */
  readonly grooves: readonly Groove[];
  readonly hookX: number;
  readonly hookY: number;
  readonly places: BackPlaces;
}

/** How wide the narrowest and shortest holder is round the back's opening: at its sides, and at its closed end. */
export interface Rims {
  readonly side: number;
  readonly end: number;
}

/** A stretch in y. */
export interface Groove {
  readonly from: number;
  readonly to: number;
}

/** Names of the set-ups in which the back stands upright and lengthwise, and of those in which pins may be in. */
export interface BackPlaces {
  readonly upright: readonly string[];
  readonly lengthwise: readonly string[];
  readonly pinned: readonly string[];
}

export interface BackGiven {
  readonly wood: Wood;
  readonly side: number;
  readonly seat: number;
  readonly imageShort: number;
  readonly imageLong: number;
  readonly openingMargin: number;
  readonly standardOpening: number;
  readonly ringSlip: number;
  readonly wellPlay: number;
  readonly holders: readonly HolderClaims[];
  /** The highest joint above the seat that a spacer of shims alone makes: the fence at the open end must stand above it. */
  readonly raisedJoint: number;
  readonly places: BackPlaces;
  /** Between which distances from the axis the clips of the glass lie. */
  readonly clips: { readonly from: number; readonly to: number };
}

/** What the back must know of a holder. */
export interface HolderClaims {
  readonly width: number;
  readonly closedExtent: number;
  readonly openExtent: number;
  /** From the seat to its dark slide. */
  readonly slideDepth: number;
  readonly pins: boolean;
  readonly rib: { readonly fromAxis: number; readonly width: number; readonly height: number } | null;
  /** How far from the axis the channel of its slide reaches at the closed end, where pins must stand clear of it; left out where nobody knows. */
  readonly channelEnd?: number;
}

/** The board that dark slides run in, and how many layers of it the fence at the open end has where nothing asks for more. */
export const CHANNEL_BOARD = 1.25;
const LAYERS = 2;
/** The slide passes so far above the fence, and the fence stands so far above a joint that it shuts. */
const UNDER_SLIDE = 0.3;
const OVER_JOINT = 0.3;
const CLIP = 30;
export const CORNER_CLIP = CLIP;
export const PIN_PROUD = 3;
/** The long fences reach so far beyond the closed end of the holders, past the corner that they shut. */
export const PAST_CLOSED_END = 6.4;
/** From a holder's edges to the middle of a pin, where the rim is wide enough. */
const TUCKED = 12;
/** A spacer's own pins stand so far from the seat pins. */
const FURTHER_IN = 12;
/** Holes for pins are so much wider than the pins. */
export const PIN_PLAY = 0.2;
const ROUNDING = 1e-6;

/** Closed end and open end of a holder, from the axis. */
export const extentsOf = (
  holder: { readonly length: number; readonly closedEnd: number | null },
  imageLong: number,
) => {
  const closed = imageLong / 2 + (holder.closedEnd ?? Math.min(20, (holder.length - imageLong) / 2));
  return { closedExtent: closed, openExtent: holder.length - closed };
};

export function sizeBack(given: BackGiven): Back {
  const { wood, side, holders, imageShort, imageLong, openingMargin, wellPlay } = given;
  const widths = holders.map((h) => h.width);
  const holderWidth = Math.max(...widths);
  const narrowest = Math.min(...widths);
  const closedExtent = Math.max(...holders.map((h) => h.closedExtent));
  const openExtent = Math.max(...holders.map((h) => h.openExtent));
  const fenceWidth = Math.min(10, (side - holderWidth) / 2 - 27.6);
  const overhangs = openExtent + wellPlay + 3 > side / 2;
  const shallowest = Math.min(...holders.map((h) => h.slideDepth));
  const wanted = Math.max(LAYERS, Math.ceil((given.raisedJoint + OVER_JOINT) / CHANNEL_BOARD - 1e-9));
  const layers = Math.max(0, Math.min(wanted, Math.floor((shallowest - UNDER_SLIDE) / CHANNEL_BOARD + 1e-9)));
  const opening = { width: imageShort + 2 * openingMargin, height: imageLong + 2 * openingMargin };
  const fenceEdge = holderWidth / 2 + wellPlay + fenceWidth;
  const rims = {
    side: (narrowest - opening.width) / 2,
    end: Math.min(...holders.map((h) => h.closedExtent)) - opening.height / 2,
  };
  return {
    wood,
    side,
    seat: given.seat,
    opening,
    ringOutside: given.standardOpening - 2 * given.ringSlip,
    ringSlip: given.ringSlip,
    standardOpening: given.standardOpening,
    holderWidth,
    narrowest,
    closedExtent,
    openExtent,
    wellPlay,
    fenceWidth,
    tongue: overhangs ? openExtent + 7.4 : null,
    openFence: {
      height: layers * CHANNEL_BOARD,
      layers,
      depth: overhangs ? 7 : Math.min(10, side / 2 - openExtent - wellPlay),
    },
    pins: seatPins(opening, rims, Math.max(0, ...holders.map((h) => h.channelEnd ?? 0))),
    rims,
    grooves: groovesFor(holders.flatMap((h) => (h.rib ? [h.rib] : []))),
    hookX: Math.min(Math.max((fenceEdge + side / 2) / 2, given.standardOpening / 2 + 6), side / 2 - 8),
    hookY: hookHeight(side, given.clips),
    places: given.places,
  };
}

/** Hooks stand at this part of the back's side from the axis, and their cords keep so far from the clips of the glass. */
const HOOKS_AT = 0.22;
const CORD_CLEAR = 3;

/** Nearer to the axis where a cord would lie on the clips. */
function hookHeight(side: number, clips: BackGiven['clips']): number {
  const usual = HOOKS_AT * side;
  const onClips = usual > clips.from - CORD_CLEAR && usual < clips.to + CORD_CLEAR;
  return onClips ? clips.from - CORD_CLEAR : usual;
}

/** A groove is so much wider than its rib. */
const RIB_PLAY = 1;
/** Wood that stands between two grooves, and beside one. */
export const LEAST_WEB = 3;

/** One groove for each rib, or for several that lie so near to each other that no wood would stand between them. */
function groovesFor(ribs: readonly { readonly fromAxis: number; readonly width: number }[]): readonly Groove[] {
  const all = ribs
    .map(({ fromAxis, width }) => ({ from: fromAxis - (width + RIB_PLAY) / 2, to: fromAxis + (width + RIB_PLAY) / 2 }))
    .sort((a, b) => a.from - b.from);
  const grooves: Groove[] = [];
  for (const groove of all) {
    const last = grooves.at(-1);
    if (!last || groove.from - last.to >= LEAST_WEB) grooves.push(groove);
    else grooves[grooves.length - 1] = { from: last.from, to: Math.max(last.to, groove.to) };
  }
  return grooves;
}

/** Dowels for a pair of pins, of unequal thickness so that nothing goes on the wrong way round; thinner where rims are narrow. */
const PIN_PAIRS = [
  { thin: 5, thick: 6 },
  { thin: 4, thick: 5 },
  { thin: 3, thick: 4 },
] as const;
type PinPair = (typeof PIN_PAIRS)[number];
const USUAL_PAIR = PIN_PAIRS[0];

/** From the middle of the thicker pin to any edge: half of its hole, and the wood that stands round it. */
const clearOf = ({ thick }: PinPair): number => (thick + PIN_PLAY) / 2 + LEAST_WEB;

/**
 * Two pins at the closed end: 12 from both edges of the holder where that leaves wood towards the opening, else in the
 * middle of the wider rim; between two narrow rims as far from the corner of the opening as from the holder's edges. Nearer
 * to the closed end where a dark slide's channel would reach them.
 */
function seatPins(opening: Back['opening'], rims: Rims, channelEnd: number): readonly Pin[] {
  const { side, end } = rims;
  const clear = clearOf(USUAL_PAIR);
  const roomy = Math.max(side, end) - TUCKED >= clear - ROUNDING;
  // |(side - e, end - e)| = e
  const corner = side + end - Math.sqrt(2 * side * end);
  const from = roomy
    ? { x: TUCKED, y: TUCKED }
    : end >= 2 * clear
      ? { x: TUCKED, y: end / 2 }
      : side >= 2 * clear
        ? { x: side / 2, y: TUCKED }
        : { x: corner, y: corner };
  const fits = (one: PinPair, at: typeof from) => Math.min(at.x, at.y) >= clearOf(one) - ROUNDING;
  const beyond = (one: PinPair) => ({
    ...from,
    y: Math.min(from.y, end + opening.height / 2 - channelEnd - (one.thick + PIN_PLAY) / 2 - LEAST_WEB),
  });
  const clearOne = PIN_PAIRS.find((one) => fits(one, beyond(one)));
  const pair = clearOne ?? PIN_PAIRS.find((one) => fits(one, from)) ?? PIN_PAIRS[2];
  const at = clearOne ? beyond(clearOne) : from;
  return paired(pair, opening.width / 2 + side - at.x, -opening.height / 2 - end + at.y);
}

const paired = ({ thin, thick }: PinPair, x: number, y: number): readonly Pin[] => [
  { x: -x, y, diameter: thin },
  { x, y, diameter: thick },
];

/**
 * Pins of a spacer stand so far further in than the seat pins; in one line they would meet them. In along the closed
 * end where wood stands round them there, else up along the sides; thinner where both rims are narrow.
 */
export function ownPins({ pins, opening, rims }: Pick<Back, 'pins' | 'opening' | 'rims'>): readonly Pin[] {
  const x = Math.max(...pins.map((pin) => pin.x));
  const y = Math.min(...pins.map((pin) => pin.y));
  for (const pair of PIN_PAIRS) {
    const below = within(-y - opening.height / 2, rims.end, clearOf(pair));
    if (below !== null) return paired(pair, x - FURTHER_IN, -opening.height / 2 - below);
    const beside = within(x - opening.width / 2, rims.side, clearOf(pair));
    if (beside !== null) return paired(pair, opening.width / 2 + beside, y + FURTHER_IN);
  }
  return paired(PIN_PAIRS[2], x - FURTHER_IN, -(opening.height + rims.end) / 2);
}

/** Where in a rim a pin has wood on both sides: in line with the seat pin, else in the middle; null where nowhere. */
function within(inLine: number, rim: number, clear: number): number | null {
  if (inLine >= clear - ROUNDING && rim - inLine >= clear - ROUNDING) return inLine;
  return rim >= 2 * clear - ROUNDING ? rim / 2 : null;
}
