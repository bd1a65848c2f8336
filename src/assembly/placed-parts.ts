import type { Part } from '../model/part.js';
import { boxesOf, type PlacedBox } from './extent.js';
import { type StandingOutline, type StandingPlate, standingOutlines, standingPlates } from './standing-plate.js';

/** A part with what many rules ask of it, so that each of its places is measured once. */
export interface PlacedPart {
  readonly part: Part;
  readonly boxes: readonly PlacedBox[];
  /** Drawn when the first rule asks. */
  readonly outlines: () => readonly StandingOutline[];
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
  let drawn: readonly StandingOutline[] | null = null;
  let cut: readonly StandingPlate[] | null = null;
  const outlines = () => {
    drawn ??= standingOutlines(part);
    return drawn;
  };
  const plates = () => {
    cut ??= standingPlates(part, outlines());
    return cut;
  };
  return { part, boxes: boxesOf(part), outlines, plates };
}

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
