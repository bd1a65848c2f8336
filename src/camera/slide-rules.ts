import { type Deepest, deepestOf, depthGain } from '../assembly/depth-gain.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import { lineDoubt } from '../statistics/line-doubt.js';
import { magnification, metres, mm, tenth } from '../units/print.js';
import type { Camera } from './camera.js';
import { inWords, upper } from './cures.js';
import type { WholeRule } from './whole-rule.js';

/** How near the slide can reach, what is kept in reserve, and what the lens costs: what the sizing alone can tell. */

/** reach-near: what two boxes can reach, what each millimetre buys, and the reach from the other side of the board. */
const reachNear: WholeRule = (design, camera) => {
  const { focus, lens } = design;
  const { settingOut: rod } = camera;
  if (rod.slack >= -ROUNDING * lens.focalLength) return [];
  const missing = -rod.slack;
  if (design.builtFor) return [tooShortAsBuilt(design, camera)];
  const gained = (more: number) => {
    const reached = rod.reachable + more / lens.focalLength;
    return reached > 0 ? ` (${magnification(reached)})` : '';
  };
  const other = otherSide(design);
  return [
    {
      ...tooShort(design, camera),
      message: [
        rod.reachable > 0
          ? `${magnification(rod.reachable)} is the nearest that every holder reaches; ${magnification(focus.nearest)} asks for ${mm(tenth(missing))} more.`
          : `${design.boxes === 3 ? 'Three' : 'Two'} boxes round this lens do not even close on infinity: ${mm(tenth(-rod.reachable * lens.focalLength))} are missing there, and ${mm(tenth(missing))} at ${magnification(focus.nearest)}.`,
        `${upper(depthGain(deepestHolder(camera), design.boxes ?? 2, missing, gained))}.`,
        design.boxes === 3
          ? `Each millimetre off what stands behind the panel brings 2 mm${gained(2)}, off an overlap 1 mm.`
          : `Each millimetre off the overlap, or off what stands behind the panel, brings 1 mm${gained(1)}.`,
        // a side that reaches less is no way out
        ...(rod.reachableOtherSide > Math.max(0, rod.reachable)
          ? [`Mounted ${other.words} the lens would reach ${magnification(rod.reachableOtherSide)}.`]
          : []),
      ].join(' '),
      hint: reachCure(design, camera),
    },
  ];
};

/** What both kinds of boxes that are too short have in common. */
const tooShort = ({ focus }: Design, { settingOut }: Camera) => ({
  rule: 'reach-near',
  level: 'error' as const,
  value: settingOut.reachable,
  limit: focus.nearest,
  unit: 'magnification',
  about: 'focus.nearest',
});

/** Boxes that stand grow no more by a shallower holder. */
function tooShortAsBuilt(design: Design, camera: Camera): Finding {
  const { focus, lens } = design;
  const { settingOut: rod } = camera;
  const other = otherSide({ lens });
  const cures = [
    ...(rod.reachable > 0 ? [`write nearest: ${proposed(rod.reachable, 'farther')}`] : []),
    ...(rod.reachableOtherSide > Math.max(0, rod.reachable) && goesInFromThere(camera)
      ? [`mount the lens ${other.words}, side: ${other.key}: it would reach ${magnification(rod.reachableOtherSide)}`]
      : []),
  ];
  return {
    ...tooShort(design, camera),
    message:
      rod.reachable > 0
        ? `In the boxes as they were built ${magnification(rod.reachable)} is the nearest that every holder reaches with this lens; ${magnification(focus.nearest)} asks for a slide ${mm(tenth(-rod.slack))} longer.`
        : `The boxes as they were built are too short for this lens: even at infinity the film would stand ${mm(tenth(-rod.reachable * lens.focalLength))} behind the end of the slide.`,
    hint: inWords(cures.length > 0 ? cures : ['leave out builtFor: this lens needs boxes of its own']),
  };
}

