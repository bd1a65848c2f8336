import type { Design } from './design/design.js';
import type { Kernel } from './geometry/kernel.js';
import type { KitRunOptions, KitRunResult } from './kit-run.js';
import type { Move } from './model/assembly-move.js';
import type { Finding } from './model/finding.js';
import type { PlanDocument } from './model/plan.js';
import type { ShownSection, TakenOut } from './model/shown.js';
import type { SurveyDocument } from './model/survey.js';
import { type Planned, planCamera, planOf } from './pipeline.js';
import type { LightProof } from './proof/light.js';
import type { MadeShapes, shownSolids } from './shown/solids.js';
import type { PartsResult, PartsWanted } from './spare-parts.js';
import type { couponForm, takeReadings } from './test-piece.js';
import type { BuildOptions, BuildResult, CheckOptions, CheckResult, CouponFiles } from './workshop.js';

export type { CouponAnswers } from './coupon/form.js';
export type { CouponQuestion } from './coupon/readings.js';
export type { Design } from './design/design.js';
export type { ChangedKey } from './design/edit.js';
export { designJsonSchema } from './design/json-schema.js';
export { slugOf } from './design/names.js';
export { nearestWord } from './design/nearest-word.js';
export { newHolderTrouble } from './design/new-holder.js';
export { type Problem, printProblem } from './design/problem.js';
export { readDesign } from './design/read.js';
export { keepingReader } from './design/reader.js';
export { readFilmDepth, readSheetThickness } from './design/schema.js';
export { starter } from './design/starter.js';
export { type Explained, explain, explainAtOnce, figureMoves } from './explain/explain.js';
export { budgetPage } from './files/budget-page.js';
export type { CompareWords } from './files/compare-page.js';
export type { DiallingWords } from './files/dialling-page.js';
export { explainPage, explanationJson, figureList, figureListJson } from './files/explain-page.js';
export type { ExposureWords } from './files/exposure-page.js';
export type { LensWords } from './files/lens-page.js';
export { MANIFEST, manifestOf } from './files/manifest.js';
export { type Colour, findingsPage, planPage } from './files/plan-page.js';
export type { ProcessWords } from './files/process-page.js';
export { proofPage } from './files/proof-page.js';
export type { Labels } from './files/sheets-shown.js';
export type { SurveyWords } from './files/survey-page.js';
export { isResultFlag } from './forms/result-flags.js';
export type { Kernel } from './geometry/kernel.js';
export type { KitRunOptions, KitRunResult } from './kit-run.js';
export type { BuiltCamera } from './model/built-camera.js';
export type { CompareDocument } from './model/compare.js';
export type { Finding } from './model/finding.js';
export type { OutputFile } from './model/output-file.js';
export type { PlanDocument, PlanSpacer } from './model/plan.js';
export type { Prices } from './model/prices.js';
export { type Rule, rules } from './model/rules.js';
export type { StepSheet } from './model/step-sheet.js';
export type { SurveyDocument, SurveyPair } from './model/survey.js';
export type { Planned } from './pipeline.js';
export type { LightProof } from './proof/light.js';
export { readRemnant } from './sheets/remnant-file.js';
export type { SheetRemnant } from './sheets/stock.js';
export type { MadeShapes } from './shown/solids.js';
export type { PartsDocument, PartsResult, PartsWanted } from './spare-parts.js';
export type { SpacerResult, SpacerWanted } from './spare-spacer.js';
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
} from './workshop.js';

/** The camera's figures and what was found: quick, with nothing of the workshop loaded. */
export function planDesign(design: Design): { readonly plan: PlanDocument; readonly findings: readonly Finding[] } {
  const plan = planOf(planCamera(design));
  return { plan, findings: plan.findings };
}

/** What takes packing, solids and writers; loaded when it is asked for. */
export interface LoadedWorkshop {
  readonly check: (design: Design, options: CheckOptions) => CheckResult;
  /** The check in two halves: the second waits for what was found of the dark elsewhere. */
  readonly beginCheck: (
    design: Design,
    options: Omit<CheckOptions, 'lightOf'>,
  ) => (lightOf?: () => LightProof) => CheckResult;
  readonly build: (design: Design, options: BuildOptions) => BuildResult;
  readonly kits: (design: Design, options: KitRunOptions) => KitRunResult;
  readonly coupon: (design: Design) => CouponFiles;
  readonly couponForm: typeof couponForm;
  readonly takeReadings: typeof takeReadings;
}

