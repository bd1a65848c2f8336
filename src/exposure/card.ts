import type { Design, Sitting } from '../design/design.js';
import type { ExposureCard } from '../model/exposure-card.js';
import type { Remark, SittingDocument } from '../model/sitting.js';
import { metres } from '../units/print.js';
import type { SittingRefused } from './refused.js';
import { remarkIds } from './remarks.js';
import { sittingDocument } from './sitting.js';

/** What the card has to know of the camera beside its design. */
export interface CardCamera {
  readonly revision: string;
  /** Nearest focus, as a magnification. */
  readonly reaches: number;
}

/**
 * The exposures for every distance that the design lists, without filters and with each of its sets: the same as are
 * reckoned one by one. Without a list, or where today says it, there is one row: where the sitter is.
 *
 * @param today what differs from the design's sitting; which set is in the light makes no difference
 */
export function exposureCard(
  design: Design,
  today: Sitting,
  { revision, reaches }: CardCamera,
): ExposureCard | SittingRefused {
  const sitting = { ...design.sitting, ...today };
  const sets = [null, ...(sitting.filterSets ?? []).map(({ name }) => name)];
  const rows: SittingDocument[][] = [];
  for (const place of placesOf(sitting, today)) {
    const row: SittingDocument[] = [];
    for (const set of sets) {
      const one = sittingDocument(design, { ...today, ...place, filterSet: set ?? 'none' }, reaches);
      if ('refused' in one) return one;
      row.push(one);
    }
    rows.push(row);
  }
  return {
    camera: { name: design.name, revision, lens: design.lens.name },
    flangeDistance: design.lens.flangeDistance,
    speed: sitting.speed ?? null,
    paper: sitting.paper ?? null,
    process: sitting.process ?? 'negative',
    flashMost: sitting.flashMost ?? null,
    sets,
    rows: rows.map((exposures) => ({ exposures })),
    assumed: assumedIn(rows.flat()),
    warnings: warningsOf(rows),
  };
}

/** Who says where the sitter is today wants that one row. */
function placesOf({ distances = [] }: Sitting, today: Sitting): readonly Sitting[] {
  const placed = [today.subject, today.magnification, today.head].some((place) => place !== undefined);
  if (placed || distances.length === 0) return [{}];
  return [...new Set(distances)].sort((a, b) => a - b).map((subject) => ({ subject }));
}

/** Where the lamp stands is on the card in any case, and how several count was settled when they were set up. */
const NOT_ON_CARD = ['lampDistance', 'flashEnergy'];

/** Once each. */
const assumedIn = (sittings: readonly SittingDocument[]): readonly string[] => [
  ...new Set(
    sittings.flatMap(({ assumed }) =>
      assumed.filter(({ key }) => !NOT_ON_CARD.includes(key)).map(({ message }) => message),
    ),
  ),
];

/** What a remark on one sitting says of many; those that hang on no distance are said as they are. */
const ofMany: Readonly<Record<string, string>> = {
  'hold-still': 'The sitter must hold still for as long as the table says: give the head a rest.',
  'many-pops': 'More than one pop: a person moves or blinks from one to the next.',
  'shallow-depth': 'Too little is sharp about the eyes for a head that nothing holds: give it a rest.',
  'loss-unknown': 'Behind a time with a question mark stands a loss that nobody knows: make a test.',
  'beyond-table': 'Times outside the table in sitting.reciprocity: make a test.',
  'too-near': 'Nearer than the camera reaches.',
  'too-far': 'Farther than the camera is built for.',
  'dark-corners': 'The image circle does not reach the corners.',
  'blue-sensitive':
    'Filter factors from tables hold for film that sees all colours, and most papers do not: test them.',
  'other-speed': 'Carried over by arithmetic from a reading for another speed: trust the first test more.',
  'many-gels': 'More than four gels: each throws back some of the light, over the picture, too.',
};

/** Each kind of remark once, with the distances that it is for, where it is not for all. */
function warningsOf(rows: readonly (readonly SittingDocument[])[]): readonly string[] {
  const kinds = new Map<string, Remark>();
  for (const { remarks } of rows.flat())
    for (const remark of remarks) if (!kinds.has(remark.id)) kinds.set(remark.id, remark);
  const byWeight = [...kinds.values()].sort((a, b) => remarkIds.indexOf(a.id) - remarkIds.indexOf(b.id));
  return byWeight.map(({ id, message }) => {
    const text = ofMany[id];
    if (text === undefined) return message;
    const raised = rows.map((row) => row.some(({ remarks }) => remarks.some((remark) => remark.id === id)));
    if (raised.every((is) => is)) return text;
    return `At ${stretches(rows, raised).join(', ')}: ${text.charAt(0).toLowerCase()}${text.slice(1)}`;
  });
}

/** Distances that are raised, neighbours joined: `0.6 m to 0.9 m`. */
function stretches(rows: readonly (readonly SittingDocument[])[], raised: readonly boolean[]): readonly string[] {
  const name = (i: number) => {
    const distance = rows[i]?.[0]?.subjectDistance ?? null;
    return distance === null ? 'infinity' : metres(distance);
  };
  const found: string[] = [];
  for (let from = 0; from < rows.length; from++) {
    if (!raised[from]) continue;
    let to = from;
    while (raised[to + 1]) to++;
    found.push(from === to ? name(from) : `${name(from)} to ${name(to)}`);
    from = to;
  }
  return found;
}
