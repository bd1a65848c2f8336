import { type ClosedPath, moved, quarter, reversed } from '../../geometry/path.js';
import { across, frame, type Matrix4 } from '../../geometry/placement.js';
import { circle, hexagon } from '../../geometry/shapes.js';
import { standardGravity } from '../../standards/gravity.js';
import { capHeads, clearanceHole, nominalDiameter, nutFactor, nuts } from '../../standards/screws.js';

export interface LensClampGiven {
  readonly barrelDiameter: number;
  /** How much of the barrel is of that diameter, behind the lens seat. */
  readonly grip: number;
  /** By how much the bore is wider than the barrel, to be found with a test ring. */
  readonly boreAllowance: number;
  /** 3 to 6, through board and plug. */
  readonly screws: number;
  /** On which side of the lens board the clamp stands. */
  readonly side: 'inside' | 'front';
  readonly lensMassKg: number;
  /** Thickness of a ply of the board and its plug. */
  readonly ply: number;
  /** Plies of the plug; the board is one more. */
  readonly plugPlies?: number;
}

/**
 * The printed piece that grips a barrel lens, in the frame in which it is printed: the optical axis is its z, the flange
 * lies on z = 0, the collar stands on it, the lugs point along x and y. Two slits part the collar above the flange;
 * the ring of the flange is whole, so that no light passes and the halves stay together.
 *
 *            __________ ___ __________      length
 *           |   lug  _|     |_   lug  |
 *           |  bolt (_|     |_) along |     the halves stand ahead of and behind this section
 *      _____|_________|     |_________|_____   flange thickness
 *     |___||____________________________||__|  0; screw and pocket of its nut at both ends
 */
export interface LensClamp {
  readonly side: 'inside' | 'front';
  readonly bore: number;
  readonly wall: number;
  readonly collarDiameter: number;
  readonly boltCircle: number;
  readonly flangeDiameter: number;
  readonly flangeThickness: number;
  /** Flange and collar; the grip, or what the pinch bolts need where the grip is shorter. */
  readonly length: number;
  /** What the collar holds the barrel over, and the least that the pinch bolts need. */
  readonly grip: number;
  readonly leastGrip: number;
  readonly slit: number;
  readonly lug: {
    /** From the axis to the lug's end, along x. */
    readonly reach: number;
    /** Both halves and the slit, along y. */
    readonly width: number;
    readonly cornerRadius: number;
  };
  readonly pinch: { readonly fromAxis: number; readonly height: number };
  /** rad, from x towards y. */
  readonly screwAngles: readonly number[];
  readonly screwHole: number;
  readonly pocket: { readonly acrossFlats: number; readonly depth: number };
  /** Of everything that turns round the axis with the clamp, screws included. */
  readonly greatestRadius: number;
  /** mm³ */
  readonly volume: number;
  readonly massKg: number;
  readonly hold: Hold;
  readonly fasteners: Fasteners;
}

/** Bought things in the clamp's own frame, as fitted: screws at the diameter of their hole, nuts bored. */
export interface Fasteners {
  readonly flangeScrews: Rods;
  readonly flangeNuts: Nuts;
  readonly pinchBolts: Rods;
  readonly pinchNuts: Nuts;
}

/** Cylinders along their own z from 0, where their head is. */
interface Rods {
  readonly diameter: number;
  readonly length: number;
  readonly at: readonly Matrix4[];
}

/** Plates on their own x, y, from 0 to the thickness. */
interface Nuts {
  readonly outline: ClosedPath;
  readonly holes: readonly ClosedPath[];
  readonly thickness: number;
  readonly at: readonly Matrix4[];
}

interface Hold {
  /** What the collar holds along the axis, N. */
  readonly forceN: number;
  /** That force over the lens's weight. */
  readonly ratio: number;
}

