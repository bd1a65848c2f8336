import type { Faced } from './faced.js';

/** What lies no deeper than this behind a face lies in it, mm: faces that touch do not hide each other's edges. */
const DEPTH = 0.02;
/** So far beyond its edge a facet still hides, mm: no light falls between two facets of one face. The kernel's floats end there. */
const SEAM = 1e-4;
/** Between two hidden stretches a shorter seen one is a crumb of rounding, mm. */
const CRUMB = 0.02;

/** A stretch of a segment, as parts of its length from 0 to 1. */
export type Stretch = readonly [number, number];

/** All facets that hide, sorted into the cells of a grid on the paper. */
export interface Screen {
  /**
   * The stretches of a segment that lie behind a facet, in order and apart.
   *
   * @param ends x, y, depth of both ends
   * @param own number of the solid that it belongs to, and its two facets beside the segment: they do not hide it
   */
  readonly hiding: (
    ends: Segment,
    own: { readonly solid: number; readonly facets: readonly [number, number] },
  ) => readonly Stretch[];
}

/** x, y and depth of one end and of the other. */
export type Segment = readonly [number, number, number, number, number, number];

/** How many cells the paper has across its longer side. */
const CELLS = 96;

export function screenOf(solids: readonly Faced[]): Screen {
  const starts = [0];
  for (const { fronts } of solids) starts.push((starts.at(-1) as number) + fronts.length / 3);
  const count = starts.at(-1) as number;
  // ax, ay, bx, by, cx, cy, then depth = d0 + dx·x + dy·y, then the greatest depth
  const facets = new Float64Array(count * STRIDE);
  let left = Infinity;
  let bottom = Infinity;
  let right = -Infinity;
  let top = -Infinity;
  let n = 0;
  for (const { corners, fronts } of solids)
    for (let f = 0; f < fronts.length; f += 3, n++) {
      const o = n * STRIDE;
      let highest = -Infinity;
      for (let k = 0; k < 3; k++) {
        const c = 3 * (fronts[f + k] as number);
        const x = corners[c] as number;
        const y = corners[c + 1] as number;
        facets[o + 2 * k] = x;
        facets[o + 2 * k + 1] = y;
        highest = Math.max(highest, corners[c + 2] as number);
        left = Math.min(left, x);
        right = Math.max(right, x);
        bottom = Math.min(bottom, y);
        top = Math.max(top, y);
      }
      const [a, b, c] = [3 * (fronts[f] as number), 3 * (fronts[f + 1] as number), 3 * (fronts[f + 2] as number)];
      const [ux, uy, uz] = between(corners, a, b);
      const [vx, vy, vz] = between(corners, a, c);
      const turn = ux * vy - uy * vx;
      const dx = (uz * vy - vz * uy) / turn;
      const dy = (ux * vz - vx * uz) / turn;
      facets[o + 6] = (corners[a + 2] as number) - dx * (corners[a] as number) - dy * (corners[a + 1] as number);
      facets[o + 7] = dx;
      facets[o + 8] = dy;
      facets[o + 9] = highest;
    }
  const size = Math.max(right - left, top - bottom, 1) / CELLS;
  const across = Math.max(1, Math.ceil((right - left) / size));
  const down = Math.max(1, Math.ceil((top - bottom) / size));
  const column = (x: number) => Math.min(across - 1, Math.max(0, Math.floor((x - left) / size)));
  const row = (y: number) => Math.min(down - 1, Math.max(0, Math.floor((y - bottom) / size)));

  // the cells that each facet touches, row by row: facet, first cell, last cell
  let spans = new Int32Array(12 * count + 3);
  let spanned = 0;
  const first = new Int32Array(across * down + 1);
  for (let i = 0; i < count; i++) {
    const o = i * STRIDE;
    const ax = facets[o] as number;
    const ay = facets[o + 1] as number;
    const bx = facets[o + 2] as number;
    const by = facets[o + 3] as number;
    const cx = facets[o + 4] as number;
    const cy = facets[o + 5] as number;
    const lowest = row(Math.min(ay, by, cy) - SEAM);
    const highest = row(Math.max(ay, by, cy) + SEAM);
    const from = column(Math.min(ax, bx, cx) - SEAM);
    const to = column(Math.max(ax, bx, cx) + SEAM);
    for (let r = lowest; r <= highest; r++) {
      let start = from;
      let end = to;
      if (lowest < highest && from < to) {
        const low = bottom + r * size - SEAM;
        const high = bottom + (r + 1) * size + SEAM;
        let least = Infinity;
        let most = -Infinity;
        for (let e = 0; e < 6; e += 2) {
          const next = e === 4 ? 0 : e + 2;
          const upwards = (facets[o + e + 1] as number) <= (facets[o + next + 1] as number);
          const x0 = facets[o + (upwards ? e : next)] as number;
          const y0 = facets[o + (upwards ? e : next) + 1] as number;
          const x1 = facets[o + (upwards ? next : e)] as number;
          const y1 = facets[o + (upwards ? next : e) + 1] as number;
          if (y1 < low || y0 > high) continue;
          const slope = y1 - y0 > SEAM ? (x1 - x0) / (y1 - y0) : 0;
          const p = y0 < low && slope !== 0 ? x0 + slope * (low - y0) : x0;
          const q = y1 > high && slope !== 0 ? x0 + slope * (high - y0) : x1;
          least = Math.min(least, p, q);
          most = Math.max(most, p, q);
        }
        if (least > most) continue;
        start = column(least - SEAM);
        end = column(most + SEAM);
      }
      if (spanned + 3 > spans.length) {
        const larger = new Int32Array(2 * spans.length);
        larger.set(spans);
        spans = larger;
      }
      spans[spanned++] = i;
      spans[spanned++] = r * across + start;
      spans[spanned++] = r * across + end;
      for (let cell = r * across + start; cell <= r * across + end; cell++)
        first[cell + 1] = (first[cell + 1] as number) + 1;
    }
  }
  for (let cell = 0; cell < across * down; cell++)
    first[cell + 1] = (first[cell + 1] as number) + (first[cell] as number);
  const list = new Int32Array(first[across * down] as number);
  const filled = first.slice(0, across * down);
  for (let k = 0; k < spanned; k += 3)
    for (let cell = spans[k + 1] as number, last = spans[k + 2] as number; cell <= last; cell++) {
      list[filled[cell] as number] = spans[k] as number;
      filled[cell] = (filled[cell] as number) + 1;
    }

  const seen = new Int32Array(count).fill(-1);
  let asked = 0;
  const hiding: Screen['hiding'] = ([px, py, pz, qx, qy, qz], { solid, facets: beside }) => {
    asked++;
    const found: [number, number][] = [];
    const start = starts[solid] as number;
    const besideA = beside[0] < 0 ? -1 : start + beside[0];
    const besideB = beside[1] < 0 ? -1 : start + beside[1];
    const nearest = Math.min(pz, qz) + DEPTH;
    const loX = Math.min(px, qx);
    const hiX = Math.max(px, qx);
    const loY = Math.min(py, qy);
    const hiY = Math.max(py, qy);
    const length = Math.sqrt((qx - px) * (qx - px) + (qy - py) * (qy - py));
    for (let r = row(loY), last = row(hiY); r <= last; r++) {
      let x0 = loX;
      let x1 = hiX;
      if (hiY - loY > SEAM) {
        const slope = (qx - px) / (qy - py);
        const a = px + slope * (Math.max(loY, bottom + r * size - SEAM) - py);
        const b = px + slope * (Math.min(hiY, bottom + (r + 1) * size + SEAM) - py);
        x0 = Math.max(loX, Math.min(a, b));
        x1 = Math.min(hiX, Math.max(a, b));
      }
      for (let c = column(x0 - SEAM), end = column(x1 + SEAM); c <= end; c++) {
        const cell = r * across + c;
        for (let k = first[cell] as number, stop = first[cell + 1] as number; k < stop; k++) {
          const i = list[k] as number;
          if (seen[i] === asked) continue;
          seen[i] = asked;
          const o = i * STRIDE;
          if ((facets[o + 9] as number) <= nearest || i === besideA || i === besideB) continue;
          const d0 = facets[o + 6] as number;
          const dx = facets[o + 7] as number;
          const dy = facets[o + 8] as number;
          // how far the facet's plane stands before the segment, at either end
          const overP = d0 + dx * px + dy * py - pz - DEPTH;
          const overQ = d0 + dx * qx + dy * qy - qz - DEPTH;
          if (overP <= 0 && overQ <= 0) continue;
          let t0 = 0;
          let t1 = 1;
          if (overP <= 0) t0 = overP / (overP - overQ);
          else if (overQ <= 0) t1 = overP / (overP - overQ);
          for (let e = 0; e < 3 && t0 <= t1; e++) {
            const ax = facets[o + 2 * e] as number;
            const ay = facets[o + 2 * e + 1] as number;
            const next = e === 2 ? 0 : 2 * e + 2;
            const ex = (facets[o + next] as number) - ax;
            const ey = (facets[o + next + 1] as number) - ay;
            const seam = SEAM * Math.sqrt(ex * ex + ey * ey);
            const inP = ex * (py - ay) - ey * (px - ax) + seam;
            const inQ = ex * (qy - ay) - ey * (qx - ax) + seam;
            if (inP < 0 && inQ < 0) t0 = 2;
            else if (inP < 0) t0 = Math.max(t0, inP / (inP - inQ));
            else if (inQ < 0) t1 = Math.min(t1, inP / (inP - inQ));
          }
          if (t0 > t1) continue;
          if (t0 <= 0 && t1 >= 1) return WHOLE;
          found.push([t0, t1]);
        }
      }
    }
    return together(found, CRUMB / Math.max(length, CRUMB));
  };
  return { hiding };
}

