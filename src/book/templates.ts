import { boundsOf, type ClosedPath, type Point } from '../geometry/path.js';
import { box, circle, rectangle } from '../geometry/shapes.js';
import type { BoughtPart } from '../model/part.js';
import { note, numbered, paragraph } from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';
import { mm, plainNumber } from '../units/print.js';
import type { Chapter } from './chapter.js';
import { strip } from './strips.js';
import { type Template, templatePages } from './template-page.js';
import {
  centreCross,
  dimensionedDrawing,
  fitsPaper,
  lettered,
  type Measure,
  middleOf,
  type Shape,
  sizeOf,
  trueSize,
  trueSizeLettered,
} from './template-shapes.js';

interface FeltGiven {
  readonly free: number;
  readonly width: number;
  /** From the front edge of the box to the front edge of each band. */
  readonly bands: readonly number[];
  readonly boxLength: number;
  readonly boxSide: number;
}

export interface TemplatesGiven {
  /** Everything that is bought, and how many of it. */
  readonly bought: readonly { readonly part: BoughtPart; readonly count: number }[];
  /** Ids of what is cut. */
  readonly cut: readonly string[];
  readonly glass: { readonly frosted: 'lens' | 'eye' };
  /** Layers of board that the fence at the open end is glued of. */
  readonly fenceLayers: number;
  /** Round the rear box; and round a middle box, where there is one. */
  readonly felt: FeltGiven;
  readonly middleFelt?: FeltGiven;
  readonly well: WellGiven;
  readonly holders: readonly {
    readonly id: string;
    readonly name: string;
    readonly filmDepth: number;
    /** Lies on a spacer for the picture, and on its pins. */
    readonly onSpacer: boolean;
  }[];
  readonly tripod: {
    readonly thread: string;
    /** The block below the tailboard, with its hole. */
    readonly doubler: Shape;
    /** Middle of the hole, from the tailboard's front edge. */
    readonly fromFront: number;
    /** From there back to the edge of the knob, the slide pushed in. */
    readonly toKnob: number;
    readonly board: { readonly width: number; readonly length: number };
  };
}

/** Where holders lie on the back, seen from behind with the open end up; from the axis. */
export interface WellGiven {
  readonly plate: ClosedPath;
  readonly opening: { readonly width: number; readonly height: number };
  /** Between the fences at the sides. */
  readonly width: number;
  /** From the axis to the fence at the closed end, and to the one at the open end. */
  readonly closed: number;
  readonly open: number;
  /** A holder has so much play to each fence. */
  readonly play: number;
  readonly fenceHeight: number;
  readonly openFenceHeight: number;
  readonly pins: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly pinProud: number;
  /** A hole for a pin is so much wider. */
  readonly pinPlay: number;
}

type Counted = TemplatesGiven['bought'][number];

/** Bought plates that come as they are, or are cut to the figures of their step. */
const AS_BOUGHT = [
  /-nut$/,
  /-washer$/,
  /^lock-/,
  /^tripod-/,
  /^lens-/,
  /^velvet-/,
  /^lid-felt-/,
  // sizes of glass and foam stand in the list of what to buy
  /^tank-(?:glass|pad|cord|nut|seal|velvet)-/,
  /sheet-\d+$/,
  // drawn round the wood that they lie on
  /^(?:channel|rail-packing|filter|carrier|guide)-card$/,
  /^stop-felt$/,
] as const;

/** So do holders that stand on no pins. */
export const comesAsBought = (part: BoughtPart): boolean =>
  AS_BOUGHT.some((ids) => ids.test(part.id)) ||
  (part.role === 'holder' && part.shape.form === 'plate' && part.shape.holes.length === 0);

export function templates(given: TemplatesGiven): Chapter {
  const sets = templateSets(given);
  return {
    title: 'Templates at true size',
    blocks: [
      paragraph(
        'The laser does not cut glass, card and felt, and it does not make holders. These pages show their edges at true size.',
      ),
      ...numbered([
        'Print at 100 %: no “fit to page”, no margins added.',
        'Measure the bar on each page. If it is not 100 mm long, print again with other settings.',
        'Stick the page to the card with a dry glue stick, and cut along the middle of the lines. For felt, mark the length with chalk and cut with a fresh blade along a steel rule.',
      ]),
      note(
        'Paper grows in damp air by a few tenths of a millimetre over a long page. Where a figure is given, the figure counts.',
      ),
      ...sets.flatMap(({ title, all }) => templatePages(title, all)),
    ],
  };
}

