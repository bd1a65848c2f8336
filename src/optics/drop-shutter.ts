/*
 * A falling (guillotine) shutter: a slide with a slot across the light. mm, s, mm/s, mm/s². The slot is as wide as the
 * light is, so that only its length counts; light comes through while it stands between the slot's two edges. All follows
 * from how far the slide has moved: mechanics, OpenStax, University Physics vol. 1, "Free Fall" (module m58286).
 */

/** What moves the slide. */
export interface Fall {
  /** What is left of standard gravity when the guide has rubbed its share away; 0 where a slide moves level and free. */
  readonly acceleration: number;
  /** Speed at release, 0 where it hangs still; a slide at one speed is one with this and no acceleration. */
  readonly startSpeed?: number;
  readonly elastic?: Elastic;
}

/**
 * Elastic that pulls the slide down: a spring after Hooke, whose pull falls off evenly from its greatest at release to
 * nothing where it hangs slack, and which has no mass. Rubber pulls less on its way back than it was stretched by:
 * measure it while it is let go.
 */
interface Elastic {
  /** What its pull adds at release: `accelerationOfPull`. */
  readonly acceleration: number;
  /** How far the slide has moved when it is slack. */
  readonly slackAfter: number;
}

/** What a pull in N gives to a slide of a mass in kg, mm/s²: Newton's second law. */
export const accelerationOfPull = (pull: number, massKg: number): number => (1000 * pull) / massKg;

/** Speed when the slide has moved by s: the work of weight and elastic, v² = v₀² + 2as + w²(2ds − s²), w² = pull/d. */
export function fallSpeed({ acceleration, startSpeed = 0, elastic }: Fall, s: number): number {
  const square = startSpeed * startSpeed + 2 * acceleration * s;
  if (elastic === undefined) return Math.sqrt(square);
  const pulled = Math.min(s, elastic.slackAfter);
  return Math.sqrt(square + elastic.acceleration * pulled * (2 - pulled / elastic.slackAfter));
}

/**
 * Time from release until the slide has moved by s, not negative; from rest √(2s/a).
 *
 * While elastic pulls, the slide swings as a weight on a spring does, about the place d + a/w² where the spring would carry
 * it, and the angle of that swing, whose tangent is v/w over the way left to that place, grows by w each second. Once the
 * elastic is slack the slide falls on with the speed that it has.
 */
export function fallTime(fall: Fall, s: number): number {
  const { acceleration, startSpeed = 0, elastic } = fall;
  if (elastic === undefined) return evenlyFaster(acceleration, startSpeed, s);
  const { slackAfter } = elastic;
  const w = Math.sqrt(elastic.acceleration / slackAfter);
  const middle = slackAfter + acceleration / (w * w);
  const angleAt = (place: number) => Math.atan2(fallSpeed(fall, place) / w, middle - place);
  const pulled = Math.min(s, slackAfter);
  return (angleAt(pulled) - angleAt(0)) / w + evenlyFaster(acceleration, fallSpeed(fall, slackAfter), s - pulled);
}

/** The usual root of s = vt + at²/2, written so that it also holds without acceleration. */
const evenlyFaster = (acceleration: number, speed: number, s: number): number =>
  s === 0 ? 0 : (2 * s) / (speed + Math.sqrt(speed * speed + 2 * acceleration * s));

/** A slot that crosses a round bundle of light. */
export interface Drop {
  readonly fall: Fall;
  /** How far the slide moves from release until the slot's leading edge comes to the upper rim of the bundle. */
  readonly lead: number;
  /** Length of the slot along the fall. */
  readonly slot: number;
  /** Diameter of the bundle that makes one point of the picture, where the slide crosses it: f/N ahead of the lens. */
  readonly bundle: number;
}

interface DropTimes {
  /** From release to first light. */
  readonly opensAfter: number;
  /** From release until no light comes through any more. */
  readonly shutsAfter: number;
  /** From first to last light: what blurs a subject that moves. */
  readonly open: number;
  /** With nothing of the bundle covered; 0 where the slot is too short for that. */
  readonly fullyOpen: number;
  /** As long as a shutter that opened and shut at once would let as much light through: what an exposure is reckoned by. */
  readonly effective: number;
  /** Effective to open time. */
  readonly efficiency: number;
}

