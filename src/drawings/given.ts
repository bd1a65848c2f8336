import type { Build } from '../assembly/build.js';
import type { Workbench } from '../assembly/workbench.js';
import type { PlanDocument } from '../model/plan.js';

/** What every drawing of the camera is made from. */
export interface DrawingGiven {
  readonly build: Build;
  readonly plan: PlanDocument;
  readonly on: Workbench;
  /** The largest that the drawing may be on paper, mm. */
  readonly room: { readonly width: number; readonly height: number };
}
