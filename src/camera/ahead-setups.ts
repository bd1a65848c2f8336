import type { Setup } from '../assembly/build.js';
import { ON_THE_ROAD, setupsOf } from '../assembly/setups.js';
import type { Design } from '../design/design.js';
import { pushedOnFrame } from '../model/assembly-steps.js';
import type { Part, Placement } from '../model/part.js';
import { inSetups } from './stances.js';

/** Names of the set-ups in which each thing stands on the rails of the accessory frame, which take one thing at a time. */
export interface OnRails {
  readonly shutter: {
    /** Left out: in all of them. */
    readonly standing?: readonly string[];
    readonly exposing: readonly string[];
    readonly focusing: readonly string[];
  };
  readonly hood: readonly string[];
  readonly cap: readonly string[];
  readonly more: readonly MoreSetup[];
}

/** A set-up that there is only because something else hangs ahead of the lens than as a rule. */
export interface MoreSetup {
  readonly setup: Setup;
  /** Name of the set-up that differs from it in that alone. */
  readonly like: string;
}

/**
 * As a rule the shutter hangs there, and where none is made the hood does. A hood beside a shutter has a set-up of its own,
 * for times by hand; so has the cap, a holder in the camera and its slide drawn; and it stands there for the road.
 */
export function onRails({
  holders,
  shutter,
  hood,
  cap,
}: Pick<Design, 'holders' | 'shutter' | 'hood' | 'cap'>): OnRails {
  const usual = setupsOf(holders.map(inSetups));
  const like = usual.find(({ focusing, orientation }) => !focusing && orientation === 'upright');
  const more = (ahead: 'hood' | 'cap'): readonly MoreSetup[] =>
    like ? [{ setup: { ...like, name: `${like.name}, the ${ahead} on`, ahead }, like: like.name }] : [];
  const hooded = hood && shutter ? more('hood') : [];
  const capped = cap ? more('cap') : [];
  // who has a cap carries the camera with it
  const inUse = usual.filter(({ name }) => !cap || name !== ON_THE_ROAD);
  const names = (all: readonly Setup[]) => all.map(({ name }) => name);
  return {
    shutter: {
      ...(hood || cap ? { standing: names(inUse) } : {}),
      exposing: names(inUse.filter(({ focusing }) => !focusing)),
      focusing: names(inUse.filter(({ focusing }) => focusing)),
    },
    hood: shutter ? names(hooded.map(({ setup }) => setup)) : names(usual).filter((name) => name !== ON_THE_ROAD),
    cap: [...names(capped.map(({ setup }) => setup)), ON_THE_ROAD],
    more: [...hooded, ...capped],
  };
}

/**
 * The parts, standing in these set-ups too where they stand in what is like them; what hangs ahead of the lens says itself
 * where it stands.
 */
export function alsoIn(parts: readonly Part[], more: readonly MoreSetup[]): readonly Part[] {
  if (more.length === 0) return parts;
  const also = (place: Placement): Placement => {
    const added = more.filter(({ like }) => place.when?.includes(like)).map(({ setup }) => setup.name);
    return place.when && added.length > 0 ? { ...place, when: [...place.when, ...added] } : place;
  };
  return parts.map((part) =>
    pushedOnFrame.includes(part.id) ? part : { ...part, placements: part.placements.map(also) },
  );
}

/** All set-ups of a camera, the one for the road last. */
export function withMore(usual: readonly Setup[], more: readonly MoreSetup[]): readonly Setup[] {
  const onTheRoad = usual.filter(({ name }) => name === ON_THE_ROAD);
  return [...usual.filter(({ name }) => name !== ON_THE_ROAD), ...more.map(({ setup }) => setup), ...onTheRoad];
}
