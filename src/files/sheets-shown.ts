import { type ClosedPath, flatten, moved, type Path, type Point } from '../geometry/path.js';
import { roomsIn } from '../geometry/roomiest.js';
import { box, rectangle } from '../geometry/shapes.js';
import type { Palette } from '../model/palette.js';
import type { FlatPart } from '../model/part.js';
import type { ShownOnSheet, ShownSheet, ShownSheets } from '../model/shown-sheets.js';
import { cutMinutes, type Pace } from '../sheets/cut-time.js';
import type { LayOut, Piece } from '../sheets/lay-out.js';
import type { Placed, Sheet } from '../sheets/sheet.js';
import { colourOf } from './layer-colour.js';
import { pathData } from './path-data.js';
import { sheetsPage } from './sheets-page.js';

interface SheetsGiven {
  readonly layout: ShownSheets['layout'];
  readonly cut: Pick<LayOut, 'sheets' | 'uses' | 'offcuts'>;
  readonly pieces: readonly Piece[];
  readonly laser: Pace & { readonly palette: Palette };
  readonly labels?: Labels;
}

/** Where there is most room for a label, by the shape of its part: most shapes of the next camera are those of the last. */
export type Labels = ReadonlyMap<string, Roomiest>;

/** A layout as a screen shows it, and the places of its labels for the next one. */
export function sheetsShown({ layout, cut, pieces, laser, labels = new Map() }: SheetsGiven): {
  readonly shown: Omit<ShownSheets, 'findings' | 'caution'>;
  readonly labels: Labels;
} {
  const minutesOf = (sheet: Sheet) => cutMinutes(sheet, laser);
  const found = new Map<string, Roomiest>();
  const labelOf = ({ outline, holes }: FlatPart): Roomiest => {
    const shape = JSON.stringify([outline, holes]);
    const label = labels.get(shape) ?? roomiest([outline, ...holes]);
    found.set(shape, label);
    return label;
  };
  const known = new Map(pieces.map((piece) => [piece.part.id, { ...piece, label: labelOf(piece.part) }]));
  const picture = (sheet: Sheet): ShownSheet => {
    const { name, material, width, height, remnant, usedArea, cutLength, placed } = sheet;
    const offcut = cut.offcuts.find((one) => one.sheet === name);
    const nested = new Set(
      sheet.operations.flatMap(({ layer, paths }) =>
        layer === 'cut-nested' ? paths.map(({ id }) => pieceOf(id)) : [],
      ),
    );
    return {
      name,
      material,
      width,
      height,
      remnant: remnant?.file ?? null,
      wood: woodOf(sheet),
      use: usedArea / (width * height),
      cutLength,
      minutes: minutesOf(sheet),
      parts: placed
        .flatMap((one): readonly ShownOnSheet[] => {
          const piece = known.get(one.part);
          return piece ? [partShown(one, piece, height, nested.has(`${one.part}.${one.instance}`))] : [];
        })
        // what lies in a window over the part that has the window
        .sort((a, b) => Number(a.nested) - Number(b.nested)),
      operations: sheet.operations.map(({ layer, paths }) => ({
        layer,
        colour: colourOf(layer, laser.palette),
        path: paths.map(({ path }) => pathData(path, height)).join(''),
      })),
      offcut: offcut
        ? { left: offcut.left, right: offcut.right, top: height - offcut.top, bottom: height - offcut.bottom }
        : null,
    };
  };
  const shown = { layout, sheets: cut.sheets.map(picture), summary: sheetsPage(cut, minutesOf) };
  return { shown, labels: found };
}

/** part.instance, of a path. */
const pieceOf = (path: string): string => path.split('.').slice(0, 2).join('.');

function woodOf({ width, height, remnant }: Sheet): string {
  const loops = remnant ? [remnant.outline, ...remnant.holes] : [rectangle(box(0, 0, width, height))];
  return loops.map((loop) => pathData(closedOf(loop), height)).join('');
}

const closedOf = (loop: readonly Point[]): Path => ({
  closed: true,
  vertices: loop.map(({ x, y }) => ({ x, y, bulge: 0 })),
});

interface Labelled extends Piece {
  readonly label: Roomiest;
}

interface Roomiest {
  readonly at: Point;
  /** How far the nearest cut is, mm. */
  readonly room: number;
}

/** Chords of a label's surroundings may stray so far from an arc, mm. */
const COARSE = 0.2;

function roomiest(loops: readonly ClosedPath[]): Roomiest {
  const [most] = roomsIn(loops.map((loop) => flatten(loop, COARSE)));
  return most ?? { at: loops[0]?.[0] ?? { x: 0, y: 0 }, room: 0 };
}

/** Size of the letters of a label, mm: a capital is about 0.7 of it high, and a mark of n letters 0.54 n wide. */
const sizeOf = (id: string, { room }: Roomiest): number => (1.6 * room) / Math.max(0.7, 0.54 * id.length);

function partShown({ part: id, instance, x, y, rotation }: Placed, piece: Labelled, height: number, nested: boolean) {
  const { part, count, label } = piece;
  const lying = { x, y, turn: rotation };
  const shape = [part.outline, ...part.holes]
    .map((loop) => pathData({ closed: true, vertices: moved(loop, lying) }, height))
    .join('');
  const [at = label.at] = moved([{ ...label.at, bulge: 0 }], lying);
  return {
    part: id,
    name: part.name,
    instance,
    count,
    shape,
    label: { x: at.x, y: height - at.y, size: sizeOf(id, label) },
    nested,
  };
}
