import { completeDesign } from './complete.js';
import { inconsistencies } from './consistency.js';
import { defaultedPaths } from './defaulted.js';
import type { Design } from './design.js';
import { explainIssues, type Fault } from './explain.js';
import type { Problem } from './problem.js';
import { designSchema } from './schema.js';
import { problemAt, type Source, textProblem } from './source.js';
import { type FindRemnant, noRemnants, type RemnantFiles, remnantFiles } from './stock.js';
import { type Outline, pathText, readYaml } from './yaml.js';

/** More than anyone mends before trying again. */
const MOST_PROBLEMS = 10;

/**
 * Reads a design file: the design with its defaults filled in, or what is wrong, in the order of the file.
 *
 * @param file name of the file, for the messages alone
 * @param find gives the remnants that the design names by their files
 */
export function readDesign(
  text: string,
  file: string,
  find: FindRemnant = noRemnants,
): { readonly design: Design } | { readonly problems: readonly Problem[] } {
  const source: Source = { file, text: text.replace(/^\ufeff/, '') };
  const unreadable = textProblem(source);
  if (unreadable !== null) return { problems: [unreadable] };
  const outline = readYaml(source);
  if (!('value' in outline)) return outline;
  const { value } = outline;
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return { problems: [notAGroup(source, value)] };
  const outcome = designSchema.safeParse(value, { jitless: true });
  const files: RemnantFiles = outcome.success ? remnantFiles(outcome.data, find) : new Map();
  const faults = outcome.success ? inconsistencies(outcome.data, files) : explainIssues(outcome.error.issues, value);
  const told = new Set(outline.problems.map(({ path }) => path));
  const news = faults.filter(({ path }) => !told.has(pathText(path)));
  const problems = [...outline.problems, ...news.map((fault) => locate(source, outline, fault))];
  if (!outcome.success || problems.length > 0) return { problems: inOrder(problems) };
  return { design: completeDesign(outcome.data, defaultedPaths(value), files) };
}

function notAGroup(source: Source, value: unknown): Problem {
  const found = Array.isArray(value) ? 'a list' : 'a single value';
  return problemAt(source, null, {
    path: '',
    what: `The file holds ${found}, not the keys of a design.`,
    accepted: 'Begin with a key, such as name: Heron.',
  });
}

/** At the value or the key; where neither was written, at the key of the group that lacks it, or else nowhere in particular. */
function locate(source: Source, { keySpans, valueSpans }: Outline, { path, at, what, accepted }: Fault): Problem {
  const here = pathText(path);
  const span = (at === 'value' ? valueSpans.get(here) : undefined) ?? keySpans.get(here);
  const holding = () => {
    for (let length = path.length - 1; length > 0; length--) {
      const outer = pathText(path.slice(0, length));
      const found = keySpans.get(outer) ?? valueSpans.get(outer);
      if (found !== undefined) return found;
    }
    return null;
  };
  return problemAt(source, span ?? holding(), { path: here, what, accepted });
}

function inOrder(problems: readonly Problem[]): readonly Problem[] {
  return [...problems].sort((a, b) => a.line - b.line || a.column - b.column).slice(0, MOST_PROBLEMS);
}
