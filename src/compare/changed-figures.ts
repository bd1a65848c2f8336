import type { ChangedFigure } from '../model/compare.js';
import type { PlanDocument } from '../model/plan.js';

/** What of a plan has a comparison of its own, or speaks for itself. */
type NoFigures = 'schema' | 'name' | 'revision' | 'parts' | 'hardware' | 'findings' | 'despite';

/** Sections of a plan whose figures are compared: all that hold any. */
const SECTIONS = Object.keys({
  optics: true,
  slide: true,
  lensBoard: true,
  holders: true,
  groundGlass: true,
  spacers: true,
  tailboard: true,
  camera: true,
  filterHolder: true,
  shutter: true,
  hood: true,
  cap: true,
} satisfies Record<Exclude<keyof PlanDocument, NoFigures>, true>);

/** Documents have six figures behind the point. */
const SAME = 1e-6;

/** Figures of two plans that are not alike, by their names in `plan --json`; what is in a list stands under its own name. */
export function changedFigures(before: object, after: object): readonly ChangedFigure[] {
  const [a, b] = [figuresOf(before), figuresOf(after)];
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((figure): readonly ChangedFigure[] => {
    const [was, is] = [a.get(figure) ?? null, b.get(figure) ?? null];
    return isSame(was, is) ? [] : [{ figure, before: was, after: is }];
  });
}

type Shown = ChangedFigure['before'];

/** A list with nothing in it is as good as none. */
const isNone = (shown: Shown): boolean => shown === null || shown === '';

const isSame = (a: Shown, b: Shown): boolean =>
  (isNone(a) && isNone(b)) || (typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= SAME : a === b);

function figuresOf(plan: object): ReadonlyMap<string, Shown> {
  const found = new Map<string, Shown>();
  const sections = plan as Readonly<Record<string, unknown>>; // any keys
  for (const section of SECTIONS) gather(sections[section], section, found);
  return found;
}

function gather(value: unknown, name: string, found: Map<string, Shown>): void {
  if (value === undefined) return;
  if (value === null || typeof value !== 'object') {
    if (value === null || typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean')
      found.set(name, value);
    return;
  }
  if (Array.isArray(value) && value.every((each) => typeof each !== 'object')) {
    found.set(name, value.join(' + '));
    return;
  }
  for (const [key, inner] of Object.entries(value))
    if (key !== namedBy(value)) gather(inner, `${name}.${nameOf(inner) ?? key}`, found);
}

/** What a thing in a list is called: a holder by its name, a spacer by its holder's. */
function nameOf(value: unknown): string | undefined {
  const key = namedBy(value);
  return key === undefined ? undefined : String((value as Readonly<Record<string, unknown>>)[key]); // the key is there
}

/** The key by which a thing in a list is called. */
function namedBy(value: unknown): 'name' | 'holder' | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { name, holder } = value as { readonly name?: unknown; readonly holder?: unknown };
  return typeof name === 'string' ? 'name' : typeof holder === 'string' ? 'holder' : undefined;
}
