import { type Claim, type Claimed, derived, narrowest, widest } from './claim.js';

/**
 * The rod: every length that more than one object needs, set out once from one datum (z = 0, the inner face of the
 * front panel; x = y = 0, the axis). Formulas: sections 6 to 9 of the project's description of the camera; all of them
 * are derived there, the figures marked [P] are common practice, no source.
 */
export interface SettingOut {
  readonly ply: number;
  readonly clearance: number;
  /** Least width of the turning ring, r. */
  readonly ringWidth: number;
  /** The back's opening stands this far outside the image, g. */
  readonly openingMargin: number;
  /** Slip of the turning ring on each side, e. */
  readonly ringSlip: number;

  readonly rearInside: Claimed;
  readonly rearOutside: Claimed;
  readonly frontInside: Claimed;
  readonly frontOutside: Claimed;

  /** d_f: kept free behind the front panel. */
  readonly panelDead: Claimed;
  /** q: from the holder seat forward to the front face of the standard. */
  readonly stackBehindBoxes: Claimed;
  /** O */
  readonly overlapRequired: Claimed;
  /** g_b */
  readonly backGap: number;
  readonly passesInsideRearBox: boolean;

  /** Holder seat positions, z. */
  readonly closest: Claimed;
  readonly farthest: Claimed;
  readonly travel: number;
  readonly pastInfinity: number;
  /** p_n: run past the nearest. */
  readonly reserve: number;
  readonly slack: number;
  readonly reachable: number;
  readonly reachableOtherSide: number;
  readonly limitedBy: string;

  readonly frontLength: Claimed;
  readonly rearLength: Claimed;
  readonly overlapFarthest: number;

  /** B: side of the square back. */
  readonly backSide: Claimed;
  /** h_a: height of the axis above the tailboard. */
  readonly axisHeight: Claimed;
  readonly soleThickness: number;
  readonly soleWidth: Claimed;
  readonly tailboardLength: Claimed;
  readonly tailboardStart: number;
}

/** What lies in front, on the lens's side. */
export interface LensClaims {
  readonly seat: number;
  /** Greatest radius of what is behind the panel. */
  readonly radiusBehindPanel: number;
  /** How far behind the panel the lens and its mount reach. */
  readonly reachBehindPanel: number;
  /** Side of the lens board. */
  readonly board: number;
}

export interface SettingOutGiven {
  readonly ply: number;
  readonly clearance: number;
  readonly railPlay: number;
  readonly focalLength: number;
  readonly flangeDistance: number;
  readonly nearest: number;
  readonly farthestFocus: number;
  readonly pastInfinity: number;
  readonly pastNearest: number | null;
  readonly lens: LensClaims;
  /** The same lens mounted from the other side of the board. */
  readonly otherSide: LensClaims;
  readonly imageLong: number;
  /** T*: effective depths of all holders. */
  readonly depths: readonly { readonly of: string; readonly depth: number }[];
  readonly glassDepth: number;
  readonly holderWidth: number;
  readonly closedExtent: number;
}

/** Image to opening of the back [P]. */
export const OPENING_MARGIN = 2;
const RING_SLIP = 0.3;
const BACK_GAP = 2;
const PANEL_GAP = 2;
/** Free air round what passes inside the rear box [P]. */
const FREE_AIR = 3;
/** Two felt bands and room between them. */
export const FELT_WIDTH = 15;
const LAND = 18;
const RIB_HEIGHT = 25;
/** Rails: 16, and twice the sheet where it is thicker than 8, for the keepers’ screws in their middle. */
export const railWidth = (ply: number): number => Math.max(16, 2 * ply);
export const RAIL_TO_LEG = 2;
/** Sole ahead of and behind the front face of the standard. */
export const SOLE_AHEAD = 90;
export const SOLE_BEHIND = 45;
export const END_STOP = 10;
const TAILBOARD_START = -20;
/** Play of the holder in its well, each side. */
export const WELL_PLAY = 0.4;

