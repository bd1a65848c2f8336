import type { Extent } from '../assembly/extent.js';
import type { Point3 } from '../geometry/placement.js';
import type { Pulled, PulledPiece } from './pulled.js';
import { type View, viewFrom } from './view.js';

/** A corner from which a step is looked at. */
export interface Look {
  readonly view: View;
  /** In words, without a full stop. */
  readonly words: string;
}

/** Of a direction along z, across, and up or down: no two of the camera's axes are foreshortened alike, and none much. */
const DIRECTION = { along: 0.72, across: 0.55, height: 0.48 } as const;

/**
 * From behind before from the front, from above before from below, from the right before from the left: the order in
 * which one is taken before others that show as much.
 */
const corners = [1, -1].flatMap((y) => [1, -1].flatMap((z) => [1, -1].map((x) => ({ x, y, z }))));

/** So much worse than the best a corner may be that comes before it in the order. */
const AS_GOOD = 0.04;
/** What it is worth that the side to which things go is seen. */
const OPEN_SIDE = 0.5;

/** What is seen from below only is looked at from there, turned over on the bench, or not looked at. */
export type Underneath = 'looked at' | 'turned over' | 'never';

/**
 * Corners from which what a step brings is seen, the best first: most of it, even of what shows least, and the side to
 * which it goes. Boxes stand for the pieces: it is an estimate, and the drawing itself has the last word.
 */
export function looksAt({ pieces, ways }: Pulled, added: ReadonlySet<string>, underneath: Underneath): readonly Look[] {
  const boxes = pieces.map(boxOf);
  // nobody turns over what nothing comes to from below
  const below = underneath !== 'never' && ways.some(({ arrival: { way } }) => way?.axis === 'y' && way.sign > 0);
  const judged = corners
    .filter(({ y }) => y > 0 || below)
    .map(({ x, y, z }) => {
      const toward = { x: DIRECTION.across * x, y: DIRECTION.height * y, z: DIRECTION.along * z };
      const seen = pieces.flatMap(({ piece }, i) =>
        added.has(piece.key) ? [shareSeen(boxes[i] as Extent, boxes, i, toward)] : [],
      );
      const mean = seen.reduce((sum, share) => sum + share, 0) / (seen.length || 1);
      const least = Math.min(1, ...seen);
      const open = ways.filter(({ arrival: { way } }) => way !== null && toward[way.axis] * way.sign < 0).length;
      const score = mean + least + (OPEN_SIDE * open) / (ways.length || 1);
      return { score, x, y, z, toward };
    });
  const best = Math.max(...judged.map(({ score }) => score));
  const first = judged.find(({ score }) => score >= best - AS_GOOD);
  const order = [...judged].sort((a, b) => (a === first ? -1 : b === first ? 1 : b.score - a.score));
  return order.map(({ x, y, z, toward }) => {
    const view = viewFrom(toward);
    const from = `Seen from ${z > 0 ? 'behind' : 'the front'}, from the ${x > 0 ? 'right' : 'left'}`;
    if (y > 0) return { view, words: `${from} and above` };
    if (underneath === 'looked at') return { view, words: `${from} and below` };
    return { view: turnedOver(view), words: `Turned upside down; ${from.charAt(0).toLowerCase()}${from.slice(1)}` };
  });
}

/** Half a turn on the paper: what is looked at from below lies upside down on the bench. */
const turnedOver = ({ right, up, toward }: View): View => ({ right: back(right), up: back(up), toward });

const back = ({ x, y, z }: Point3): Point3 => ({ x: -x, y: -y, z: -z });

const boxOf = ({ piece: { extent }, out }: PulledPiece): Extent => ({
  x: [extent.x[0] + out.x, extent.x[1] + out.x],
  y: [extent.y[0] + out.y, extent.y[1] + out.y],
  z: [extent.z[0] + out.z, extent.z[1] + out.z],
});

/** Points are looked at a little inside the corners. */
const INSIDE = 0.04;
const SHARES = [INSIDE, 0.5, 1 - INSIDE] as const;

/** Of a grid of points in a box, how many no other box hides. */
function shareSeen(box: Extent, boxes: readonly Extent[], own: number, toward: Point3): number {
  let seen = 0;
  let all = 0;
  const at = (k: 'x' | 'y' | 'z', share: number) => box[k][0] + share * (box[k][1] - box[k][0]);
  for (const x of SHARES)
    for (const y of SHARES)
      for (const z of SHARES) {
        all++;
        const point = { x: at('x', x), y: at('y', y), z: at('z', z) };
        if (!boxes.some((other, i) => i !== own && hides(other, point, toward))) seen++;
      }
  return seen / all;
}

/** Whether a box stands between a point and the eye. */
function hides(box: Extent, point: Point3, toward: Point3): boolean {
  let [from, to] = [NEAR, Infinity];
  for (const k of ['x', 'y', 'z'] as const) {
    const [low, high] = toward[k] > 0 ? box[k] : [box[k][1], box[k][0]];
    from = Math.max(from, (low - point[k]) / toward[k]);
    to = Math.min(to, (high - point[k]) / toward[k]);
    if (from >= to) return false;
  }
  return true;
}

/** What touches a point does not hide it, mm. */
const NEAR = 0.5;
