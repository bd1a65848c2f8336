import type { PlanDocument, PlanHolder } from '../../model/plan.js';
import { magnification, mm, plainNumber, tenth } from '../../units/print.js';

/** Where a holder is in focus, as a way of the slide from the closest station, mm. */
export interface FocusRange {
  readonly infinity: number;
  /** The far end that was asked for: infinity, or nearer. */
  readonly farEnd: number;
  readonly nearest: number;
}

export function focusRange(plan: PlanDocument, holder: string): FocusRange {
  const { closest } = plan.slide;
  const { seat } = holderOf(plan, holder);
  return {
    infinity: seat.infinity - closest,
    farEnd: (seat.farthest ?? seat.infinity) - closest,
    nearest: seat.nearest - closest,
  };
}

/** The plan of a camera has a holder for each set-up. */
function holderOf(plan: PlanDocument, name: string): PlanHolder {
  const found = plan.holders.find((holder) => holder.name === name) ?? plan.holders[0];
  if (found === undefined) throw new Error('a camera has a holder');
  return found;
}

/** The magnification at which the film of a holder is in focus: below 0 the slide stands nearer than infinity. */
export const magnificationAt = (plan: PlanDocument, holder: string, rear: number): number =>
  (rear - focusRange(plan, holder).infinity) / plan.optics.focalLength;

/** The way of the slide at a magnification. */
export const rearAt = (plan: PlanDocument, holder: string, m: number): number =>
  focusRange(plan, holder).infinity + plan.optics.focalLength * m;

/** Nearer to infinity than this nobody sets a slide by hand, mm. */
const AT_INFINITY = 0.05;

/** The way of the slide for a subject so far before the front principal plane: m = f / (u − f). Not nearer than f. */
export const rearFor = (plan: PlanDocument, holder: string, distance: number): number => {
  const { focalLength } = plan.optics;
  return rearAt(plan, holder, focalLength / (distance - focalLength));
};

/** From the front principal plane: f (1 + 1/m); null at infinity and before it. */
export const subjectDistance = (focalLength: number, m: number): number | null =>
  m * focalLength < AT_INFINITY ? null : focalLength * (1 + 1 / m);

/** Less than this past the nearest is no reserve, as a magnification: rounding. */
const NO_RESERVE = 1e-6;

/** How far the slide runs on past the nearest, for a lens that is longer than it says; empty where it does not. */
export function reserveWords({ optics }: PlanDocument, reached: number): string {
  const { focalLength, nearest } = optics;
  const past = reached - nearest.magnification;
  if (past < NO_RESERVE) return '';
  return `${mm(tenth(past * focalLength))} past the nearest, to ${placeWords(focalLength, reached)}`;
}

/** Why the slide does not stand where a subject at this distance is sharp; empty where it does. */
export function outOfReach(
  plan: PlanDocument,
  holder: string,
  distance: number,
  most: number,
  reached: number,
): string {
  const { focalLength } = plan.optics;
  const wanted = `${lengthWords(distance)} is out of reach`;
  if (distance <= focalLength)
    return `${wanted}: within the focal length, ${mm(tenth(focalLength))}, nothing is sharp.`;
  const rear = rearFor(plan, holder, distance);
  if (rear < -AT_INFINITY)
    return `${wanted}: this slide goes no farther than ${placeWords(focalLength, magnificationAt(plan, holder, 0))}.`;
  if (rear <= most + AT_INFINITY) return '';
  const on = reserveWords(plan, reached);
  return `${wanted}: the nearest is ${placeWords(focalLength, magnificationAt(plan, holder, most))}${on === '' ? '' : `; the slide runs on ${on}`}.`;
}

const placeWords = (focalLength: number, m: number): string => {
  const distance = subjectDistance(focalLength, m);
  return distance === null ? 'infinity' : `${magnification(m)}, ${lengthWords(distance)}`;
};

/** What the focus is set to, in words. */
export function focusWords(plan: PlanDocument, holder: string, rear: number): string {
  const m = magnificationAt(plan, holder, rear);
  const { focalLength } = plan.optics;
  const drawn = `drawn out ${mm(tenth(rear))}`;
  const distance = subjectDistance(focalLength, m);
  if (distance !== null) return `${magnification(m)}, ${lengthWords(distance)} before the lens; ${drawn}`;
  return m * focalLength > -AT_INFINITY
    ? `infinity; ${drawn}`
    : `${mm(tenth(-m * focalLength))} past infinity; ${drawn}`;
}

/** As a tape measure is read: in metres where mm would pretend to more than it shows. */
const lengthWords = (length: number): string =>
  length < 1000 ? `${plainNumber(length, 0)} mm` : `${plainNumber(length / 1000, length < 10_000 ? 2 : 0)} m`;
