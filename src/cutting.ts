import type { Build } from './assembly/build.js';
import { countOf } from './assembly/setups.js';
import { engrave } from './camera/engrave.js';
import type { Finding } from './model/finding.js';
import type { Part } from './model/part.js';
import type { Planned } from './pipeline.js';
import { type LayOut, layOut, type Piece } from './sheets/lay-out.js';
import type { SheetStock } from './sheets/stock.js';

/** The caution that goes with every cut file. */
export const FIRE =
  'Never leave the laser alone while it runs; keep the extraction on and an extinguisher at hand. The machine’s own instructions and local rules come first.';

/** Enough to tell whether all parts find room; the best layout is no matter of a check, or of a spacer alone. */
export const LEAST_EFFORT = 1;

export interface Cutting {
  readonly build: Build;
  /** Parts that bear no mark of their number. */
  readonly bare: readonly string[];
  readonly cut: LayOut;
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
}

interface CuttingOptions {
  readonly effort: number;
  /** Kits that are cut on sheets that they share. */
  readonly copies?: number;
  readonly hurried?: boolean;
  /** Pieces of each part, where not all that the camera has are cut. */
  readonly pieces?: (id: string, count: number) => number;
  /** What is cut from, where it is not what the design has. */
  readonly from?: readonly SheetStock[];
  readonly onProgress?: (done: number) => void;
}

/** Parts engraved and laid on sheets: those that are bought, and those at hand. */
export function cutting(
  { design, revision, build }: Planned,
  parts: readonly Part[],
  options: CuttingOptions = { effort: LEAST_EFFORT },
): Cutting {
  const marked = engrave(parts, { revision, build });
  const { pieces: wanted = (_, count) => count } = options;
  const pieces = piecesOf(build, marked.parts).map((piece) => ({
    ...piece,
    count: wanted(piece.part.id, piece.count),
  }));
  const cut = laidOut(design, pieces, options);
  return {
    build: { ...build, parts: marked.parts },
    bare: marked.bare,
    cut,
    pieces,
    findings: [...marked.findings, ...cut.findings],
  };
}

/**
 * Parts laid on sheets as quickly as it goes: the first layout that is found, without marks, which take longer to find
 * hidden places for than parts take to find room.
 */
export function cuttingAtOnce({ design, build, parts }: Planned): Pick<Cutting, 'cut' | 'pieces'> {
  const pieces = piecesOf(build, parts);
  return { cut: laidOut(design, pieces, { effort: 0, hurried: true }), pieces };
}

const piecesOf = (build: Build, parts: readonly Part[]): readonly Piece[] =>
  parts.flatMap((part): readonly Piece[] => {
    if (part.kind !== 'flat') return [];
    return [{ part, count: countOf(part.placements, build.setups) }];
  });

const laidOut = (design: Planned['design'], pieces: readonly Piece[], options: CuttingOptions): LayOut => {
  const { laser, workshop } = design;
  const { from = sheetsOf(design), pieces: _wanted, ...rest } = options;
  return layOut(pieces, {
    materials: from,
    kerf: laser.kerf,
    spacing: workshop.spacing,
    margin: workshop.margin,
    ...rest,
  });
};

/** All that the parts of a camera can be cut from. */
export const sheetsOf = (design: Planned['design']): readonly SheetStock[] => [
  design.plywood,
  ...design.stock,
  ...boardSheets(design),
];

/** The boards that something is made of, in sheets of the plywood's size where the stock has none that more are bought of. */
function boardSheets({ boards, holders, stops, plywood: { sheet }, stock }: Planned['design']): readonly SheetStock[] {
  const used = [
    ...(holders.some(({ make }) => make !== undefined) ? Object.values(boards) : []),
    ...(stops ? [stops.board] : []),
  ];
  const bought = new Set(stock.filter(({ count, remnant }) => count === null && remnant === null).map(materialOf));
  return [...new Map(used.map((board) => [board.material, board])).values()]
    .filter((board) => !bought.has(materialOf(board)))
    .map((board) => ({ ...board, sheet }));
}

const materialOf = ({ material }: { readonly material: string }): string => material;
