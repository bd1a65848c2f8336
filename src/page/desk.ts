import type { Answer, FromDesk, Given, QuestionName, ToDesk } from './worker/questions.js';
import { mistakeIn } from './worker-mistake.js';

/** Asks the worker that computes. */
export interface Desk {
  /**
   * @param rank lower ones are answered first: 0 what the user waits for, 9 what may come when nothing else is wanted
   * @param topic a newer question on the same topic takes the place of an older one, whose answer then never comes
   * @returns rejected where the desk made a mistake, which the user has been told of
   */
  readonly ask: <Name extends QuestionName>(
    name: Name,
    given: Given<Name>,
    options?: { readonly rank?: number; readonly topic?: string },
  ) => Promise<Answer<Name>>;
}

interface Waiting {
  readonly topic: string;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** @param onAnswer hears of each answer that came, by its topic */
export function openDesk(onMistake: (words: string, topic?: string) => void, onAnswer: (topic: string) => void): Desk {
  const worker = new Worker(new URL('desk-worker.js', import.meta.url), { type: 'module' });
  const waiting = new Map<number, Waiting>();
  let asked = 0;
  /** Why nothing is answered any more; null while something is. */
  let broken: string | null = null;
  const send = (message: ToDesk) => worker.postMessage(message);
  worker.onmessage = ({ data }: MessageEvent<FromDesk>) => {
    if (data.kind === 'ready') return;
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.kind === 'answer') {
      if (one !== undefined) onAnswer(one.topic);
      one?.resolve(data.answer);
    } else {
      onMistake(data.words, one?.topic);
      one?.reject(new Error(data.words));
    }
  };
  // what it throws while it answers comes as a mistake: this is a desk that has not begun, and will answer nobody
  worker.onerror = (event) => {
    broken = mistakeIn(event);
    onMistake(broken);
    for (const { reject } of waiting.values()) reject(new Error(broken));
    waiting.clear();
  };
  return {
    ask: (name, given, { rank = 5, topic = name } = {}) =>
      new Promise((resolve, reject) => {
        if (broken !== null) {
          reject(new Error(broken));
          return;
        }
        for (const [id, one] of waiting)
          if (one.topic === topic) {
            waiting.delete(id);
            send({ kind: 'forget', id });
          }
        asked += 1;
        // the worker answers each question with what the table of answers has for its name
        waiting.set(asked, { topic, resolve: resolve as (answer: unknown) => void, reject });
        send({ kind: 'ask', id: asked, name, given, rank });
      }),
  };
}
