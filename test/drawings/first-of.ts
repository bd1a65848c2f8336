/** The first of a list that is not empty. */
export function firstOf<T>(list: readonly T[]): T {
  const [first] = list;
  if (first === undefined) throw new Error('the list is empty');
  return first;
}
