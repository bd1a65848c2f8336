import { EXIT, Stop } from './stop.js';

/** What the system's error codes mean to somebody at a workbench. */
const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EDQUOT: 'the disk quota is used up',
  EFBIG: 'the file is larger than this disk takes',
  EIO: 'the disk reports an error',
  EISDIR: 'this is a folder, not a file',
  ELOOP: 'its links lead round in a circle',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'the name is too long',
  ENOENT: 'there is no such file or folder',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'a part of this path is a file, not a folder',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
};

/** The code of an error that came from the system, null for a mistake of ours. */
export function systemCode(error: unknown): string | null {
  return error instanceof Error && 'code' in error && 'syscall' in error && typeof error.code === 'string'
    ? error.code
    : null;
}

export const reasonOf = (code: string): string => REASONS[code] ?? `the system reports ${code}`;

/** A failure of the machine as the end of the command; anything else is a mistake of ours and goes up as it is. */
export function machineStop(what: string, error: unknown): unknown {
  const code = systemCode(error);
  return code === null ? error : new Stop(EXIT.machineFailed, `${what}: ${reasonOf(code)}.`);
}
