import type { Ply } from '../../joinery/plate.js';
import { enlargementOfStop, entrancePupil, holeOfPupil } from '../../optics/aperture.js';
import { exactFNumber } from '../../standards/aperture-numbers.js';
import type { Wood } from '../wood.js';

/**
 * Waterhouse stops: plates of thin black board with a hole, for a slot in the barrel, and the wallet on the side of the
 * front box that they stand in. Each plate has its tab elsewhere, so that all numbers are read at once.
 *
 *       _8_                 tab, out of the barrel
 *      |   |___________
 *      |               |    mouth of the slot
 *      |      ( )      |    the hole lies in the middle of the barrel
 *       \_____________/     round as the floor of the slot
 */
export interface Stops {
  readonly wood: Wood;
  readonly board: Ply;
  readonly slot: { readonly width: number; readonly thickness: number };
  readonly fullAperture: number;
  readonly marked: number;
  readonly width: number;
  /** From the hole up to the shoulder, just out of the barrel, and to the end of the tab. */
  readonly shoulder: number;
  readonly top: number;
  readonly tabWidth: number;
  readonly stops: readonly Stop[];
  readonly wallet: {
    /** Outer face of the side that it is glued to, z of its middle, and y of the plates' holes in it. */
    readonly face: number;
    readonly z: number;
    readonly y: number;
    /** Layers of board round the plates: one for each, and one for the velvet that holds them. */
    readonly layers: number;
    readonly pocket: number;
    readonly rim: number;
  };
}

export interface Stop {
  readonly id: string;
  /** As it is engraved: 5.6. */
  readonly mark: number;
  readonly hole: number;
  /** Left edge of the tab, from the middle. */
  readonly tabFrom: number;
}

export interface StopsGiven {
  readonly wood: Wood;
  readonly board: Ply;
  readonly focalLength: number;
  readonly fullAperture: number;
  readonly marked: number;
  readonly slot: Stops['slot'];
  readonly depth: number;
  readonly series: readonly number[];
  /** Outer face of the front box's side, and z of its rear edge. */
  readonly face: number;
  readonly boxLength: number;
}

/** A plate is so much narrower than its slot, in all. */
const PLAY = 0.3;
/** The shoulder clears the barrel, and a tab is long enough for two fingers; common practice, no source. */
const OVER_BARREL = 1;
const TAB = { length: 14, least: 10 };
/** The pocket is wider than the plates, in all; round it stands so much board. */
const POCKET_PLAY = 0.6;
const RIM = 8;

export function sizeStops(given: StopsGiven): Stops {
  const { focalLength: f, fullAperture, marked, slot, depth, series, face, boxLength } = given;
  const width = slot.width - PLAY;
  const enlargement = enlargementOfStop(f, marked, fullAperture);
  const tabWidth = Math.min(width, Math.max(TAB.least, width / series.length));
  const shoulder = depth + OVER_BARREL;
  const pitch = series.length > 1 ? (width - tabWidth) / (series.length - 1) : 0;
  return {
    wood: given.wood,
    board: given.board,
    slot,
    fullAperture,
    marked,
    width,
    shoulder,
    top: shoulder + TAB.length,
    tabWidth,
    stops: series.map((mark, i) => ({
      id: `WS${i + 1}`,
      mark,
      hole: holeOfPupil(entrancePupil(f, exactFNumber(mark)), enlargement),
      tabFrom: i * pitch - width / 2,
    })),
    wallet: {
      face,
      z: boxLength / 2,
      y: 0,
      layers: series.length + 1,
      pocket: width + POCKET_PLAY,
      rim: RIM,
    },
  };
}
