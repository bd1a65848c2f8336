import type { DescribedKey } from './described-keys.js';
import type { Outline } from './yaml.js';

/** Of a list with nothing in it. */
export const NONE = 'none';

/** What a file has at a path, as somebody would type it: without quotes and brackets; null where it has nothing. */
export function writtenText(text: string, outline: Outline, path: string, described: DescribedKey): string | null {
  const single = outline.texts.get(path);
  if (single !== undefined) return single;
  const value = valueAt(outline.value, stepsOf(path));
  if (value === undefined || value === null) return null;
  if (Array.isArray(value) && described.kind === 'field' && described.several !== null) {
    if (value.length === 0) return NONE;
    const texts = value.map((_, index) => outline.texts.get(`${path}[${index}]`));
    if (!texts.includes(undefined)) return texts.join(', ');
  }
  const span = outline.valueSpans.get(path);
  return span === undefined ? null : text.slice(...span).trim();
}

/** `holders[1].filmDepth` as holders, 1, filmDepth. */
export const stepsOf = (path: string): readonly (string | number)[] =>
  path.split(/\.|\[(\d+)\]\.?/).flatMap((step, index) => {
    if (step === undefined || step === '') return [];
    return [index % 2 === 1 ? Number(step) : step];
  });

export const valueAt = (value: unknown, steps: readonly (string | number)[]): unknown =>
  // of no value, of a text and of a number the key is not there either
  steps.reduce<unknown>((inner, step) => (isHolding(inner) ? inner[step] : undefined), value);

export const isHolding = (value: unknown): value is Readonly<Record<string | number, unknown>> =>
  typeof value === 'object' && value !== null;
