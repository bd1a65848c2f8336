import { BESIDE_CAMERA } from './camera/beside-camera.js';
import { isGluedTo } from './compare/compare.js';
import { notAsBuilt } from './compare/not-as-built.js';
import { recordOf } from './compare/record.js';
import { FIRE } from './cutting.js';
import type { Design } from './design/design.js';
import { materialName } from './design/material-name.js';
import { nearestWord } from './design/nearest-word.js';
import { gluedWords } from './files/compare-page.js';
import { partsJson } from './files/parts-json.js';
import { sheetsPage } from './files/sheets-page.js';
import type { Kernel } from './geometry/kernel.js';
import type { BuiltCamera } from './model/built-camera.js';
import type { Finding } from './model/finding.js';
import type { OutputFile } from './model/output-file.js';
import type { BoughtPart, FlatPart, Part } from './model/part.js';
import type { PlanPart } from './model/plan.js';
import { inOrder, type Planned, planCamera, planOf } from './pipeline.js';
import { meshesOf, printFiles, printsOf } from './print-files.js';
import { otherThickness } from './proof/other-thickness.js';
import { remnantFiles, sheetFiles, textFile } from './sheet-files.js';
import { cutMinutes } from './sheets/cut-time.js';
import { EFFORT } from './sheets/lay-out.js';
import type { SheetRemnant } from './sheets/stock.js';
import { besideRemnants, ofThickness, onLeastSheet, READING, remnantsRefused, wordOf } from './spare-sheets.js';

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
  /** Whether more than one piece is cut of any of them. */
  readonly several: boolean;
}

/** What `part --json` prints, files left out. */
export interface PartsDocument {
  readonly schema: 1;
  readonly name: string;
  readonly revision: string;
  readonly parts: readonly SparePart[];
}

/** `count` says how many pieces are cut of it; of a print, how many are wanted. */
interface SparePart extends PlanPart {
  readonly inCamera: number;
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
    if (part === undefined || part.kind === 'bought') return { refused: unknownPart(planned, id, part) };
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
function unknownPart({ parts, camera }: Planned, id: string, bought: Part | undefined): string {
  const made = parts.filter(({ kind }) => kind !== 'bought');
  if (bought?.kind === 'bought')
    return `${id} (${bought.name}) is bought: there is nothing to cut or to print.${isOwned(bought) ? '' : ` ${TO_BUY}`}`;
  // a board is bought for a holder's channel, but who asks for one means that of the lens
  if (camera.hardware.some(({ name }) => isCalled(name, id)) && !made.some(({ name }) => isCalled(name, id)))
    return `${id} is bought: there is nothing to cut or to print. ${TO_BUY}`;
  const ids = made.map((part) => part.id);
  const near = nearestWord(id, ids);
  return `The design has no part ${id}.${near === undefined ? '' : ` Was ${near} meant?`} It has: ${ids.join(', ')}.`;
}

const TO_BUY = 'See To buy in what tailboard plan prints.';

/** The lens, a holder, film: what nobody buys for the camera. */
const isOwned = ({ role }: BoughtPart): boolean => role === 'lens' || role === 'holder' || role === 'sheet';

/** Whether a word, one or several, stands in a name, whatever is said of it more: `thumb screw`, `nut, stainless`. */
const isCalled = (name: string, word: string): boolean => {
  const plain = (text: string) =>
    ` ${text
      .toLowerCase()
      .replace(/[^\p{L}\d]+/gu, ' ')
      .trim()} `;
  return plain(name).includes(plain(word));
};

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
  const [drawnFirst] = flat as [FlatPart];
  const refused = remnantsRefused(remnants, { ...drawnFirst, called: drawnFirst.id }, asked);
  if (refused !== null) return { refused };
  return Math.abs(asked - drawnFirst.thickness) <= READING && thickness === undefined ? undefined : asked;
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
  const {
    cut,
    build: engraved,
    findings,
  } = onLeastSheet(planned, parts, {
    remnants: wanted.remnants,
    // a few parts need no long search, and a spare part is waited for
    effort: Math.min(EFFORT, parts.length),
    pieces: wanted.pieces,
  });
  const prints = kernel === null ? [] : printsOf(parts, kernel);
  const own = planOf({ ...planned, build: { ...build, parts } });
  const isCut = (id: string) => parts.some((part) => part.id === id && part.kind === 'flat');
  const spares = own.parts.map((part): SparePart => {
    const count = isCut(part.id) ? (wanted.pieces ?? part.count) : part.count;
    return { ...part, count, inCamera: part.count };
  });
  const document: PartsDocument = { schema: 1, name: design.name, revision, parts: spares };
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
      ...parts.map((part) => lineOf(part, spares)),
      ...gluedLine(planned.parts, wanted.ids),
      ...besideRemnants(wanted.remnants, cut.sheets),
      ...(cut.sheets.length > 0 ? [...sheetsPage(cut, (sheet) => cutMinutes(sheet, design.laser)), FIRE] : []),
    ],
    several: spares.some(({ id, count }) => isCut(id) && count > 1),
  };
}

function lineOf(part: Part, spares: readonly SparePart[]): string {
  const head = `${part.id}, ${part.name}`;
  const { count = 1, inCamera = count } = spares.find(({ id }) => id === part.id) ?? {};
  if (part.kind === 'flat') {
    const all = count !== inCamera ? `; the camera has ${inCamera}` : count > 1 ? ', as many as the camera has' : '';
    return `${head}: ${piecesText(count)} of ${part.material}${all}.`;
  }
  const more = count > 1 ? `; the camera has ${count}` : '';
  return `${head}: printed${part.kind === 'printed' && part.usedOn !== undefined ? `, see ${BESIDE_CAMERA}` : ''}${more}.`;
}

const piecesText = (count: number): string => `${count} ${count === 1 ? 'piece' : 'pieces'}`;

/** What else of the standing camera goes with the parts that are replaced. */
function gluedLine(all: readonly Part[], ids: readonly string[]): readonly string[] {
  const made = all.filter(({ kind }) => kind !== 'bought');
  const asked = new Set(ids);
  const glued = made.filter((part) => !asked.has(part.id) && isGluedTo(part, asked, made)).map(({ id }) => id);
  return glued.length === 0 ? [] : [gluedWords(ids.join(', '), glued)];
}
