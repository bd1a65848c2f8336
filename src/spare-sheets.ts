import { type Cutting, cutting, sheetsOf } from './cutting.js';
import type { Design } from './design/design.js';
import { materialName } from './design/material-name.js';
import type { Part } from './model/part.js';
import type { Planned } from './pipeline.js';
import type { Sheet } from './sheets/sheet.js';
import { type SheetRemnant, type SheetStock, woodOf } from './sheets/stock.js';
import { mm } from './units/print.js';

/** A sheet, or what is cut from one: a material bears its thickness in its name. */
interface OfSheet {
  readonly material: string;
  readonly thickness: number;
}

/** A material without its thickness. */
export function wordOf({ material, thickness }: OfSheet): string {
  const ending = materialName('', thickness);
  return material.endsWith(ending) ? material.slice(0, -ending.length) : material;
}

/** The plywood of a design as it is called at another thickness. */
export const ofThickness = (plywood: Design['plywood'], now: number): string => materialName(wordOf(plywood), now);

/**
 * What single parts are cut from: the sheets of the design that are of their material, and where it has none of that, a sheet
 * of the plywood's size.
 */
export function sheetsFor(design: Design, parts: readonly Part[]): readonly SheetStock[] {
  const flat = parts.flatMap((part) => (part.kind === 'flat' ? [part] : []));
  const materials = new Map(flat.map(({ material, thickness }) => [material, thickness]));
  return [...materials].flatMap(([material, thickness]) => {
    const had = sheetsOf(design).filter((sheet) => sheet.material === material);
    return had.length > 0 ? had : [{ material, thickness, sheet: design.plywood.sheet }];
  });
}

/** As far as two readings of one sheet differ. */
export const READING = 0.02;

/** Why what is drawn of one sheet cannot be cut from these remnants, which are to be of the thickness that is asked. */
export function remnantsRefused(
  remnants: readonly SheetRemnant[],
  { called, ...drawn }: OfSheet & { readonly called: string },
  asked: number,
): string | null {
  const twice = remnants.find(({ file }, i) => remnants.findIndex((piece) => piece.file === file) < i);
  if (twice !== undefined)
    return `The remnant ${twice.file} is named twice. One file is one piece: name each of them once.`;
  const strange = remnants.find((piece) => wordOf(piece) !== wordOf(drawn));
  if (strange !== undefined)
    return `The remnant ${strange.file} is ${strange.material}, and ${called} is cut from ${drawn.material}. Name a piece of that.`;
  const uneven = remnants.find((piece) => Math.abs(piece.thickness - asked) > READING);
  if (uneven !== undefined)
    return `The remnant ${uneven.file} is ${mm(uneven.thickness)} thick, and the parts are to be cut from ${mm(asked)}. Name pieces of one thickness.`;
  return null;
}

/** What is told where some of the parts, or all of them, found no room on the pieces that were named for them. */
export function besideRemnants(named: readonly SheetRemnant[], sheets: readonly Sheet[]): readonly string[] {
  const files = new Set(named.map(({ file }) => file));
  const onThem = sheets.filter(({ remnant }) => remnant !== undefined && files.has(remnant.file)).length;
  if (files.size === 0 || onThem === sheets.length) return [];
  const these = files.size === 1 ? 'the remnant that was named' : 'the remnants that were named';
  return [
    onThem === 0
      ? `Nothing goes onto ${these}: all lies on another sheet.`
      : `Not all of them go onto ${these}: what is left lies on another sheet.`,
  ];
}

interface OnLeast {
  readonly remnants: readonly SheetRemnant[];
  /** What the remnants are taken for, which differ from it by a reading at most. */
  readonly drawn?: OfSheet | undefined;
  readonly effort: number;
  /** Of each part, where not as many as the camera has. */
  readonly pieces?: number | undefined;
}

/** On the smallest remnant that takes all of the parts; where none does, on what there is. */
export function onLeastSheet(
  planned: Planned,
  parts: readonly Part[],
  { remnants, drawn, effort, pieces }: OnLeast,
): Cutting {
  const had = sheetsFor(planned.design, parts);
  const named = remnants.map((piece): SheetStock => {
    const { material, thickness } = drawn ?? had[0] ?? piece;
    const [width, height] = ['x', 'y'].map((axis) => Math.max(...piece.outline.map((p) => p[axis as 'x' | 'y'])));
    const sheet = { width: width ?? 0, height: height ?? 0 };
    return { material, thickness, sheet, count: 1, first: true, remnant: { ...piece, material, thickness } };
  });
  const alone = [...named, ...had.filter(({ remnant }) => named.length === 0 && remnant)].sort(
    (a, b) => woodOf(a) - woodOf(b),
  );
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
