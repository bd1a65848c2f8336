import type { Build } from '../assembly/build.js';
import { ROUNDING } from '../assembly/limit.js';
import { boxOf, type Loop, leastBetween, leastFrom, platesIn, type StandingPlate } from '../assembly/measure.js';
import type { Design } from '../design/design.js';
import { inside, type Point } from '../geometry/path.js';
import { apply } from '../geometry/placement.js';
import type { Finding } from '../model/finding.js';
import type { BoughtPart, Part } from '../model/part.js';
import { mm, tenth } from '../units/print.js';

/** A screw or bolt, in the builder's words; `diameter` null: that of the thread, as the stand-in is bored. */
interface Fastener {
  readonly words: string;
  readonly diameter: number | null;
  /** Whether it holds the lens, the lock or the camera; else it only guides. */
  readonly carries: boolean;
  /** Whether it is tightened through the wood, so that a glue line in its hole would be sprung open. */
  readonly bolts: boolean;
}

/** What is screwed or bolted through sheet, by the id of the bought part. */
const FASTENERS: Readonly<Record<string, Fastener>> = {
  'clamp-screw': { words: 'screw of the lens clamp', diameter: 4, carries: true, bolts: true },
  'keeper-screw': { words: 'screw of a keeper', diameter: 3, carries: true, bolts: false },
  'lock-bolt': { words: 'lock bolt', diameter: 6, carries: true, bolts: true },
  'tripod-barrel': { words: 'tripod nut', diameter: null, carries: true, bolts: true },
  'button-screw': { words: 'screw of a turn-button', diameter: 4, carries: false, bolts: false },
  'retainer-screw': { words: 'screw of a retainer', diameter: 4, carries: false, bolts: false },
  'retainer-pin': { words: 'guide pin of a retainer', diameter: 5, carries: false, bolts: false },
  'handle-screw': { words: 'screw of the handle', diameter: 4, carries: true, bolts: true },
  'lid-screw': { words: 'screw of a lid’s turn-button', diameter: 2.5, carries: false, bolts: false },
  'tank-screw': { words: 'screw of a lid', diameter: 4, carries: false, bolts: false },
  'stop-screw': { words: 'screw of the end stop', diameter: 3, carries: false, bolts: false },
};
/** Wood screws of the lens's own flange have no stand-in: their pilot holes in board or plug tell where they are. */
const FLANGE_SCREW: Fastener = { words: 'screw of the lens’s flange', diameter: 3, carries: true, bolts: false };
const PILOT = 2;

/** Hole's middle to the edge: section 14 of the camera's description, common practice, no source. */
const leastToEdge = ({ carries }: Fastener, d: number, ply: number): number =>
  carries ? Math.max(2 * d, ply) : Math.max(1.25 * d, d / 2 + 3);
/** Middle to middle, in diameters; of the same section. */
const APART = 3;

/** A hole that a fastener goes through, in a plate where it stands. */
interface Bored {
  readonly plate: StandingPlate;
  readonly hole: Loop;
  readonly at: Point;
  readonly fastener: Fastener;
  readonly diameter: number;
}

/**
 * nut-edge: every hole for a screw, bolt or nut in sheet, from its middle to the edge and to the next such hole; and no
 * bolt through a rail's edge or any other glue line.
 */
export const nutEdge = (design: Design, { parts }: Build): readonly Finding[] => {
  const bored = boredIn(design, parts);
  return [...nearEdge(design, bored), ...nearEachOther(design, bored), ...onGlueLine(parts, bored)];
};

function boredIn(design: Design, parts: readonly Part[]): readonly Bored[] {
  const axes = parts.flatMap((part) => (part.kind === 'bought' ? axesOf(part) : []));
  return parts.flatMap((part) => {
    if (part.kind !== 'flat') return [];
    const pilots = design.lens.mount.by === 'flange' && (part.id === 'F6' || part.id === 'F7');
    return platesIn(part).flatMap((plate) => [
      ...axes.flatMap((axis) => boredBy(plate, axis)),
      ...(pilots ? plate.holes.filter(isPilot).map((hole) => flangeHole(plate, hole)) : []),
    ]);
  });
}

const isPilot = (hole: Loop): boolean => widthOf(hole) < PILOT + 0.1;

