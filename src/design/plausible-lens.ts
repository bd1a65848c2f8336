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
  const { mount, flange } = design.lens;
  const finding = (about: string, message: string, hint: string): readonly Finding[] => [
    { rule: 'lens-seat-known', level: 'error', about, message, hint },
  ];
  if (mount.by === 'flange' && flange === null)
    return finding(
      'lens.flange',
      'The lens is mounted by its flange, and the size of the flange is not given.',
      'Write lens.flange: { diameter, boltCircle, screws, thickness }, or mount: { by: ring } or clamp.',
    );
  if (mount.by === 'clamp' && isDefaulted(design, 'lens.barrel'))
    return finding(
      'lens.barrel',
      'The lens is held by its barrel, and the barrel is not given.',
      'Measure diameter, grip, front, rear and both end diameters from the lens seat.',
    );
  return [];
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
      message: `The ends of the barrel differ by ${mm(difference)}: the lens can be put in back to front.`,
      hint: 'Mark the front of the lens, with an arrow beside it on the lens board.',
    },
  ];
}
