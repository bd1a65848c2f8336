import type { Point } from '../geometry/path.js';
import type { Move } from '../model/assembly-move.js';
import { CAMERA } from '../model/assembly-steps.js';
import type { Drawing, Mark } from '../model/page.js';
import { type AtStep, atStep } from './at-step.js';
import type { DrawingGiven } from './given.js';
import { labelRoom } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';
import { type Numbers, numberedOf, numbersIn, numberText, roomiest } from './numbers.js';
import { chainLine, extentOf, hundredths, type Plot, plotted } from './plot.js';
import { type Seen, spotsOf, wellSeen } from './well-seen.js';

export interface StepGiven extends DrawingGiven {
  readonly moves: readonly Move[];
}

type Paths = readonly (readonly Point[])[];

/** Higher than this a step's drawing is not, mm, so that its words stand on the same page. */
const HIGHEST = 120;
/** For the words that tell from where it is seen. */
const HEAD = 8;
/** Left and right of what is drawn, above and below it, for the numbers. */
const SIDE = 24;
const ABOVE = 7;
/** No larger than true size. */
const LARGEST = 1;

/** What one step brings to what is there, pulled out along the way that it comes. */
export function stepDrawing({ build, on, room, moves }: StepGiven, step: number): Drawing {
  const at = atStep(build, moves, step);
  const added = addedKeys(at);
  const seen = wellSeen(at, {
    added,
    on,
    underneath: at.arrivals.some(({ into }) => into === CAMERA) ? 'looked at' : 'turned over',
  });
  const free = { width: room.width - 2 * SIDE, height: Math.min(HIGHEST, room.height) - HEAD - 2 * ABOVE };
  const title = moves.find((move) => move.step === step)?.title ?? '';
  const { height, marks } = roomiest((shrink) => onPaper(seen, { at, added, width: room.width, free, shrink }));
  return {
    name: `step-${String(step).padStart(2, '0')}`,
    title: `Step ${step}: ${title}`,
    description: `${title}, without perspective. ${seen.look.words}.`,
    scale: null,
    width: room.width,
    height,
    marks,
  };
}

/** All that comes, but for a whole that is laid down and worked on. */
const addedKeys = ({ arrivals }: AtStep): ReadonlySet<string> =>
  new Set(
    arrivals.flatMap(({ pieces, whole, way }) => (whole !== null && way === null ? [] : pieces.map(({ key }) => key))),
  );

/** Keys of what comes together, each once: what came before its whole is not drawn again with it. */
function comingApart({ arrivals }: AtStep): readonly ReadonlySet<string>[] {
  const told = new Set<string>();
  return arrivals.map(({ pieces }) => {
    const own = pieces.map(({ key }) => key).filter((key) => !told.has(key));
    for (const key of own) told.add(key);
    return new Set(own);
  });
}

interface Sheet {
  readonly at: AtStep;
  readonly added: ReadonlySet<string>;
  readonly width: number;
  readonly free: { readonly width: number; readonly height: number };
  readonly shrink: number;
}

function onPaper(
  { look, lines: pieces, ways, points }: Seen,
  { at, added, width, free, shrink }: Sheet,
): Numbers & { readonly height: number } {
  const bounds = extentOf([...pieces.flatMap(({ seen }) => seen), ...ways]);
  const size = { width: bounds.right - bounds.left, height: bounds.top - bounds.bottom };
  const scale = shrink * Math.min(LARGEST, free.width / size.width, free.height / size.height);
  const plot: Plot = plotted(scale, {
    x: hundredths(width / 2 - (scale * (bounds.left + bounds.right)) / 2),
    y: hundredths(HEAD + ABOVE + scale * bounds.top),
  });
  const height = hundredths(HEAD + 2 * ABOVE + scale * size.height);
  const paths = (of: (key: string) => boolean): Paths =>
    pieces.flatMap(({ key, seen }) => (of(key) ? seen.map((path) => path.map(plot.at)) : []));
  const [addedPaths, therePaths] = [paths((key) => added.has(key)), paths((key) => !added.has(key))];
  const wayPaths = ways.map((path) => path.map(plot.at));
  const words = labelRoom({ width, height });
  words.keepClear([...addedPaths, ...therePaths, ...wayPaths]);
  words.take({ left: 0, top: 0, right: width, bottom: HEAD });
  const named = numberedOf(at.arrivals.filter(({ whole, way }) => whole === null || way !== null));
  const numbers = numbersIn(
    named.map((one) => ({
      text: numberText(one),
      spots: spotsOf(one.keys, { points, pieces }).map(plot.at),
    })),
    words,
  );
  return {
    homeless: numbers.homeless,
    height,
    marks: [
      {
        kind: 'words',
        role: 'note',
        at: { x: 0, y: LETTERS.size },
        text: `${look.words}.`,
        anchor: 'start',
        ...LETTERS,
      },
      ...strokes('there', therePaths),
      ...strokes(
        'way',
        wayPaths.flatMap((path) => path.slice(1).flatMap((to, i) => chainLine(path[i] as Point, to, 1))),
      ),
      ...comingApart(at).flatMap((keys) =>
        strokes(
          'added',
          paths((key) => added.has(key) && keys.has(key)),
        ).map((mark) => ({
          ...mark,
          id: `comes-${[...keys][0]}`,
        })),
      ),
      ...numbers.marks,
    ],
  };
}

const strokes = (role: 'added' | 'there' | 'way', paths: Paths): readonly Mark[] =>
  paths.length === 0 ? [] : [{ kind: 'strokes', role, paths, stroke: lines[role === 'way' ? 'axis' : role] }];
