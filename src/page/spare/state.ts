import type { PickedFile } from '../files.js';
import type { CameraText, PartMade, PartSaid } from '../worker/camera-asked.js';

/** What a part alone is asked for. */
export interface SpareAsked {
  /** Mark of the design. */
  readonly of: string;
  readonly part: string;
  readonly thickness: string;
  readonly remnants: readonly PickedFile[];
  readonly since: CameraText | null;
}

/** The part that is chosen, made alone. */
export interface SpareState {
  /** null while no part is chosen that can be made. */
  readonly asked: SpareAsked | null;
  /** Thickness of the sheet at hand, as it stands in the field. */
  readonly thickness: string;
  /** Pieces at hand that it is to be cut from. */
  readonly remnants: readonly PickedFile[];
  /** Rules of level error that may be broken. */
  readonly despite: readonly string[];
  /** What changes with that sheet; null where nothing is asked. */
  readonly said: PartSaid | null;
  readonly saving: boolean;
  /** What came of saving it, for as long as it is asked for like this. */
  readonly made: PartMade | null;
}

export const firstSpare: SpareState = {
  asked: null,
  thickness: '',
  remnants: [],
  despite: [],
  said: null,
  saving: false,
  made: null,
};
