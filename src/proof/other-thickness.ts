import type { Build } from '../assembly/build.js';
import { ROUNDING } from '../assembly/limit.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart, Join, Part } from '../model/part.js';
import { circleOfConfusion, registerTolerance } from '../optics/depth.js';
import { diagonal } from '../optics/image-circle.js';
import { mm } from '../units/print.js';
import { layersUnder } from './register.js';
import { caliperOnWood } from './straying.js';

/** Fingers of two sheets that differ by more do not enter, or stand loose: the limit of thickness-spread. */
const MOST = 0.3;

/**
 * other-thickness: a part that is cut from another sheet than its neighbours were. Its outline stays as it was drawn, since
 * the slots round it are cut; its faces do not.
 *
 * @param thickness of the sheet that it is cut from now
 */
export function otherThickness(design: Design, build: Build, part: FlatPart, thickness: number): readonly Finding[] {
  const more = thickness - part.thickness;
  if (Math.abs(more) <= caliperOnWood.value + ROUNDING) return [];
  const by = mm(hundredth(Math.abs(more)));
  const meets = neighboursOf(build.parts, part);
  const entered = meets.filter((join) => join.by === 'finger' || join.by === 'press');
  const stacked = meets.filter((join) => join.by === 'glue' || join.by === 'rest');
  const running = meets.filter((join) => join.by === 'slide' || join.by === 'screw');
  const changes = [
    ...(entered.length === 0
      ? []
      : [
          `slots and fingers of ${idsOf(entered)} are cut for ${mm(part.thickness)}, so ${more > 0 ? `it goes in ${by} too tight, and stands ${by} proud at the corners` : `it has ${by} of play in them, and lies ${by} back at the corners`}`,
        ]),
    ...(stacked.length === 0
      ? []
      : [`what lies on it or under it (${idsOf(stacked)}) stands ${by} ${more > 0 ? 'farther off' : 'nearer'}`]),
    ...(running.length === 0 ? [] : [`beside ${idsOf(running)} it has ${by} ${more > 0 ? 'less' : 'more'} room`]),
  ];
  const tooFar = entered.length > 0 && more > MOST;
  return [
    {
      rule: 'other-thickness',
      level: tooFar ? 'error' : 'warning',
      value: thickness,
      limit: part.thickness,
      unit: 'mm',
      message: `${part.id} is drawn for ${mm(part.thickness)} and cut from ${mm(thickness)}: ${changes.length > 0 ? changes.join('; ') : 'nothing of the camera lies against it'}.`,
      hint: hintFor(more, entered.length > 0),
    },
    ...registerMoves(design, build, part, more),
  ];
}

function hintFor(more: number, entered: boolean): string {
  if (!entered) return 'Measure what it carries once it is in, and make the difference up with card.';
  return more > 0
    ? 'Plane its edges down where they enter, or cut it from a sheet of the old thickness.'
    : 'Lay strips of paper in its joints with the glue, or cut it from a sheet of the old thickness.';
}

/** other-thickness: what such a part does to the register of each holder. */
function registerMoves(design: Design, build: Build, { id }: FlatPart, more: number): readonly Finding[] {
  const { short, long } = design.format.image;
  const limit = registerTolerance(design.lens.maxAperture, circleOfConfusion(diagonal({ width: short, height: long })));
  return layersUnder(design, build).flatMap(({ holder, glass, film }): readonly Finding[] => {
    const layers = (stack: readonly Part[]) => stack.filter((part) => part.id === id).length;
    const moved = (layers(glass) - layers(film)) * more;
    if (moved === 0) return [];
    const shim = mm(hundredth(Math.abs(moved)));
    return [
      {
        rule: 'other-thickness',
        level: 'warning',
        value: moved,
        limit,
        unit: 'mm',
        message: `With ${id} of that sheet the ground glass stands ${shim} ${moved > 0 ? 'farther behind' : 'farther ahead of'} the film of the ${holder} than before.`,
        hint: id.startsWith('SP')
          ? 'Ask for the whole spacer instead: tailboard spacer with --thickness chooses plies and shims anew.'
          : `Glue it, measure, and ${moved > 0 ? 'take out' : 'add'} shims of ${shim} under the glass.`,
      },
    ];
  });
}

/** The made parts that a part meets, from either side of each join; itself left out. */
function neighboursOf(parts: readonly Part[], { id, joins }: FlatPart): readonly Join[] {
  const bought = new Set(parts.filter(({ kind }) => kind === 'bought').map((part) => part.id));
  const from = parts.flatMap((other) =>
    other.joins.filter(({ to }) => to === id && other.id !== id).map(({ by }): Join => ({ to: other.id, by })),
  );
  return [...joins, ...from].filter(({ to }) => to !== id && !bought.has(to));
}

const idsOf = (joins: readonly Join[]): string => [...new Set(joins.map(({ to }) => to))].join(', ');
const hundredth = (length: number): number => Math.round(length * 100) / 100;
