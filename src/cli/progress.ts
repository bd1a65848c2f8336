import type { Progress } from '../index.js';
import { onInterrupt } from './interrupt.js';
import type { Terminal } from './terminal.js';

const BAR = 24;
/** Back to the line's beginning, and the line wiped. */
const WIPE = '\r\u001b[K';

/** Does a long job under a bar that shows how far it has come; on anything but a terminal it stays silent. */
export async function withProgress<Outcome>(
  { err, showsProgress, width }: Pick<Terminal, 'err' | 'showsProgress' | 'width'>,
  job: (show: (progress: Progress) => void) => Promise<Outcome>,
): Promise<Outcome> {
  if (!showsProgress) return job(() => {});
  const wipe = () => void err(WIPE);
  const release = onInterrupt(wipe);
  try {
    return await job(({ stage, done }) => {
      const full = Math.round(BAR * Math.min(1, Math.max(0, done)));
      const line = `${'█'.repeat(full)}${'░'.repeat(BAR - full)}  ${stage}`;
      void err(`${WIPE}${line.slice(0, width - 1)}`);
    });
  } finally {
    release();
    wipe();
  }
}
