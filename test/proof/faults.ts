import type { Build } from '../../src/assembly/build.js';
import { type ClosedPath, polygon, reversed } from '../../src/geometry/path.js';
import { apply, compose, type Point3, shift } from '../../src/geometry/placement.js';
import { circle } from '../../src/geometry/shapes.js';
import type { FlatPart, Join, Part, Placement } from '../../src/model/part.js';
import {
  alterPart,
  fillHoles,
  moveEngraving,
  movePart,
  removePart,
  reshape,
  reshapeOutline,
  shiftPlacement,
  thicken,
  turnEndForEnd,
  weigh,
  widenHole,
} from '../planted.js';

/** A fault of the kind that a tired builder, or a wrong formula, puts into a camera. */
export interface Fault {
  readonly what: string;
  /** Heron with the fault in it. */
  readonly plant: (build: Build) => Build;
  /** The rule that should find it. */
  readonly rule: string;
  /** What must follow from it in a real camera, and may be told as well. */
  readonly follows?: readonly string[];
  /** What the builder reads. */
  readonly says: RegExp;
}

/** Several changes on top of each other. */
const all =
  (...changes: readonly ((build: Build) => Build)[]) =>
  (build: Build): Build =>
    changes.reduce((changed, change) => change(changed), build);

const flat = (part: Part): FlatPart => {
  if (part.kind !== 'flat') throw new Error(`${part.id} is not cut from sheet`);
  return part;
};

/** A hole that nobody asked for, in the part's own frame. */
const drilled = (build: Build, id: string, x: number, y: number, diameter: number): Build =>
  alterPart(build, id, (part) => ({ ...flat(part), holes: [...flat(part).holes, reversed(circle(x, y, diameter))] }));

const joinedTo = (build: Build, id: string, join: Join): Build =>
  alterPart(build, id, (part) => ({ ...part, joins: [...part.joins, join] }));

/** Only so many of a part's places. */
const only = (build: Build, id: string, keep: (place: Placement, i: number) => boolean): Build =>
  alterPart(build, id, (part) => ({ ...part, placements: part.placements.filter(keep) }));

/** The places of a set-up whose name holds a word. */
const in_ = (word: string) => (place: Placement) => place.when?.some((name) => name.includes(word)) ?? false;

/** Corners whose `axis` lies between two limits, moved along an axis. */
const corners =
  (axis: 'x' | 'y' | 'z', from: number, to: number, along: 'x' | 'y' | 'z', by: number) =>
  (corner: Point3): Point3 =>
    corner[axis] >= from && corner[axis] <= to ? { ...corner, [along]: corner[along] + by } : corner;

/** The finger of a plate's front edge that lies nearest to the axis, moved along the edge. */
const fingerMoved =
  (id: string, by: number) =>
  (build: Build): Build => {
    const part = flat(build.parts.find((one) => one.id === id) as Part);
    const { matrix } = part.placements[0] as Placement;
    const front = part.outline
      .map(({ x, y }) => apply(matrix, { x, y, z: 0 }))
      .filter(({ z }) => z < -4)
      .map(({ y }) => y);
    const lowest = Math.min(...front.filter((y) => y > -60));
    const next = Math.min(...front.filter((y) => y > lowest + 0.1));
    return reshapeOutline(build, id, corners('y', lowest - 0.01, next + 0.01, 'y', by));
  };

const LOOSE = ['G1', 'glass-shim-500', 'glass-shim-250', 'G2', 'ground-glass', 'glass-pad', 'glass-clip', 'cord'];
const OWN_PINS = ['SP2-pin-5', 'SP2-pin-6'];

/** All that lies on the spacer of the processing holder, nearer to the seat. */
const lowered = (ids: readonly string[], by: number) =>
  all(...ids.map((id) => (build: Build) => shiftPlacement(build, id, { z: -by }, in_('glass for processing'))));

/** A pile that lies closer: each sheet of it lower than the one below by so much more. */
const settled =
  (id: string, { pitch, by }: { readonly pitch: number; readonly by: number }) =>
  (build: Build): Build =>
    alterPart(build, id, (part) => {
      const heights = part.placements.map(({ matrix }) => matrix[14] as number);
      const lowest = Math.min(...heights);
      return {
        ...part,
        placements: part.placements.map((place, i) => ({
          ...place,
          matrix: compose(shift(0, 0, -by * Math.round(((heights[i] as number) - lowest) / pitch)), place.matrix),
        })),
      };
    });

