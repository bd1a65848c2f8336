import type { Stance } from '../loose.js';
import type { Wood } from '../wood.js';

/**
 * Plates that make the picture smaller. One drops into the opening of the back from behind, two plies thick or more, onto a
 * ledge that is glued to the front of the turning ring, and lies a hair below the seat: the holder, or the glass, keeps it
 * there and still bears on bare wood.
 *
 *      lens     ring   plate |seat
 *             |######|#######|
 *         B6 ,|######|#######|    ,: card between ledge and ring
 *       |####|,______________|
 *       |####||| MK1  | MK1  |    the mask, and the air behind it
 *
 * The light narrows towards the lens. Where it leaves too little of a ledge at the ring, the ledge stands farther ahead on
 * packing, and the masks have more plies.
 */
export interface Masks {
  readonly wood: Wood;
  /** z of the holder seat at the closest station. */
  readonly seat: number;
  /** Of the back, upright. */
  readonly opening: { readonly width: number; readonly height: number };
  /** Of a mask; the first two lie within ring and back plate, each further one in a layer of packing ahead of them. */
  readonly plies: number;
  readonly ledge: {
    readonly width: number;
    readonly height: number;
    readonly opening: { readonly width: number; readonly height: number };
  };
  /** Under the ledge: as thick as the mask lies below the seat. */
  readonly card: { readonly width: number; readonly length: number; readonly thickness: number };
  /** Where the back stands upright and lengthwise: the ledge turns with it. */
  readonly turns: Stance;
  readonly masks: readonly FilmMask[];
  /** Where they are packed for the road: one behind the other, the first so far behind the seat. */
  readonly packed: Stance;
  /** What the first of them then lies on. */
  readonly on: string;
}

export interface FilmMask {
  readonly id: string;
  readonly name: string;
  /** What the film receives, at most. */
  readonly image: { readonly width: number; readonly height: number };
  readonly outside: { readonly width: number; readonly height: number };
  readonly opening: { readonly width: number; readonly height: number };
  readonly cornerRadius: number;
  readonly holder: string;
  readonly optics: MaskOptics;
}

/** What the edge of a mask is judged by, in its own holder. */
export interface MaskOptics {
  /** Seat to film. */
  readonly filmDepth: number;
  /** From the exit pupil to the film, at the farthest focus and at the nearest, and how wide it is at full aperture. */
  readonly farthest: number;
  readonly nearest: number;
  readonly pupil: number;
  readonly maxAperture: number;
}

export interface MasksGiven {
  readonly wood: Wood;
  readonly seat: number;
  readonly opening: Masks['opening'];
  /** Side of the turning ring. */
  readonly ringOutside: number;
  /** What a plate must leave open for the light at a z, by half. */
  readonly light: (z: number) => { readonly short: number; readonly long: number };
  readonly masks: readonly {
    readonly name: string;
    readonly image: FilmMask['image'];
    readonly corners: number;
    readonly holder: string;
    readonly optics: MaskOptics;
  }[];
  readonly turns: Stance;
  readonly packed: Stance;
  readonly on: string;
  /** A ledge that is glued in already, and the plies that lie on it; null where it follows the light. */
  readonly standing: Pick<Masks, 'plies' | 'ledge'> | null;
}

/** So far below the seat a mask lies: more than two plies and their glue stray, less than lets light past it. A choice of ours. */
export const BELOW_SEAT = 0.2;
/** Play of a mask in the opening, each side: all of it is taken off what bears on the ledge. A choice of ours. */
const PLAY = 0.2;
/** Glued to the ring: so wide, and so far inside its edge, so that the back still turns freely. */
const LAND = 10;
const INSIDE_RING = 1;
const CARD = { width: 4.5, length: 100 };

/** A mask has so many plies at most, and is content with so much ledge under it at two sides. Choices of ours. */
const PLIES = { least: 2, most: 5 };
const BEARING = 1;

export function sizeMasks(given: MasksGiven): Masks {
  const { wood, seat, opening } = given;
  const { plies, ledge } = given.standing ?? sizeLedge(given);
  return {
    wood,
    seat,
    opening,
    plies,
    ledge,
    card: { ...CARD, thickness: BELOW_SEAT },
    masks: given.masks.map(({ name, image, corners, holder, optics }, i): FilmMask => {
      const scale = shadowScale(optics);
      return {
        id: `MK${i + 1}`,
        name,
        image,
        outside: { width: opening.width - 2 * PLAY, height: opening.height - 2 * PLAY },
        opening: { width: image.width * scale, height: image.height * scale },
        cornerRadius: corners * scale,
        holder,
        optics,
      };
    }),
    turns: given.turns,
    packed: given.packed,
    on: given.on,
  };
}

/** What masks lie on, and of how many plies they are. */
function sizeLedge({ wood, seat, opening, ringOutside, light }: MasksGiven): Pick<Masks, 'plies' | 'ledge'> {
  const t = wood.ply.thickness;
  /** What a ledge leaves open that so many plies lie on. */
  const openingOn = (plies: number) => {
    const rear = seat - plies * t - BELOW_SEAT;
    const faces = [light(rear - t), light(rear)];
    const clear = (side: 'short' | 'long', whole: number) =>
      Math.min(whole, 2 * Math.max(...faces.map((face) => face[side])));
    return { width: clear('short', opening.width), height: clear('long', opening.height) };
  };
  const bears = (inner: Masks['opening']) =>
    Math.max(opening.width - inner.width, opening.height - inner.height) / 2 - 2 * PLAY;
  let plies = PLIES.least;
  while (plies < PLIES.most && bears(openingOn(plies)) < BEARING) plies += 1;
  const outer = (whole: number) => Math.min(whole + 2 * LAND, ringOutside - 2 * INSIDE_RING);
  return {
    plies,
    ledge: {
      width: outer(opening.width),
      height: outer(opening.height),
      opening: openingOn(plies),
    },
  };
}

/**
 * How much smaller the opening is than the picture that it leaves: (L − d)/L, similar triangles from the middle of the exit
 * pupil, for the farthest focus. Nearer the pupil is farther from the film, and the picture a little smaller than asked.
 */
const shadowScale = ({ filmDepth, farthest }: MaskOptics): number => 1 - (filmDepth + BELOW_SEAT) / farthest;

/** Of all masks in a pile, as they are packed. */
export const thicknessOfMasks = ({ wood, plies, masks }: Masks): number => plies * wood.ply.thickness * masks.length;
