import { randomBytes } from 'node:crypto';
import { chmodSync, readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { onInterrupt } from './interrupt.js';
import { machineStop } from './machine-error.js';
import { EXIT, Stop } from './stop.js';

interface Replacement {
  /** What the file held when it was read: it must hold it still. */
  readonly before: Uint8Array;
  readonly after: Uint8Array;
}

/**
 * Puts another content into a file, all of it or none: it is written beside it, read back, and then takes its place.
 * Whatever goes wrong before that leaves the file as it was. A link keeps leading to the file that it leads to.
 */
export function replaceFile(file: string, { before, after }: Replacement): void {
  let staging: string | undefined;
  const clear = () => {
    if (staging !== undefined) rmSync(staging, { force: true });
  };
  const release = onInterrupt(clear);
  try {
    const target = realpathSync(file);
    staging = join(dirname(target), `.tailboard-${randomBytes(6).toString('hex')}.tmp`);
    writeFileSync(staging, after, { flag: 'wx', flush: true });
    chmodSync(staging, statSync(target).mode);
    if (!readFileSync(staging).equals(after))
      throw new Stop(EXIT.machineFailed, `${file}: what was written cannot be read back; the file is as it was.`);
    if (!readFileSync(target).equals(before))
      throw new Stop(EXIT.wrongCall, `${file}: was changed meanwhile by somebody else, and is left so. Try again.`);
    renameSync(staging, target);
  } catch (error) {
    clear();
    throw machineStop(file, error);
  } finally {
    release();
  }
}
