import { askUnit } from '../units/length.js';
import { mm, plainNumber, seconds } from '../units/print.js';
import type { Fault } from './explain.js';
import { orList } from './fields.js';
import { slugOf } from './names.js';
import type { Written } from './schema.js';

type WrittenSitting = NonNullable<Written['sitting']>;

const fault = (path: Fault['path'], what: string, accepted: string): Fault => ({
  path: ['sitting', ...path],
  at: 'value',
  what,
  accepted,
});

/** Keys of which one says what another would say as well. */
export const ALTERNATIVES: readonly (readonly (keyof WrittenSitting)[])[] = [
  ['subject', 'magnification', 'head'],
  ['meterTime', 'flashEnergy'],
];

/** What cannot be true of two keys of the sitting together. */
export function sittingFaults({ sitting, lens }: Written): readonly Fault[] {
  if (sitting === undefined) return [];
  return [
    ...ALTERNATIVES.flatMap((keys) => saidTwice(sitting, keys)),
    ...subjectsHaveAnImage(sitting, lens.focalLength),
    ...setsAddUp(sitting),
    ...setIsKnown(sitting),
    ...tableRises(sitting),
  ];
}

function saidTwice(sitting: WrittenSitting, keys: readonly (keyof WrittenSitting)[]): readonly Fault[] {
  const [first, second] = keys.filter((key) => sitting[key] !== undefined);
  if (first === undefined || second === undefined) return [];
  return [
    fault([second], `It stands beside ${first}, which says the same in another way.`, `Keep one: ${orList(keys)}.`),
  ];
}

function subjectsHaveAnImage({ subject, distances = [] }: WrittenSitting, f: number): readonly Fault[] {
  const places: readonly (readonly [Fault['path'], number])[] = [
    ...(subject === undefined ? [] : [[['subject'], subject] as const]),
    ...distances.map((distance, i) => [['distances', i], distance] as const),
  ];
  return places
    .filter(([, distance]) => distance <= f)
    .map(([path, distance]) =>
      fault(
        path,
        `A subject at ${mm(distance)} lies within the focal length of ${mm(f)}: it has no image.`,
        `${askUnit(distance)}Write a longer distance from the front principal plane, such as 1.2 m.`,
      ),
    );
}

function setsAddUp({ filterSets = [] }: WrittenSitting): readonly Fault[] {
  const names = filterSets.map(({ name }) => slugOf(name));
  return filterSets.flatMap(({ filters }, i) => [
    ...(names.indexOf(slugOf(filterSets[i]?.name ?? '')) === i
      ? []
      : [fault(['filterSets', i, 'name'], 'Another set has this name already.', 'Give each set its own name.')]),
    ...filters.flatMap(({ factor, density }, k) =>
      (factor === undefined) === (density === undefined)
        ? [
            fault(
              ['filterSets', i, 'filters', k],
              factor === undefined ? 'It has neither a factor nor a density.' : 'It has a factor and a density.',
              'Write one of them: factor: 1.5, or density: 0.2.',
            ),
          ]
        : [],
    ),
  ]);
}

function setIsKnown({ filterSet, filterSets = [] }: WrittenSitting): readonly Fault[] {
  const names = [...filterSets.map(({ name }) => name), 'none'];
  if (filterSet === undefined || names.includes(filterSet)) return [];
  return [fault(['filterSet'], `No set is called "${filterSet}".`, `Write ${orList(names)}.`)];
}

function tableRises({ reciprocity }: WrittenSitting): readonly Fault[] {
  if (typeof reciprocity !== 'object') return [];
  return reciprocity.flatMap(({ metered, given }, i) => {
    const before = reciprocity[i - 1];
    if (given < metered)
      return [
        fault(
          ['reciprocity', i, 'given'],
          `A long exposure asks for more, never for less: ${seconds(given)} for ${seconds(metered)}.`,
          `Write ${plainNumber(metered)} s or more.`,
        ),
      ];
    if (before === undefined || (metered > before.metered && given > before.given)) return [];
    return [
      fault(
        ['reciprocity', i, metered > before.metered ? 'given' : 'metered'],
        'It does not rise from the entry before it.',
        'Write the shortest time first.',
      ),
    ];
  });
}
