import { ROUNDING } from '../../assembly/limit.js';
import type { Barrel, Lens, LensFlange } from '../../design/design.js';
import type { Point } from '../../geometry/path.js';
import { type Claimed, claim, widest } from '../claim.js';
import { constant, type Figure, formula, measured, PRACTICE, type Reason, reckoned } from '../figure.js';
import { boardOnPanel, type LensClaimFigures, type LensClaims } from '../setting-out.js';
import type { Wood } from '../wood.js';

/** One side of a lens in the panel, before the other side was looked at. */
export interface SizedLensBoard {
  readonly wood: Wood;
  readonly by: Lens['mount']['by'];
  readonly side: Lens['mount']['side'];
  /** z of the lens seat. */
  readonly seat: number;
  readonly hole: number;
  /** Behind a lens that stands in front the plug's hole widens with the light. */
  readonly plugHole: number;
  /** Side of the square opening in the front panel. */
  readonly opening: number;
  /** What lens and mount ask of it that stays on the board. Where the panel was there first it may be more than there is. */
  readonly boardAsks: Claimed;
  /** Of a panel that was there first; null where it is cut for the lens. */
  readonly panel: StandingPanel | null;
  /** Least opening that board and plug go into, and that lets pass what stands behind them. */
  readonly needs: number;
  /** What the lens is held by in front of the board, across; 0 where it is held inside. */
  readonly discInFront: number;
  readonly plug: number;
  readonly board: number;
  /** Room of the light in a clamp that reaches beyond the lens's rear rim, each side; null where the rim stands clear of it. */
  readonly clampRoom: number | null;
  /** Holes for the screws of clamp or flange; a wood screw ends blind in the layer that it enters first. */
  readonly screws: { readonly places: readonly Point[]; readonly hole: number; readonly through: boolean };
  /** Two through board and plug, to keep them in register while glue sets; none where a clamp's screws do that. */
  readonly dowels: readonly Dowel[];
  /** Retainer over board, and how far it must be drawn. */
  readonly overlap: number;
  readonly draw: number;
  readonly claims: LensClaims;
  /** The claims as figures that can be explained. */
  readonly figures: LensClaimFigures & { readonly opening: Figure };
}

export interface LensBoard extends SizedLensBoard {
  /** Least opening for the same lens mounted from the other side. */
  readonly otherSideNeeds: number;
}

/** A front panel that was there before the lens. */
export interface StandingPanel {
  /** The opening that was written, or that it has; where what was written cannot be sawn, not the one that is cut. */
  readonly asked: Figure;
  /** The opening as it was built; null where nothing is known but what was written. */
  readonly built: number | null;
  /** Widest opening that it has wood for; without limit where the boxes follow the panel. */
  readonly most: number;
  /** Its side, as it was built; null where the boxes follow it. */
  readonly side: number | null;
}

/** What is printed to a tenth may be half of one narrower than it was built. */
const AS_PRINTED = 0.05;

/** Why the opening that was written cannot be sawn into a panel: it has no wood for it, or has lost that already; null where it can. */
export function unsawn({ asked, built, most }: StandingPanel): 'too wide' | 'too narrow' | null {
  if (asked.value > most + ROUNDING) return 'too wide';
  return built !== null && asked.value < built - AS_PRINTED - ROUNDING ? 'too narrow' : null;
}

/** The widest opening that leaves a panel of this width wood for board and retainers. */
export const widestOpening = (panel: number): number => boardOnPanel(panel) - 2 * BOARD_LAND;

/** Sizes of the lens as figures, beside the plain numbers. */
export interface LensOnBoard {
  readonly ply: Figure;
  readonly diameter: Figure;
  readonly grip: Figure;
  readonly rear: Figure;
  readonly rearDiameter: Figure;
  /** Of what bears on board or plug from inside; null where nothing does. */
  readonly disc: Figure | null;
  readonly clampLength: Figure | null;
}