/** Whether the board of the other side goes into the opening of the panel as it is. */
const goesInFromThere = ({ objects: { lensBoard } }: Camera): boolean =>
  lensBoard.otherSideNeeds <= lensBoard.opening + ROUNDING;

/** reach-infinity: boxes that stand can be too long for a new lens. */
const reachFarthest: WholeRule = ({ focus, lens, builtFor }, camera) => {
  if (builtFor === undefined) return [];
  const { reachable } = camera.settingOut;
  const short = -focus.pastInfinity;
  const farthest = focus.farthest + short / lens.focalLength;
  const other = otherSide({ lens });
  return unless(short <= ROUNDING * lens.focalLength, {
    rule: 'reach-infinity',
    level: 'error',
    value: short,
    limit: 0,
    unit: 'mm',
    about: 'focus.farthest',
    message: `In the boxes as they were built the slide ends ${mm(tenth(short))} short of ${magnification(focus.farthest)} with the ${deepestHolder(camera).holders ?? 'ground glass'}: with every holder it focuses no farther than ${magnification(farthest, 'nearer')}.`,
    hint: inWords([
      ...(farthest >= reachable
        ? ['leave out builtFor: this lens needs boxes of its own']
        : farthest < focus.nearest
          ? [`write farthest: ${proposed(farthest, 'nearer')}`]
          : [`write farthest: ${proposed(farthest, 'nearer')} and nearest: ${proposed(reachable, 'farther')}`]),
      // from inside the lens stands nearer to the film by board and plug
      ...(lens.mount.side === 'front' && goesInFromThere(camera)
        ? [`mount the lens ${other.words}: side: ${other.key}`]
        : []),
    ]),
  });
};

/** boxes-as-built: what a new lens reaches in boxes that stand. */
const boxesAsBuilt: WholeRule = ({ focus, lens, builtFor }, { settingOut: rod, objects: { lensBoard } }) => {
  if (builtFor === undefined || focus.pastInfinity < 0 || rod.slack < 0) return [];
  const { panel, opening } = lensBoard;
  const sawn =
    panel && panel.built !== null && opening > panel.built && panel.asked.value <= panel.most
      ? `; the opening of the panel is sawn out from ${mm(tenth(panel.built))} to ${mm(tenth(opening))}`
      : '';
  const past = focus.pastInfinity;
  const end = focus.farthest - past / lens.focalLength;
  const far =
    end > ROUNDING ? magnification(end, 'nearer') : `infinity (and ${mm(tenth(-end * lens.focalLength))} past it)`;
  return [
    {
      rule: 'boxes-as-built',
      level: 'note',
      about: 'builtFor',
      message: `${sawn ? 'Boxes and tailboard' : 'Boxes, panel and tailboard'} stay as they were built for the ${builtFor.lens.name}${sawn}. With this lens the slide takes every holder from ${far} to ${magnification(rod.reachable)}.`,
      hint: 'tailboard compare with the old design tells which parts are cut again, and what each holder reaches.',
    },
  ];
};

/** What is printed is no promise to the last tenth of its last figure; what is to be typed must be within the slide. */
function proposed(m: number, side: 'farther' | 'nearer'): string {
  const step = side === 'farther' ? NO_PROMISE : -NO_PROMISE;
  return magnification(m > 1 ? m - step : 1 / (1 / m + step), side);
}

/** A tenth of a hundredth, in the larger figure of a magnification. */
const NO_PROMISE = 0.001;

const reachCure = (design: Design, camera: Camera): string => {
  const [first = 'use shallower holders, thinner sheet, or a lens with a longer flange distance', ...others] =
    reachCures(design, camera);
  return inWords([first, ...others]);
};

