import type { Finding, LoadedWorkshop, Problem } from '../../src/index.js';

/** The compiled program: what runs TypeScript as it stands slows every small function. */
type Program = typeof import('../../src/index.js');

export const program = (): Promise<Program> => import(new URL('../../dist/index.js', import.meta.url).href);

const plain = (text: string): string => text;
const PLAIN = { heading: plain, faint: plain, error: plain, warning: plain, note: plain };

/** What became of a design. */
export type Fate = 'cannot be read' | 'refused' | 'sound';

/** What no builder should ever read, unless he wrote it himself: a holder may be called null. */
const nonsense = (said: string, text: string): boolean =>
  [...said.matchAll(/\b(?:NaN|undefined|Infinity|null)\b|\[object/g)].some(([word]) => !text.includes(word));

/**
 * Reads and plans a design, and looks at what is told of it.
 *
 * @throws where the program does, and where it tells what cannot be
 */
export function lookAtPlan(text: string, { readDesign, planDesign, planPage, rules }: Program): Fate {
  const outcome = readDesign(text, 'design.yaml');
  if ('problems' in outcome) {
    if (outcome.problems.length === 0) throw new Error('refused without a word');
    for (const problem of outcome.problems) lookAtProblem(problem, text);
    return 'cannot be read';
  }
  const { plan, findings } = planDesign(outcome.design);
  lookAtNumbers(plan, 'plan');
  lookAtFindings(findings, rules, text);
  const strange = planPage(plan, { width: 100, colour: PLAIN })
    .split('\n')
    .find((line) => nonsense(line, text));
  if (strange !== undefined) throw new Error(`the plan reads: ${strange}`);
  return fateOf(findings);
}

/** Proves the camera of a design, and looks at what is told of it; a design that cannot be read is none. */
export function lookAtCheck(text: string, { readDesign, rules }: Program, { check }: LoadedWorkshop): Fate {
  const outcome = readDesign(text, 'design.yaml');
  if ('problems' in outcome) return 'cannot be read';
  const { findings, proof } = check(outcome.design, { onProgress: () => {} });
  lookAtFindings(findings, rules, text);
  lookAtNumbers(proof, 'proof');
  return fateOf(findings);
}

const fateOf = (findings: readonly Finding[]): Fate =>
  findings.some(({ level }) => level === 'error') ? 'refused' : 'sound';

function lookAtProblem({ line, column, what }: Problem, text: string): void {
  const count = text.split('\n').length;
  if (!(line >= 1 && line <= count && column >= 1)) throw new Error(`told at line ${line}, column ${column}: ${what}`);
  if (what.trim() === '' || /\bNaN\b|\[object/.test(what)) throw new Error(`told: ${what}`);
}

function lookAtFindings(findings: readonly Finding[], rules: Program['rules'], text: string): void {
  for (const { rule, level, message, hint = '' } of findings) {
    if (!rules.some(({ id, levels }) => id === rule && levels.includes(level)))
      throw new Error(`a finding of no rule: ${rule}, ${level}`);
    if (message.trim() === '' || nonsense(message + hint, text)) throw new Error(`${rule} says: ${message} ${hint}`);
  }
}

/** JSON writes null for what is no number, and nobody would see it. */
function lookAtNumbers(value: unknown, where: string): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${where} is ${value}`);
  if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) lookAtNumbers(inner, `${where}.${key}`);
}
