import type { Remnant } from '../model/remnant.js';
import { mm } from '../units/print.js';
import type { SheetSize, Stock } from './design.js';
import type { Fault } from './explain.js';
import { materialName } from './material-name.js';
import type { Written } from './schema.js';

type WrittenStock = Written['stock'][number];

/** What was found in the files of the remnants that a design names: the piece, or why there is none. */
export type RemnantFiles = ReadonlyMap<string, Remnant | RemnantMissing>;

/** Why a file gives no remnant, and what would be taken. */
export interface RemnantMissing {
  readonly what: string;
  readonly accepted: string;
}

/** Looks for a file of a remnant, its name as the design has it. */
export type FindRemnant = (file: string) => Remnant | RemnantMissing;

/** Where a design is read and there are no files. */
export const noRemnants: FindRemnant = () => ({
  what: 'Files of remnants cannot be read here.',
  accepted: 'Write its size instead, such as sheet: [300 mm, 200 mm], count: 1.',
});

export const remnantFiles = ({ stock }: Written, find: FindRemnant): RemnantFiles =>
  new Map(stock.flatMap(({ remnant }) => (remnant === undefined ? [] : [[remnant, find(remnant)] as const])));

/** As far as two readings of one sheet may differ: beyond that, it is another sheet. */
const READ_AGAIN = 0.15;

/** What cannot be true of the keys of a stock entry together, nor of what stands in the file that it names. */
export function stockFaults({ stock }: Written, files: RemnantFiles): readonly Fault[] {
  return stock.flatMap((entry, index): readonly Fault[] => {
    const fault = (key: keyof WrittenStock, what: string, accepted: string): Fault => ({
      path: ['stock', index, key],
      at: 'value',
      what,
      accepted,
    });
    const { remnant: file, thickness } = entry;
    if (file === undefined)
      return thickness === undefined
        ? [fault('thickness', 'It is not given, and it has no default.', 'Write thickness: 3 mm.')]
        : [];
    const earlier = stock.findIndex((other) => other.remnant === file);
    if (earlier < index)
      return [
        fault('remnant', `Entry ${earlier + 1} names this file already.`, 'One file is one piece; delete one of them.'),
      ];
    const piece = files.get(file);
    if (piece === undefined) throw new Error(`the remnant ${file} was not looked for`);
    if ('what' in piece) return [fault('remnant', piece.what, piece.accepted)];
    const faults: Fault[] = [];
    if (entry.sheet !== undefined)
      faults.push(fault('sheet', 'The remnant has the size that its file says.', 'Delete sheet.'));
    if (entry.count !== undefined)
      faults.push(fault('count', 'A remnant is one piece.', 'Delete count, and give each piece an entry of its own.'));
    if (thickness !== undefined && Math.abs(thickness - piece.thickness) > READ_AGAIN)
      faults.push(
        fault(
          'thickness',
          `The remnant is ${mm(piece.thickness)} thick, as its file says.`,
          'Delete thickness, or name the file of the right piece.',
        ),
      );
    if (entry.material !== undefined && !isOf(piece, entry.material))
      faults.push(
        fault(
          'material',
          `The remnant is ${piece.material}, as its file says.`,
          'Delete material, or name another file.',
        ),
      );
    return faults;
  });
}

const isOf = (piece: Remnant, word: string): boolean =>
  materialName(wordOf(piece), piece.thickness) === materialName(word, piece.thickness);

/** The entries with their defaults; faults have been looked for. */
export function completeStock({ stock, plywood }: Written, sheet: SheetSize, files: RemnantFiles): readonly Stock[] {
  return stock.map((entry): Stock => {
    const { count = null, first = false, remnant: file } = entry;
    const piece = file === undefined ? undefined : files.get(file);
    if (file === undefined || piece === undefined || 'what' in piece) {
      if (file !== undefined || entry.thickness === undefined) throw new Error('faults of the stock were let pass');
      return {
        material: materialName(entry.material ?? plywood.material, entry.thickness),
        thickness: entry.thickness,
        sheet: entry.sheet === undefined ? sheet : { width: entry.sheet[0], height: entry.sheet[1] },
        count,
        first,
        remnant: null,
      };
    }
    const thickness = entry.thickness ?? piece.thickness;
    const material = materialName(entry.material ?? wordOf(piece), thickness);
    return {
      material,
      thickness,
      sheet: sizeOf(piece),
      count: 1,
      first,
      remnant: { file, ...piece, material, thickness },
    };
  });
}

/** Its material without the thickness: the file says plywood-4.05, or plywood where somebody wrote it by hand. */
function wordOf({ material, thickness }: Remnant): string {
  const named = materialName('', thickness);
  return material.endsWith(named) && material.length > named.length ? material.slice(0, -named.length) : material;
}

/** It lies at its lower left corner. */
const sizeOf = ({ outline }: Remnant): SheetSize => ({
  width: Math.max(...outline.map(({ x }) => x)),
  height: Math.max(...outline.map(({ y }) => y)),
});
