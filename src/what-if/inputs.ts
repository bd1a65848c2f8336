import type { Design } from '../design/design.js';
import { type Variable, variablesOf } from '../design/variables.js';
import type { WhatIfInput } from '../model/what-if.js';
import { triesOf } from './tries.js';

/**
 * The numbers of a design that shape the camera and have a range over which it makes sense to try them: what a builder
 * tries first at the head.
 *
 * @param text of the file that `design` was read from
 */
export function whatIfInputs(text: string, design: Design): readonly WhatIfInput[] {
  const { focalLength } = design.lens;
  const inputs = variablesOf(text, design.stock).flatMap((variable): readonly WhatIfInput[] => {
    const { path, value, unit, typed } = variable;
    const tries =
      isSideOfFormat(variable) || isEntry(variable)
        ? []
        : triesOf({ path, value, unit, focalLength, ...holderOf(path, design) });
    if (tries.length === 0) return [];
    const rank = FIRST.some((own) => own.test(path)) ? 'first' : typed ? 'written' : 'default';
    return [{ path, label: labelOf(path, design), unit, value, rank, tries }];
  });
  const first = FIRST.flatMap((own) => inputs.filter(({ path }) => own.test(path)));
  const of = (rank: WhatIfInput['rank']) => inputs.filter((input) => input.rank === rank);
  return [...first, ...of('written'), ...of('default')];
}

/** How near, how deep, how thick: what is open when everything else is bought. */
const FIRST: readonly RegExp[] = [/^focus\.nearest$/, /^holders\[\d+\]\.filmDepth$/, /^plywood\.thickness$/];

/** A format that is given by its name has no number in the file that could be another one. */
const isSideOfFormat = ({ path }: Pick<Variable, 'path'>): boolean => path === 'format';

function holderOf(path: string, { holders }: Design): { readonly holderThickness?: number } {
  const holder = holders[Number(/^holders\[(\d+)\]/.exec(path)?.[1])];
  return holder === undefined ? {} : { holderThickness: holder.thickness };
}

/** One of several numbers under a key: no key of its own that could be written. */
const isEntry = ({ path }: Pick<Variable, 'path'>): boolean => path.endsWith(']');

/** A path in words: the film depth of the paper holder, the lens's barrel diameter. */
function labelOf(path: string, { holders }: Design): string {
  const [, entry, key] = /^holders\[(\d+)\]\.(.+)$/.exec(path) ?? [];
  const holder = holders[Number(entry)];
  if (key !== undefined && holder) return `${inWords(key)} of the ${holder.name}`;
  if (path === 'focus.nearest') return 'nearest focus';
  return inWords(path);
}

/** `lens.barrel.frontDiameter` as lens barrel front diameter; entries of lists count from 1. */
const inWords = (path: string): string =>
  path
    .replace(/([a-z])([A-Z])/g, (_, end: string, begin: string) => `${end} ${begin.toLowerCase()}`)
    .replace(/\[(\d+)\]/g, (_, entry: string) => ` ${Number(entry) + 1}`)
    .replaceAll('.', ' ');
