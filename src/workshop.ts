import { bookFiles, drawBuild, type WriteDocument } from './build-book.js';
import { BESIDE_CAMERA } from './camera/beside-camera.js';
import { spacerChecks } from './camera/spacer/checks.js';
import { spacerParts } from './camera/spacer/parts.js';
import { drawCoupon } from './coupon/piece.js';
import { couponSheet } from './coupon/sheet.js';
import { cutting, FIRE, LEAST_EFFORT } from './cutting.js';
import type { Design } from './design/design.js';
import { kerfPlausible } from './design/plausible-sheet.js';
import { revisionOf } from './design/revision.js';
import { threeMf } from './files/3mf.js';
import { sheetDxf } from './files/dxf.js';
import { layoutJson } from './files/layout-json.js';
import { overviewSvg } from './files/overview.js';
import { type PrintedFile, partsJson } from './files/parts-json.js';
import { layersText } from './files/plan-page.js';
import { remnantJson } from './files/remnant-json.js';
import { sheetsPage } from './files/sheets-page.js';
import { stl } from './files/stl.js';
import { laserCaution, sheetSvg, sheetTitle } from './files/svg.js';
import { type Boundary, type Kernel, realise } from './geometry/kernel.js';
import { buildPrism } from './geometry/modelling.js';
import type { Move } from './model/assembly-move.js';
import type { Finding } from './model/finding.js';
import type { OutputFile } from './model/output-file.js';
import type { Part, PrintedPart } from './model/part.js';
import type { PlanDocument, PlanSpacer } from './model/plan.js';
import type { ProofDocument } from './model/proof.js';
import { inOrder, type Planned, planCamera, planOf } from './pipeline.js';
import type { LightProof } from './proof/light.js';
import { prove, putTogether } from './proof/prove.js';
import { partsPart } from './sheets/checks.js';
import { cutLine, cutOnce } from './sheets/cut-line.js';
import { cutMinutes } from './sheets/cut-time.js';
import { EFFORT, type LayOut } from './sheets/lay-out.js';
import { leftOver } from './sheets/remnant.js';
import { couponForm, couponGiven } from './test-piece.js';
import { kg, magnification, mm, plainNumber } from './units/print.js';

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
const NOT_PROVEN: Finding = {
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
  { despite, onProgress, lightOf, writeDocument, effort = EFFORT }: BuildOptions,
): BuildResult {
  const stage = (name: string, done: number) => onProgress({ stage: name, done });
  stage('sizing', 0);
  const planned = planCamera(design);
  const { build, bare, cut, pieces, findings } = cutting(planned, planned.parts, {
    effort,
    onProgress: packing(onProgress),
  });
  stage('modelling prints', 0.4);
  const prints = printsOf(build.parts, kernel);
  const drawn = (waived: readonly string[]): readonly OutputFile[] => [
    ...sheetFiles({ ...planned, despite: waived }, cut),
    ...remnantFiles(planned, cut),
    text(
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
  const meshes = new Map(
    prints.map(({ part, boundary }): [string, PrintedFile] => [
      part.id,
      { mesh: `${printFile(part)}.stl`, volume: boundary.volume },
    ]),
  );
  const { revision } = planned;
  const files: readonly OutputFile[] = [
    text('plan.json', `${JSON.stringify(plan, null, 2)}\n`),
    text('parts.json', partsJson(build, revision, meshes)),
    ...(sheetsDrawn ?? drawn(waived)),
    ...leakFiles(proven.leaks).map((file) => ({ ...file, path: `drawings/${file.path}` })),
    ...(drawings === null || proven.document === null
      ? []
      : bookFiles({ planned, build, plan, sheets: cut.sheets, bare, proof: proven.document, drawings }, writeDocument)),
    ...prints.flatMap(({ part, boundary }) => [
      { path: `${printFile(part)}.stl`, bytes: stl(boundary.mesh) },
      { path: `${printFile(part)}.3mf`, bytes: threeMf({ name: part.name, mesh: boundary.mesh }) },
    ]),
  ];
  stage('done', 1);
  return {
    files,
    plan,
    findings: plan.findings,
    summary: [...summaryOf(planned, cut, prints.length), ...despiteText(waived).map((line) => `${upper(line)}.`)],
  };
}

/** Moves the bar while sheets are packed, a hundredth of that at a time. */
function packing(onProgress: CheckOptions['onProgress']): (done: number) => void {
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
}

const leakFiles = (drawings: readonly string[]): readonly OutputFile[] =>
  drawings.map((drawing, i) => text(`leak-${i + 1}.svg`, drawing));

/** The rules of level error that are broken. */
export const brokenRules = (findings: readonly Finding[]): readonly string[] => [
  ...new Set(findings.filter(({ level }) => level === 'error').map(({ rule }) => rule)),
];

const despiteText = (rules: readonly string[]): readonly string[] =>
  rules.length === 0 ? [] : [`built despite ${rules.join(', ')}`];

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Each sheet for the laser, in both forms, and what lies where. */
function sheetFiles(
  { design, revision, despite }: Pick<Planned, 'design' | 'revision'> & { readonly despite: readonly string[] },
  { sheets }: Pick<LayOut, 'sheets'>,
): readonly OutputFile[] {
  const { name, laser } = design;
  const of = sheets.length;
  return [
    ...sheets.flatMap((sheet) => [
      text(
        `sheets/${sheet.name}.svg`,
        sheetSvg(sheet, {
          title: sheetTitle({ name, revision, of, despite }, sheet),
          description: laserCaution,
          palette: laser.palette,
        }),
      ),
      text(`sheets/${sheet.name}.dxf`, sheetDxf(sheet)),
    ]),
    text('sheets/layout.json', layoutJson(sheets, laser)),
  ];
}

/** What is left of the sheets and worth keeping, each piece in a file that the stock of a later design can name. */
const remnantFiles = (
  { design, revision }: Pick<Planned, 'design' | 'revision'>,
  { sheets }: LayOut,
): readonly OutputFile[] =>
  sheets.flatMap((sheet) =>
    leftOver(sheet).map((left) =>
      text(
        `remnants/${left.name}.json`,
        remnantJson(left, { from: `${design.name}, revision ${revision}, ${sheet.name}` }),
      ),
    ),
  );

/** A holder of the design by its name, or with `filmDepth` (mm, effective) one that the design does not know. */
export interface SpacerWanted {
  readonly name: string;
  readonly filmDepth?: number;
}

export interface SpacerResult {
  readonly spacer: PlanSpacer;
  readonly files: readonly OutputFile[];
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

/**
 * One more spacer for a camera that exists: cut for its seat, pins and well. A holder that the design does not know is
 * taken to be as wide and as long as the widest that it knows, so that nothing of the camera changes.
 */
export function spacerAlone(design: Design, { name, filmDepth }: SpacerWanted): SpacerResult {
  const own = planCamera(design);
  const planned = filmDepth === undefined ? own : planCamera(withHolder(design, name, filmDepth));
  const spacer = planOf(planned).spacers.find((s) => s.holder === name);
  if (!spacer) throw new Error(`no spacer was planned for ${name}`);
  const placed = planned.camera.objects.spacers.filter((s) => s.spacer.holder === name);
  const parts = placed.flatMap((s) => spacerParts(s));
  const job = { ...planned, revision: own.revision };
  const { cut, findings } = cutting(job, parts);
  const all = inOrder([
    ...placed.flatMap((one) => spacerChecks.flatMap((check) => check(one, planned.build))),
    ...reachWith(own, spacer, name, filmDepth),
    ...findings,
  ]);
  const files =
    placed.length === 0
      ? []
      : [
          text('spacer.json', `${JSON.stringify(spacer, null, 2)}\n`),
          ...sheetFiles({ ...job, despite: [] }, cut),
          ...remnantFiles(job, cut),
        ];
  return { spacer, files, findings: all, summary: spacerSummary(spacer, parts, cut) };
}

function withHolder(design: Design, name: string, filmDepth: number): Design {
  const { make: _construction, ...widest } = design.holders.reduce((most, h) => (h.width > most.width ? h : most));
  const others = design.holders.filter((h) => h.name !== name);
  return { ...design, holders: [...others, { ...widest, name, filmDepth, locating: 'pins' }] };
}

/** Whether the slide of the camera as it is takes the new holder to infinity and to the nearest. */
function reachWith(
  { camera, design }: Planned,
  { holder }: PlanSpacer,
  name: string,
  filmDepth: number | undefined,
): readonly Finding[] {
  if (filmDepth === undefined) return [];
  const { optics, settingOut: rod } = camera;
  const f = design.lens.focalLength;
  const depth = Math.max(filmDepth, camera.objects.groundGlassFrame.effectiveDepth);
  const infinity = optics.filmAtInfinity - depth;
  const nearest = (rod.farthest.value + rod.reserve - infinity) / f;
  const farthest = (rod.closest.value - infinity) / f;
  const lost: readonly Finding[] =
    design.focus.farthest === 0 && farthest > 0
      ? [
          {
            rule: 'reach-infinity',
            level: 'warning',
            value: rod.closest.value,
            limit: infinity,
            unit: 'mm',
            message: `This camera cannot focus ${name} on infinity: its slide ends ${mm(Math.round((rod.closest.value - infinity) * 10) / 10)} short. The farthest subject is at ${magnification(farthest)}.`,
            hint: 'Use a shallower holder, or file the stops if the boxes allow it.',
          },
        ]
      : [];
  return nearest >= design.focus.nearest
    ? lost
    : [
        ...lost,
        {
          rule: 'reach-near',
          level: 'warning',
          value: nearest,
          limit: design.focus.nearest,
          unit: 'magnification',
          message: `With ${holder} the nearest focus of this camera is ${magnification(nearest)} instead of ${magnification(design.focus.nearest)}.`,
        },
      ];
}

function spacerSummary(spacer: PlanSpacer, parts: readonly Part[], { sheets }: LayOut): readonly string[] {
  const { holder, thickness, under, tolerance } = spacer;
  if (under === 'none') return [`${holder} needs no spacer: its film lies as deep as the ground glass.`];
  const pins = parts.filter((part) => part.kind === 'bought' && part.shape.form === 'cylinder').length;
  return [
    `${holder}: ${mm(thickness)} under the ${under === 'glass' ? 'ground glass' : 'holder'}: ${layersText(spacer)}.`,
    `The register may be out by ${mm(tolerance)}. Glue the plies first, measure, then choose the shims: glue lines add up.`,
    ...(pins > 0
      ? ['The ply with four small holes goes on last; its two own pins stand towards what lies on it.']
      : []),
    `${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'} to cut.`,
    FIRE,
  ];
}

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
      text('readings.yaml', couponForm(design).filled({})),
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

interface Print {
  readonly part: PrintedPart;
  readonly boundary: Boundary;
}

/** Where a print is written, without its ending: what has no place in the camera stands beside what belongs to it. */
const printFile = ({ id, usedOn }: PrintedPart): string => `${usedOn === undefined ? 'prints' : BESIDE_CAMERA}/${id}`;

const printsOf = (parts: readonly Part[], kernel: Kernel): readonly Print[] =>
  parts.flatMap((part) =>
    part.kind === 'printed' ? [{ part, boundary: realise(kernel, part.solid, buildPrism) }] : [],
  );

function summaryOf({ design, revision, camera }: Planned, cut: LayOut, prints: number): readonly string[] {
  const { name, laser } = design;
  return [
    `${name}, revision ${revision}: ${kg(Math.round(camera.balance.massKg * 100) / 100)} with the lens and the glass.`,
    ...sheetsPage(cut, (sheet) => cutMinutes(sheet, laser)),
    ...(prints > 0 ? [`${prints} printed ${prints === 1 ? 'part' : 'parts'}.`] : []),
    FIRE,
  ];
}

const encoder = new TextEncoder();
const text = (path: string, content: string): OutputFile => ({ path, bytes: encoder.encode(content) });
