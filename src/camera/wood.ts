import type { Ply } from '../joinery/plate.js';

/** The camera's own sheet and the fits that its joints are cut to. */
export interface Wood {
  readonly ply: Ply;
  readonly fits: { readonly press: number; readonly glueSlip: number; readonly slide: number; readonly dropIn: number };
}