export interface LensBoardGiven {
  readonly wood: Wood;
  readonly figures: LensOnBoard;
  readonly by: Lens['mount']['by'];
  readonly side: Lens['mount']['side'];
  readonly barrel: Barrel;
  readonly flange: LensFlange | null;
  /** The printed clamp: its flange and how far its lugs reach from the axis. */
  readonly clamp: {
    readonly flangeDiameter: number;
    readonly radius: number;
    readonly length: number;
    readonly bore: number;
    readonly screwPlaces: readonly Point[];
  } | null;
  /** Tangent of half the field that the lens must see, for a lens that stands behind the board's face. */
  readonly fieldTangent: number;
  readonly light: LightThrough;
  /** Side of the accessory frame that is glued on it; null where nothing hangs ahead of the lens. */
  readonly frame: Figure | null;
  /** The panel that is there already; null where it follows the lens. */
  readonly panel: StandingPanel | null;
}

/** The light that leaves the lens for the film, all distances from the lens seat towards the film. */
export interface LightThrough {
  /** Rims that it comes from: the rear of the barrel, and the exit pupil. */
  readonly sources: readonly { readonly behindSeat: number; readonly radius: number }[];
  /** The back's opening at the closest position, to its corners. */
  readonly gate: { readonly behindSeat: number; readonly radius: number };
}

/** Board over the opening on each side: the land that light meets under it. */
const BOARD_LAND = 14;
/** Plug in the opening, each side. */
const PLUG_PLAY = 0.3;
/** Wood that is drawn round a hole however wide; a choice of ours. */
const LEAST_FRAME = 4;
/** Least opening: two dowels beside the hole. */
const LEAST_OPENING = 64;
/** A retaining ring is taken as so much wider than its thread, each side. */
const RING_RIM = 5;
/** Round the cone of light, each side. */
const LIGHT_ROOM = 1;
/** A screw's middle to the plug's edge: two diameters of M4 or of a wood screw of 3 mm, or the sheet's thickness (section 14). */
const screwToEdge = (by: LensBoard['by'], ply: number): number => Math.max(by === 'clamp' ? 8 : 6, ply);
export const OVERLAP = 6;
/** What the board gives a lens to pass when it is taken out: common practice, no source. */
export const PASSING = 2;

const CLAMP_SHAPE = 'the farthest of its flange, lugs and pinch bolts';
const boardLand = constant('l_b', 'lens board over its opening, each side', BOARD_LAND);
const leastOpening = constant('w_l', 'least opening for the lens board', LEAST_OPENING);
const plugPlay = constant('y_p', 'play of the plug in its opening, each side', PLUG_PLAY);
const overlap = constant('o_r', 'overlap of a retainer over the board', OVERLAP);
const rim = constant('r_r', 'retaining ring beyond its thread, each side', RING_RIM);
const plugPlies = constant('k', 'plies of the plug', 1, 'the construction of the lens board', 'count');