/** The cheapest first: no wood at all, then one key, then another holder. */
function reachCures(design: Design, camera: Camera): readonly string[] {
  const { focus, lens } = design;
  const { settingOut: rod } = camera;
  const missing = -rod.slack;
  const other = otherSide(design);
  const { holders: deepest, above } = deepestHolder(camera);
  const boxes = design.boxes ?? 2;
  const shallower = Math.ceil((missing * 10) / boxes) / 10;
  const withoutDeepest = rod.reachable + (boxes * above) / lens.focalLength;
  const farthest = missing / (boxes * lens.focalLength);
  const cures: string[] = [];
  if (rod.reachable > 0) cures.push(`write nearest: ${magnification(rod.reachable)}`);
  if (rod.reachableOtherSide >= focus.nearest - ROUNDING)
    cures.push(`mount the lens ${other.words}: side: ${other.key}`);
  if (shallower <= above) cures.push(`make the ${deepest} ${mm(shallower)} shallower`);
  else if (above > 0 && withoutDeepest > 0)
    cures.push(`do without the ${deepest}: then the slide reaches ${magnification(withoutDeepest)}`);
  const three = rod.reachableThree();
  if (three !== null && three >= focus.nearest - ROUNDING)
    cures.push(`put a third box between the two: boxes: 3 reaches ${magnification(three)}`);
  if (focus.farthest === 0 && farthest <= FARTHEST_PORTRAIT)
    cures.push(`give up infinity: farthest: ${magnification(farthest, 'nearer')}`);
  return cures;
}

/** A camera that focuses no farther than this is still one for portraits; a choice of ours. */
const FARTHEST_PORTRAIT = 1 / 5;

const deepestHolder = ({ holders, objects }: Camera): Deepest =>
  deepestOf(holders, objects.groundGlassFrame.effectiveDepth);

const otherSide = ({ lens }: Pick<Design, 'lens'>) =>
  lens.mount.side === 'inside' ? { words: 'from the front', key: 'front' } : { words: 'from inside', key: 'inside' };

/** How far an engraved focal length, and a flange distance from one look, may be off; common practice, no source. */
const FOCAL_LENGTH_OFF = 0.03;
const FLANGE_OFF = 0.01;

/** What the slide must take past its ends, mm, and why. */
interface LensStrays {
  readonly pastNearest: number;
  readonly becauseNearest: string;
  /** null: nothing is asked for, since infinity is not wanted and nothing was measured. */
  readonly pastFarthest: number | null;
  readonly becauseFarthest: string;
  readonly cure: string;
}

/** By the doubt that the bench left, where the lens was on it; else by how far such figures are usually off. */
function lensStrays({ lens, focus }: Design): LensStrays {
  if (lens.uncertainty !== null) {
    const { focalLength, flangeDistance, correlation, readings } = lens.uncertainty;
    const freedom = readings === null ? Number.POSITIVE_INFINITY : readings - 2;
    const known = { slopeError: focalLength, interceptError: flangeDistance, correlation, freedom };
    const pastNearest = lineDoubt(known, focus.nearest);
    const pastFarthest = lineDoubt(known, focus.farthest);
    const measured = 'As measured, 95 times of 100 no more is needed than';
    return {
      pastNearest,
      becauseNearest: `${measured} ${mm(hundredth(pastNearest))}.`,
      pastFarthest,
      becauseFarthest: `${measured} ${mm(hundredth(pastFarthest))}; without it, ${focus.farthest > 0 ? magnification(focus.farthest) : 'infinity'} is lost.`,
      cure: 'take more readings of the lens near that magnification',
    };
  }
  const pastNearest = FOCAL_LENGTH_OFF * lens.focalLength;
  const pastFarthest = FLANGE_OFF * lens.flangeDistance;
  return {
    pastNearest,
    becauseNearest: `If the focal length is 3 % more than engraved, and it often is, ${mm(tenth(pastNearest))} are needed.`,
    pastFarthest: focus.farthest > 0 ? null : pastFarthest,
    becauseFarthest: `If the flange distance is 1 % less than you wrote, ${mm(tenth(pastFarthest))} are needed, and infinity is lost.`,
    cure: 'measure the focal length before you cut',
  };
}

