import type { SurveyPair } from '../../../index.js';
import type { FromSurveyor, SurveyAsked, ToSurveyor } from '../../worker/survey-asked.js';
import { mistakeIn } from '../../worker-mistake.js';

/** About a twentieth of a second of work: progress is seen, and what goes to and fro costs nothing beside it. */
const BATCH = 24;

/** The page and its desk want a thread each, too. */
const MOST_THREADS = 2;

interface Surveying {
  readonly count: number;
  readonly threads?: number;
  /** Pairs that are done. */
  readonly onProgress: (done: number) => void;
}

export interface Running {
  /** In the order of the lists, whatever thread was faster; null where it was stopped. */
  readonly pairs: Promise<readonly SurveyPair[] | null>;
  readonly stop: () => void;
}

/** Surveys on threads of their own: each takes the next batch when it has done one. */
export function surveyOnThreads(asked: SurveyAsked, { count, threads = MOST_THREADS, onProgress }: Surveying): Running {
  const batches = Array.from({ length: Math.ceil(count / BATCH) }, (_, i) => i * BATCH);
  const surveyed: (readonly SurveyPair[])[] = batches.map(() => []);
  const workers = batches
    .slice(0, threads)
    .map(() => new Worker(new URL('survey-worker.js', import.meta.url), { type: 'module' }));
  const end = () => {
    for (const worker of workers) worker.terminate();
  };
  let next = 0;
  let done = 0;
  const work = (worker: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const send = (message: ToSurveyor) => worker.postMessage(message);
      const give = () => {
        const from = batches[next];
        next += 1;
        if (from === undefined) resolve();
        else send({ kind: 'batch', from, to: Math.min(count, from + BATCH) });
      };
      worker.onerror = (event) => reject(new Error(mistakeIn(event)));
      worker.onmessage = ({ data }: MessageEvent<FromSurveyor>) => {
        if (data.kind === 'mistake') {
          reject(new Error(data.words));
          return;
        }
        const { from, pairs } = data;
        surveyed[from / BATCH] = pairs;
        done += pairs.length;
        onProgress(done);
        give();
      };
      send({ kind: 'begin', asked });
      give();
    });
  const all = Promise.all(workers.map(work)).then(() => surveyed.flat());
  let stop = end;
  const stopped = new Promise<null>((resolve) => {
    stop = () => resolve(null);
  });
  return { pairs: Promise.race([all, stopped]).finally(end), stop };
}
