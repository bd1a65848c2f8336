import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import type { Part } from '../../model/part.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { fingerRule, tubeEdges } from '../finger-rule.js';
import type { RearBox } from './size.js';

/** The air between the boxes that neither jams nor leaks; common practice, no source. */
const CLEARANCE = { jams: 0.5, least: 1, most: 2.5, usual: 1.5 };

interface Air {
  readonly where: string;
  readonly air: number;
}

/** From the outer faces of each box to the inner faces of the one round it, on all four sides. */
function airAround(build: Build): readonly [Air, ...Air[]] {
  const front = { left: 'F2L', right: 'F2R', floor: 'F4', top: 'F3' };
  const middle = { left: 'C1L', right: 'C1R', floor: 'C2F', top: 'C2T' };
  const rear = { left: 'R1L', right: 'R1R', floor: 'R2F', top: 'R2T' };
  return spansOf(build, 'C1L').length > 0
    ? [...airBetweenBoxes(build, middle, rear), ...airBetweenBoxes(build, front, middle)]
    : airBetweenBoxes(build, front, rear);
}

/** The ids of the four walls of a box. */
interface Walls {
  readonly left: string;
  readonly right: string;
  readonly floor: string;
  readonly top: string;
}

const airBetweenBoxes = (build: Build, outer: Walls, inner: Walls): readonly [Air, ...Air[]] => [
  { where: 'on the right', air: spanOf(build, outer.right).x[0] - spanOf(build, inner.right).x[1] },
  { where: 'on the left', air: spanOf(build, inner.left).x[0] - spanOf(build, outer.left).x[1] },
  { where: 'above', air: spanOf(build, outer.top).y[0] - spanOf(build, inner.top).y[1] },
  { where: 'below', air: spanOf(build, inner.floor).y[0] - spanOf(build, outer.floor).y[1] },
];

const tightest = ([first, ...others]: readonly [Air, ...Air[]]): Air =>
  others.reduce((least, one) => (one.air < least.air - ROUNDING ? one : least), first);
const widest = ([first, ...others]: readonly [Air, ...Air[]]): Air =>
  others.reduce((most, one) => (one.air > most.air + ROUNDING ? one : most), first);

