import { loadLight } from '../../index.js';
import { readKept } from './kept.js';
import { thread } from './thread.js';
import type { FromLight, ToLight } from './workbench-tasks.js';

/** Looks for light in one camera after another. */
const page = thread<ToLight, FromLight>();
// begun before anything is asked, so that the first answer need not wait for it
const loaded = loadLight();

/** The bar moves by so much at least. */
const STEP = 0.01;

page.onmessage = async ({ data }) => {
  try {
    const proveLight = await loaded;
    const read = readKept(data);
    let told = 0;
    const onProgress = (done: number): void => {
      if (done < told + STEP) return;
      told = done;
      page.postMessage({ kind: 'progress', done });
    };
    const light = 'problems' in read ? null : proveLight(read.design, { onProgress });
    page.postMessage({ kind: 'light', light });
  } catch (error) {
    page.postMessage({ kind: 'mistake', words: String(error) });
  }
};
