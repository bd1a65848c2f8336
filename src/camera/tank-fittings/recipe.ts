import { type ClosedPath, polygon, reversed, type Vertex } from '../../geometry/path.js';
import { across, frame, type Matrix4 } from '../../geometry/placement.js';
import { box, boxAt, circle, clipped, rectangle } from '../../geometry/shapes.js';
import type { Prism, SolidRecipe } from '../../geometry/solid.js';
import type { Cap } from './cap.js';
import type { Funnel } from './funnel.js';
import { type Insert, LEAN_RISE } from './insert.js';
import type { Neck } from './neck.js';
import { PAST } from './printing.js';

/** So far a sloping face begins within what carries it, for the same reason. */
const WITHIN = 0.5;

/** Spout or vent as it is printed: chamber face down, neck up. */
export function insertRecipe(insert: Insert): SolidRecipe {
  const { width, depth, wall, baffle, gap, inside, rooms, height, lean, axis, middle, corner, neck } = insert;
  const toLid = corner === 'right' ? 1 : -1;
  const [u0, v0] = [-middle.u, -middle.v];
  /** A profile in u and w, drawn out along v. */
  const alongV = (profile: ClosedPath, from: number, to: number): Prism =>
    prism(profile, frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [u0, v0 + to, 0]), to - from);
  /** A profile in v and w, drawn out along u; v is counted towards the lid. */
  const alongU = (profile: ClosedPath, from: number, to: number): Prism =>
    prism(
      toLid > 0 ? profile : reversed(profile.map(({ x, y, bulge }) => ({ x: -x, y, bulge }))),
      frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [u0 + from, v0, 0]),
      to - from,
    );
  const place = { x: u0 + axis.u, y: v0 + axis.v };
  const well = rooms[4];
  const others = rooms.slice(0, 4);
  const shoulder = well.from - baffle;
  // upright again below the roof, where the bore begins
  const leant = well.roof - PAST;
  const foot = leant - LEAN_RISE * lean;
  const block = polygon([
    [0, 0],
    [width, 0],
    [width, height.high],
    [shoulder, height.high],
    [wall, height.low],
    [0, height.low],
  ]);
  const back = polygon([
    [0, foot - PAST],
    [depth / 2, foot - PAST],
    [depth / 2, foot],
    [depth / 2 + lean, leant],
    [depth / 2 + lean, height.high],
    [0, height.high],
  ]);
  const leaning = polygon([
    [-inside / 2, wall],
    [inside / 2, wall],
    [inside / 2, foot],
    [inside / 2 + lean, leant],
    [inside / 2 + lean, well.roof],
    [-inside / 2, well.roof],
  ]);
  return {
    add: [
      alongV(block, -depth / 2, depth / 2),
      ...(lean > 0 ? [alongU(back, well.from - wall, width)] : []),
      ...neckRecipe(neck, place, height.high),
    ],
    cut: [
      // the exit has no floor
      ...others.map(({ from, to, roof }, i) =>
        alongV(rectangle(box(from, i === 0 ? -PAST : wall, to, roof)), -inside / 2, inside / 2),
      ),
      alongU(lean > 0 ? leaning : rectangle(box(-inside / 2, wall, inside / 2, well.roof)), well.from, well.to),
      // past the end of each baffle, at either side in turn
      ...others.map(({ to, roof }, i) => {
        const opening = rectangle(box(to - WITHIN, wall, to + baffle + WITHIN, roof));
        return toLid > 0 === (i % 2 === 0)
          ? alongV(opening, -inside / 2, gap - inside / 2)
          : alongV(opening, inside / 2 - gap, inside / 2);
      }),
      upright(
        clipped(boxAt(place.x, place.y, neck.bore.width, neck.bore.depth), neck.bore.clip),
        well.roof - PAST,
        height.high + neck.rim + PAST,
      ),
    ],
  };
}

