import { type ClosedPath, type Path, reversed } from '../../src/geometry/path.js';
import { box, boxAt, circle, rectangle, rounded, type Step, slotAlongX, stepped } from '../../src/geometry/shapes.js';
import type { FlatPart } from '../../src/model/part.js';
import type { Piece } from '../../src/sheets/lay-out.js';

/** The parts of a camera that nobody has built: panels with fingers, frames with windows, strips and small stuff. */
const T = 4.05;

const hole = (loop: ClosedPath): ClosedPath => reversed(loop);

export function plate(
  id: string,
  outline: ClosedPath,
  more: Partial<Pick<FlatPart, 'name' | 'grain' | 'holes' | 'engraving' | 'material' | 'thickness'>> = {},
): FlatPart {
  return {
    kind: 'flat',
    id,
    name: `invented ${id}`,
    material: 'plywood-4.05',
    thickness: T,
    grain: 'any',
    outline,
    holes: [],
    engraving: [],
    marks: [],
    massKg: 0.01,
    placements: [],
    joins: [],
    ...more,
  };
}

function fingers(length: number, first: 'out' | 'in'): readonly Step[] {
  const count = 2 * Math.floor(length / (6 * T)) + 1;
  const width = length / count;
  const steps: Step[] = [];
  for (let i = first === 'out' ? 2 : 1; i < count - 1; i += 2)
    steps.push({ from: i * width, to: (i + 1) * width, depth: first === 'out' ? T : -T });
  return steps;
}

const panel = (w: number, h: number) =>
  stepped(box(0, 0, w, h), { left: fingers(h, 'in'), right: fingers(h, 'in'), top: fingers(w, 'out') });

const frame = (w: number, h: number, rim: number) => ({
  outline: rounded(boxAt(w / 2, h / 2, w, h), 6),
  holes: [hole(rectangle(box(rim, rim, w - rim, h - rim)))],
});

/** An arrow, open and with an arc in it, and a closed ring. */
const arrow = (x: number, y: number): readonly Path[] => [
  {
    closed: false,
    vertices: [
      { x, y, bulge: 0 },
      { x, y: y + 12, bulge: 0.4 },
      { x: x + 5, y: y + 15, bulge: 0 },
      { x: x + 9, y: y + 15, bulge: 0 },
    ],
  },
  { closed: true, vertices: circle(x + 12, y + 6, 4) },
];

const openFrame = (id: string, w: number, h: number, rim: number, grain: FlatPart['grain'] = 'any') => {
  const { outline, holes } = frame(w, h, rim);
  return plate(id, outline, { holes, grain });
};

export const inventedCamera: readonly Piece[] = [
  {
    part: plate('F1', panel(207, 246), {
      grain: 'y',
      holes: [hole(rectangle(boxAt(103, 140, 120, 120))), hole(circle(20, 20, 4.5)), hole(circle(187, 20, 4.5))],
      engraving: arrow(20, 40),
    }),
    count: 1,
  },
  { part: plate('F2', panel(169, 246), { grain: 'y', engraving: arrow(30, 30) }), count: 2 },
  { part: plate('F3', panel(169, 207), { engraving: arrow(30, 30) }), count: 1 },
  { part: plate('F4', panel(169, 207)), count: 1 },
  { part: plate('F5', rectangle(box(0, 0, 8, 183)), { grain: 'y' }), count: 4 },
  {
    part: plate('F6', rounded(boxAt(0, 0, 148, 148), 3), { holes: [hole(circle(0, 0, 64))], engraving: arrow(40, 40) }),
    count: 1,
  },
  { part: plate('F7', rectangle(boxAt(0, 0, 119.4, 119.4)), { holes: [hole(circle(0, 0, 64))] }), count: 1 },
  { part: plate('F8', rectangle(box(0, 0, 14, 148)), { grain: 'y' }), count: 2 },
  { part: plate('F9', rounded(box(0, 0, 20, 148), 3), { grain: 'y', holes: [hole(circle(10, 30, 4.5))] }), count: 2 },
  { part: plate('R1', panel(165, 196), { engraving: arrow(30, 30) }), count: 2 },
  { part: plate('R2', panel(165, 196)), count: 2 },
  {
    part: plate('R3', panel(232, 254), {
      grain: 'y',
      holes: [
        hole(
          stepped(boxAt(116, 130, 188, 188), {
            left: [{ from: 100, to: 120, depth: T }],
            top: [{ from: 90, to: 110, depth: T }],
          }),
        ),
      ],
    }),
    count: 1,
  },
  { part: plate('R4', rectangle(box(0, 0, 163, 135)), { grain: 'x', holes: [hole(circle(80, 60, 16.5))] }), count: 2 },
  { part: plate('R5', stepped(box(0, 0, 70, 33), { top: [{ from: 20, to: 50, depth: T }] })), count: 2 },
  { part: plate('R6', rounded(boxAt(0, 0, 12, 27), 5.9), { holes: [hole(circle(0, 5, 4.5))] }), count: 4 },
  { part: plate('R7', circle(0, 0, 16), { holes: [hole(circle(0, 0, 4.5))] }), count: 4 },
  { part: openFrame('B1', 232, 232, 50), count: 1 },
  { part: openFrame('B2', 187.5, 187.5, 28), count: 1 },
  { part: plate('B3', rectangle(box(0, 0, 10, 226)), { grain: 'y' }), count: 2 },
  { part: plate('B4', rectangle(box(0, 0, 150, 10)), { grain: 'x' }), count: 1 },
  { part: plate('B5', rounded(box(0, 0, 16, 30), 4)), count: 4 },
  { part: openFrame('G1', 150, 196, 14), count: 1 },
  { part: openFrame('G2', 150, 196, 9), count: 1 },
  { part: plate('G3', rectangle(box(0, 0, 150, 196))), count: 1 },
  { part: openFrame('SP', 150, 196, 14), count: 4 },
  {
    part: plate('T1', rectangle(box(0, 0, 359, 232)), {
      grain: 'x',
      holes: [hole(slotAlongX(200, 116, 116, 6.4)), hole(circle(110, 116, 25))],
    }),
    count: 2,
  },
  {
    part: plate('T2', rectangle(box(0, 0, 329, 16)), {
      grain: 'x',
      holes: [hole(circle(20, 8, 5)), hole(circle(309, 8, 5))],
    }),
    count: 4,
  },
  { part: plate('T3', rectangle(box(0, 0, 329, 24)), { grain: 'x', engraving: arrow(100, 4) }), count: 2 },
  { part: plate('T4', rectangle(box(0, 0, 60, 60)), { holes: [hole(circle(30, 30, 8.4))] }), count: 2 },
  { part: plate('T5', rectangle(box(0, 0, 163, 10)), { grain: 'x' }), count: 1 },
  { part: plate('C1', rectangle(box(0, 0, 60, 40)), { material: 'plywood-3.02', thickness: 3.02 }), count: 3 },
];

export const stock = [
  { material: 'plywood-4.05', thickness: T, sheet: { width: 600, height: 400 } },
  { material: 'plywood-3.02', thickness: 3.02, sheet: { width: 300, height: 200 } },
] as const;
