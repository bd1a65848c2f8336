import { grown, type Region, sharedArea, without } from '../geometry/clip.js';
import { type Box, flatten, moved } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart } from '../model/part.js';
import { outerBox } from './outer-box.js';
import type { Sheet } from './sheet.js';
import type { SheetStock } from './stock.js';

interface Known {
  readonly part: FlatPart;
}

/** Chords and the grid of the offset may eat this much of a gap before it counts, mm. */
const TOLERANCE = 0.02;

/**
 * parts-part, measured on the lines of the sheet and not on the rectangles that placed them: no part nearer to
 * another's material than the spacing, none beyond the margin.
 */
export function partsPart(sheet: Sheet): readonly Finding[] {
  const pieces = piecesOn(sheet);
  const findings: Finding[] = [];
  const { spacing, margin } = sheet;
  for (const { key, box } of sheet.remnant === undefined ? pieces : []) {
    const edge = Math.min(box.left, box.bottom, sheet.width - box.right, sheet.height - box.top);
    if (edge < margin - TOLERANCE)
      findings.push({
        rule: 'parts-part',
        level: 'error',
        value: edge,
        limit: margin,
        unit: 'mm',
        message: `On ${sheet.name}, ${key} comes within ${mm(edge)} mm of the sheet's edge.`,
        hint: 'Use a larger sheet or a smaller margin.',
      });
  }
  findings.push(...beyondRemnant(sheet, pieces));
  pieces.forEach((a, i) => {
    const near = pieces.slice(i + 1).filter((b) => gapOf(a.box, b.box) < spacing - TOLERANCE);
    if (near.length === 0) return;
    const reach = grown(a.solid, spacing - TOLERANCE, { corners: 'round' });
    for (const b of near) {
      if (sharedArea(reach, b.solid) <= TOLERANCE * TOLERANCE) continue;
      findings.push({
        rule: 'parts-part',
        level: 'error',
        limit: spacing,
        unit: 'mm',
        message: `On ${sheet.name}, ${a.key} and ${b.key} lie closer than ${mm(spacing)} mm to each other.`,
        hint: 'Allow more spacing between parts.',
      });
    }
  });
  return findings;
}

/** Where a sheet is no rectangle: its pieces lie on wood, a margin away from its edge and from the holes in it. */
function beyondRemnant({ name, margin, remnant }: Sheet, pieces: readonly PieceOnSheet[]): readonly Finding[] {
  if (remnant === undefined) return [];
  const wood = grown(without([remnant.outline], remnant.holes), TOLERANCE - margin, { corners: 'round' });
  return pieces.flatMap(({ key, solid: [outline = []] }): readonly Finding[] => {
    // its own area is measured on the same grid as what it shares
    const beyond = sharedArea([outline], [outline]) - sharedArea([outline], wood);
    if (beyond <= TOLERANCE * TOLERANCE) return [];
    return [
      {
        rule: 'parts-part',
        level: 'error',
        limit: margin,
        unit: 'mm',
        message: `On ${name}, ${key} comes nearer than ${mm(margin)} mm to the edge of the remnant ${remnant.file} or to a hole in it.`,
        hint: 'Use a larger sheet or a smaller margin.',
      },
    ];
  });
}

interface PieceOnSheet {
  /** part.instance */
  readonly key: string;
  readonly box: Box;
  /** Outline and then holes, along their cut lines. */
  readonly solid: Region;
}

function piecesOn(sheet: Sheet): readonly PieceOnSheet[] {
  const cuts = sheet.operations.filter(({ layer }) => layer !== 'engrave');
  return sheet.placed.map(({ part, instance }) => {
    const key = `${part}.${instance}`;
    const mine = (layer: string) => layer === 'cut-outside' || layer === 'cut-nested';
    const own = cuts.flatMap(({ layer, paths }) =>
      paths
        .filter(({ id }) => id.startsWith(`${key}.`))
        .map(({ path }) => ({ outline: mine(layer), vertices: path.vertices })),
    );
    const outline = own.find((line) => line.outline);
    if (outline === undefined) throw new Error(`${key} has no outline on ${sheet.name}`);
    const solid = [outline, ...own.filter((line) => line !== outline)].map(({ vertices }) => flatten(vertices));
    return { key, box: outerBox(outline.vertices), solid };
  });
}

/** Distance of two rectangles along the axis that parts them most; below 0 where they overlap. */
const gapOf = (a: Box, b: Box): number =>
  Math.max(a.left - b.right, b.left - a.right, a.bottom - b.top, b.bottom - a.top);

/** Smaller than this both ways falls between the slats of the bed, mm. */
const SMALL = 25;

/** small-part: what may drop and burn, unless it lies in a window whose waste holds it up. */
export function smallParts(sheet: Sheet, known: readonly Known[]): readonly Finding[] {
  const outside = sheet.operations.find(({ layer }) => layer === 'cut-outside')?.paths ?? [];
  return sheet.placed.flatMap(({ part: id, instance }): readonly Finding[] => {
    const part = known.find(({ part }) => part.id === id)?.part;
    if (part === undefined || !outside.some((cut) => cut.id.startsWith(`${id}.${instance}.`))) return [];
    const { left, right, bottom, top } = outerBox(part.outline);
    const longest = Math.max(right - left, top - bottom);
    if (longest >= SMALL) return [];
    return [
      {
        rule: 'small-part',
        level: 'note',
        value: longest,
        limit: SMALL,
        unit: 'mm',
        message: `${id} ${part.name} is small enough to fall between the slats of the laser's bed.`,
        hint: 'Lay the sheet on a flat board or hold the part with tape while it is cut free.',
      },
    ];
  });
}

