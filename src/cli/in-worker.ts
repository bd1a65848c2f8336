import { Worker } from 'node:worker_threads';
import type { Progress } from '../index.js';
import type { Message, Outcome, Task } from './task.js';

/**
 * Has the work done on a second thread, so that the first one hears Ctrl-C and can draw while the solids are reckoned
 * with. A mistake of ours over there is thrown here.
 */
export function work<Kind extends Task['kind']>(
  task: Extract<Task, { kind: Kind }>,
  onProgress: (progress: Progress) => void,
): Promise<Outcome[Kind]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./worker.js', import.meta.url), { workerData: task });
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`the worker ended with ${code} and no outcome`)));
    worker.on('message', (message: Message) => {
      if ('progress' in message) onProgress(message.progress);
      // the worker does what the task's kind says, see worker.ts
      else resolve(message.outcome as Outcome[Kind]);
    });
  });
}
