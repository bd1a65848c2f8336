import { formats, parseLength, readDesign, slugOf, starter } from '../../index.js';
import type { Answer, Given } from './questions.js';

/** The answers by the keys that they become. */
const PLACES: Readonly<Record<string, string>> = {
  name: 'name',
  'lens.focalLength': 'focalLength',
  'lens.flangeDistance': 'flangeDistance',
  'plywood.thickness': 'thickness',
  'laser.kerf': 'kerf',
};

export const formatNames = (): Answer<'format-names'> => formats.map(({ name, title }) => ({ name, title }));

/** A length as it was typed, or in words why it is none. */
function lengthIn(typed: string): { readonly value: number } | { readonly reason: string } {
  if (typed.trim() === '') return { reason: 'It is needed.' };
  const reading = parseLength(typed);
  return 'reason' in reading ? { reason: `${reading.reason} ${reading.accepted}` } : reading;
}

const laterIn = (typed: string): { readonly value: number | null } | { readonly reason: string } =>
  typed.trim() === '' ? { value: null } : lengthIn(typed);

/** A design to begin with, or what is wrong with the answers. */
export function newDesign({ name, format, ...lengths }: Given<'new-design'>): Answer<'new-design'> {
  const focalLength = lengthIn(lengths.focalLength);
  // what is measured later may be left out
  const flangeDistance = laterIn(lengths.flangeDistance);
  const thickness = lengthIn(lengths.thickness);
  const kerf = laterIn(lengths.kerf);
  if ('reason' in focalLength || 'reason' in flangeDistance || 'reason' in thickness || 'reason' in kerf) {
    const wrong = Object.entries({ focalLength, flangeDistance, thickness, kerf }).flatMap(([key, reading]) =>
      'reason' in reading ? [[key, reading.reason] as const] : [],
    );
    return { wrong: Object.fromEntries(wrong) };
  }
  const text = starter({
    name,
    format,
    focalLength: focalLength.value,
    flangeDistance: flangeDistance.value,
    thickness: thickness.value,
    kerf: kerf.value,
  });
  const file = `${slugOf(name)}.yaml`;
  const read = readDesign(text, file);
  if (!('problems' in read)) return { file, text };
  return {
    wrong: Object.fromEntries(
      read.problems.map(({ path, what, accepted }) => [PLACES[path] ?? 'all', `${what} ${accepted}`]),
    ),
  };
}
