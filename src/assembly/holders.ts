import type { BoughtPart, Part, Placement } from '../model/part.js';

/** A holder is one block where it is bought, and all that lies in its group where it is made: rules and drawings ask for either here. */

/** What a part stands for in the camera, where it is one of those that rules and drawings ask for. */
export const roleOf = (part: Part): BoughtPart['role'] => (part.kind === 'printed' ? undefined : part.role);

/** Whether this bears on the camera for a whole holder: the block, or the face of one that is made. */
export const isHolderFace = (part: Part): boolean => roleOf(part) === 'holder';

/** The one part that slides in a holder that is made; what is glued to it goes with it. */
export const isDarkSlide = (part: Part): boolean =>
  part.kind === 'flat' && isOfHolder(part) && part.joins.some(({ by }) => by === 'slide');

/** Ids of the dark slides, with what is glued to them: drawn, they stand as far out of a holder as that is long. */
export function darkSlideIds(parts: readonly Part[]): ReadonlySet<string> {
  const slides = new Set(parts.filter(isDarkSlide).map(({ id }) => id));
  const glued = parts.filter(({ joins }) => joins.some(({ to, by }) => by === 'glue' && slides.has(to)));
  return new Set([...slides, ...glued.map(({ id }) => id)]);
}

/** The name of the holder that something is in; null where it is in none. */
export const holderOf = ({ group }: Placement): string | null => (typeof group === 'string' ? null : group.holder);

/** Whether a part belongs to a holder: to the one of that name, or to any. */
export const isOfHolder = ({ placements }: Part, name?: string): boolean =>
  placements.some((placement) => {
    const own = holderOf(placement);
    return own !== null && (name === undefined || own === name);
  });
