import type { Finding } from '../model/finding.js';
import { publishedHolders, sheetFilm } from '../standards/holders.js';
import { mm, plainNumber } from '../units/print.js';
import { isDefaulted } from './defaulted.js';
import type { Design, GroundGlass } from './design.js';

/** A depth that lies so near to a published one was looked up, not measured. */
const LOOKED_UP = 0.06;

/** depth-meaning: a published depth runs to the back of the slot, and the film lies ahead of it. */
export const holderDepths = (design: Design): readonly Finding[] =>
  design.holders.flatMap(({ name, filmDepth }, index) => {
    const published = publishedHolders.find(
      ({ slotDepth }) => Math.abs(slotDepth.value.value - filmDepth) <= LOOKED_UP,
    );
    if (published === undefined || !isDefaulted(design, `holders[${index}].depthTo`) || isDefaulted(design, 'holders'))
      return [];
    const slot = published.slotDepth.value.value;
    return [
      {
        rule: 'depth-meaning',
        level: 'warning',
        value: filmDepth,
        limit: slot,
        unit: 'mm',
        about: `holders[${index}].filmDepth`,
        message: `${mm(filmDepth)} of the ${name} is the published depth of ${published.format} holders, which ends behind the film.`,
        hint: `Write depthTo: emulsion if it was measured to the film; else depthTo: slot with sheetThickness: ${mm(sheetFilm.value)}.`,
      },
    ];
  });

/** By how much glass of that thickness brings the image nearer when one looks through it: t(1 − 1/n). */
const throughGlass = ({ thickness, refractiveIndex }: GroundGlass): number => thickness * (1 - 1 / refractiveIndex);

/** Circle of confusion: a part of the diagonal, common practice. The tolerance of the register is a quarter of N·c at infinity. */
const CIRCLES_IN_DIAGONAL = 1500;
const SHARE_OF_DEPTH = 1 / 4;

/** frosted-side: what the glass says turned the wrong way round; and a depth of the film typed as the depth of such a glass. */
export function glassDepth(design: Design): readonly Finding[] {
  const { groundGlass: glass, format, lens, holders } = design;
  const shift = throughGlass(glass);
  const { short, long } = format.image;
  const diagonal = Math.sqrt(short * short + long * long);
  const tolerance = (SHARE_OF_DEPTH * lens.maxAperture * diagonal) / CIRCLES_IN_DIAGONAL;
  const note: Finding = {
    rule: 'frosted-side',
    level: 'note',
    value: shift,
    limit: tolerance,
    unit: 'mm',
    about: 'groundGlass.frosted',
    message:
      `The glass shows the image at ${mm(glass.depth)} with its frosted side to the lens and at ${mm(glass.depth - shift)} ` +
      `with it to the eye: ${mm(shift)} apart, ${plainNumber(shift / tolerance, 1)} times the tolerance.`,
    hint: `Mark the glass: this camera is made for the frosted side to the ${glass.frosted}.`,
  };
  const film = holders.find((holder) => Math.abs(holder.filmDepth - glass.depth) <= LOOKED_UP);
  if (glass.frosted === 'lens' || film === undefined) return [note];
  return [
    note,
    {
      rule: 'depth-meaning',
      level: 'warning',
      value: glass.depth,
      limit: film.filmDepth + shift,
      unit: 'mm',
      about: 'groundGlass.depth',
      message: `The glass stands as deep as the film of the ${film.name}, but is looked at through its own thickness: it focuses at ${mm(glass.depth - shift)}.`,
      hint: `Write depth: ${mm(film.filmDepth + shift)}, or frosted: lens.`,
    },
  ];
}
