import type { Barrel, Lens, LensFlange } from '../../design/design.js';
import type { Point } from '../../geometry/path.js';
import type { LensClaims } from '../setting-out.js';
import type { Wood } from '../wood.js';

export interface LensBoard {
  readonly wood: Wood;
  readonly by: Lens['mount']['by'];
  readonly side: Lens['mount']['side'];
  /** z of the lens seat. */
  readonly seat: number;
  readonly hole: number;
  /** Side of the square opening in the front panel. */
  readonly opening: number;
  readonly plug: number;
  readonly board: number;
  /** Diameter of what bears on board or plug: the clamp's flange, the lens's, or a ring. */
  readonly disc: number;
  /** Widest thing on the lens's inside: it must pass the opening when the board comes out. */
  readonly insideWidest: number;
  /** Holes for the screws of clamp or flange; a wood screw ends blind in the layer that it enters first. */
  readonly screws: { readonly places: readonly Point[]; readonly hole: number; readonly through: boolean };
  /** Retainer over board, and how far it must be drawn. */
  readonly overlap: number;
  readonly draw: number;
  readonly claims: LensClaims;
}

export interface LensBoardGiven {
  readonly wood: Wood;
  readonly by: Lens['mount']['by'];
  readonly side: Lens['mount']['side'];
  readonly barrel: Barrel;
  readonly flange: LensFlange | null;
  /** The printed clamp: its flange and how far its lugs reach from the axis. */
  readonly clamp: {
    readonly flangeDiameter: number;
    readonly radius: number;
    readonly length: number;
    readonly screwPlaces: readonly Point[];
  } | null;
  /** Tangent of half the field that the lens must see, for a lens that stands behind the board's face. */
  readonly fieldTangent: number;
}

/** Board over the opening on each side: the land that light meets under it. */
const BOARD_LAND = 14;
/** Plug in the opening, each side. */
const PLUG_PLAY = 0.3;
/** Least opening: two dowels beside the hole. */
const LEAST_OPENING = 64;
/** A retaining ring is taken as so much wider than its thread. */
const RING_RIM = 5;
export const OVERLAP = 6;

/** Seat, hole, opening, plug and board, from the lens and its mount; the plug is one ply. */
export function sizeLensBoard(given: LensBoardGiven): LensBoard {
  const { wood, by, side, barrel, flange, clamp, fieldTangent } = given;
  const t = wood.ply.thickness;
  const inside = side === 'inside';
  const seat = inside ? 0 : by === 'clamp' ? -2 * t - (clamp?.length ?? 0) : -2 * t;
  const disc =
    by === 'clamp'
      ? (clamp?.flangeDiameter ?? 0)
      : by === 'flange'
        ? (flange?.diameter ?? 0)
        : barrel.diameter + 2 * RING_RIM;
  const behind = Math.max(barrel.diameter, barrel.rearDiameter);
  // a lens whose front rim stands back of the board's face looks through the hole as through a tunnel
  const recess = inside ? Math.max(0, 2 * t - barrel.front) : 0;
  const passing =
    by === 'ring'
      ? (inside ? barrel.frontDiameter : barrel.diameter) + 0.3
      : (inside ? barrel.frontDiameter : behind) + 1;
  const hole = Math.max(passing, inside ? barrel.frontDiameter + 2 * recess * fieldTangent : 0);
  const discInside = inside || by === 'ring' ? disc : 0;
  const discInFront = inside && by !== 'ring' ? 0 : disc;
  const insideWidest = Math.max(behind, discInside);
  const opening = Math.max(
    insideWidest + 4,
    hole + 10,
    LEAST_OPENING,
    // in front the disc must lie between the retainers
    discInFront + 2 * OVERLAP + 4 - 2 * BOARD_LAND,
  );
  const clampRadius = by === 'clamp' && inside ? (clamp?.radius ?? 0) : 0;
  const screws =
    by === 'clamp'
      ? { places: clamp?.screwPlaces ?? [], hole: 4.5, through: true }
      : {
          places: by === 'flange' && flange ? onCircle(flange.screws, flange.boltCircle) : [],
          hole: 2,
          through: false,
        };
  const board = opening + 2 * BOARD_LAND;
  return {
    wood,
    by,
    side,
    seat,
    hole,
    opening,
    plug: opening - 2 * PLUG_PLAY,
    board,
    disc,
    insideWidest,
    screws,
    overlap: OVERLAP,
    draw: OVERLAP + 1,
    claims: {
      seat,
      radiusBehindPanel: Math.max(insideWidest / 2, clampRadius),
      reachBehindPanel: seat + barrel.grip + barrel.rear,
      board,
    },
  };
}

/** Holes of the lens's own flange, the first one up. */
const onCircle = (count: number, diameter: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const turn = Math.PI / 2 + (2 * Math.PI * i) / count;
    return { x: (diameter / 2) * Math.cos(turn), y: (diameter / 2) * Math.sin(turn) };
  });
