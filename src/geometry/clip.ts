import {
  areaPaths,
  difference,
  EndType,
  FillRule,
  inflatePaths,
  intersect,
  isPositive,
  JoinType,
  type Paths64,
} from 'clipper2-ts';
import type { Point } from './path.js';

/** Loops of straight edges; holes run against the loop that holds them. */
export type Region = readonly (readonly Point[])[];

/** Grid lines to the millimetre: at a micrometre, half a cut of 0.155 would be rounded and mitres come out wrong. */
const GRID = 10_000;

/**
 * A region grown to all sides (shrunk where `by` is below 0): corners mitred up to twice the distance, or round.
 * Arcs must have been flattened before.
 */
export function grown(region: Region, by: number, { corners }: { readonly corners: 'mitred' | 'round' }): Region {
  const join = corners === 'round' ? JoinType.Round : JoinType.Miter;
  const sagitta = GRID / 1000;
  return offGrid(inflatePaths(onGrid(region), Math.round(by * GRID), join, EndType.Polygon, 2, sagitta));
}

/** Area that two regions share, mm². */
export const sharedArea = (a: Region, b: Region): number =>
  Math.abs(areaPaths(intersect(onGrid(a), onGrid(b), FillRule.NonZero))) / (GRID * GRID);

/** A region with all that some loops enclose cut out of it, whichever way these run, overlapping or over its edge. */
export function without(region: Region, loops: Region): Region {
  if (loops.length === 0) return region;
  // where two that run against each other overlap, they would cancel out
  const alike = onGrid(loops).map((loop) => (isPositive(loop) ? loop : [...loop].reverse()));
  return offGrid(difference(onGrid(region), alike, FillRule.NonZero));
}

/** What two regions share. */
export const common = (a: Region, b: Region): Region => offGrid(intersect(onGrid(a), onGrid(b), FillRule.NonZero));

/** All that lies in one of some regions and in none of some others. */
export function joinedLess(regions: readonly Region[], less: readonly Region[]): Region {
  const whole = onGrid(regions.flatMap(alikeWay));
  return offGrid(difference(whole, onGrid(less.flatMap(alikeWay)), FillRule.NonZero));
}

/** The outermost loop of a region anticlockwise: where two that run against each other overlap, they would cancel out. */
function alikeWay(region: Region): Region {
  const turn = areaPaths(onGrid(region));
  return turn < 0 ? region.map((loop) => [...loop].reverse()) : region;
}

const onGrid = (region: Region): Paths64 =>
  region.map((loop) => loop.map(({ x, y }) => ({ x: Math.round(x * GRID), y: Math.round(y * GRID) })));

const offGrid = (paths: Paths64): Region => paths.map((loop) => loop.map(({ x, y }) => ({ x: x / GRID, y: y / GRID })));
