import type { Design } from './design.js';

/**
 * Lengths that agree to a millionth of a millimetre make the same part: `1.5 in` and `38.1 mm` differ in the sixteenth digit.
 */
const FINENESS = 1e6;

/** Letters and digits without 0 and O, 1 and I, for the mark is engraved, read and typed; and without X, which on wood marks waste. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWYZ23456789';
const LENGTH = 6;

/**
 * A short mark made from what shapes parts, so that a part can be told from its elder twin. The camera's and the lens's names,
 * colours, tolerances, where parts lie on a sheet, how a sitter is exposed and the paper of the book do not shape any; kerf
 * does, since it is in the lines that are cut.
 */
export function revisionOf(design: Design): string {
  const { name: _name, slug: _slug, defaulted: _defaulted, stock: _stock, sitting: _sitting, ...rest } = design;
  const { book: _book, boards: _boards, ...shaping } = rest;
  // of lines the walls of a tank's fittings are laid, and nothing else
  const { spacing: _spacing, margin: _margin, nozzle: _nozzle, boards, ...workshop } = design.workshop;
  const { velvet: _pile, ...ofHolders } = boards;
  const isMade = design.holders.some(({ make }) => make !== undefined);
  const { name: _lens, uncertainty: _doubt, ...lens } = design.lens;
  const { name: _format, ...format } = design.format;
  // neither frame nor spacer nor holder is cut anew because it was measured
  const { measured: _measured, ...groundGlass } = design.groundGlass;
  const { thickness, readings, material } = design.plywood;
  const text = canonical({
    ...shaping,
    format,
    groundGlass,
    lens,
    // of boards nothing is cut but holders
    workshop: isMade ? { ...workshop, boards: ofHolders } : workshop,
    plywood: { thickness, readings, material },
    stock: otherSheets(design),
    laser: { kerf: design.laser.kerf },
    holders: design.holders.map(
      ({ tolerance: _tolerance, filmFloat: _float, spacer: _glued, measured: _read, make, ...holder }) => ({
        ...holder,
        ...(make === undefined ? {} : { make: { sheet: make.sheet, insert: make.insert, asked: holder.filmDepth } }),
      }),
    ),
  });
  let bits = mixed(text);
  let mark = '';
  while (mark.length < LENGTH) {
    mark += LETTERS.charAt(bits % LETTERS.length);
    bits = Math.floor(bits / LETTERS.length);
  }
  return mark;
}

/** More sheets of the plywood shape nothing, nor do two sizes of another. */
function otherSheets({ stock, plywood }: Design) {
  const others = stock.filter(({ material }) => material !== plywood.material);
  const first = others.filter(({ material }, i) => others.findIndex((other) => other.material === material) === i);
  return first.map(({ material, thickness }) => ({ material, thickness }));
}

/** JSON with its keys in order and its numbers rounded, the same for equal contents however they came about. */
function canonical(value: unknown): string {
  if (typeof value === 'number') return String(Math.round(value * FINENESS) / FINENESS + 0);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner)}`).join(',')}}`;
}

/** 32-bit FNV-1a (offset 2166136261, prime 16777619), then stirred so that each letter of the mark depends on all of the text. */
function mixed(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