/** Seat, hole, opening, plug and board, from the lens and its mount; the plug is one ply. */
export function sizeLensBoard(given: LensBoardGiven): SizedLensBoard {
  const { wood, by, side, barrel, flange, clamp, fieldTangent } = given;
  const t = wood.ply.thickness;
  const inside = side === 'inside';
  const seatZ = seatOf(given);
  const seat = seatZ.value;
  const ring = (inside ? barrel.frontDiameter : barrel.diameter) + 2 * RING_RIM;
  const shoulder = inside ? barrel.diameter : barrel.frontDiameter;
  const disc = by === 'clamp' ? (clamp?.flangeDiameter ?? 0) : by === 'flange' ? (flange?.diameter ?? 0) : ring;
  const behind = Math.max(barrel.diameter, barrel.rearDiameter);
  // a lens whose front rim stands back of the board's face looks through the hole as through a tunnel
  const recess = inside && by !== 'ring' ? Math.max(0, 2 * t - barrel.front) : 0;
  const passing =
    by === 'ring' ? (inside ? barrel.frontDiameter : behind) + 0.3 : (inside ? barrel.frontDiameter : behind) + 1;
  const tunnel = inside ? barrel.frontDiameter + 2 * recess * fieldTangent : 0;
  // a ring holds the board between itself and the lens's shoulder: one of them lies inside, the other in front
  const discInFront =
    by === 'ring' ? (inside ? ring : shoulder) : inside ? 0 : Math.max(disc, 2 * (clamp?.radius ?? 0), shoulder);
  const insideWidest = widest('d_i', 'widest thing on the inside of the lens board', claimsInside(given));
  // the rear faces of board and plug stand at −t and 0
  const lit = (z: number) => (inside || by === 'ring' ? 0 : 2 * (lightAt(given.light, z - seat) + LIGHT_ROOM));
  const hole = Math.max(passing, tunnel, lit(-t));
  const plugHole = Math.max(hole, lit(0));
  const clampRadius = by === 'clamp' && inside ? (clamp?.radius ?? 0) : 0;
  const screws =
    by === 'clamp'
      ? { places: clamp?.screwPlaces ?? [], hole: 4.5, through: true }
      : {
          places: by === 'flange' && flange ? onCircle(flange.screws, flange.boltCircle) : [],
          hole: 2,
          through: false,
        };
  const inPlug = screws.through || inside ? screws.places : [];
  const outermost = Math.max(0, ...inPlug.flatMap(({ x, y }) => [x, y].map(Math.abs)));
  const toEdge = constant('x_e', 'from a screw to the edge of the plug', screwToEdge(by, t));
  const hollow = measured('d_p', 'hole in the plug', plugHole, 'what of the lens passes it, and the light behind it');
  const spread = measured('x_s', 'outermost screw in the plug', outermost, 'the places of the screws');
  const front = measured('d_d', 'disc in front of the board', discInFront, 'clamp, flange or ring in front');
  const onBoard: readonly [Reason, ...Reason[]] = [
    claim('the hole in the plug and wood round it', formula`${hollow} + 10`, PRACTICE),
    // where screws enter the plug it needs wood beyond them
    ...(outermost > 0
      ? [claim('the screws in the plug, and wood beyond them', formula`2 (${spread} + ${toEdge} + ${plugPlay})`)]
      : []),
    claim('two dowels beside the hole', formula`${leastOpening}`, PRACTICE),
    claim(
      'the disc in front, which must lie between the retainers',
      formula`${front} + 2 ${overlap} + 4 - 2 ${boardLand}`,
    ),
    ...(given.frame
      ? [
          claim(
            'the accessory frame, which must lie between the retainers',
            formula`${given.frame} + 2 ${overlap} + 2 - 2 ${boardLand}`,
            PRACTICE,
          ),
        ]
      : []),
  ];
  const opening =
    openingOf(given.panel) ??
    widest('w_o', 'side of the opening for the lens board', [
      claim(
        'what must pass it when the board is taken out, and room round that',
        formula`${insideWidest} + 4`,
        PRACTICE,
      ),
      ...onBoard,
    ]);
  const boardAsks = widest('w_o', 'side of the opening that the lens board asks for', onBoard);
  const plug = opening.value - 2 * PLUG_PLAY;
  const board = reckoned('w_b', 'side of the lens board', formula`${opening} + 2 ${boardLand}`);
  const figures = {
    opening,
    seat: seatZ,
    radiusBehindPanel: widest('R', 'greatest radius of what is behind the panel', [
      claim('the widest thing on the inside of the board', formula`${insideWidest} / 2`),
      ...(by === 'clamp' && inside
        ? [claim('the clamp', formula`${measured('R_c', 'radius of the clamp', clampRadius, CLAMP_SHAPE)}`)]
        : []),
    ]),
    reachBehindPanel: reckoned(
      'z_r',
      'z of the rear rim of the lens',
      formula`${seatZ} + ${given.figures.grip} + ${given.figures.rear}`,
    ),
    board,
  };
  return {
    wood,
    by,
    side,
    seat,
    // in a panel whose opening is too small for the lens the plug still is a frame, so that all else can be told
    hole: Math.min(hole, plug - LEAST_FRAME),
    plugHole: Math.min(plugHole, plug - LEAST_FRAME),
    opening: opening.value,
    boardAsks,
    panel: given.panel,
    needs: Math.max(boardAsks.value, insideWidest.value + PASSING),
    discInFront,
    plug,
    board: board.value,
    clampRoom:
      clamp && barrel.grip + barrel.rear < clamp.length ? clamp.bore / 2 - lightAt(given.light, clamp.length) : null,
    screws,
    dowels: dowelsIn(plug, screws),
    overlap: OVERLAP,
    draw: OVERLAP + 1,
    claims: {
      seat,
      radiusBehindPanel: figures.radiusBehindPanel.value,
      reachBehindPanel: figures.reachBehindPanel.value,
      board: board.value,
    },
    figures,
  };
}

