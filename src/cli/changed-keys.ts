import type { ChangedKey } from '../index.js';

/** What was changed in a design file, a key a line, each with what stood there before. */
export function changedKeys(file: string, changed: readonly ChangedKey[]): readonly string[] {
  if (changed.length === 0) return [`${file} has these figures already; it is as it was.`];
  const wide = Math.max(...changed.map(({ path }) => path.length));
  return [
    ...changed.map(({ path, from, to }) => `${path.padEnd(wide)}  ${from ?? '(not written)'} -> ${to}`),
    `Wrote ${file}; everything else in it is as it was.`,
  ];
}
