import { completeDesign } from './complete.js';
import { inconsistencies } from './consistency.js';
import { defaultedPaths, isDefaulted } from './defaulted.js';
import type { Design } from './design.js';
import { designJsonSchema } from './json-schema.js';
import { keyTable } from './key-table.js';
import { designSchema, type Written } from './schema.js';
import { designFile } from './source.js';
import type { RemnantFiles } from './stock.js';
import { readYaml } from './yaml.js';

/** A number in a design file that could have been another one. */
export interface Variable {
  /** holders[0].filmDepth; format for a side of the image of a format that is given by its name. */
  readonly path: string;
  readonly what: string;
  readonly value: number;
  readonly unit: 'mm' | 'kg' | 'kg/m³' | 'N/mm²' | 'mm/s' | 's' | 'f-number' | 'magnification' | 'count' | '';
  /** Whether the user wrote it, or it is a default. */
  readonly typed: boolean;
  /** The design with it changed by so much, defaults filled in anew; null where that is no design. */
  readonly changedBy: (amount: number) => Design | null;
}

/**
 * Every number of a design file, those that were left to a fixed default too.
 *
 * @param text of a file that can be read
 * @param stock of the design that was read from it: it holds the remnants that the text names
 */
export function variablesOf(text: string, stock: Design['stock'] = []): readonly Variable[] {
  const outline = readYaml({ file: '', text: text.replace(/^\ufeff/, ''), kind: designFile });
  const outcome = 'value' in outline ? designSchema.safeParse(outline.value, { jitless: true }) : null;
  if (!outcome?.success || !('value' in outline)) throw new Error('a design that was read before cannot be read');
  const { sitting: _sitting, ...written }: Written = outcome.data; // it exposes, and no figure of the plan hangs on it
  const files: RemnantFiles = new Map(
    stock.flatMap(({ remnant }) => (remnant ? [[remnant.file, remnant] as const] : [])),
  );
  const defaulted = defaultedPaths(outline.value);
  const table = new Map(keyTable(designJsonSchema()).map((key) => [key.path, key]));
  return [
    ...sidesOf(written, defaulted, files),
    ...numbersIn(written).map(({ path, value, distance, put }): Variable => {
      const listed = path.replace(/\[\d+\]/g, '[]');
      const key = table.get(listed) ?? table.get(listed.replace(/\[\]$/, ''));
      return {
        path,
        what: key?.description ?? '',
        value,
        unit: distance ? 'mm' : unitOf(path, key?.example ?? ''),
        typed: !isDefaulted({ defaulted }, path),
        // no length turns round: what is none cannot be less
        changedBy: (amount) => (value >= 0 && value + amount < 0 ? null : completed(put(amount), defaulted, files)),
      };
    }),
  ];
}

function completed(written: Written, defaulted: readonly string[], files: RemnantFiles): Design | null {
  return inconsistencies(written, files).length > 0 ? null : completeDesign(written, defaulted, files);
}

/** The image of a format that is given by its name: it is no number in the file, but another format has another one. */
function sidesOf(written: Written, defaulted: readonly string[], files: RemnantFiles): readonly Variable[] {
  if (typeof written.format !== 'string') return [];
  const design = completeDesign(written, defaulted, files);
  return (['short', 'long'] as const).map((side): Variable => {
    const { image } = design.format;
    return {
      path: 'format',
      what: `${side} side of the image`,
      value: image[side],
      unit: 'mm',
      typed: true,
      changedBy: (amount) => ({
        ...design,
        format: { ...design.format, image: { ...image, [side]: image[side] + amount } },
      }),
    };
  });
}

/** A number in what was written, and the whole with that number changed. */
interface NumberIn {
  readonly path: string;
  readonly value: number;
  /** Whether it is a subject distance where a magnification could stand. */
  readonly distance: boolean;
  readonly put: (amount: number) => Written;
}

function numbersIn(written: Written): readonly NumberIn[] {
  const found: NumberIn[] = [];
  const visit = (node: unknown, path: string, put: (changed: unknown) => Written, distance = false): void => {
    if (typeof node === 'number') found.push({ path, value: node, distance, put: (amount) => put(node + amount) });
    else if (path === 'plywood.thickness' && Array.isArray(node)) {
      const readings: readonly number[] = node;
      // readings of one sheet: a thicker sheet is thicker everywhere
      found.push({
        path,
        value: Math.max(...readings),
        distance,
        put: (amount) => put(readings.map((reading) => reading + amount)),
      });
    } else if (Array.isArray(node))
      node.forEach((entry: unknown, i) => {
        visit(entry, `${path}[${i}]`, (changed) => put(node.map((own: unknown, k) => (k === i ? changed : own))));
      });
    else if (typeof node === 'object' && node !== null)
      for (const [key, own] of Object.entries(node)) {
        const here = HIDDEN.has(key) ? path : path === '' ? key : `${path}.${key}`;
        visit(own, here, (changed) => put({ ...node, [key]: changed }), key === DISTANCE);
      }
  };
  visit(written, '', (changed) => changed as Written); // of the form of what was visited, one number apart
  return found;
}

/** Words that the reading of a focus adds: the file has one value for both. */
const DISTANCE = 'subjectDistance';
const HIDDEN: ReadonlySet<string> = new Set(['magnification', DISTANCE]);

/** As the example of a key is written. */
function unitOf(path: string, example: string): Variable['unit'] {
  if (/N\/mm2/.test(example)) return 'N/mm²';
  if (/kg\/m3/.test(example)) return 'kg/m³';
  if (/\bmm\/s\b/.test(example)) return 'mm/s';
  if (/\bmm\b/.test(example)) return 'mm';
  if (/\bk?g\b/.test(example)) return 'kg';
  if (/\d s$/.test(example)) return 's';
  if (/^f\//.test(example)) return 'f-number';
  if (/^\d+:\d/.test(example) || example === 'infinity') return 'magnification';
  return /(screws|count|filters)$/.test(path) ? 'count' : '';
}