/** What cannot be sawn is not cut: all else is told of the nearest opening that can. */
function openingOf(panel: StandingPanel | null): Figure | null {
  if (panel === null) return null;
  const { asked, built, most } = panel;
  if (asked.value > most) return measured(asked.symbol, asked.what, most, 'the widest that the panel has wood for');
  if (built !== null && asked.value < built) return measured(asked.symbol, asked.what, built, 'as it was built');
  return asked;
}

/** Where the lens seat stands: at the panel from inside, ahead of board and plug from the front. */
function seatOf({ by, side, figures: { ply: t, clampLength } }: LensBoardGiven): Figure {
  const what = 'z of the lens seat';
  if (side === 'inside') return reckoned('z_seat', what, formula`(${plugPlies} - 1) ${t}`);
  if (by === 'clamp' && clampLength) return reckoned('z_seat', what, formula`-2 ${t} - ${clampLength}`);
  return reckoned('z_seat', what, formula`-2 ${t}`);
}

/** What is wide on the inside: the barrel, and what bears on the board from there. */
function claimsInside({ by, side, figures }: LensBoardGiven): readonly [Reason, ...Reason[]] {
  const { diameter, rearDiameter, disc } = figures;
  const inside = side === 'inside';
  return [
    claim('the barrel', formula`${diameter}`),
    claim('the rear of the barrel', formula`${rearDiameter}`),
    ...(by !== 'ring' && inside && disc ? [claim(disc.what, formula`${disc}`)] : []),
    ...(by === 'ring' && !inside
      ? [claim('the ring that is tightened from inside', formula`${diameter} + 2 ${rim}`)]
      : []),
  ];
}

export interface Dowel extends Point {
  readonly diameter: number;
}

/** From the plug's edges to a dowel's middle, and the wood that must stay between a dowel and a screw. */
const DOWEL_TO_EDGE = 7;
const DOWEL_WEB = 3;

/** The thin dowel stands so far off the diagonal: turned over it, the plug does not go on. */
const ASKEW = 2;

/** A thick and a thin dowel at opposite corners of the plug, near the diagonal that the screws leave free. */
function dowelsIn(plug: number, { places, hole, through }: LensBoard['screws']): readonly Dowel[] {
  const d = plug / 2 - DOWEL_TO_EDGE;
  const pairs = [1, -1].map((sign) => [
    { x: d, y: -sign * d, diameter: 6 },
    { x: ASKEW - d, y: sign * d, diameter: 5 },
  ]);
  const free = pairs.find((pair) =>
    pair.every(({ x, y, diameter }) =>
      places.every((s) => (s.x - x) ** 2 + (s.y - y) ** 2 >= ((diameter + hole) / 2 + DOWEL_WEB) ** 2),
    ),
  );
  return free ?? (through ? [] : (pairs[0] ?? []));
}

/** Half width of the light at a distance behind the lens seat, from whichever rim it is widest; 0 ahead of the rims. */
function lightAt({ sources, gate }: LightThrough, behindSeat: number): number {
  const reach = sources
    .filter((source) => source.behindSeat < behindSeat)
    .map(
      (source) =>
        source.radius +
        ((gate.radius - source.radius) * (behindSeat - source.behindSeat)) / (gate.behindSeat - source.behindSeat),
    );
  return Math.max(0, ...reach);
}

/** Holes of the lens's own flange, the first one up. */
const onCircle = (count: number, diameter: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const turn = Math.PI / 2 + (2 * Math.PI * i) / count;
    return { x: (diameter / 2) * Math.cos(turn), y: (diameter / 2) * Math.sin(turn) };
  });
