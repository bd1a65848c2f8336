import { GRID, leastBins } from './bound.js';
import { freeRooms, RULES } from './free-rooms.js';
import { seeded } from './random.js';
import type { Search } from './search.js';
import type { Rectangle, RectanglePlace } from './shapes.js';

export interface BinPacking {
  readonly bins: readonly (readonly RectanglePlace[])[];
}

interface BinsGiven {
  readonly width: number;
  readonly height: number;
  readonly items: readonly Rectangle[];
  /** Whether quarter turns are allowed. */
  readonly turns: boolean;
}

/** Pieces tried in one step of the search: a few milliseconds. */
const STEP = 4000;

export function* searchBins(given: BinsGiven, seed: number): Search<BinPacking> {
  const { items, turns } = given;
  const random = seeded(seed);
  const below = (n: number) => Math.floor(random() * n);
  const W = Math.round(given.width * GRID);
  const H = Math.round(given.height * GRID);
  const kind: number[] = [];
  items.forEach(({ count }, item) => {
    for (let k = 0; k < count; k++) kind.push(item);
  });
  const n = kind.length;
  const bound = leastBins(given);
  if (bound === Infinity) throw new Error('a rectangle is larger than the bin');
  const w = Float64Array.from(kind, (item) => Math.round((items[item] as Rectangle).width * GRID));
  const h = Float64Array.from(kind, (item) => Math.round((items[item] as Rectangle).height * GRID));
  const area = w.map((x, i) => (x / W) * ((h[i] as number) / H));
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const turned = new Uint8Array(n);
  const candX = new Float64Array(n);
  const candY = new Float64Array(n);
  const candTurned = new Uint8Array(n);
  const rooms = freeRooms(W, H, n);
  let work = 0;

  const order = new Int32Array(n);
  const rest = new Int32Array(n);
  const taken = new Int32Array(n);
  let takenCount = 0;

  /** Fills one bin from order[0..count); what does not fit is left in order; returns how many are left. */
  function fill(count: number, rule: number, limit: number, cost: Float64Array): number {
    let narrowest = Infinity;
    let lowest = Infinity;
    for (let i = 0; i < count; i++) {
      const p = order[i] as number;
      if ((w[p] as number) < narrowest) narrowest = w[p] as number;
      if ((h[p] as number) < lowest) lowest = h[p] as number;
    }
    if (turns) narrowest = lowest = Math.min(narrowest, lowest);
    rooms.empty(narrowest, lowest);
    takenCount = 0;
    let left = 0;
    let lost = 0;
    work += count;
    for (let i = 0; i < count; i++) {
      const p = order[i] as number;
      if (rooms.put(w[p] as number, h[p] as number, turns, rule)) {
        candX[p] = rooms.x;
        candY[p] = rooms.y;
        candTurned[p] = rooms.turned ? 1 : 0;
        taken[takenCount++] = p;
      } else {
        rest[left++] = p;
        lost += cost[p] as number;
        if (lost > limit) return -1;
      }
    }
    for (let i = 0; i < left; i++) order[i] = rest[i] as number;
    return left;
  }

  const key = new Float64Array(n);
  function sort(count: number): void {
    for (let i = 1; i < count; i++) {
      const p = order[i] as number;
      const k = key[p] as number;
      let j = i - 1;
      while (j >= 0 && (key[order[j] as number] as number) < k) {
        order[j + 1] = order[j] as number;
        j--;
      }
      order[j + 1] = p;
    }
  }
  const bases = [
    (p: number) => area[p] as number,
    (p: number) => Math.max(w[p] as number, h[p] as number),
    (p: number) => (w[p] as number) / W + (h[p] as number) / H,
    (p: number) => h[p] as number,
    (p: number) => w[p] as number,
    (p: number) => Math.min(w[p] as number, h[p] as number),
  ];
  const none = new Float64Array(n);

  let best: number[][] = [];
  const bestX = new Float64Array(n);
  const bestY = new Float64Array(n);
  const bestTurned = new Uint8Array(n);
  const found = (): BinPacking => ({
    bins: best.map((pieces) =>
      pieces.map((p) => ({
        item: kind[p] as number,
        x: (bestX[p] as number) / GRID,
        y: (bestY[p] as number) / GRID,
        turned: bestTurned[p] === 1,
      })),
    ),
  });
  const keep = (bins: number[][]) => {
    best = bins.map((b) => [...b]);
    bestX.set(x);
    bestY.set(y);
    bestTurned.set(turned);
  };

  const least = { area: Infinity };
  for (let rule = 0; rule < RULES; rule++) {
    for (const base of bases) {
      for (let i = 0; i < n; i++) {
        order[i] = i;
        key[i] = base(i);
      }
      sort(n);
      const bins: number[][] = [];
      let left = n;
      while (left > 0) {
        left = fill(left, rule, Infinity, none);
        const bin: number[] = [];
        for (let i = 0; i < takenCount; i++) {
          const p = taken[i] as number;
          bin.push(p);
          x[p] = candX[p] as number;
          y[p] = candY[p] as number;
          turned[p] = candTurned[p] as number;
        }
        bins.push(bin);
      }
      const loose = Math.min(...bins.map((b) => b.reduce((s, p) => s + (area[p] as number), 0))) + bins.length;
      if (loose < least.area) {
        least.area = loose;
        keep(bins);
      }
      if (best.length <= bound) return found();
      yield found();
    }
  }

  while (best.length > bound) {
    // one bin fewer: the emptiest lies loose
    const fullness = best.map((b) => b.reduce((s, p) => s + (area[p] as number), 0));
    const emptiest = fullness.indexOf(Math.min(...fullness));
    const bins = best.map((b) => [...b]);
    let pool = (bins.splice(emptiest, 1)[0] as number[]).slice();
    x.set(bestX);
    y.set(bestY);
    turned.set(bestTurned);
    const weight = new Float64Array(n).fill(1);
    const cost = area.slice();
    const poolCost = () => pool.reduce((s, p) => s + (cost[p] as number), 0);
    let current = poolCost();
    let idle = 0;
    while (pool.length > 0) {
      if (work > STEP) {
        work = 0;
        yield found();
      }
      const draw = random();
      const many = Math.min(bins.length, draw < 0.3 ? 1 : draw < 0.8 ? 2 : 3);
      const chosen: number[] = [];
      while (chosen.length < many) {
        const b = below(bins.length);
        if (!chosen.includes(b)) chosen.push(b);
      }
      let count = 0;
      for (const p of pool) order[count++] = p;
      for (const b of chosen) for (const p of bins[b] as number[]) order[count++] = p;
      const base = bases[below(bases.length)] as (p: number) => number;
      const spread = random();
      for (let i = 0; i < count; i++) {
        const p = order[i] as number;
        key[p] = base(p) * (1 - spread * random());
      }
      sort(count);
      const rule = below(RULES);
      const news: number[][] = [];
      let left = count;
      for (let k = 0; k < many && left >= 0; k++) {
        left = fill(left, rule, k === many - 1 ? current : Infinity, cost);
        news.push(Array.from(taken.subarray(0, takenCount)));
      }
      if (left < 0) {
        idle++;
      } else {
        chosen.forEach((b, k) => {
          const bin = news[k] as number[];
          bins[b] = bin;
          for (const p of bin) {
            x[p] = candX[p] as number;
            y[p] = candY[p] as number;
            turned[p] = candTurned[p] as number;
          }
        });
        pool = Array.from(order.subarray(0, left));
        const now = poolCost();
        if (now < current - 1e-9) idle = 0;
        else idle++;
        current = now;
      }
      if (idle > 30) {
        idle = 0;
        for (const p of pool) {
          weight[p] = (weight[p] as number) + 0.3;
          cost[p] = (weight[p] as number) * (area[p] as number);
        }
        current = poolCost();
      }
    }
    keep(bins);
    if (best.length > bound) yield found();
  }
  return found();
}
