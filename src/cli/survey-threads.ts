import { Worker } from 'node:worker_threads';
import type { SurveyGiven, SurveyPair } from '../index.js';

/** Pairs from one number up to another. */
export interface Batch {
  readonly from: number;
  readonly to: number;
}

export interface Surveyed {
  readonly from: number;
  readonly pairs: readonly SurveyPair[];
}

/** About a twentieth of a second of work: the threads end together, and what goes to and fro costs nothing beside it. */
const BATCH = 24;

interface Threads {
  /** Pairs in all. */
  readonly count: number;
  readonly threads: number;
  /** From 0 to 1. */
  readonly onProgress: (done: number) => void;
}

/**
 * Surveys on several threads at once: each takes the next batch when it has done its own. The pairs come back in their
 * order, whatever thread was faster. A mistake of ours over there is thrown here.
 */
export async function surveyOnThreads(
  given: SurveyGiven,
  { count, threads, onProgress }: Threads,
): Promise<readonly SurveyPair[]> {
  const batches = Array.from({ length: Math.ceil(count / BATCH) }, (_, i): Batch => {
    return { from: i * BATCH, to: Math.min(count, (i + 1) * BATCH) };
  });
  const surveyed: (readonly SurveyPair[])[] = batches.map(() => []);
  const workers = batches
    .slice(0, threads)
    .map(() => new Worker(new URL('./survey-worker.js', import.meta.url), { workerData: given }));
  let next = 0;
  let done = 0;
  const work = (worker: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const give = () => {
        const batch = batches[next++];
        if (batch === undefined) resolve();
        else worker.postMessage(batch);
      };
      worker.on('error', reject);
      worker.on('exit', (code) => reject(new Error(`a worker ended with ${code} and no outcome`)));
      worker.on('message', ({ from, pairs }: Surveyed) => {
        surveyed[from / BATCH] = pairs;
        done += pairs.length;
        onProgress(done / count);
        give();
      });
      give();
    });
  try {
    await Promise.all(workers.map(work));
  } finally {
    for (const worker of workers) void worker.terminate();
  }
  return surveyed.flat();
}