/** What was measured is read finer than what is a rule of thumb. */
const hundredth = (value: number): number => Math.ceil(value * 100) / 100;

/** reach-reserve: what the slide can take when the lens is not what it says. */
const reachReserve: WholeRule = (design, { settingOut: rod }) => {
  const { lens, focus } = design;
  const strays = lensStrays(design);
  const { pastNearest: longer } = strays;
  const past = { rule: 'reach-reserve', level: 'warning', unit: 'mm' } as const;
  // beyond the reach there is no reserve to speak of: reach-near says so
  const reached = rod.slack >= -ROUNDING * lens.focalLength;
  return [
    ...unless(!reached || longer <= rod.reserve + ROUNDING, {
      ...past,
      value: rod.reserve,
      limit: longer,
      about: rod.slack >= longer && !design.builtFor ? 'focus.pastNearest' : 'focus.nearest',
      message: `Past the nearest focus the slide has ${mm(tenth(rod.reserve))} left. ${strays.becauseNearest}`,
      hint:
        rod.slack >= longer && !design.builtFor
          ? `Write pastNearest: ${mm(Math.ceil(longer * 2) / 2)}, or leave it out.`
          : `Write nearest: ${magnification(Math.max(1e-3, rod.reachable - longer / lens.focalLength))}, or ${strays.cure}.`,
    }),
    ...unless(!reached || rod.reserve <= rod.slack + ROUNDING, {
      ...past,
      value: rod.reserve,
      limit: rod.slack,
      about: 'focus.pastNearest',
      message: `At the end of the reserve of ${mm(tenth(rod.reserve))} the boxes overlap ${mm(tenth(rod.reserve - rod.slack))} less than they must: light and wobble.`,
      hint: `Write pastNearest: ${mm(Math.floor(rod.slack * 10) / 10)}.`,
    }),
    ...(focus.pastInfinity < 0 ? [] : farReserve(design, focus.pastInfinity)).map(({ finding, missing, cure }) => ({
      ...finding,
      about: 'focus.pastInfinity',
      hint: design.builtFor
        ? `${upper(cure)}.`
        : `Write pastInfinity: ${mm(Math.ceil((focus.pastInfinity + missing) * 2) / 2)}.`,
    })),
  ];
};

interface FarReserve {
  readonly finding: Finding;
  /** By how much the slide should run farther, mm. */
  readonly missing: number;
  /** How the lens could be known better. */
  readonly cure: string;
}

/**
 * reach-reserve at the far end: what the lens may be off, against what the slide runs past the farthest focus.
 *
 * @param past mm
 */
export function farReserve(design: Design, past: number, itRuns = 'The slide runs'): readonly FarReserve[] {
  const { farthest } = design.focus;
  const { pastFarthest: limit, becauseFarthest, cure } = lensStrays(design);
  if (limit === null || limit <= past + ROUNDING) return [];
  return [
    {
      missing: limit - past,
      cure: farthest > 0 ? cure : `${cure}, and the flange distance with it`,
      finding: {
        rule: 'reach-reserve',
        level: 'warning',
        value: past,
        limit,
        unit: 'mm',
        message: `${itRuns} ${mm(tenth(past))} past ${farthest > 0 ? 'the farthest focus' : 'infinity'}. ${becauseFarthest}`,
      },
    },
  ];
}

