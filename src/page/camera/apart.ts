import type { TakenStep } from '../../model/shown.js';

/** Of a step's time the share for which one of its things moves: the next begins before it has come to rest. */
const OWN = 0.5;

/**
 * How far each piece is out, by its key. The last step leaves first, and the last thing of a step before the others.
 *
 * @param share from 0, together, to 1, everything out
 */
export function apartAt(steps: readonly TakenStep[], share: number): ReadonlyMap<string, TakenStep['by']> {
  const out = new Map<string, TakenStep['by']>();
  const numbers = stepNumbers(steps);
  const after = numbers.length * share;
  numbers.forEach((number, i) => {
    const gone = after - (numbers.length - 1 - i);
    if (gone <= 0) return;
    const own = steps.filter(({ step }) => step === number);
    own.forEach(({ pieces, by }, k) => {
      const begin = own.length === 1 ? 0 : ((1 - OWN) * (own.length - 1 - k)) / (own.length - 1);
      const moved = eased((gone - begin) / (own.length === 1 ? 1 : OWN));
      if (moved === 0) return;
      for (const key of pieces) {
        const { x, y, z } = out.get(key) ?? { x: 0, y: 0, z: 0 };
        out.set(key, { x: x + moved * by.x, y: y + moved * by.y, z: z + moved * by.z });
      }
    });
  });
  return out;
}

/** The step that is being taken back, and how many there are; null where all is together. */
export function stepAt(steps: readonly TakenStep[], share: number): { number: number; left: number } | null {
  const numbers = stepNumbers(steps);
  const undone = Math.min(numbers.length, Math.ceil(numbers.length * share - 1e-9));
  if (undone === 0) return null;
  const left = numbers.length - undone;
  return { number: numbers[left] as number, left };
}

const stepNumbers = (steps: readonly TakenStep[]): readonly number[] =>
  [...new Set(steps.map(({ step }) => step))].sort((a, b) => a - b);

function eased(share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t * t * (3 - 2 * t);
}