/** @param wasm where the solid kernel lies, for whoever has it elsewhere than its package */
export async function loadWorkshop(wasm?: string): Promise<LoadedWorkshop> {
  const [workshop, kitRun, testPiece, { loadKernel }] = await Promise.all([
    import('./workshop.js'),
    import('./kit-run.js'),
    import('./test-piece.js'),
    import('./geometry/kernel.js'),
  ]);
  const kernel = await loadKernel(wasm);
  return {
    check: (design, options) => workshop.checkCamera(design, kernel, options),
    beginCheck: (design, options) => workshop.beginCheck(design, kernel, options),
    build: (design, options) => workshop.buildCamera(design, kernel, options),
    kits: (design, options) => kitRun.buildKits(design, kernel, options),
    coupon: (design) => workshop.couponFiles(design),
    couponForm: testPiece.couponForm,
    takeReadings: testPiece.takeReadings,
  };
}

/** What makes one more spacer: without prints and their writers, for it is waited for. */
export const loadSpacer = () => import('./spare-spacer.js');

/**
 * What makes single parts of a camera: without the rest of the workshop, so that a spare part is there at once.
 *
 * @param kernelOf gives the solid kernel, for whoever has one already; it is three megabytes that no sheet needs
 */
export async function loadSpares(kernelOf: () => Promise<Kernel> = ownKernel) {
  const parts = await import('./spare-parts.js');
  return {
    /** What is to be said of the parts that are named before they are made, or why there are none. */
    asked: parts.askParts,
    /** The parts that are named, or why there are none. */
    parts: async (design: Design, wanted: PartsWanted): Promise<PartsResult | { readonly refused: string }> => {
      const asked = parts.askParts(design, wanted);
      if ('refused' in asked) return asked;
      return parts.writeParts(asked, asked.printed ? await kernelOf() : null);
    },
  };
}

const ownKernel = async (): Promise<Kernel> => (await import('./geometry/kernel.js')).loadKernel();

/** What holds two cameras against each other, each planned now or as it was built. */
export async function loadCompare() {
  const [record, built, compare, page] = await Promise.all([
    import('./compare-cameras.js'),
    import('./forms/read-built.js'),
    import('./compare/compare.js'),
    import('./files/compare-page.js'),
  ]);
  return {
    recordOfDesign: record.recordOfDesign,
    recordOfPlanned: record.recordOfPlanned,
    readBuilt: built.readBuilt,
    compareCameras: compare.compareCameras,
    comparePage: page.comparePage,
    compareWords: page.compareWords,
    compareJson: page.compareJson,
  };
}

/** What a screen shows of a camera beside its figures. */
export async function loadShown() {
  const [pipeline, { loadKernel }, { endOfSlide }] = await Promise.all([
    import('./pipeline.js'),
    import('./geometry/kernel.js'),
    import('./camera/camera.js'),
  ]);
  return {
    planCamera: pipeline.planCamera,
    planOf: (planned: Planned) => pipeline.planOf(planned),
    endOfSlide: ({ design, camera }: Planned) => endOfSlide(design, camera.settingOut),
    loadKernel,
  };
}

/** A design as a form to fill in, and what writes into the file what was typed there. */
export async function loadForm() {
  const [{ designForm }, { writeKeys }, { madeUpIn }] = await Promise.all([
    import('./design/form.js'),
    import('./design/write-keys.js'),
    import('./design/made-up.js'),
  ]);
  return { designForm, writeKeys, madeUpIn };
}

/** The camera as solids to look at; `known` is what was made before. */
export async function loadSolids(): Promise<
  (planned: Planned, kernel: Kernel, known?: MadeShapes) => ReturnType<typeof shownSolids>
> {
  const shown = await import('./shown/solids.js');
  return (planned, kernel, known) => {
    const { build, camera, design } = planned;
    const { short, long } = design.format.image;
    const films = planOf(planned).holders.map(({ name, effectiveDepth }) => ({
      holder: name,
      z: build.gate.z + effectiveDepth,
    }));
    const light = { pupil: camera.optics.pupil, image: { width: short, height: long }, films };
    return shown.shownSolids({ build, light }, kernel, known);
  };
}

/** The camera sawn along its axis. */
export async function loadSection(): Promise<(planned: Planned) => ShownSection> {
  const { shownSection } = await import('./shown/section.js');
  return ({ build, design }) => {
    const { short, long } = design.format.image;
    return shownSection(build, { width: short, height: long });
  };
}

/** How the camera comes apart again, back along the ways that were proven. */
export async function loadTakenOut(): Promise<(planned: Planned, moves: readonly Move[]) => TakenOut> {
  const { takenOut } = await import('./shown/taken-out.js');
  return ({ build }, moves) => takenOut(build, moves);
}

/** What lays parts on sheets, and what a screen shows of that. */
export async function loadSheets() {
  const { sheetsAtOnce, sheetsSought } = await import('./show-sheets.js');
  return { sheetsAtOnce, sheetsSought };
}

