import { parentPort, workerData } from 'node:worker_threads';
import { loadWorkshop, type Progress } from '../index.js';
import type { Message, Outcome, Task } from './task.js';

const send = (message: Message): void => parentPort?.postMessage(message);
const onProgress = (progress: Progress): void => send({ progress });

async function outcomeOf(task: Task): Promise<Outcome[keyof Outcome]> {
  const workshop = await loadWorkshop();
  switch (task.kind) {
    case 'check':
      return workshop.check(task.design, { onProgress });
    case 'build':
      return workshop.build(task.design, { despite: task.despite, onProgress });
    case 'spacer':
      return workshop.spacer(task.design, task.wanted);
  }
}

send({ outcome: await outcomeOf(workerData as Task) });
