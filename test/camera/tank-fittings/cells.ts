import type { Piece } from '../../../src/assembly/pieces.js';
import { woodAlong } from '../../../src/assembly/sight-line.js';
import type { Insert } from '../../../src/camera/tank-fittings/insert.js';

/** Side of a cell, mm: no wall is thinner than two. */
const CELL = 0.5;

/**
 * A witness for what stays in an insert that is turned over, neck down, and tilted to its corner (rad): ml. It knows nothing
 * of rooms. The block is cut into cells; each learns from its six neighbours how high water must stand in it to run out at
 * the neck, which is the height of the easiest of them, or its own where that is higher. Where that is above a cell, the cell
 * is under water.
 */
export function drownedMl(insert: Insert, piece: Piece, tilt: number): number {
  const { width, depth, height, neck, lean, middle, axis } = insert;
  const across = depth / 2 + lean;
  // one more all round, which counts as wall
  const [nu, nv, nw] = [width, 2 * across, height.high + neck.rim].map((side) => Math.floor(side / CELL) + 2) as [
    number,
    number,
    number,
  ];
  const at = (index: number) => (index - 0.5) * CELL;
  const above = (w: number) => Math.min(nw - 1, Math.max(1, Math.ceil(w / CELL + 0.5)));
  const level = new Float64Array(nu * nv * nw).fill(Number.NaN);
  const own = new Float64Array(nu * nv * nw);
  const passage: number[] = [];
  const wall = new Uint8Array(nu * nv * nw).fill(1);
  for (let u = 1; u < nu - 1; u++)
    for (let v = 1; v < nv - 1; v++) {
      const column = (u * nv + v) * nw;
      const [x, y] = [at(u), at(v) - across];
      wall.fill(0, column + 1, column + nw - 1);
      const line = { from: { x: x - middle.u, y: y - middle.v, z: -1 }, towards: { x: 0, y: 0, z: 1 } };
      for (const [from, to] of woodAlong(line, piece)) wall.fill(1, column + above(from - 1), column + above(to - 1));
      const inBore = Math.abs(x - axis.u) < neck.bore.width / 2 && Math.abs(y - axis.v) < neck.bore.depth / 2;
      for (let w = 1; w < nw - 1; w++) {
        const cell = column + w;
        if (wall[cell] === 1) continue;
        passage.push(cell);
        own[cell] = x * Math.sin(tilt) - at(w) * Math.cos(tilt);
        level[cell] = inBore && w === nw - 2 ? (own[cell] as number) : Infinity;
      }
    }
  const steps = [1, -1, nw, -nw, nv * nw, -nv * nw];
  for (let changed = true; changed; passage.reverse()) {
    changed = false;
    for (const cell of passage) {
      let easiest = Infinity;
      for (const step of steps) {
        const beside = level[cell + step] as number;
        if (beside < easiest) easiest = beside;
      }
      const here = Math.max(easiest, own[cell] as number);
      if (here >= (level[cell] as number)) continue;
      level[cell] = here;
      changed = true;
    }
  }
  const drowned = passage.filter((cell) => {
    const here = level[cell] as number;
    return here < Infinity && here > (own[cell] as number) + CELL / 4;
  });
  return (drowned.length * CELL ** 3) / 1000;
}
