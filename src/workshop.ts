import { bookFiles, drawBuild, type WriteDocument } from './build-book.js';
import { compareCameras, piecesToCut } from './compare/compare.js';
import { recordOf } from './compare/record.js';
import { drawCoupon } from './coupon/piece.js';
import { couponSheet } from './coupon/sheet.js';
import { cutting, FIRE, LEAST_EFFORT } from './cutting.js';
import type { Design } from './design/design.js';
import { kerfPlausible } from './design/plausible-sheet.js';
import { revisionOf } from './design/revision.js';
import { compareJson } from './files/compare-page.js';
import { overviewSvg } from './files/overview.js';
import { partsJson } from './files/parts-json.js';
import { sheetsPage } from './files/sheets-page.js';
import type { Kernel } from './geometry/kernel.js';
import type { Move } from './model/assembly-move.js';
import type { BuiltCamera } from './model/built-camera.js';
import type { CompareDocument } from './model/compare.js';
import type { Finding } from './model/finding.js';
import type { OutputFile } from './model/output-file.js';
import type { PlanDocument } from './model/plan.js';
import type { ProofDocument } from './model/proof.js';
import { inOrder, type Planned, planCamera, planOf } from './pipeline.js';
import { meshesOf, type Print, printFiles, printsOf } from './print-files.js';
import type { LightProof } from './proof/light.js';
import { prove, putTogether } from './proof/prove.js';
import { remnantFiles, sheetFiles, textFile } from './sheet-files.js';
import { partsPart } from './sheets/checks.js';
import { cutLine, cutOnce } from './sheets/cut-line.js';
import { cutMinutes } from './sheets/cut-time.js';
import { EFFORT, type LayOut } from './sheets/lay-out.js';
import { couponForm, couponGiven } from './test-piece.js';
import { kg, mm, plainNumber } from './units/print.js';

export interface Progress {
  readonly stage: string;
  /** From 0 to 1. */
  readonly done: number;
}