const BOX = ['R1L', 'R1R', 'R2T', 'R2F'];
const square = (half: number): ClosedPath =>
  polygon([
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ]);

export const faults: readonly Fault[] = [
  {
    what: 'a finger cut 0.3 mm beside its place',
    plant: fingerMoved('F2L', 0.3),
    rule: 'parts-collide',
    says: /F1 .* F2L .*0\.\d+ mm thick/,
    // where the finger was there is now a slit, and where it went the corner has two owners
    follows: ['corner-owner', 'light-path'],
  },
  {
    what: 'a knock out of the edge of the back, 19 mm deep: 3 mm of land are left',
    plant: (b) => knocked(b, 'B1', 19),
    rule: 'trap-land',
    says: /lies 3\.05 mm on the standard/,
    follows: ['light-path', 'one-way', 'web-least'],
  },
  {
    what: 'a hole of 5 mm drilled through the front panel and forgotten',
    plant: (b) => drilled(b, 'F1', 0, 75, 5),
    rule: 'hole-in-dark',
    says: /F1/,
    follows: ['light-path', 'empty-hole'],
  },
  {
    what: 'a spacer 0.4 mm thin, for its shims were not what was written on them',
    plant: all(
      (b) => thicken(b, 'SP2-shim-500', 0.4),
      settled('SP2-shim-500', { pitch: 0.5, by: 0.1 }),
      lowered(['SP2', 'SP2T', ...LOOSE, ...OWN_PINS], 0.4),
    ),
    rule: 'register',
    says: /0\.4 mm ahead of/,
    follows: ['register-budget'],
  },
  {
    what: 'notches of the standard 1 mm too low over the keepers',
    plant: (b) => reshape(b, 'R3', corners('y', -125.5, -124, 'y', -1)),
    rule: 'standard-over-rails',
    says: /clears the keepers by 0 mm: it sits on its own rails/,
    follows: ['groups-part'],
  },
  {
    what: 'rails 0.22 mm too wide on the inside',
    plant: (b) => reshape(b, 'T2', (p) => (Math.abs(p.x) < 82 ? { ...p, x: p.x - Math.sign(p.x) * 0.22 } : p)),
    rule: 'groups-part',
    says: /jams in the front: between R4L and T2 there is 0\.0\d mm of air/,
  },
  {
    what: 'rails 0.4 mm too wide on the inside',
    plant: (b) => reshape(b, 'T2', (p) => (Math.abs(p.x) < 82 ? { ...p, x: p.x - Math.sign(p.x) * 0.4 } : p)),
    rule: 'parts-collide',
    says: /R4[LU].*T2|T2.*R4[LU]/,
    // wider on one side only, it is not the same with its other face up
    follows: ['assembly-order', 'groups-part', 'one-way'],
  },
  {
    what: 'the end stop 1.5 mm too narrow behind its screws',
    plant: (b) => reshapeOutline(b, 'T5', corners('z', 338, 340, 'z', -1.5)),
    rule: 'nut-edge',
    says: /T5/,
    follows: ['web-least'],
  },
  {
    what: 'the turning ring 0.4 mm wider than high',
    plant: (b) => reshapeOutline(b, 'B2', (p) => ({ ...p, x: p.x + 0.2 * Math.sign(p.x) })),
    rule: 'back-square',
    says: /one way only/,
  },
  {
    what: 'the opening of the ring 3 mm too large',
    plant: (b) => widenHole(b, 'B2', 3),
    rule: 'ring-width',
    says: /snaps when it is glued/,
    follows: ['one-way'],
  },
  {
    what: 'retainers that lap over the board by 4 mm',
    plant: (b) => reshapeOutline(b, 'F9', (p) => (Math.abs(p.x) < 61 ? { ...p, x: p.x + 2 * Math.sign(p.x) } : p)),
    rule: 'board-held',
    says: /lap over the lens board by 4 mm/,
    // their slots and screws come nearer to that edge, and turned over they would lap by 6
    follows: ['web-least', 'nut-edge', 'one-way'],
  },
  {
    what: 'retainers whose slots are 5 mm too short',
    plant: (b) => shortSlots(b, 5),
    rule: 'board-held',
    says: /can be drawn 4\.5 mm/,
    follows: ['assembly-order', 'one-way', 'parts-collide'],
  },
  {
    what: 'tenons of the panel 1 mm too long',
    plant: (b) => reshapeOutline(b, 'F1', corners('y', -143, -142, 'y', -1)),
    rule: 'parts-collide',
    says: /F1 .* T1L/,
  },
  {
    what: 'a lens board with four square corners, and no block',
    plant: all(
      (b) => removePart(b, 'F10'),
      (b) => alterPart(b, 'F6', (part) => ({ ...part, outline: square(66.1) }) as Part),
    ),
    rule: 'board-way',
    says: /more than one way up/,
    follows: ['one-way'],
  },
  {
    what: 'keepers 0.29 mm too low on the sole',
    plant: all(
      (b) => movePart(b, 'T3', { y: -0.28 }),
      (b) => movePart(b, 'T3S', { y: -0.28 }),
      (b) => thicken(b, 'rail-card', 0.02),
      (b) => movePart(b, 'keeper-screw', { y: -0.28 }),
    ),
    rule: 'groups-part',
    says: /R4U.*to the top/,
    follows: ['parts-collide', 'parts-touch', 'assembly-order', 'scale-sense'],
  },
  {
    what: 'the end stop 20 mm too far forward',
    plant: all(
      (b) => movePart(b, 'T5', { z: -20 }),
      (b) => movePart(b, 'stop-screw', { z: -20 }),
    ),
    rule: 'parts-collide',
    says: /R4L .* T5/,
    follows: ['groups-part', 'assembly-order'],
  },
  {
    what: 'the slot of the lock 20 mm too short in front',
    plant: all(
      (b) => reshape(b, 'T1L', corners('z', 185, 200, 'z', 20)),
      (b) => reshape(b, 'T1U', corners('z', 185, 200, 'z', 20)),
    ),
    rule: 'slot-length',
    says: /the knob stops before infinity/,
    follows: ['parts-collide', 'assembly-order'],
  },
  {
    what: 'a doubler 4 mm too narrow',
    plant: (b) => reshapeOutline(b, 'T4', (p) => ({ ...p, x: p.x - 2 * Math.sign(p.x) })),
    rule: 'tripod-hold',
    says: /doubler is 56 mm wide/,
  },
  {
    what: 'a doubler of one ply',
    plant: (b) => only(b, 'T4', (_, i) => i === 0),
    rule: 'tripod-hold',
    says: /held in 8\.1 mm of wood/,
    follows: ['parts-touch'],
  },
  {
    what: 'a processing holder of 8 kg',
    plant: (b) => weigh(b, 'holder-2', 8),
    rule: 'sag-tilt',
    says: /top of the picture is soft/,
    follows: ['balance', 'floor-scrape', 'cord-hold', 'register-budget'],
  },
  {
    what: 'ribs 3 mm too high',
    plant: (b) => reshapeOutline(b, 'R5', corners('y', -107, -104, 'y', 3)),
    rule: 'rib-under-floor',
    says: /ribs pass/,
    follows: ['parts-collide', 'assembly-order'],
  },
  {
    what: 'a sole that reaches 75 mm too far ahead',
    plant: all(
      (b) => reshapeOutline(b, 'R4L', corners('z', 77, 78, 'z', -75)),
      (b) => reshapeOutline(b, 'R4U', corners('z', 77, 78, 'z', -75)),
    ),
    rule: 'sole-meets-front',
    says: /stands 2\.4 mm behind the panel/,
  },
  {
    what: 'turn-buttons with arms 4 mm too short',
    plant: (b) => shortArms(b, 4),
    rule: 'button-clears',
    says: /lies 4\.\d mm over the back|lies [5-7]/,
  },
  {
    what: 'screws of the turn-buttons 0.6 mm proud of the standard',
    plant: (b) => movePart(b, 'button-screw', { z: -0.6 }),
    rule: 'button-clears',
    says: /stand 0\.6 mm proud/,
    follows: ['parts-touch'],
  },
  {
    what: 'a fence of 4 mm under the dark slide',
    plant: (b) => thicken(b, 'fence-open', 4),
    rule: 'fence-below-slide',
    says: /a fence of 4 mm at the open end stops it/,
  },
  {
    what: 'no fence at the open end',
    plant: (b) => removePart(b, 'fence-open'),
    rule: 'light-path',
    says: /holder|glass/,
  },
  {
    what: 'a long fence glued 0.6 mm too near to the holder',
    plant: (b) => shiftPlacement(b, 'B3', { x: -0.6 }, (_, { x, y }) => Math.abs(y) > 60 && x > 0),
    rule: 'parts-collide',
    says: /B3/,
    follows: ['well-fit', 'assembly-order'],
  },
  {
    what: 'a seat pin 1 mm beside its hole',
    plant: (b) => movePart(b, 'seat-pin-5', { x: 1 }),
    rule: 'parts-collide',
    says: /seat-pin-5/,
    follows: ['assembly-order', 'hole-in-dark'],
  },
  {
    what: 'a pane laid in 0.4 mm too far back',
    plant: all(
      (b) => movePart(b, 'ground-glass', { z: 0.4 }),
      (b) => thicken(b, 'glass-pad', 1.65),
      (b) => movePart(b, 'glass-pad', { z: 0.4 }),
    ),
    rule: 'register',
    says: /0\.4 mm behind/,
    follows: ['parts-touch', 'register-budget', 'glass-packing'],
  },
  {
    what: 'the keeper with the scale put on end for end',
    plant: (b) => turnEndForEnd(b, 'T3S'),
    rule: 'scale-sense',
    says: /backwards|scale/,
    follows: [
      'empty-hole',
      'parts-collide',
      'mirror-text',
      'assembly-order',
      'one-way',
      'groups-part',
      'parts-touch',
      'id-hidden',
    ],
  },
  {
    what: 'the lines of the scale 6 mm off',
    plant: (b) => moveEngraving(b, 'T3S', 6),
    rule: 'scale-sense',
    says: /scale/,
  },
  {
    what: 'a rear box cut 20 mm too short in front',
    plant: all(
      // the fingers get narrower by as much, those of all four panels alike
      ...BOX.map(
        (id) => (b: Build) =>
          reshapeOutline(b, id, (p) => (p.z < 167.4 ? { ...p, z: p.z + (20 * (167.4 - p.z)) / 161.35 } : p)),
      ),
      (b) => movePart(b, 'felt-long', { z: 20 }),
      (b) => movePart(b, 'felt-side', { z: 20 }),
    ),
    rule: 'overlap-far',
    says: /overlap by 33/,
    follows: ['light-path'],
  },
  {
    what: 'a front box 1.5 mm too long behind',
    plant: all(
      ...['F2L', 'F2R', 'F3', 'F4'].map((id) => (b: Build) => reshapeOutline(b, id, corners('z', 165, 166, 'z', 1.5))),
    ),
    rule: 'back-meets-box',
    says: /comes within 0\.5 mm/,
    follows: ['finger-rule', 'corner-owner'],
  },
  {
    what: 'corner strips of thicker wood',
    plant: (b) => thicken(b, 'F5', 5.5),
    rule: 'box-meets-panel',
    says: /stands 6\.1 mm behind the panel|strips/,
  },
  {
    what: 'glue between back and standard',
    plant: (b) => joinedTo(b, 'B1', { to: 'R3', by: 'glue' }),
    rule: 'groups-part',
    says: /B1 .* held fast to R3/,
  },
  {
    what: 'a corner block that lies 0.18 mm ahead of the panel',
    plant: (b) => movePart(b, 'F10', { z: -0.18 }),
    rule: 'parts-touch',
    says: /F10 .* glued to F1 and stands 0\.18 mm away/,
  },
  {
    what: 'cord hooks that were never put in',
    plant: (b) => removePart(b, 'B5'),
    rule: 'empty-hole',
    says: /B1/,
  },
  {
    what: 'a sole without holes for its tenons',
    plant: (b) => fillHoles(b, 'R4U'),
    rule: 'parts-collide',
    says: /R4U/,
    follows: ['assembly-order', 'parts-touch', 'one-way'],
  },
  {
    what: 'a clamp screw that was never put in',
    plant: (b) => only(b, 'clamp-screw', (_, i) => i > 0),
    rule: 'hole-in-dark',
    says: /F6|F7/,
    follows: ['light-path', 'parts-touch'],
  },
  {
    what: 'an opening of the panel 12.5 mm too wide on every side',
    plant: (b) => widenHole(b, 'F1', 12.5),
    rule: 'light-path',
    says: /land|board/,
    follows: ['web-least', 'hole-in-dark'],
  },
  {
    what: 'a hole in the sole 1 mm from its lock bolt',
    plant: (b) => drilled(b, 'R4L', 0, 0, 3),
    rule: 'web-least',
    says: /R4L/,
    follows: ['nut-edge', 'one-way'],
  },
  {
    what: 'a corner of the front box cut away where three panels meet',
    plant: (b) => reshapeOutline(b, 'F1', (p) => (p.x > 103 && p.y > 103 ? { ...p, y: p.y - 4.05 } : p)),
    rule: 'corner-owner',
    says: /corner/,
    follows: ['light-path', 'finger-rule', 'web-least'],
  },
  {
    what: 'marks on the outside of the front box',
    plant: (b) => outside(b, 'F2L'),
    rule: 'id-hidden',
    says: /F2L/,
  },
];

