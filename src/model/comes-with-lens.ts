import type { Part } from './part.js';

/** What a lens is fixed by and sold with, in words: its ring or its flange; null where it has neither. */
export function comesWithLens(parts: readonly Part[]): string | null {
  const own = parts.find((part) => part.kind === 'bought' && part.role === 'lens' && part.shape.form === 'plate');
  return own === undefined ? null : `its ${own.name.replace(/ of the lens$/, '')}`;
}
