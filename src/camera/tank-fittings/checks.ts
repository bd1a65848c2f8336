import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { partOf } from '../../assembly/measure.js';
import { spansOf } from '../../assembly/span-of.js';
import { apply } from '../../geometry/placement.js';
import type { SolidRecipe } from '../../geometry/solid.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import type { Insert } from './insert.js';
import { leftIn, type Throats, throatsOf, turnsOf } from './measure.js';
import { type FittedTank, fittingIds } from './parts.js';

/** What the fittings of a tank can tell: that they run, shut out light, run out, and stand in nothing's way. */
export function checkTankFittings(own: FittedTank, build: Build): readonly Finding[] {
  const ids = fittingIds(own.number);
  const [spout, vent] = (['spout', 'vent'] as const).map((what): Printed[] => {
    const part = partOf(build, ids[what]);
    return part.kind === 'printed' ? [{ what, insert: own.fittings[what], solid: part.solid }] : [];
  }) as [Printed[], Printed[]];
  // of fittings that have no room between the plies nothing else is true
  const thin = spout.flatMap((one) => betweenPlies(one, own));
  if (thin.length > 0) return thin;
  return [
    ...spout.flatMap((one) => [...runs(one, LEAST_SPOUT), ...runsOut(one)]),
    ...vent.flatMap((one) => runs(one, VENT_SHARE * Math.max(...spout.map(narrowest)))),
    ...[...spout, ...vent].flatMap(turnsLight),
    ...clearOfSlide(own, build),
    ...aheadOfLid(own, build),
  ];
}

interface Printed {
  readonly what: 'spout' | 'vent';
  readonly insert: Insert;
  readonly solid: SolidRecipe;
}

/** mm²; the camera's own rules, common practice, no source. */
const LEAST_SPOUT = 60;
const VENT_SHARE = 1 / 4;
/** Planes and their sections are counted in steps of 0.0001 mm. */
const COUNTED = 1e-2;

const areasOf = ({ bore, roof, openings, legs, exit }: Throats): readonly number[] => [
  bore,
  roof,
  ...openings,
  ...legs,
  exit,
];
const narrowest = ({ insert, solid }: Printed): number => Math.min(...areasOf(throatsOf(insert, solid)));

/** tank-shut: spout and vent are as thick as the notch between the plies is deep, two walls and the passage between them. */
function betweenPlies({ insert: { depth, wall, inside } }: Printed, { name }: FittedTank): readonly Finding[] {
  const least = inside + 2 * wall;
  return unless(depth >= least - ROUNDING, {
    rule: 'tank-shut',
    level: 'error',
    value: depth,
    limit: least,
    unit: 'mm',
    about: 'holders',
    message: `Between window and lip the whole plies of the ${name} leave ${mm(tenth(depth))} for spout and vent; their walls take ${mm(2 * wall)} of that, and the passage between them wants ${mm(inside)}.`,
    hint: 'Make its film depth so much more that another whole ply goes into the chamber.',
  });
}

function runs(printed: Printed, least: number): readonly Finding[] {
  const value = narrowest(printed);
  return unless(value >= least - COUNTED, {
    rule: 'tank-shut',
    level: 'error',
    value,
    limit: least,
    unit: 'mm²',
    message: `The ${printed.what}’s passage is ${plainNumber(value, 0)} mm² at its narrowest, where ${plainNumber(least, 0)} mm² are needed: baths run in and out too slowly.`,
    hint: `Ask for a larger area of the ${printed.what}.`,
  });
}

/** Light must turn back on itself so often, each time over so many gaps; the camera's own rule. */
const TURNS = 2;
const OVERLAP = 2;

