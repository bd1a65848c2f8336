import type { Extent } from '../assembly/extent.js';
import { openingRound } from '../assembly/measure.js';
import { boundsOfPoints } from '../geometry/path.js';
import type { Point3 } from '../geometry/placement.js';
import type { LightJoint } from '../model/proof.js';
import { type LightPlace, worstJoints } from './light-joints.js';
import type { Scene } from './light-scene.js';

/** Land of a lid at its sides, and where its corners are cut for the blocks, mm; common practice, no source. */
const LAND = { side: 10, corner: 8 };
/** Past the edges of a joint, and short of its pad, mm. */
const BESIDE = 3;
const IN_GAP = 0.2;

const SIDES: readonly Point3[] = [
  { x: 1, y: 0, z: 0 },
  { x: -1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
  { x: 0, y: -1, z: 0 },
];
const CORNERS: readonly Point3[] = [1, -1].flatMap((sx) =>
  [1, -1].map((sy) => ({ x: sx * Math.SQRT1_2, y: sy * Math.SQRT1_2, z: 0 })),
);

/** Under the lid of a holder that is made, and down beside its pad: at the four sides of the pocket and at its corners. */
export function lidJoints(scene: Scene, holder: string): readonly LightJoint[] {
  const { solids, build } = scene;
  const pocket = solids.find(({ piece }) => piece.part.id.startsWith('HP'));
  const lid = solids.find(({ piece }) => piece.part.id.startsWith('HD'));
  const [setup, station] = [build.setups[0], build.stations[0]];
  if (pocket === undefined || lid === undefined || setup === undefined || station === undefined) return [];
  const hole = openingRound(pocket.piece.part, pocket.piece.placement, 'z');
  if (!hole) return [];
  const round = boundsOfPoints(hole);
  const outer = pocket.piece.extent;
  const rear = lid.piece.extent.z[1];
  const place = (right: Point3, origin: Point3, land: number): LightPlace => {
    const far = farthest(outer, origin, right);
    return {
      joint: land === LAND.side ? `lid of the ${holder}` : `lid of the ${holder}, at its cut corners`,
      shutBy: 'land under the lid, and its pad in the pocket',
      stance: { setup, station, push: 'none' },
      cut: { origin, right, up: { x: 0, y: 0, z: 1 } },
      window: { left: -LAND.side, right: far + 2 * BESIDE, bottom: outer.z[0] - IN_GAP, top: rear + 2 * BESIDE },
      from: { r: far + BESIDE, h: rear + BESIDE },
      to: { r: -IN_GAP, h: outer.z[0] + IN_GAP / 2 },
      land,
      without: solids.map(({ piece }) => piece.part.id).filter((id) => /^HT|^lid-screw/.test(id)),
      glued: false,
      leaves: false,
    };
  };
  // clear of the middle, where a part may be cut to pieces
  const aside = 7;
  return worstJoints(scene, [
    ...SIDES.map((right) =>
      place(
        right,
        right.x !== 0
          ? { x: right.x > 0 ? round.right : round.left, y: aside, z: 0 }
          : { x: aside, y: right.y > 0 ? round.top : round.bottom, z: 0 },
        LAND.side,
      ),
    ),
    ...CORNERS.map((right) =>
      place(
        right,
        { x: right.x > 0 ? round.right : round.left, y: right.y > 0 ? round.top : round.bottom, z: 0 },
        LAND.corner,
      ),
    ),
  ]);
}

/** How far a direction runs in a box until it leaves it. */
function farthest({ x, y }: Extent, from: Point3, towards: Point3): number {
  const along = (stretch: readonly [number, number], at: number, way: number) =>
    Math.abs(way) < 1e-9 ? Infinity : ((way > 0 ? stretch[1] : stretch[0]) - at) / way;
  return Math.min(along(x, from.x, towards.x), along(y, from.y, towards.y));
}