/** All templates, by what they are for. */
export function templateSets(
  given: TemplatesGiven,
): readonly { readonly title: string; readonly all: readonly Template[] }[] {
  const own = plates(given).filter(({ part }) => !comesAsBought(part));
  const sets = SETS.map(({ title, ids, make }) => {
    const mine = own.filter(({ part }) => ids.test(part.id));
    return { title, known: mine.map(({ part }) => part.id), all: make(mine, given) };
  });
  const known = new Set(sets.flatMap((set) => set.known));
  const unknown = own.filter(({ part }) => !known.has(part.id));
  if (unknown.length > 0) throw new Error(`nobody says how ${unknown.map(({ part }) => part.id).join(', ')} is made`);
  return sets.filter(({ all }) => all.length > 0);
}

const plates = ({ bought }: TemplatesGiven): readonly Counted[] =>
  bought.filter(({ part, count }) => part.shape.form === 'plate' && count > 0);

interface TemplateSet {
  readonly title: string;
  readonly ids: RegExp;
  readonly make: (own: readonly Counted[], given: TemplatesGiven) => readonly Template[];
}

const SETS: readonly TemplateSet[] = [
  {
    title: 'Ground glass',
    ids: /^ground-glass$/,
    make: (own, given) => own.flatMap(({ part }) => groundGlass(part, given)),
  },
  {
    title: 'Cards, clips and the fence at the open end',
    ids: /-card$|^glass-pad$|^glass-clip$|^fence-open$/,
    make: smallThings,
  },
  {
    title: 'Felt round the middle box',
    ids: /^felt-middle-/,
    make: (own, { middleFelt }) => (middleFelt ? feltBands(own, middleFelt, 'middle') : []),
  },
  { title: 'Felt round the rear box', ids: /^felt-(?!middle-)/, make: (own, { felt }) => feltBands(own, felt, 'rear') },
  { title: 'Frames of shim', ids: /^glass-shim-|^SP\d+-shim-|^shim-\d|^tank-shim-/, make: shimFrames },
  { title: 'The seat, for holders that you make', ids: /^holder-\d+$/, make: seat },
  { title: 'Where the tripod goes', ids: /^$/, make: (_, given) => tripodPlace(given) },
];

const shapeOf = (part: BoughtPart): Shape => {
  if (part.shape.form !== 'plate') throw new Error(`${part.id} is no plate`);
  return part.shape;
};

const thicknessOf = (part: BoughtPart): number => (part.shape.form === 'plate' ? part.shape.thickness : 0);

const sizeText = (shape: Shape): string => {
  const { width, height } = sizeOf(shape.outline);
  return `${plainNumber(width, 2)} × ${plainNumber(height, 2)}`;
};

const pieces = (count: number): string => (count === 1 ? 'one piece' : `${count} pieces`);
const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function groundGlass(part: BoughtPart, { glass }: TemplatesGiven): readonly Template[] {
  const shape = shapeOf(part);
  const corner = cornerOf(shape.outline);
  const says = [
    `Ground glass, ${sizeText(shape)} × ${plainNumber(thicknessOf(part))} mm. One piece.`,
    `All four corners cut ${plainNumber(corner)} mm along each edge. All edges ground.`,
    glass.frosted === 'lens'
      ? 'The frosted side faces the lens. Scratch the mark into the smooth side, which faces your eye.'
      : 'The frosted side faces your eye. Scratch the mark into the smooth side, which faces the lens.',
    'Glass cuts: gloves and glasses, and the glazier’s own rules. A glazier cuts it from these figures.',
  ];
  if (fitsPaper(shape)) return [trueSizeLettered([part.id], shape, says)];
  // a rectangle is laid out better with a rule than from four joined papers; its corner fits the paper
  const { left, right, bottom, top } = boundsOf(shape.outline);
  const measures: readonly Measure[] = [
    {
      figure: right - left,
      from: { x: left, y: bottom + corner },
      to: { x: right, y: bottom + corner },
      line: { outside: 'bottom' },
    },
    {
      figure: top - bottom,
      from: { x: left + corner, y: bottom },
      to: { x: left + corner, y: top },
      line: { outside: 'left' },
    },
    {
      figure: corner,
      from: { x: right - corner, y: top },
      to: { x: right, y: top - corner },
      line: { outside: 'top' },
    },
  ];
  return [
    dimensionedDrawing([part.id], shape, { measures, says, room: { width: TEXT_WIDTH, height: 150 } }),
    cornerTemplate(corner),
  ];
}

