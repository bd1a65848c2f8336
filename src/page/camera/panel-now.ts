import type { PlanDocument } from '../../model/plan.js';
import type { ShownSolids, TakenStep } from '../../model/shown.js';
import type { Stage } from './stage.js';

/** How far the canvas is: three dimensions come late, and not everywhere. */
export type Sight = 'coming' | 'there' | 'lost' | 'none';

/** What is shown now, as the controls need it. */
export interface PanelNow {
  readonly sight: Sight;
  readonly plan: PlanDocument;
  readonly solids: ShownSolids;
  /** The nearest focus at the end of the reserve, as a magnification. */
  readonly reached: number;
  /** How the set-up comes apart; null until that is proven. */
  readonly steps: readonly TakenStep[] | null;
  readonly touched: string | null;
  readonly stage: Stage | null;
  /** Takes the canvas in hand when it is there. */
  readonly hold: (element: Element | undefined) => void;
  readonly touch: (part: string | null) => void;
  readonly savePicture: () => void;
}
