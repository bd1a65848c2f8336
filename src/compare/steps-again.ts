import { type NumberedStep, names } from '../model/assembly-steps.js';
import type { Part } from '../model/part.js';

/** A step of the assembly at a camera that stands, as far as it has to do with what is cut again. */
export interface StepAgain {
  readonly number: number;
  /** Parts that are cut again and come in. */
  readonly brings: readonly string[];
  /** Parts that are cut again and came in earlier: kept ones are put to them here, they are put in with a whole, or worked on. */
  readonly meets: readonly string[];
}

/** A step, and what is told of it. */
interface ToldStep extends Pick<NumberedStep, 'number' | 'acts'> {
  readonly says: readonly string[];
}

/**
 * Which steps are done again where single parts of a camera are. A joint is made in the step that brings its two parts into
 * one assembly, so that is the step that a new part takes up, wherever the other one has been since. Paint and felt are no parts that
 * are joined: a step that names an earlier part by its number may do something to it.
 */
export function stepsAgain(
  steps: readonly ToldStep[],
  parts: readonly Pick<Part, 'id' | 'joins'>[],
  recut: readonly string[],
): readonly StepAgain[] {
  const again = new Set(recut);
  const joined = new Set(parts.flatMap(({ id, joins }) => joins.flatMap(({ to }) => [`${id} ${to}`, `${to} ${id}`])));
  const standing = new Map<string, readonly string[]>();
  return steps.flatMap(({ number, acts, says }): readonly StepAgain[] => {
    const brings = new Set<string>();
    const earlier = new Set([...standing.values()].flat());
    const named = new Set(says.flatMap((text) => text.split(/[^\w-]+/)));
    const meets = new Set(recut.filter((id) => earlier.has(id) && named.has(id)));
    for (const act of acts) {
      const there = standing.get(act.into) ?? [];
      const coming =
        'whole' in act
          ? (standing.get(act.whole) ?? [])
          : parts.flatMap(({ id }) => (names(act, id) && !there.includes(id) ? [id] : []));
      for (const id of coming.filter((one) => again.has(one))) ('whole' in act ? meets : brings).add(id);
      const all = [...there, ...coming];
      for (const id of coming)
        for (const other of all.filter((one) => joined.has(`${id} ${one}`)))
          for (const one of [id, other].filter((touched) => again.has(touched))) meets.add(one);
      standing.set(act.into, all);
    }
    const met = recut.filter((id) => meets.has(id) && !brings.has(id));
    return brings.size + met.length === 0 ? [] : [{ number, brings: recut.filter((id) => brings.has(id)), meets: met }];
  });
}
