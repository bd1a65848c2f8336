import { ROUNDING, unless } from '../assembly/limit.js';
import { angleOffAxis, falloffStops } from '../optics/illumination.js';
import { circleAt, coversFrom, diagonal } from '../optics/image-circle.js';
import { formats } from '../standards/formats.js';
import { magnification, mm, stops, tenth } from '../units/print.js';
import type { WholeRule } from './whole-rule.js';

/** What the lens throws on the film. */

/** lens-covers: the image circle against the diagonal, at the nearest and at the farthest focus. */
const lensCovers: WholeRule = ({ format, lens, focus }, { optics, settingOut: rod }) => {
  const { coverage, pupilMagnification: P } = lens;
  if (coverage === null) return [];
  const needed = optics.diagonal;
  const from = coversFrom(needed, circleAt(0, coverage, P), P);
  const [far, near] = [circleAt(focus.farthest, coverage, P), circleAt(focus.nearest, coverage, P)];
  const rule = { rule: 'lens-covers', limit: needed, unit: 'mm' } as const;
  if (near < needed - ROUNDING)
    return [
      {
        ...rule,
        level: 'error',
        value: near,
        // at the key that the cure names
        about: from <= rod.reachable ? 'focus.nearest' : 'format',
        message: `Dark corners at every focus: at ${magnification(focus.nearest)} the lens covers ${mm(tenth(near))}, and the diagonal of ${format.name} is ${mm(tenth(needed))}.`,
        hint: coverCure(from, rod.reachable, near),
      },
    ];
  const on = magnification(from, 'nearer');
  // a camera for portraits is built for what the lens covers; one that loses only the far corners keeps its infinity
  const isForPortraits = from > FARTHEST_ROOM && from < focus.nearest;
  return unless(far >= needed - ROUNDING, {
    ...rule,
    level: 'warning',
    value: far,
    about: isForPortraits ? 'focus.farthest' : 'lens.coverage',
    message: `Dark corners far away: at ${magnification(focus.farthest)} the lens covers ${mm(tenth(far))}, and the diagonal of ${format.name} is ${mm(tenth(needed))}. It covers from ${on} on.`,
    hint: `Keep it for subjects at ${on} and nearer${isForPortraits ? `: write farthest: ${on}` : ''}, or mask the corners of the rest.`,
  });
};

/** Farther than this are whole rooms and landscapes: a choice of ours. */
const FARTHEST_ROOM = 1 / 20;

function coverCure(from: number, reachable: number, circle: number): string {
  const on = magnification(from, 'nearer');
  if (from <= reachable) return `It covers from ${on}, which the slide reaches: write nearest: ${on}.`;
  const smaller = formats
    .map(({ name, image }) => ({ name, across: diagonal({ width: image.value[0], height: image.value[1] }) }))
    .filter(({ across }) => across <= circle)
    .sort((a, b) => b.across - a.across)[0];
  const covers = `It covers from ${on}, beyond the slide's reach.`;
  return smaller
    ? `${covers} The largest format that it covers here is ${smaller.name}.`
    : `${covers} Take a smaller format.`;
}

/** A stop is where the eye begins to see it in a plain background; common practice, no source. */
const FALLOFF = 1;

/** corner-falloff: cos⁴ of half the field at the farthest focus, where it is widest. */
const cornerFalloff: WholeRule = ({ lens, focus }, { optics }) => {
  const lost = falloffStops(angleOffAxis(optics.diagonal / 2, lens.focalLength, focus.farthest));
  return unless(lost <= FALLOFF + ROUNDING, {
    rule: 'corner-falloff',
    level: 'note',
    value: lost,
    limit: FALLOFF,
    unit: 'stops',
    about: 'lens.focalLength',
    message: `At ${magnification(focus.farthest)} the corners get ${stops(lost)} less light than the middle.`,
    hint: 'A longer lens or a smaller format evens it out; on paper, hold back the middle of the print.',
  });
};

export const lightRules: readonly WholeRule[] = [lensCovers, cornerFalloff];
