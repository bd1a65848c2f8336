import { isFelt } from '../assembly/bodies.js';
import { boundsOfPoints, type Point } from '../geometry/path.js';
import type { Mark, Stroke } from '../model/page.js';
import type { Part } from '../model/part.js';
import { wordsWidth } from '../paper/words-width.js';
import { LETTERS, LIGHT_FILL, lines } from './line-weights.js';
import { hundredths } from './plot.js';

export type Loops = readonly (readonly Point[])[];

/** What a cut face is made of, as far as a drawing tells it. */
export type Stuff = 'plywood' | 'dowel' | 'printed' | 'metal' | 'glass' | 'felt' | 'card' | 'cord' | 'lens' | 'holder';

/** One set of parallel lines. */
interface Rows {
  /** Where they run, of length 1: x to the right, y down. */
  readonly along: Point;
  /** From line to line, mm on paper. */
  readonly spacing: number;
  readonly offset?: number;
  readonly dash?: readonly [number, number];
}

interface Pattern {
  readonly name: string;
  /** One of several, so that neighbours of the same stuff are told apart; empty where the face is filled. */
  readonly ways: readonly (readonly Rows[])[];
  readonly fill?: string;
}

const DIAGONAL = Math.SQRT1_2;
const RISING: Point = { x: DIAGONAL, y: -DIAGONAL };
const FALLING: Point = { x: DIAGONAL, y: DIAGONAL };
/** Steeper: three across, four up. */
const STEEP: Point = { x: 0.6, y: -0.8 };

/**
 * ISO 128-50 (from memory) wants hatching at 45°, neighbours told apart by direction or spacing, and thin sections
 * filled. It gives no patterns for materials: these are ours, and each drawing shows its key.
 */
const patterns: { readonly [S in Stuff]: Pattern } = {
  plywood: {
    name: 'plywood',
    ways: [
      [{ along: RISING, spacing: 0.9 }],
      [{ along: FALLING, spacing: 0.9 }],
      [{ along: RISING, spacing: 1.5 }],
      [{ along: FALLING, spacing: 1.5 }],
    ],
  },
  dowel: { name: 'dowel', ways: [[{ along: { x: 1, y: 0 }, spacing: 0.7 }]] },
  printed: {
    name: 'printed',
    ways: [
      [
        { along: RISING, spacing: 1.5 },
        { along: FALLING, spacing: 1.5 },
      ],
    ],
  },
  metal: {
    name: 'metal',
    ways: [
      [
        { along: RISING, spacing: 1.3 },
        { along: RISING, spacing: 1.3, offset: 0.4 },
      ],
      [
        { along: FALLING, spacing: 1.3 },
        { along: FALLING, spacing: 1.3, offset: 0.4 },
      ],
    ],
  },
  glass: { name: 'glass', ways: [[{ along: STEEP, spacing: 0.8, dash: [1, 0.6] }]] },
  felt: { name: 'felt', ways: [], fill: '#a8a8a8' },
  card: { name: 'card', ways: [], fill: '#4a4a4a' },
  cord: { name: 'cord', ways: [], fill: '#d0d0d0' },
  lens: { name: 'lens, as a block', ways: [[{ along: RISING, spacing: 3, dash: [4, 1.2] }]] },
  holder: { name: 'holder, as a block', ways: [[{ along: FALLING, spacing: 3 }]] },
};

/** Bought things are told by what they are called: their record has no material. */
const bought: readonly (readonly [RegExp, Stuff])[] = [
  [/ground glass/, 'glass'],
  [/card|shim|fence/, 'card'],
  [/screw|bolt|nut|washer|clip|knob|ring|flange/, 'metal'],
  [/pin|dowel/, 'dowel'],
  [/cord/, 'cord'],
  [/velvet|foam/, 'felt'],
];

export function stuffOf(part: Part): Stuff {
  if (part.kind === 'flat') return part.material.startsWith('board-') ? 'card' : 'plywood';
  if (part.kind === 'printed') return 'printed';
  if (part.role === 'lens' || part.role === 'holder') return part.role;
  if (part.role === 'sheet') return 'card';
  if (part.role === 'window') return 'glass';
  if (isFelt(part)) return 'felt';
  return bought.find(([word]) => word.test(part.name))?.[1] ?? 'metal';
}

/** A cut face on paper. */
export interface Face {
  readonly stuff: Stuff;
  /** mm, y down. */
  readonly loops: Loops;
}