/** How far a corner is cut off along the edges: from the bounds to the nearest vertex. */
function cornerOf(outline: ClosedPath): number {
  const { left, bottom } = boundsOf(outline);
  const onBottom = outline.filter(({ y }) => Math.abs(y - bottom) < 1e-6).map(({ x }) => x);
  return Math.min(...onBottom) - left;
}

const CORNER_SHOWN = 45;

/** The corner of a thing at true size; the other three are alike. */
function cornerTemplate(cut: number): Template {
  const below = lettered('One corner of the glass at true size; the other three are alike.', 100);
  const edges: readonly Point[] = [
    { x: 0, y: CORNER_SHOWN },
    { x: 0, y: cut },
    { x: cut, y: 0 },
    { x: CORNER_SHOWN, y: 0 },
  ];
  return {
    parts: [],
    width: 100,
    height: CORNER_SHOWN + 2 + below.height,
    marks: ({ x, y }) => [
      {
        kind: 'line',
        role: 'cut',
        points: edges.map((p) => ({ x: x + p.x, y: y + p.y })),
        stroke: { colour: '#111111', width: 0.2 },
      },
      ...below.marks({ x, y: y + CORNER_SHOWN + 2 }),
    ],
  };
}

function smallThings(own: readonly Counted[], { fenceLayers }: TemplatesGiven): readonly Template[] {
  return own.map(({ part, count }) => {
    const shape = shapeOf(part);
    const thickness = thicknessOf(part);
    const size = part.id === 'button-card' ? `${plainNumber(sizeOf(shape.outline).width)} across` : sizeText(shape);
    const what =
      part.id === 'fence-open'
        ? `${upper(part.name)}: ${pieces(fenceLayers)} of board ${plainNumber(thickness / fenceLayers)} mm, ${size}, glued one on the other.`
        : part.id === 'glass-clip'
          ? `${upper(part.name)}, if you make it: ${pieces(count)} of brass or tinplate ${plainNumber(thickness)} mm, ${size}. Drill it 2.7 mm wide for its screw, where it lies over wood.`
          : `${upper(part.name)}: ${pieces(count)}, ${plainNumber(thickness)} mm thick, ${size}.`;
    const { width, height } = sizeOf(shape.outline);
    return Math.max(width, height) > 40 ? strip([part.id], shape, [what]) : trueSize([part.id], shape, [what], 54);
  });
}

function feltBands(
  own: readonly Counted[],
  { boxLength, boxSide, bands, width, free }: FeltGiven,
  which: 'middle' | 'rear',
): readonly Template[] {
  const half = boxSide / 2;
  const shape: Shape = {
    outline: rectangle(box(0, -half, boxLength, half)),
    holes: bands.map((from) => rectangle(box(from, -half, from + width, half))),
  };
  const [first = 0, second = 0] = bands;
  const measures: readonly Measure[] = [
    { figure: second, from: { x: 0, y: half }, to: { x: second, y: half }, line: { outside: 'top' } },
    { figure: width, from: { x: second, y: -half }, to: { x: second + width, y: -half }, line: { outside: 'bottom' } },
    { figure: first, from: { x: 0, y: -half }, to: { x: first, y: -half }, line: { outside: 'bottom' } },
    { figure: boxSide, from: { x: boxLength, y: -half }, to: { x: boxLength, y: half }, line: { outside: 'right' } },
  ];
  return [
    ...own.map(({ part, count }) =>
      strip([part.id], shapeOf(part), [
        `${upper(part.name)}: ${pieces(count)} of felt ${plainNumber(free)} mm, ${sizeText(shapeOf(part))}. It is pressed to ${plainNumber(thicknessOf(part))} mm in the gap.`,
      ]),
    ),
    dimensionedDrawing([], shape, {
      measures,
      says: [
        `The ${which} box from its side, its front edge at the left: where the two bands lie. The bands above and below run out over the corners; those at the sides butt against them, without a gap.`,
      ],
      room: { width: TEXT_WIDTH, height: 105 },
    }),
  ];
}

