import type { Build } from '../assembly/build.js';
import { lettering } from '../geometry/lettering.js';
import { boundsOfPoints, moved, type Path, type Point } from '../geometry/path.js';
import { apply } from '../geometry/placement.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart, Mark, Part } from '../model/part.js';
import { roomsOn } from './mark-room.js';
import { type Hiding, outOfSight } from './out-of-sight.js';

/** Cap heights that are tried for a part's mark, the largest first; below the last it cannot be read in wood. */
const HEIGHTS = [4, 3, 2.5] as const;
/** Solid between a stroke and every edge, the most first: beside an edge letters char with it, and look astray. */
const ROOMY = [12, 8, 6, 4, 3, 2] as const;
const LEAST = 1;
const TIGHT = [1.5, LEAST] as const;
/** From one line of words to the next, in cap heights. */
const LINE = 1.6;

interface Engraved {
  readonly parts: readonly Part[];
  /** Those that bear no mark. */
  readonly bare: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * Words become strokes, and each flat part gets its mark: id and revision, with an arrow where the part has one right
 * way round (`up`, or `lens` for what lies flat: towards the lens). A mark stands where it does not show in the finished
 * camera, or nowhere; scales show.
 */
export function engrave(
  parts: readonly Part[],
  { revision, build }: { readonly revision: string; readonly build: Pick<Build, 'parts' | 'setups' | 'stations'> },
): Engraved {
  const bare: { readonly id: string; readonly why: 'small' | 'seen' }[] = [];
  const hidingOn = outOfSight(build);
  const done = parts.map((part) => {
    if (part.kind !== 'flat') return part;
    const words = part.marks.flatMap(wordsOf);
    const own = markOf(part, { revision, taken: [...part.engraving, ...words], hiding: hidingOn(part) });
    if (typeof own === 'string') bare.push({ id: part.id, why: own });
    const mark = typeof own === 'string' ? [] : own;
    return { ...part, engraving: [...part.engraving, ...words, ...mark], marks: [] };
  });
  return { parts: done, bare: bare.map(({ id }) => id), findings: unmarked(bare) };
}

/** small-mark: which parts carry no mark, and why. */
function unmarked(bare: readonly { readonly id: string; readonly why: 'small' | 'seen' }[]): readonly Finding[] {
  if (bare.length === 0) return [];
  const told = [
    { why: 'small', words: 'too small to be read' },
    { why: 'seen', words: 'seen on the finished camera' },
  ].flatMap(({ why, words }) => {
    const ids = bare.filter((part) => part.why === why).map(({ id }) => id);
    return ids.length === 0 ? [] : [`${ids.join(', ')} (it would be ${words})`];
  });
  return [
    {
      rule: 'small-mark',
      level: 'note',
      message: `No mark is engraved on ${told.join(' and ')}. Sort ${bare.length === 1 ? 'it by its outline' : 'them by their outlines'}.`,
      value: bare.length,
      unit: bare.length === 1 ? 'part' : 'parts',
    },
  ];
}

const wordsOf = ({ text, x, y, height, turn }: Mark): readonly Path[] =>
  lettering(text, height).strokes.map((stroke) => ({ ...stroke, vertices: moved(stroke.vertices, { x, y, turn }) }));

interface MarkGiven {
  readonly revision: string;
  /** What is engraved already. */
  readonly taken: readonly Path[];
  readonly hiding: Hiding;
}

/** The mark as strokes; where there is none, whether it would be too small or seen. Saying all comes before saying it large. */
function markOf(part: FlatPart, { revision, taken, hiding }: MarkGiven): readonly Path[] | 'small' | 'seen' {
  if (part.kept) return 'seen';
  const arrow = arrowOf(part);
  const rooms = roomsOn(part, taken);
  let seen = false;
  for (const wordings of wordingsOf(part.id, revision, arrow)) {
    const hopeless = new Set<Block>();
    const blocks = new Map<number, readonly Block[]>();
    const ofHeight = (height: number) => {
      const made = blocks.get(height) ?? blocksOf(wordings, height);
      blocks.set(height, made);
      return made;
    };
    for (const clearances of [ROOMY, TIGHT])
      for (const height of HEIGHTS)
        for (const clearance of clearances)
          for (const block of ofHeight(height)) {
            if (hopeless.has(block)) continue;
            const at = rooms.nearest({ ...block, clearance }, (place) => isHidden(place, block, hiding));
            if (at) return shifted(block.strokes, at.x, at.y);
            // where the narrowest room is not to be had, no wider one is
            if (rooms.fits({ ...block, clearance: LEAST })) seen = true;
            else hopeless.add(block);
          }
  }
  return seen ? 'seen' : 'small';
}

interface Wording {
  readonly lines: readonly string[];
  readonly pointing: Arrow | null;
}

/** What a mark may say, the most first; each on one line, or the revision below the id. */
function wordingsOf(id: string, revision: string, arrow: Arrow | null): readonly (readonly Wording[])[] {
  const both = (pointing: Arrow | null): readonly Wording[] => [
    { lines: [`${id} ${revision}`], pointing },
    { lines: [id, revision], pointing },
  ];
  return [
    ...(arrow ? [both(arrow)] : []),
    both(null),
    ...(arrow ? [[{ lines: [id], pointing: arrow }]] : []),
    [{ lines: [id], pointing: null }],
  ];
}

interface Block {
  /** Of the capitals. */
  readonly letter: number;
  readonly strokes: readonly Path[];
  readonly width: number;
  readonly height: number;
}

const blocksOf = (wordings: readonly Wording[], height: number): readonly Block[] =>
  wordings.flatMap(({ lines, pointing }) => [0, Math.PI / 2].map((turn) => blockOf(lines, height, turn, pointing)));

/** Words and arrow as they lie on the part, turned, the lower left corner of their strokes at the origin. */
function blockOf(lines: readonly string[], height: number, turn: number, pointing: Arrow | null): Block {
  const words = lines.map((line, i) => {
    const { strokes, width } = lettering(line, height);
    return { strokes: shifted(strokes, 0, -i * LINE * height), width };
  });
  const after = (words[0]?.width ?? 0) + 0.8 * height;
  const upright = [
    ...words.flatMap(({ strokes }) => strokes),
    ...(pointing ? arrowStrokes(pointing, { x: after, height, turn }) : []),
  ];
  const strokes = upright.map((one) => ({ ...one, vertices: moved(one.vertices, { x: 0, y: 0, turn }) }));
  const { left, bottom, right, top } = boundsOfPoints(strokes.flatMap(({ vertices }) => vertices));
  return { letter: height, strokes: shifted(strokes, -left, -bottom), width: right - left, height: top - bottom };
}

const shifted = (strokes: readonly Path[], x: number, y: number): readonly Path[] =>
  strokes.map((stroke) => ({ ...stroke, vertices: moved(stroke.vertices, { x, y, turn: 0 }) }));

/**
 * Whether a block is hidden: straight on, looked at everywhere in steps of no more than half the height of its letters,
 * and aslant at its ends and its middle.
 */
function isHidden({ x, y }: Point, { width, height, letter }: Block, { straightOn, aslant }: Hiding): boolean {
  const at = (u: number, v: number): Point => ({ x: x + width * u, y: y + height * v });
  const across = Math.ceil((2 * width) / letter);
  const up = Math.ceil((2 * height) / letter);
  for (let i = 0; i <= across; i++) for (let k = 0; k <= up; k++) if (!straightOn(at(i / across, k / up))) return false;
  return [at(0, 0), at(0.5, 0.5), at(1, 1)].every(aslant);
}

interface Arrow {
  /** Along the part's own y, or against it. */
  readonly sign: 1 | -1;
  readonly to: 'up' | 'lens';
}

/** Where own y points in the camera: up, towards the lens, or neither. Parts that stand in several places get no arrow. */
function arrowOf({ placements, marks }: FlatPart): Arrow | null {
  const [first] = placements;
  if (!first || marks.length > 0) return null;
  const turned = placements.filter((p) => p.when === undefined).length;
  if (turned > 1) return null;
  const origin = apply(first.matrix, { x: 0, y: 0, z: 0 });
  const tip = apply(first.matrix, { x: 0, y: 1, z: 0 });
  const up = tip.y - origin.y;
  const back = tip.z - origin.z;
  if (Math.abs(up) > 0.9) return { sign: up > 0 ? 1 : -1, to: 'up' };
  if (Math.abs(back) > 0.9) return { sign: back > 0 ? -1 : 1, to: 'lens' };
  return null;
}

/** An arrow and the first letter of where it points, U or L, after words that are turned: the arrow keeps the part's own y. */
function arrowStrokes(
  { sign, to }: Arrow,
  { x, height, turn }: { readonly x: number; readonly height: number; readonly turn: number },
): readonly Path[] {
  const half = height / 2;
  const barb = 0.35 * height;
  const line = (...points: readonly (readonly [number, number])[]): Path => ({
    closed: false,
    vertices: points.map(([px, py]) => ({ x: px, y: py, bulge: 0 })),
  });
  // drawn upwards round the origin, then turned to where it points as the words see it
  const way = (sign > 0 ? 0 : Math.PI) - turn;
  const across = turn === 0 ? 2 * 0.3 * height : height;
  const arrow = [
    line([0, -half], [0, half]),
    line([-0.3 * height, half - barb], [0, half], [0.3 * height, half - barb]),
  ];
  const letter = lettering(to === 'up' ? 'U' : 'L', 0.8 * height).strokes;
  return [
    ...arrow.map((one) => ({ ...one, vertices: moved(one.vertices, { x: x + across / 2, y: half, turn: way }) })),
    ...shifted(letter, x + across + 0.4 * height, 0.1 * height),
  ];
}
