import { readFileSync } from 'node:fs';
import { searchBins } from '../../src/packing/bins.js';
import { searchSheets } from '../../src/packing/pack-sheets.js';
import type { Blank, Layout, Rectangle, Ring } from '../../src/packing/shapes.js';
import { searchStrip } from '../../src/packing/strip.js';
import { type Instance, report } from './report.js';
import { timed } from './timed.js';
import type { BenchOptions } from './wanted.js';

type Pair = readonly [number, number];

interface StripList {
  readonly name: string;
  readonly W: number;
  readonly opt: number;
  readonly items: readonly (readonly [number, number, number])[];
}

interface BinList {
  readonly name: string;
  readonly W: number;
  readonly H: number;
  readonly items: readonly (readonly [number, number, number])[];
  readonly bestFixed: number;
  readonly bestTurned: number;
}

interface ListedPart {
  readonly id: string;
  readonly count: number;
  /** Degrees anticlockwise. */
  readonly rotations: readonly number[];
  readonly outline: readonly Pair[];
  readonly holes: readonly (readonly Pair[])[];
}

interface PartList {
  readonly name: string;
  readonly sheet: Pair;
  readonly margin: number;
  readonly web: number;
  readonly parts: readonly ListedPart[];
  readonly best: { readonly sheets: number; readonly equivalents: number };
}

/** Measures the packer on a file of rectangles for a strip, rectangles for bins, or parts for sheets. */
export function measurePacking(file: string, options: BenchOptions): void {
  const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { readonly instances: readonly object[] };
  report(
    file,
    instances.map((one): Instance => {
      if ('parts' in one) return sheetsOf(one as PartList, options);
      if ('H' in one && 'bestFixed' in one) return binsOf(one as BinList, options);
      if ('opt' in one && 'items' in one) return stripOf(one as StripList, options);
      throw new Error(`${file} holds neither rectangles nor parts`);
    }),
    options,
  );
}

const rectangles = (items: BinList['items']): readonly Rectangle[] =>
  items.map(([width, height, count]) => ({ width, height, count }));

function stripOf({ name, W, opt, items }: StripList, { seconds }: BenchOptions): Instance {
  const given = { width: W, items: rectangles(items), turns: true };
  return {
    name,
    best: opt,
    solve: (seed) => {
      const { found, firstMilliseconds } = timed(() => searchStrip(given, seed), seconds);
      return { value: found.height, firstMilliseconds, layout: found };
    },
  };
}

function binsOf({ name, W, H, items, bestFixed, bestTurned }: BinList, { seconds, turns }: BenchOptions): Instance {
  const given = { width: W, height: H, items: rectangles(items), turns };
  return {
    name,
    best: turns ? bestTurned : bestFixed,
    solve: (seed) => {
      const { found, firstMilliseconds } = timed(() => searchBins(given, seed), seconds);
      return { value: found.bins.length, firstMilliseconds, layout: found };
    },
  };
}

function sheetsOf({ name, sheet, margin, web, parts, best }: PartList, { seconds }: BenchOptions): Instance {
  const [width, height] = sheet;
  const blanks = parts.map(
    ({ count, rotations, outline, holes }): Blank => ({
      outline: ring(outline, 1),
      windows: holes.map((hole) => ring(hole, -1)),
      turns: rotations.map((degrees) => degrees / 90),
      count,
    }),
  );
  const bed = {
    outline: [
      { x: margin, y: margin },
      { x: width - margin, y: margin },
      { x: width - margin, y: height - margin },
      { x: margin, y: height - margin },
    ],
    holes: [],
    count: Infinity,
    cost: 1,
  };
  const usable = { width: width - 2 * margin, height: height - 2 * margin };
  return {
    name,
    best: best.sheets,
    bestEquivalents: best.equivalents,
    solve: (seed) => {
      const { found, firstMilliseconds } = timed(
        () => searchSheets({ blanks, beds: [bed], spacing: web }, seed),
        seconds,
      );
      const clear = Math.max(...found.sheets.map(({ places }) => clearStrip(places, blanks, { margin, web, usable })));
      return {
        value: found.sheets.length,
        equivalents: found.sheets.length - clear / (usable.width * usable.height),
        firstMilliseconds,
        layout: {
          sheets: found.sheets.map(({ places }) =>
            places.map(({ blank, turn, x, y }) => ({ id: parts[blank]?.id, x, y, rotation: 90 * turn })),
          ),
        },
      };
    },
  };
}

function ring(points: readonly Pair[], sense: 1 | -1): Ring {
  const corners = points.map(([x, y]) => ({ x, y }));
  const twice = corners.reduce((sum, p, i) => {
    const q = corners[(i + 1) % corners.length] ?? p;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
  return twice * sense > 0 ? corners : corners.reverse();
}

interface Usable {
  readonly margin: number;
  readonly web: number;
  readonly usable: { readonly width: number; readonly height: number };
}

/** The largest clear rectangle over the full width or height of a sheet, mm², a web off what lies beside it. */
function clearStrip(
  places: Layout['sheets'][number]['places'],
  blanks: readonly Blank[],
  { margin, web, usable }: Usable,
): number {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { blank, turn, x, y } of places) {
    const { outline } = blanks[blank] as Blank;
    const [xs, ys] = [outline.map((p) => p.x), outline.map((p) => p.y)];
    const size = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const;
    const [w, h] = turn % 2 === 0 ? size : [size[1], size[0]];
    [left, bottom, right, top] = [Math.min(left, x), Math.min(bottom, y), Math.max(right, x + w), Math.max(top, y + h)];
  }
  const across = Math.max(left - margin, margin + usable.width - right) - web;
  const upright = Math.max(bottom - margin, margin + usable.height - top) - web;
  return Math.max(across * usable.height, upright * usable.width);
}
