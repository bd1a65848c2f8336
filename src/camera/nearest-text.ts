import { magnification } from '../units/print.js';

/** A magnification in two decimals that is no nearer than the one meant (or, `up`, no farther). */
export function nearestText(m: number, way: 'down' | 'up' = 'down'): string {
  const round = (figure: number, larger: boolean) => (larger ? Math.ceil(figure - 1e-9) : Math.floor(figure + 1e-9));
  if (m > 1) return magnification(round(100 * m, way === 'up') / 100);
  return magnification(100 / round(100 / m, way === 'down'));
}
