import { EXIT } from './stop.js';

const cleanups = new Set<() => void>();

/** Runs `cleanup` should the user break off; the function that it gives back takes that off again. */
export function onInterrupt(cleanup: () => void): () => void {
  cleanups.add(cleanup);
  return () => cleanups.delete(cleanup);
}

/** By convention 128 and the number of the signal. */
const SIGNALS = { SIGINT: EXIT.interrupted, SIGTERM: 143, SIGHUP: 129 } as const;

/** Has an interrupted command clear up and end with the code that shells expect. */
export function endOnSignals(): void {
  for (const [signal, code] of Object.entries(SIGNALS)) {
    process.once(signal, () => {
      // what began last stands in the way of what began before it
      for (const cleanup of [...cleanups].reverse()) cleanup();
      process.exit(code);
    });
  }
}
