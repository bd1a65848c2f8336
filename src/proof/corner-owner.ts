import type { Build } from '../assembly/build.js';
import type { Extent } from '../assembly/extent.js';
import { ROUNDING } from '../assembly/limit.js';
import { sharedArea } from '../geometry/clip.js';
import { box, rectangle } from '../geometry/shapes.js';
import type { Axis } from '../model/assembly-move.js';
import type { Finding } from '../model/finding.js';
import { mm, tenth } from '../units/print.js';
import { type Block, blocksOf, DRAWN, PRESS, woodAt } from './straight-line.js';

/** Panels that make up a box: at each edge of it two of them meet, at a corner three. */
const boxes: readonly (readonly string[])[] = [
  ['F1', 'F2L', 'F2R', 'F3'],
  ['C1L', 'C1R', 'C2T', 'C2F', 'C3'],
  ['R1L', 'R1R', 'R2T', 'R2F', 'R3'],
];

/** A joint that is glued may be open by so much: the widest glue slip that is sold as one. Common practice, no source. */
const SLIP = 0.2;

/**
 * corner-owner: along every edge of the boxes each cell, as deep and as wide as the two panels are thick, belongs to one
 * panel: where none has it light comes in, where two have it the box does not close. At a corner one panel has the whole
 * cell. Proven from one end of an edge to the other: between two corners of an outline nothing changes.
 */
export function cornerOwners({ parts }: Build, panels = boxes): readonly Finding[] {
  // what comes and goes with the set-ups is no wall of a box
  const fixed = parts.filter(({ kind, placements }) => kind === 'flat' && placements.every(({ when }) => !when));
  const all = blocksOf(fixed);
  return panels.flatMap((ids) => {
    const own = ids.flatMap((id) => all.filter(({ piece }) => piece.part.id === id));
    return worstOf([
      ...pairsOf(own).flatMap((pair) => alongEdge(pair, all)),
      ...cornersOf(own).flatMap((cell) => atCorner(cell, all)),
    ]);
  });
}

/** One panel that is cut wrong shows at each of its fingers: more than these help nobody. */
const MOST_TOLD = 6;

const worstOf = (found: readonly Finding[]): readonly Finding[] => {
  if (found.length <= MOST_TOLD) return found;
  const worst = [...found].sort((a, b) => (b.value ?? 0) - (a.value ?? 0)).slice(0, MOST_TOLD);
  return worst.map((one, i) =>
    i < MOST_TOLD - 1
      ? one
      : { ...one, message: `${one.message} The same at ${found.length - MOST_TOLD} more places of this box.` },
  );
};

type Pair = readonly [Block, Block];

const pairsOf = (blocks: readonly Block[]): readonly Pair[] =>
  blocks.flatMap((a, i) => blocks.slice(i + 1).map((b): Pair => [a, b]));

const thickOf = (block: Block): Axis => (block.prism as NonNullable<Block['prism']>).thick;
const regionOf = (block: Block) => (block.prism as NonNullable<Block['prism']>).region;

const AXES = ['x', 'y', 'z'] as const;

/** What two boxes have in common; null where that is no more than a face. */
function common(a: Extent, b: Extent): Extent | null {
  const along = (k: Axis) => [Math.max(a[k][0], b[k][0]), Math.min(a[k][1], b[k][1])] as const;
  const shared = { x: along('x'), y: along('y'), z: along('z') };
  return AXES.every((k) => shared[k][1] - shared[k][0] > ROUNDING) ? shared : null;
}

interface Owned {
  readonly from: number;
  readonly to: number;
  /** Share of the cross-section that has an owner, 2 where it has two. */
  readonly share: number;
  readonly owners: readonly Block[];
}

/** The bar in which two panels meet, as deep and as wide as they are thick; null where they do not. */
function barOf(a: Block, b: Block): Extent | null {
  const [ta, tb] = [thickOf(a), thickOf(b)];
  const shared = ta === tb ? null : common(a.extent, b.extent);
  return shared && { ...shared, [ta]: a.extent[ta], [tb]: b.extent[tb] };
}

/** Walks along the bar in which two panels meet. */
function alongEdge([a, b]: Pair, all: readonly Block[]): readonly Finding[] {
  const [ta, tb] = [thickOf(a), thickOf(b)];
  const bar = barOf(a, b);
  if (bar === null) return [];
  const line = AXES.find((axis) => axis !== ta && axis !== tb) as Axis;
  const [from, to] = bar[line];
  const near = all
    .filter((block) => common(block.extent, bar) !== null)
    // what lies across the line has the same share wherever it is
    .map((block) => ({
      block,
      lid: thickOf(block) === line ? cellShare(block, { ...bar, [line]: block.extent[line] }) : null,
    }));
  const stops = [from, to, ...near.flatMap(({ block }) => stopsOf(block, line))]
    .filter((l) => l >= from && l <= to)
    .sort((p, q) => p - q);
  const stretches: Owned[] = [];
  for (let i = 1; i < stops.length; i++) {
    const [start, end] = [stops[i - 1] as number, stops[i] as number];
    if (end - start < ROUNDING) continue;
    const middle = (start + end) / 2;
    const shares = near.map(({ block, lid }) => ({ block, share: sectionShare(block, bar, line, middle, lid) }));
    const share = shares.reduce((sum, one) => sum + one.share, 0);
    const owners = shares.filter((one) => one.share > ROUNDING).map(({ block }) => block);
    const last = stretches.at(-1);
    if (last && Math.abs(last.share - share) < ROUNDING && sameBlocks(last.owners, owners))
      stretches[stretches.length - 1] = { ...last, to: end };
    else stretches.push({ from: start, to: end, share, owners });
  }
  const thin = Math.min(bar[ta][1] - bar[ta][0], bar[tb][1] - bar[tb][0]);
  return stretches.flatMap((stretch) => {
    const long = stretch.to - stretch.from;
    const missing = (1 - stretch.share) * thin;
    const place = { ...bar, [line]: [stretch.from, stretch.to] };
    if (Math.min(long, missing) > SLIP + ROUNDING) return [unowned([a, b], place, Math.min(long, missing))];
    if (Math.min(long, -missing) > PRESS) return [contested(stretch.owners, place, Math.min(long, -missing))];
    return [];
  });
}

