import type { CameraText, Compared } from '../../worker/camera-asked.js';

/** The camera that the design is held against. */
export interface Before {
  readonly camera: CameraText;
  /** What it is called on the page. */
  readonly name: string;
}

export interface WhatChangedState {
  readonly before: Before | null;
  /** Why what was picked is no camera that can be read. */
  readonly trouble: string | null;
  /** What `answer` is of: the earlier camera, and the mark of the design. */
  readonly asked: { readonly camera: CameraText; readonly of: string } | null;
  /** null until the first comes. */
  readonly answer: Compared | null;
}

export const firstWhatChanged: WhatChangedState = { before: null, trouble: null, asked: null, answer: null };

/** The camera that stands already, where one was opened that can be read. */
export function standing({ before, answer }: WhatChangedState): CameraText | null {
  return before === null || answer === null || 'refused' in answer ? null : before.camera;
}
