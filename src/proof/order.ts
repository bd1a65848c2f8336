import type { Build, Setup } from '../assembly/build.js';
import { stands } from '../assembly/setups.js';
import { type Workbench, workbench } from '../assembly/workbench.js';
import type { Kernel } from '../geometry/kernel.js';
import type { Point3 } from '../geometry/placement.js';
import { type Move, type Way, wordsFor } from '../model/assembly-move.js';
import {
  type Act,
  assemblySteps,
  CAMERA,
  idsOf,
  matches,
  type NumberedStep,
  names,
  ON_LENS_BOARD,
  type Step,
  stepsOfCamera,
} from '../model/assembly-steps.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';
import { mm, tenth } from '../units/print.js';
import { type Block, blocksOf, inOnePlace, type Looker, lookerOn, PRESS, shifted, ways } from './straight-line.js';

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
export const orderOf = (build: Build, kernel: Kernel, steps: readonly Step[] = assemblySteps): AssemblyOrder =>
  kernel.stage((bench) => orderOn(build, workbench(bench), steps));

/**
 * The same on a bench on which the pieces may lie already.
 *
 * @param colliding pairs of ids that want the same place: that is told of them, and here they do not stand in each other's way
 */
export function orderOn(
  build: Build,
  on: Workbench,
  steps: readonly Step[] = assemblySteps,
  colliding: ReadonlySet<string> = NONE,
): AssemblyOrder {
  const blocks = blocksOf(build.parts);
  const unnamed = build.parts.filter(({ id, placements }) => placements.length > 0 && !named(steps, id));
  const numbered = stepsOfCamera(build.parts, steps);
  const looker = letting(lookerOn(on), colliding);
  const tried = new Tried();
  const told = build.setups.map((setup) => putTogether(blocks, setup, numbered, looker, tried));
  return {
    moves: told.flatMap(({ moves }) => moves),
    findings: [
      ...unnamed.map(forgotten),
      ...told.flatMap(({ stuck }) => stuck),
      ...told.slice(0, 1).flatMap(({ camera }) => boardComesOut(camera, looker)),
      ...told.flatMap(({ camera }) => waysBack(camera, looker, tried)),
    ],
  };
}

const NONE: ReadonlySet<string> = new Set();

const letting = (looker: Looker, through: ReadonlySet<string>): Looker =>
  through.size === 0
    ? looker
    : {
        ...looker,
        meets: (moving, still, way) => {
          const [a, b] = [moving.piece.part.id, still.piece.part.id];
          return !through.has(`${a} ${b}`) && !through.has(`${b} ${a}`) && looker.meets(moving, still, way);
        },
      };

const named = (steps: readonly Step[], id: string): boolean =>
  steps.some(({ acts }) => acts.some((act) => names(act, id)));

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

/** What has been put together under a name, and a number that stands for all that went in, in its order. */
interface Assembled {
  readonly blocks: readonly Block[];
  readonly state: number;
}

const NOTHING_YET: Assembled = { blocks: [], state: 0 };

/** What has been tried: it need not be tried again in another set-up. */
class Tried {
  readonly #states = new Map<string, number>();
  readonly #seen = new Set<string>();

  /** A number for what stands there once a thing has been added. */
  stateAfter(state: number, thing: string): number {
    const key = `${state} + ${thing}`;
    const known = this.#states.get(key);
    if (known !== undefined) return known;
    this.#states.set(key, this.#states.size + 1);
    return this.#states.size;
  }

