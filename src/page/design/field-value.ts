import type { FormField, KeyEdit } from '../../model/design-form.js';
import { isWithin } from './remarks.js';

/** What a field shows: what was last typed into it where the desk has not written that yet, else what the file has. */
export function fieldValue({ path, value }: FormField, edits: readonly KeyEdit[]): string | null {
  const last = edits.findLast((edit) =>
    edit.kind === 'write' ? edit.path === path : edit.kind === 'remove' && isWithin(path, edit.path),
  );
  if (last === undefined) return value;
  return last.kind === 'write' ? last.value : null;
}
