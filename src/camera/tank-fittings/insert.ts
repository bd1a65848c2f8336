import type { TankFittingsGiven } from './given.js';
import { boreArea, type Neck, volumeOfNeck } from './neck.js';
import { PAST, SLIDE_AIR, wallsOf } from './printing.js';

/**
 * A block with a labyrinth and a neck, in the frame in which it is printed: chamber face down, neck up. u runs from its side
 * at the chamber's corner inwards, v across (on the spout towards the lid), w outwards from the face to the chamber.
 *
 *     from the lid, with its walls            from above: light turns at each baffle
 *              _________| bore |                ________________________
 *        _____/  roof   |      |__             |   |    ___|    |       |
 *     __/  _ | | | | |  | well |  |            | e |   | A |  C | well  |
 *    |  e | C | B | A | |      |  |            | x | C | B | A  |  and  |
 *    |  x |   |   |   | |      |  |            | i |   |   |    | bore  |
 *    |__it|___|___|___|_|______|__|  0         |_t____|____|____________|
 */
export interface Insert extends Labyrinth {
  /** The corner it stands in: right (spout) or left (vent). */
  readonly corner: 'right' | 'left';
  readonly neck: Neck;
  /** Where the neck's axis stands: u in the block, and v, off its middle where the neck must keep clear of the slide. */
  readonly axis: { readonly u: number; readonly v: number };
  /** What the printed part takes up about the middle of its own frame, and where that middle is in the block's u and v. */
  readonly size: readonly [number, number, number];
  readonly middle: { readonly u: number; readonly v: number };
  /** For reckoning how fast it runs. */
  readonly passage: Passage;
  /** mm³ */
  readonly volume: number;
}

/** What the flow through an insert is reckoned from. */
export interface Passage {
  /** Of the narrowest place, mm². */
  readonly area: number;
  /** Sharp right-angled corners on the way, a turn back on itself counted as two. */
  readonly corners: number;
  /** From the inner face of the end wall to the rim of the neck: the head that stands in it when it is full, mm. */
  readonly head: number;
}

interface Labyrinth {
  /** Along u, v, and the thickness of floor, roof and outer walls. */
  readonly width: number;
  readonly depth: number;
  readonly wall: number;
  readonly baffle: number;
  /** Width of the three legs, and of the opening past the end of each baffle. */
  readonly gap: number;
  /** Length of the legs along v. */
  readonly inside: number;
  /** From the chamber's corner inwards: exit, three legs, well; the roof rises from one to the next, so that it drains. */
  readonly rooms: Rooms;
  /** From the face to the outside of the roof, at the chamber's corner and at the well. */
  readonly height: { readonly low: number; readonly high: number };
  /** How far the well leans back under the neck, towards the lid. */
  readonly lean: number;
}

type Rooms = readonly [exit: Room, c: Room, b: Room, a: Room, well: Room];

interface Room {
  readonly from: number;
  readonly to: number;
  /** w of the underside of its roof. */
  readonly roof: number;
}

/** Left to the wood on each side for what seals it. Common practice, no source. */
export const GLUE = 0.08;
/** A narrower passage holds a plug of liquid against its head: 2σ/(ρ·g·3) is 5 mm of water. A choice of ours. */
const LEAST_GAP = 3;
/** A baffle laps the next one by so many gaps; the camera's own rule for spout and vent. */
const OVERLAP = 2;
/** The roof rises by so much on each millimetre towards the neck: turned over and a little to its corner the labyrinth runs out. A choice of ours. */
const ROOF_SLOPE = 0.25;
/** How steeply the well leans back, so that its wall stays thick enough and prints. A choice of ours. */
export const LEAN_RISE = 2;

const depthOf = ({ from, to }: TankFittingsGiven['notch']): number => to - from - 2 * GLUE;

/**
 * Length of the legs. A notch between walls that leave less is refused (`tank-shut`), and its fittings are sized as if it
 * were there: a passage of no length would have to be endlessly high.
 */
