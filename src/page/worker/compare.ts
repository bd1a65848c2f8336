import { loadCompare } from '../../index.js';
import type { Compared } from './camera-asked.js';
import { cameraOf } from './camera-text.js';
import { planKept } from './kept.js';
import type { Given } from './questions.js';

/** What becomes of an earlier camera when it is made as the design has it now; null where the text is no design. */
export async function compare({ before: earlier, after: given }: Given<'compare'>): Promise<Compared | null> {
  const [planned, before] = await Promise.all([planKept(given), cameraOf(earlier)]);
  if (planned === null) return null;
  if ('refused' in before) return before;
  const { compareCameras, compareWords, recordOfPlanned } = await loadCompare();
  const after = recordOfPlanned(planned);
  return { words: compareWords(compareCameras(before, after), { before, after }) };
}
