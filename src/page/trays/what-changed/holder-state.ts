import type { PartMade } from '../../worker/camera-asked.js';

/** What is known of a holder that turned up later, as it stands in the fields. */
export interface HolderTyped {
  readonly depth: string;
  readonly name: string;
  /** Thickness of the sheet at hand; empty where it is that of the design. */
  readonly thickness: string;
}

/** A holder that the camera was not built for, and its spacer. */
export interface OneMoreState extends HolderTyped {
  /** What `made` is of, or will be: the fields, and the mark of the design. */
  readonly asked: (HolderTyped & { readonly of: string }) | null;
  /** null while nothing is asked, and until the first answer comes. */
  readonly made: PartMade | null;
}

export const firstOneMore: OneMoreState = { depth: '', name: '', thickness: '', asked: null, made: null };