/** Times of a drop, derived from the place of both edges of the slot. */
export function dropTimes(drop: Drop): DropTimes {
  const { fall, lead, slot, bundle } = drop;
  const opensAfter = fallTime(fall, lead);
  const shutsAfter = fallTime(fall, lead + slot + bundle);
  const open = shutsAfter - opensAfter;
  const fullyOpen = Math.max(0, fallTime(fall, lead + slot) - fallTime(fall, lead + bundle));
  const effective = effectiveTime(drop);
  return { opensAfter, shutsAfter, open, fullyOpen, effective, efficiency: effective / open };
}

/** With a lead of nothing the error falls with the fourth power of their number: 64 leave less than a millionth. */
const NODES = 64;

/**
 * Effective time: each line across the bundle is lit from the leading to the trailing edge, t(h + L + y) − t(h + y), and
 * counts by its length, √(y(D − y)). Gauss and Chebyshev's quadrature of the second kind has just this weight: nodes
 * y = D/2·(1 + cos(kπ/(n + 1))), weights sin²(kπ/(n + 1)) (Abramowitz and Stegun 25.4.40).
 *
 * At one speed it is L/v whatever the bundle is. The short cut by the middle of the bundle is 3 % low with a small lead.
 */
export function effectiveTime({ fall, lead, slot, bundle }: Drop): number {
  let sum = 0;
  let weights = 0;
  for (let k = 1; k <= NODES; k++) {
    const angle = (k * Math.PI) / (NODES + 1);
    const y = (bundle / 2) * (1 + Math.cos(angle));
    const weight = Math.sin(angle) ** 2;
    sum += weight * (fallTime(fall, lead + slot + y) - fallTime(fall, lead + y));
    weights += weight;
  }
  return sum / weights;
}

interface SlotWanted extends Omit<Drop, 'slot'> {
  /** Effective time wanted. */
  readonly time: number;
  /** The slots that can be cut. */
  readonly shortest: number;
  readonly longest: number;
}

type SlotFound =
  | { readonly slot: number }
  /** null, and the effective times that the shortest and the longest slot give. */
  | { readonly slot: null; readonly from: number; readonly to: number };

/** A double has 53 halvings; after these nothing is left to halve of any slot. */
const HALVINGS = 60;

/** Length of slot for an effective time, which grows with it; null where the slots that can be cut do not reach it. */
export function slotForTime({ time, shortest, longest, ...drop }: SlotWanted): SlotFound {
  const timeOf = (slot: number) => effectiveTime({ ...drop, slot });
  const from = timeOf(shortest);
  const to = timeOf(longest);
  if (time < from || time > to) return { slot: null, from, to };
  let low = shortest;
  let high = longest;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (timeOf(middle) < time) low = middle;
    else high = middle;
  }
  return { slot: (low + high) / 2 };
}

/** A drop, and the points of the picture that it lights: where the middles of their bundles lie along the fall. */
interface DropOverField extends Drop {
  /** How far ahead of the axis the first bundle is met, and how far after it the last; `lead` and `bundle` are the axis's. */
  readonly offset: number;
}

interface Evenness {
  /** Effective times at the first point met, on the axis, at the last. */
  readonly first: number;
  readonly axis: number;
  readonly last: number;
  /** By how many stops the first point gets more light than the last: the slide grows faster on its way. */
  readonly stops: number;
  /** From the first light of the first point to the last light of the last. */
  readonly open: number;
}

/**
 * How evenly a picture is lit by a shutter away from the pupil, where the bundles of the field's edges pass it above and
 * below that of the axis (`distance·tan(half field)`).
 *
 * @returns null where the first bundle would already be lit before the slide is let go, lead < offset
 */
export function evenness({ offset, ...drop }: DropOverField): Evenness | null {
  if (drop.lead < offset) return null;
  const at = (shift: number) => dropTimes({ ...drop, lead: drop.lead + shift });
  const first = at(-offset);
  const last = at(offset);
  return {
    first: first.effective,
    axis: effectiveTime(drop),
    last: last.effective,
    stops: Math.log2(first.effective / last.effective),
    open: last.shutsAfter - first.opensAfter,
  };
}

/** How far the slide has to fall in all: until the slot's trailing edge has left the last bundle. */
export const fallNeeded = ({ lead, slot, bundle, offset }: Omit<DropOverField, 'fall'>): number =>
  lead + slot + bundle + offset;