/** What tries other values of a design's numbers. */
export async function loadWhatIf() {
  const [inputs, point] = await Promise.all([import('./what-if/inputs.js'), import('./what-if/point.js')]);
  return { whatIfInputs: inputs.whatIfInputs, whatIfPoint: point.whatIfPoint };
}

/** What writes documents, with the letters that it is given. */
export async function loadDocuments() {
  const { pagePdf } = await import('./files/pdf.js');
  return { pagePdf };
}

/** What puts the files of a folder into one archive, from which the same folder can be unpacked; and what goes with them. */
export async function loadArchive() {
  const [{ zip, unzip }, { sha256 }, { laserCaution }] = await Promise.all([
    import('./files/zip.js'),
    import('./files/sha-256.js'),
    import('./files/svg.js'),
  ]);
  return { zip, unzip, sha256, laserCaution };
}

/** What tells where on the camera a finding is. */
export async function loadPlaces() {
  const { aboutParts } = await import('./shown/about-parts.js');
  return { aboutParts };
}

/** What makes figures of a lens from readings on the bench, and what they are shown as. */
export async function loadBench() {
  const [forms, sheet, figures, page, drawing] = await Promise.all([
    import('./forms/bench-readings.js'),
    import('./forms/bench-sheet.js'),
    import('./lens-figures.js'),
    import('./files/lens-page.js'),
    import('./files/page-svg.js'),
  ]);
  return {
    benchJsonSchema: forms.benchJsonSchema,
    benchSheet: sheet.benchSheet,
    benchYaml: sheet.benchYaml,
    benchCsv: sheet.benchCsv,
    takeLens: figures.takeLens,
    lensJson: page.lensJson,
    lensPage: page.lensPage,
    lensWords: page.lensWords,
    pageSvg: drawing.pageSvg,
  };
}

/** The part of the check that looks for light, alone and for a second thread: null where there is no camera to look into. */
export async function loadLight(): Promise<
  (design: Design, options?: { readonly onProgress?: (share: number) => void }) => LightProof | null
> {
  const { proveLight } = await import('./proof/light.js');
  return (design, options) => {
    const { build, drawable } = planCamera(design);
    return drawable ? proveLight(design, build, options) : null;
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
    exposureWords: page.exposureWords,
    diallingPage: dialling.diallingPage,
    diallingWords: dialling.diallingWords,
  };
}

/** What draws the card of a camera. */
export async function loadCard() {
  const { cardFiles } = await import('./sitting-card.js');
  return { cardFiles };
}

/** What makes the step sheet of a print from its process, and what it is shown as. */
export async function loadProcess() {
  const [sheet, form, page, tank] = await Promise.all([
    import('./print-process.js'),
    import('./forms/process-file.js'),
    import('./files/process-page.js'),
    import('./step-sheet/tank-of.js'),
  ]);
  return {
    tankOf: tank.tankOf,
    processSheet: sheet.processSheet,
    processFile: form.processFile,
    processJsonSchema: form.processJsonSchema,
    processPage: page.processPage,
    processWords: page.processWords,
    processJson: page.processJson,
  };
}

/** What reads the prices for a run of kits, and where its folder is. */
export async function loadPrices() {
  const [form, read, run] = await Promise.all([
    import('./forms/price-file.js'),
    import('./forms/read-prices.js'),
    import('./kits/run-folder.js'),
  ]);
  return {
    priceFile: form.priceFile,
    pricesJsonSchema: form.pricesJsonSchema,
    readPrices: read.readPrices,
    runSlug: run.runSlug,
    MOST_COPIES: run.MOST_COPIES,
  };
}

/** What draws the card of a process. */
export async function loadProcessCard() {
  const { processCardFiles, cardPapers } = await import('./process-card.js');
  return { processCardFiles, cardPapers };
}

/** What reads lists of lenses and reckons what camera each lens could become. */
export async function loadSurvey() {
  const [forms, read, asked, survey, design] = await Promise.all([
    import('./forms/lenses.js'),
    import('./forms/read-lenses.js'),
    import('./survey/formats.js'),
    import('./survey/survey.js'),
    import('./survey/pair-design.js'),
  ]);
  return {
    lensesFile: forms.lensesFile,
    lensesJsonSchema: forms.lensesJsonSchema,
    readLenses: read.readLenses,
    formatName: read.formatName,
    formatsAsked: asked.formatsAsked,
    prepareSurvey: survey.prepareSurvey,
    pairDesign: design.pairDesign,
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
    surveyWords: page.surveyWords,
    surveyCharts: (survey: SurveyDocument) => chart.surveyChart(survey).map(drawing.pageSvg),
    surveyChart: chart.surveyChart,
  };
}
