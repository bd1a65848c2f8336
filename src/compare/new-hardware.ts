import type { Hardware } from '../model/part.js';

/** What of a list of hardware is not on an earlier one, or more of it, line by line. */
export const newHardware = (before: readonly Hardware[], after: readonly Hardware[]): readonly Hardware[] =>
  after.flatMap((line) => {
    const own = before.find(({ name, size }) => name === line.name && size === line.size)?.count ?? 0;
    return line.count > own ? [{ ...line, count: line.count - own }] : [];
  });
