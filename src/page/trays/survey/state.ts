import type { Sorting, SurveyPair } from '../../../index.js';
import type { PickedFile } from '../../files.js';
import type { SurveyAsked, SurveyPrepared, SurveyShown } from '../../worker/survey-asked.js';

/** A list of lenses, as it is being typed. */
export interface DrawerList extends PickedFile {
  /** Its text as it was last opened or saved. */
  readonly saved: string;
}

/** Lists of what lies in the drawer, and what camera each lens could become. */
export interface SurveyState {
  readonly lists: readonly DrawerList[];
  /** Formats that are asked for; none: those of each list. */
  readonly formats: readonly string[];
  /** Of the lists as they stand; null before they are read. */
  readonly prepared: SurveyPrepared | null;
  readonly running: { readonly done: number; readonly count: number; readonly stop: () => void } | null;
  /** The last survey that came to its end. */
  readonly surveyed: { readonly of: SurveyAsked; readonly pairs: readonly SurveyPair[] } | null;
  readonly sort: Sorting | null;
  readonly shown: SurveyShown | null;
  /** The row that was opened. */
  readonly chosen: { readonly lens: string; readonly format: string } | null;
  /** Why a pair could not be carried into a design, or a survey came to nothing. */
  readonly trouble: string | null;
}

export const firstSurvey: SurveyState = {
  lists: [],
  formats: [],
  prepared: null,
  running: null,
  surveyed: null,
  sort: null,
  shown: null,
  chosen: null,
  trouble: null,
};