function turnsLight({ what, insert, solid }: Printed): readonly Finding[] {
  const turns = turnsOf(insert, solid);
  const whole = turns.filter(
    ({ gap, overlap, side }, i) => overlap >= OVERLAP * gap - COUNTED && side !== turns[i - 1]?.side,
  ).length;
  return unless(whole >= TURNS, {
    rule: 'tank-shut',
    level: 'error',
    value: whole,
    limit: TURNS,
    unit: 'turns',
    message: `Light turns back on itself ${whole} times in the ${what}, where it must ${TURNS} times, round baffles that overlap by ${OVERLAP} gaps: it reaches the chamber when the cap is off.`,
    hint: 'Make the chamber deeper, or notch more of its plies: the legs of the labyrinth grow with it.',
  });
}

/** How far a tank is tilted to its spout's corner when it is poured out, and what may stay behind. Common practice, no source. */
const POURED = Math.PI / 12;
const LEAST_LEFT = 1;

function runsOut({ insert, solid }: Printed): readonly Finding[] {
  const { inInsert, inChamber } = leftIn(insert, solid, POURED);
  return [
    ...unless(inInsert <= LEAST_LEFT, {
      rule: 'tank-shut',
      level: 'error',
      value: inInsert,
      limit: LEAST_LEFT,
      unit: 'ml',
      message: `Turned over and tilted to its corner the spout keeps ${plainNumber(inInsert, 1)} ml of a bath, where ${LEAST_LEFT} ml are allowed: it is carried into the next.`,
      hint: 'Let the roof of the labyrinth rise more steeply towards the neck.',
    }),
    ...unless(inChamber <= COUNTED, {
      rule: 'tank-shut',
      level: 'error',
      value: inChamber,
      limit: 0,
      unit: 'mm',
      message: `Turned over and tilted to its corner the chamber does not run empty: a bath stands ${mm(inChamber)} high in it.`,
      hint: 'Let the roof of the labyrinth rise more steeply towards the neck.',
    }),
  ];
}

/** Air between a neck or cap and the dark slide's channel, and what a lid stands out beyond them. Common practice, no source. */
const SLIDE_AIR = 1;
const LID_AIR = 0.5;

/** The boxes of what stands out at the open end, upright, by depth from the holder's face. */
function standingOut({ number, place, stance }: FittedTank, build: Build) {
  const { spout, vent, cap } = fittingIds(number);
  const face = apply(place, { x: 0, y: 0, z: 0 }).z + stance.behindSeat;
  const upright = build.setups.find(({ name }) => stance.upright.includes(name));
  return [spout, vent, cap].flatMap((part) =>
    spansOf(build, part, upright === undefined ? {} : { setup: upright }).map(({ x, z }) => ({
      part: partOf(build, part),
      x,
      front: z[0] - face,
      back: z[1] - face,
    })),
  );
}

function clearOfSlide(own: FittedTank, build: Build): readonly Finding[] {
  const { slide } = own.given;
  return standingOut(own, build)
    .filter(({ x }) => x[0] < slide.halfWidth && x[1] > -slide.halfWidth)
    .flatMap(({ part, front }) =>
      unless(front - slide.back >= SLIDE_AIR - ROUNDING, {
        rule: 'slide-path',
        level: 'error',
        value: front - slide.back,
        limit: SLIDE_AIR,
        unit: 'mm',
        message: `The ${part.name} stands ${mm(front - slide.back)} behind the dark slide’s channel, where ${mm(SLIDE_AIR)} are needed: the slide cannot be drawn while it is on.`,
        hint: 'Make the chamber deeper.',
      }),
    )
    .slice(0, 1);
}

function aheadOfLid(own: FittedTank, build: Build): readonly Finding[] {
  const { lid } = own.given;
  return standingOut(own, build)
    .flatMap(({ part, back }) =>
      unless(lid - back >= LID_AIR - ROUNDING, {
        rule: 'tank-shut',
        level: 'error',
        value: lid - back,
        limit: LID_AIR,
        unit: 'mm',
        message: `The tank would lie on the ${part.name}, which ends ${mm(lid - back)} ahead of the lid’s outside where ${mm(LID_AIR)} are needed: rocked in its tray it works itself loose.`,
        hint: 'Make the chamber deeper, or the lid of one ply more.',
      }),
    )
    .slice(0, 1);
}