/** box-clearance: c, measured on all four sides. */
export function boxClearance(_own: RearBox, build: Build): readonly Finding[] {
  const { jams, least, most, usual } = CLEARANCE;
  const all = airAround(build);
  const [tight, wide] = [tightest(all), widest(all)];
  const { where, air } = tight.air < least - ROUNDING ? tight : wide;
  if (air >= least - ROUNDING && air <= most + ROUNDING) return [];
  const jammed = air < jams - ROUNDING;
  const what = jammed
    ? 'they jam on the first damp day'
    : air < least
      ? 'they may scrape in damp weather'
      : 'one band of felt hardly closes that, and light gets in';
  const even = wide.air - tight.air < ROUNDING;
  return [
    {
      rule: 'box-clearance',
      level: jammed ? 'error' : 'warning',
      value: air,
      limit: jammed ? jams : air < least ? least : most,
      unit: 'mm',
      about: 'workshop.slideClearance',
      message: `The boxes have ${mm(hundredth(air))} ${even ? 'a side' : where} between them: ${what}.`,
      hint: `Write slideClearance: ${mm(usual)}, or leave it out.`,
    },
  ];
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Felt over the gap that it closes: less leaks, more drags; common practice, no source. */
const FELT = { least: 1.2, most: 1.8 };

/** A narrower band peels off; a choice of ours. */
const LEAST_BAND = 8;

/** felt-gap: the felt that is bought against the gap as it stands, and the two bands as they lie one behind the other. */
export function feltGap({ felt }: RearBox, build: Build): readonly Finding[] {
  const all = airAround(build);
  const [tight, wide] = [tightest(all).air, widest(all).air];
  const leaks = felt / wide < FELT.least - ROUNDING;
  const gap = leaks ? wide : tight;
  const value = felt / gap;
  return [
    ...unless(!leaks && value <= FELT.most + ROUNDING, {
      rule: 'felt-gap',
      level: 'warning',
      value,
      limit: leaks ? FELT.least : FELT.most,
      unit: 'times the gap',
      about: 'workshop.slideClearance',
      message: `Felt of ${mm(felt)} in a gap of ${mm(hundredth(gap))} is ${plainNumber(value, 2)} times as thick: it ${leaks ? 'leaks' : 'drags'}.`,
      hint: `Felt of ${mm(felt)} suits a slideClearance of ${mm(Math.round((felt / 1.4) * 10) / 10)}.`,
    }),
    ...['felt-long', 'felt-side'].flatMap((id) => bandsApart(build, id)).slice(0, 1),
  ];
}

/** Bands on the same wall lie at the same place across the axis. */
function bandsApart(build: Build, id: string): readonly Finding[] {
  const bands = spansOf(build, id);
  const apart = bands.flatMap((a, i) =>
    bands.slice(i + 1).flatMap((b) => {
      const sameWall = Math.abs(a.x[0] - b.x[0]) < 1 && Math.abs(a.y[0] - b.y[0]) < 1;
      return sameWall ? [{ gap: Math.max(b.z[0] - a.z[1], a.z[0] - b.z[1]), width: a.z[1] - a.z[0] }] : [];
    }),
  );
  return apart
    .filter(({ gap }) => gap < -ROUNDING)
    .map(({ gap, width }) => ({
      rule: 'felt-gap',
      level: 'warning',
      value: gap,
      limit: 0,
      unit: 'mm',
      about: 'focus.nearest',
      message: `Two felt bands of ${mm(tenth(width))} do not fit one behind the other on the rear box: they lap by ${mm(tenth(-gap))}.`,
      hint:
        width + gap >= LEAST_BAND
          ? `Cut the bands ${mm(Math.floor(width + gap + ROUNDING))} wide.`
          : 'The boxes are too short for two bands: see reach-near and box-meets-panel.',
    }));
}

/** felt-crossing: felt on both boxes would have to pass itself when the rear box goes in. */
export function feltCrossing(_own: RearBox, { parts }: Build): readonly Finding[] {
  const felts = parts.filter((part) => part.id.startsWith('felt'));
  const carriers = felts
    .map((felt) => carriersOf(felt, felts))
    .reduce((most, one) => (one.size > most.size ? one : most), new Set<string>());
  return unless(carriers.size <= 1, {
    rule: 'felt-crossing',
    level: 'error',
    value: carriers.size,
    limit: 1,
    unit: 'boxes with felt',
    message: `Felt sits on ${[...carriers].join(' and ')}: the bands have to pass each other, and the rear box will not go in.`,
    hint: 'Glue both bands to the rear box.',
  });
}

/** In the gap that a felt closes: between the wood that it slides on and the wood that it is glued to, whichever has it. */
function carriersOf(felt: Part, felts: readonly Part[]): ReadonlySet<string> {
  const gap = gapOf(felt);
  const carried = felts.filter((other) => gapOf(other) === gap).flatMap((other) => other.placements);
  return new Set(
    carried.map(({ group, drawnFrom }) => `${String(group)}${drawnFrom === undefined ? '' : ', middle box'}`),
  );
}

/** The letters of the two boxes on either side. */
const gapOf = ({ joins }: Part): string => [...new Set(joins.map(({ to }) => to.charAt(0)))].sort().join(' ');

/** damp: a close fit wants care. */
export function damp(_own: RearBox, build: Build): readonly Finding[] {
  const { air } = tightest(airAround(build));
  return unless(air >= 1.2 - ROUNDING, {
    rule: 'damp',
    level: 'note',
    value: air,
    limit: 1.2,
    unit: 'mm',
    about: 'workshop.slideClearance',
    message: 'The boxes run close, and wood swells: a camera from the cold sweats and jams.',
    hint: 'Finish both faces of every panel alike, and let the camera warm up before you open it.',
  });
}

/** shelf: what a camera suffers from when nobody uses it. */
export function shelf(_own: RearBox, { parts }: Build): readonly Finding[] {
  return unless(!parts.some(({ id }) => id.startsWith('felt')), {
    rule: 'shelf',
    level: 'note',
    message: 'On the shelf felt is eaten by moths and takes a set, and a dark slide warps.',
    hint: 'The last chapter of the book says how the camera is kept.',
  });
}

/** finger-rule: the long edges of the rear box, and its fingers in the opening of the standard. */
export const rearFingers = ({ wood }: RearBox, build: Build): readonly Finding[] =>
  fingerRule(
    'Rear box',
    tubeEdges(build, { sides: ['R1L', 'R1R'], lids: ['R2T', 'R2F'], plate: { id: 'R3', name: 'standard' } }),
    wood.fits.glueSlip,
    build,
  );

export const rearBoxChecks = [boxClearance, feltGap, feltCrossing, damp, shelf, rearFingers];
