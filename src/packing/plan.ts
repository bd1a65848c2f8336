import type { Ground } from './ground.js';
import type { Piece } from './pieces.js';

/** Beds that are taken, by their index; the last is the one that is kept clear as far as may be. */
export type Plan = readonly number[];

/**
 * Beds taken one by one, those that cost least for their area first, until nothing is left over or no bed helps.
 *
 * @param leftOf what is left over where these beds are filled
 */
export function firstPlan(grounds: readonly Ground[], leftOf: (plan: Plan) => number): Plan {
  const byPrice = [...grounds.keys()].sort((a, b) => {
    const [one, other] = [grounds[a] as Ground, grounds[b] as Ground];
    return one.cost / one.area - other.cost / other.area || a - b;
  });
  let plan: Plan = [];
  let left = Infinity;
  for (;;) {
    const longer = byPrice
      .filter((n) => plan.filter((taken) => taken === n).length < (grounds[n] as Ground).count)
      .map((n) => inOrder([...plan, n], grounds));
    const helping = longer.find((next) => {
      const rest = leftOf(next);
      if (rest >= left) return false;
      left = rest;
      return true;
    });
    if (helping === undefined) break;
    plan = helping;
    if (left === 0) return plan;
  }
  // the last that was tried is not the last that helped
  leftOf(plan);
  return plan;
}

/** A plan and every sheet beside it of which there are only so many: for what else would find no place. */
export function withAll(plan: Plan, grounds: readonly Ground[], pieces: number): Plan {
  const few = [...grounds.keys()].filter((n) => (grounds[n] as Ground).count < Infinity);
  const all = few.flatMap((n) => Array.from({ length: Math.min(pieces, (grounds[n] as Ground).count) }, () => n));
  return inOrder([...plan.filter((n) => !few.includes(n)), ...all], grounds);
}

/**
 * No offcut of such sheets is larger: the smallest piece at least, and what all others cannot hold, lies on the sheet
 * from which it comes.
 */
export function mostOffcut(
  plan: Plan,
  grounds: readonly Ground[],
  { pieces, need, spacing }: { pieces: readonly Piece[]; need: number; spacing: number },
): number {
  const total = plan.reduce((sum, n) => sum + (grounds[n] as Ground).area, 0);
  // on a single sheet lie all, so also the one that is widest
  const all = (sides: readonly number[]) => (plan.length === 1 ? Math.max(...sides) : Math.min(...sides));
  const wide = all(pieces.map(({ stances }) => Math.min(...stances.map(({ width }) => width))));
  const high = all(pieces.map(({ stances }) => Math.min(...stances.map(({ height }) => height))));
  return Math.max(
    ...plan.map((n) => {
      const { box, area } = grounds[n] as Ground;
      const [width, height] = [box.right - box.left, box.top - box.bottom];
      const here = Math.max(0, need - (total - area));
      const clearX = width - Math.max(wide, here / height) - spacing;
      const clearY = height - Math.max(high, here / width) - spacing;
      return Math.max(clearX * height, clearY * width, 0);
    }),
  );
}

export const costOf = (plan: Plan, grounds: readonly Ground[]): number =>
  plan.reduce((sum, n) => sum + (grounds[n] as Ground).cost, 0);

/** The largest bed last: there the offcut will be. */
export const inOrder = (plan: Plan, grounds: readonly Ground[]): Plan =>
  [...plan].sort((a, b) => (grounds[a] as Ground).area - (grounds[b] as Ground).area || a - b);

/** Costs closer together than this are the same. */
const SAME_COST = 1e-9;
/** Plans that are looked into to find cheaper ones. */
const MOST_PLANS = 2000;
/** Cheaper plans that are given a try. */
const MOST_CHEAPER = 8;

/**
 * Plans that cost less than so much, of beds that are not too small in all; those to which nothing can be added, the
 * largest first.
 *
 * @param need area that the pieces take at the least, mm²
 */
export function cheaperPlans(grounds: readonly Ground[], cost: number, need: number): readonly Plan[] {
  const found: { plan: Plan; area: number }[] = [];
  let looked = 0;
  // many more of one bed than its area asks for are never of use
  const mostOf = ({ area }: Ground) => 3 * Math.ceil(need / area);
  const add = (plan: Plan, n: number, spent: number, area: number): void => {
    if (looked++ > MOST_PLANS) return;
    if (n === grounds.length) {
      const taken = (k: number) => plan.filter((m) => m === k).length;
      const whole = grounds.every(
        (g, k) => taken(k) >= Math.min(g.count, mostOf(g)) || spent + g.cost >= cost - SAME_COST,
      );
      if (whole && area >= need) found.push({ plan: inOrder(plan, grounds), area });
      return;
    }
    const ground = grounds[n] as Ground;
    const paid = ground.cost > 0 ? Math.floor((cost - SAME_COST - spent) / ground.cost) : Infinity;
    for (let k = Math.min(ground.count, paid, mostOf(ground)); k >= 0; k--) {
      add([...plan, ...Array.from({ length: k }, () => n)], n + 1, spent + k * ground.cost, area + k * ground.area);
    }
  };
  add([], 0, 0, 0);
  return found
    .sort((a, b) => b.area - a.area)
    .slice(0, MOST_CHEAPER)
    .map(({ plan }) => plan);
}
