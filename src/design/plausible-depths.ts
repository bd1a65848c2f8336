import type { Finding } from '../model/finding.js';
import { publishedHolders, sheetFilm } from '../standards/holders.js';
import { mm } from '../units/print.js';
import { isDefaulted } from './defaulted.js';
import type { Design, GroundGlass } from './design.js';

/** A depth that lies so near to a published one was looked up, not measured. */
const LOOKED_UP = 0.06;

/** depth-meaning: a published depth runs to the back of the slot, and the film lies ahead of it. */
export const holderDepths = (design: Design): readonly Finding[] =>
  design.holders.flatMap(({ name, filmDepth, make }, index) => {
    if (make !== undefined || !isDefaulted(design, `holders[${index}].depthTo`) || isDefaulted(design, 'holders'))
      return [];
    return publishedDepth(name, filmDepth).map((finding) => ({
      ...finding,
      about: `holders[${index}].filmDepth`,
      hint: `Write depthTo: emulsion if it was measured to the film; else depthTo: slot with sheetThickness: ${mm(sheetFilm.value)}.`,
    }));
  });

/** The same of a depth that is typed beside the design file, which ends at the film. */
export function publishedDepth(name: string, filmDepth: number): readonly Finding[] {
  const published = publishedHolders.find(({ slotDepth }) => Math.abs(slotDepth.value.value - filmDepth) <= LOOKED_UP);
  if (published === undefined) return [];
  return [
    {
      rule: 'depth-meaning',
      level: 'warning',
      value: filmDepth,
      limit: published.slotDepth.value.value,
      unit: 'mm',
      message: `${mm(filmDepth)} of the ${name} is the published depth of ${published.format} holders, which ends behind the film.`,
      hint: `If it was not measured to the film, give what is left of it before the film: ${mm(thousandth(filmDepth - sheetFilm.value))} for sheet film.`,
    },
  ];
}

const thousandth = (length: number): number => Math.round(length * 1000) / 1000;

/** By how much glass of that thickness brings the image nearer when one looks through it: t(1 − 1/n). */
const throughGlass = ({ thickness, refractiveIndex }: GroundGlass): number => thickness * (1 - 1 / refractiveIndex);

/** depth-meaning: the depth of the film typed as the depth of a glass that is looked at through its own thickness. */
export function glassDepth({ groundGlass: glass, holders }: Design): readonly Finding[] {
  const shift = throughGlass(glass);
  const film = holders.find((holder) => Math.abs(holder.filmDepth - glass.depth) <= LOOKED_UP);
  if (glass.frosted === 'lens' || film === undefined) return [];
  return [
    {
      rule: 'depth-meaning',
      level: 'warning',
      value: glass.depth,
      limit: film.filmDepth + shift,
      unit: 'mm',
      about: 'groundGlass.depth',
      message: `The glass stands as deep as the film of the ${film.name}, but the picture reaches its frosted side through it: it works at ${mm(thousandth(glass.depth - shift))}.`,
      hint: `Write depth: ${mm(thousandth(film.filmDepth + shift))}, or turn the glass and write frosted: lens.`,
    },
  ];
}
