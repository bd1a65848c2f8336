import type { Build } from '../../../src/assembly/build.js';
import { setupsOf } from '../../../src/assembly/setups.js';
import { tankParts } from '../../../src/camera/tank/parts.js';
import { sizeTank, type Tank, type TankGiven } from '../../../src/camera/tank/size.js';

/** The holder of the 5x7 in which it processes its prints: camera.md sections 4, 13 and 17, sheet of 4.05. */
export const given = (change: Partial<TankGiven> & { readonly ply?: number } = {}): TankGiven => {
  const { ply = 4.05, ...rest } = change;
  const sheetOf = (material: string, thickness: number) => ({ material, thickness, density: 680 });
  return {
    number: 2,
    name: 'processing holder',
    wood: { ply: sheetOf('plywood', ply), fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 } },
    boards: {
      channel: sheetOf('board-1.25', 1.25),
      lip: sheetOf('board-0.5', 0.5),
      slide: sheetOf('board-1', 1),
    },
    pile: 1,
    seat: 0,
    width: 156,
    closedExtent: 105.7,
    openExtent: 108.3,
    image: { short: 120.6, long: 171.4 },
    sheet: { width: 127, height: 177.8, thickness: 0.25 },
    glass: { thickness: 3, refractiveIndex: 1.52 },
    filmDepth: 24,
    shims: [0.1, 0.25, 0.5],
    stock: [],
    within: 0.11,
    pinHoles: [],
    pinProud: 3,
    stance: { behindSeat: 0, upright: ['processing holder, upright'], lengthwise: ['processing holder, lengthwise'] },
    on: 'B1',
    // 1.7 into the walls, 32 and 28 wide, as the printed blocks come out
    notchesFor: ({ chamber: { halfWidth, end }, openEnd }) => [
      { left: -halfWidth - 1.7, right: 28 - halfWidth, bottom: end, top: openEnd },
      { left: halfWidth - 32, right: halfWidth + 1.7, bottom: end, top: openEnd },
    ],
    weighedKg: null,
    ...rest,
  };
};

export const buildOf = (tank: Tank): Build => ({
  parts: tankParts(tank),
  stations: [{ name: 'closest', rear: 0 }],
  setups: setupsOf([{ name: 'processing holder' }]),
  gate: { z: 0, width: 124.6, height: 175.4 },
  opening: { z: -200, diameter: 30 },
});

export const heronTank = sizeTank(given());