/** Longer than this many widths bends across the grain. */
const SLENDER = 4;

/** grain-long, measured where the part lies: the sheet's face grain runs along x. */
export function grainLong(sheet: Sheet, known: readonly Known[]): readonly Finding[] {
  return sheet.placed.flatMap(({ part: id, rotation }): readonly Finding[] => {
    const part = known.find(({ part }) => part.id === id)?.part;
    if (part === undefined) return [];
    const { left, right, bottom, top } = outerBox(moved(part.outline, { x: 0, y: 0, turn: rotation }));
    const slenderness = (top - bottom) / (right - left);
    if (slenderness <= SLENDER) return [];
    return [
      {
        rule: 'grain-long',
        level: 'warning',
        value: slenderness,
        limit: SLENDER,
        message: `${id} ${part.name}, ${mm(top - bottom)} × ${mm(right - left)} mm, has its face grain across its length and bends easily.`,
        hint: 'Lay its long side along the face grain.',
      },
    ];
  });
}

/** The upright rectangle round a part as it lies. */
export interface Lie {
  readonly width: number;
  readonly height: number;
}

/** part-on-bed: larger than every sheet of its material, with the size that would do. */
export function bedTooSmall(
  part: FlatPart,
  lies: readonly Lie[],
  stocks: readonly SheetStock[],
  margin: number,
): Finding {
  const needs = lies.map(({ width, height }) => ({ width: width + 2 * margin, height: height + 2 * margin }));
  const words = distinct(needs.map(({ width, height }) => `${up(width)} × ${up(height)} mm`)).join(' or ');
  const grain = part.grain === 'any' ? '' : ', face grain along the first';
  if (stocks.length === 0)
    return {
      rule: 'part-on-bed',
      level: 'error',
      message: `${part.id} ${part.name} is to be cut from ${part.material}, and no sheet of that is given.`,
      hint: `A sheet of ${words}${grain} would take it.`,
      about: 'stock',
    };
  const sizes = distinct(
    stocks.map(
      ({ sheet, remnant }) => `${remnant ? 'the remnant of ' : ''}${mm(sheet.width)} × ${mm(sheet.height)} mm`,
    ),
  );
  const [size = '', ...others] = sizes;
  return {
    rule: 'part-on-bed',
    level: 'error',
    ...tooLong(
      needs,
      stocks.map(({ sheet }) => sheet),
    ),
    unit: 'mm',
    message:
      others.length === 0
        ? `${part.id} ${part.name} does not fit a sheet of ${size}${grain}.`
        : `${part.id} ${part.name} fits no sheet of ${part.material}: neither ${sizes.join(' nor ')}${grain}.`,
    hint: `A sheet of ${words}${grain} would take it.`,
    about: 'plywood.sheet',
  };
}

/** part-on-bed: what there is of its material is full, and no more is bought. */
export function stockShort(part: FlatPart, missing: number, stocks: readonly SheetStock[]): Finding {
  const there = stocks.reduce((sum, { count }) => sum + (count ?? 1), 0);
  return {
    rule: 'part-on-bed',
    level: 'error',
    value: missing,
    limit: 0,
    message: `${missing} of ${part.id} ${part.name} ${missing === 1 ? 'finds' : 'find'} no room: ${there === 1 ? 'the one sheet' : `the ${there} sheets`} of ${part.material} that ${there === 1 ? 'is' : 'are'} there ${there === 1 ? 'does' : 'do'} not suffice.`,
    hint: 'Raise the count, add a sheet to the stock, or leave count out of an entry so that more of it are bought.',
    about: 'stock',
  };
}

/** stock-idle: a remnant, or what was to be used first, of a thickness that no part has: a slip of the caliper, perhaps. */
export function stockIdle(stocks: readonly SheetStock[], cut: readonly Known[]): readonly Finding[] {
  if (cut.length > 0) return [];
  return stocks.flatMap(({ material, remnant, first }): readonly Finding[] => {
    if (!remnant && first !== true) return [];
    return [
      {
        rule: 'stock-idle',
        level: 'note',
        message: `${remnant ? `The remnant ${remnant.file} is of ${material}` : `${material} is to be used first`}, and no part is cut from that.`,
        hint: 'The measured thickness tells sheets apart: where it is the same wood, measure both again and write the same.',
        about: 'stock',
      },
    ];
  });
}

const distinct = (words: readonly string[]): readonly string[] => [...new Set(words)];

/** The side that does not fit, on the sheet and in the way of lying that miss by least, and the sheet's. */
function tooLong(needs: readonly Lie[], sheets: readonly Lie[]): { readonly value: number; readonly limit: number } {
  const missing = sheets.flatMap((sheet) =>
    needs.map(({ width, height }) =>
      width - sheet.width > height - sheet.height
        ? { value: width, limit: sheet.width }
        : { value: height, limit: sheet.height },
    ),
  );
  const over = ({ value, limit }: { value: number; limit: number }) => value - limit;
  const [first = { value: 0, limit: 0 }, ...others] = missing;
  return others.reduce((least, next) => (over(next) < over(least) ? next : least), first);
}

const mm = (value: number): number => Math.round(value * 100) / 100;
const up = (value: number): number => Math.ceil(value * 10 - 1e-6) / 10;
