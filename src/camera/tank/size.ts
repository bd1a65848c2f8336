import type { Box } from '../../geometry/path.js';
import { type Lamination, laminate } from '../../joinery/lamination.js';
import type { Ply } from '../../joinery/plate.js';
import { madeHolder } from '../../standards/made-holder.js';
import { clearanceHole, nuts, sharpCorners } from '../../standards/screws.js';
import { tank as practice } from '../../standards/tank.js';
import { SLIDE_HEAD, type SlideSize, sizeSlide } from '../dark-slide.js';
import type { Stance } from '../loose.js';
import type { Wood } from '../wood.js';

export interface TankGiven {
  /** Its number among the holders, from 1: the ends of its parts' ids. */
  readonly number: number;
  readonly name: string;
  readonly wood: Wood;
  /** Boards that the channel of a dark slide and a lip are cut from. */
  readonly boards: { readonly channel: Ply; readonly lip: Ply; readonly slide: Ply };
  /** Of velvet, standing. */
  readonly pile: number;
  /** z of the holder seat at the closest station. */
  readonly seat: number;
  readonly width: number;
  readonly closedExtent: number;
  readonly openExtent: number;
  readonly image: { readonly short: number; readonly long: number };
  /** What is processed in it, upright. */
  readonly sheet: { readonly width: number; readonly height: number; readonly thickness: number };
  readonly glass: { readonly thickness: number; readonly refractiveIndex: number };
  /** The depth at which it works, seen through its window. */
  readonly filmDepth: number;
  readonly shims: readonly number[];
  readonly stock: readonly Ply[];
  /** How far what packing leaves over may stray: half of the register tolerance. */
  readonly within: number;
  readonly pinHoles: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  /** How far the pins stand out of the seat. */
  readonly pinProud: number;
  readonly stance: Stance;
  /** What is cut out of the chamber's wall at the open end, in its plies, for spout and vent. */
  readonly notchesFor: (wall: EndWall) => readonly Box[];
  /** What it bears on: the back plate or a spacer. */
  readonly on: string;
  /** Loaded, by the scales; null: weighed from its parts. */
  readonly weighedKg: number | null;
}

/**
 * A holder in which the print is processed, from the face that bears on the seat:
 *
 *      face | channel, ring | window ply | chamber plies, packing | lip | nut plies, rim ply | stop | cover
 *     ______ _______________ ____________ ________________________ _____ ____________________ ______ ______
 *    |      |  dark slide    |           |                        |_____|   o    nut         |      |      |
 *    |______|________________|___________|________________________|     |____________________|______|      |
 *           ^                |glass  ||          liquid           |paper|pad|    plug        | cord |      |
 *         image              |_______||                           |_____|___|________________|______|______|
 *
 * Depths are counted from the face.
 */
export interface Tank extends TankGiven {
  /** Where each layer begins. */
  readonly depth: {
    readonly channel: number;
    readonly ring: number;
    readonly window: number;
    /** The back of the glass is flush with it. */
    readonly chamber: number;
    readonly lip: number;
    /** The sheet lies against it. */
    readonly sheet: number;
    readonly rim: number;
    readonly stop: number;
    readonly cover: number;
    readonly back: number;
  };
  readonly endWall: EndWall;
  /** In the plies of the chamber, from left to right. */
  readonly notches: readonly Box[];
  readonly slide: SlideSize;
  readonly windowPlies: number;
  readonly pane: { readonly width: number; readonly height: number; readonly opening: Opening };
  /** Plies of the chamber, and boards and shims that make up its depth. */
  readonly stack: Lamination;
  readonly chamber: Opening;
  readonly pocket: Opening;
  readonly plug: Opening & { readonly plies: number };
  /** Plies of the rim that nuts lie in; one more covers them. */
  readonly nutPlies: number;
  readonly pad: { readonly pressed: number; readonly bought: number; readonly card: number };
  readonly cord: { readonly diameter: number; readonly height: number; readonly width: number };
  readonly screws: Screws;
}

/** The wall at the open end, and what stands by it: what spout and vent must know. */
export interface EndWall {
  readonly chamber: { readonly halfWidth: number; readonly end: number };
  readonly openEnd: number;
  /** Depths between which it may be notched. */
  readonly notch: { readonly from: number; readonly to: number };
  readonly slide: { readonly halfWidth: number; readonly back: number; readonly handle: number };
  /** Depth of the lid's outside. */
  readonly lid: number;
}

/** Round the middle of the image. */
export interface Opening {
  readonly width: number;
  readonly height: number;
}

/** The screws of the lid, each with a nut in a slot that is open at the edge. */
interface Screws {
  readonly at: readonly Screw[];
  readonly hole: number;
  /** From the holder's edge to a screw's middle. */
  readonly inset: number;
  readonly bought: number;
  /** As it is drawn, and cut where it would reach beyond what may be bored. */
  readonly length: number;
  readonly slot: { readonly width: number; readonly depth: number };
  readonly nut: { readonly flats: number; readonly height: number };
}

export interface Screw {
  readonly x: number;
  readonly y: number;
  readonly edge: 'left' | 'right' | 'bottom' | 'top';
}