export const insideOf = (notch: TankFittingsGiven['notch'], nozzle: number): number =>
  Math.max(LEAST_GAP, depthOf(notch) - 2 * wallsOf(nozzle).outer);

export function sizeInsert(
  { nozzle, chamber, openEnd, notch, slide }: TankFittingsGiven,
  corner: Insert['corner'],
  area: number,
  neck: Neck,
  around: number,
): Insert {
  const { outer: wall, inner: baffle } = wallsOf(nozzle);
  const depth = depthOf(notch);
  const inside = insideOf(notch, nozzle);
  const through = openEnd - chamber.end;
  // as wide as it need be for its area where the block just passes the wall, and no wider than lets the baffles overlap
  const gap = Math.min(inside / (OVERLAP + 1), Math.max(LEAST_GAP, area / (through - 2 * wall)));
  const tall = Math.max(through - 2 * wall, area / gap);
  const exit = Math.max(LEAST_GAP, area / inside);

  const firstLeg = wall + exit + baffle;
  const firstWell = firstLeg + 3 * (gap + baffle);
  const width = firstWell + neck.bore.width + wall;
  const axis = width - wall - neck.bore.width / 2;
  const beside = chamber.halfWidth + wall - axis - around - SLIDE_AIR;
  const clear = slide.back + SLIDE_AIR + around - (notch.from + notch.to) / 2;
  const lean = beside >= slide.halfWidth ? 0 : Math.max(0, clear);
  const room = (from: number, across: number, least = 0): Room => ({
    from,
    to: from + across,
    roof: Math.max(least, wall + tall + ROOF_SLOPE * (from - wall)),
  });
  const leg = (k: number) => room(firstLeg + k * (gap + baffle), gap);
  const well = room(firstWell, neck.bore.width, lean > 0 ? through + LEAN_RISE * lean + PAST : 0);
  const rooms: Rooms = [room(wall, exit), leg(0), leg(1), leg(2), well];
  const [low, high] = [rooms[0].roof + wall, well.roof + wall];
  const labyrinth: Labyrinth = { width, depth, wall, baffle, gap, inside, rooms, height: { low, high }, lean };

  const toLid = corner === 'right' ? 1 : -1;
  const place = { u: axis, v: toLid * lean };
  // one lug points along u, the next stand a third of a turn from it
  const aside = Math.max(neck.lip.radius, neck.lug.radius * Math.sin((2 * Math.PI) / 3 - neck.lug.angle / 2));
  const u = [0, Math.max(width, axis + neck.lug.radius)] as const;
  const v = [
    Math.min(-depth / 2, place.v - aside, place.v - depth / 2),
    Math.max(depth / 2, place.v + aside, place.v + depth / 2),
  ] as const;
  return {
    ...labyrinth,
    corner,
    neck,
    axis: place,
    size: [u[1] - u[0], v[1] - v[0], high + neck.rim],
    middle: { u: (u[0] + u[1]) / 2, v: (v[0] + v[1]) / 2 },
    passage: { area: Math.min(boreArea(neck), gap * tall, exit * inside), corners: CORNERS, head: high + neck.rim },
    volume: volumeOfInsert(labyrinth, neck),
  };
}

/** From the bore into the well, round the ends of four baffles, and out of the exit. */
const CORNERS = 1 + 2 * 4 + 1;

function volumeOfInsert({ depth, wall, baffle, gap, inside, rooms, height, width, lean }: Labyrinth, neck: Neck) {
  const shoulder = rooms[4].from - baffle - wall;
  const side = width * height.low + (height.high - height.low) * (width - wall - shoulder / 2);
  const air = rooms.reduce((sum, { from, to, roof }, i) => {
    const slot = i === rooms.length - 1 ? 0 : baffle * gap;
    return sum + ((to - from) * inside + slot) * (roof - wall);
  }, 0);
  const exit = (rooms[0].to - rooms[0].from) * inside * wall;
  const rear = lean * wall * neck.bore.width;
  return side * depth + rear - air - exit - boreArea(neck) * wall + volumeOfNeck(neck);
}
