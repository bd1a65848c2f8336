import type { Finding, PlanDocument, Problem, SurveyPair, starter } from '../../index.js';
import type { BenchSheet } from '../../model/bench-sheet.js';
import type { DesignForm, KeyEdit } from '../../model/design-form.js';
import type { Explanation } from '../../model/explanation.js';
import type { ShownSection, ShownSolids } from '../../model/shown.js';
import type { ShownSheets } from '../../model/shown-sheets.js';
import type { WhatIfInput, WhatIfPoint } from '../../model/what-if.js';
import type { PickedFile } from '../files.js';
import type { CameraText, Compared, PartAsked, PartMade, PartSaid, SpacerAsked } from './camera-asked.js';
import type { BenchForm, BenchOpened, LensAnswer } from './lens-asked.js';
import type { PlacedFinding } from './placed-finding.js';
import type { ProcessAnswer, ProcessCardAnswer, ProcessText } from './process-asked.js';
import type { CardAnswer, LogGiven, SittingAnswer, Typed } from './sitting-asked.js';
import type { SurveyAsked, SurveyDone, SurveyForm, SurveyPrepared, SurveyShown } from './survey-asked.js';

/** A design as the page holds it: its text, under the name of its file, and the files that lie beside it. */
export interface DesignText {
  readonly file: string;
  readonly text: string;
  /** Remnants that the design names, by the name that it has for them. */
  readonly beside: Readonly<Record<string, string>>;
}

/** What became of a text: the camera that it asks for, or why there is none. */
export type Reading = (
  | { readonly form: DesignForm | null; readonly problems: readonly Problem[] }
  | {
      readonly form: DesignForm;
      readonly problems: null;
      readonly plan: PlanDocument;
      readonly findings: readonly Finding[];
      /** Whether there is a camera to put together. */
      readonly drawable: boolean;
      /** The nearest focus at the end of the reserve, as a magnification. */
      readonly reached: number;
    }
) & {
  /** With the edits that could be made in it. */
  readonly text: string;
  /** Why each of the others could not. */
  readonly refused: readonly Problem[];
  /** Keys whose figures nobody has measured. */
  readonly madeUp: readonly string[];
};

/**
 * What the page may ask its desk, one line each: what is given, and what is answered. Everything that passes is data.
 * Answers that could not be given because a newer question took their place never come.
 */
export interface Questions {
  /** Reads a design, its keys changed first where edits are given. */
  readonly reading: { readonly given: DesignText & { readonly edits?: readonly KeyEdit[] }; readonly answer: Reading };
  /** null where there is no camera to put together. */
  readonly solids: { readonly given: DesignText; readonly answer: ShownSolids | null };
  readonly 'format-names': {
    readonly given: null;
    readonly answer: readonly { readonly name: string; readonly title: string }[];
  };
  /** A design from what must be known, the lengths as they were typed; or what is wrong, by the key of the answer. */
  readonly 'new-design': {
    readonly given: Readonly<Record<keyof Parameters<typeof starter>[0], string>>;
    readonly answer:
      | { readonly file: string; readonly text: string }
      | { readonly wrong: Readonly<Record<string, string>> };
  };
  readonly section: { readonly given: DesignText; readonly answer: ShownSection | null };
  /** A lens from its readings, as often as one is typed; into a design where one is given. */
  readonly lens: {
    readonly given: { readonly sheet: BenchSheet; readonly at: string; readonly design: DesignText | null };
    readonly answer: LensAnswer;
  };
  readonly 'bench-open': {
    readonly given: { readonly file: string; readonly text: string };
    readonly answer: BenchOpened;
  };
  readonly 'bench-save': {
    readonly given: { readonly sheet: BenchSheet; readonly at: string; readonly as: BenchForm };
    readonly answer: string;
  };
  readonly sheets: { readonly given: DesignText; readonly answer: ShownSheets | null };
  readonly 'what-if-inputs': { readonly given: DesignText; readonly answer: readonly WhatIfInput[] };
  /** One value tried; the present one where nothing is written. */
  readonly 'what-if-point': {
    readonly given: {
      readonly of: DesignText;
      readonly path: string;
      readonly tried: { readonly value: number; readonly written: string | null };
      readonly sheets: 'counted' | 'left out';
    };
    readonly answer: WhatIfPoint;
  };
  /** The records in an archive of a built folder; none where it is no such archive. */
  readonly archived: { readonly given: { readonly bytes: Uint8Array }; readonly answer: readonly PickedFile[] };
  /** Null where the text is no design. */
  readonly compare: {
    readonly given: { readonly before: CameraText; readonly after: DesignText };
    readonly answer: Compared | null;
  };
  /** One part alone: what is to be said of it, and its files. */
  readonly 'part-said': { readonly given: PartAsked & { readonly of: DesignText }; readonly answer: PartSaid };
  readonly 'part-files': {
    readonly given: PartAsked & { readonly of: DesignText; readonly despite: readonly string[] };
    readonly answer: PartMade;
  };
  /** The spacer of one more holder, and its files. */
  readonly spacer: { readonly given: SpacerAsked & { readonly of: DesignText }; readonly answer: PartMade };
  readonly explain: {
    readonly given: { readonly of: DesignText; readonly figure: string };
    readonly answer: Omit<Explanation, 'changes' | 'otherChanges'> | null;
  };
  readonly moves: {
    readonly given: { readonly of: DesignText; readonly figure: string };
    readonly answer: Pick<Explanation, 'changes' | 'otherChanges'> | null;
  };
  /** Findings of the plan, with their places on the camera. */
  readonly places: { readonly given: DesignText; readonly answer: readonly PlacedFinding[] };
  /** The exposure of a sitting, as often as something is typed for it. */
  readonly sitting: {
    readonly given: { readonly design: DesignText; readonly typed: Typed; readonly log: LogGiven | null };
    readonly answer: SittingAnswer;
  };
  readonly card: {
    readonly given: { readonly design: DesignText; readonly typed: Typed };
    readonly answer: CardAnswer;
  };
  /** The step sheet of a process, as often as something is typed into it. */
  readonly process: { readonly given: ProcessText; readonly answer: ProcessAnswer };
  readonly 'process-card': { readonly given: ProcessText; readonly answer: ProcessCardAnswer };
  /** What there is to survey in some lists, or what is wrong with them. */
  readonly 'survey-lists': { readonly given: SurveyAsked; readonly answer: SurveyPrepared };
  readonly 'survey-shown': { readonly given: SurveyDone; readonly answer: SurveyShown | null };
  readonly 'survey-file': {
    readonly given: SurveyDone & { readonly as: SurveyForm };
    readonly answer: readonly string[];
  };
  /** A design for one pair; null where its list cannot be carried into one. */
  readonly 'survey-design': {
    readonly given: SurveyAsked & { readonly pair: SurveyPair };
    readonly answer: string | null;
  };
}

export type QuestionName = keyof Questions;
export type Given<Name extends QuestionName> = Questions[Name]['given'];
export type Answer<Name extends QuestionName> = Questions[Name]['answer'];

/** From the page to its desk. */
export type ToDesk =
  | {
      readonly kind: 'ask';
      readonly id: number;
      readonly name: QuestionName;
      readonly given: unknown;
      readonly rank: number;
    }
  | { readonly kind: 'forget'; readonly id: number };

/** From the desk to the page; a mistake of ours comes as its words. */
export type FromDesk =
  | { readonly kind: 'ready' }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: unknown }
  | { readonly kind: 'mistake'; readonly id: number; readonly words: string };
