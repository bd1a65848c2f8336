/** A dial or scale that is marked in stops, and what each mark stands for. */
export interface Dial {
  readonly marks: readonly DialMark[];
  /** Stops from a number to its double: 2 of f-numbers, whose square counts, 1 of times. */
  readonly stopsToDouble: 1 | 2;
  readonly source: string;
}

interface DialMark {
  /** What is engraved. */
  readonly mark: number;
  /** The number that a whole count of stops, halves or thirds leads to from 1. */
  readonly exact: number;
}

/** A mark, and by how many stops the exact number that it stands for is above the number that was wanted. */
interface Nearest {
  readonly mark: number;
  readonly above: number;
}

/** The mark nearest in stops; the first of two that are as near. Stops are counted by what marks stand for. */
export function nearestMark(value: number, { marks, stopsToDouble }: Dial): Nearest {
  const apart = ({ exact }: DialMark) => Math.max(exact / value, value / exact);
  const nearest = marks.reduce((best, next) => (apart(next) < apart(best) ? next : best));
  return { mark: nearest.mark, above: stopsToDouble * Math.log2(nearest.exact / value) };
}

/** By how many stops a marked number is above the one that it stands for, on the first of the dials that has it; else null. */
export function strayOfMark(number: number, dials: readonly Dial[]): number | null {
  for (const { marks, stopsToDouble } of dials) {
    const found = marks.find(({ mark }) => mark === number);
    if (found !== undefined) return stopsToDouble * Math.log2(found.mark / found.exact);
  }
  return null;
}
