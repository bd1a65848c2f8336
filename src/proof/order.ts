import type { Build, Setup } from '../assembly/build.js';
import { stands } from '../assembly/setups.js';
import type { Kernel } from '../geometry/kernel.js';
import type { Point3 } from '../geometry/placement.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';
import { mm, tenth } from '../units/print.js';
import { type Act, assemblySteps, CAMERA, type Step } from './assembly-steps.js';
import {
  type Block,
  blocksOf,
  inOnePlace,
  type Looker,
  looking,
  PRESS,
  shifted,
  type Way,
  ways,
  wordsFor,
} from './straight-line.js';

/** A thing that was brought to its place: one piece, or what had been put together before. */
export interface Move {
  readonly step: number;
  readonly title: string;
  /** Under which name it has been put together, `camera` in the end. */
  readonly into: string;
  /** What it was called where it is a whole. */
  readonly whole?: string;
  /** Keys of its pieces. */
  readonly pieces: readonly string[];
  /** The way that it moves; null where it is the first of its assembly, and is laid down. */
  readonly way: Way | null;
}

export interface AssemblyOrder {
  readonly moves: readonly Move[];
  readonly findings: readonly Finding[];
}

/**
 * assembly-order: each piece, or whole of pieces, reaches its place along a straight line past those already in, in every
 * set-up; and what has to come out again comes out the way it must. See straight-line.ts for why nothing between two
 * positions is missed.
 */
export const proveOrder = (build: Build, kernel: Kernel, steps: readonly Step[] = assemblySteps): readonly Finding[] =>
  orderOf(build, kernel, steps).findings;

/** The moves in their order, each with the way that was found for it. */
export function orderOf(build: Build, kernel: Kernel, steps: readonly Step[] = assemblySteps): AssemblyOrder {
  const blocks = blocksOf(build.parts);
  const unnamed = build.parts.filter(({ id, placements }) => placements.length > 0 && !named(steps, id));
  return looking(kernel, (looker) => {
    const seen = new Set<string>();
    const told = build.setups.map((setup) => putTogether(blocks, setup, steps, looker, seen));
    return {
      moves: told.flatMap(({ moves }) => moves),
      findings: [
        ...unnamed.map(forgotten),
        ...told.flatMap(({ stuck }) => stuck),
        ...told.slice(0, 1).flatMap(({ camera }) => boardComesOut(camera, looker)),
        ...told.flatMap(({ camera }) => waysBack(camera, looker, seen)),
      ],
    };
  });
}

const named = (steps: readonly Step[], id: string): boolean =>
  steps.some(({ acts }) => acts.some((act) => idsOf(act).some((pattern) => matches(pattern, id))));

const idsOf = (act: Act): readonly string[] => ('each' in act ? act.each : 'asOne' in act ? act.asOne : []);

const matches = (pattern: string, id: string): boolean =>
  pattern.endsWith('*') ? id.startsWith(pattern.slice(0, -1)) : id === pattern;

const forgotten = ({ id, name }: Part): Finding => ({
  rule: 'assembly-order',
  level: 'error',
  value: 0,
  limit: 1,
  unit: 'steps',
  message: `${id} (${name}) has its place in the camera, and no step of the assembly says when it goes in.`,
  hint: 'Name it in the step in which it is put there.',
});

interface Together {
  readonly moves: readonly Move[];
  readonly stuck: readonly Finding[];
  /** All that stands in the end. */
  readonly camera: readonly Block[];
}

/**
 * Puts together what stands in one set-up.
 *
 * @param seen what has been brought in past the same things in an earlier set-up: it need not be tried again
 */
function putTogether(
  blocks: readonly Block[],
  setup: Setup,
  steps: readonly Step[],
  looker: Looker,
  seen: Set<string>,
): Together {
  const here = blocks.filter(({ piece }) => stands(piece.placement, setup));
  const assemblies = new Map<string, readonly Block[]>();
  const moves: Move[] = [];
  const stuck: Finding[] = [];
  const inside = (name: string) => assemblies.get(name) ?? [];

  for (const step of steps) {
    for (const act of step.acts) {
      let waiting = thingsOf(act, here, inside);
      // in the order of the list; what is still kept out by another one of the same act waits for it
      while (waiting.length > 0) {
        const later: (readonly Block[])[] = [];
        for (const thing of waiting) {
          const present = inside(act.into);
          const key = `${keysOf(thing)} > ${keysOf(present)}`;
          const way = seen.has(key) ? undefined : wayIn(thing, present, looker);
          if (way === 'none') {
            later.push(thing);
            continue;
          }
          if (way !== undefined)
            moves.push({
              step: step.number,
              title: step.title,
              into: act.into,
              ...('whole' in act ? { whole: act.whole } : {}),
              pieces: thing.map(({ piece }) => piece.key),
              way,
            });
          seen.add(key);
          assemblies.set(act.into, [...present, ...thing]);
        }
        if (later.length === waiting.length) {
          for (const moving of later) {
            const present = inside(act.into);
            seen.add(`${keysOf(moving)} > ${keysOf(present)}`);
            const whole = 'whole' in act ? act.whole : undefined;
            // told once, however many pieces and set-ups it is met in
            const name = `step ${step.number}: ${whole ?? idsOfBlocks(moving)}`;
            if (!seen.has(name)) stuck.push(blocked(step, moving, whole, present, looker));
            seen.add(name);
          }
          // it is put there all the same, so that what comes after it is proven too
          assemblies.set(act.into, [...inside(act.into), ...later.flat()]);
          break;
        }
        waiting = later;
      }
    }
  }
  return { moves, stuck, camera: inside(CAMERA) };
}

