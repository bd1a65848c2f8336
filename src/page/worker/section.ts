import { loadSection } from '../../index.js';
import { planKept } from './kept.js';
import type { Answer, Given } from './questions.js';

export async function section(given: Given<'section'>): Promise<Answer<'section'>> {
  const planned = await planKept(given);
  if (planned === null || !planned.drawable) return null;
  const shownSection = await loadSection();
  return shownSection(planned);
}
