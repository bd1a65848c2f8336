import type { Build } from '../assembly/build.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { partOf } from '../assembly/measure.js';
import { spanOf } from '../assembly/span-of.js';
import { filmStands, type Holder } from '../design/design.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { Finding } from '../model/finding.js';
import { filmPlane, magnificationAt } from '../optics/conjugates.js';
import { magnification, mm, tenth } from '../units/print.js';
import { holderSeat, lensSeat, typedGlassDepth } from './landmarks.js';
import type { ProofRule } from './proof-rule.js';

/** The focus scale as it is engraved: lines and words on the keepers, an index line for each holder on the sole. */

/** A word and the line that it stands at, where they lie in the camera. */
interface Line {
  readonly text: string;
  readonly x: number;
  readonly z: number;
}

/** Each word of a part with the engraved line nearest to it on its side of the axis. */
const linesOn = (build: Build, id: string): readonly Line[] => paired(build, id, nearest);

/** The numbers of index lines that lie close have moved apart, in the order of the lines. */
const indexLinesOn = (build: Build): readonly Line[] =>
  paired(build, 'R4U', (lines, words) => (lines.length === words.length ? lines : nearest(lines, words)));

const nearest: Pairing = (lines, words) =>
  words.map(({ z }) => lines.toSorted((a, b) => Math.abs(a.z - z) - Math.abs(b.z - z))[0]);

/** The line of each word; both in their order along the slide. */
type Pairing = (lines: readonly Point3[], words: readonly Point3[]) => readonly (Point3 | undefined)[];

function paired(build: Build, id: string, lineOf: Pairing): readonly Line[] {
  const part = partOf(build, id);
  const [place] = part.placements;
  if (part.kind !== 'flat' || place === undefined) return [];
  const at = (x: number, y: number) => apply(place.matrix, { x, y, z: part.thickness });
  const strokes = part.engraving.map(({ vertices }) => {
    const n = vertices.length;
    return at(vertices.reduce((sum, { x }) => sum + x, 0) / n, vertices.reduce((sum, { y }) => sum + y, 0) / n);
  });
  const words = part.marks.map(({ text, x, y, height }) => ({ text, ...at(x, y + height / 2) }));
  return [1, -1].flatMap((side) => {
    const here = ({ x }: Point3): boolean => x > 0 === side > 0;
    const byPlace = (a: Point3, b: Point3): number => a.z - b.z;
    const lines = strokes.filter(here).sort(byPlace);
    const own = words.filter(here).sort(byPlace);
    const theirs = lineOf(lines, own);
    return own.flatMap(({ text, x }, i) => {
      const line = theirs[i];
      return line === undefined ? [] : [{ text, x, z: line.z }];
    });
  });
}

/** The magnification that a line says: `1:2.5 +1.0`, a distance in metres, or `inf`; null where it says something else. */
function said(text: string, focalLength: number): number | null {
  if (text === 'inf') return 0;
  const ratio = /^1:(\d+(?:\.\d+)?)(?: |$)/.exec(text);
  if (ratio) return 1 / Number(ratio[1]);
  return /^\d+(?:\.\d+)?$/.test(text) ? magnificationAt(focalLength, 1000 * Number(text)) : null;
}

/** A line on wood is read to half a millimetre; a choice of ours. */
const READS = 0.5;

const SCALES = [
  { id: 'T3S', of: 'magnifications' },
  { id: 'T3', of: 'distances' },
] as const;