/** A notch of 40 in the middle of a plate's right edge, as seen in the first of its places. */
function knocked(build: Build, id: string, deep: number): Build {
  return alterPart(build, id, (part) => {
    const { outline } = flat(part);
    const { matrix } = part.placements[0] as Placement;
    const side = Math.sign(matrix[0] as number);
    const edge = Math.max(...outline.map(({ x }) => side * x));
    const i = outline.findIndex((v, k) => {
      const next = outline[(k + 1) % outline.length] ?? v;
      return side * v.x > edge - 0.01 && side * next.x > edge - 0.01 && v.y * next.y < 0;
    });
    const [from, to] = [outline[i], outline[(i + 1) % outline.length]];
    if (!from || !to) throw new Error(`${id} has no straight right edge`);
    const way = Math.sign(to.y - from.y);
    const notch = [
      { x: from.x, y: -20 * way, bulge: 0 },
      { x: from.x - side * deep, y: -20 * way, bulge: 0 },
      { x: from.x - side * deep, y: 20 * way, bulge: 0 },
      { x: from.x, y: 20 * way, bulge: 0 },
    ];
    return { ...flat(part), outline: [...outline.slice(0, i + 1), ...notch, ...outline.slice(i + 1)] };
  });
}

/** Arms shortened at their free end: in the part's own frame they point along x, 19 from the pivot. */
const shortArms = (build: Build, by: number): Build =>
  alterPart(build, 'R6', (part) => ({
    ...flat(part),
    outline: flat(part).outline.map((v) => (v.x > 10 ? { ...v, x: v.x - by } : v)),
  }));

