/** Round numbers of an axis, so many at most. */
export function roundTicks(from: number, to: number, most: number): readonly number[] {
  const span = to - from;
  if (span <= 0) return [from];
  const decade = 10 ** Math.floor(Math.log10(span / most));
  const step = [1, 2, 5, 10].map((each) => each * decade).find((each) => span / each <= most) ?? span;
  const first = Math.ceil(from / step - TINY);
  const last = Math.floor(to / step + TINY);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** Whole numbers alone, for what is counted. */
export const wholeTicks = (from: number, to: number, most: number): readonly number[] =>
  roundTicks(from, to, most).filter(Number.isInteger);

const TINY = 1e-9;
/** Steps of n in 1:n, the roundest first. */
const STEPS = [10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];

/**
 * Round magnifications, 1:n as the trade says them, and n:1 above life size: the roundest that keep apart by a share of
 * the axis.
 */
export function ratioTicks(from: number, to: number, most: number): readonly number[] {
  const apart = (to - from) / most;
  const ticks: number[] = [];
  for (const step of STEPS) {
    const found = [...ratiosBetween(from, to, step)].filter((m) =>
      ticks.every((other) => Math.abs(other - m) >= apart),
    );
    for (const m of found) if (ticks.every((other) => Math.abs(other - m) >= apart)) ticks.push(m);
    if (ticks.length >= most - 1) break;
  }
  return ticks.sort((a, b) => a - b);
}

function* ratiosBetween(from: number, to: number, step: number): Generator<number> {
  const low = Math.max(from, LEAST);
  for (let k = Math.ceil(1 / Math.min(1, to) / step - TINY); k * step <= 1 / low + TINY; k++)
    if (k * step >= 1 - TINY) yield 1 / (k * step);
  for (let k = Math.ceil(1 / step); k * step <= to + TINY; k++) if (k * step > 1 + TINY) yield k * step;
}

/** Farther away is infinity to the eye: 1:200. */
const LEAST = 1 / 200;
