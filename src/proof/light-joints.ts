import { isFelt } from '../assembly/bodies.js';
import type { Setup, Station } from '../assembly/build.js';
import { around, type Extent } from '../assembly/extent.js';
import { ROUNDING } from '../assembly/limit.js';
import { boxOf, holeRound, platesOf } from '../assembly/measure.js';
import type { Opaque } from '../assembly/screens.js';
import type { Point3 } from '../geometry/placement.js';
import { aheadOfLens } from '../model/assembly-steps.js';
import type { Finding } from '../model/finding.js';
import type { LightJoint } from '../model/proof.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import { gateAt, type Scene, type Stance } from './light-scene.js';
import { type Cut, type Drawn, fewestTurns, type LightWay, type Rectangle, sectionOf } from './light-section.js';

/** Light is tamed by this many turns; common practice, no source. */
const TURNS = 2;
/**
 * Land of the lens board, of the back at its sides and at its clipped corners, of a holder's rim, of what hangs ahead of a
 * lens that only a shutter keeps dark, mm; common practice. Of a corner strip 8 wide: a choice of ours, so that it is missed where it is left out.
 */
const LAND = { board: 14, side: 10, corner: 8, rim: 10, strip: 7, frame: 10 };
/** Bands of felt that shut a gap in which nothing turns; common practice. */
const BANDS = 2;

/** A joint cut through: where light would come from, and where to. */
export interface LightPlace {
  readonly joint: string;
  readonly shutBy: string;
  readonly stance: Stance;
  readonly cut: Cut;
  readonly window: Rectangle;
  readonly from: Drawn;
  readonly to: Drawn;
  readonly land: number;
  /** Where other than two. */
  readonly turns?: number;
  /** Whether the way is a glue line; otherwise glue lines are tight. */
  readonly glued: boolean;
  /**
   * Whether light that does not look at the film where it comes out has turned once more. A joint of the boxes must bend it
   * by itself: there all the inside is lit.
   */
  readonly leaves: boolean;
  /** How far to either side it is cut, where not just beside a slip. */
  readonly beside?: readonly number[];
  /** Hardware that happens to stand in the way, and is no part of the trap. */
  readonly without?: readonly string[];
}

const X: Point3 = { x: 1, y: 0, z: 0 };
const Y: Point3 = { x: 0, y: 1, z: 0 };
const Z: Point3 = { x: 0, y: 0, z: 1 };
const minus = ({ x, y, z }: Point3): Point3 => ({ x: -x, y: -y, z: -z });
const DIAGONAL: Point3 = { x: Math.SQRT1_2, y: Math.SQRT1_2, z: 0 };
/** How far beyond a joint the way begins and ends, mm. */
const BESIDE = 3;

/** Every joint of the camera's description that can be cut through, the worst of its places. */
export function lightJoints(scene: Scene): readonly LightJoint[] {
  const [closest, farthest] = [scene.build.stations[0], scene.build.stations.at(-1)];
  if (closest === undefined || farthest === undefined) return [];
  return worstJoints(scene, placesOf(scene, closest, farthest));
}

/** Of each joint the worst of its places. */
export function worstJoints(scene: Scene, places: readonly LightPlace[]): readonly LightJoint[] {
  const measured = places.flatMap((place) => {
    // a cut that runs in the slip at a finger's end sees a slot with nothing in it: the one beside it does not
    const near = BESIDE_SLIP.flatMap((by) => measure(scene, moved(place, by)) ?? []);
    return near.length < BESIDE_SLIP.length
      ? []
      : [near.reduce((best, one) => (short(one) < short(best) ? one : best))];
  });
  const worst = new Map<string, LightJoint>();
  for (const one of measured) {
    const before = worst.get(one.joint);
    if (before === undefined || short(one) > short(before)) worst.set(one.joint, one);
  }
  return [...worst.values()];
}

/** Cuts are made a little to either side of the place, mm: farther apart than a slip is wide. */
const BESIDE_SLIP = [-0.2, 0.2];
/** And to either side of a screw that holds a lens by its flange, mm: the screws stand on the axes as often as not. */
const BESIDE_SCREW = [-13, -6, 6, 13];

