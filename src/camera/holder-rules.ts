import { ROUNDING, unless } from '../assembly/limit.js';
import { glassShift } from '../optics/depth.js';
import { mm, tenth } from '../units/print.js';
import type { WholeRule } from './whole-rule.js';

/** What the builder wrote of the holders. */

/** Widths that differ by less share one well; common practice, no source. */
const WIDTHS_DIFFER = 1;

/** well-fit: a holder that is narrower than the widest one must be kept in the middle by its pins. */
const wellFit: WholeRule = ({ holders }) => {
  const widest = Math.max(...holders.map(({ width }) => width));
  return holders.flatMap(({ name, width, locating }, i) =>
    unless(widest - width <= WIDTHS_DIFFER + ROUNDING || locating === 'pins', {
      rule: 'well-fit',
      level: 'warning',
      value: widest - width,
      limit: WIDTHS_DIFFER,
      unit: 'mm',
      about: `holders[${i}].locating`,
      message: `The ${name} is ${mm(tenth(widest - width))} narrower than the widest holder, whose well it shares, and has no pins: it sits off centre, and so does the picture.`,
      hint: `Glue a strip of ${mm(tenth((widest - width) / 2))} to each of its sides, or bore it for the seat pins and write locating: pins.`,
    }),
  );
};

/** slide-lifts-holder: what takes the pull of the slide, 5 to 10 N, where neither pins nor a lock rib do. */
const slideLiftsHolder: WholeRule = ({ holders, defaulted }) =>
  holders.flatMap(({ name, locating }, i) =>
    unless(locating !== 'well', {
      rule: 'slide-lifts-holder',
      level: 'warning',
      value: 0,
      limit: 1,
      unit: 'pins or ribs',
      about: defaulted.includes('holders') ? 'holders' : `holders[${i}].locating`,
      message: `Nothing but the cords keeps the ${name} down: drawing its slide pulls it out of the well and fogs the sheet.`,
      hint: 'Write its lock rib, rib: { fromAxis, width, height }, or bore it for the seat pins and write locating: pins. Until then hold it down with the other hand.',
    }),
  );

/** tank-depth: what a caliper reads on a holder with a window, for the design file has the depth at which it works. */
const tankDepth: WholeRule = ({ holders, groundGlass }) =>
  holders.flatMap(({ name, window, filmDepth }, i) => {
    if (window === null) return [];
    const shift = glassShift(window.thickness, groundGlass.refractiveIndex);
    return [
      {
        rule: 'tank-depth',
        level: 'note' as const,
        value: filmDepth + shift,
        limit: filmDepth,
        unit: 'mm',
        about: `holders[${i}].filmDepth`,
        message: `Through its window of ${mm(window.thickness)} the ${name} works at ${mm(filmDepth)}: its sheet must lie ${mm(thousandth(filmDepth + shift))} behind its face.`,
        hint: `If ${mm(filmDepth)} is what you measured from face to sheet, write filmDepth: ${mm(thousandth(filmDepth - shift))}.`,
      },
    ];
  });

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

export const holderRules: readonly WholeRule[] = [wellFit, slideLiftsHolder, tankDepth];
