import type { Build } from '../assembly/build.js';
import type { Extent } from '../assembly/extent.js';
import { platesIn, type StandingPlate } from '../assembly/measure.js';
import { piecesOf } from '../assembly/pieces.js';
import { airBetween } from '../assembly/span-of.js';
import { boundsOfPoints } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';
import { mm, tenth } from '../units/print.js';

/** Longer holes are windows, slots for what slides, and grooves for lock ribs, mm; a choice of ours. */
const WINDOW = 40;
/** Narrower ones are the pilots of wood screws, which have no stand-ins, mm. */
const PILOT = 2.2;

/**
 * empty-hole: whatever stays in the camera has a use for each of its holes: a screw, a pin, a tab or a bolt goes through it
 * in one set-up at least. An empty one tells of a part that was forgotten.
 */
export function emptyHoles(build: Build): readonly Finding[] {
  const pieces = piecesOf(build.parts);
  return build.parts.flatMap((part) => {
    if (part.kind !== 'flat' || !stays(part)) return [];
    const others = pieces.filter((piece) => piece.part !== part);
    const plates = platesIn(part);
    const empty = part.holes.flatMap((_, i) => {
      const boxes = plates.flatMap((plate) => holeBox(plate, i) ?? []);
      const filled = boxes.some((box) => others.some(({ extent }) => airBetween(box, extent) < -TOUCH));
      return boxes.length === 0 || filled ? [] : [boxes[0] as Extent];
    });
    return empty.map((box) => told(part, box));
  });
}

/** Glass, spacers and holders come and go, and their holes with what is under them. */
const stays = ({ placements }: Part): boolean =>
  placements.every(({ group }) => group === 'front' || group === 'rear' || group === 'back');

/** What goes through a hole reaches so far into it, mm. */
const TOUCH = 0.1;

/** The box of a hole that something should go through; null where it is a window, a pilot or lies round the axis. */
function holeBox({ holes, thickAlong, low, high }: StandingPlate, i: number): Extent | null {
  const { left, right, bottom, top } = boundsOfPoints(holes[i] ?? []);
  const wide = Math.max(right - left, top - bottom);
  const roundAxis = thickAlong === 'z' && left < 0 && right > 0 && bottom < 0 && top > 0;
  if (wide > WINDOW || wide <= PILOT || roundAxis) return null;
  const thick = [low, high] as const;
  if (thickAlong === 'z') return { x: [left, right], y: [bottom, top], z: thick };
  return thickAlong === 'x'
    ? { x: thick, y: [bottom, top], z: [left, right] }
    : { x: [left, right], y: thick, z: [bottom, top] };
}

const told = ({ id, name }: Part, { x, y, z }: Extent): Finding => {
  const middle = ([from, to]: readonly [number, number]) => mm(tenth((from + to) / 2));
  return {
    rule: 'empty-hole',
    level: 'warning',
    value: 0,
    limit: 1,
    unit: 'parts',
    message: `Nothing goes through the hole of ${id} (${name}) at x ${middle(x)}, y ${middle(y)}, z ${middle(z)}: something was forgotten there.`,
    hint: 'Put in what it was cut for, or leave the hole out.',
  };
};
