import { workerData } from 'node:worker_threads';
import { loadLight } from '../index.js';
import type { Answer, Search } from './light-elsewhere.js';

const { design, port, done } = workerData as Search;

async function answerOf(): Promise<Answer> {
  try {
    const light = (await loadLight())(design);
    return light === null ? { error: new Error('there is no camera to look into') } : { light };
  } catch (error) {
    return { error };
  }
}

port.postMessage(await answerOf());
Atomics.store(done, 0, 1);
Atomics.notify(done, 0);
