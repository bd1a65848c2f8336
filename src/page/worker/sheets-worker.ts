import { loadSheets } from '../../index.js';
import { planKept } from './kept.js';
import type { FromSheets, ToSheets } from './sheets-tasks.js';
import { thread } from './thread.js';

/** Looks for the layout of the sheets that is built: seconds at a stretch, so whoever wants another one ends this worker. */
const page = thread<ToSheets, FromSheets>();
// begun before anything is asked, so that the first answer need not wait for it
const loaded = loadSheets();

/** The bar moves by so much at least. */
const STEP = 0.02;

page.onmessage = async ({ data }) => {
  try {
    const [planned, { sheetsSought }] = await Promise.all([planKept(data), loaded]);
    let told = 0;
    const onProgress = (done: number): void => {
      if (done < told + STEP) return;
      told = done;
      page.postMessage({ kind: 'progress', done });
    };
    const sheets = planned?.drawable ? sheetsSought(planned, onProgress) : null;
    page.postMessage({ kind: 'sheets', sheets });
  } catch (error) {
    page.postMessage({ kind: 'mistake', words: error instanceof Error ? error.message : String(error) });
  }
};