const flangeHole = (plate: StandingPlate, hole: Loop): Bored => {
  const { left, right, bottom, top } = boxOf(hole);
  const at = { x: (left + right) / 2, y: (bottom + top) / 2 };
  return { plate, hole, at, fastener: FLANGE_SCREW, diameter: FLANGE_SCREW.diameter ?? 0 };
};

/** A fastener's axis: its direction is one of the camera's, and it runs from `low` to `high` along it. */
interface Axis {
  readonly fastener: Fastener;
  readonly diameter: number;
  readonly joins: readonly string[];
  readonly along: 'x' | 'y' | 'z';
  readonly at: { readonly x: number; readonly y: number; readonly z: number };
  readonly low: number;
  readonly high: number;
}

function axesOf(part: BoughtPart): readonly Axis[] {
  // those of a holder bear its number
  const fastener = FASTENERS[part.id.replace(/-\d+$/, '')];
  if (fastener === undefined) return [];
  const length = part.shape.form === 'cylinder' ? part.shape.length : part.shape.thickness;
  const bore = part.shape.form === 'plate' ? part.shape.holes[0] : undefined;
  // a circle has two corners, one diameter apart
  const diameter = fastener.diameter ?? (bore ? lengthOf(bore) : 0);
  return part.placements.map(({ matrix }) => {
    const at = apply(matrix, { x: 0, y: 0, z: 0 });
    const end = apply(matrix, { x: 0, y: 0, z: length });
    const along = (['x', 'y', 'z'] as const).find((axis) => Math.abs(end[axis] - at[axis]) > length / 2) ?? 'z';
    const joins = part.joins.map(({ to }) => to);
    const [low, high] = [Math.min(at[along], end[along]), Math.max(at[along], end[along])];
    return { fastener, diameter, joins, along, at, low, high };
  });
}

/** A hole with more room belongs to something else that the fastener passes: the opening for the lens, say. */
const MOST_ROOM = 3;

function boredBy(plate: StandingPlate, { fastener, diameter, joins, along, at, low, high }: Axis): readonly Bored[] {
  const reaches = plate.low < high - ROUNDING && plate.high > low + ROUNDING;
  if (plate.thickAlong !== along || !(reaches || joins.includes(plate.part.id))) return [];
  const drawn = along === 'z' ? { x: at.x, y: at.y } : along === 'x' ? { x: at.z, y: at.y } : { x: at.x, y: at.z };
  return plate.holes
    .filter((hole) => widthOf(hole) <= MOST_ROOM * diameter && inside(hole, drawn))
    .map((hole) => ({ plate, hole, at: drawn, fastener, diameter }));
}

const widthOf = (loop: Loop): number => {
  const { left, right, bottom, top } = boxOf(loop);
  return Math.min(right - left, top - bottom);
};
const lengthOf = (loop: Loop): number => {
  const { left, right, bottom, top } = boxOf(loop);
  return Math.max(right - left, top - bottom);
};

/** From the middle of a hole to the edge; a slot has its middle wherever the fastener may slide to. */
const toEdge = ({ plate, hole, at }: Bored): number =>
  lengthOf(hole) - widthOf(hole) > widthOf(hole) / 4
    ? leastBetween(hole, plate.outline) + widthOf(hole) / 2
    : leastFrom(at, plate.outline);

function nearEdge(design: Design, bored: readonly Bored[]): readonly Finding[] {
  const found = bored.map((one) => ({
    ...one,
    value: toEdge(one),
    limit: leastToEdge(one.fastener, one.diameter, design.plywood.thickness),
  }));
  return worstOfEach(found.filter(({ value, limit }) => value < limit - ROUNDING)).map((one) => {
    const { fastener, plate, value, limit, diameter } = one;
    const byThickness = fastener.carries && limit > 2 * diameter + ROUNDING;
    return {
      rule: 'nut-edge',
      level: 'error',
      value,
      limit,
      unit: 'mm',
      about: fastener.words.includes('lens') ? 'lens.mount' : 'plywood.thickness',
      message: `The ${fastener.words} stands ${mm(tenth(value))} from the edge of the ${plate.part.name} (${plate.part.id}): the wood breaks out ${fastener.carries ? 'when it is tightened' : 'round it'}.`,
      hint:
        byThickness && value >= 2 * diameter
          ? `Use sheet of ${mm(Math.floor(value * 10) / 10)} or less.`
          : fastener.words.includes('lens')
            ? `Make the lens board ${mm(tenth(2 * (limit - value)))} wider, or put the screws on a smaller circle.`
            : `Keep the hole ${mm(limit)} from every edge: make the part ${mm(tenth(limit - value))} wider there.`,
    };
  });
}

