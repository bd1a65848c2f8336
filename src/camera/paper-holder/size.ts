import { type Lamination, laminate, MOST_SHIMS } from '../../joinery/lamination.js';
import type { Ply } from '../../joinery/plate.js';
import { madeHolder } from '../../standards/made-holder.js';
import { type SlideSize, sizeSlide } from '../dark-slide.js';
import type { Stance } from '../loose.js';
import type { Wood } from '../wood.js';

export interface Boards {
  readonly channel: Ply;
  readonly lip: Ply;
  readonly slide: Ply;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

interface PinHole {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** A single holder for paper or film, loaded from behind, cut from the sheet of the camera. */
export interface PaperHolder {
  /** Ends the ids of its parts: HF1, HC1, … */
  readonly mark: number;
  readonly name: string;
  readonly wood: Wood;
  readonly boards: Boards;
  readonly seat: number;
  readonly width: number;
  readonly closedExtent: number;
  readonly openExtent: number;
  readonly image: Size;
  readonly sheet: Size & { readonly thickness: number };
  readonly pocket: Size;
  /** Ahead of the channel: the face, further plies, and shims. */
  readonly front: Front;
  /** From the face to the sheet: as it was asked for, and as the layers come to. */
  readonly asked: number;
  readonly filmDepth: number;
  /** How far the two may differ. */
  readonly within: number;
  readonly slide: SlideSize;
  /** Of the velvet, standing. */
  readonly pile: number;
  readonly lid: Lid;
  readonly insert: Insert | null;
  readonly pinHoles: readonly PinHole[];
  /** How far the pins stand out of the seat. */
  readonly pinProud: number;
  readonly stance: Stance;
  /** The same, without the insert and with it. */
  readonly plain: Stance;
  readonly inserted: Stance;
  /** What it bears on: the back plate or a spacer. */
  readonly on: string;
  /** Measured mass over that of its parts; null where nobody weighed it. */
  readonly weighedKg: number | null;
}

interface Front {
  readonly face: Ply;
  readonly packing: Lamination;
}

export interface Lid {
  /** Layers of channel board on its inside, and the felt on them, as it is pressed. */
  readonly boards: number;
  readonly felt: number;
  /** Felt as it is bought. */
  readonly feltFree: number;
  readonly screw: number;
}

interface Insert {
  readonly name: string;
  readonly image: Size;
  readonly sheet: Size;
  readonly pocket: Size;
}

export interface PaperHolderGiven {
  readonly mark: number;
  readonly name: string;
  readonly wood: Wood;
  readonly boards: Boards;
  readonly pile: number;
  readonly seat: number;
  readonly width: number;
  readonly closedExtent: number;
  readonly openExtent: number;
  readonly imageShort: number;
  readonly imageLong: number;
  readonly sheet: Size & { readonly thickness: number };
  readonly filmDepth: number;
  /** How far the film depth may be out. */
  readonly within: number;
  readonly shims: readonly number[];
  /** Other sheets that the face may be cut from. */
  readonly stock: readonly Ply[];
  readonly insert: { readonly name: string; readonly image: Size; readonly sheet: Size } | null;
  readonly pinHoles: readonly PinHole[];
  readonly pinProud: number;
  readonly stance: Stance;
  readonly plain: Stance;
  readonly inserted: Stance;
  readonly on: string;
  readonly weighedKg: number | null;
}

/** The lid stands back from the holder's edge, so that it never meets the fences; its pad from the pocket's. */
export const LID_BACK = 0.5;
export const PAD_PLAY = 0.5;
/** The felt of the pad is pressed in no less than this, beyond what its boards fill. */
const LEAST_FELT = 1.3;
/** Felt or soft foam that is to be had, and what it is pressed by at least. */
const FELTS = [2, 3, 4, 5];
const PRESSED = 0.4;
/** Wood screws that are to be had. */
const SCREWS = [8, 10, 12, 16, 20, 25];

export function sizePaperHolder(given: PaperHolderGiven): PaperHolder {
  const { wood, boards, imageShort, imageLong, sheet, openExtent, width } = given;
  const t = wood.ply.thickness;
  const behind = boards.channel.thickness + boards.lip.thickness;
  const front = frontOf(given, given.filmDepth - behind);
  const { packing } = front;
  const pocket = roomy(sheet, madeHolder.pocketPlay.value);
  return {
    mark: given.mark,
    name: given.name,
    wood,
    boards,
    seat: given.seat,
    width,
    closedExtent: given.closedExtent,
    openExtent,
    image: { width: imageShort, height: imageLong },
    sheet,
    pocket,
    front,
    asked: given.filmDepth,
    filmDepth: front.face.thickness + packing.thickness - packing.remainder + behind,
    within: given.within,
    slide: sizeSlide({ imageShort, imageLong, width, openExtent, play: wood.fits.slide }),
    pile: given.pile,
    lid: lidOf(t, boards.channel.thickness),
    insert: given.insert && { ...given.insert, pocket: roomy(given.insert.sheet, madeHolder.pocketPlay.value) },
    pinHoles: given.pinHoles,
    pinProud: given.pinProud,
    stance: given.stance,
    plain: given.plain,
    inserted: given.inserted,
    on: given.on,
    weighedKg: given.weighedKg,
  };
}

const roomy = ({ width, height }: Size, play: number): Size => ({ width: width + play, height: height + play });

/**
 * What stands ahead of the channel: a face of the camera's own ply, or of another sheet where that comes nearer, then whole
 * plies and the fewest shims. Where nothing meets the depth, a face alone: the check says what it would take.
 */
function frontOf({ wood, shims, stock, within }: PaperHolderGiven, thickness: number): Front {
  const faces = [wood.ply, ...stock].filter((face) => face.thickness <= thickness + within + ROUNDING);
  const fronts = faces.map(
    (face): Front => ({
      face,
      packing: laminate({ thickness: thickness - face.thickness, ply: wood.ply.thickness, shims, within, stock: [] }),
    }),
  );
  const good = fronts.filter(
    ({ packing }) => Math.abs(packing.remainder) <= within + ROUNDING && packing.shims.length <= MOST_SHIMS,
  );
  const alone = { thickness: 0, plies: [], shims: [], remainder: 0 };
  return good[0] ?? { face: wood.ply, packing: alone };
}

const ROUNDING = 1e-6;

/** The pad fills the pocket: boards, and felt that the sheet is pressed by. */
function lidOf(t: number, board: number): Lid {
  const boards = Math.max(0, Math.floor((t - LEAST_FELT) / board + ROUNDING));
  const felt = t - boards * board;
  return {
    boards,
    felt,
    feltFree: FELTS.find((free) => free >= felt + PRESSED) ?? Math.ceil(felt + PRESSED),
    screw: SCREWS.filter((length) => length <= 3 * t).at(-1) ?? (SCREWS[0] as number),
  };
}

/** From the face to the outside of the lid. */
export const thicknessOf = ({ filmDepth, wood }: Pick<PaperHolder, 'filmDepth' | 'wood'>): number =>
  filmDepth + 2 * wood.ply.thickness;
