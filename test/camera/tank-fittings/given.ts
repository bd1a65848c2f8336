import type { TankFittingsGiven } from '../../../src/camera/tank-fittings/given.js';

/**
 * A tank for 5x7 as camera.md, section 13, sets it out: plies of 4.05, slide channel 1.75, sheet 127 by 178 with 3 more to
 * each side, image 120.6 wide, a lip of 0.5 and a lid of two plies behind the chamber.
 */
export function tankOf({ deep = 15.2, wall = 15, nozzle = 0.4, spout = 60, vent = 15 } = {}): TankFittingsGiven {
  const ply = 4.05;
  const front = 2 * ply + 1.75;
  const end = 89 + 3;
  return {
    nozzle,
    chamber: { halfWidth: 63.5 + 3, end },
    openEnd: end + wall,
    notch: { from: front, to: front + deep },
    slide: { halfWidth: (120.6 + 12) / 2, back: ply + 1.75, handle: 15 },
    lid: front + deep + 0.5 + 2 * ply,
    passage: { spout, vent },
  };
}
