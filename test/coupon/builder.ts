import { type Coupon, drawCoupon } from '../../src/coupon/piece.js';
import { couponSheet } from '../../src/coupon/sheet.js';
import { boundsOf, type Vertex } from '../../src/geometry/path.js';
import type { Random } from '../../src/packing/random.js';
import type { Sheet } from '../../src/sheets/sheet.js';

/** The design's own fits, as contract and README have them. */
export const usualFits = { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 };

export const drawn = (over: { kerf?: number; thickness?: number; margin?: number; fits?: typeof usualFits } = {}) => {
  const { kerf = 0.15, thickness = 4.05, margin = 5, fits = usualFits } = over;
  const spacing = Math.max(2, thickness / 2);
  const given = { material: `plywood-${thickness}`, thickness, density: 680, kerf, fits, spacing };
  const coupon = drawCoupon(given);
  return { coupon, sheet: couponSheet(coupon, { ...given, margin }), given };
};

/** The outlines of a part along which the beam goes, in the order of its pieces. */
export const outlinesOf = (sheet: Sheet, part: string): readonly (readonly Vertex[])[] =>
  (sheet.operations.find(({ layer }) => layer === 'cut-outside')?.paths ?? [])
    .filter(({ id }) => id.startsWith(`${part}.`))
    .map(({ path }) => path.vertices);

/** Widths between the walls of what is cut into an edge, left to right, along the lines of the beam. */
export function gapsAlong(outline: readonly Vertex[], edge: 'top' | 'bottom'): readonly number[] {
  const level = boundsOf(outline)[edge];
  const walls = outline
    .filter(({ y }) => Math.abs(y - level) < 1e-6)
    .map(({ x }) => x)
    .sort((a, b) => a - b)
    .slice(1, -1);
  return walls.flatMap((x, i) => (i % 2 === 1 ? [x - (walls[i - 1] ?? x)] : []));
}

export interface Truth {
  /** What the beam really removes, moving a wall along x or along y. */
  readonly kerfX: number;
  readonly kerfY: number;
  readonly thickness: number;
  /** Slot less tongue at which this hand calls a joint a press fit and so on. */
  readonly feels: typeof usualFits;
}

/** The nearest the hand can tell: it takes the sample closest to what it wants. */
const closest = (marks: readonly number[], real: readonly number[], wanted: number): number => {
  const off = real.map((value) => Math.abs(value - wanted));
  return marks[off.indexOf(Math.min(...off))] ?? Number.NaN;
};

/** A caliper of ±0.02 mm: an even spread, and hundredths on its scale. */
export const misread = (random: Random): number => (2 * random() - 1) * 0.02;
export const onTheScale = (length: number): number => Math.round(length * 100) / 100;

/**
 * Somebody who cuts the sheet with a real beam and measures what falls out. Knows the lines of the beam and what is
 * engraved, and nothing of how the piece was worked out.
 */
export function handleCoupon(
  coupon: Coupon,
  sheet: Sheet,
  truth: Truth,
  error: (reading: 'x' | 'y' | 'thickness') => number,
) {
  const across = (part: string, side: 'x' | 'y', kerf: number) =>
    outlinesOf(sheet, part).reduce((sum, outline) => {
      const { left, right, bottom, top } = boundsOf(outline);
      return sum + (side === 'x' ? right - left : top - bottom) - kerf;
    }, 0);
  const [plate = []] = outlinesOf(sheet, 'test-plate');
  const [tongue = []] = outlinesOf(sheet, 'tongue');
  const notches = gapsAlong(plate, 'top').map((gap) => gap + truth.kerfX);
  const slots = gapsAlong(plate, 'bottom').map((gap) => gap + truth.kerfX);
  // the tongue stands out to the left: its two walls are level
  const tip = boundsOf(tongue).left;
  const walls = tongue.filter(({ x }) => Math.abs(x - tip) < 1e-6).map(({ y }) => y);
  const tongueWide = Math.max(...walls) - Math.min(...walls) - truth.kerfY;
  const real = notches.map((notch) => notch - tongueWide);
  const { feels } = truth;
  const entered = slots.findIndex((width) => width >= truth.thickness);
  return {
    x: onTheScale(across('comb-x', 'x', truth.kerfX) + error('x')),
    y: onTheScale(across('comb-y', 'y', truth.kerfY) + error('y')),
    thickness: onTheScale(truth.thickness + error('thickness')),
    slot: coupon.slots[entered] ?? null,
    fits: {
      press: closest(coupon.fits, real, feels.press),
      glueSlip: closest(coupon.fits, real, feels.glueSlip),
      slide: closest(coupon.fits, real, feels.slide),
      dropIn: closest(coupon.fits, real, feels.dropIn),
    },
  };
}
