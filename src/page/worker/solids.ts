import { loadSolids, type MadeShapes } from '../../index.js';
import { kernelKept, planKept } from './kept.js';
import type { Answer, Given } from './questions.js';

/** What was made for the last camera: most parts of the next one are the same. */
const kept: { shapes: MadeShapes } = { shapes: new Map() };

export async function solids(given: Given<'solids'>): Promise<Answer<'solids'>> {
  const planned = await planKept(given);
  if (planned === null || !planned.drawable) return null;
  const [shownSolids, kernel] = await Promise.all([loadSolids(), kernelKept()]);
  const { solids: shown, made } = shownSolids(planned, kernel, kept.shapes);
  kept.shapes = made;
  return shown;
}
