import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { outlineOf, outlinesOf } from '../../assembly/measure.js';
import { stands } from '../../assembly/setups.js';
import { spansOf } from '../../assembly/span-of.js';
import { MOST_SHIMS } from '../../joinery/lamination.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import type { PlacedSpacer } from './size.js';

/** The layers of a spacer as they lie on the seat in one of its set-ups, and its pins. */
function stackOf({ spacer }: PlacedSpacer, build: Build) {
  const ply = spacer.id;
  const parts = build.parts.filter(({ id }) => id === ply || id === `${ply}T` || id.startsWith(`${ply}-shim-`));
  const setup = build.setups.find((one) => parts.some(({ placements }) => placements.some((p) => stands(p, one))));
  const when = setup ? { setup } : {};
  const layers = parts.flatMap(({ id }) => outlinesOf(build, id, when));
  const seat = outlineOf(build, 'B1', when).high;
  const shims = layers.filter(({ part }) => part.kind === 'bought');
  const pins = build.parts
    .filter(({ id }) => id.startsWith(`${ply}-pin-`))
    .flatMap(({ id }) => spansOf(build, id, when));
  const top = Math.max(seat, ...layers.map(({ high }) => high));
  return { layers, shims, plies: layers.length - shims.length, pins, thickness: top - seat, top, seat };
}

/** register: the spacer as it lies on the seat, against the distance between glass and film that it must make up for. */
export function register(own: PlacedSpacer, build: Build): readonly Finding[] {
  const { tolerance, holder, under, thickness, glued } = own.spacer;
  // one that was measured is judged with glass and film as they stand
  if (glued !== null) return [];
  const left = thickness - stackOf(own, build).thickness;
  const off = Math.abs(left);
  // what the spacer lacks, the glass or the film lies too near to the seat
  const short = left > 0 ? 'ahead of' : 'behind';
  return unless(off <= tolerance + ROUNDING, {
    rule: 'register',
    level: 'error',
    value: left,
    limit: tolerance,
    unit: 'mm',
    about: 'shims',
    message: `Sharp on the glass is soft in the picture: with the spacer for ${holder} the ${under === 'holder' ? 'film' : 'glass'} stands ${mm(thousandth(off))} ${short} its place, ${plainNumber(off / tolerance, 1)} times the tolerance of ${mm(thousandth(tolerance))}.`,
    hint: `Add a shim of ${mm(Math.max(0.05, Math.round(off * 20) / 20))} to the list, or another sheet to the stock.`,
  });
}

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/**
 * spacer-shims: more than a few slide about, glue in or without.
 *
 * The sheets that are named are what the plies leave of the whole thickness, and not the sum of the shims, which misses
 * that by as much as it may; and to a hundredth, for a tenth is half of what it may miss.
 */
export function spacerShims(own: PlacedSpacer, build: Build): readonly Finding[] {
  const { shims, plies, layers } = stackOf(own, build);
  const { ply } = own.wood;
  // the one ply of other sheet that there may be makes room for the one that is named
  const ofSheet = layers.filter(
    ({ part, low, high }) => part.kind !== 'bought' && Math.abs(high - low - ply.thickness) < ROUNDING,
  ).length;
  const rest = own.spacer.thickness - ofSheet * ply.thickness;
  return unless(shims.length <= MOST_SHIMS, {
    rule: 'spacer-shims',
    level: 'warning',
    value: shims.length,
    limit: MOST_SHIMS,
    unit: 'shims',
    about: 'stock',
    message: `The spacer for ${own.spacer.holder} takes ${shims.length} shims ${plies === 0 ? 'and no ply' : `on ${plies} ${plies === 1 ? 'ply' : 'plies'} of ${mm(ply.thickness)}`}: they slide about.`,
    hint: `Add a sheet near ${mm(hundredth(rest))} to the stock for one ply${ofSheet > 0 ? `, or one near ${mm(hundredth(rest + ply.thickness))} in place of a ply` : ''}.`,
  });
}

/** More layers than these are no spacer that anybody glues, and every glue line strays; a choice of ours. */
const MOST_LAYERS = 40;

/** spacer-layers: a film depth or a thickness of sheet that was mistyped, most of the time. */
export function spacerLayers(own: PlacedSpacer, build: Build): readonly Finding[] {
  const { layers, thickness } = stackOf(own, build);
  const count = layers.length;
  return unless(count <= MOST_LAYERS, {
    rule: 'spacer-layers',
    level: 'error',
    value: count,
    limit: MOST_LAYERS,
    unit: 'layers',
    about: 'plywood.thickness',
    message: `The spacer for ${own.spacer.holder} would be glued of ${count} layers, to ${mm(hundredth(thickness))}: ${MOST_LAYERS} are the most that stay true.`,
    hint: 'Look at the film depth, at the depth of the glass and at the thickness of the sheet: one of them is likely mistyped. Else use thicker sheet.',
  });
}

/** So far a pin must stand proud to hold what lies on the spacer; common practice, no source. */
const PROUD = 2;

/** spacer-held: what is thicker than the well's fence is held by pins alone. */
export function spacerHeld(own: PlacedSpacer, build: Build): readonly Finding[] {
  const { thickness, top, seat, pins } = stackOf(own, build);
  const fence = outlineOf(build, 'B3').high - seat;
  const pinned = pins.filter(({ z }) => z[1] >= top + PROUD - ROUNDING).length >= 2;
  return unless(thickness <= fence + ROUNDING || pinned, {
    rule: 'spacer-held',
    level: 'error',
    value: thickness,
    limit: fence,
    unit: 'mm',
    about: 'stock',
    message: `The spacer for ${own.spacer.holder} falls out of the well: it is ${mm(hundredth(thickness))} thick, the fence ${mm(hundredth(fence))}, and ${pins.length < 2 ? 'it has no ply to carry pins' : 'its pins do not stand proud'}.`,
    hint: `Add a sheet of ${mm(hundredth(fence))} or less to the stock for one ply.`,
  });
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

export const spacerChecks = [register, spacerShims, spacerLayers, spacerHeld];
