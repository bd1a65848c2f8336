/** What is still clear in one bin, as all its largest rectangles (they overlap), and what has been put in. */
export interface FreeRooms {
  /** Makes the bin empty again. Rooms too narrow or too low for anything to come may be forgotten. */
  empty(narrowest: number, lowest: number): void;
  /**
   * Looks for the place that suits a rectangle best by one of the `RULES`, and takes it.
   * @returns whether there was one: then `x`, `y` and `turned` tell where
   */
  put(width: number, height: number, turns: boolean, rule: number): boolean;
  x: number;
  y: number;
  turned: boolean;
}

/** How many ways of choosing a place there are. */
export const RULES = 5;

/** More rooms than this are not remembered: some filling may be missed then, nothing goes wrong. */
const MOST_ROOMS = 400;

/**
 * Rooms in typed arrays: this is the inner loop of the search, run through some hundred thousand times a second.
 *
 * Largest free rectangles: the maximal spaces of Lai & Chan (1997). The rules are those in common use: shortest
 * remainder, least area left, lowest, leftmost, longest contact (touching perimeter, Lodi, Martello & Vigo 1999).
 */
export function freeRooms(binWidth: number, binHeight: number, mostPieces: number): FreeRooms {
  const left = new Float64Array(MOST_ROOMS);
  const bottom = new Float64Array(MOST_ROOMS);
  const right = new Float64Array(MOST_ROOMS);
  const top = new Float64Array(MOST_ROOMS);
  let rooms = 0;
  const freshLeft = new Float64Array(MOST_ROOMS);
  const freshBottom = new Float64Array(MOST_ROOMS);
  const freshRight = new Float64Array(MOST_ROOMS);
  const freshTop = new Float64Array(MOST_ROOMS);
  let fresh = 0;
  const pieces = new Float64Array(4 * mostPieces);
  let placed = 0;
  let narrow = 0;
  let low = 0;

  const self: FreeRooms = { x: 0, y: 0, turned: false, empty, put };
  return self;

  function empty(narrowest: number, lowest: number): void {
    narrow = narrowest;
    low = lowest;
    placed = 0;
    rooms = 1;
    left[0] = 0;
    bottom[0] = 0;
    right[0] = binWidth;
    top[0] = binHeight;
  }

  function put(width: number, height: number, turns: boolean, rule: number): boolean {
    let least = Infinity;
    let second = Infinity;
    let room = -1;
    let turned = false;
    for (let way = 0; way < (turns && width !== height ? 2 : 1); way++) {
      const w = way === 0 ? width : height;
      const h = way === 0 ? height : width;
      for (let i = 0; i < rooms; i++) {
        const spareX = (right[i] as number) - (left[i] as number) - w;
        const spareY = (top[i] as number) - (bottom[i] as number) - h;
        if (spareX < 0 || spareY < 0) continue;
        let score: number;
        let tie: number;
        if (rule === 0) {
          score = Math.min(spareX, spareY);
          tie = Math.max(spareX, spareY);
        } else if (rule === 1) {
          score = (spareX + w) * (spareY + h);
          tie = Math.min(spareX, spareY);
        } else if (rule === 2) {
          score = (bottom[i] as number) + h;
          tie = left[i] as number;
        } else if (rule === 3) {
          score = (left[i] as number) + w;
          tie = bottom[i] as number;
        } else {
          score = -contact(left[i] as number, bottom[i] as number, w, h);
          tie = Math.min(spareX, spareY);
        }
        if (score < least || (score === least && tie < second)) {
          least = score;
          second = tie;
          room = i;
          turned = way === 1;
        }
      }
    }
    if (room < 0) return false;
    self.x = left[room] as number;
    self.y = bottom[room] as number;
    self.turned = turned;
    take(self.x, self.y, self.x + (turned ? height : width), self.y + (turned ? width : height));
    return true;
  }

  /** Length along which a rectangle would touch the walls and what lies there already. */
  function contact(x: number, y: number, w: number, h: number): number {
    let touching = 0;
    const r = x + w;
    const t = y + h;
    if (x === 0) touching += h;
    if (y === 0) touching += w;
    if (r === binWidth) touching += h;
    if (t === binHeight) touching += w;
    for (let k = 0; k < placed; k += 4) {
      const pl = pieces[k] as number;
      const pb = pieces[k + 1] as number;
      const pr = pieces[k + 2] as number;
      const pt = pieces[k + 3] as number;
      if (pr === x || pl === r) {
        const shared = Math.min(t, pt) - Math.max(y, pb);
        if (shared > 0) touching += shared;
      } else if (pt === y || pb === t) {
        const shared = Math.min(r, pr) - Math.max(x, pl);
        if (shared > 0) touching += shared;
      }
    }
    return touching / (w + h);
  }

  /** Each room that the taken rectangle cuts leaves up to four; one that lies within another goes. */
  function take(l: number, b: number, r: number, t: number): void {
    pieces[placed] = l;
    pieces[placed + 1] = b;
    pieces[placed + 2] = r;
    pieces[placed + 3] = t;
    placed += 4;
    fresh = 0;
    let kept = 0;
    for (let i = 0; i < rooms; i++) {
      const rl = left[i] as number;
      const rb = bottom[i] as number;
      const rr = right[i] as number;
      const rt = top[i] as number;
      if (l >= rr || r <= rl || b >= rt || t <= rb) {
        left[kept] = rl;
        bottom[kept] = rb;
        right[kept] = rr;
        top[kept] = rt;
        kept++;
        continue;
      }
      if (l - rl >= narrow) add(rl, rb, l, rt);
      if (rr - r >= narrow) add(r, rb, rr, rt);
      if (b - rb >= low) add(rl, rb, rr, b);
      if (rt - t >= low) add(rl, t, rr, rt);
    }
    rooms = kept;
    for (let i = 0; i < fresh && rooms < MOST_ROOMS; i++) {
      const fl = freshLeft[i] as number;
      const fb = freshBottom[i] as number;
      const fr = freshRight[i] as number;
      const ft = freshTop[i] as number;
      let held = false;
      for (let k = 0; k < kept && !held; k++) {
        held =
          fl >= (left[k] as number) &&
          fb >= (bottom[k] as number) &&
          fr <= (right[k] as number) &&
          ft <= (top[k] as number);
      }
      for (let k = 0; k < fresh && !held; k++) {
        if (k === i) continue;
        held =
          fl >= (freshLeft[k] as number) &&
          fb >= (freshBottom[k] as number) &&
          fr <= (freshRight[k] as number) &&
          ft <= (freshTop[k] as number);
        // of two that are alike the first stays
        if (held && k > i) {
          held = fl !== freshLeft[k] || fb !== freshBottom[k] || fr !== freshRight[k] || ft !== freshTop[k];
        }
      }
      if (held) continue;
      left[rooms] = fl;
      bottom[rooms] = fb;
      right[rooms] = fr;
      top[rooms] = ft;
      rooms++;
    }
  }

  function add(l: number, b: number, r: number, t: number): void {
    if (fresh === MOST_ROOMS) return;
    freshLeft[fresh] = l;
    freshBottom[fresh] = b;
    freshRight[fresh] = r;
    freshTop[fresh] = t;
    fresh++;
  }
}
