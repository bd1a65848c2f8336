import { magnification } from './print.js';

/** From 1:20 on nobody reads, or types, hundredths. */
const WHOLE_FROM = 20;

/** A magnification in two decimals at most that is no nearer than the one meant (or, `up`, no farther). */
export function nearestText(m: number, way: 'down' | 'up' = 'down'): string {
  const figure = m > 1 ? m : 1 / m;
  const steps = figure >= WHOLE_FROM ? 1 : 100;
  const larger = m > 1 ? way === 'up' : way === 'down';
  const rounded = (larger ? Math.ceil(figure * steps - 1e-9) : Math.floor(figure * steps + 1e-9)) / steps;
  return magnification(m > 1 ? rounded : 1 / rounded);
}