/** Frames that differ in thickness only are cut by one template. */
function shimFrames(own: readonly Counted[], { cut }: TemplatesGiven): readonly Template[] {
  const alike = new Map<string, Counted[]>();
  for (const one of own) {
    const { outline, holes } = shapeOf(one.part);
    const key = JSON.stringify([outline, holes]);
    alike.set(key, [...(alike.get(key) ?? []), one]);
  }
  return [...alike.values()].flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    const shape = shapeOf(first.part);
    const spacer = first.part.id.startsWith('SP') ? first.part.id.replace(/-.*/, '') : null;
    const holder = /^shim-(\d+)/.exec(first.part.id)?.[1];
    const framed = holder === undefined ? 'G1' : `HF${holder}`;
    const where =
      spacer !== null ? `of the spacer ${spacer}` : holder === undefined ? 'in the glass frame' : `behind ${framed}`;
    const says = [
      `Shims ${where}, ${sizeText(shape)} mm:`,
      ...same.map(({ part, count }) => `${pieces(count)} of ${plainNumber(thicknessOf(part))} mm.`),
      'How many of them you need is told by the chapter on the register. Measure before you cut them all.',
      ...quicker(spacer === null ? { ply: framed, spacer: false } : { ply: plyOf(spacer, cut), spacer: true }),
    ];
    const ids = same.map(({ part }) => part.id);
    if (fitsPaper(shape)) return [trueSizeLettered(ids, shape, says)];
    return [
      dimensionedDrawing(ids, shape, {
        measures: frameMeasures(shape),
        says,
        room: { width: TEXT_WIDTH, height: 195 },
      }),
    ];
  });
}

/** The ply of a spacer that its shims are drawn round: one below the last where there is one, for the last has pins of its own. */
const plyOf = (spacer: string, cut: readonly string[]): string | null =>
  [spacer, `${spacer}T`].find((id) => cut.includes(id)) ?? null;

/** A spacer may be of shims alone, and then there is no ply to draw round. */
function quicker({ ply, spacer }: { readonly ply: string | null; readonly spacer: boolean }): readonly string[] {
  if (ply === null) return [];
  const holes = ply.endsWith('T') ? 'and through the two holes that go on the seat pins' : 'and through the pin holes';
  const inside = spacer ? `outside and inside, ${holes}` : 'outside and inside, but without its pin holes';
  return [`Quicker than paper: lay the ply ${ply} on the shim stock and draw round it, ${inside}.`];
}

/** A frame by its outside, its window, and the rims at the left and the closed end; pin holes from the edges. */
function frameMeasures({ outline, holes }: Shape): readonly Measure[] {
  const { left, right, bottom, top } = boundsOf(outline);
  const [window] = [...holes].sort((a, b) => sizeOf(b).width - sizeOf(a).width);
  if (window === undefined) return [];
  const inner = boundsOf(window);
  const pins = holes.filter((hole) => hole !== window).map(middleOf);
  return [
    {
      figure: right - left,
      from: { x: left, y: bottom },
      to: { x: right, y: bottom },
      line: { outside: 'bottom', row: 2 },
    },
    { figure: top - bottom, from: { x: left, y: bottom }, to: { x: left, y: top }, line: { outside: 'left', row: 2 } },
    {
      figure: inner.right - inner.left,
      what: 'window',
      from: { x: inner.left, y: inner.top },
      to: { x: inner.right, y: inner.top },
      line: { y: inner.top - 22 },
    },
    {
      figure: inner.top - inner.bottom,
      what: 'window',
      from: { x: inner.right, y: inner.bottom },
      to: { x: inner.right, y: inner.top },
      line: { x: inner.right - 22 },
    },
    {
      figure: inner.left - left,
      from: { x: left, y: top },
      to: { x: inner.left, y: inner.top },
      line: { outside: 'top' },
    },
    {
      figure: inner.bottom - bottom,
      from: { x: right, y: bottom },
      to: { x: inner.right, y: inner.bottom },
      line: { outside: 'right' },
    },
    ...pins.slice(0, 1).flatMap(({ x, y }): readonly Measure[] => [
      { figure: x - left, from: { x: left, y: bottom }, to: { x, y }, line: { outside: 'bottom' } },
      { figure: y - bottom, from: { x: left, y: bottom }, to: { x, y }, line: { outside: 'left' } },
    ]),
  ];
}

