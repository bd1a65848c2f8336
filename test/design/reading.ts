import type { Design } from '../../src/design/design.js';
import { type Problem, printProblem } from '../../src/design/problem.js';
import { readDesign } from '../../src/design/read.js';

/** The design in a text that must be right. */
export function designOf(text: string): Design {
  const outcome = readDesign(text, 'design.yaml');
  if ('design' in outcome) return outcome.design;
  throw new Error(outcome.problems.map(printProblem).join('\n'));
}

/** The problems of a text that must be wrong. */
export function problemsOf(text: string): readonly Problem[] {
  const outcome = readDesign(text, 'design.yaml');
  if ('problems' in outcome) return outcome.problems;
  throw new Error('the design was accepted');
}

/** A text with one passage changed; the passage must be there. */
export function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`${from} is not in the text`);
  return text.replace(from, () => to);
}
