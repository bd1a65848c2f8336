import type { NestGiven } from '../../src/packing/nest.js';
import type { Layout, Place, Ring } from '../../src/packing/shapes.js';

/** Lengths are sums of lengths: they stray by less, mm. */
const ROUNDING = 1e-6;

type Point = Ring[number];

interface Lying {
  readonly place: Place;
  readonly outline: Ring;
  readonly windows: readonly Ring[];
}

/**
 * What is wrong with a layout, measured on the true outlines by brute force: every edge against every other, and who
 * lies in whom. It shares nothing with the packer.
 */
export function faultsOf(layout: Layout, { blanks, beds, spacing }: NestGiven): readonly string[] {
  const faults: string[] = [];
  const seen = blanks.map(() => 0);
  const used = beds.map(() => 0);
  layout.sheets.forEach((sheet, s) => {
    used[sheet.bed] = (used[sheet.bed] ?? 0) + 1;
    if (sheet.places.length === 0) faults.push(`sheet ${s} is empty`);
    const bed = beds[sheet.bed] as NestGiven['beds'][number];
    const lying = sheet.places.map((place) => {
      seen[place.blank] = (seen[place.blank] ?? 0) + 1;
      return layDown(place, blanks[place.blank] as NestGiven['blanks'][number]);
    });
    lying.forEach((a, i) => {
      const where = `sheet ${s}: blank ${a.place.blank}`;
      if (!blanks[a.place.blank]?.turns.includes(a.place.turn)) faults.push(`${where} is turned by ${a.place.turn}`);
      if (crossDeep(a.outline, bed.outline) || a.outline.some((p) => !within(bed.outline, p)))
        faults.push(`${where} leaves the bed`);
      for (const hole of bed.holes) {
        const edges = [a.outline, ...a.windows];
        const over = (p: Point) => deepIn(a.outline, p) && !a.windows.some((w) => within(w, p));
        if (edges.some((ring) => crossDeep(ring, hole)) || hole.some(over) || a.outline.some((p) => deepIn(hole, p)))
          faults.push(`${where} lies over a hole of the bed`);
      }
      lying.forEach((b, k) => {
        const stated = a.place.within?.place === k;
        const held = deepIn(b.outline, a.outline[0] as Point);
        if (i !== k && stated !== held)
          faults.push(`${where} lies in blank ${b.place.blank}: ${held}, stated ${stated}`);
        if (stated && b.place.within !== null) faults.push(`${where} lies in what is nested itself`);
        if (stated && !deepIn(b.windows[a.place.within?.window ?? -1] ?? [], a.outline[0] as Point))
          faults.push(`${where} is not in the window that it names`);
        if (k <= i) return;
        const gap = distance(a, b);
        if (gap < spacing - ROUNDING) faults.push(`${where} and blank ${b.place.blank} are ${gap} apart`);
      });
    });
  });
  blanks.forEach(({ count }, n) => {
    if (seen[n] !== count) faults.push(`blank ${n}: ${seen[n]} of ${count}`);
  });
  beds.forEach(({ count }, n) => {
    if ((used[n] as number) > count) faults.push(`bed ${n}: ${used[n]} of ${count}`);
  });
  return faults;
}

function layDown(place: Place, { outline, windows }: NestGiven['blanks'][number]): Lying {
  const turned = [outline, ...windows].map((ring) =>
    ring.map(({ x, y }) => {
      if (place.turn === 1) return { x: -y, y: x };
      if (place.turn === 2) return { x: -x, y: -y };
      return place.turn === 3 ? { x: y, y: -x } : { x, y };
    }),
  );
  const left = Math.min(...(turned[0] as Ring).map(({ x }) => x));
  const bottom = Math.min(...(turned[0] as Ring).map(({ y }) => y));
  const [at, ...holes] = turned.map((ring) =>
    ring.map(({ x, y }) => ({ x: x - left + place.x, y: y - bottom + place.y })),
  );
  return { place, outline: at as Ring, windows: holes };
}

/** Between the materials of two pieces; 0 where they overlap. */
function distance(a: Lying, b: Lying): number {
  const inMaterial = (p: Point, { outline, windows }: Lying) =>
    contains(outline, p) && !windows.some((window) => contains(window, p));
  if (inMaterial(a.outline[0] as Point, b) || inMaterial(b.outline[0] as Point, a)) return 0;
  let least = Infinity;
  for (const [p, q] of edges([a.outline, ...a.windows])) {
    for (const [r, s] of edges([b.outline, ...b.windows])) {
      if (turnOf(p, q, r) * turnOf(p, q, s) < 0 && turnOf(r, s, p) * turnOf(r, s, q) < 0) return 0;
      least = Math.min(least, toEdge(p, r, s), toEdge(q, r, s), toEdge(r, p, q), toEdge(s, p, q));
    }
  }
  return least;
}

const edges = (rings: readonly Ring[]): readonly (readonly [Point, Point])[] =>
  rings.flatMap((ring) => ring.map((p, i) => [p, ring[(i + 1) % ring.length] as Point] as const));

/** Twice the area of a triangle, positive where it runs anticlockwise. */
const turnOf = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function toEdge(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const along = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p.x - a.x - along * dx, p.y - a.y - along * dy);
}

function contains(ring: Ring, { x, y }: Point): boolean {
  return (
    edges([ring]).filter(([a, b]) => a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)).length %
      2 ===
    1
  );
}

const toRing = (ring: Ring, p: Point): number => Math.min(...edges([ring]).map(([a, b]) => toEdge(p, a, b)));

/** Inside, or on the edge but for rounding. */
const within = (ring: Ring, p: Point): boolean => contains(ring, p) || toRing(ring, p) < ROUNDING;

/** Inside by more than rounding. */
const deepIn = (ring: Ring, p: Point): boolean => contains(ring, p) && toRing(ring, p) > ROUNDING;

/** Whether two rings cross by more than rounding. */
function crossDeep(a: Ring, b: Ring): boolean {
  return edges([a]).some(([p, q]) =>
    edges([b]).some(([r, s]) => {
      const depth = (o: Point, from: Point, to: Point) =>
        turnOf(from, to, o) / Math.hypot(to.x - from.x, to.y - from.y);
      const parted = (m: number, n: number) => m * n < 0 && Math.min(Math.abs(m), Math.abs(n)) > ROUNDING;
      return parted(depth(p, r, s), depth(q, r, s)) && parted(depth(r, p, q), depth(s, p, q));
    }),
  );
}
