import type { Barrel, Lens, LensFlange } from '../../design/design.js';

/** The lens as it stands in the camera: its barrel in three lengths from the seat, and its own flange where it has one. */
export interface MountedLens {
  readonly name: string;
  readonly seat: number;
  readonly barrel: Barrel;
  readonly by: Lens['mount']['by'];
  readonly side: Lens['mount']['side'];
  readonly flange: LensFlange | null;
  /** Plug and board: what lies between a ring and the lens's shoulder. */
  readonly boardThickness: number;
}

export const opening = ({ seat, barrel }: MountedLens): { readonly z: number; readonly diameter: number } => ({
  z: seat - barrel.front,
  diameter: barrel.frontDiameter,
});
