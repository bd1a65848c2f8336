import type { Stance } from '../loose.js';

/** A holder as the camera meets it: its face on the seat, or on a spacer. */
export interface HeldHolder {
  readonly id: string;
  readonly name: string;
  readonly seat: number;
  readonly width: number;
  readonly thickness: number;
  readonly closedExtent: number;
  readonly openExtent: number;
  readonly filmDepth: number;
  readonly massKg: number;
  readonly pinHoles: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly stance: Stance;
  /** What it bears on: the back plate or a spacer. */
  readonly on: string;
}
