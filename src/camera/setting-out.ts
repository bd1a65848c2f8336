import { type Claimed, claim, derived, narrowest, widest } from './claim.js';
import { constant, type Figure, type Formula, formula, PRACTICE, type Reason, reckoned, told } from './figure.js';

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
  /** The box between the two; null where two boxes do. */
  readonly middle: MiddleSetOut | null;
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
  /** What a third box would reach; null where there is one, or the boxes stand already. */
  readonly reachableThree: () => number | null;

  readonly frontLength: Claimed;
  readonly rearLength: Claimed;
  readonly overlapFarthest: number;

  /** B: side of the square back. */
  readonly backSide: Claimed;
  /** h_a: height of the axis above the tailboard. */
  readonly axisHeight: Claimed;
  readonly soleThickness: number;
  readonly soleWidth: Claimed;
  /** Sole ahead of the front face of the standard. */
  readonly soleAhead: number;
  readonly tailboardLength: Claimed;
  readonly tailboardStart: number;
  /** What stands above as plain numbers, as figures that can be explained. */
  readonly figures: {
    readonly clearance: Figure;
    readonly travel: Figure;
    readonly reserve: Figure;
    readonly slack: Figure;
    readonly reachable: Figure;
    readonly reachableOtherSide: Figure;
    readonly overlapFarthest: Figure;
    /** Left between the lens and the walls of the rear box, free air deducted: below 0 it does not pass inside. */
    readonly roomRoundLens: Figure;
  };
}

/**
 * The middle box, and how far its two joints are drawn. Which of them opens first is up to the felt: each has a stop, and
 * the two runs together are the whole slide with its reserve.
 */
