/**
 * What the printed fittings of a processing holder are told. Its frame is that of the holder: x right and y up with the open
 * end up, seen from behind; depth counts from the face that bears on the holder seat, towards the lid.
 */
export interface TankFittingsGiven {
  /** Width of the line that the printer lays. */
  readonly nozzle: number;
  /** The chamber as it is cut: half its width, and y of the inner face of the wall at its open end. */
  readonly chamber: { readonly halfWidth: number; readonly end: number };
  /** y of the outer face of that wall. */
  readonly openEnd: number;
  /**
   * The depths between which the wall is notched for spout and vent: from the window ply to the lip where all plies of the
   * chamber are, or the plies that are not left whole.
   */
  readonly notch: { readonly from: number; readonly to: number };
  /** Where the dark slide is drawn: half its width, the depth of the back of its channel, and how far its handle stands out when it is closed. */
  readonly slide: { readonly halfWidth: number; readonly back: number; readonly handle: number };
  /** Depth of the lid's outside, on which the tank lies. */
  readonly lid: number;
  /** Least areas of the passages, mm². */
  readonly passage: { readonly spout: number; readonly vent: number };
}
