import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { Design, LightProof } from '../index.js';

/** What the thread that looks for light is given. */
export interface Search {
  readonly design: Design;
  readonly port: MessagePort;
  /** One number, 0 until the answer has been sent. */
  readonly done: Int32Array;
}

export type Answer = { readonly light: LightProof } | { readonly error: unknown };

/**
 * Has light looked for on a thread of its own. The function that comes back waits for the answer without letting go of
 * the thread that asks, for the stages that ask for it wait for nothing.
 */
export function lightElsewhere(design: Design): () => LightProof {
  const { port1, port2 } = new MessageChannel();
  const done = new Int32Array(new SharedArrayBuffer(4));
  const search: Search = { design, port: port2, done };
  new Worker(new URL('./light-worker.js', import.meta.url), { workerData: search, transferList: [port2] }).unref();
  return () => {
    Atomics.wait(done, 0, 0);
    const answer = receiveMessageOnPort(port1)?.message as Answer | undefined;
    port1.close();
    if (answer === undefined || 'error' in answer) throw answer?.error ?? new Error('no light was looked for');
    return answer.light;
  };
}
