import { assemble, type Camera } from '../camera/camera.js';
import { type Absent, type Figure, formula, keyed, measured, reckoned } from '../camera/figure.js';
import { type PlanFigures, planFigures } from '../camera/plan-figures.js';
import { END_AS_BUILT } from '../camera/setting-out.js';
import { sizeAsItStands } from '../camera/standing.js';
import type { Design } from '../design/design.js';
import { boundsOf } from '../geometry/path.js';
import type { FlatPart, Part } from '../model/part.js';

/** What the plan has under a name: a figure, none, or a word that a figure decides. */
export interface Entry {
  readonly path: string;
  readonly figure: Figure | Absent;
  readonly word: Word | null;
  /** Whether it is of a part: those are many, and are listed apart. */
  readonly ofPart: boolean;
}

interface Word {
  readonly what: string;
  readonly value: string | boolean;
  /** How the figure decides. */
  readonly because: string;
}

/** Every figure of a design's plan, in the order of the plan. */
export function entriesOf(asked: Design): readonly Entry[] {
  const { design, camera } = sizeAsItStands(asked);
  const build = assemble(camera);
  const figures = planFigures(design, camera, build);
  const words = wordsOf(figures, camera);
  return [
    ...Object.entries(figures).flatMap(([group, own]) => [
      ...numbersOf(own, group),
      ...words.filter(({ path }) => path.startsWith(group)),
    ]),
    ...build.parts.filter((part) => part.kind !== 'bought').flatMap((part) => sizesOf(part, design, camera)),
  ];
}

type Tree = Figure | Absent | string | boolean | { readonly [key: string]: Tree } | readonly Tree[];

const isFigure = (node: object): node is Figure | Absent => 'symbol' in node && 'value' in node;

function numbersOf(node: unknown, path: string): readonly Entry[] {
  if (typeof node !== 'object' || node === null) return [];
  if (isFigure(node)) return [{ path, figure: node, word: null, ofPart: false }];
  if (Array.isArray(node)) return (node as readonly Tree[]).flatMap((own, i) => numbersOf(own, `${path}[${i}]`));
  return Object.entries(node).flatMap(([key, own]) => numbersOf(own, `${path}.${key}`));
}

/** Where the plan has a word, the figure that decides which. */
function wordsOf({ slide, spacers }: PlanFigures, { settingOut: rod, figures }: Camera): readonly Entry[] {
  const word = (path: string, figure: Figure, own: Word): Entry => ({ path, figure, word: own, ofPart: false });
  return [
    word('slide.passesInsideRearBox', rod.figures.roomRoundLens, {
      what: 'whether the lens passes inside the rear box',
      value: slide.passesInsideRearBox,
      because: 'the lens passes inside the rear box where this room is not below 0',
    }),
    slide.limitedBy === END_AS_BUILT
      ? word('slide.limitedBy', rod.figures.reachable, {
          what: 'what stops the slide from reaching nearer',
          value: slide.limitedBy,
          because: 'the boxes would overlap enough farther out too',
        })
      : word('slide.limitedBy', rod.overlapRequired, {
          what: 'what stops the slide from reaching nearer',
          value: slide.limitedBy,
          because: 'it is what governs the overlap of the boxes that is needed',
        }),
    ...spacers.flatMap(({ under, holder }, i) => {
      const film = figures.given.holders[i]?.filmDepth;
      if (!film) return [];
      const depth = formula`${film} - ${figures.glassDepth}`;
      return [
        word(`spacers[${i}].under`, reckoned('d', `film of the ${holder} behind that of the glass`, depth), {
          what: `where the spacer of the ${holder} lies`,
          value: under,
          because: 'under the glass where the film lies deeper, under the holder where the glass does',
        }),
      ];
    }),
  ];
}

const DRAWN = 'the outline of the part as it is drawn';

function sizesOf(part: Exclude<Part, { kind: 'bought' }>, design: Design, camera: Camera): readonly Entry[] {
  const of = `${part.name} (${part.id})`;
  const entry = (key: string, figure: Figure): Entry => ({
    path: `parts.${part.id}.${key}`,
    figure,
    word: null,
    ofPart: true,
  });
  if (part.kind === 'printed')
    return [
      entry('width', measured('b', `width of the ${of}`, part.size[0], PRINTED)),
      entry('height', measured('h', `height of the ${of}`, part.size[1], PRINTED)),
      entry('thickness', measured('l', `height on the bed of the ${of}`, part.size[2], PRINTED)),
    ];
  const { left, right, bottom, top } = boundsOf(part.outline);
  const end = (symbol: string, what: string, value: number) => measured(symbol, what, value, '');
  const across = formula`${end('x_2', 'its right end', right)} - ${end('x_1', 'its left end', left)}`;
  const up = formula`${end('y_2', 'its upper end', top)} - ${end('y_1', 'its lower end', bottom)}`;
  return [
    entry('width', reckoned('b', `width of the ${of}`, across, { source: DRAWN })),
    entry('height', reckoned('h', `height of the ${of}`, up, { source: DRAWN })),
    entry('thickness', plyOf(part, design, camera)),
  ];
}

const PRINTED = 'the shape that is printed';

/** The sheet that a part is cut from. */
function plyOf({ material, thickness }: FlatPart, { stock, boards, stops }: Design, { figures }: Camera): Figure {
  const { ply } = figures.given;
  if (thickness === ply.value) return ply;
  const board = (['channel', 'lip', 'slide'] as const).find((name) => boards[name].material === material);
  if (board !== undefined) return keyed('t_b', 'thickness of a board', `workshop.boards.${board}`, thickness);
  if (stops?.board.material === material)
    return keyed('t_b', 'thickness of the board of the stops', 'stops.board', thickness);
  const k = stock.findIndex((entry) => entry.thickness === thickness);
  return k < 0 ? ply : keyed('t_o', 'thickness of another sheet', `stock[${k}].thickness`, thickness);
}
