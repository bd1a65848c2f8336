import type { PlanDocument } from '../../index.js';
import { magnification, metres, mm, plainNumber } from '../../units/print.js';
import type { FilmPlane, SectionFigures } from './figures.js';

/** A length as a rule is read: to the tenth. */
export const length = (value: number): string => `${plainNumber(value, 1)} mm`;

/** So little beyond the place for infinity is at infinity, as a magnification. */
const AT_INFINITY = 0.002;

/** What a film in this plane is sharp at: infinity, 1:4.2, or nothing. */
export function sharp({ magnification: m }: Pick<FilmPlane, 'magnification'>): string {
  if (m < -AT_INFINITY) return 'past infinity';
  return m < AT_INFINITY ? 'sharp at infinity' : `sharp at ${magnification(m)}`;
}

/** The distance to a subject at a magnification, from the front principal plane, f·(1 + 1/m); empty at infinity. */
export const subject = (m: number, { optics }: PlanDocument): string =>
  m < AT_INFINITY ? '' : far(optics.focalLength * (1 + 1 / m));

/** As a tape is read: to the millimetre while it is short. */
export const far = (distance: number): string =>
  distance < 1000 ? `${plainNumber(distance, 0)} mm` : metres(distance);

/** The figures as one says them. */
export function spoken(figures: SectionFigures, plan: PlanDocument): string {
  const { setup, planes, overlap, overlapRequired, holderSeat } = figures;
  const films = planes.map((plane) => {
    const at = subject(plane.magnification, plan);
    return `${plane.names.join(' and ')} ${length(plane.distance)} behind the lens seat, ${sharp(plane)}${at === '' ? '' : `, a subject at ${at}`}`;
  });
  const held =
    overlap < overlapRequired
      ? `The boxes overlap by ${length(overlap)}, less than the ${length(overlapRequired)} that they need.`
      : `The boxes overlap by ${length(overlap)} and need ${length(overlapRequired)}.`;
  return `${setup.name}. ${films.join('; ')}. The holder seat is ${length(holderSeat)} behind the front panel. ${held} ${limit(plan)}`;
}

/** What keeps the slide from going farther. */
export function limit({ slide, optics }: PlanDocument): string {
  const { reachableMagnification: reach, limitedBy } = slide;
  const { magnification: asked } = optics.nearest;
  const least = `The boxes must overlap by ${mm(slide.overlapRequired)}: ${limitedBy}.`;
  return reach < asked
    ? `${least} So they reach no nearer than ${magnification(Math.max(reach, 0))}.`
    : `${least} They could reach ${magnification(reach)}.`;
}
