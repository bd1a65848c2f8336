import { arcOf, type Box, type ClosedPath, type Point, type Vertex } from '../geometry/path.js';

/** The upright rectangle round a loop, exact for arcs too: on a sheet a hundredth of a millimetre is somebody's spacing. */
export function outerBox(path: ClosedPath): Box {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = ({ x, y }: Point) => {
    left = Math.min(left, x);
    bottom = Math.min(bottom, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  };
  path.forEach((from, i) => {
    take(from);
    if (from.bulge === 0) return;
    const to = path[(i + 1) % path.length] as Vertex;
    const { centre, radius } = arcOf(from, to);
    for (const [x, y] of [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const) {
      const tip = { x: centre.x + radius * x, y: centre.y + radius * y };
      if (onArc(from, to, tip)) take(tip);
    }
  });
  return { left, bottom, right, top };
}

/** Of a point on the arc's circle: it lies on the arc where it stands on the arc's side of the chord. */
function onArc(from: Vertex, to: Point, p: Point): boolean {
  const side = (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
  return from.bulge > 0 ? side < 0 : side > 0;
}
