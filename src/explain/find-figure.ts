import type { Design } from '../design/design.js';
import { nearestWord } from '../design/nearest-word.js';
import type { Entry } from './plan-tree.js';

/** What somebody asked for: one figure, a group of them, or nothing that there is. */
export type Found =
  | { readonly kind: 'one'; readonly entry: Entry }
  | { readonly kind: 'group'; readonly entries: readonly Entry[] }
  | { readonly kind: 'none'; readonly message: string };

/**
 * Finds a figure by its name in the plan. A holder may stand under its own name (`holders.paper holder.seat.infinity`),
 * a list under its number alone (`parts.F1.width`, `holders.0`), and what only one figure ends with is enough
 * (`rearBoxInside`); so is a symbol (`W_ri`).
 */
export function findFigure(asked: string, entries: readonly Entry[], holders: Design['holders']): Found {
  const wanted = plain(asked, holders);
  const names = entries.map((entry) => ({ entry, name: plain(entry.path, holders) }));
  const exact = names.find(({ name }) => name === wanted);
  if (exact) return { kind: 'one', entry: exact.entry };
  const below = names.filter(({ name }) => name.startsWith(`${wanted}.`));
  if (below.length > 0) return { kind: 'group', entries: below.map(({ entry }) => entry) };
  const known = entries.filter(({ ofPart }) => !ofPart);
  const bySymbol = known.filter(({ figure }) => figure.symbol === asked.trim());
  const byEnd = names
    .filter(({ entry, name }) => !entry.ofPart && name.endsWith(`.${wanted}`))
    .map(({ entry }) => entry);
  const likely = bySymbol.length > 0 ? bySymbol : byEnd;
  const [only] = likely;
  if (only !== undefined && likely.every(({ figure }) => figure === only.figure)) return { kind: 'one', entry: only };
  return { kind: 'none', message: missing(asked, likely, names) };
}

/** One spelling for all: lower case, list entries by number after a point. */
function plain(path: string, holders: Design['holders']): string {
  const lower = path.trim().toLowerCase().replace(/\s+/g, ' ');
  const numbered = lower.replace(/\[([^\]]*)\]/g, '.$1').replace(/["']/g, '');
  for (const [i, { name }] of holders.entries())
    for (const list of ['holders', 'spacers']) {
      const own = `${list}.${name.toLowerCase()}`;
      if (numbered === own || numbered.startsWith(`${own}.`)) return `${list}.${i}${numbered.slice(own.length)}`;
    }
  return numbered;
}

const MOST_NAMES = 4;

function missing(
  asked: string,
  likely: readonly Entry[],
  names: readonly { readonly entry: Entry; readonly name: string }[],
): string {
  const none = `The plan has no figure "${asked.trim()}".`;
  if (likely.length > 0) return `${none} Did you mean ${listed(likely.map(({ path }) => path))}?`;
  const near = nearest(asked, names);
  return near.length > 0
    ? `${none} Did you mean ${listed(near)}?`
    : `${none} Without a name, \`tailboard explain <design>\` lists them.`;
}

/** By slips of the pen in the whole name or in its end, then whatever holds the word. */
function nearest(asked: string, names: readonly { readonly entry: Entry; readonly name: string }[]): readonly string[] {
  const wanted = asked.trim().toLowerCase();
  const found = new Set<string>();
  const endOf = (path: string) => path.split('.').at(-1) ?? path;
  const figures = names
    .filter(({ entry }) => !entry.ofPart || wanted.startsWith('parts'))
    .map(({ entry }) => entry.path);
  for (const shorten of [(path: string) => path, endOf]) {
    const left = new Map(figures.map((path) => [shorten(path), path]));
    const next = () => nearestWord(shorten(wanted), [...left.keys()]);
    for (let word = next(); word !== undefined && found.size < MOST_NAMES; word = next()) {
      found.add(left.get(word) ?? word);
      left.delete(word);
    }
  }
  const holding = wanted.length >= 3 ? figures.filter((path) => path.toLowerCase().includes(wanted)) : [];
  return [...new Set([...found, ...holding])].slice(0, MOST_NAMES);
}

const listed = (words: readonly string[]): string => {
  const few = words.slice(0, MOST_NAMES);
  return few.length < 2 ? few.join('') : `${few.slice(0, -1).join(', ')} or ${few.at(-1)}`;
};