const STRIDE = 10;
const WHOLE: readonly Stretch[] = [[0, 1]];
const NOTHING: readonly Stretch[] = [];

const between = (corners: Float64Array, from: number, to: number): readonly [number, number, number] => [
  (corners[to] as number) - (corners[from] as number),
  (corners[to + 1] as number) - (corners[from + 1] as number),
  (corners[to + 2] as number) - (corners[from + 2] as number),
];

/** Stretches in order, those that overlap or nearly touch made one; nothing shorter than a crumb. */
export function together(stretches: readonly Stretch[], crumb: number): readonly Stretch[] {
  if (stretches.length === 0) return NOTHING;
  const sorted = [...stretches].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const out: [number, number][] = [];
  for (const [from, to] of sorted) {
    const last = out.at(-1);
    if (last !== undefined && from <= last[1] + crumb) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out.filter(([from, to]) => to - from > crumb);
}

/** What is left of a whole between stretches; nothing shorter than a crumb. */
export function without(stretches: readonly Stretch[], crumb: number): readonly Stretch[] {
  const out: [number, number][] = [];
  let from = 0;
  for (const [start, end] of stretches) {
    if (start - from > crumb) out.push([from, start]);
    from = Math.max(from, end);
  }
  if (1 - from > crumb || stretches.length === 0) out.push([from, 1]);
  return out;
}
