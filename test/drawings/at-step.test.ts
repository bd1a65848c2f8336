import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { type Piece, piecesOf } from '../../src/assembly/pieces.js';
import { stands } from '../../src/assembly/setups.js';
import { atStep } from '../../src/drawings/at-step.js';
import { pulled } from '../../src/drawings/pulled.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Axis } from '../../src/model/assembly-move.js';
import type { Part } from '../../src/model/part.js';
import { planCamera } from '../../src/pipeline.js';
import { orderOf } from '../../src/proof/order.js';
import { keptDesign, keptDesigns, secondLens } from '../designs/kept-design.js';

const kernel = await loadKernel();

/** A screw by its name; the head of one that is drawn by itself is none. */
const isScrew = ({ kind, name }: Part): boolean =>
  kind === 'bought' && /screw|bolt/.test(name) && !/^head of|\bnut\b/.test(name);

/** Along which axis a rod lies. */
const axisOf = ({ placement: { matrix } }: Piece): Axis =>
  (['x', 'y', 'z'] as const).find((_, i) => Math.abs(matrix[8 + i] as number) > 0.99) as Axis;

/**
 * Towards which side a screw has its head, by what stands round it: its nut is near its tip; without one its tip ends in
 * wood, and over its head there is none.
 */
function headSide({ parts, setups }: Build, screw: Piece): number {
  const setup = setups.find((one) => stands(screw.placement, one));
  if (setup === undefined) throw new Error(`${screw.key} never stands`);
  const axis = axisOf(screw);
  const isJoined = (one: Part) =>
    screw.part.joins.some(({ to }) => to === one.id) || one.joins.some(({ to }) => to === screw.part.id);
  const middle = (piece: Piece, k: Axis) => (piece.extent[k][0] + piece.extent[k][1]) / 2;
  const isOnAxis = (piece: Piece) =>
    (['x', 'y', 'z'] as const)
      .filter((k) => k !== axis)
      .every((k) => piece.extent[k][0] <= middle(screw, k) && middle(screw, k) <= piece.extent[k][1]);
  const round = piecesOf(parts).filter(
    (piece) => isJoined(piece.part) && stands(piece.placement, setup) && isOnAxis(piece),
  );
  const nut = round.find(({ part }) => /\bnut\b|knob/.test(part.name));
  if (nut !== undefined) return Math.sign(middle(screw, axis) - middle(nut, axis));
  const isWoodAt = (at: number) =>
    round.some(({ part, extent }) => part.kind === 'flat' && extent[axis][0] < at && at < extent[axis][1]);
  const [low, high] = screw.extent[axis];
  const [below, above] = [isWoodAt(low - 0.05), isWoodAt(high + 0.05)];
  if (below === above) throw new Error(`nobody knows where ${screw.key} has its head`);
  return below ? 1 : -1;
}

const designs = [...keptDesigns.map((name) => [name, keptDesign(name)] as const), ['teal-210', secondLens()] as const];

describe.each(designs)('%s', (_, design) => {
  test('each screw hovers on the side of its head, from which it is driven', () => {
    const { build } = planCamera(design);
    const { moves, findings } = orderOf(build, kernel);
    expect(findings).toEqual([]);
    const steps = [...new Set(moves.map(({ step }) => step))].map((step) => atStep(build, moves, step));
    const drawn = steps.flatMap((at) => {
      const coming = new Set(at.arrivals.flatMap(({ pieces, whole }) => (whole === null ? pieces : [])));
      return pulled(at).pieces.filter(({ piece }) => coming.has(piece) && isScrew(piece.part));
    });
    expect(new Set(drawn.map(({ piece }) => piece.part.id))).toEqual(
      new Set(build.parts.filter(isScrew).map(({ id }) => id)),
    );
    for (const { piece, out } of drawn)
      expect(Math.sign(out[axisOf(piece)]), `${piece.key} is drawn out along ${axisOf(piece)}`).toBe(
        headSide(build, piece),
      );
  });
});
