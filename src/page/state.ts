import type { Finding, PlanDocument } from '../index.js';
import type { KeyEdit } from '../model/design-form.js';
import type { ShownSection, ShownSolids } from '../model/shown.js';
import { type DesignView, firstDesignView } from './design/state.js';
import type { ServedState } from './served/state.js';
import { firstSpare, type SpareState } from './spare/state.js';
import { type FiguresState, firstFigures } from './trays/figures/state.js';
import { type FindingsState, firstFindings } from './trays/findings/state.js';
import { firstLens, type LensState } from './trays/lens/state.js';
import { firstProcess, type ProcessState } from './trays/process/state.js';
import { firstSheets, type SheetsState } from './trays/sheets/state.js';
import { firstSitting, type SittingState } from './trays/sitting/state.js';
import { firstSurvey, type SurveyState } from './trays/survey/state.js';
import { firstTakeAway, type TakeAwayState } from './trays/take-away/state.js';
import { firstOneMore, type OneMoreState } from './trays/what-changed/holder-state.js';
import { firstWhatChanged, type WhatChangedState } from './trays/what-changed/state.js';
import { firstWhatIf, type WhatIfState } from './trays/what-if/state.js';
import type { DesignText, Reading } from './worker/questions.js';

/** Names of the trays beside the camera, in the order in which a builder asks. */
export const trayNames = [
  'findings',
  'figures',
  'sheets',
  'what-if',
  'what-changed',
  'lens',
  'survey',
  'sitting',
  'process',
  'take-away',
] as const;
export type TrayName = (typeof trayNames)[number];

/** Light or dark by the user’s word; as the system has it where there is none. */
export const themes = ['system', 'light', 'dark'] as const;
export type Theme = (typeof themes)[number];

/** The last camera that could be planned. */
export interface Shown {
  readonly of: DesignText;
  readonly plan: PlanDocument;
  /** Of the plan alone; what the proof finds comes later. */
  readonly findings: readonly Finding[];
  readonly drawable: boolean;
  /** The nearest focus at the end of the reserve, as a magnification. */
  readonly reached: number;
  /** null until they are made, and where there is no camera to put together. */
  readonly solids: ShownSolids | null;
  readonly section: ShownSection | null;
}

/** Steps of one field in quick succession. */
export interface Burst {
  /** Path of the field. */
  readonly of: string;
  /** When it was stepped last, ms since the page began. */
  readonly at: number;
  /** The text before the first of them. */
  readonly from: string;
}

/** What the page knows. Each tray has a slice of its own. */
export interface State {
  readonly design: DesignText;
  /** The design as it was opened: the very same for as long as no other is. */
  readonly opened: DesignText;
  /** The text as it was last opened or saved; null where no file ever had it. */
  readonly saved: string | null;
  readonly past: readonly string[];
  readonly future: readonly string[];
  /** Changes of keys that the desk has not written into the text yet. */
  readonly edits: readonly KeyEdit[];
  readonly burst: Burst | null;
  /** Of the newest text that was read; null before the first. */
  readonly reading: Reading | null;
  readonly shown: Shown | null;
  readonly designView: DesignView;
  readonly tray: TrayName;
  /** In one column: whether the design lies open in place of a tray. */
  readonly atDesign: boolean;
  /** Whether the window has room for one column alone. */
  readonly narrow: boolean;
  readonly theme: Theme;
  /** Whether the tray takes the room of the camera too. */
  readonly spread: boolean;
  /** Something that the user should know now, such as a file that could not be saved. */
  readonly notice: string | null;
  /** Why the design was not saved when that was last asked for; it stays until it is saved, or put away. */
  readonly notSaved: string | null;
  /** The part that is chosen, made alone. */
  readonly spare: SpareState;
  readonly findings: FindingsState;
  readonly figures: FiguresState;
  readonly sheets: SheetsState;
  readonly whatIf: WhatIfState;
  readonly whatChanged: WhatChangedState;
  /** A holder that turned up later. */
  readonly oneMore: OneMoreState;
  readonly lens: LensState;
  readonly survey: SurveyState;
  readonly sitting: SittingState;
  readonly process: ProcessState;
  readonly takeAway: TakeAwayState;
  /** null where no program serves a design, or another one was opened. */
  readonly served: ServedState | null;
}

export const firstState = (design: DesignText): State => ({
  design,
  opened: design,
  saved: design.text,
  past: [],
  future: [],
  edits: [],
  burst: null,
  reading: null,
  shown: null,
  designView: firstDesignView,
  tray: 'findings',
  atDesign: false,
  narrow: false,
  theme: 'system',
  spread: false,
  notice: null,
  notSaved: null,
  spare: firstSpare,
  findings: firstFindings,
  figures: firstFigures,
  sheets: firstSheets,
  whatIf: firstWhatIf,
  whatChanged: firstWhatChanged,
  oneMore: firstOneMore,
  lens: firstLens,
  survey: firstSurvey,
  sitting: firstSitting,
  process: firstProcess,
  takeAway: firstTakeAway,
  served: null,
});

/** Whether the camera that is shown is that of an earlier text, because the newest is none. */
export const isStale = ({ reading, shown }: State): boolean =>
  shown !== null && reading !== null && reading.problems !== null;
