import { type Labels, loadSheets } from '../../index.js';
import { planKept } from './kept.js';
import type { Answer, Given } from './questions.js';

/** What came with the sheets of the last camera. */
const kept: { labels: Labels } = { labels: new Map() };

/** The first layout that is found; null where there is no camera to cut. */
export async function sheets(given: Given<'sheets'>): Promise<Answer<'sheets'>> {
  const [planned, { sheetsAtOnce }] = await Promise.all([planKept(given), loadSheets()]);
  if (!planned?.drawable) return null;
  const { sheets: shown, labels } = sheetsAtOnce(planned, kept.labels);
  kept.labels = labels;
  return shown;
}
