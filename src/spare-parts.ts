import { BESIDE_CAMERA } from './camera/beside-camera.js';
import { notAsBuilt } from './compare/not-as-built.js';
import { recordOf } from './compare/record.js';
import { cutting, FIRE } from './cutting.js';
import type { Design } from './design/design.js';
import { materialName } from './design/material-name.js';
import { nearestWord } from './design/nearest-word.js';
import { partsJson } from './files/parts-json.js';
import { sheetsPage } from './files/sheets-page.js';
import type { Kernel } from './geometry/kernel.js';
import type { BuiltCamera } from './model/built-camera.js';
import type { Finding } from './model/finding.js';
import type { OutputFile } from './model/output-file.js';
import type { FlatPart, Part } from './model/part.js';
import type { PlanPart } from './model/plan.js';
import { inOrder, type Planned, planCamera, planOf } from './pipeline.js';
import { meshesOf, printFiles, printsOf } from './print-files.js';
import { otherThickness } from './proof/other-thickness.js';
import { remnantFiles, sheetFiles, textFile } from './sheet-files.js';
import { cutMinutes } from './sheets/cut-time.js';
import { EFFORT } from './sheets/lay-out.js';
import { type SheetRemnant, type SheetStock, woodOf } from './sheets/stock.js';
import { ofThickness, sheetsFor } from './spare-sheets.js';
import { mm } from './units/print.js';

export interface PartsWanted {
  readonly ids: readonly string[];
  /** How many of each are cut, where not as many as the camera has. */
  readonly pieces?: number;
  /** Of the sheet at hand, where it is another than the design says. */
  readonly thickness?: number;
  /** Pieces at hand, of which the smallest that holds all parts is cut. */
  readonly remnants: readonly SheetRemnant[];
  /** Rules of level error that may be broken. */
  readonly despite: readonly string[];
  /** The camera that the parts are for, where it was built already. */
  readonly since?: BuiltCamera;
}

/** What was asked for, found in the design. */
export interface PartsAsked {
  readonly planned: Planned;
  /** As thick as the sheet that they are cut from. */
  readonly parts: readonly Part[];
  readonly wanted: PartsWanted;
  readonly findings: readonly Finding[];
  /** Whether one of them is printed: then `writeParts` needs the kernel. */
  readonly printed: boolean;
}