export interface MiddleSetOut {
  readonly inside: Claimed;
  readonly outside: Claimed;
  /** From its front edge to its frame. */
  readonly length: Claimed;
  /** Overlap with the front box that is needed. */
  readonly overlapRequired: Claimed;
  /** How far the rear box is drawn out of it before the stop takes it along. */
  readonly rearRun: Figure;
  /** How far it is drawn out of the front box at most. */
  readonly ownRun: Figure;
  /** Left at the stops. */
  readonly overlapInFront: Figure;
  readonly overlapOfRear: Figure;
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

/** The same as figures: what the rod is given. */
export type LensClaimFigures = { readonly [K in keyof LensClaims]: Figure };

export interface SettingOutGiven {
  /** Where there is a middle box. */
  readonly boxes?: 3 | undefined;
  readonly ply: Figure;
  readonly clearance: Figure;
  readonly railPlay: Figure;
  readonly focalLength: Figure;
  readonly flangeDistance: Figure;
  readonly nearest: Figure;
  readonly farthestFocus: Figure;
  readonly pastInfinity: Figure;
  readonly pastNearest: Figure | null;
  /** Of boxes that stand: how wide the rear one is inside, what they keep free behind the panel, and z of the holder seat at the end of the slide. */
  readonly asBuilt?: { readonly rearInside: Figure; readonly panelDead: Figure; readonly end: Figure } | undefined;
  readonly lens: LensClaimFigures;
  /** The same lens mounted from the other side of the board. */
  readonly otherSide: LensClaimFigures;
  readonly imageLong: Figure;
  /** T*: effective depths of all holders. */
  readonly depths: readonly Depth[];
  readonly glassDepth: Figure;
  readonly holderWidth: Figure;
  readonly closedExtent: Figure;
}

/** How deep something lies behind the holder seat, and what. */
interface Depth {
  readonly of: string;
  readonly depth: Figure;
}

/** Image to opening of the back [P]. */
export const OPENING_MARGIN = 2;
const RING_SLIP = 0.3;
export const BACK_GAP = 2;
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
const SOLE_AHEAD = 90;
export const SOLE_BEHIND = 45;
export const END_STOP = 10;
/** Batten across the front end of the sole, on which a middle box is drawn along. */
export const BATTEN = 14;
export const TAILBOARD_START = -20;
/** Play of the holder in its well, each side. */
export const WELL_PLAY = 0.4;

const margin = constant('g', 'opening of the back beyond the image, each side', OPENING_MARGIN);
const slip = constant('e', 'slip of the turning ring in the standard, each side', RING_SLIP);
const freeAir = constant('a', 'free air round what passes inside the rear box', FREE_AIR);
const panelGap = constant('g_p', 'gap between the rear box and what stands behind the panel', PANEL_GAP);
const backGap = constant('g_b', 'gap from the front box to the standard at the closest position', BACK_GAP);
const felt = constant('b', 'width of a felt band', FELT_WIDTH);
const land = constant('l', 'land of the light trap round the rear box', LAND);
const wellPlay = constant('y', 'play of the holder in its well, each side', WELL_PLAY);
const ribHeight = constant('h_rib', 'height of the ribs under the front box', RIB_HEIGHT);
const railToLeg = constant('g_r', 'gap from a rail to the leg beside it', RAIL_TO_LEG);
const soleBehind = constant('l_s', 'sole behind the front face of the standard', SOLE_BEHIND);
const endStop = constant('l_e', 'end stop across the rear', END_STOP);
const start = constant('z_t', 'where the tailboard begins, ahead of the panel', TAILBOARD_START);

/** Solves the shared lengths; never refuses, so that every finding can be told at once. */
export function setOut(given: SettingOutGiven): SettingOut {
  const { ply: t, clearance: c, focalLength: f, lens, imageLong, depths, glassDepth, nearest, railPlay } = given;
  const ringWidth = reckoned('r', 'least width of the turning ring', formula`max(6, 1.5 ${t})`, { source: PRACTICE });

  // Across the axis.
  const { asBuilt } = given;
  const rearInside = asBuilt
    ? derived('W_ri', REAR_INSIDE, 'the rear box as it was built', formula`${asBuilt.rearInside}`)
    : widest('W_ri', REAR_INSIDE, [
        claim(
          'the long side of the image, its margin, and the turning ring round it',
          formula`${imageLong} + 2 (${margin} + ${slip} + ${ringWidth})`,
        ),
        claim(
          'the front panel that must carry the lens board and its retainers',
          // two walls and two gaps more of the front box where there is a middle one
          given.boxes === 3
            ? formula`${lens.board} + 28.6 - 6 ${t} - 4 ${c}`
            : formula`${lens.board} + 28.6 - 4 ${t} - 2 ${c}`,
        ),
      ]);
  const rearOutside = derived(
    'W_ro',
    'rear box, outside',
    'rear box inside and two walls',
    formula`${rearInside} + 2 ${t}`,
  );
  const across = given.boxes === 3 ? middleAcross(rearOutside, t, c) : null;
  const frontInside = derived(
    'W_fi',
    'front box, inside',
    `${across ? 'middle' : 'rear'} box outside and the clearance on both sides`,
    formula`${across?.outside ?? rearOutside} + 2 ${c}`,
  );
  const frontOutside = derived(
    'W_fo',
    'front box, outside',
    'front box inside and two walls',
    formula`${frontInside} + 2 ${t}`,
  );

  // Along the axis.
  const glass: Depth = { of: 'the bare glass', depth: glassDepth };
  const [firstDepth = glass, ...otherDepths] = depths;
  const behindSeat: readonly [Depth, ...Depth[]] = [firstDepth, ...otherDepths, glass];
  const depthClaims = ofEach(behindSeat, ({ of, depth }) =>
    claim(of.startsWith('the ') ? of : `the ${of}`, formula`${depth}`),
  );
  const greatest = widest('T_max', 'greatest depth behind the holder seat', depthClaims);
  const least = narrowest('T_min', 'least depth behind the holder seat', depthClaims);
  const stack = derived(
    'q',
    'from the holder seat forward to the front face of the standard',
    'the standard and the back plate',
    formula`2 ${t}`,
  );
  const roomRoundLens = reckoned(
    'a_R',
    'room left round the lens inside the rear box',
    formula`${rearInside} / 2 - (${lens.radiusBehindPanel} + ${freeAir})`,
    { source: PRACTICE },
  );
  const passes = lens.radiusBehindPanel.value + FREE_AIR <= rearInside.value / 2;
  const panelDead = asBuilt
    ? derived('d_f', DEAD_DEPTH, 'the rear box as it was built', formula`${asBuilt.panelDead}`)
    : deadDepth(lens, passes, t);
  const overlapRequired = overlapOf('O', 'overlap of the boxes that is needed', 'rear', rearOutside);
  const overlapInFront =
    across && overlapOf('O_m', 'overlap of the middle box in the front box that is needed', 'middle', across.outside);
  const { closest, farthest } = seatClaims(given, behindSeat);
  const most = asBuilt
    ? reckoned(
        's_most',
        'z of the holder seat, as far as boxes and tailboard let it as they were built',
        overlapInFront
          ? formula`min(${asBuilt.end}, 3 ${closest} - 2 ${stack} - 2 ${panelDead} - 3 ${backGap} - ${t} - ${overlapRequired} - ${overlapInFront})`
          : formula`min(${asBuilt.end}, 2 ${closest} - ${stack} - ${panelDead} - ${backGap} - ${overlapRequired})`,
        { source: SLIDE },
      )
    : null;
  const reach = (symbol: string, what: string, from: LensClaimFigures): Figure => {
    if (most)
      return reckoned(symbol, what, formula`(${most} + ${least} - ${from.seat} - ${given.flangeDistance}) / ${f}`, {
        unit: 'magnification',
        source: SLIDE,
      });
    const inside = from.radiusBehindPanel.value + FREE_AIR <= rearInside.value / 2;
    const { flangeDistance: V, pastInfinity: p, farthestFocus: far } = given;
    const dead = deadDepth(from, inside, t);
    // where no infinity is asked, both boxes grow by the extension at the farthest focus
    if (overlapInFront) {
      // two joints share the draw: the front box is shorter by the frame of the middle box and the gap ahead of it
      const three = formula`(2 (${from.seat} + ${V}) - 3 ${p} - 3 ${greatest} + ${least} - 2 ${stack} - 2 ${dead} - 3 ${backGap} - ${t} - ${overlapRequired} - ${overlapInFront} + 3 ${f} ${far}) / ${f}`;
      return reckoned(symbol, what, three, { unit: 'magnification', source: SLIDE });
    }
    const by =
      far.value === 0
        ? formula`(${from.seat} + ${V} - 2 ${p} - 2 ${greatest} + ${least} - ${stack} - ${dead} - ${backGap} - ${overlapRequired}) / ${f}`
        : formula`(${from.seat} + ${V} - 2 ${p} - 2 ${greatest} + ${least} - ${stack} - ${dead} - ${backGap} - ${overlapRequired} + 2 ${f} ${far}) / ${f}`;
    return reckoned(symbol, what, by, { unit: 'magnification', source: SLIDE });
  };
  const reachable = reach('m_reach', 'nearest focus that the boxes could reach', lens);
  const slack = reckoned('f_s', 'draw to spare beyond the nearest focus', formula`${f} (${reachable} - ${nearest})`, {
    source: SLIDE,
  });
  const reserve =
    given.pastNearest ??
    reckoned('p_n', 'run past the nearest', formula`max(0, min(${slack}, 0.05 ${f}))`, { source: PRACTICE });
  const travel = reckoned('s_t', 'travel of the holder seat', formula`${farthest} - ${closest}`);
  const rearLength = derived(
    'L_r',
    'rear box, length',
    'the closest seat, less the stack and the free depth behind the panel',
    formula`${closest} - ${stack} - ${panelDead}`,
    SLIDE,
  );
  const frontLength = derived(
    'L_f',
    'front box, length behind the panel',
    overlapInFront
      ? 'the closest seat, less the stack, the frame of the middle box and the gaps on both sides of it'
      : 'the closest seat, less the stack and the gap to the standard',
    overlapInFront ? formula`${closest} - ${stack} - 2 ${backGap} - ${t}` : formula`${closest} - ${stack} - ${backGap}`,
    SLIDE,
  );
  const middle =
    across && overlapInFront
      ? middleAlong({
          ...across,
          closest,
          stack,
          panelDead,
          ply: t,
          travel,
          reserve,
          overlapRequired,
          overlapInFront,
          frontLength,
        })
      : null;
  // of three boxes the joint that has less
  const overlapFarthest = middle
    ? middle.overlapOfRear.value < middle.overlapInFront.value
      ? middle.overlapOfRear
      : middle.overlapInFront
    : reckoned(
        'O_far',
        'overlap of the boxes at full draw',
        formula`${frontLength} + ${rearLength} - (${farthest} - ${stack})`,
        { source: SLIDE },
      );

  // The back and the foot.
  const backSide = widest('B', 'side of the square back', [
    claim('the rear box and the land of the light trap round it', formula`${rearOutside} + 2 ${land}`, PRACTICE),
    claim('the closed end of the longest holder and its fence', formula`2 (${given.closedExtent} + ${wellPlay} + 10)`),
    claim(
      'the widest holder, its fences, and the turn-buttons that pass them',
      // play 0.4, fence 4, air 0.5, the arm's corner at 45° (19 + 6)/√2, pivot 9: on both sides
      formula`${given.holderWidth} + 63.2`,
    ),
    // round a middle box the front box may stand out beyond the land
    ...(across
      ? [
          claim(
            'the legs of the front box, round which the tailboard needs wood',
            formula`${frontOutside} + 8`,
            PRACTICE,
          ),
        ]
      : []),
  ]);
  const soleThickness = reckoned('t_s', 'thickness of the sole', formula`2 ${t}`);
  const axisHeight = widest('h_a', 'height of the optical axis above the tailboard', [
    claim(
      'the back that must clear the keepers when it turns',
      formula`${backSide} / 2 + ${soleThickness} + ${t} + 3.3`,
    ),
    claim(
      'the ribs that must pass under the front box',
      formula`${frontOutside} / 2 + ${ribHeight} + ${soleThickness} + 2`,
    ),
  ]);
  const rail = told('b_r', 'width of a rail', railWidth(t.value), () => formula`max(16, 2 ${t})`, { source: PRACTICE });
  const soleWidth = derived(
    'b_s',
    'width of the sole',
    'front box inside, less the rails, their gap to the legs and their play',
    formula`${frontInside} - 2 (${rail} + ${railToLeg} + ${railPlay})`,
  );
  const tailboardLength = derived(
    'L_t',
    'length of the tailboard',
    'the sole’s rear edge at the end of the reserve, and the end stop behind it',
    formula`${farthest} + ${reserve} - ${stack} + ${soleBehind} + ${endStop} - ${start}`,
  );
  const reachableOtherSide = reach(
    'm_other',
    'nearest focus with the lens mounted from the other side of the board',
    given.otherSide,
  );

  return {
    ply: t.value,
    clearance: c.value,
    ringWidth: ringWidth.value,
    openingMargin: OPENING_MARGIN,
    ringSlip: RING_SLIP,
    rearInside,
    rearOutside,
    middle,
    frontInside,
    frontOutside,
    panelDead,
    stackBehindBoxes: stack,
    overlapRequired,
    backGap: BACK_GAP,
    passesInsideRearBox: passes,
    closest,
    farthest,
    travel: travel.value,
    pastInfinity: given.pastInfinity.value,
    reserve: reserve.value,
    slack: slack.value,
    reachable: reachable.value,
    reachableOtherSide: reachableOtherSide.value,
    limitedBy: most && asBuilt && asBuilt.end.value <= most.value ? END_AS_BUILT : overlapRequired.because,
    reachableThree: () => (given.boxes === 3 || asBuilt ? null : setOut({ ...given, boxes: 3 }).reachable),
    frontLength,
    rearLength,
    overlapFarthest: overlapFarthest.value,
    backSide,
    axisHeight,
    soleThickness: soleThickness.value,
    soleWidth,
    soleAhead: middle ? Math.max(SOLE_AHEAD, middle.rearRun.value + BACK_GAP + t.value + BATTEN) : SOLE_AHEAD,
    tailboardLength,
    tailboardStart: TAILBOARD_START,
    figures: { clearance: c, travel, reserve, slack, reachable, reachableOtherSide, overlapFarthest, roomRoundLens },
  };
}

const SLIDE = 'derived, from the three conditions of the slide';

const middleAcross = (rearOutside: Claimed, t: Figure, c: Figure) => {
  const inside = derived(
    'W_mi',
    'middle box, inside',
    'rear box outside and the clearance on both sides',
    formula`${rearOutside} + 2 ${c}`,
  );
  return {
    inside,
    outside: derived('W_mo', 'middle box, outside', 'middle box inside and two walls', formula`${inside} + 2 ${t}`),
  };
};

const overlapOf = (symbol: string, what: string, box: 'rear' | 'middle', outside: Claimed): Claimed =>
  widest(symbol, what, [
    claim('the least overlap', formula`30`, PRACTICE),
    claim('two felt bands and room between them', formula`2 ${felt} + 5`),
    claim(`a fifth of the ${box} box’s width, so that it does not wobble`, formula`${outside} / 5`, PRACTICE),
  ]);

interface MiddleGiven extends Pick<MiddleSetOut, 'inside' | 'outside'> {
  readonly closest: Figure;
  readonly stack: Figure;
  readonly panelDead: Figure;
  readonly ply: Figure;
  readonly travel: Figure;
  readonly reserve: Figure;
  readonly overlapRequired: Claimed;
  readonly overlapInFront: Claimed;
  readonly frontLength: Figure;
}

/** Both joints keep as much more than they must: what is left over is shared. */
function middleAlong(given: MiddleGiven): MiddleSetOut {
  const {
    closest,
    stack,
    panelDead,
    ply: t,
    travel,
    reserve,
    overlapRequired: ofRear,
    overlapInFront: inFront,
  } = given;
  const length = derived(
    'L_m',
    'middle box, length to its frame',
    'the closest seat, less the stack, the gap to the standard, the frame, and the free depth behind the panel',
    formula`${closest} - ${stack} - ${backGap} - ${t} - ${panelDead}`,
    SLIDE,
  );
  const whole = reckoned('x', 'the slide with its reserve', formula`${travel} + ${reserve}`);
  const rearRun = reckoned(
    'x_r',
    'how far the rear box is drawn out of the middle box before that comes along',
    formula`max(0, min(${whole}, (${whole} + ${backGap} + ${t} - ${ofRear} + ${inFront}) / 2))`,
    { source: SLIDE },
  );
  const ownRun = reckoned(
    'x_m',
    'how far the middle box is drawn out of the front box',
    formula`${whole} - ${rearRun}`,
    {
      source: SLIDE,
    },
  );
  return {
    inside: given.inside,
    outside: given.outside,
    length,
    overlapRequired: inFront,
    rearRun,
    ownRun,
    overlapInFront: reckoned(
      'O_1',
      'overlap of front and middle box at the stop',
      formula`${given.frontLength} - ${panelDead} - ${ownRun}`,
      { source: SLIDE },
    ),
    overlapOfRear: reckoned(
      'O_2',
      'overlap of middle and rear box at the stop',
      formula`${length} + ${t} - ${rearRun}`,
      {
        source: SLIDE,
      },
    ),
  };
}

/** Seat positions at both ends: the deepest thing claims the closest, the shallowest the farthest. */
function seatClaims(
  { lens, flangeDistance: V, focalLength: f, nearest, farthestFocus, pastInfinity: p }: SettingOutGiven,
  depths: readonly [Depth, ...Depth[]],
): Pick<SettingOut, 'closest' | 'farthest'> {
  const infinity = farthestFocus.value === 0;
  const near = ({ of, depth }: Depth): Reason =>
    claim(`the nearest focus with ${of}`, formula`${lens.seat} + ${V} + ${f} ${nearest} - ${depth}`);
  const far = ({ of, depth }: Depth): Reason =>
    claim(
      `${infinity ? 'infinity' : 'the farthest focus'} with ${of}, and the run past it`,
      infinity
        ? formula`${lens.seat} + ${V} - ${p} - ${depth}`
        : formula`${lens.seat} + ${V} + ${f} ${farthestFocus} - ${p} - ${depth}`,
    );
  return {
    closest: narrowest('s_min', 'z of the holder seat, closest', ofEach(depths, far)),
    farthest: widest('s_max', 'z of the holder seat, farthest', ofEach(depths, near)),
  };
}

const ofEach = ([first, ...others]: readonly [Depth, ...Depth[]], make: (depth: Depth) => Reason) =>
  [make(first), ...others.map(make)] as const;

/** What limits a slide that stands, where the boxes would let it go farther. */
export const END_AS_BUILT = 'the end of the slide as it was built';

const REAR_INSIDE = 'rear box, inside';

/** Side of the widest lens board that a front panel of this width carries, with its retainers beside it. */
export const boardOnPanel = (panel: number): number => panel - 28.6;

const DEAD_DEPTH = 'depth kept free behind the front panel';

/** d_f: only the corner strips stay behind the panel where the lens passes inside the rear box. */
function deadDepth(lens: LensClaimFigures, passes: boolean, ply: Figure): Claimed {
  const what = DEAD_DEPTH;
  const strips: Formula = formula`${ply} + ${panelGap}`;
  return passes
    ? derived('d_f', what, 'the corner strips behind the panel; the lens passes inside the rear box', strips)
    : widest('d_f', what, [
        claim(
          'the lens and its mount, too wide to pass inside the rear box',
          formula`${lens.reachBehindPanel} + ${panelGap}`,
        ),
        claim('the corner strips behind the panel', strips),
      ]);
}