/** Fills and hatching of cut faces, so that what touches is told apart. */
export function hatched(faces: readonly Face[]): readonly Mark[] {
  const boxes = faces.map(({ loops }) => boundsOfPoints(loops.flat()));
  const chosen: number[] = [];
  faces.forEach(({ stuff }, i) => {
    const used = new Set<number>();
    for (let k = 0; k < i; k++) {
      const [a, b] = [boxes[k], boxes[i]];
      if (faces[k]?.stuff !== stuff || a === undefined || b === undefined) continue;
      const apart =
        a.left > b.right + NEAR || b.left > a.right + NEAR || a.bottom > b.top + NEAR || b.bottom > a.top + NEAR;
      if (!apart) used.add(chosen[k] as number);
    }
    const ways = Math.max(1, patterns[stuff].ways.length);
    const free = Array.from({ length: ways }, (_, way) => way).find((way) => !used.has(way));
    chosen.push(free ?? i % ways);
  });
  const fills = faces.flatMap(({ stuff, loops }): readonly Mark[] => {
    const { fill } = patterns[stuff];
    return fill === undefined
      ? []
      : loops.map((points) => ({ kind: 'line', role: 'hatch', points, closed: true, fill }));
  });
  const drawn = new Map<string, { readonly stroke: Stroke; readonly paths: (readonly Point[])[] }>();
  faces.forEach(({ stuff, loops }, i) => {
    for (const rows of patterns[stuff].ways[chosen[i] as number] ?? []) {
      const stroke: Stroke = rows.dash === undefined ? lines.hatch : { ...lines.hatch, dash: rows.dash };
      const key = stroke.dash?.join() ?? '';
      const known = drawn.get(key) ?? { stroke, paths: [] };
      drawn.set(key, known);
      known.paths.push(...rowsIn(loops, rows));
    }
  });
  return [
    ...fills,
    ...[...drawn.values()]
      .filter(({ paths }) => paths.length > 0)
      .map(({ stroke, paths }): Mark => ({ kind: 'strokes', role: 'hatch', paths, stroke })),
  ];
}

/** Faces nearer than this are neighbours, mm on paper: the air of a joint does not tell them apart. */
const NEAR = 0.8;

/** The stretches of parallel lines that lie inside loops (even-odd). */
function rowsIn(loops: Loops, { along, spacing, offset = 0 }: Rows): readonly (readonly Point[])[] {
  const across = ({ x, y }: Point) => along.x * y - along.y * x;
  const forth = ({ x, y }: Point) => along.x * x + along.y * y;
  const rows = new Map<number, number[]>();
  for (const loop of loops)
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length] as Point;
      const [va, vb, ua, ub] = [across(a), across(b), forth(a), forth(b)];
      if (va === vb) return;
      // half open, so that a corner counts once
      const first = Math.ceil((Math.min(va, vb) - offset) / spacing);
      const last = Math.ceil((Math.max(va, vb) - offset) / spacing) - 1;
      for (let k = first; k <= last; k++) {
        const u = ua + ((k * spacing + offset - va) / (vb - va)) * (ub - ua);
        const row = rows.get(k);
        if (row === undefined) rows.set(k, [u]);
        else row.push(u);
      }
    });
  const at = (u: number, v: number): Point => ({
    x: hundredths(along.x * u - along.y * v),
    y: hundredths(along.y * u + along.x * v),
  });
  return [...rows]
    .sort(([a], [b]) => a - b)
    .flatMap(([k, crossings]) => {
      const sorted = crossings.sort((a, b) => a - b);
      const v = k * spacing + offset;
      const stretches: (readonly Point[])[] = [];
      for (let i = 0; i + 1 < sorted.length; i += 2)
        stretches.push([at(sorted[i] as number, v), at(sorted[i + 1] as number, v)]);
      return stretches;
    });
}

/** A swatch of each stuff and its name, in rows no wider than that, from the upper left corner. */
export function hatchKey(
  stuffs: readonly Stuff[],
  { at, width, light }: { readonly at: Point; readonly width: number; readonly light?: string },
): { readonly marks: readonly Mark[]; readonly height: number } {
  const inOrder = (Object.keys(patterns) as Stuff[]).filter((stuff) => stuffs.includes(stuff));
  const swatches = [
    ...inOrder.map((stuff) => ({
      name: patterns[stuff].name,
      filled: (loop: readonly Point[]) => hatched([{ stuff, loops: [loop] }]),
    })),
    ...(light === undefined
      ? []
      : [
          {
            name: light,
            filled: (points: readonly Point[]): readonly Mark[] => [
              { kind: 'line', role: 'light', points, closed: true, fill: LIGHT_FILL },
            ],
          },
        ]),
  ];
  let [x, y] = [at.x, at.y];
  const marks = swatches.flatMap(({ name, filled }): readonly Mark[] => {
    const needs = SWATCH.width + SWATCH.gap + wordsWidth(name, { size: LETTERS.size, heavy: false });
    if (x > at.x && x + needs > at.x + width) {
      x = at.x;
      y += SWATCH.row;
    }
    const corners = [
      { x, y },
      { x: x + SWATCH.width, y },
      { x: x + SWATCH.width, y: y + SWATCH.height },
      { x, y: y + SWATCH.height },
    ].map((p) => ({ x: hundredths(p.x), y: hundredths(p.y) }));
    const start = { x: hundredths(x + SWATCH.width + SWATCH.gap), y: hundredths(y + SWATCH.height - 0.8) };
    x += needs + SWATCH.between;
    return [
      ...filled(corners),
      { kind: 'line', role: 'frame', points: corners, closed: true, stroke: lines.outline },
      { kind: 'words', role: 'note', at: start, text: name, anchor: 'start', ...LETTERS },
    ];
  });
  return { marks, height: y - at.y + SWATCH.height };
}

const SWATCH = { width: 8, height: 4, gap: 1.2, between: 4.5, row: 5.6 } as const;
