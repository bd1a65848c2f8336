import type { Build, Setup } from '../assembly/build.js';
import { boxesOf, type Extent } from '../assembly/extent.js';
import { isHolderFace, isOfHolder, roleOf } from '../assembly/holders.js';
import { ROUNDING } from '../assembly/limit.js';
import { stands } from '../assembly/setups.js';
import { spanOf } from '../assembly/span-of.js';
import type { Holder } from '../design/design.js';
import type { Part } from '../model/part.js';

/** One ply, or one shim, between the holder seat and what lies on it. */
export interface Layer {
  readonly part: Part;
  readonly thickness: number;
  /** Whether it is glued to the next one. */
  readonly glued?: boolean;
}

/** What lies between the holder seat and the front face of the glass or of a holder. */
export interface Stack {
  readonly layers: readonly Layer[];
  /** Faces that are glued to the next layer. */
  readonly glueLines: number;
  /** From the seat to that face, where it is drawn. */
  readonly drawn: number;
  /** The same if everything is pushed home onto the seat: the sum of the layers. */
  readonly settled: number;
}

/**
 * The stack under a thing in a set-up, at the closest place: the loose plates that stand between the seat and its front
 * face. Pins stand in holes and carry nothing.
 */
export function stackUnder(build: Build, setup: Setup, top: Part): Stack {
  const seat = spanOf(build, 'B1', { setup }).z[1];
  const face = Math.min(...standingIn(top, setup).map(({ z }) => z[0]));
  const layers = build.parts
    .filter((part) => part !== top && isPlate(part))
    .flatMap((part) => standingIn(part, setup).map(({ z }) => ({ part, from: z[0], to: z[1] })))
    .filter(({ from, to }) => from >= seat - ROUNDING && to <= face + OVERLAPPING)
    .sort((a, b) => a.from - b.from)
    .map(
      ({ part, from, to }, i, all): Layer => ({ part, thickness: to - from, glued: isGlued(part, all[i + 1]?.part) }),
    );
  return {
    layers,
    glueLines: layers.filter(({ glued }) => glued).length,
    drawn: face - seat,
    settled: layers.reduce((sum, { thickness }) => sum + thickness, 0),
  };
}

/**
 * What a holder that is made has between its face and the film: frames and the channel, as wide and as long as the face
 * itself. Nothing of one that was measured as a whole, bought or made.
 */
export function layersBeforeFilm(build: Build, { name, measured }: Holder, setup: Setup): readonly Layer[] {
  if (measured !== undefined) return [];
  const own = build.parts.filter((part) => isOfHolder(part, name));
  const at = (part: Part) => standingIn(part, setup)[0];
  const face = own.find(isHolderFace);
  const round = face && at(face);
  const sheet = own.filter((part) => roleOf(part) === 'sheet').flatMap((part) => at(part) ?? [])[0];
  if (round === undefined || sheet === undefined) return [];
  return own
    .flatMap((part) => standingIn(part, setup).map(({ x, y, z }) => ({ part, x, y, from: z[0], to: z[1] })))
    .filter(({ x, y, to }) => to <= sheet.z[0] + ROUNDING && same(x, round.x) && same(y, round.y))
    .sort((a, b) => a.from - b.from)
    .map(({ part, from, to }): Layer => ({ part, thickness: to - from }));
}

const same = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.abs(a[0] - b[0]) < ROUNDING && Math.abs(a[1] - b[1]) < ROUNDING;

/** A layer may be drawn into what lies on it by so much and still be taken for what carries it, mm; a choice of ours. */
const OVERLAPPING = 0.5;

/** Whether a thing stands in a set-up, and its boxes there. */
export const standingIn = (part: Part, setup: Setup): readonly Extent[] =>
  boxesOf(
    part,
    part.placements.filter((place) => stands(place, setup)),
  ).map(({ extent }) => extent);

const isPlate = (part: Part): boolean =>
  part.placements.every(({ group }) => group === 'loose') &&
  (part.kind === 'flat' || (part.kind === 'bought' && part.shape.form === 'plate' && part.role === undefined));

const isGlued = (a: Part, b: Part | undefined): boolean =>
  b !== undefined &&
  (a.joins.some(({ to, by }) => by === 'glue' && to === b.id) ||
    b.joins.some(({ to, by }) => by === 'glue' && to === a.id));
