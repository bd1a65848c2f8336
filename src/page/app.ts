import type { KeyEdit } from '../model/design-form.js';
import type { Keeping } from './design/keeping.js';
import type { Desk } from './desk.js';
import type { PoseBox } from './pose.js';
import type { State, TrayName } from './state.js';
import type { Workbench } from './workbench.js';
import type { DesignText } from './worker/questions.js';

/** What every part of the page is handed: what is known, and what may be done. */
export interface App {
  readonly state: () => State;
  /** Changes what the page knows, and has it drawn anew before the next picture. */
  readonly change: (to: (state: State) => Partial<State>) => void;
  readonly pose: PoseBox;
  readonly ask: Desk['ask'];
  readonly workbench: Workbench;
  /**
   * Changes keys of the design; the text follows.
   *
   * @param stepped the field that is stepped by a key that may be held: a burst of its steps is undone as one
   */
  readonly edit: (edits: readonly KeyEdit[], stepped?: string) => void;
  /** Puts another text in place of the design. */
  readonly write: (text: string) => void;
  /** Opens another design: nothing can be undone past it. */
  readonly open: (design: DesignText) => void;
  /** Opens a design that no file has yet. */
  readonly begin: (design: DesignText) => void;
  /** Lays remnants beside the design, by name. */
  readonly layBeside: (beside: DesignText['beside']) => void;
  readonly keeping: Keeping;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Opens a tray; in one column the design is one of them. */
  readonly turnTo: (tray: TrayName | 'design') => void;
}
