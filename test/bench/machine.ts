import { cpus } from 'node:os';

/** What a figure was measured on. */
export function machine(): string {
  const { arch, platform, version } = process;
  return `Node ${version}, ${platform} ${arch}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown'}`;
}
