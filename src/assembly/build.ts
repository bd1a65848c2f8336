import type { Part } from '../model/part.js';
import type { PlacedParts } from './placed-parts.js';

/** A place of the moving groups: how far they have slid along +z from the closest. */
export interface Station {
  readonly name: string;
  readonly rear: number;
}

/** One thing that the photographer does with the camera. */
export interface Setup {
  readonly name: string;
  readonly holder: string;
  /** Upright: the open end up. Lengthwise: the back a quarter turn anticlockwise seen from behind. */
  readonly orientation: 'upright' | 'lengthwise';
  readonly loads: 'top' | 'side';
  readonly focusing: boolean;
  /** The smaller size that is put into the holder. */
  readonly insert?: string;
  /** What hangs ahead of the lens then, where that is not what does as a rule. */
  readonly ahead?: 'hood' | 'cap';
}

/** The parts put together, at every station and in every set-up. */
export interface Build {
  readonly parts: readonly Part[];
  /** The same parts, measured once for all rules; left out where they are measured anew for each. */
  readonly placed?: PlacedParts;
  readonly stations: readonly Station[];
  readonly setups: readonly Setup[];
  /** The opening of the back at the holder seat, at the closest station, upright. */
  readonly gate: { readonly z: number; readonly width: number; readonly height: number };
  /** Where light is meant to come in: the lens's front. */
  readonly opening: { readonly z: number; readonly diameter: number };
}
