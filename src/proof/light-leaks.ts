import type { Push } from '../assembly/bodies.js';
import type { Opaque } from '../assembly/screens.js';
import { type Leak, leakOf } from './light-leak.js';
import type { Scene } from './light-scene.js';
import { searchLight } from './light-search.js';

/** Glimpses past the edges of one part that are followed up, as drawn and worn: many are of one gap. */
const FOLLOWED = 12;

/** The gaps, each once: as drawn rather than worn, and where it is widest. */
export function leaksIn(scene: Scene, most: number, onProgress?: (share: number) => void): readonly Leak[] {
  const found = new Map<string, Leak>();
  const followed = new Map<string, number>();
  const past = (solid: Opaque, push: Push) => `${solid.piece.part.id} ${push === 'none'}`;
  searchLight(
    scene,
    (glimpse) => {
      const key = past(glimpse.solid, glimpse.stance.push);
      const before = followed.get(key) ?? 0;
      if (before >= FOLLOWED) return true;
      followed.set(key, before + 1);
      const leak = leakOf(scene, glimpse);
      if (leak === null) return true;
      const gap = leak.across === null ? 'a whole side' : leak.parts.map(({ id }) => id).join(' ');
      const known = found.get(gap);
      if (known === undefined || worse(leak, known)) found.set(gap, leak);
      return found.size < most;
    },
    (solid, push) => (followed.get(past(solid, push)) ?? 0) >= FOLLOWED,
    onProgress,
  );
  const gaps = [...found.values()].filter(({ across }) => across !== null);
  return gaps.length > 0 ? gaps : [...found.values()];
}

const worse = (one: Leak, other: Leak): boolean =>
  one.stance.push === other.stance.push || (one.stance.push !== 'none') === (other.stance.push !== 'none')
    ? one.width > other.width
    : one.stance.push === 'none';

/** What light comes through. */
export const gapWords = ({ parts: [a, b], across }: Leak): string =>
  across === null
    ? `what is open beside ${a.id} (${a.name})`
    : a.id === b.id
      ? `an opening in ${a.id} (${a.name})`
      : `the gap between ${a.id} (${a.name}) and ${b.id} (${b.name})`;

/** How it stands, told in words. */
export const WORN: { readonly [P in Push]: string } = {
  none: 'as it is cut',
  right: 'once the felt is gone and everything sits at the right end of its play',
  left: 'once the felt is gone and everything sits at the left end of its play',
  up: 'once the felt is gone and everything sits at the upper end of its play',
  down: 'once the felt is gone and everything sits at the lower end of its play',
};