function seat(own: readonly Counted[], given: TemplatesGiven): readonly Template[] {
  return [wellDrawing(given), ...own.flatMap(({ part }) => pinCorners(part, given))];
}

/** The back from behind: what a holder must fit into. */
function wellDrawing({
  well: { plate, opening, width, closed, open, play, pins, ...well },
  holders,
}: TemplatesGiven): Template {
  const w = width / 2;
  const shape: Shape = {
    outline: plate,
    holes: [
      rectangle(box(-opening.width / 2, -opening.height / 2, opening.width / 2, opening.height / 2)),
      ...pins.map(({ x, y, diameter }) => circle(x, y, diameter)),
    ],
  };
  const [thin, thick] = [...pins].sort((a, b) => a.diameter - b.diameter);
  const more = [
    {
      points: [
        { x: -w, y: -closed },
        { x: w, y: -closed },
        { x: w, y: open },
        { x: -w, y: open },
        { x: -w, y: -closed },
      ],
    },
  ];
  const measures: readonly Measure[] = [
    {
      figure: width,
      what: 'well',
      from: { x: -w, y: open },
      to: { x: w, y: open },
      line: { y: (open + opening.height / 2) / 2 },
    },
    {
      figure: closed + open,
      what: 'well',
      from: { x: -w, y: -closed },
      to: { x: -w, y: open },
      line: { outside: 'left' },
    },
    {
      figure: opening.width,
      what: 'opening',
      from: { x: -opening.width / 2, y: 0 },
      to: { x: opening.width / 2, y: 0 },
      line: { y: 0 },
    },
    {
      figure: opening.height,
      what: 'opening',
      from: { x: opening.width / 4, y: -opening.height / 2 },
      to: { x: opening.width / 4, y: opening.height / 2 },
      line: { x: opening.width / 4 },
    },
    ...(thin && thick
      ? [
          {
            figure: thick.x - thin.x,
            what: 'pins',
            from: thin,
            to: thick,
            line: { outside: 'bottom' },
          } satisfies Measure,
        ]
      : []),
    {
      figure: closed,
      what: 'axis to fence',
      from: { x: w, y: -closed },
      to: { x: 0, y: 0 },
      line: { outside: 'right', row: 2 },
    },
    ...(thick
      ? [
          {
            figure: thick.y + closed,
            from: { x: w, y: -closed },
            to: thick,
            line: { outside: 'right' },
          } satisfies Measure,
        ]
      : []),
  ];
  return dimensionedDrawing(
    [],
    { ...shape, more },
    {
      measures,
      says: [
        `The back from behind, its open end up. Dashed: the well between the fences. A holder may be ${mm(width - 2 * play)} wide at most: it has ${mm(play)} to each fence. The fences stand ${mm(well.fenceHeight)} above the seat, at the open end ${mm(well.openFenceHeight)}: the dark slide passes over it.`,
        ...(thin && thick
          ? [
              `Two pins stand ${mm(well.pinProud)} above the seat: ${plainNumber(thin.diameter)} mm thick at the left, ${plainNumber(thick.diameter)} mm at the right. So nothing goes on the wrong way round. Holes for them: ${plainNumber(well.pinPlay)} mm wider, and deeper than ${mm(well.pinProud)}.`,
            ]
          : []),
        `From its face to the film: ${holders.map(({ name, filmDepth }) => `${name} ${mm(filmDepth)}`).join(', ')}.`,
      ],
      room: { width: TEXT_WIDTH, height: 190 },
    },
  );
}

/** Wood shown round the innermost hole of a corner. */
const ROUND_HOLE = 14;

