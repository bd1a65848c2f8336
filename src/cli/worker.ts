import { parentPort, workerData } from 'node:worker_threads';
import type { BuildOptions, Progress } from '../index.js';
import { bookLetters } from './letters.js';
import { lightElsewhere } from './light-elsewhere.js';
import type { Message, Outcome, Task } from './task.js';

const send = (message: Message): void => parentPort?.postMessage(message);
const onProgress = (progress: Progress): void => send({ progress });

async function outcomeOf(task: Task): Promise<Outcome[keyof Outcome]> {
  if (task.kind === 'parts') {
    const { loadSpares } = await import('../index.js');
    return (await loadSpares()).parts(task.design, task.wanted);
  }
  // the search for light takes as long as all the rest: it runs beside it, and begins before anything is loaded here
  const lightOf = lightElsewhere(task.design);
  const { loadDocuments, loadWorkshop } = await import('../index.js');
  const workshop = await loadWorkshop();
  switch (task.kind) {
    case 'check':
      return workshop.check(task.design, { onProgress, lightOf });
    case 'build':
    case 'kits': {
      const { despite, effort } = task;
      const { pagePdf } = await loadDocuments();
      const writeDocument: BuildOptions['writeDocument'] = (pages, about) => pagePdf(pages, bookLetters(), about);
      const options = {
        despite,
        onProgress,
        writeDocument,
        ...(effort === undefined ? {} : { effort }),
        lightOf,
      };
      if (task.kind === 'kits')
        return workshop.kits(task.design, { ...options, copies: task.copies, prices: task.prices });
      const { since } = task;
      return workshop.build(task.design, { ...options, ...(since === undefined ? {} : { since }) });
    }
  }
}

send({ outcome: await outcomeOf(workerData as Task) });
