/** Two convergents that differ by less are the same double, nearly. */
const NEGLIGIBLE = 1e-15;

/** Stands for a denominator of nothing, which the next step divides out again. */
const TINY = 1e-300;

/** Far more than any fraction here takes; reaching it is a mistake of ours. */
const MOST_TERMS = 10000;

interface Term {
  readonly over: number;
  readonly under: number;
}

/**
 * first + over₁/(under₁ + over₂/(under₂ + ...)), from the front and as far as it takes (Lentz's way, with Thompson and
 * Barnett's care for denominators of nothing).
 *
 * @param term the k-th one, from 1
 */
export function continuedFraction(first: number, term: (k: number) => Term): number {
  let value = first === 0 ? TINY : first;
  let forward = value;
  let backward = 0;
  for (let k = 1; k <= MOST_TERMS; k++) {
    const { over, under } = term(k);
    backward = 1 / notNothing(under + over * backward);
    forward = notNothing(under + over / forward);
    const step = forward * backward;
    value *= step;
    if (Math.abs(step - 1) < NEGLIGIBLE) return value;
  }
  throw new Error('a continued fraction does not settle');
}

const notNothing = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