/** What an M4 screw and its nut need; a fitted screw is drawn a hair narrower than its hole, so that chords do not meet. */
const M4 = {
  diameter: nominalDiameter('M4'),
  hole: clearanceHole.M4.medium.value,
  fitted: clearanceHole.M4.medium.value - 0.02,
  nutFlats: nuts.M4.acrossFlats.value,
  nutHeight: nuts.M4.height.value,
  headHeight: capHeads.M4.height.value,
  headDiameter: capHeads.M4.knurled.value,
};

/** Lengths of countersunk M4 screws; from memory: ISO 10642, preferred lengths. */
const SCREW_LENGTHS = [8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60];

/** Room of a nut in its pocket, flats and depth; common practice, no source (the joints' tee slots have the same). */
const POCKET_PLAY = { flats: 0.2, depth: 0.3 };

/** Under a captive nut, so that the screw does not pull it through: nine lines of a 0.4 nozzle. */
const WEB = 3.5;

/** All common practice, no source: the camera's own rules for clamps. */
const WALL = 8;
const BOLT_CIRCLE_OVER_COLLAR = 14;
const FLANGE_OVER_BOLT_CIRCLE = 12;
const LUG_OVER_COLLAR = 12;
const SLIT = 2;

/** A choice: 20 mm bolts then reach 2 mm beyond their sunk nuts, and the lugs stay within the flange that carries them. */
const LUG_WIDTH = 18;
const PINCH_BOLT_LENGTH = 20;

/** Least solid round the pocket of a pinch nut: it closes the slit against a wall, not against the printer's skin. */
const POCKET_WALL = 2.4;
const POCKET_ROOF = 1.5;

/** PETG, kg/mm³; 1.25 to 1.29 g/cm³ in the makers' data sheets. */
const DENSITY = 1.27e-6;

/** Screws stay this far from the lugs, seen from the axis, so that their pockets open beside them: 40°. */
const CLEAR_OF_LUG = (40 * Math.PI) / 180;

/** Sizes a clamp from the barrel that it grips. */
export function sizeLensClamp(given: LensClampGiven): LensClamp {
  const { barrelDiameter, grip, boreAllowance, screws, side, lensMassKg, ply, plugPlies = 1 } = given;
  const bore = barrelDiameter + boreAllowance;
  const collarDiameter = bore + 2 * WALL;
  const boltCircle = collarDiameter + BOLT_CIRCLE_OVER_COLLAR;
  const flangeDiameter = boltCircle + FLANGE_OVER_BOLT_CIRCLE;
  const pocket = { acrossFlats: M4.nutFlats + POCKET_PLAY.flats, depth: M4.nutHeight + POCKET_PLAY.depth };
  const flangeThickness = WEB + pocket.depth;
  const leastGrip = flangeThickness + cornerToCorner(pocket.acrossFlats) + 2 * POCKET_ROOF;
  const length = Math.max(grip, leastGrip);
  const lug = { reach: collarDiameter / 2 + LUG_OVER_COLLAR, width: LUG_WIDTH, cornerRadius: POCKET_WALL };
  const shape = {
    side,
    bore,
    wall: WALL,
    collarDiameter,
    boltCircle,
    flangeDiameter,
    flangeThickness,
    length,
    grip,
    leastGrip,
    slit: SLIT,
    lug,
    // the pocket's outer flat then stands where the lug's corner begins to round
    pinch: {
      fromAxis: lug.reach - POCKET_WALL - pocket.acrossFlats / 2,
      height: (flangeThickness + length) / 2,
    },
    screwAngles: screwAngles(screws),
    screwHole: M4.hole,
    pocket,
  };
  const volume = volumeOf(shape);
  return {
    ...shape,
    greatestRadius: greatestRadius(shape),
    volume,
    massKg: volume * DENSITY,
    hold: gripOf({ lensMassKg }),
    fasteners: fastenersOf(shape, (1 + plugPlies) * ply),
  };
}

/**
 * Where the screws stand on the bolt circle, rad from x: half of them above the lugs and half below, evenly between the
 * places where their pockets would meet a lug. The pattern is its own mirror image left for right, so that board and plug
 * have the same holes whichever way the clamp faces.
 */
