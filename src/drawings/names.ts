import type { Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { grown, type LabelRoom, meets, type Patch } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';

/** Words that name something, and where it is: any of the spots does. */
export interface Name {
  readonly text: string;
  /** On paper. */
  readonly spots: readonly Point[];
  readonly role: 'note' | 'number';
  readonly toward?: Point;
}

const letters = { size: LETTERS.size, heavy: false } as const;

/** How near the middle of words comes to what they name, and how far they go, mm. */
const NEAR = 3;
const FAR = 60;

/** Names where there is room for them, each led to its spot; what is hatched below words is blanked. */
export function named(names: readonly Name[], room: LabelRoom, hatching: readonly Mark[]): readonly Mark[] {
  const hatch = hatching.flatMap((mark) => (mark.kind === 'strokes' ? mark.paths : []));
  return names.flatMap(({ text, spots: [at, ...or], role, toward }): readonly Mark[] => {
    if (at === undefined) return [];
    const placed = room.place({
      text,
      letters,
      at,
      or,
      from: NEAR,
      to: FAR,
      ...(toward === undefined ? {} : { toward }),
    });
    if (placed === null) return [];
    const { rows, patch, leader } = placed;
    const covered = grown(patch, BARE);
    const onHatch = hatch.some(([a, b]) => a !== undefined && b !== undefined && meets({ a, b }, covered));
    return [
      ...(onHatch ? [blank(covered)] : []),
      ...(leader === null ? [] : ledTo(leader)),
      ...rows.map((row): Mark => ({ kind: 'words', role, at: row.start, text: row.text, anchor: 'start', ...LETTERS })),
    ];
  });
}

/** Round words on hatching, mm: within the margin that keeps them off lines. */
const BARE = 0.3;

const blank = ({ left, top, right, bottom }: Patch): Mark => ({
  kind: 'line',
  role: 'note',
  points: [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ],
  closed: true,
  fill: '#ffffff',
});

/** A leader ends in a dot where it ends inside an outline: ISO 128-22 (from memory). */
const ledTo = ([from, to]: readonly [Point, Point]): readonly Mark[] => [
  { kind: 'line', role: 'leader', points: [from, to], stroke: lines.leader },
  { kind: 'circle', role: 'leader', centre: from, radius: 0.45, fill: lines.leader.colour },
];
