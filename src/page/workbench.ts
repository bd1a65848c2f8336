import type { LightProof } from '../index.js';
import { markOf } from './mark-of.js';
import type { CameraText } from './worker/camera-asked.js';
import type { DesignText } from './worker/questions.js';
import type {
  Built,
  Checked,
  FromLight,
  FromWorkbench,
  KitsWanted,
  ToLight,
  ToWorkbench,
} from './worker/workbench-tasks.js';
import { mistakeIn } from './worker-mistake.js';

/** How far a job is: its stage in words, and its share from 0 to 1. */
export type OnProgress = (progress: { readonly stage: string; readonly done: number }) => void;

/**
 * What proves and builds beside the desk: two workers, one of which looks for light while the other does all the rest,
 * and one job at a time. A job that is put aside ends at once, and its promise gives null; one that comes to nothing by a
 * mistake of ours, which the user has been told of, is rejected.
 */
export interface Workbench {
  readonly check: (given: DesignText, onProgress: OnProgress) => Promise<Checked | null>;
  /** Problems are those of what was typed for the kits. */
  readonly build: (
    given: DesignText,
    options: {
      readonly despite: readonly string[];
      readonly kits: KitsWanted | null;
      readonly since: CameraText | null;
    },
    onProgress: OnProgress,
  ) => Promise<Built | { readonly problems: readonly string[] } | null>;
  readonly putAside: () => void;
}

interface Pair {
  readonly prover: Worker;
  readonly watchman: Worker;
}

/** The job that is under way. */
interface Job {
  readonly pair: Pair;
  readonly putAside: () => void;
}

export function openWorkbench(onMistake: (words: string) => void): Workbench {
  // the workers stay warm from one job to the next; only one that is put aside half-way costs new ones
  const bench: { free: Pair | null; job: Job | null; light: { of: string; found: LightProof | null } | null } = {
    free: null,
    job: null,
    light: null,
  };

  function begin<Outcome>(
    work: (pair: Pair, end: (outcome: Outcome) => void, fail: (words: string) => void) => void,
  ): Promise<Outcome | null> {
    putAside();
    const pair = bench.free ?? newPair();
    bench.free = null;
    return new Promise((resolve, reject) => {
      const end = (outcome: Outcome | null, left: Pair | null) => {
        bench.job = null;
        bench.free = left;
        resolve(outcome);
      };
      const fail = (words: string) => {
        // both of a pair may fail, and the second is no matter of the job that has begun meanwhile
        if (bench.job?.pair !== pair) return;
        endPair(pair);
        Object.assign(bench, { job: null, free: null });
        onMistake(words);
        reject(new Error(words));
      };
      for (const worker of [pair.prover, pair.watchman]) worker.onerror = (event) => fail(mistakeIn(event));
      bench.job = {
        pair,
        putAside: () => {
          endPair(pair);
          end(null, null);
        },
      };
      work(pair, (outcome) => end(outcome, pair), fail);
    });
  }

  const putAside = () => bench.job?.putAside();

  return {
    putAside,
    check: (given, onProgress) =>
      begin<Checked>(({ prover, watchman }, end, fail) => {
        const share = { rest: 0, light: 0, stage: '' };
        const found: { light: LightProof | null; here: boolean; awaited: boolean } = {
          light: null,
          here: false,
          awaited: false,
        };
        const tell = () =>
          onProgress({
            stage: share.rest < 1 ? share.stage : 'looking for light',
            done: share.rest * REST + share.light * (1 - REST),
          });
        const handIn = () => {
          if (found.here && found.awaited) send(prover, { kind: 'light', light: found.light });
        };
        prover.onmessage = ({ data }: MessageEvent<FromWorkbench>) => {
          if (data.kind === 'mistake') fail(data.words);
          else if (data.kind === 'checked') end(data.checked);
          else if (data.kind === 'progress') {
            Object.assign(share, { stage: data.stage, rest: Math.max(share.rest, data.done) });
            tell();
          } else if (data.kind === 'ready') {
            found.awaited = true;
            handIn();
          }
        };
        watchman.onmessage = ({ data }: MessageEvent<FromLight>) => {
          if (data.kind === 'mistake') fail(data.words);
          else if (data.kind === 'progress') {
            share.light = data.done;
            tell();
          } else {
            Object.assign(found, { light: data.light, here: true });
            bench.light = { of: markOf(given), found: data.light };
            share.light = 1;
            tell();
            handIn();
          }
        };
        send(prover, { kind: 'check', given });
        if (bench.light?.of === markOf(given)) {
          Object.assign(found, { light: bench.light.found, here: true });
          share.light = 1;
        } else watchman.postMessage(given satisfies ToLight);
      }),
    build: (given, { despite, kits, since }, onProgress) =>
      begin<Built | { readonly problems: readonly string[] }>(({ prover }, end, fail) => {
        prover.onmessage = ({ data }: MessageEvent<FromWorkbench>) => {
          if (data.kind === 'mistake') fail(data.words);
          else if (data.kind === 'built') end(data.built);
          else if (data.kind === 'refused') end({ problems: data.problems });
          else if (data.kind === 'progress') onProgress({ stage: data.stage, done: data.done });
        };
        // without a proof of the dark the worker looks for light itself
        const light = bench.light?.of === markOf(given) ? bench.light.found : null;
        send(prover, { kind: 'build', given, kits, since, despite, light });
      }),
  };
}

/** What does not look for light takes about so much of the time that both take. */
const REST = 0.45;

const send = (worker: Worker, message: ToWorkbench): void => worker.postMessage(message);

const newPair = (): Pair => ({
  prover: new Worker(new URL('proof-worker.js', import.meta.url), { type: 'module' }),
  watchman: new Worker(new URL('light-worker.js', import.meta.url), { type: 'module' }),
});

function endPair({ prover, watchman }: Pair): void {
  prover.terminate();
  watchman.terminate();
}
