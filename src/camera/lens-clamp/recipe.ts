import { moved } from '../../geometry/path.js';
import { across, frame, type Matrix4 } from '../../geometry/placement.js';
import { boxAt, circle, rectangle, rounded } from '../../geometry/shapes.js';
import type { Prism, SolidRecipe } from '../../geometry/solid.js';
import { type LensClamp, screwPlaces, uprightHexagon } from './size.js';

/** How far a prism reaches into its neighbour, or a cut into the air, so that no two faces of a step coincide. */
const PAST = 1;

/** The clamp as it is printed: flange down, axis upright, without support. */
export function clampRecipe(clamp: LensClamp): SolidRecipe {
  const { bore, collarDiameter, flangeDiameter, flangeThickness, length, lug, pinch, pocket, screwHole, slit } = clamp;
  const pocketFloor = flangeThickness - pocket.depth;
  const places = screwPlaces(clamp);
  const nutPocket = uprightHexagon(pocket.acrossFlats);
  const half = lug.width / 2;

  const bar = rounded(boxAt(0, 0, 2 * lug.reach, lug.width), lug.cornerRadius);
  const overSlit = rectangle(boxAt(0, 0, 2 * (lug.reach + PAST), slit));
  /** From one height to another along the axis. */
  const upright = (profile: Prism['profile'], from: number, to: number): Prism =>
    prism(profile, across(0, 0, from), to - from);
  /** Through the lugs, from y down to another y: profiles stand upright in the x, z plane. */
  const level = (profile: Prism['profile'], side: number, from: number, to: number): Prism =>
    prism(profile, frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [side * pinch.fromAxis, from, pinch.height]), from - to);

  return {
    add: [
      upright(circle(0, 0, flangeDiameter), 0, flangeThickness),
      upright(circle(0, 0, collarDiameter), flangeThickness - PAST, length),
      upright(bar, flangeThickness - PAST, length),
    ],
    cut: [
      upright(circle(0, 0, bore), -PAST, length + PAST),
      upright(overSlit, flangeThickness, length + PAST),
      ...places.map(({ x, y }) => upright(circle(x, y, screwHole), -PAST, pocketFloor + PAST)),
      ...places.map(({ x, y }, i) => {
        const turn = clamp.screwAngles[i] as number;
        return upright(moved(nutPocket, { x, y, turn }), pocketFloor, flangeThickness + PAST);
      }),
      ...[1, -1].flatMap((side) => [
        level(circle(0, 0, screwHole), side, half + PAST, -half - PAST),
        level(nutPocket, side, pocket.depth - half, -half - PAST),
      ]),
    ],
  };
}

const prism = (profile: Prism['profile'], matrix: Matrix4, height: number): Prism => ({
  profile,
  holes: [],
  height,
  matrix,
});
