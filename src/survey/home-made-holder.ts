import { madeSizes } from '../design/made-holder.js';
import type { WrittenHolder } from '../design/schema.js';

export interface HomeMadeGiven {
  /** Thickness of the sheet. */
  readonly ply: number;
  readonly boards: { readonly channel: number; readonly lip: number };
  /** Nominal, of the film. */
  readonly width: number;
  readonly imageLong: number;
}

/** The single holder, loaded from behind, that can be cut from the sheet of the camera, as a block of its outside size. */
export function homeMadeHolder({ width: sheetWidth, ...given }: HomeMadeGiven): WrittenHolder {
  const { filmDepth, width, length, thickness } = madeSizes({ ...given, sheetWidth });
  return { name: 'paper holder', filmDepth, depthTo: 'emulsion', width, length, thickness };
}
