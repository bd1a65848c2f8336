import type { Part } from '../model/part.js';
import { boxesOf, type PlacedBox } from './extent.js';

/** A part and the boxes round it in all of its places: most rules ask for them, so they are measured once. */
export interface PlacedPart {
  readonly part: Part;
  readonly boxes: readonly PlacedBox[];
}

/** The parts of a build by their ids. */
export interface PlacedParts {
  /** Those that were measured: a build with others in their stead has to measure its own. */
  readonly parts: readonly Part[];
  readonly byId: ReadonlyMap<string, PlacedPart>;
}

export function placedParts(parts: readonly Part[]): PlacedParts {
  const byId = new Map<string, PlacedPart>();
  for (const part of parts) byId.set(part.id, placed(part));
  return { parts, byId };
}

const placed = (part: Part): PlacedPart => ({ part, boxes: boxesOf(part) });

interface PartsOfBuild {
  readonly parts: readonly Part[];
  readonly placed?: PlacedParts;
}

/** The parts of a build as they were measured, or measured now where it has others in their stead. */
export const placedOf = ({ parts, placed: known }: PartsOfBuild): PlacedParts =>
  known?.parts === parts ? known : placedParts(parts);

/** A part of a build by its id. */
export function placedIn({ parts, placed: known }: PartsOfBuild, id: string): PlacedPart | undefined {
  if (known?.parts === parts) return known.byId.get(id);
  const part = parts.find((one) => one.id === id);
  return part === undefined ? undefined : placed(part);
}
