import type { Part } from '../model/part.js';
import { boxesOf, type PlacedBox } from './extent.js';
import { type StandingPlate, standingPlates } from './standing-plate.js';

/** A part with what many rules ask of it, so that each of its places is measured once. */
export interface PlacedPart {
  readonly part: Part;
  readonly boxes: readonly PlacedBox[];
  /** Drawn when the first rule asks. */
  readonly plates: () => readonly StandingPlate[];
}

/** The parts of a build by their ids. */
export interface PlacedParts {
  /** Those that were measured: a build with others in their stead has to measure its own. */
  readonly parts: readonly Part[];
  readonly byId: ReadonlyMap<string, PlacedPart>;
}

export const placedParts = (parts: readonly Part[]): PlacedParts => ({
  parts,
  byId: new Map(parts.map((part) => [part.id, placed(part)])),
});

function placed(part: Part): PlacedPart {
  let drawn: readonly StandingPlate[] | null = null;
  const plates = () => {
    drawn ??= standingPlates(part);
    return drawn;
  };
  return { part, boxes: boxesOf(part), plates };
}

/** A part of a build by its id. */
export function placedIn(
  build: { readonly parts: readonly Part[]; readonly placed?: PlacedParts },
  id: string,
): PlacedPart | undefined {
  if (build.placed?.parts === build.parts) return build.placed.byId.get(id);
  const part = build.parts.find((one) => one.id === id);
  return part === undefined ? undefined : placed(part);
}
