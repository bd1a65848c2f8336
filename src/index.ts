import type { Design } from './design/design.js';
import type { Finding } from './model/finding.js';
import type { PlanDocument } from './model/plan.js';
import type { SurveyDocument } from './model/survey.js';
import { planCamera, planOf } from './pipeline.js';
import type { LightProof } from './proof/light.js';
import type { couponForm, takeReadings } from './test-piece.js';
import type {
  BuildOptions,
  BuildResult,
  CheckOptions,
  CheckResult,
  CouponFiles,
  SpacerResult,
  SpacerWanted,
} from './workshop.js';

export type { CouponAnswers } from './coupon/form.js';
export type { CouponQuestion } from './coupon/readings.js';
export type { Design } from './design/design.js';
export type { ChangedKey } from './design/edit.js';
export { designJsonSchema } from './design/json-schema.js';
export { slugOf } from './design/names.js';
export { nearestWord } from './design/nearest-word.js';
export { type Problem, printProblem } from './design/problem.js';
export { readDesign } from './design/read.js';
export { starter } from './design/starter.js';
export { type Explained, explain } from './explain/explain.js';
export { budgetPage } from './files/budget-page.js';
export { explainPage, explanationJson, figureList, figureListJson } from './files/explain-page.js';
export { type Colour, findingsPage, planPage } from './files/plan-page.js';
export { proofPage } from './files/proof-page.js';
export { isResultFlag } from './forms/result-flags.js';
export type { Finding } from './model/finding.js';
export type { OutputFile } from './model/output-file.js';
export type { PlanDocument, PlanSpacer } from './model/plan.js';
export { type Rule, rules } from './model/rules.js';
export type { SurveyDocument, SurveyPair } from './model/survey.js';
export type { LightProof } from './proof/light.js';
export { readRemnant } from './sheets/remnant-file.js';
export { formats } from './standards/formats.js';
export { byFocalLength, type Sorting, sorted, sortings } from './survey/order.js';
export type { Survey, SurveyGiven } from './survey/survey.js';
export type { ReadingsTaken } from './test-piece.js';
export { parseLength } from './units/length.js';
export { parseMagnification } from './units/ratio.js';
export type {
  BuildOptions,
  BuildResult,
  CheckOptions,
  CheckResult,
  CouponFiles,
  Progress,
  SpacerResult,
  SpacerWanted,
} from './workshop.js';

/** The camera's figures and what was found: quick, with nothing of the workshop loaded. */
export function planDesign(design: Design): { readonly plan: PlanDocument; readonly findings: readonly Finding[] } {
  const plan = planOf(planCamera(design));
  return { plan, findings: plan.findings };
}

/** What takes packing, solids and writers; loaded when it is asked for. */
export interface LoadedWorkshop {
  readonly check: (design: Design, options: CheckOptions) => CheckResult;
  readonly build: (design: Design, options: BuildOptions) => BuildResult;
  readonly spacer: (design: Design, wanted: SpacerWanted) => SpacerResult;
  readonly coupon: (design: Design) => CouponFiles;
  readonly couponForm: typeof couponForm;
  readonly takeReadings: typeof takeReadings;
}

export async function loadWorkshop(): Promise<LoadedWorkshop> {
  const [workshop, testPiece, { loadKernel }] = await Promise.all([
    import('./workshop.js'),
    import('./test-piece.js'),
    import('./geometry/kernel.js'),
  ]);
  const kernel = await loadKernel();
  return {
    check: (design, options) => workshop.checkCamera(design, kernel, options),
    build: (design, options) => workshop.buildCamera(design, kernel, options),
    spacer: (design, wanted) => workshop.spacerAlone(design, wanted),
    coupon: (design) => workshop.couponFiles(design),
    couponForm: testPiece.couponForm,
    takeReadings: testPiece.takeReadings,
  };
}

/** What writes documents, with the letters that it is given. */
export async function loadDocuments() {
  const { pagePdf } = await import('./files/pdf.js');
  return { pagePdf };
}

/** What makes figures of a lens from readings on the bench, and what they are shown as. */
export async function loadBench() {
  const [forms, figures, page, drawing] = await Promise.all([
    import('./forms/bench-readings.js'),
    import('./lens-figures.js'),
    import('./files/lens-page.js'),
    import('./files/page-svg.js'),
  ]);
  return {
    benchJsonSchema: forms.benchJsonSchema,
    takeLens: figures.takeLens,
    lensJson: page.lensJson,
    lensPage: page.lensPage,
    pageSvg: drawing.pageSvg,
  };
}

/** The part of the check that looks for light, alone and for a second thread: null where there is no camera to look into. */
export async function loadLight(): Promise<(design: Design) => LightProof | null> {
  const { proveLight } = await import('./proof/light.js');
  return (design) => {
    const { build, drawable } = planCamera(design);
    return drawable ? proveLight(design, build) : null;
  };
}

/** What exposes a sitting, and what it is shown as. */
export async function loadSitting() {
  const [sitting, log, form, page, dialling] = await Promise.all([
    import('./sitting.js'),
    import('./sitting-log.js'),
    import('./forms/read-sitting-log.js'),
    import('./files/exposure-page.js'),
    import('./files/dialling-page.js'),
  ]);
  return {
    expose: sitting.expose,
    exposeLogged: log.exposeLogged,
    sittingLogJsonSchema: form.sittingLogJsonSchema,
    exposurePage: page.exposurePage,
    exposureJson: page.exposureJson,
    diallingPage: dialling.diallingPage,
  };
}

/** What draws the card of a camera. */
export async function loadCard() {
  const { cardFiles } = await import('./sitting-card.js');
  return { cardFiles };
}

/** What reads lists of lenses and reckons what camera each lens could become. */
export async function loadSurvey() {
  const [forms, read, asked, survey] = await Promise.all([
    import('./forms/lenses.js'),
    import('./forms/read-lenses.js'),
    import('./survey/formats.js'),
    import('./survey/survey.js'),
  ]);
  return {
    lensesFile: forms.lensesFile,
    lensesJsonSchema: forms.lensesJsonSchema,
    readLenses: read.readLenses,
    formatsAsked: asked.formatsAsked,
    prepareSurvey: survey.prepareSurvey,
  };
}

/** What a survey is shown as. */
export async function loadSurveyFiles() {
  const [json, csv, page, chart, drawing] = await Promise.all([
    import('./files/survey-json.js'),
    import('./files/survey-csv.js'),
    import('./files/survey-page.js'),
    import('./files/survey-chart.js'),
    import('./files/page-svg.js'),
  ]);
  return {
    surveyJson: json.surveyJson,
    surveyCsv: csv.surveyCsv,
    surveyPage: page.surveyPage,
    surveyCharts: (survey: SurveyDocument) => chart.surveyChart(survey).map(drawing.pageSvg),
  };
}