/** The plug in the pocket, both sides together; common practice, no source. */
const PLUG_PLAY = 0.8;
/** More than any play; a choice of ours. */
const ASIDE = 3;
const NUT_ROOM = { flats: 0.2, end: 0.1 };
/** A foam pad is pressed by so much; pressed more, it bows the sheet towards the lens. Common practice, no source. */
const PAD_PRESSED = 0.2;
const PADS = [0.5, 1, 1.5, 2, 3];
/** A cord of foam is pressed to so much of its thickness; common practice, no source. */
const CORD_PRESSED = 0.6;
/** Lengths of countersunk M4 screws; from memory: ISO 10642, preferred lengths. */
const SCREW_LENGTHS = [8, 10, 12, 16, 20, 25, 30, 35, 40];

const hole = clearanceHole.M4.medium.value;
const { acrossFlats: flats, height: nutHeight } = nuts.M4;
const inset = hole / 2 + practice.web.value;

export const grown = ({ width, height }: Opening, by: number): Opening => ({ width: width + by, height: height + by });

export function sizeTank(given: TankGiven): Tank {
  const { wood, boards, sheet, glass, width, closedExtent, openExtent } = given;
  const t = wood.ply.thickness;
  const { channel, lip } = boards;
  const chamber = grown(sheet, practice.chamberMore.value);
  const pane = grown(chamber, practice.glassMore.value);
  const pocket = grown(sheet, madeHolder.pocketPlay.value);
  const windowPlies = Math.max(1, Math.ceil(glass.thickness / t - 1e-9));
  const ring = t + channel.thickness;
  const window = ring + lip.thickness;
  const front = window + windowPlies * t;
  const shift = glass.thickness * (1 - 1 / glass.refractiveIndex);
  const stack = laminate({
    thickness: given.filmDepth + shift - front - lip.thickness,
    ply: t,
    shims: [...new Set([channel.thickness, lip.thickness, ...given.shims])],
    within: given.within,
    stock: given.stock.map(({ thickness }) => thickness),
  });
  const lipFrom = front + stack.thickness - stack.remainder;
  const sheetAt = lipFrom + lip.thickness;
  const nutPlies = Math.ceil((nutHeight.value + practice.nutRoom.value) / t - 1e-9);
  const rim = sheetAt + nutPlies * t;
  const stop = rim + t;
  const gap = channel.thickness + lip.thickness;
  const cover = stop + gap;
  const pressed = gap - sheet.thickness;
  const bought = PADS.findLast((pad) => pad <= pressed + PAD_PRESSED + 1e-9) ?? 0;
  const needed = t + gap + t + nutHeight.value;
  // beyond the nut plies a screw may reach through the lip and the packing that is no ply
  const packing = stack.shims.reduce((sum, one) => sum + one, 0);
  const room = t + gap + t + nutPlies * t + lip.thickness + packing;
  const screw = SCREW_LENGTHS.find((length) => length >= needed - 1e-9) ?? Math.ceil(needed);
  const slide = sizeSlide({
    imageShort: given.image.short,
    imageLong: given.image.long,
    width,
    openExtent,
    play: wood.fits.slide,
  });
  const endWall: EndWall = {
    chamber: { halfWidth: chamber.width / 2, end: chamber.height / 2 },
    openEnd: openExtent,
    notch: { from: front, to: front + stack.plies.reduce((sum, ply) => sum + ply, 0) },
    slide: { halfWidth: slide.head / 2, back: ring, handle: SLIDE_HEAD },
    lid: cover + t,
  };
  const diameter = Math.max(2, Math.round((2 * gap) / CORD_PRESSED) / 2);
  return {
    ...given,
    depth: {
      channel: t,
      ring,
      window,
      chamber: front,
      lip: lipFrom,
      sheet: sheetAt,
      rim,
      stop,
      cover,
      back: cover + t,
    },
    slide,
    endWall,
    notches: [...given.notchesFor(endWall)].sort((a, b) => a.left - b.left),
    windowPlies,
    pane: { ...pane, opening: grown(pane, practice.silicone.value) },
    stack,
    chamber,
    pocket,
    plug: { ...grown(pocket, -PLUG_PLAY), plies: nutPlies + 1 },
    nutPlies,
    pad: { pressed, bought, card: Math.max(0, pressed + PAD_PRESSED - bought) },
    cord: { diameter, height: gap, width: (Math.PI * diameter * diameter) / 4 / gap },
    screws: {
      at: screwsRound(width, closedExtent, openExtent),
      hole,
      inset,
      bought: screw,
      length: Math.min(screw, room - 0.05),
      slot: { width: flats.value + NUT_ROOM.flats, depth: inset + sharpCorners(flats.value) / 2 + NUT_ROOM.end },
      nut: { flats: flats.value, height: nutHeight.value },
    },
  };
}

/**
 * Evenly along each edge, half a step from its ends, so that no nut's slot comes near to a corner. Those at the closed end
 * stand to one side, so that what they go through goes on one way only.
 */
function screwsRound(width: number, closedExtent: number, openExtent: number): readonly Screw[] {
  const spread = (from: number, to: number): readonly number[] => {
    const count = Math.max(2, Math.ceil((to - from) / (practice.screwSpacing.value - ASIDE) - 1e-9));
    return Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 0.5)) / count);
  };
  const x = width / 2 - inset;
  const [bottom, top] = [-closedExtent + inset, openExtent - inset];
  return [
    ...spread(bottom, top).flatMap((y): readonly Screw[] => [
      { x: -x, y, edge: 'left' },
      { x, y, edge: 'right' },
    ]),
    ...spread(-x, x).flatMap((along): readonly Screw[] => [
      { x: along + ASIDE, y: bottom, edge: 'bottom' },
      { x: along, y: top, edge: 'top' },
    ]),
  ];
}