export interface BuildResult {
  readonly files: readonly OutputFile[];
  readonly plan: PlanDocument;
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

export interface CheckOptions {
  readonly onProgress: (progress: Progress) => void;
  /** How long better layouts of the sheets are looked for, in units of about a tenth of a second. */
  readonly effort?: number;
  /** Gives the proof of the dark, where another thread makes it meanwhile. */
  readonly lightOf?: () => LightProof;
}

export interface CheckResult {
  readonly findings: readonly Finding[];
  /** Null where there is no camera to put together. */
  readonly proof: ProofDocument | null;
  /** A drawing of each leak that was found. */
  readonly leaks: readonly OutputFile[];
  /** The ways that things went in, as they were proven. */
  readonly moves: readonly Move[];
}

/** not-proven: nothing was put together, and nobody may think that it was. */
export const NOT_PROVEN: Finding = {
  rule: 'not-proven',
  level: 'note',
  message: 'The parts were not put together, for there is no camera yet: neither fit nor light was looked at.',
  hint: 'Cure what is named above and check again.',
};

/** Everything that can be said against a design: what was typed, what was sized, the parts put together, and their sheets. */
export const checkCamera = (design: Design, kernel: Kernel, { lightOf, ...options }: CheckOptions): CheckResult =>
  beginCheck(design, kernel, options)(lightOf);

/**
 * The check without the dark, which another thread may look into meanwhile: the function that comes back is given how to
 * come by that, and ends the check.
 */
export function beginCheck(
  design: Design,
  kernel: Kernel,
  { onProgress, effort = LEAST_EFFORT }: Omit<CheckOptions, 'lightOf'>,
): (lightOf?: () => LightProof) => CheckResult {
  onProgress({ stage: 'sizing', done: 0 });
  const planned = planCamera(design);
  if (!planned.drawable)
    return () => ({ findings: inOrder([...planned.findings, NOT_PROVEN]), proof: null, leaks: [], moves: [] });
  const { findings } = cutting(planned, planned.parts, { effort, onProgress: packing(onProgress) });
  onProgress({ stage: 'putting it together', done: 0.4 });
  const together = putTogether(design, planned.build, kernel);
  return (lightOf) => {
    const proof = prove(design, planned.build, kernel, { together, ...(lightOf === undefined ? {} : { lightOf }) });
    onProgress({ stage: 'done', done: 1 });
    return {
      findings: inOrder([...planned.findings, ...proof.findings, ...findings]),
      proof: proof.document,
      leaks: leakFiles(proof.leaks),
      moves: together.moves,
    };
  };
}

/**
 * The way through, second half.
 *
 * ```
 * Part[] ─engrave─▶ Part[] ─lay out─▶ Sheet[] ─write─▶ OutputFile[]
 *                     └─ print ─▶ Mesh ─────────write─▶ OutputFile[]
 * ```
 */
export function buildCamera(
  design: Design,
  kernel: Kernel,
  { despite, onProgress, lightOf, writeDocument, effort = EFFORT, since }: BuildOptions,
): BuildResult {
  const stage = (name: string, done: number) => onProgress({ stage: name, done });
  stage('sizing', 0);
  const planned = planCamera(design);
  const changes = since === undefined ? null : changesSince(since, planned);
  const { build, bare, cut, pieces, findings } = cutting(planned, planned.parts, {
    effort,
    onProgress: packing(onProgress),
    ...(changes === null ? {} : { pieces: changes.pieces }),
  });
  stage('modelling prints', 0.4);
  const prints = printsOf(build.parts, kernel);
  const drawn = (waived: readonly string[]): readonly OutputFile[] => [
    ...sheetFiles({ ...planned, despite: waived }, cut),
    ...remnantFiles(planned, cut),
    textFile(
      'sheets/overview.svg',
      overviewSvg(cut.sheets, {
        title: [`${design.name}, revision ${planned.revision}`, ...despiteText(waived)].join('; '),
        pieces,
        offcuts: cut.offcuts,
      }),
    ),
  ];
  // the search for light runs beside: what need not wait for the proof is done before it
  const sheetsDrawn = despite.length === 0 ? drawn([]) : null;
  stage('putting it together', 0.5);
  const together = planned.drawable ? putTogether(design, planned.build, kernel) : null;
  stage('drawing', 0.55);
  const drawings =
    together === null
      ? null
      : drawBuild({ build, plan: planOf(planned), moves: together.moves }, kernel, (share) =>
          stage('drawing', 0.55 + 0.3 * share),
        );
  stage('looking for light', 0.85);
  const proven =
    together === null
      ? { findings: [NOT_PROVEN], leaks: [], document: null }
      : prove(design, planned.build, kernel, { together, ...(lightOf === undefined ? {} : { lightOf }) });
  stage('writing the book', 0.95);
  const all = [...proven.findings, ...findings];
  const waived = brokenRules([...planned.findings, ...all]).filter((rule) => despite.includes(rule));
  const plan = planOf(planned, all, waived);
  const { revision } = planned;
  const files: readonly OutputFile[] = [
    textFile('plan.json', `${JSON.stringify(plan, null, 2)}\n`),
    textFile('parts.json', partsJson(build, revision, meshesOf(prints))),
    ...(changes === null ? [] : [textFile('changes.json', compareJson(changes.changes))]),
    ...(sheetsDrawn ?? drawn(waived)),
    ...leakFiles(proven.leaks).map((file) => ({ ...file, path: `drawings/${file.path}` })),
    ...(drawings === null || proven.document === null
      ? []
      : bookFiles(
          { planned, build, plan, sheets: cut.sheets, bare, proof: proven.document, drawings, since: changes },
          writeDocument,
        )),
    ...printFiles(prints),
  ];
  stage('done', 1);
  return {
    files,
    plan,
    findings: plan.findings,
    summary: [
      ...summaryOf(planned, cut, changes === null ? printsText(prints.length) : []),
      ...(changes === null ? [] : sinceText(changes.changes, prints)),
      ...despiteText(waived).map((line) => `${upper(line)}.`),
    ],
  };
}

/** Moves the bar while sheets are packed, a hundredth of that at a time. */
export function packing(onProgress: CheckOptions['onProgress']): (done: number) => void {
  const stage = 'packing sheets';
  onProgress({ stage, done: 0.1 });
  let told = 0;
  return (done) => {
    if (done < told + 0.01) return;
    told = done;
    onProgress({ stage, done: 0.1 + 0.3 * done });
  };
}

export interface BuildOptions extends CheckOptions {
  /** Rules of level error that may be broken. */
  readonly despite: readonly string[];
  readonly writeDocument: WriteDocument;
  /** The camera that stands already: sheets hold only what it does not have. */
  readonly since?: BuiltCamera;
}

/** What the camera that stands already must be given, and how many pieces of each part that are. */
function changesSince(before: BuiltCamera, planned: Planned) {
  const after = recordOf(planOf(planned), planned.build);
  const counts = piecesToCut(before, after);
  return {
    before,
    after,
    changes: compareCameras(before, after),
    // what is used away from the camera is printed, and no record has it
    pieces: (id: string, count: number): number => counts.get(id) ?? count,
  };
}

function sinceText(
  { recut, sawn, keeps, engraved, glued }: CompareDocument,
  prints: readonly Print[],
): readonly string[] {
  const printed = new Set(prints.map(({ part }) => part.id));
  const cut = recut.filter((id) => !printed.has(id));
  const print = recut.filter((id) => printed.has(id));
  return [
    `${cut.length === 0 ? 'Nothing is cut again' : `Cut again: ${cut.join(', ')}`}; ${keeps.length} kinds of parts are kept.`,
    ...(print.length === 0 ? [] : [`Print again: ${print.join(', ')}.`]),
    ...(sawn.length === 0 ? [] : [`Of a camera that is glued up saw the opening of ${sawn.join(', ')} out instead.`]),
    ...(engraved.length === 0 ? [] : [`Kept, but with other lines or words: ${engraved.join(', ')}.`]),
    ...(glued.length === 0
      ? []
      : [`Kept, but glued to what is cut again: ${glued.join(', ')}. Of a camera that is glued up, cut them too.`]),
  ];
}

export const leakFiles = (drawings: readonly string[]): readonly OutputFile[] =>
  drawings.map((drawing, i) => textFile(`leak-${i + 1}.svg`, drawing));

/** The rules of level error that are broken. */
export const brokenRules = (findings: readonly Finding[]): readonly string[] => [
  ...new Set(findings.filter(({ level }) => level === 'error').map(({ rule }) => rule)),
];

export const despiteText = (rules: readonly string[]): readonly string[] =>
  rules.length === 0 ? [] : [`built despite ${rules.join(', ')}`];

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export interface CouponFiles {
  readonly files: readonly OutputFile[];
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

/** The test piece of a design's sheet and laser, and the form for what is measured on it. */
export function couponFiles(design: Design): CouponFiles {
  const implausible = kerfPlausible(design);
  if (implausible.length > 0) return { files: [], findings: implausible, summary: [] };
  const given = couponGiven(design);
  const coupon = drawCoupon(given);
  const { kerf } = given;
  const sheet = couponSheet(coupon, { ...given, margin: design.workshop.margin });
  const findings = [
    ...coupon.parts.flatMap(({ part }) =>
      cutOnce(
        part,
        [part.outline, ...part.holes].map((edge) => cutLine(edge, { kerf })),
        { kerf },
      ),
    ),
    ...partsPart(sheet),
  ];
  const titled = { ...design, name: `Test piece for ${design.name}` };
  const size = `${plainNumber(sheet.width, 0)} × ${plainNumber(sheet.height, 0)} mm`;
  return {
    files: [
      ...sheetFiles({ design: titled, revision: revisionOf(design), despite: [] }, { sheets: [sheet] }),
      textFile('readings.yaml', couponForm(design).filled({})),
    ],
    findings: inOrder(findings),
    summary: [
      `Test piece of ${given.material}, drawn for a kerf of ${mm(kerf)}: a remnant of ${size}, ${plainNumber(sheet.cutLength / 1000, 1)} m to cut.`,
      'Cut it from the sheet of the camera with the same settings. What to measure is engraved on it; write it into readings.yaml.',
      'Its strips are narrow enough to fall between the slats of the bed: lay the sheet on a flat board that may be scorched.',
      FIRE,
    ],
  };
}

function summaryOf({ design, revision, camera }: Planned, cut: LayOut, prints: readonly string[]): readonly string[] {
  const { name, laser } = design;
  return [
    `${name}, revision ${revision}: ${kg(Math.round(camera.balance.massKg * 100) / 100)} with the lens and the glass.`,
    ...sheetsPage(cut, (sheet) => cutMinutes(sheet, laser)),
    ...prints,
    FIRE,
  ];
}

const printsText = (count: number): readonly string[] =>
  count === 0 ? [] : [`${count} printed ${count === 1 ? 'part' : 'parts'}.`];