/** infinity-left-out: a camera that was asked for portraits alone says where its far end is, and what that buys. */
const infinityLeftOut: WholeRule = ({ focus, lens, builtFor, boxes = 2 }, { settingOut: rod }) => {
  // in boxes that stand it saves nothing
  if (focus.farthest === 0 || builtFor) return [];
  const { focalLength: f } = lens;
  const saved = f * focus.farthest;
  // with the run past it, so far on every holder
  const end = Math.max(0, focus.farthest - focus.pastInfinity / f);
  // every box grows by the extension at the farthest focus
  const withInfinity = rod.reachable - boxes * focus.farthest;
  return [
    {
      rule: 'infinity-left-out',
      level: 'note',
      value: saved,
      unit: 'mm',
      about: 'focus.farthest',
      message: `The camera is not asked for infinity: with every holder it focuses no farther than ${magnification(focus.farthest, 'nearer')}, ${metres(f + f / focus.farthest)} ahead of the lens${end > 0 ? `, and with the run past it to ${magnification(end, 'nearer')}` : '; the run past it comes to infinity all the same'}. That saves ${mm(tenth(saved))} of travel and gives ${mm(tenth(boxes * saved))} of reach.`,
      hint:
        withInfinity >= focus.nearest - ROUNDING
          ? 'Leave out farthest where landscapes are wanted too: the nearest focus is reached all the same.'
          : `With infinity ${withInfinity > 0 ? `${magnification(withInfinity)} would be the nearest` : 'the boxes would not close'}.`,
    },
  ];
};

/** Free air round the lens where it passes inside the rear box; common practice, no source. */
const FREE_AIR = 3;

/** lens-passes-box: a lens too wide for the rear box costs its own depth in reach. */
const lensPassesBox: WholeRule = (design, { settingOut: rod, objects }) => {
  const { lens } = design;
  const { radiusBehindPanel: radius, reachBehindPanel } = objects.lensBoard.claims;
  const limit = rod.rearInside.value / 2 - FREE_AIR;
  const lost = rod.panelDead.value - rod.ply - 2;
  // a rear box that stands is not made shorter for it: box-meets-panel says whether it strikes
  if (design.builtFor) return [];
  // a lens whose inside parts end within the corner strips costs nothing, however wide they are
  return unless(radius <= limit + ROUNDING || lost <= ROUNDING, {
    rule: 'lens-passes-box',
    level: 'warning',
    value: radius,
    limit,
    unit: 'mm',
    about: 'lens.mount',
    message: `Lens and mount reach ${mm(tenth(radius))} from the axis and ${mm(tenth(reachBehindPanel))} behind the panel; the rear box passes round ${mm(tenth(limit))}. It has to stop behind them, which costs ${mm(tenth(lost))} of reach.`,
    hint:
      rod.reachableOtherSide > rod.reachable
        ? `Mount the lens ${otherSide(design).words} (${magnification(rod.reachableOtherSide)} instead of ${rod.reachable > 0 ? magnification(rod.reachable) : 'nothing'}), or make the mount ${mm(tenth(2 * (radius - limit)))} narrower.`
        : `A ${lens.mount.by === 'clamp' ? 'flange or ring' : 'mount'} that is ${mm(tenth(2 * (radius - limit)))} narrower wins it back.`,
  });
};

/** board-widens: the lens board, not the picture, makes the boxes wide. */
const boardWidens: WholeRule = ({ builtFor }, { settingOut: rod }) => {
  if (builtFor) return [];
  const [image, board] = rod.rearInside.claims;
  return unless(!image || !board || board.value <= image.value + ROUNDING, {
    rule: 'board-widens',
    level: 'note',
    value: rod.rearInside.value,
    limit: image?.value ?? 0,
    unit: 'mm',
    about: 'lens.mount',
    message: `The lens board makes the boxes wider than the picture asks: ${mm(tenth(rod.rearInside.value))} inside instead of ${mm(tenth(image?.value ?? 0))}.`,
    hint: 'A narrower mount makes the camera smaller and lighter; nothing is wrong with it as it is.',
  });
};

export const slideRules: readonly WholeRule[] = [
  reachNear,
  reachFarthest,
  boxesAsBuilt,
  reachReserve,
  infinityLeftOut,
  lensPassesBox,
  boardWidens,
];