/** A place cut so much farther along. */
function moved(place: LightPlace, by: number): LightPlace {
  const { origin: at, right: a, up: b } = place.cut;
  const across = { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
  const shifted = { x: at.x + by * across.x, y: at.y + by * across.y, z: at.z + by * across.z };
  return { ...place, cut: { ...place.cut, origin: shifted } };
}

/** How far a joint falls short, felt standing for turns; of those that do not, the one with the fewest turns, then the least land. */
const short = ({ turns, land, needed, felt }: LightJoint): number =>
  1e6 * (felt >= BANDS ? 0 : Math.max(0, needed.turns - turns)) +
  1e3 * Math.max(0, needed.land - land) -
  turns -
  land / 1e4;

/** light-path, for the joints: fewer turns than two and no felt, or too little land. */
export const jointFindings = (joints: readonly LightJoint[]): readonly Finding[] =>
  joints.flatMap((one): readonly Finding[] => {
    const { joint, parts, turns, land, needed, setup, felt } = one;
    // nothing bounds a way that is quite open: the streak that comes in there is told already
    if (parts.length === 0) return [];
    const where = `${joint} (${parts.join(', ')})`;
    if (turns < needed.turns && felt < BANDS)
      return [
        {
          rule: 'light-path',
          level: 'error',
          value: turns,
          limit: needed.turns,
          unit: 'turns',
          message: `Fog along the ${where}: light comes in with ${plainNumber(turns)} ${turns === 1 ? 'turn' : 'turns'}, and it takes ${plainNumber(needed.turns)} to tame it (${setup}).`,
          hint: `Shut by: ${one.shutBy}. One of these is missing or too small.`,
        },
      ];
    if (land >= needed.land - ROUNDING) return [];
    return [
      {
        rule: 'light-path',
        level: 'error',
        value: land,
        limit: needed.land,
        unit: 'mm',
        message: `Fog along the ${where}: wood lies on wood for ${mm(tenth(land))}, and it takes ${mm(needed.land)} (${setup}).`,
        hint: `Shut by: ${one.shutBy}. Make what overlaps there wider.`,
      },
    ];
  });

function measure(scene: Scene, place: LightPlace): LightJoint | null {
  const { stance, cut, window, from, to } = place;
  const section = sectionOf(scene, stance, cut, window, true);
  const wood = section.filter(({ solid: { piece } }) => !isFelt(piece.part) && !place.without?.includes(piece.part.id));
  const way = fewestTurns(wood, window, { from, to, glued: place.glued ? 'parted' : 'tight' });
  if (way === null) return null;
  const lengths = way.stretches.map(({ length }) => length);
  const parts = [...new Set(way.between.map(({ piece }) => piece.part.id))];
  return {
    joint: place.joint,
    parts,
    turns: (way.straightIn ? 0 : 1) + way.stretches.length + (place.leaves && !seesGate(scene, place, way) ? 1 : 0),
    land: place.glued ? lengths.reduce((sum, length) => sum + length, 0) : Math.max(0, ...lengths),
    needed: { turns: place.turns ?? TURNS, land: place.land },
    shutBy: place.shutBy,
    setup: stance.setup.name,
    felt: section.filter(({ solid }) => isFelt(solid.piece.part)).length,
  };
}

/** Whether the last stretch, drawn on, falls onto the film gate: else light has to turn once more. */
function seesGate(scene: Scene, { cut, stance }: LightPlace, { stretches, end }: LightWay): boolean {
  const last = stretches.at(-1);
  if (last === undefined) return true;
  const axis = last.along === 'r' ? cut.right : cut.up;
  const at = {
    x: cut.origin.x + end.r * cut.right.x + end.h * cut.up.x,
    y: cut.origin.y + end.r * cut.right.y + end.h * cut.up.y,
    z: cut.origin.z + end.r * cut.right.z + end.h * cut.up.z,
  };
  const gate = gateAt(scene, stance);
  const deep = last.sign * axis.z;
  // level with the gate it shines along it
  if (Math.abs(deep) < 0.5) return Math.abs(at.z - gate.z) < BESIDE;
  const away = (gate.z - at.z) / deep;
  return away > 0 && at.x > gate.left && at.x < gate.right && at.y > gate.bottom && at.y < gate.top;
}

/** The boxes round what stands, by part. */
type Boxes = (id: string) => Extent | null;

function boxesIn(scene: Scene, stance: Stance): Boxes {
  const cast = scene.standing(stance.setup, stance.push).all;
  const shifts = scene.shifts(stance);
  return (id) => {
    const all = scene.solids.filter(({ piece }, k) => cast[k] === 1 && piece.part.id === id);
    return all.length === 0 ? null : around(all.map((solid) => standing(solid, shifts[solid.body] ?? [0, 0, 0])));
  };
}

const standing = ({ piece: { extent } }: Opaque, [x, y, z]: readonly [number, number, number]): Extent => ({
  x: [extent.x[0] + x, extent.x[1] + x],
  y: [extent.y[0] + y, extent.y[1] + y],
  z: [extent.z[0] + z, extent.z[1] + z],
});

function placesOf(scene: Scene, closest: Station, farthest: Station): readonly LightPlace[] {
  const upright = scene.build.setups.filter(({ orientation }) => orientation === 'upright');
  const exposing = upright.find(({ focusing }) => !focusing) ?? upright[0];
  if (exposing === undefined) return [];
  const at = (station: Station, setup: Setup = exposing): Stance => ({ setup, station, push: 'none' });
  return [
    ...frontCorners(scene, at(closest), at(farthest)),
    ...lensBoard(scene, at(closest)),
    ...onFrame(scene, at(closest), 'D1', 'shutter on the accessory frame', 'the rail plate over the ring'),
    ...upright
      .filter(({ ahead }) => ahead === 'cap')
      .flatMap((setup) =>
        onFrame(scene, at(closest, setup), 'LC1', 'cap on the accessory frame', 'the cap over the ring'),
      ),
    ...[closest, farthest].flatMap((station) => boxInBox(scene, at(station))),
    ...backInStandard(scene, at(closest)),
    ...scene.build.setups.filter(({ focusing }) => !focusing).flatMap((setup) => well(scene, at(closest, setup))),
    // a frame with its glass, for comparison: no film is in the camera while one looks at it
    ...upright
      .filter(({ focusing }) => focusing)
      .slice(0, 1)
      .flatMap((setup) => well(scene, at(closest, setup))),
  ];
}

const origin = (x: number, y: number, z: number): Point3 => ({ x, y, z });

/** Between panel and walls, and between wall and wall, cut at five places along each. */
function frontCorners(scene: Scene, closest: Stance, farthest: Stance): readonly LightPlace[] {
  const box = boxesIn(scene, closest);
  const [panel, left, top, floor] = [box('F1'), box('F2L'), box('F3'), box('F4')];
  if (panel === null || left === null || top === null || floor === null) return [];
  const strip = 12;
  const toPanel = (wall: 'left' | 'top' | 'floor', share: number): LightPlace => {
    const across = wall === 'left' ? left.x : wall === 'top' ? top.y : floor.y;
    const inwards = wall === 'top' ? -1 : 1;
    const along = share * (wall === 'left' ? top.y[0] : -left.x[1]);
    const outer = inwards > 0 ? across[0] : -across[1];
    const thick = across[1] - across[0];
    const right = wall === 'left' ? X : wall === 'top' ? minus(Y) : Y;
    return {
      joint: wall === 'floor' ? 'floor in panel' : wall === 'top' ? 'panel to top' : 'panel to side',
      shutBy: `${wall === 'floor' ? 'tabs' : 'fingers'}, and a corner strip inside`,
      stance: closest,
      cut: { origin: wall === 'left' ? origin(0, along, 0) : origin(along, 0, 0), right, up: Z },
      window: { left: outer - 6, right: outer + thick + strip + 6, bottom: panel.z[0] - 6, top: panel.z[1] + 20 },
      from: { r: outer - BESIDE, h: panel.z[0] - BESIDE },
      to: { r: outer + thick + strip, h: panel.z[1] + 1 },
      land: LAND.strip,
      glued: true,
      leaves: true,
    };
  };
  const shares = [-0.6, -0.33, 0.02, 0.35, 0.62];
  const walls = (['left', 'top', 'floor'] as const).flatMap((wall) => shares.map((share) => toPanel(wall, share)));
  // far out the box in it has left the front of the front box free
  const drawn = boxesIn(scene, farthest);
  const far = drawn('C1L') ?? drawn('R1L');
  if (far === null) return walls;
  const free = far.z[0] - panel.z[1];
  const edges = [0.2, 0.35, 0.5, 0.65, 0.8].flatMap((share) =>
    (['F3', 'F4'] as const).map((id): LightPlace => {
      const level = id === 'F3' ? top : floor;
      const up = id === 'F3' ? Y : minus(Y);
      const outer = id === 'F3' ? level.y[1] : -level.y[0];
      const thick = level.y[1] - level.y[0];
      return {
        joint: id === 'F3' ? 'side to top' : 'tabs of the floor in the sides',
        shutBy: id === 'F3' ? 'fingers and glue' : 'glue in the slot, the floor inside',
        stance: farthest,
        cut: { origin: origin(0, 0, panel.z[1] + share * free), right: X, up },
        window: { left: left.x[0] - 6, right: left.x[1] + 20, bottom: outer - thick - 20, top: outer + 6 },
        from: { r: left.x[0] - BESIDE, h: outer - thick - 12 },
        to: { r: left.x[1] + 12, h: outer - thick - 12 },
        land: 0,
        glued: true,
        leaves: true,
      };
    }),
  );
  return [...walls, ...edges];
}

/** Round the plug, on all four sides, and between lens and board. */
function lensBoard(scene: Scene, stance: Stance): readonly LightPlace[] {
  const box = boxesIn(scene, stance);
  const [panel, board, plug, front] = [box('F1'), box('F6'), box('F7'), box('lens-front') ?? box('lens-barrel')];
  if (panel === null || board === null) return [];
  const inner = plug ?? within(board, LAND.board);
  const sides = [
    { right: X, edge: board.x[1], hole: inner.x[1], lens: front?.x[1] },
    { right: minus(X), edge: -board.x[0], hole: -inner.x[0], lens: front === null ? undefined : -front.x[0] },
    { right: Y, edge: board.y[1], hole: inner.y[1], lens: front?.y[1] },
    { right: minus(Y), edge: -board.y[0], hole: -inner.y[0], lens: front === null ? undefined : -front.y[0] },
  ];
  return sides.flatMap(({ right, edge, hole, lens }): readonly LightPlace[] => {
    const cut = { origin: origin(0, 0, 0), right, up: Z };
    const window = { left: 0, right: edge + 30, bottom: board.z[0] - 30, top: Math.max(panel.z[1], inner.z[1]) + 60 };
    const [out, into] = [board.z[0] - 25, Math.max(panel.z[1], inner.z[1]) + 55];
    return [
      {
        joint: 'lens board in the panel',
        shutBy: 'land under the board, and the step of the plug',
        stance,
        cut,
        window: { ...window, left: hole - 8, top: panel.z[1] + 20 },
        from: { r: edge + 25, h: out },
        to: { r: hole + 1.5, h: panel.z[1] + 12 },
        land: LAND.board,
        without: aheadOfLens,
        beside: BESIDE_SCREW,
        glued: false,
        leaves: false,
      },
      ...(lens === undefined
        ? []
        : [
            {
              joint: 'lens in the board',
              shutBy: 'the clamp’s flange on the plug, or the lens’s own flange or ring on its seat',
              stance,
              cut,
              window: { ...window, right: hole - 0.5 },
              from: { r: hole - 2, h: out },
              to: { r: hole - 2, h: into },
              land: 0,
              without: aheadOfLens,
              glued: true,
              leaves: true,
            },
          ]),
    ];
  });
}

/** A board less its land: where the opening of the panel is, if there is no plug in it. */
const within = ({ x, y, z }: Extent, by: number): Extent => ({
  x: [x[0] + by, x[1] - by],
  y: [y[0] + by, y[1] - by],
  z,
});

/**
 * With the dark slide drawn only a shutter or a cap ahead of the lens keeps daylight from it: between its plate and the
 * ring, on all four sides, and down the channel of the filter holder. Light that comes in there does not look at the film.
 */
function onFrame(scene: Scene, stance: Stance, id: string, joint: string, shutBy: string): readonly LightPlace[] {
  const { build } = scene;
  const [plate] = platesOf(build, id, { setup: stance.setup });
  const rings = [...platesOf(build, 'A3'), ...platesOf(build, 'A1')].sort((a, b) => a.low - b.low);
  const [ring, last] = [rings[0], rings.at(-1)];
  const large = ring && holeRound(ring);
  if (!plate || !ring || !last || !large) return [];
  const opening = boxOf(large);
  // a cap has no opening: somewhere in that of the ring light is in
  const hole = boxOf(holeRound(plate) ?? large.map(({ x, y }) => ({ x: x / 2, y: y / 2 })));
  const [own, frame] = [boxOf(plate.outline), boxOf(ring.outline)];
  const sides = [
    { right: X, hole: hole.right, opening: opening.right, out: Math.max(own.right, frame.right) },
    { right: minus(X), hole: -hole.left, opening: -opening.left, out: -Math.min(own.left, frame.left) },
    { right: Y, hole: hole.top, opening: opening.top, out: Math.max(own.top, frame.top) },
    { right: minus(Y), hole: -hole.bottom, opening: -opening.bottom, out: -Math.min(own.bottom, frame.bottom) },
  ];
  const shared = { stance, land: LAND.frame, glued: false, leaves: true } as const;
  const filter = boxesIn(scene, stance)('FH1');
  const gel = platesOf(build, 'FH1').flatMap((one) => holeRound(one) ?? []);
  return [
    ...sides.map(
      (side): LightPlace => ({
        ...shared,
        joint,
        shutBy,
        cut: { origin: origin(0, 0, 0), right: side.right, up: Z },
        window: { left: side.hole + 0.5, right: side.out + 15, bottom: plate.low - 8, top: last.high - 0.01 },
        from: { r: side.out + 10, h: (plate.low + plate.high) / 2 },
        to: { r: (side.hole + side.opening) / 2, h: (ring.low + ring.high) / 2 },
        // a filter holder makes the way on narrow behind the ring, and is no land; from above it is what shuts its channel
        without: side.right === Y ? [] : FILTER_HOLDER,
      }),
    ),
    ...(filter === null
      ? []
      : [
          {
            ...shared,
            joint: 'filter holder in its channel',
            shutBy: 'the cheeks of its handle over the slot, and its plies over the ring',
            cut: { origin: origin(0, 0, 0), right: Y, up: Z },
            window: {
              left: boxOf(gel).top + 0.5,
              right: filter.y[1] + 15,
              bottom: plate.high + 0.01,
              top: last.high - 0.01,
            },
            from: { r: filter.y[1] + 10, h: filter.z[1] },
            to: { r: opening.top - 1, h: filter.z[1] + 1 },
          },
        ]),
  ];
}

const FILTER_HOLDER = ['FH1', 'FH2', 'FH3', 'filter-card'];

/** The walls of a box: left, right, floor, top. */
const FRONT_BOX = ['F2L', 'F2R', 'F4', 'F3'] as const;
const MIDDLE_BOX = ['C1L', 'C1R', 'C2F', 'C2T'] as const;
const REAR_BOX = ['R1L', 'R1R', 'R2F', 'R2T'] as const;

/** Along the gap between each two boxes, on all four sides: felt shuts it. */
function boxInBox(scene: Scene, stance: Stance): readonly LightPlace[] {
  const box = boxesIn(scene, stance);
  const walls = [
    { name: 'front', ids: FRONT_BOX },
    { name: 'middle', ids: MIDDLE_BOX },
    { name: 'rear', ids: REAR_BOX },
  ].flatMap(({ name, ids }) => {
    const found = ids.flatMap((id) => box(id) ?? []);
    const [left, right, floor, top] = found;
    return left && right && floor && top ? [{ name, left, right, floor, top }] : [];
  });
  return walls.slice(1).flatMap((inner, i) => gapRound(stance, walls[i] as Walls, inner));
}

interface Walls {
  readonly name: string;
  readonly left: Extent;
  readonly right: Extent;
  readonly floor: Extent;
  readonly top: Extent;
}

function gapRound(stance: Stance, around: Walls, inner: Walls): readonly LightPlace[] {
  const { left, right, floor, top } = around;
  const rear = inner.left;
  const sides = [
    { towards: X, wall: right.x[0], box: inner.right.x[1] },
    { towards: minus(X), wall: -left.x[1], box: -inner.left.x[0] },
    { towards: Y, wall: top.y[0], box: inner.top.y[1] },
    { towards: minus(Y), wall: -floor.y[1], box: -inner.floor.y[0] },
  ];
  return sides.map(({ towards, wall, box: outer }): LightPlace => {
    const rearEdge = left.z[1];
    const middle = (wall + outer) / 2;
    // at x or y a little off the axis, clear of what stands in the middle
    const aside = towards.x === 0 ? origin(20, 0, 0) : origin(0, 20, 0);
    return {
      joint: `${inner.name} box in the ${around.name} box`,
      shutBy: `two bands of felt on the ${inner.name} box, and the overlap of the boxes`,
      stance,
      cut: { origin: aside, right: towards, up: Z },
      window: {
        left: outer - 8,
        right: wall + 0.01,
        bottom: rear.z[0] - 2.5,
        top: Math.max(rearEdge + 1.9, rear.z[0]),
      },
      from: { r: middle, h: rearEdge + 1 },
      to: { r: middle, h: rear.z[0] - 1 },
      land: 0,
      glued: false,
      leaves: false,
    };
  });
}

/** Under the back plate and along the turning ring: at four sides, and at two clipped corners. */
function backInStandard(scene: Scene, stance: Stance): readonly LightPlace[] {
  const box = boxesIn(scene, stance);
  const [plate, standard] = [box('B1'), box('R3')];
  if (plate === null || standard === null) return [];
  const gate = gateAt(scene, stance);
  const ways = [X, minus(X), Y, minus(Y), DIAGONAL, { ...DIAGONAL, x: -DIAGONAL.x }];
  return ways.map((right): LightPlace => {
    const corner = Math.abs(right.x * right.y) > 0.1;
    const far = Math.hypot(plate.x[1], plate.y[1]) + 20;
    const opening = Math.abs(right.x) * gate.right + Math.abs(right.y) * gate.top;
    return {
      joint: corner ? 'back in the standard, at its clipped corners' : 'back in the standard',
      shutBy: 'the back plate over the standard, and the turning ring in its opening',
      stance,
      cut: { origin: origin(0, 0, 0), right, up: Z },
      window: { left: opening * 0.5, right: far, bottom: standard.z[0] - 6, top: plate.z[1] - 0.01 },
      from: { r: far - 1, h: plate.z[1] - 1 },
      to: { r: opening * 0.6, h: standard.z[0] - BESIDE },
      land: corner ? LAND.corner : LAND.side,
      without: ['R6', 'R7', 'button-card', 'button-screw', 'button-nut'],
      glued: false,
      leaves: false,
    };
  });
}

/** Down between fence and holder, frame or spacer, and along its rim: at the four sides of the well. */
function well(scene: Scene, stance: Stance): readonly LightPlace[] {
  const plate = boxesIn(scene, stance)('B1');
  if (plate === null) return [];
  const gate = gateAt(scene, stance);
  const sides = [
    { right: X, opening: gate.right },
    { right: minus(X), opening: -gate.left },
    { right: Y, opening: gate.top },
    { right: minus(Y), opening: -gate.bottom },
  ];
  const what = stance.setup.focusing ? `glass for ${stance.setup.holder}` : stance.setup.holder;
  return sides.map(({ right, opening }): LightPlace => {
    const far = 200 + opening;
    return {
      joint: `${what} in the well`,
      shutBy: 'the bare rim on the seat, and a fence on all four sides',
      stance,
      cut: { origin: origin(0, 0, 0), right, up: Z },
      window: { left: opening - 6, right: far, bottom: plate.z[1] - 0.3, top: plate.z[1] + 60 },
      from: { r: far - 1, h: plate.z[1] + 55 },
      to: { r: opening - 1, h: plate.z[1] - 0.15 },
      // no film is in the camera while one looks at the glass
      ...(stance.setup.focusing ? { turns: 1, land: 0 } : { land: LAND.rim }),
      glued: false,
      leaves: true,
    };
  });
}
