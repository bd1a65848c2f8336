import type { Finding, Problem } from '../../index.js';
import type { FormNode } from '../../model/design-form.js';

/** What is to be said beside the keys of a design. */
export interface Remarks {
  /** Problems of a key, and of what is in it where that has no place of its own. */
  readonly problemsAt: (path: string) => readonly Problem[];
  readonly findingsAt: (path: string) => readonly Finding[];
  /** Whatever is said of a group and of all that is in it. */
  readonly within: (path: string) => { readonly problems: number; readonly errors: number; readonly warnings: number };
  /** Problems of keys that have no place in the form. */
  readonly elsewhere: readonly Problem[];
}

export function remarksOn(
  nodes: readonly FormNode[],
  problems: readonly Problem[],
  findings: readonly Finding[],
): Remarks {
  const places = new Set(pathsOf(nodes));
  const placed = problems.map((problem) => ({ problem, at: placeOf(problem.path, places) }));
  return {
    problemsAt: (path) => placed.filter(({ at }) => at === path).map(({ problem }) => problem),
    findingsAt: (path) => findings.filter(({ about }) => about === path),
    within: (path) => {
      const said = findings.filter(({ about }) => about !== undefined && isWithin(about, path));
      return {
        problems: placed.filter(({ at }) => at !== null && isWithin(at, path)).length,
        errors: said.filter(({ level }) => level === 'error').length,
        warnings: said.filter(({ level }) => level === 'warning').length,
      };
    },
    elsewhere: placed.filter(({ at }) => at === null).map(({ problem }) => problem),
  };
}

const pathsOf = (nodes: readonly FormNode[]): readonly string[] =>
  nodes.flatMap((node) => [
    node.path,
    ...(node.kind === 'group' ? pathsOf(node.nodes) : node.kind === 'list' ? pathsOf(node.entries) : []),
  ]);

/** Whether a path is another or leads on from it: `holders[1].name` is within `holders[1]` and within `holders`. */
export const isWithin = (path: string, group: string): boolean =>
  path === group || path.startsWith(`${group}.`) || path.startsWith(`${group}[`);

/** The key itself, or the list of values that it is one of: `plywood.thickness[2]` is shown at `plywood.thickness`. */
function placeOf(path: string, places: ReadonlySet<string>): string | null {
  if (places.has(path)) return path;
  const list = /^(.*)\[\d+\]$/.exec(path)?.[1];
  return list === undefined ? null : placeOf(list, places);
}
