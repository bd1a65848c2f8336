import type { Sorting, SurveyPair, SurveyWords } from '../../index.js';
import type { Page } from '../../model/page.js';

/** Lists of lenses, and the formats that are asked for by name; none: those of each list. */
export interface SurveyAsked {
  readonly lists: readonly { readonly file: string; readonly text: string }[];
  readonly formats: readonly string[];
}

/** What there is to survey, or what is wrong with the lists. */
export type SurveyPrepared =
  | { readonly count: number; readonly formats: readonly string[] }
  | { readonly problems: readonly string[] };

/** All pairs of a survey, and the figure that they are ordered by; null: as in the lists. */
export interface SurveyDone extends SurveyAsked {
  readonly pairs: readonly SurveyPair[];
  readonly sort: Sorting | null;
}

export interface SurveyShown {
  readonly words: SurveyWords;
  /** In the order of the rows. */
  readonly pairs: readonly SurveyPair[];
  /** Lens of each of the words' lenses. */
  readonly lenses: readonly string[];
  readonly charts: readonly Page[];
}

export type SurveyForm = 'csv' | 'json' | 'svg';

/** To a thread that surveys: first what, then pairs from one number up to another, batch by batch. */
export type ToSurveyor =
  | { readonly kind: 'begin'; readonly asked: SurveyAsked }
  | { readonly kind: 'batch'; readonly from: number; readonly to: number };

export type FromSurveyor =
  | { readonly kind: 'pairs'; readonly from: number; readonly pairs: readonly SurveyPair[] }
  | { readonly kind: 'mistake'; readonly words: string };