/** Both corners at the closed end of a holder, seen on the face that bears on the seat: so what is left from behind is right here. */
function pinCorners(part: BoughtPart, { holders, well }: TemplatesGiven): readonly Template[] {
  const { outline, holes } = shapeOf(part);
  const holder = holders.find(({ id }) => id === part.id);
  if (holder === undefined || holes.length === 0) return [];
  const { left, right, bottom } = boundsOf(outline);
  const seatPins = new Set(well.pins.map(({ x, y }) => placeKey(x, y)));
  return (['left', 'right'] as const).map((side): Template => {
    // seen on the face: x is turned round
    const own = holes
      .map((hole) => ({ ...middleOf(hole), diameter: sizeOf(hole).width }))
      .filter(({ x }) => (side === 'left' ? x > 0 : x < 0))
      .map(({ x, y, diameter }) => ({
        fromSide: side === 'left' ? right - x : x - left,
        fromEnd: y - bottom,
        diameter,
        isSeat: seatPins.has(placeKey(x, y)),
      }))
      // a hole for the pins of a spacer that it never lies on would let it lie on it unawares
      .filter(({ isSeat }) => isSeat || holder.onSpacer);
    const width = Math.max(...own.map(({ fromSide }) => fromSide)) + ROUND_HOLE;
    const height = Math.max(...own.map(({ fromEnd }) => fromEnd)) + ROUND_HOLE;
    const below = lettered(
      [
        `${upper(holder.name)}, closed end, ${side} corner of the face that bears on the seat.`,
        ...own.map(
          ({ fromSide, fromEnd, diameter, isSeat }) =>
            `Hole ${plainNumber(diameter, 2)}, ${isSeat ? 'for a pin of the seat' : 'for a pin of a spacer'}: ${plainNumber(fromSide, 2)} from the side, ${plainNumber(fromEnd, 2)} from the end.`,
        ),
      ],
      (TEXT_WIDTH - 8) / 2,
    );
    return {
      parts: side === 'left' ? [part.id] : [],
      width: (TEXT_WIDTH - 8) / 2,
      height: height + 3 + below.height,
      marks: ({ x, y }) => {
        const corner = side === 'left' ? x : x + width;
        const place = (fromSide: number, fromEnd: number): Point => ({
          x: side === 'left' ? corner + fromSide : corner - fromSide,
          y: y + height - fromEnd,
        });
        return [
          {
            kind: 'line',
            role: 'cut',
            points: [place(0, height), place(0, 0), place(width, 0)],
            stroke: { colour: '#111111', width: 0.2 },
          },
          ...own.flatMap(({ fromSide, fromEnd, diameter }) => [
            {
              kind: 'circle',
              role: 'cut',
              centre: place(fromSide, fromEnd),
              radius: diameter / 2,
              stroke: { colour: '#111111', width: 0.2 },
            } as const,
            centreCross(place(fromSide, fromEnd), 5),
          ]),
          ...below.marks({ x, y: y + height + 3 }),
        ];
      },
    };
  });
}

const placeKey = (x: number, y: number): string => `${x.toFixed(3)} ${y.toFixed(3)}`;

function tripodPlace({ tripod }: TemplatesGiven): readonly Template[] {
  const { thread, doubler, fromFront, toKnob, board } = tripod;
  const { width, height } = sizeOf(doubler.outline);
  const half = board.width / 2;
  const shape: Shape = {
    outline: rectangle(box(0, -half, board.length, half)),
    holes: [
      rectangle(box(fromFront - width / 2, -height / 2, fromFront + width / 2, height / 2)),
      circle(fromFront, 0, sizeOf(doubler.holes[0] ?? doubler.outline).width),
    ],
  };
  return [
    trueSize(
      [],
      doubler,
      [
        `The block under the tailboard, ${sizeText(doubler)}, with the hole of the ${thread} nut. The tripod’s plate bears on it, and may reach ${Math.floor(toKnob)} mm behind the middle of the hole: farther back it meets the knob when the slide is pushed in.`,
      ],
      100,
    ),
    dimensionedDrawing([], shape, {
      measures: [
        { figure: fromFront, from: { x: 0, y: half }, to: { x: fromFront, y: 0 }, line: { outside: 'top' } },
        {
          figure: half,
          from: { x: fromFront, y: 0 },
          to: { x: board.length, y: half },
          line: { outside: 'right' },
        },
        {
          figure: board.length,
          from: { x: 0, y: -half },
          to: { x: board.length, y: -half },
          line: { outside: 'bottom' },
        },
      ],
      says: ['The tailboard from below, its front end, under the lens, at the left: where the block is glued on.'],
      room: { width: TEXT_WIDTH, height: 100 },
    }),
  ];
}