const idsOfBlocks = (blocks: readonly Block[]): string => blocks.map(({ piece }) => piece.part.id).join(' ');
const keysOf = (blocks: readonly Block[]): string => blocks.map(({ piece }) => piece.key).join(' ');

/** What an act brings in, each thing as the pieces that move together. */
function thingsOf(
  act: Act,
  here: readonly Block[],
  inside: (name: string) => readonly Block[],
): readonly (readonly Block[])[] {
  const found = (pattern: string) => here.filter(({ piece }) => matches(pattern, piece.part.id));
  if ('each' in act) return act.each.flatMap(found).map((block) => [block]);
  const all = 'whole' in act ? inside(act.whole) : act.asOne.flatMap(found);
  return all.length === 0 ? [] : [all];
}

const wayIn = (moving: readonly Block[], present: readonly Block[], looker: Looker): Way | null | 'none' => {
  if (present.length === 0) return null;
  const free = (way: Way) => !moving.some((a) => present.some((b) => looker.meets(a, b, way)));
  return likely(moving).find(free) ?? 'none';
};

/** A plate is laid on and a rod is put in along its own thickness; a screw across the camera rather from the front. */
function likely(moving: readonly Block[]): readonly Way[] {
  const [one] = moving;
  if (one === undefined || one.prism === null || moving.length > 2) return ways;
  const { thick } = one.prism;
  const { part } = one.piece;
  const rod = part.kind === 'bought' && part.shape.form === 'cylinder';
  const along = ways.filter(({ axis }) => axis === thick);
  const first = rod && thick === 'z' ? [...along].reverse() : along;
  return [...first, ...ways.filter(({ axis }) => axis !== thick)];
}

/** On the way on which the fewest parts are in the way, and of these the widest. */
function blocked(
  step: Step,
  moving: readonly Block[],
  whole: string | undefined,
  present: readonly Block[],
  looker: Looker,
): Finding {
  const [first] = moving;
  // nobody pushes a screw or a nut in sideways
  const few = first?.piece.part.kind === 'bought' && first.prism !== null && whole === undefined ? 2 : ways.length;
  const tries = likely(moving)
    .slice(0, few)
    .map((way) => ({ way, met: metOn(moving, present, way, looker) }));
  const parts = (met: readonly Met[]) => new Set(met.map(({ still }) => still.piece.part.id)).size;
  const { way, met } = tries.reduce((best, one) => (parts(one.met) < parts(best.met) ? one : best));
  const { moving: a, still, depth, at } = thickest(met, way, looker);
  const [one, other] = [a.piece.part, still.piece.part];
  const subject =
    whole === undefined
      ? `${one.id} (${one.name}) does not go in`
      : `The ${whole} does not go in: its ${one.id} (${one.name}) is kept out`;
  return {
    rule: 'assembly-order',
    level: 'error',
    value: depth,
    limit: PRESS,
    unit: 'mm',
    message: `${subject} at step ${step.number}, from whichever side it comes. Even ${wordsFor(way)} it meets ${other.id} (${other.name}), ${placeOf(depth, at)}.`,
    hint: `Put it in before ${other.id}, or cut ${other.id} open for it.`,
  };
}

interface Met {
  readonly moving: Block;
  readonly still: Block;
}

const metOn = (moving: readonly Block[], present: readonly Block[], way: Way, looker: Looker): readonly Met[] =>
  moving.flatMap((a) => present.filter((b) => looker.meets(a, b, way)).map((b) => ({ moving: a, still: b })));

/** Of all that is met, what has most of its box in the way; the kernel measures it. */
function thickest(met: readonly Met[], way: Way, looker: Looker) {
  const across = (['x', 'y', 'z'] as const).filter((axis) => axis !== way.axis);
  const size = ({ moving: a, still: b }: Met) =>
    Math.min(...across.map((k) => Math.min(a.extent[k][1], b.extent[k][1]) - Math.max(a.extent[k][0], b.extent[k][0])));
  const worst = met.reduce((most, one) => (size(one) > size(most) ? one : most));
  return { ...worst, ...looker.measure(worst.moving, worst.still, way) };
}