/** Slots of the retainers that end sooner on both sides: in the part's own frame they run along x. */
const shortSlots = (build: Build, by: number): Build =>
  alterPart(build, 'F9', (part) => ({
    ...flat(part),
    holes: flat(part).holes.map((hole) => hole.map((v) => ({ ...v, x: v.x - (Math.sign(v.x) * by) / 2 }))),
  }));

/** A panel engraved on its other face: cut in mirror image and put in turned round. */
function outside(build: Build, id: string): Build {
  return alterPart(build, id, (part) => {
    const own = flat(part);
    const mirrored = (loop: ClosedPath): ClosedPath =>
      reversed(loop).map((v) => ({ ...v, x: -v.x, bulge: -v.bulge || 0 }));
    const place = own.placements[0] as Placement;
    const m = place.matrix;
    const at = (i: number) => m[i] as number;
    // own x and z the other way round, from the other face
    const matrix = [
      -at(0),
      -at(1),
      -at(2),
      0,
      at(4),
      at(5),
      at(6),
      0,
      -at(8),
      -at(9),
      -at(10),
      0,
      at(12) + own.thickness * at(8),
      at(13) + own.thickness * at(9),
      at(14) + own.thickness * at(10),
      1,
    ];
    return {
      ...own,
      outline: mirrored(own.outline),
      holes: own.holes.map(mirrored),
      marks: own.marks.map((mark) => ({ ...mark, x: -mark.x - 20 })),
      placements: [{ ...place, matrix }],
    };
  });
}
