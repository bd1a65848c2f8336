import type { SurveyedFormat } from '../forms/lenses.js';
import { type Drawer, formatName } from '../forms/read-lenses.js';
import { formatsLike, formats as table } from '../standards/formats.js';

/** The formats of the lists, each once. */
const inLists = (drawers: readonly Drawer[]): readonly SurveyedFormat[] => {
  const named = new Map<string, SurveyedFormat>();
  for (const { formats } of drawers)
    for (const format of formats ?? table.map(({ name }) => name))
      if (!named.has(formatName(format))) named.set(formatName(format), format);
  return [...named.values()];
};

/**
 * Looks up formats that are asked for by name: in the lists, or in the table of formats.
 *
 * @returns the formats of each list where no name is given
 */
export function formatsAsked(
  drawers: readonly Drawer[],
  names: readonly string[],
): { readonly formats: readonly SurveyedFormat[] | null } | { readonly what: string; readonly accepted: string } {
  const known = new Map<string, SurveyedFormat>(
    [...table.map(({ name }) => name), ...inLists(drawers)].map((format) => [formatName(format), format]),
  );
  const chosen: SurveyedFormat[] = [];
  for (const name of names) {
    const format = known.get(name);
    if (format === undefined) {
      const like = formatsLike(name);
      return {
        what: `${JSON.stringify(name)} is neither in the table of formats nor in the list.`,
        accepted: `Write ${(like.length > 0 ? like : [...known.keys()]).join(', ')}.`,
      };
    }
    if (!chosen.includes(format)) chosen.push(format);
  }
  return { formats: chosen.length > 0 ? chosen : null };
}