export interface PartsResult {
  readonly document: PartsDocument;
  readonly files: readonly OutputFile[];
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

/** What `part --json` prints, files left out. */
export interface PartsDocument {
  readonly schema: 1;
  readonly name: string;
  readonly revision: string;
  readonly parts: readonly PlanPart[];
}

/** The parts with these ids, or why there are none. */
export function askParts(design: Design, wanted: PartsWanted): PartsAsked | { readonly refused: string } {
  const planned = planCamera(design);
  const found: Exclude<Part, { kind: 'bought' }>[] = [];
  for (const [i, id] of wanted.ids.entries()) {
    if (wanted.ids.indexOf(id) < i)
      return {
        refused: `${id} is named twice. Name each part once: of each as many pieces are cut as the camera has, or as --pieces says.`,
      };
    const part = planned.parts.find((each) => each.id === id);
    if (part === undefined || part.kind === 'bought') return { refused: unknownPart(planned.parts, id, part) };
    found.push(part);
  }
  const thickness = thicknessAsked(design, found, wanted);
  if (typeof thickness === 'object') return thickness;
  const parts = found.map((part) => (part.kind === 'flat' ? ofSheet(design, part, thickness) : part));
  const strange =
    thickness === undefined
      ? []
      : found.flatMap((part) => (part.kind === 'flat' ? otherThickness(design, planned.build, part, thickness) : []));
  const elder =
    wanted.since === undefined
      ? []
      : notAsBuilt(
          wanted.since,
          recordOf(planOf(planned), planned.build),
          found.map(({ id }) => id),
        );
  const broken = planned.findings.filter(({ level }) => level === 'error');
  const printed = parts.some(({ kind }) => kind === 'printed');
  return { planned, parts, wanted, findings: [...broken, ...elder, ...strange], printed };
}

/** Why a word names no part that can be made, and what would. */
function unknownPart(parts: readonly Part[], id: string, bought: Part | undefined): string {
  const made = parts.filter(({ kind }) => kind !== 'bought').map((part) => part.id);
  const can = `It has: ${made.join(', ')}.`;
  if (bought) return `${id} (${bought.name}) is bought: there is nothing to cut or to print. ${can}`;
  const near = nearestWord(id, made);
  return `The design has no part ${id}.${near === undefined ? '' : ` Was ${near} meant?`} ${can}`;
}

/** As far as two readings of one sheet differ. */
const READING = 0.02;

/** The thickness of the sheet at hand where it is not the design's: typed, or that of the remnants. */
function thicknessAsked(
  { plywood }: Design,
  found: readonly Part[],
  { thickness, remnants }: PartsWanted,
): number | undefined | { readonly refused: string } {
  const flat = found.flatMap((part) => (part.kind === 'flat' ? [part] : []));
  const other = flat.find(({ material }) => material !== plywood.material);
  const [first] = remnants;
  const asked = thickness ?? first?.thickness;
  if (asked === undefined) return undefined;
  const how = thickness === undefined ? `The remnant ${first?.file}` : 'A thickness';
  if (flat.length === 0) return { refused: `${how} is of no use: no part that was named is cut from sheet.` };
  if (other !== undefined && flat.some(({ material }) => material !== other.material))
    return {
      refused: `${how} goes with parts of one material, and ${other.id} is cut from ${other.material}, others from ${plywood.material}. Ask for them one after the other.`,
    };
  const twice = remnants.find(({ file }, i) => remnants.findIndex((piece) => piece.file === file) < i);
  if (twice !== undefined)
    return { refused: `The remnant ${twice.file} is named twice. One file is one piece: name each of them once.` };
  const drawn = (flat[0] as FlatPart).thickness;
  const strange = remnants.find((piece) => wordOf(piece) !== wordOf(flat[0] as FlatPart));
  if (strange !== undefined)
    return {
      refused: `The remnant ${strange.file} is ${strange.material}, and ${flat[0]?.id} is cut from ${flat[0]?.material}. Name a piece of that.`,
    };
  const uneven = remnants.find((piece) => Math.abs(piece.thickness - asked) > READING);
  if (uneven !== undefined)
    return {
      refused: `The remnant ${uneven.file} is ${mm(uneven.thickness)} thick, and the parts are to be cut from ${mm(asked)}. Name pieces of one thickness.`,
    };
  return Math.abs(asked - drawn) <= READING && thickness === undefined ? undefined : asked;
}

/** A material without its thickness. */
function wordOf({ material, thickness }: { readonly material: string; readonly thickness: number }): string {
  const ending = materialName('', thickness);
  return material.endsWith(ending) ? material.slice(0, -ending.length) : material;
}

const ofSheet = ({ plywood }: Design, part: FlatPart, thickness: number | undefined): FlatPart => {
  if (thickness === undefined) return part;
  const material =
    part.material === plywood.material ? ofThickness(plywood, thickness) : materialName(wordOf(part), thickness);
  return { ...part, material, thickness, massKg: (part.massKg * thickness) / part.thickness };
};

/** Figures, sheets and prints of the parts that were asked for. */
export function writeParts(asked: PartsAsked, kernel: Kernel | null): PartsResult {
  const { planned, parts, wanted } = asked;
  const { design, revision, build } = planned;
  const { cut, build: engraved, findings } = onLeastSheet(asked);
  const prints = kernel === null ? [] : printsOf(parts, kernel);
  const own = planOf({ ...planned, build: { ...build, parts } });
  const document: PartsDocument = { schema: 1, name: design.name, revision, parts: own.parts };
  const job = { design, revision, despite: wanted.despite };
  const cutFiles = cut.sheets.length > 0 ? [...sheetFiles(job, cut), ...remnantFiles(job, cut)] : [];
  return {
    document,
    findings: inOrder([...asked.findings, ...findings]),
    files: [
      textFile('parts.json', partsJson(engraved, revision, meshesOf(prints))),
      ...cutFiles,
      ...printFiles(prints),
    ],
    summary: [
      ...parts.map(lineOf),
      ...(wanted.remnants.length > 0 && cut.sheets.some(({ remnant }) => !remnant)
        ? ['Not all of them go onto the remnants that were named: what is left lies on a new sheet.']
        : []),
      ...(cut.sheets.length > 0 ? [...sheetsPage(cut, (sheet) => cutMinutes(sheet, design.laser)), FIRE] : []),
    ],
  };
}

function lineOf(part: Part): string {
  const head = `${part.id}, ${part.name}`;
  if (part.kind === 'flat') return `${head}: ${part.material}.`;
  return `${head}: printed${part.kind === 'printed' && part.usedOn !== undefined ? `, see ${BESIDE_CAMERA}` : ''}.`;
}

/** On the smallest remnant that takes all of them; where none does, on what there is. */
function onLeastSheet({ planned, parts, wanted }: PartsAsked) {
  const { design } = planned;
  const had = sheetsFor(design, parts);
  const named = wanted.remnants.map((piece): SheetStock => {
    const { material, thickness } = had[0] ?? piece;
    const [width, height] = ['x', 'y'].map((axis) => Math.max(...piece.outline.map((p) => p[axis as 'x' | 'y'])));
    const sheet = { width: width ?? 0, height: height ?? 0 };
    return { material, thickness, sheet, count: 1, first: true, remnant: { ...piece, material, thickness } };
  });
  const alone = [...named, ...had.filter(({ remnant }) => named.length === 0 && remnant)].sort(
    (a, b) => woodOf(a) - woodOf(b),
  );
  // a few parts need no long search, and a spare part is waited for
  const effort = Math.min(EFFORT, parts.length);
  const { pieces } = wanted;
  const counted = pieces === undefined ? {} : { pieces: () => pieces };
  for (const piece of alone) {
    const tried = cutting(planned, parts, {
      ...counted,
      effort,
      from: [piece, ...had.filter(({ material }) => material !== piece.material)],
    });
    if (!tried.cut.findings.some(({ rule }) => rule === 'part-on-bed')) return tried;
  }
  return cutting(planned, parts, { ...counted, effort, from: [...named, ...had] });
}