export function screwAngles(count: number): readonly number[] {
  const above = Math.ceil(count / 2);
  const half = (n: number, turn: number) => spread(n).map((share) => turn + share);
  return [...half(above, 0), ...half(count - above, Math.PI)];
}

/** Angles over half a turn: one in the middle, two at 45°, more from lug to lug. */
function spread(count: number): readonly number[] {
  const first = count === 1 ? Math.PI / 2 : count === 2 ? Math.PI / 4 : CLEAR_OF_LUG;
  const step = count === 1 ? 0 : (Math.PI - 2 * first) / (count - 1);
  return Array.from({ length: count }, (_, i) => first + i * step);
}

/** Middles of the holes for the clamp's screws in board and plug, with the axis as origin. */
export const screwPlaces = ({ boltCircle, screwAngles: angles }: Pick<LensClamp, 'boltCircle' | 'screwAngles'>) =>
  angles.map((angle) => onCircle(boltCircle / 2, angle));

/**
 * Where the clamp stands in the camera. From inside its flange bears on the plug and carries the lens's step, and the
 * collar runs towards the film; from the front its flange bears on the board, half a turn round, and the lens's step
 * bears on the collar's end.
 *
 * @param seat z of the lens seat
 */
export function placeLensClamp({ side, length }: Pick<LensClamp, 'side' | 'length'>, seat: number): Matrix4 {
  if (side === 'inside') return across(0, 0, seat);
  return frame([-1, 0, 0], [0, 1, 0], [0, 0, -1], [0, 0, seat + length]);
}

/**
 * Tension of a tightened bolt, N: `T/(K·d)`.
 *
 * @param torqueFactor 0.2 for dry steel; a quarter more or less in practice
 * @param diameter mm
 */
export const boltPreload = ({ torqueNm, torqueFactor, diameter }: Tightening): number =>
  torqueNm / (torqueFactor * (diameter / 1000));

interface Tightening {
  readonly torqueNm: number;
  readonly torqueFactor: number;
  readonly diameter: number;
}

/**
 * Hold of a split ring along its axis, N: `2π·μ·n·F` for n bolts side by side in one slit, the reading for a thin ring
 * that lies round the barrel evenly.
 * Two stiff halves that bear along a line each would hold `4·μ·F` a bolt.
 */
export const ringHold = ({ friction, bolts, preloadN }: Ring): number => 2 * Math.PI * friction * bolts * preloadN;

interface Ring {
  readonly friction: number;
  readonly bolts: number;
  readonly preloadN: number;
}

/** How a clamp of two M4 bolts holds a lens: hand-tight, and with the tenth that is left once the plastic has crept. */
export function gripOf({ lensMassKg }: { readonly lensMassKg: number }): Hold {
  const preloadN = boltPreload({ torqueNm: 0.3, torqueFactor: nutFactor.drySteel.value, diameter: M4.diameter });
  // one bolt in each of two opposite slits: the ring carries their tension once round, not twice
  const forceN = 0.1 * ringHold({ friction: 0.2, bolts: 1, preloadN });
  return { forceN, ratio: forceN / (lensMassKg * standardGravity.value) };
}

type Shape = Omit<LensClamp, 'greatestRadius' | 'volume' | 'massKg' | 'hold' | 'fasteners'>;

