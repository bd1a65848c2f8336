import type { Progress } from '../index.js';
import type { Terminal } from './terminal.js';

/** A bar that shows how far a build has come; on anything but a terminal it stays silent. */
export interface ProgressBar {
  readonly show: (progress: Progress) => void;
  /** Takes the bar off the screen. */
  readonly clear: () => void;
}

const BAR = 24;
/** Back to the line's beginning, and the line wiped. */
const WIPE = '\r\u001b[K';

export function progressBar({
  err,
  showsProgress,
  width,
}: Pick<Terminal, 'err' | 'showsProgress' | 'width'>): ProgressBar {
  if (!showsProgress) return { show: () => {}, clear: () => {} };
  return {
    show: ({ stage, done }) => {
      const full = Math.round(BAR * Math.min(1, Math.max(0, done)));
      const line = `${'█'.repeat(full)}${'░'.repeat(BAR - full)}  ${stage}`;
      void err(`${WIPE}${line.slice(0, width - 1)}`);
    },
    clear: () => void err(WIPE),
  };
}