const placeOf = (depth: number, { x, y, z }: Point3): string =>
  `${mm(Math.max(0.1, tenth(depth)))} thick at x ${mm(tenth(x))}, y ${mm(tenth(y))}, z ${mm(tenth(z))}`;

/** What must come out again, which way, and what is taken off or drawn aside before. */
interface Exit {
  readonly what: string;
  readonly moving: (block: Block) => boolean;
  readonly off: readonly string[];
  /** The way in: it comes out the other way. */
  readonly way: Way;
  readonly hint: string;
}

const BEHIND: Way = { axis: 'z', sign: -1 };
const FRONT: Way = { axis: 'z', sign: 1 };

const exits: readonly Exit[] = [
  {
    what: 'sliding rear, with the end stop off and the bolt out,',
    moving: ({ piece }) => piece.slides && !piece.part.id.startsWith('lock-'),
    off: ['T5', 'stop-screw', 'lock-head', 'lock-bolt', 'lock-washer', 'lock-knob'],
    way: BEHIND,
    hint: 'Nothing fixed may reach between the rails or over the sole behind it but what can be unscrewed.',
  },
  {
    what: 'glass or holder, with the cords off,',
    moving: ({ piece }) =>
      piece.part.id !== 'cord' && !['front', 'rear', 'back'].some((g) => g === piece.placement.group),
    off: ['cord'],
    way: BEHIND,
    hint: 'What stands over the well must swing or come off.',
  },
];

/** The sliding rear comes out behind, and so does all that sits in the well. */
function waysBack(camera: readonly Block[], looker: Looker, seen: Set<string>): readonly Finding[] {
  return exits.flatMap(({ what, moving: moves, off, way, hint }) => {
    const moving = camera.filter((block) => moves(block) && !off.includes(block.piece.part.id));
    const still = camera.filter((block) => !moves(block) && !off.includes(block.piece.part.id));
    const key = `${what} ${keysOf(moving)} > ${keysOf(still)}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return held(what, moving, still, way, hint, looker);
  });
}

/** board-out on the placed parts: the lens board comes out to the front with its lens on, both retainers drawn. */
function boardComesOut(camera: readonly Block[], looker: Looker): readonly Finding[] {
  const ids = new Set(
    assemblySteps
      .flatMap(({ acts }) => acts.filter(({ into }) => into === 'lens board' || into === 'lens'))
      .flatMap(idsOf),
  );
  const onBoard = ({ piece }: Block) => [...ids].some((pattern) => matches(pattern, piece.part.id));
  const moving = camera.filter(onBoard);
  const rest = camera.filter((block) => !onBoard(block) && !block.piece.slides);
  const still = rest.map((block) => (block.piece.part.id === 'F9' ? drawn(block, rest) : block));
  return held(
    'lens board, with both retainers drawn,',
    moving,
    still,
    FRONT,
    'Make the slots of the retainers longer, or the opening as wide as what stands behind the board.',
    looker,
  );
}

/** Steps in which a retainer is drawn, and how far at most: finer than anything that it could jump over. */
const DRAW = { step: 0.25, most: 20 };

/** A retainer drawn away from the axis until its slots end. */
function drawn(retainer: Block, rest: readonly Block[]): Block {
  const { x, y } = retainer.extent;
  const [mx, my] = [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2];
  const axis = Math.abs(mx) > Math.abs(my) ? 'x' : 'y';
  const sign = (axis === 'x' ? mx : my) > 0 ? 1 : -1;
  const others = rest.filter((block) => block !== retainer && block.prism !== null);
  let farthest = retainer;
  for (let by = DRAW.step; by <= DRAW.most; by += DRAW.step) {
    const there = shifted(retainer, axis, sign * by);
    if (others.some((other) => inOnePlace(there, other))) break;
    farthest = there;
  }
  return farthest;
}

function held(
  what: string,
  moving: readonly Block[],
  still: readonly Block[],
  way: Way,
  hint: string,
  looker: Looker,
): readonly Finding[] {
  const met = metOn(moving, still, way, looker);
  if (met.length === 0) return [];
  const worst = thickest(met, way, looker);
  const [one, other] = [worst.moving.piece.part, worst.still.piece.part];
  return [
    {
      rule: 'assembly-order',
      level: 'error',
      value: worst.depth,
      limit: PRESS,
      unit: 'mm',
      message: `The ${what} does not come out ${way.sign > 0 ? 'to the front' : 'behind'}: ${other.id} (${other.name}) stands in the way of ${one.id} (${one.name}), ${placeOf(worst.depth, worst.at)}.`,
      hint,
    },
  ];
}
