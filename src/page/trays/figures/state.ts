import type { Explanation } from '../../../model/explanation.js';

/** What the page keeps for this tray. */
export interface FiguresState {
  /** The figure that is explained; null where none is. */
  readonly asked: AskedFigure | null;
  /** The figure that the pointer rests on. */
  readonly under: string | null;
  /** The figure that the focus went back to when its explanation was put away: it is explained again when that is asked. */
  readonly left: string | null;
  /** How it came about, once that is known. */
  readonly about: Omit<Explanation, 'changes' | 'otherChanges'> | null;
  /** What moves it: that takes longer. */
  readonly moves: Pick<Explanation, 'changes' | 'otherChanges'> | null;
}

export interface AskedFigure {
  /** Where it stands in the plan: slide.rearBoxInside. */
  readonly figure: string;
  /** Mark of the design that it is explained for. */
  readonly of: string;
  /** Held, it stays while the pointer passes over others. */
  readonly held: boolean;
  /** The figures that led here, from the one in the list on. */
  readonly trail: readonly string[];
}

export const firstFigures: FiguresState = { asked: null, under: null, left: null, about: null, moves: null };