  /** Whether this is the first time. */
  first(key: string): boolean {
    if (this.#seen.has(key)) return false;
    this.#seen.add(key);
    return true;
  }
}

/** Things that move as one, and a word for them. */
interface Thing {
  readonly blocks: readonly Block[];
  readonly key: string;
  /** The way of a screw or bolt, from where its head is; null for all else. */
  readonly driven: Way | null;
}

/** Puts together what stands in one set-up. */
function putTogether(
  blocks: readonly Block[],
  setup: Setup,
  steps: readonly NumberedStep[],
  looker: Looker,
  tried: Tried,
): Together {
  const here = blocks.filter(({ piece }) => stands(piece.placement, setup));
  const assemblies = new Map<string, Assembled>();
  const moves: Move[] = [];
  const stuck: Finding[] = [];
  const inside = (name: string) => assemblies.get(name) ?? NOTHING_YET;
  const put = (into: string, thing: Thing) => {
    const { blocks: before, state } = inside(into);
    assemblies.set(into, { blocks: [...before, ...thing.blocks], state: tried.stateAfter(state, thing.key) });
  };

  for (const step of steps) {
    for (const act of step.acts) {
      const whole = 'whole' in act ? act.whole : undefined;
      for (const thing of thingsOf(act, here, inside)) {
        const { blocks: present, state } = inside(act.into);
        const way = tried.first(`${state} < ${thing.key}`) ? wayIn(thing, present, looker) : undefined;
        // what does not go in is put there all the same, so that what comes after it is proven too
        put(act.into, thing);
        if (way === undefined) continue;
        if (way !== 'none') {
          const pieces = thing.blocks.map(({ piece }) => piece.key);
          const { number, title } = step;
          moves.push({ step: number, title, into: act.into, ...(whole === undefined ? {} : { whole }), pieces, way });
          continue;
        }
        // told once, however many pieces and set-ups it is met in
        const name = `step ${step.number}: ${whole ?? thing.blocks.map(({ piece }) => piece.part.id).join(' ')}`;
        if (tried.first(name)) stuck.push(blocked(step, thing, whole, present, looker));
      }
    }
  }
  return { moves, stuck, camera: inside(CAMERA).blocks };
}

/** What an act brings in. */
function thingsOf(act: Act, here: readonly Block[], inside: (name: string) => Assembled): readonly Thing[] {
  const found = (pattern: string) => here.filter(({ piece }) => matches(pattern, piece.part.id));
  if ('each' in act)
    return act.each
      .flatMap(found)
      .map((block) => ({ blocks: [block], key: block.piece.key, driven: drivenAlong(block) }));
  if ('whole' in act) {
    const { blocks, state } = inside(act.whole);
    return blocks.length === 0 ? [] : [{ blocks, key: `all of ${state}`, driven: null }];
  }
  const blocks = act.asOne.flatMap(found);
  const [driven = null] = blocks.flatMap((block) => drivenAlong(block) ?? []);
  return blocks.length === 0 ? [] : [{ blocks, key: keysOf(blocks), driven }];
}

const keysOf = (blocks: readonly Block[]): string => blocks.map(({ piece }) => piece.key).join(' ');

const wayIn = (thing: Thing, present: readonly Block[], looker: Looker): Way | null | 'none' => {
  if (present.length === 0) return null;
  const there = inTheWayOf(thing, present);
  const free = (way: Way) => !thing.blocks.some((a) => there.some((b) => looker.meets(a, b, way)));
  return likely(thing).find(free) ?? 'none';
};

/**
 * What a thing must come past. Where the half of the camera that a screw does not belong to would stand in its way for as
 * long as the slide is in, the slide is drawn out for it: `waysBack` proves that it comes out.
 */
function inTheWayOf({ blocks, driven }: Thing, present: readonly Block[]): readonly Block[] {
  const [screw] = blocks;
  if (driven === null || screw === undefined) return present;
  return present.filter(({ piece }) => piece.slides === screw.piece.slides);
}

/**
 * A screw goes in tip first and no other way. A plate is laid on and a rod is put in along its own thickness, and so is
 * a printed thing with the face that it was printed on: a clamp that came down along the board would leave its nuts behind.
 */
function likely({ blocks, driven }: Thing): readonly Way[] {
  if (driven !== null) return [driven];
  const [one] = blocks;
  if (one === undefined || blocks.length > 2) return ways;
  const thick = one.prism?.thick ?? ownAxis(one).axis;
  return [...ways.filter(({ axis }) => axis === thick), ...ways.filter(({ axis }) => axis !== thick)];
}

const AXES = ['x', 'y', 'z'] as const;

/** From where its head is towards its tip; null for what is no screw. */
function drivenAlong(block: Block): Way | null {
  const { part } = block.piece;
  if (part.kind !== 'bought' || part.shape.form !== 'cylinder' || part.shape.head === undefined) return null;
  const { axis, sign } = ownAxis(block);
  return part.shape.head === 'start' ? { axis, sign } : { axis, sign: sign > 0 ? -1 : 1 };
}

/** Which of the camera's axes its own z lies nearest to, and towards which end. */
function ownAxis({ piece: { placement } }: Block): Way {
  const [axis, share] = AXES.map((k, i) => [k, placement.matrix[8 + i] as number] as const).reduce((most, one) =>
    Math.abs(one[1]) > Math.abs(most[1]) ? one : most,
  );
  return { axis, sign: share > 0 ? 1 : -1 };
}

/** On the way on which the fewest parts are in the way, and of these the widest. */
function blocked(
  step: NumberedStep,
  thing: Thing,
  whole: string | undefined,
  present: readonly Block[],
  looker: Looker,
): Finding {
  const { blocks: moving, driven } = thing;
  const [first] = moving;
  // nobody pushes a screw or a nut in sideways
  const few = first?.piece.part.kind === 'bought' && first.prism !== null && whole === undefined ? 2 : ways.length;
  const there = inTheWayOf(thing, present);
  const tries = likely(thing)
    .slice(0, few)
    .map((way) => ({ way, met: metOn(moving, there, way, looker) }));
  const parts = (met: readonly Met[]) => new Set(met.map(({ still }) => still.piece.part.id)).size;
  const { way, met } = tries.reduce((best, one) => (parts(one.met) < parts(best.met) ? one : best));
  const { moving: a, still, depth, at } = thickest(met, way, looker);
  const [one, other] = [a.piece.part, still.piece.part];
  const subject =
    whole === undefined
      ? `${one.id} (${one.name}) does not go in`
      : `The ${whole} does not go in: its ${one.id} (${one.name}) is kept out`;
  const from =
    driven === null
      ? `, from whichever side it comes. Even ${wordsFor(way)} it meets`
      : `. It is driven ${wordsFor(way)}, where its head is, and meets`;
  return {
    rule: 'assembly-order',
    level: 'error',
    value: depth,
    limit: PRESS,
    unit: 'mm',
    message: `${subject} at step ${step.number}${from} ${other.id} (${other.name}), ${placeOf(depth, at)}.`,
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
    moving: ({ piece }) =>
      (piece.slides || piece.placement.drawnFrom !== undefined) && !piece.part.id.startsWith('lock-'),
    // the bars of a middle box are bent past their blocks
    off: ['F14', 'T5', 'stop-screw', 'lock-head', 'lock-bolt', 'lock-washer', 'lock-knob'],
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
function waysBack(camera: readonly Block[], looker: Looker, tried: Tried): readonly Finding[] {
  return exits.flatMap(({ what, moving: moves, off, way, hint }) => {
    const moving = camera.filter((block) => moves(block) && !off.includes(block.piece.part.id));
    const still = camera.filter((block) => !moves(block) && !off.includes(block.piece.part.id));
    if (!tried.first(`${what} ${keysOf(moving)} > ${keysOf(still)}`)) return [];
    // told once, however many set-ups it is met in
    return held(what, moving, still, way, hint, looker).filter(() => tried.first(what));
  });
}

/** board-out on the placed parts: the lens board comes out to the front with its lens on, both retainers drawn. */
function boardComesOut(camera: readonly Block[], looker: Looker): readonly Finding[] {
  const ids = new Set(
    assemblySteps.flatMap(({ acts }) => acts.filter(({ into }) => ON_LENS_BOARD.includes(into))).flatMap(idsOf),
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
