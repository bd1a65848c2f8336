import type { Build } from './assembly/build.js';
import { countOf } from './assembly/setups.js';
import { engrave } from './camera/engrave.js';
import type { Design } from './design/design.js';
import { threeMf } from './files/3mf.js';
import { sheetDxf } from './files/dxf.js';
import { layoutJson } from './files/layout-json.js';
import { overviewSvg } from './files/overview.js';
import { type PrintedFile, partsJson } from './files/parts-json.js';
import { stl } from './files/stl.js';
import { laserCaution, sheetSvg, sheetTitle } from './files/svg.js';
import { type Boundary, type Kernel, realise } from './geometry/kernel.js';
import { buildPrism } from './geometry/modelling.js';
import type { Finding } from './model/finding.js';
import type { Part, PrintedPart } from './model/part.js';
import type { PlanDocument } from './model/plan.js';
import { inOrder, type Planned, planCamera, planOf } from './pipeline.js';
import { type LayOut, layOut, type Piece } from './sheets/lay-out.js';
import { kg, plainNumber } from './units/print.js';

/** A file of the output folder. */
export interface OutputFile {
  /** Relative to the output folder, steps parted by `/`. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

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

interface Cutting {
  readonly build: Build;
  readonly cut: LayOut;
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
}

/** Everything that can be said against a design so far. */
export function checkCamera(design: Design): readonly Finding[] {
  const planned = planCamera(design);
  return inOrder([...planned.findings, ...cutting(planned, planned.parts).findings]);
}

/**
 * The way through, second half.
 *
 * ```
 * Part[] ─engrave─▶ Part[] ─lay out─▶ Sheet[] ─write─▶ OutputFile[]
 *                     └─ print ─▶ Mesh ─────────write─▶ OutputFile[]
 * ```
 */
export function buildCamera(design: Design, kernel: Kernel, onProgress: (progress: Progress) => void): BuildResult {
  const stage = (name: string, done: number) => onProgress({ stage: name, done });
  stage('sizing', 0);
  const planned = planCamera(design);
  stage('packing sheets', 0.2);
  const { build, cut, pieces, findings } = cutting(planned, planned.parts);
  stage('modelling prints', 0.6);
  const prints = printsOf(build.parts, kernel);
  stage('writing', 0.8);
  const plan = planOf(planned, findings);
  const meshes = new Map(
    prints.map(({ part, boundary }): [string, PrintedFile] => [
      part.id,
      { mesh: `prints/${part.id}.stl`, volume: boundary.volume },
    ]),
  );
  const { name, laser } = design;
  const { revision } = planned;
  const of = cut.sheets.length;
  const files: readonly OutputFile[] = [
    text('plan.json', `${JSON.stringify(plan, null, 2)}\n`),
    text('parts.json', partsJson(build, revision, meshes)),
    ...cut.sheets.flatMap((sheet) => [
      text(
        `sheets/${sheet.name}.svg`,
        sheetSvg(sheet, {
          title: sheetTitle({ name, revision, of }, sheet),
          description: laserCaution,
          palette: laser.palette,
        }),
      ),
      text(`sheets/${sheet.name}.dxf`, sheetDxf(sheet)),
    ]),
    text('sheets/layout.json', layoutJson(cut.sheets, { kerf: laser.kerf })),
    text('sheets/overview.svg', overviewSvg(cut.sheets, { title: `${name}, revision ${revision}`, pieces })),
    ...prints.flatMap(({ part, boundary }) => [
      { path: `prints/${part.id}.stl`, bytes: stl(boundary.mesh) },
      { path: `prints/${part.id}.3mf`, bytes: threeMf({ name: part.name, mesh: boundary.mesh }) },
    ]),
  ];
  stage('done', 1);
  return { files, plan, findings: plan.findings, summary: summaryOf(planned, cut, prints.length) };
}

/** Parts engraved and laid on sheets: the camera's own, and one size of each other material. */
export function cutting({ design, revision, build }: Planned, parts: readonly Part[]): Cutting {
  const marked = engrave(parts, revision);
  const pieces = marked.parts.flatMap((part): readonly Piece[] => {
    if (part.kind !== 'flat') return [];
    return [{ part, count: countOf(part.placements, build.setups) }];
  });
  const { plywood, stock, laser, workshop } = design;
  const cut = layOut(pieces, {
    materials: [plywood, ...stock],
    kerf: laser.kerf,
    spacing: workshop.spacing,
    margin: workshop.margin,
  });
  return { build: { ...build, parts: marked.parts }, cut, pieces, findings: [...marked.findings, ...cut.findings] };
}

interface Print {
  readonly part: PrintedPart;
  readonly boundary: Boundary;
}

const printsOf = (parts: readonly Part[], kernel: Kernel): readonly Print[] =>
  parts.flatMap((part) =>
    part.kind === 'printed' ? [{ part, boundary: realise(kernel, part.solid, buildPrism) }] : [],
  );

function summaryOf({ design, revision, camera }: Planned, { sheets, uses }: LayOut, prints: number): readonly string[] {
  const metres = sheets.reduce((sum, s) => sum + s.cutLength, 0) / 1000;
  return [
    `${design.name}, revision ${revision}: ${kg(Math.round(camera.balance.massKg * 100) / 100)} with the lens and the glass.`,
    ...uses.map(
      (use) =>
        `${use.material}: ${use.sheets} ${use.sheets === 1 ? 'sheet' : 'sheets'} (fewer than ${use.bound} is impossible), ${plainNumber(100 * use.use, 0)} % used.`,
    ),
    `${plainNumber(metres, 1)} m to cut${prints > 0 ? `, ${prints} printed ${prints === 1 ? 'part' : 'parts'}` : ''}.`,
    'Never leave the laser alone while it runs; keep the extraction on and an extinguisher at hand. The machine’s own instructions and local rules come first.',
  ];
}

const encoder = new TextEncoder();
const text = (path: string, content: string): OutputFile => ({ path, bytes: encoder.encode(content) });
