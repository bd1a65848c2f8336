import { across } from '../../geometry/placement.js';
import { circle } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, standing } from '../../joinery/plate.js';
import type { Part } from '../../model/part.js';
import type { MountedLens } from './size.js';

const RING_RIM = 5;
const RING_DEPTH = 4;
const LEAST_RIM = 1;

/** Stand-ins of the lens: front, grip and rear as plain cylinders that share its mass by volume. */
export function lensParts(own: MountedLens): readonly Part[] {
  const { seat, barrel } = own;
  const pieces = [
    {
      id: 'lens-front',
      name: 'front',
      diameter: barrel.frontDiameter,
      from: seat - barrel.front,
      length: barrel.front,
    },
    { id: 'lens-barrel', name: 'barrel', diameter: barrel.diameter, from: seat, length: barrel.grip },
    { id: 'lens-rear', name: 'rear', diameter: barrel.rearDiameter, from: seat + barrel.grip, length: barrel.rear },
  ].filter((piece) => piece.length > 0);
  const volume = pieces.reduce((sum, p) => sum + p.diameter * p.diameter * p.length, 0);
  const rods = pieces.map((piece, i) =>
    boughtRod({
      id: piece.id,
      name: `${own.name}, ${piece.name}`,
      diameter: piece.diameter,
      length: piece.length,
      role: 'lens',
      placements: [standing('front', across(0, 0, piece.from))],
      joins: [
        ...(i > 0 ? joined('press', (pieces[i - 1] as { id: string }).id) : []),
        ...joined('press', ...heldBy(own, piece.id)),
      ],
      massKg: (barrel.massKg * piece.diameter * piece.diameter * piece.length) / volume,
    }),
  );
  return [...rods, ...ringOrFlange(own)];
}

/** What a piece of the lens is held by: the clamp grips the barrel; flange and ring sit on it inside, or on its front. */
function heldBy({ by, side, flange }: MountedLens, id: string): readonly string[] {
  const [ahead, behind] = [id === 'lens-front', id === 'lens-barrel'];
  if (by === 'clamp') return behind ? ['lens-clamp'] : [];
  if (by === 'flange') return flange && (side === 'inside' ? behind : ahead) ? ['lens-flange'] : [];
  // the ring draws the shoulder, the next wider piece, against the wood
  if (side === 'front') return behind ? ['lens-ring'] : ahead ? ['F6'] : [];
  return ahead ? ['lens-ring'] : behind ? ['F7'] : [];
}

function ringOrFlange({ seat, barrel, by, side, flange, boardThickness }: MountedLens): readonly Part[] {
  if (by === 'flange' && flange) {
    const inside = side === 'inside';
    const passes = inside ? barrel.diameter : barrel.frontDiameter;
    // a flange narrower than what passes it is refused by lens-seat-known: it is drawn as the rim that it cannot be
    const bore = Math.min(passes, Math.max(flange.diameter - 2 * LEAST_RIM, flange.diameter / 2));
    return [
      boughtPlate({
        id: 'lens-flange',
        name: 'flange of the lens',
        thickness: flange.thickness,
        outline: circle(0, 0, flange.diameter),
        holes: [circle(0, 0, bore)],
        role: 'lens',
        placements: [standing('front', across(0, 0, inside ? seat : seat - flange.thickness))],
        joins: joined('screw', inside ? 'F7' : 'F6'),
        massKg: 0,
      }),
    ];
  }
  if (by !== 'ring') return [];
  // the ring draws the lens's shoulder against the other face of board and plug
  const z = side === 'front' ? seat + boardThickness : seat - boardThickness - RING_DEPTH;
  const thread = side === 'front' ? barrel.diameter : barrel.frontDiameter;
  return [
    boughtPlate({
      id: 'lens-ring',
      name: 'retaining ring',
      thickness: RING_DEPTH,
      outline: circle(0, 0, thread + 2 * RING_RIM),
      holes: [circle(0, 0, thread)],
      role: 'lens',
      placements: [standing('front', across(0, 0, z))],
      joins: joined('screw', side === 'front' ? 'F7' : 'F6'),
      massKg: 0.02,
    }),
  ];
}
