import { expect, test } from 'vitest';
import { hatched, type Loops, type Stuff, stuffOf } from '../../src/drawings/hatch.js';
import { inside, type Point } from '../../src/geometry/path.js';
import type { Mark } from '../../src/model/page.js';
import { planCamera } from '../../src/pipeline.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';

const square = (x: number, y: number, side: number): readonly Point[] => [
  { x, y },
  { x: x + side, y },
  { x: x + side, y: y + side },
  { x, y: y + side },
];

const strokesOf = (marks: readonly Mark[]): Loops =>
  marks.flatMap((mark) => (mark.kind === 'strokes' ? mark.paths : []));

const lengthOf = ([a, b]: readonly Point[]): number =>
  a === undefined || b === undefined ? 0 : Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);

test('lines at an even spacing have as much length as the area divided by it (Cavalieri), holes left out', () => {
  const loops = [square(0, 0, 40), [...square(12.3, 9.1, 11)].reverse()];
  const strokes = strokesOf(hatched([{ stuff: 'plywood', loops }]));
  const [first = [], second = []] = strokes;
  // the first two lines lie in the corner: their distance is the spacing
  const normal = (p: Point | undefined) => (p === undefined ? 0 : (p.x + p.y) / Math.SQRT2);
  const spacing = Math.abs(normal(second[0]) - normal(first[0]));
  const length = strokes.reduce((sum, stroke) => sum + lengthOf(stroke), 0);
  expect(length * spacing).toBeGreaterThan(0.99 * (1600 - 121));
  expect(length * spacing).toBeLessThan(1.01 * (1600 - 121));
  for (const [a, b] of strokes) {
    if (a === undefined || b === undefined || lengthOf([a, b]) < 0.1) continue;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    expect(inside(loops[0] ?? [], middle) && !inside(loops[1] ?? [], middle)).toBe(true);
    expect(Math.abs(Math.abs(a.x - b.x) - Math.abs(a.y - b.y))).toBeLessThan(0.03);
  }
});

test('plies side by side are told apart from their neighbours', () => {
  const plies = Array.from({ length: 4 }, (_, i) => square(10 * i, 0, 10));
  const strokes = strokesOf(hatched(plies.map((loop) => ({ stuff: 'plywood', loops: [loop] }))));
  const looks = plies.map(([corner]) => {
    const left = corner?.x ?? 0;
    const own = strokes.filter(
      ([a, b]) => Math.min(a?.x ?? 0, b?.x ?? 0) >= left && Math.max(a?.x ?? 0, b?.x ?? 0) <= left + 10,
    );
    const [longest] = [...own].sort((a, b) => lengthOf(b) - lengthOf(a));
    const rises = Math.sign(
      ((longest?.[1]?.y ?? 0) - (longest?.[0]?.y ?? 0)) * ((longest?.[1]?.x ?? 0) - (longest?.[0]?.x ?? 0)),
    );
    return `${rises} ${own.length}`;
  });
  for (const [i, look] of looks.entries()) if (i > 0) expect(look).not.toBe(looks[i - 1]);
});

test('no two kinds of stuff look alike', () => {
  const stuffs: readonly Stuff[] = [
    'plywood',
    'dowel',
    'printed',
    'metal',
    'glass',
    'felt',
    'card',
    'cord',
    'lens',
    'holder',
  ];
  const looks = stuffs.map((stuff) => JSON.stringify(hatched([{ stuff, loops: [square(0, 0, 20)] }])));
  expect(new Set(looks).size).toBe(stuffs.length);
});

test.each(keptDesigns)('what %s is made of is known', (name) => {
  const by = new Map(planCamera(keptDesign(name)).parts.map((part) => [part.id, stuffOf(part)]));
  const expected: Readonly<Record<string, Stuff>> = {
    F1: 'plywood',
    'ground-glass': 'glass',
    'glass-clip': 'metal',
    'glass-pad': 'card',
    'fence-open': 'card',
    'felt-long': 'felt',
    'felt-side': 'felt',
    'lock-bolt': 'metal',
    'lock-knob': 'metal',
    'seat-pin-5': 'dowel',
    'SP2-pin-6': 'dowel',
    'SP2-shim-500': 'card',
    'retainer-pin': 'dowel',
    'retainer-card': 'card',
    'retainer-nut': 'metal',
    'button-nut': 'metal',
    'board-dowel-5': 'dowel',
    'keeper-screw': 'metal',
    'lens-barrel': 'lens',
    'lens-clamp': 'printed',
    'holder-1': 'holder',
    cord: 'cord',
    'tripod-barrel': 'metal',
    'tripod-flange': 'metal',
  };
  for (const [id, stuff] of Object.entries(expected)) if (by.has(id)) expect(by.get(id), id).toBe(stuff);
});