/** What a neck adds to a block whose roof is at a height, its bore still to be taken away. */
function neckRecipe({ radius, lip, lug, rim }: Neck, { x, y }: Place, roof: number): readonly Prism[] {
  const at = (prism: Prism): Prism => ({ ...prism, matrix: across(x, y, roof + (prism.matrix[14] as number)) });
  return [
    // where the neck is wider than the block it grows out of its side at 45°
    cone(radius - FOOT, radius, -FOOT, 0),
    upright(circle(0, 0, 2 * radius), -WITHIN, rim),
    cone(radius - WITHIN, lip.radius, rim - lip.edge - lip.height - WITHIN, rim - lip.edge),
    upright(circle(0, 0, 2 * lip.radius), rim - lip.edge, rim),
    ...turns(lug.count).flatMap((turn) => {
      const slice = (r: number) => pie(r, turn - lug.angle / 2, turn + lug.angle / 2);
      const out = lug.radius - radius;
      return [
        tapering(slice(radius - WITHIN), lug.from - WITHIN, lug.from + out, lug.radius / (radius - WITHIN)),
        upright(slice(lug.radius), lug.from + out, lug.top),
      ];
    }),
  ].map(at);
}

/** Height of the cone under a neck. */
const FOOT = 3;

/** The cap as it is printed, its top down. */
export function capRecipe({ thickness, height, apothem, bore, groove, entry, turn, lugs }: Cap): SolidRecipe {
  const octagon = clipped(boxAt(0, 0, 2 * apothem, 2 * apothem), apothem * (1 - Math.tan(Math.PI / 8)));
  const slope = groove.radius - bore + WITHIN;
  return {
    add: [upright(octagon, 0, height)],
    cut: [
      upright(circle(0, 0, 2 * bore), thickness, height + PAST),
      ...turns(lugs).flatMap((at) => {
        const wayIn = pie(groove.radius, at + turn - entry / 2, at + turn + entry / 2);
        const wayRound = pie(groove.radius, at - entry / 2, at + turn + entry / 2);
        return [
          upright(wayIn, groove.from, height + PAST),
          upright(wayRound, groove.from, groove.to),
          tapering(wayRound, groove.to, groove.to + slope, (bore - WITHIN) / groove.radius),
        ];
      }),
    ],
  };
}

/** The funnel as it is printed, its mouth down. */
export function funnelRecipe({ mouth, throat, wall, cone: from, stem, socket, height, seat }: Funnel): SolidRecipe {
  const [tube, sleeve] = [throat + wall.sloping, seat.wide + wall.upright];
  const perHeight = (seat.wide - seat.narrow) / seat.depth;
  return {
    add: [
      upright(circle(0, 0, 2 * mouth), 0, from),
      cone(mouth, throat + wall.sloping, from, stem),
      upright(circle(0, 0, 2 * tube), stem - PAST, socket + PAST),
      cone(tube - WITHIN, sleeve, socket - (sleeve - tube) - WITHIN, socket),
      upright(circle(0, 0, 2 * sleeve), socket, height),
    ],
    cut: [
      upright(circle(0, 0, 2 * (mouth - wall.sloping)), -PAST, from),
      cone(mouth - wall.sloping, throat, from, stem),
      upright(circle(0, 0, 2 * throat), stem - PAST, socket + PAST),
      cone(seat.narrow, seat.wide + PAST * perHeight, socket, height + PAST),
    ],
  };
}

interface Place {
  readonly x: number;
  readonly y: number;
}

const prism = (profile: ClosedPath, matrix: Matrix4, height: number): Prism => ({ profile, holes: [], height, matrix });

/** From one height to another on the bed. */
const upright = (profile: ClosedPath, from: number, to: number): Prism => prism(profile, across(0, 0, from), to - from);

const tapering = (profile: ClosedPath, from: number, to: number, taper: number): Prism => ({
  ...upright(profile, from, to),
  taper,
});

/** From one radius to another, round the origin. */
const cone = (radius: number, end: number, from: number, to: number): Prism =>
  tapering(circle(0, 0, 2 * radius), from, to, end / radius);

/** Angles all round. */
const turns = (count: number): readonly number[] => Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count);

/** A slice of a disc round the origin, between two angles, rad. */
function pie(radius: number, from: number, to: number): ClosedPath {
  const at = (angle: number, bulge: number): Vertex => ({
    x: radius * Math.cos(angle),
    y: radius * Math.sin(angle),
    bulge,
  });
  return [{ x: 0, y: 0, bulge: 0 }, at(from, Math.tan((to - from) / 4)), at(to, 0)];
}