const sameBlocks = (a: readonly Block[], b: readonly Block[]): boolean =>
  a.length === b.length && a.every((block, i) => block === b[i]);

/** Where along the line something may change. */
function stopsOf(block: Block, line: Axis): readonly number[] {
  if (thickOf(block) === line) return block.extent[line];
  const first = DRAWN[thickOf(block)][0] === line;
  return regionOf(block).flatMap((loop) => loop.map(({ x, y }) => (first ? x : y)));
}

/** Share of the bar's cross-section that is wood of this piece, at one place along it. */
function sectionShare(block: Block, bar: Extent, line: Axis, at: number, lid: number | null): number {
  const thick = thickOf(block);
  const [low, high] = block.extent[line];
  if (at < low || at > high) return 0;
  if (lid !== null) return lid;
  const other = AXES.find((axis) => axis !== thick && axis !== line) as Axis;
  const within = ([p, q]: readonly [number, number], [r, s]: readonly [number, number]) =>
    Math.max(0, Math.min(q, s) - Math.max(p, r));
  const share = within(block.extent[thick], bar[thick]) / (bar[thick][1] - bar[thick][0]);
  if (share === 0) return 0;
  const wood = woodAt(block, line, at).reduce((sum, stretch) => sum + within(stretch, bar[other]), 0);
  return (share * wood) / (bar[other][1] - bar[other][0]);
}

/** Share of a cell that is wood of this piece. */
function cellShare(block: Block, cell: Extent): number {
  const thick = thickOf(block);
  const [u, v] = DRAWN[thick];
  const room = common(block.extent, cell);
  if (room === null) return 0;
  const frame = rectangle(box(cell[u][0], cell[v][0], cell[u][1], cell[v][1]));
  const whole = (cell[u][1] - cell[u][0]) * (cell[v][1] - cell[v][0]) * (cell[thick][1] - cell[thick][0]);
  return (sharedArea(regionOf(block), [frame]) * (room[thick][1] - room[thick][0])) / whole;
}

interface Corner {
  readonly panels: readonly Block[];
  readonly cell: Extent;
}

/** Where three panels of a box meet. */
function cornersOf(panels: readonly Block[]): readonly Corner[] {
  return pairsOf(panels).flatMap(([a, b]) => {
    const bar = barOf(a, b);
    if (bar === null) return [];
    return panels.slice(panels.indexOf(b) + 1).flatMap((c) => {
      const cell = thickOf(c) === thickOf(a) || thickOf(c) === thickOf(b) ? null : common(bar, c.extent);
      return cell === null ? [] : [{ panels: [a, b, c], cell }];
    });
  });
}

function atCorner({ panels, cell }: Corner, all: readonly Block[]): readonly Finding[] {
  const size = Math.min(...AXES.map((k) => cell[k][1] - cell[k][0]));
  const shares = all.map((block) => ({ block, share: cellShare(block, cell) }));
  const owners = shares.filter(({ share }) => share * size > SLIP).map(({ block }) => block);
  // none, and two that have the whole of it, are told along the edges that end here
  const divided = owners.length > 1 && shares.every(({ share }) => (1 - share) * size > SLIP);
  return divided ? [halved(panels, owners, cell)] : [];
}

const at = (place: Extent): string => AXES.map((k) => `${k} ${mm(tenth((place[k][0] + place[k][1]) / 2))}`).join(', ');
const ids = (blocks: readonly Block[]): string => {
  const names = blocks.map(({ piece }) => piece.part.id);
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
};
const hundredth = (value: number): number => Math.round(value * 100) / 100;

const unowned = (pair: Pair, place: Extent, open: number): Finding => ({
  rule: 'corner-owner',
  level: 'error',
  value: open,
  limit: SLIP,
  unit: 'mm',
  message: `Where ${ids(pair)} meet, ${mm(hundredth(open))} of the corner belong to neither, round ${at(place)}: light comes in.`,
  hint: `Leave a finger on one of the two there; they must add up to the whole edge.`,
});

const contested = (owners: readonly Block[], place: Extent, shared: number): Finding => ({
  rule: 'corner-owner',
  level: 'error',
  value: shared,
  limit: PRESS,
  unit: 'mm',
  message: `${owners.length > 1 ? ids(owners) : 'Two panels'} both have the corner round ${at(place)}, ${mm(hundredth(shared))} of it: the box does not close.`,
  hint: 'Cut one of them back there: a cell of an edge has one owner.',
});

const halved = (panels: readonly Block[], owners: readonly Block[], cell: Extent): Finding => ({
  rule: 'corner-owner',
  level: 'error',
  value: owners.length,
  limit: 1,
  unit: 'owners',
  message: `The corner where ${ids(panels)} meet, round ${at(cell)}, is divided between ${ids(owners)}: the seam between them runs out through the corner.`,
  hint: 'Give the whole corner to the panel that keeps the first finger of the edge.',
});
