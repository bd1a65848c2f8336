import type { SurveyDocument, SurveyPair } from '../model/survey.js';

/** What a survey can be sorted by, and in which sense. */
export const sortings = {
  /** The nearest reach first. */
  reach: ({ reachable }: SurveyPair) => (reachable === null ? null : -reachable),
  mass: ({ camera }: SurveyPair) => camera?.mass ?? null,
  /** Those that take as many sheets by their area. */
  sheets: ({ camera }: SurveyPair) => camera && camera.sheets + camera.plywoodArea / LARGER_THAN_ANY,
  travel: ({ camera }: SurveyPair) => camera?.travel ?? null,
  /** By what the closed camera takes up. */
  size: ({ camera }: SurveyPair) => camera && camera.width * camera.height * camera.depthClosed,
  name: ({ lens }: SurveyPair) => lens,
  /** What covers at infinity first, then what covers from ever nearer on, what never does, and what nobody knows. */
  covers: ({ state, coversFrom }: SurveyPair) =>
    state === 'does-not-close' || coversFrom === null ? null : (state === 'never-covers' ? NEVER : 0) + coversFrom,
} as const satisfies Readonly<Record<string, (pair: SurveyPair) => number | string | null>>;

/** Above every magnification. */
const NEVER = 1e6;
/** mm²: no camera takes a thousand square metres. */
const LARGER_THAN_ANY = 1e9;

export type Sorting = keyof typeof sortings;

/**
 * Pairs in the order of a figure, the smallest first, those without it last. Pairs that are alike in it stay as they
 * stood in the lists.
 */
export function sorted(pairs: readonly SurveyPair[], by: Sorting): readonly SurveyPair[] {
  const rank = sortings[by];
  return pairs
    .map((pair, i) => ({ pair, i, key: rank(pair) }))
    .sort((a, b) => inOrder(a.key, b.key) || a.i - b.i)
    .map(({ pair }) => pair);
}

function inOrder(a: number | string | null, b: number | string | null): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return a < b ? -1 : 1;
}

/** The pairs lens by lens, the shortest lens first: the order of the chart where none is asked for. */
export function byFocalLength({ lenses, pairs }: SurveyDocument): readonly SurveyPair[] {
  const lengths = new Map(lenses.map(({ name, focalLength }) => [name, focalLength]));
  return pairs
    .map((pair, i) => ({ pair, i, f: lengths.get(pair.lens) ?? 0 }))
    .sort((a, b) => a.f - b.f || a.i - b.i)
    .map(({ pair }) => pair);
}