/** Solves the shared lengths; never refuses, so that every finding can be told at once. */
export function setOut(given: SettingOutGiven): SettingOut {
  const { ply: t, clearance: c, focalLength: f, flangeDistance: V, lens, imageLong, depths, glassDepth } = given;
  const ringWidth = Math.max(6, 1.5 * t);

  // Across the axis.
  const rearInside = widest([
    {
      because: 'the long side of the image, its margin, and the turning ring round it',
      value: imageLong + 2 * (OPENING_MARGIN + RING_SLIP + ringWidth),
    },
    {
      because: 'the front panel that must carry the lens board and its retainers',
      value: lens.board + 28.6 - 4 * t - 2 * c,
    },
  ]);
  const rearOutside = derived('rear box inside and two walls', rearInside.value + 2 * t);
  const frontInside = derived('rear box outside and the clearance on both sides', rearOutside.value + 2 * c);
  const frontOutside = derived('front box inside and two walls', frontInside.value + 2 * t);

  // Along the axis.
  const glass: Depth = { of: 'the bare glass', depth: glassDepth };
  const [firstDepth = glass, ...otherDepths] = depths;
  const behindSeat: readonly [Depth, ...Depth[]] = [firstDepth, ...otherDepths, glass];
  const greatest = Math.max(...behindSeat.map(({ depth }) => depth));
  const least = Math.min(...behindSeat.map(({ depth }) => depth));
  const stack = derived('the standard and the back plate', 2 * t);
  const passes = lens.radiusBehindPanel + FREE_AIR <= rearInside.value / 2;
  const panelDead = deadDepth(lens, passes, t);
  const overlapRequired = widest([
    { because: 'the least overlap', value: 30 },
    { because: 'two felt bands and room between them', value: 2 * FELT_WIDTH + 5 },
    { because: 'a fifth of the rear box’s width, so that it does not wobble', value: rearOutside.value / 5 },
  ]);
  const reach = (claims: LensClaims): number => {
    const inside = claims.radiusBehindPanel + FREE_AIR <= rearInside.value / 2;
    const free =
      claims.seat +
      V -
      2 * given.pastInfinity -
      2 * greatest +
      least -
      stack.value -
      deadDepth(claims, inside, t).value -
      BACK_GAP -
      overlapRequired.value;
    // where no infinity is asked, both boxes grow by the extension at the farthest focus
    return (free + 2 * f * given.farthestFocus) / f;
  };
  const reachable = reach(lens);
  const slack = f * (reachable - given.nearest);
  const reserve = given.pastNearest ?? Math.max(0, Math.min(slack, 0.05 * f));
  const seats = seatClaims(given, behindSeat);
  const closest = seats.closest.value;
  const farthest = seats.farthest.value;
  const rearLength = derived(
    'the closest seat, less the stack and the free depth behind the panel',
    closest - stack.value - panelDead.value,
  );
  const frontLength = derived(
    'the closest seat, less the stack and the gap to the standard',
    closest - stack.value - BACK_GAP,
  );
  const overlapFarthest = frontLength.value + rearLength.value - (farthest - stack.value);

  // The back and the foot.
  const backSide = widest([
    { because: 'the rear box and the land of the light trap round it', value: rearOutside.value + 2 * LAND },
    {
      because: 'the closed end of the longest holder and its fence',
      value: 2 * (given.closedExtent + WELL_PLAY + 10),
    },
    {
      because: 'the widest holder, its fences, and the turn-buttons that pass them',
      // play 0.4, fence 4, air 0.5, the arm's corner at 45° (19 + 6)/√2, pivot 9: on both sides
      value: given.holderWidth + 63.2,
    },
  ]);
  const soleThickness = 2 * t;
  const axisHeight = widest([
    {
      because: 'the back that must clear the keepers when it turns',
      value: backSide.value / 2 + soleThickness + t + 3.3,
    },
    {
      because: 'the ribs that must pass under the front box',
      value: frontOutside.value / 2 + RIB_HEIGHT + soleThickness + 2,
    },
  ]);
  const soleWidth = derived(
    'front box inside, less the rails, their gap to the legs and their play',
    frontInside.value - 2 * (railWidth(t) + RAIL_TO_LEG + given.railPlay),
  );
  const tailboardLength = derived(
    'the sole’s rear edge at the end of the reserve, and the end stop behind it',
    farthest + reserve - stack.value + SOLE_BEHIND + END_STOP - TAILBOARD_START,
  );

  return {
    ply: t,
    clearance: c,
    ringWidth,
    openingMargin: OPENING_MARGIN,
    ringSlip: RING_SLIP,
    rearInside,
    rearOutside,
    frontInside,
    frontOutside,
    panelDead,
    stackBehindBoxes: stack,
    overlapRequired,
    backGap: BACK_GAP,
    passesInsideRearBox: passes,
    ...seats,
    travel: farthest - closest,
    pastInfinity: given.pastInfinity,
    reserve,
    slack,
    reachable,
    reachableOtherSide: reach(given.otherSide),
    limitedBy: overlapRequired.because,
    frontLength,
    rearLength,
    overlapFarthest,
    backSide,
    axisHeight,
    soleThickness,
    soleWidth,
    tailboardLength,
    tailboardStart: TAILBOARD_START,
  };
}

interface Depth {
  readonly of: string;
  readonly depth: number;
}

/** Seat positions at both ends: the deepest thing claims the closest, the shallowest the farthest. */
function seatClaims(
  { lens, flangeDistance: V, focalLength: f, nearest, farthestFocus, pastInfinity }: SettingOutGiven,
  depths: readonly [Depth, ...Depth[]],
): Pick<SettingOut, 'closest' | 'farthest'> {
  const [first, ...others] = depths;
  const film = lens.seat + V;
  const near = ({ of, depth }: Depth): Claim => ({
    because: `the nearest focus with ${of}`,
    value: film + f * nearest - depth,
  });
  const far = ({ of, depth }: Depth): Claim => ({
    because: `${farthestFocus === 0 ? 'infinity' : 'the farthest focus'} with ${of}, and the run past it`,
    value: film + f * farthestFocus - pastInfinity - depth,
  });
  return {
    closest: narrowest([far(first), ...others.map(far)]),
    farthest: widest([near(first), ...others.map(near)]),
  };
}

/** d_f: only the corner strips stay behind the panel where the lens passes inside the rear box. */
function deadDepth(lens: LensClaims, passes: boolean, ply: number): Claimed {
  return passes
    ? derived('the corner strips behind the panel; the lens passes inside the rear box', ply + PANEL_GAP)
    : widest([
        {
          because: 'the lens and its mount, too wide to pass inside the rear box',
          value: lens.reachBehindPanel + PANEL_GAP,
        },
        { because: 'the corner strips behind the panel', value: ply + PANEL_GAP },
      ]);
}
