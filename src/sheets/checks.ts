import { grown, type Region, sharedArea } from '../geometry/clip.js';
import { type Box, flatten, moved } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart } from '../model/part.js';
import { outerBox } from './outer-box.js';
import type { Sheet } from './sheet.js';

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
  for (const { key, box } of pieces) {
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

interface PieceOnSheet {
  /** part.instance */
  readonly key: string;
  readonly box: Box;
  /** Outline and holes, along their cut lines. */
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
    return { key, box: outerBox(outline.vertices), solid: own.map(({ vertices }) => flatten(vertices)) };
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

interface Lie {
  readonly width: number;
  readonly height: number;
}

/** part-on-bed: larger than every sheet of its material, with the size that would do. */
export function bedTooSmall(
  part: FlatPart,
  lies: readonly Lie[],
  beds: readonly { readonly sheet: { readonly width: number; readonly height: number } }[],
  margin: number,
): Finding {
  const needs = lies.map(({ width, height }) => ({ width: width + 2 * margin, height: height + 2 * margin }));
  const sizes = needs.map(({ width, height }) => `${up(width)} × ${up(height)} mm`);
  const words = sizes.filter((size, i) => sizes.indexOf(size) === i).join(' or ');
  const bed = beds[0]?.sheet;
  const grain = part.grain === 'any' ? '' : ', face grain along the first';
  return {
    rule: 'part-on-bed',
    level: 'error',
    ...(bed === undefined ? {} : { ...tooLong(needs, bed), unit: 'mm' }),
    message:
      bed === undefined
        ? `${part.id} ${part.name} is to be cut from ${part.material}, and no sheet of that is given.`
        : `${part.id} ${part.name} does not fit a sheet of ${mm(bed.width)} × ${mm(bed.height)} mm${grain}.`,
    hint: `A sheet of ${words}${grain} would take it.`,
    about: 'plywood.sheet',
  };
}

/** The side that does not fit, in the way of lying that misses by least, and the sheet's. */
function tooLong(needs: readonly Lie[], bed: Lie): { readonly value: number; readonly limit: number } {
  const missing = needs.map(({ width, height }) =>
    width - bed.width > height - bed.height ? { value: width, limit: bed.width } : { value: height, limit: bed.height },
  );
  const over = ({ value, limit }: { value: number; limit: number }) => value - limit;
  const [first = { value: 0, limit: 0 }, ...others] = missing;
  return others.reduce((least, next) => (over(next) < over(least) ? next : least), first);
}

const mm = (value: number): number => Math.round(value * 100) / 100;
const up = (value: number): number => Math.ceil(value * 10 - 1e-6) / 10;
