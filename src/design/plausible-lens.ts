import type { Finding } from '../model/finding.js';
import { mm, plainNumber } from '../units/print.js';
import { isDefaulted } from './defaulted.js';
import type { Design } from './design.js';

const rule = 'flange-plausible';

/** The flange distance of a lens lies between these multiples of its focal length, unless it is a strong telephoto. */
const SHORTEST = 0.5;
const LONGEST = 1.3;

/** flange-plausible: flange distance typed for focal length. Inches typed for mm are looked for in plausible-units.ts. */
export function flangePlausible({ lens: { focalLength: f, flangeDistance: V } }: Design): readonly Finding[] {
  const about = 'lens.flangeDistance';
  if (V === f)
    return [
      {
        rule,
        level: 'warning',
        value: V,
        limit: f,
        unit: 'mm',
        about,
        message: `Flange distance and focal length are both ${mm(f)}; on most lenses they differ by several per cent.`,
        hint: 'Measure from the lens seat to a sharp image of something far away.',
      },
    ];
  if (V > SHORTEST * f && V < LONGEST * f) return [];
  const limit = V >= LONGEST * f ? LONGEST * f : SHORTEST * f;
  return [
    {
      rule,
      level: 'warning',
      value: V,
      limit,
      unit: 'mm',
      about,
      message: `A flange distance of ${mm(V)} is ${plainNumber(V / f, 2)} times the focal length; ${SHORTEST} to ${LONGEST} times is usual.`,
      hint: 'Look whether the two were swapped, or one was typed in inches.',
    },
  ];
}

/** lens-seat-known: the board cannot be made before the lens seat is known. */
export function lensSeatKnown(design: Design): readonly Finding[] {
  const { mount, flange, barrel } = design.lens;
  const finding = (about: string, message: string, hint: string): readonly Finding[] => [
    { rule: 'lens-seat-known', level: 'error', about, message, hint },
  ];
  if (mount.by === 'flange' && flange === null)
    return finding(
      'lens.flange',
      'The lens is mounted by its flange, and the size of the flange is not given.',
      'Write lens.flange: { diameter, boltCircle, screws, thickness }, or mount: { by: ring } or clamp.',
    );
  if (mount.by !== 'clamp') return [];
  if (isDefaulted(design, 'lens.barrel'))
    return finding(
      'lens.barrel',
      'The lens is held by its barrel, and the barrel is not given.',
      'Measure diameter, grip, front, rear and both end diameters from the lens seat.',
    );
  const step = barrel.frontDiameter - boreOf(design);
  if (step >= STEP - ROUNDING) return [];
  return [
    {
      rule: 'lens-seat-known',
      level: 'warning',
      value: step,
      limit: STEP,
      unit: 'mm',
      about: 'lens.barrel.frontDiameter',
      message: `Nothing stops the lens at its seat: the front of the barrel is ${mm(barrel.frontDiameter)} wide, the bore of the clamp ${mm(boreOf(design))}.`,
      hint: `Slip a printed ring over the barrel to end ${mm(barrel.front)} behind its front rim, or scratch a line there, and measure the flange distance from it.`,
    },
  ];
}

const boreOf = ({ lens, workshop }: Design): number => lens.barrel.diameter + workshop.boreAllowance;

/** A step on the diameter that a clamp's face can carry: half a millimetre all round; common practice, no source. */
const STEP = 1;

/** 58.2 less 58 is a little less than 0.2 in binary: a length that stands on a limit is within it. */
const ROUNDING = 1e-9;

/** lens-goes-in: the rear of a barrel is pushed through the clamp before its step bears on it. */
export function lensGoesIn(design: Design): readonly Finding[] {
  const { barrel, mount } = design.lens;
  const bore = boreOf(design);
  if (mount.by !== 'clamp' || isDefaulted(design, 'lens.barrel') || barrel.rearDiameter <= bore + ROUNDING) return [];
  return [
    {
      rule: 'lens-goes-in',
      level: 'error',
      value: barrel.rearDiameter,
      limit: bore,
      unit: 'mm',
      about: 'lens.barrel.rearDiameter',
      message: `The lens does not go into its clamp: behind the grip it is ${mm(barrel.rearDiameter)} wide, and the bore of the collar is ${mm(bore)}.`,
      hint: `Sleeve or wrap the grip to ${mm(barrel.rearDiameter)} and write that as the diameter; or, where the rear cell unscrews, write the rearDiameter without it; or mount the lens by a flange or ring.`,
    },
  ];
}

/** What two slits of 2 mm can close by, on the diameter, with something left to press; common practice, no source. */
const MOST_ALLOWANCE = 1;

/** clamp-grip: a bore so wide that the slits close before the collar grips, or so narrow that the barrel does not enter. */
export function boreAllowed({ lens, workshop: { boreAllowance } }: Design): readonly Finding[] {
  if (lens.mount.by !== 'clamp' || (boreAllowance >= 0 && boreAllowance <= MOST_ALLOWANCE)) return [];
  const tight = boreAllowance < 0;
  return [
    {
      rule: 'clamp-grip',
      level: 'error',
      value: boreAllowance,
      limit: tight ? 0 : MOST_ALLOWANCE,
      unit: 'mm',
      about: 'workshop.boreAllowance',
      message: tight
        ? `The clamp is bored ${mm(-boreAllowance)} narrower than the barrel, which does not go in.`
        : `The clamp is bored ${mm(boreAllowance)} wider than the barrel: its slits close before it grips, and the lens slips.`,
      hint: 'Print a test ring of the barrel’s diameter, try it on the lens, and write what it lacks; 0.2 mm is usual.',
    },
  ];
}

/** Ends that differ by less both pass the hole in the board. */
const ENDS_DIFFER = 2;

/** lens-reversed: a lens without a flange that fits either way round will be put in the wrong way. */
export function lensReversed(design: Design): readonly Finding[] {
  const { barrel, mount } = design.lens;
  const difference = Math.abs(barrel.frontDiameter - barrel.rearDiameter);
  if (mount.by === 'flange' || isDefaulted(design, 'lens.barrel') || difference >= ENDS_DIFFER) return [];
  return [
    {
      rule: 'lens-reversed',
      level: 'warning',
      value: difference,
      limit: ENDS_DIFFER,
      unit: 'mm',
      about: 'lens.barrel.frontDiameter',
      message: `Front and rear of the barrel differ by ${mm(difference)}: the lens goes in back to front as well, and draws a soft picture.`,
      hint: 'Paint an arrow along the barrel and one on the lens board beside it, both towards the subject.',
    },
  ];
}