function nearEachOther(design: Design, bored: readonly Bored[]): readonly Finding[] {
  const close = bored.flatMap((a, i) =>
    bored.slice(i + 1).flatMap((b) => {
      if (a.plate !== b.plate || a.hole === b.hole) return [];
      const value = Math.sqrt((a.at.x - b.at.x) ** 2 + (a.at.y - b.at.y) ** 2);
      const limit = APART * Math.max(a.diameter, b.diameter);
      return value < limit - ROUNDING ? [{ ...a, value, limit }] : [];
    }),
  );
  return worstOfEach(close).map(({ fastener, plate, value, limit }) => ({
    rule: 'nut-edge',
    level: 'error',
    value,
    limit,
    unit: 'mm',
    about: fastener.words.includes('lens') ? 'lens.mount' : 'plywood.thickness',
    message: `In the ${plate.part.name} (${plate.part.id}) two holes stand ${mm(tenth(value))} apart, one for the ${fastener.words}: the wood splits between them.`,
    hint:
      design.lens.mount.by === 'clamp' && fastener.words.includes('lens')
        ? `Write fewer screws for the mount, ${mm(limit)} apart or more.`
        : `Set them ${mm(limit)} apart.`,
  }));
}

/** A cut that strays less over a glue line than this only touches it. */
const TOUCHES = 0.3;

function onGlueLine(parts: readonly Part[], bored: readonly Bored[]): readonly Finding[] {
  const crossed = bored
    .filter(({ fastener }) => fastener.bolts)
    .flatMap((one) => {
      const glued = parts.filter((part) => part.kind === 'flat' && areGlued(part, one.plate.part));
      const faces = glued.flatMap((part) => platesIn(part)).filter((other) => lieTogether(other, one.plate));
      const line = faces.find(({ outline, holes }) => [outline, ...holes].some((edge) => liesAcross(one.hole, edge)));
      return line ? [{ ...one, value: 0, limit: 0, line }] : [];
    });
  return worstOfEach(crossed).map(({ fastener, plate, line }) => ({
    rule: 'nut-edge',
    level: 'error',
    value: 1,
    limit: 0,
    unit: 'glue lines',
    about: fastener.words.includes('lens') ? 'lens.mount' : 'plywood.thickness',
    message: `The hole for the ${fastener.words} in the ${plate.part.name} (${plate.part.id}) lies across the edge of the ${line.part.name} (${line.part.id}) glued to it: tightened, it springs the glue.`,
    hint: `Move the hole clear of ${line.part.id}, or let both be bored alike.`,
  }));
}

const areGlued = (a: Part, b: Part): boolean =>
  a.joins.some(({ to, by }) => to === b.id && by === 'glue') ||
  b.joins.some(({ to, by }) => to === a.id && by === 'glue');

/** Face on face. */
const lieTogether = (a: StandingPlate, b: StandingPlate): boolean =>
  a.thickAlong === b.thickAlong && (Math.abs(a.low - b.high) < TOUCHES / 10 || Math.abs(b.low - a.high) < TOUCHES / 10);

const liesAcross = (hole: Loop, edge: Loop): boolean => {
  const clear = hole.filter((point) => leastFrom(point, edge) > TOUCHES);
  const within = clear.filter((point) => inside(edge, point)).length;
  return within > 0 && within < clear.length;
};

/** The worst of a fastener in a part: four corners of a standard are told once. */
function worstOfEach<T extends Bored & { readonly value: number; readonly limit: number }>(
  all: readonly T[],
): readonly T[] {
  const worst = new Map<string, T>();
  for (const one of all) {
    const key = `${one.fastener.words} ${one.plate.part.id}`;
    const before = worst.get(key);
    if (before === undefined || one.value - one.limit < before.value - before.limit) worst.set(key, one);
  }
  return [...worst.values()];
}
