import { answers } from './answers.js';
import type { FromDesk, ToDesk } from './questions.js';
import { thread } from './thread.js';

/**
 * The desk: answers one question after another, those of the lowest rank first, and lets the page in between two of
 * them, so that one which nobody waits for any more is dropped before it is begun.
 */
type Asked = Extract<ToDesk, { kind: 'ask' }>;

const page = thread<ToDesk, FromDesk>();
const waiting: Asked[] = [];
const at = { work: false };
const turn = new MessageChannel();

page.onmessage = ({ data }) => {
  if (data.kind === 'forget') {
    const place = waiting.findIndex(({ id }) => id === data.id);
    if (place >= 0) waiting.splice(place, 1);
    return;
  }
  const behind = waiting.findIndex(({ rank }) => rank > data.rank);
  waiting.splice(behind < 0 ? waiting.length : behind, 0, data);
  if (!at.work) turn.port2.postMessage(null);
};

turn.port1.onmessage = async () => {
  if (at.work) return;
  const next = waiting.shift();
  if (next === undefined) return;
  at.work = true;
  try {
    const answer = await answerTo(next);
    page.postMessage({ kind: 'answer', id: next.id, answer }, buffersIn(answer));
  } catch (error) {
    page.postMessage({
      kind: 'mistake',
      id: next.id,
      words: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
  at.work = false;
  turn.port2.postMessage(null);
};

// the table gives each question its own kind of answer; here any of them will do
const answerTo = ({ name, given }: Asked): unknown => (answers[name] as (given: unknown) => unknown)(given);

/** Large arrays of an answer are handed over, not copied: they were made for it. */
function buffersIn(answer: unknown, found: ArrayBuffer[] = []): readonly ArrayBuffer[] {
  if (ArrayBuffer.isView(answer)) {
    if (answer.buffer instanceof ArrayBuffer && !found.includes(answer.buffer)) found.push(answer.buffer);
  } else if (Array.isArray(answer)) {
    if (typeof answer[0] === 'object') for (const one of answer) buffersIn(one, found);
  } else if (typeof answer === 'object' && answer !== null)
    for (const one of Object.values(answer)) buffersIn(one, found);
  return found;
}

page.postMessage({ kind: 'ready' });