/** Exact for the drawn circles; the mesh, whose chords lie on the side of air, has up to a thousandth less. */
function volumeOf(clamp: Shape): number {
  const { bore, collarDiameter, flangeDiameter, flangeThickness, length, slit, lug, pocket, screwHole } = clamp;
  const free = length - flangeThickness;
  const [rb, rc] = [bore / 2, collarDiameter / 2];
  const hole = disc(screwHole);
  const hexagonArea = (Math.sqrt(3) / 2) * pocket.acrossFlats ** 2;

  const flange = (disc(flangeDiameter) - disc(bore)) * flangeThickness;
  const perScrew = hole * (flangeThickness - pocket.depth) + hexagonArea * pocket.depth;
  const rounding = 2 * (1 - Math.PI / 4) * lug.cornerRadius ** 2;
  const lugs = 2 * (beyondCircle(lug.reach, lug.width, rc) - rounding);
  const slits = 2 * beyondCircle(lug.reach, slit, rb);
  const perBolt = hole * (lug.width - slit - pocket.depth) + hexagonArea * pocket.depth;
  return (
    flange -
    clamp.screwAngles.length * perScrew +
    free * (disc(collarDiameter) - disc(bore) + lugs - slits) -
    2 * perBolt
  );
}

const disc = (diameter: number) => (Math.PI * diameter * diameter) / 4;

/** Area of a bar along x, `width` wide and centred, from the circle round the origin out to `reach`. */
function beyondCircle(reach: number, width: number, radius: number): number {
  const half = width / 2;
  const under = half * Math.sqrt(radius * radius - half * half) + radius * radius * Math.asin(half / radius);
  return reach * width - under;
}

function greatestRadius({ flangeDiameter, lug, pinch }: Shape): number {
  const corner = lug.cornerRadius + radius(lug.reach - lug.cornerRadius, lug.width / 2 - lug.cornerRadius);
  const head = radius(pinch.fromAxis + M4.headDiameter / 2, lug.width / 2 + M4.headHeight);
  const tip = radius(pinch.fromAxis + M4.hole / 2, PINCH_BOLT_LENGTH - lug.width / 2);
  return Math.max(flangeDiameter / 2, corner, head, tip);
}

const radius = (x: number, y: number) => Math.sqrt(x * x + y * y);

/** @param behind what the screws pass before they reach the flange: board and plug */
function fastenersOf(clamp: Shape, behind: number): Fasteners {
  const { boltCircle, lug, pinch, pocket, flangeThickness } = clamp;
  const pocketFloor = flangeThickness - pocket.depth;
  const least = behind + pocketFloor + M4.nutHeight;
  const nut = {
    outline: uprightHexagon(M4.nutFlats),
    holes: [reversed(circle(0, 0, M4.hole))],
    thickness: M4.nutHeight,
  };
  const alongAxis = (angle: number, z: number): Matrix4 => {
    const [cos, sin] = quarter(angle);
    const { x, y } = onCircle(boltCircle / 2, angle);
    return frame([cos, sin, 0], [-sin, cos, 0], [0, 0, 1], [x, y, z]);
  };
  const downwards = (side: number, y: number) =>
    frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [side * pinch.fromAxis, y, pinch.height]);
  const sides = [1, -1];
  return {
    flangeScrews: {
      diameter: M4.fitted,
      length: SCREW_LENGTHS.find((l) => l >= least) ?? Math.ceil(least),
      at: clamp.screwAngles.map((angle) => alongAxis(angle, -behind)),
    },
    flangeNuts: { ...nut, at: clamp.screwAngles.map((angle) => alongAxis(angle, pocketFloor)) },
    pinchBolts: {
      diameter: M4.fitted,
      length: M4.headHeight + PINCH_BOLT_LENGTH,
      at: sides.map((side) => downwards(side, lug.width / 2 + M4.headHeight)),
    },
    pinchNuts: { ...nut, at: sides.map((side) => downwards(side, pocket.depth - lug.width / 2)) },
  };
}

/** A hexagon with a corner up: two flats stand upright, and a level pocket of this shape has a roof that prints. */
export const uprightHexagon = (acrossFlats: number): ClosedPath =>
  moved(hexagon(0, 0, acrossFlats), { x: 0, y: 0, turn: Math.PI / 2 });

const cornerToCorner = (acrossFlats: number) => (2 * acrossFlats) / Math.sqrt(3);

function onCircle(r: number, angle: number): { readonly x: number; readonly y: number } {
  const [cos, sin] = quarter(angle);
  return { x: r * cos, y: r * sin };
}