/** scale-sense: lines lie farther back for larger magnifications, and each holder's index reads what its film is focused at. */
export const scaleSense: ProofRule = (design, build) => {
  const { lens, holders, groundGlass } = design;
  const f = lens.focalLength;
  const indexes = indexLinesOn(build);
  const glass = typedGlassDepth(design);
  // where the emulsion lies beyond its place at infinity, at the closest seat, less its depth
  const beyond = holderSeat(build) - filmPlane({ ...lens, seat: lensSeat(design, build) }, 0);
  return SCALES.flatMap(({ id, of }) => {
    const lines = linesOn(build, id)
      .flatMap((line) => {
        const m = said(line.text, f);
        return m === null ? [] : [{ ...line, m }];
      })
      .sort((a, b) => a.m - b.m);
    const backwards = lines.find(({ z }, i) => i > 0 && z <= (lines[i - 1]?.z ?? z) + ROUNDING);
    if (backwards !== undefined) return [runsBackwards(of, backwards, lines)];
    const [first] = lines;
    if (first === undefined) return [blank(of)];
    return holders.flatMap((holder, i) => {
      const index = indexes.find(({ text, x }) => text.split('+').includes(String(i + 1)) && x > 0 === first.x > 0);
      if (index === undefined) return [unmarked(of, holder, i)];
      const depth = Math.max(filmStands(holder, groundGlass), glass);
      // at the place where the index meets a line, the emulsion stands off the plane that the line says by
      const off = lines.map((line) => ({ line, by: beyond + depth + line.z - index.z - f * line.m }));
      const worst = off.reduce((most, one) => (Math.abs(one.by) > Math.abs(most.by) ? one : most));
      const finding: Finding = {
        rule: 'scale-sense',
        level: 'error',
        value: worst.by,
        limit: READS,
        unit: 'mm',
        message: `The scale of ${of} misleads: with the ${holder.name} the index line ${i + 1} stands at ${worst.line.text} where the camera is focused ${mm(tenth(Math.abs(worst.by)))} ${worst.by > 0 ? 'nearer' : 'farther'} than it says.`,
        hint: `Scratch a new line ${mm(tenth(Math.abs(worst.by)))} ${worst.by > 0 ? 'behind' : 'ahead of'} the engraved one on the sole.`,
      };
      return unless(Math.abs(worst.by) <= READS + ROUNDING, finding);
    });
  });
};

const runsBackwards = (of: string, line: Line & { readonly m: number }, lines: readonly Line[]): Finding => ({
  rule: 'scale-sense',
  level: 'error',
  value: line.z - (lines[lines.indexOf(line) - 1]?.z ?? line.z),
  limit: 0,
  unit: 'mm',
  message: `The scale of ${of} runs backwards: its line for ${magnification(line.m)} lies no farther from the panel than the one for less magnification.`,
  hint: 'Turn the keeper round, end for end, before it is screwed down; or do not trust the scale, and focus on the glass.',
});

/** A scale of which no line can be read. */
const blank = (of: string): Finding => ({
  rule: 'scale-sense',
  level: 'error',
  value: 0,
  limit: 1,
  unit: 'lines',
  message: `The scale of ${of} is blank: no line on its keeper says a ${of === 'distances' ? 'distance' : 'magnification'}.`,
  hint: 'Focus on the glass, and scratch a line for what is sharp; or engrave the keeper before it is screwed down.',
});

/** A holder that has no line of its own to read the scale at. */
const unmarked = (of: string, { name }: Holder, i: number): Finding => ({
  rule: 'scale-sense',
  level: 'error',
  value: 0,
  limit: 1,
  unit: 'lines',
  message: `The scale of ${of} cannot be read with the ${name}: the sole has no index line ${i + 1} beside it.`,
  hint: 'Focus on the glass at a known distance, and scratch the line on the sole where the scale says it.',
});

/** Wood behind the last index line; a choice of ours. */
const LINE_ROOM = 2;

/** scale-sense: the index line of each holder must lie on the sole. */
export const indexRoom: ProofRule = ({ holders }, build) => {
  const rear = spanOf(build, 'R4U').z[1];
  const rooms = indexLinesOn(build).flatMap(({ text, z }) =>
    text.split('+').flatMap((mark) => {
      const index = Number(mark) - 1;
      const holder = holders[index];
      return holder === undefined ? [] : [{ holder, index, room: rear - z }];
    }),
  );
  const [first, ...others] = rooms;
  if (first === undefined) return [];
  const { holder, index, room } = others.reduce(
    (least, one) => (one.room < least.room - ROUNDING ? one : least),
    first,
  );
  return unless(room >= LINE_ROOM - ROUNDING, {
    rule: 'scale-sense',
    level: 'warning',
    value: room,
    limit: LINE_ROOM,
    unit: 'mm',
    about: `holders[${index}].filmDepth`,
    message:
      room < 0
        ? `The focus scale cannot be read with the ${holder.name}: its index line falls ${mm(tenth(-room))} behind the sole.`
        : `The index line of the ${holder.name} lies ${mm(tenth(room))} from the sole's rear edge: it breaks off.`,
    hint: `Glue a strip of ${mm(Math.ceil(LINE_ROOM - room + 3 - ROUNDING))} to the sole’s rear edge and carry the line over.`,
  });
};
