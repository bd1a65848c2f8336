import type { Build } from '../assembly/build.js';
import { isOfHolder, roleOf } from '../assembly/holders.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { AXIS, type Loop, openingRound, reach } from '../assembly/measure.js';
import type { PlacedPart } from '../assembly/placed-parts.js';
import { stands } from '../assembly/setups.js';
import type { Design } from '../design/design.js';
import type { Point } from '../geometry/path.js';
import type { Placement } from '../model/part.js';
import { type Bundle, bundleHalfWidth } from '../optics/light-cone.js';
import { mm, tenth } from '../units/print.js';
import { exposing, filmDepthIn, heldIn, lensSeat, rearBoxOf, travelOf, wholeHolder } from './landmarks.js';
import type { PieceRule, ProofRule } from './proof-rule.js';

/** What stands in the way of the light between lens and film. */

/** An opening that the light passes: at z of the closest place, free so far from the axis towards each point of the image's edge. */
interface Gate {
  readonly name: string;
  readonly z: number;
  readonly half: readonly number[];
  /** null: it stands in every set-up. */
  readonly placement: Placement | null;
}

/** cone-clear: room between the bundle and each opening that it passes, to all sides and corners of the image. */
export const coneClear: PieceRule = (design, build, pieces) => {
  const { format, lens, holders } = design;
  const rim = {
    z: lensSeat(design, build) + lens.barrel.grip + lens.barrel.rear,
    radius: lens.barrel.rearDiameter / 2,
  };
  const { short, long } = format.image;
  const edges = { upright: edgeOf(short, long), lengthwise: edgeOf(long, short) };
  const plates = acrossTheLight(build, pieces);
  const gatesTo = (edge: readonly Point[]) => [
    ...boxGates(build, edge, rim.z),
    ...plates.flatMap((plate) => plateGates(plate, edge)),
  ];
  const gates = { upright: gatesTo(edges.upright), lengthwise: gatesTo(edges.lengthwise) };
  const halves = { upright: edges.upright.map(fromAxis), lengthwise: edges.lengthwise.map(fromAxis) };
  const travel = travelOf(build);
  let tightest = { room: Infinity, gate: '', holder: '' };
  for (const holder of holders)
    for (const setup of exposing(build, holder)) {
      const held = heldIn(wholeHolder(build, holder), setup);
      if (held === undefined) continue;
      const film = held.z[0] + filmDepthIn(design, build, holder, setup);
      const light = [0, travel].map((rear) => ({
        rear,
        bundles: halves[setup.orientation].map((half): Bundle => ({ rim, film: { z: film + rear, half } })),
      }));
      for (const gate of gates[setup.orientation]) {
        if (gate.placement !== null && !stands(gate.placement, setup)) continue;
        for (const { rear, bundles } of light) {
          const z = gate.z + rear;
          for (let way = 0; way < bundles.length; way++) {
            // ahead of the rim the barrel itself has to pass
            const half = z <= rim.z ? rim.radius : bundleHalfWidth(bundles[way] as Bundle, z);
            const room = (gate.half[way] as number) - half;
            if (room < tightest.room - ROUNDING) tightest = { room, gate: gate.name, holder: holder.name };
          }
        }
      }
    }
  const { room } = tightest;
  const dark = room < -ROUNDING;
  return unless(room >= CONE_ROOM - ROUNDING, {
    rule: 'cone-clear',
    level: dark ? 'error' : 'warning',
    value: room,
    limit: dark ? 0 : CONE_ROOM,
    unit: 'mm',
    about: 'lens.barrel.rearDiameter',
    message: dark
      ? `Straight dark edges: with ${tightest.holder} the light from the rear of the lens is ${mm(tenth(-room))} wider than the opening of the ${tightest.gate}.`
      : `The ${tightest.gate} leaves the light from the rear of the lens ${mm(tenth(room))} with ${tightest.holder}: a back that sits askew cuts the edge of the picture.`,
    hint: cure(design, tightest.gate),
  });
};

/** Where the lens is wider than the image it is the lens that is wrong, else the wood. */
const cure = ({ format: { image }, lens: { barrel } }: Design, gate: string): string =>
  barrel.rearDiameter > image.short
    ? `The rear of the lens is ${mm(barrel.rearDiameter)} wide for an image of ${mm(image.short)}: take the next larger format, or a lens that is narrower behind.`
    : `Cut the opening of the ${gate} ${mm(CONE_ROOM)} larger than the image on every side, and set it square to the axis.`;

/** Room that a back askew on its ring takes; common practice, no source. */
const CONE_ROOM = 2;

/** The middles of the image's sides and its corners, from the axis. */
function edgeOf(width: number, height: number): readonly Point[] {
  return [-1, 0, 1].flatMap((i) =>
    [-1, 0, 1].flatMap((k) => (i === 0 && k === 0 ? [] : [{ x: (i * width) / 2, y: (k * height) / 2 }])),
  );
}

const fromAxis = ({ x, y }: Point): number => Math.sqrt(x * x + y * y);

/** A plate across the axis that stands where pictures are taken, and its opening; one without a hole lets nothing through. */
interface Across {
  readonly name: string;
  readonly placement: Placement;
  readonly z: readonly [number, number];
  readonly opening: Loop | null;
}

/** Plates that slide with the film, shims among them; glass and holders are none of them: the mask before a film is as large as the image. */
function acrossTheLight({ setups }: Build, pieces: readonly PlacedPart[]): readonly Across[] {
  const taken = setups.filter(({ focusing }) => !focusing);
  return pieces.flatMap(({ part, boxes }) =>
    part.kind === 'printed' || roleOf(part) !== undefined || isOfHolder(part)
      ? []
      : boxes.flatMap(({ placement, extent: { z } }) => {
          if (placement.group === 'front' || !taken.some((setup) => stands(placement, setup))) return [];
          const opening = openingRound(part, placement, 'z');
          return opening === undefined ? [] : [{ name: part.name, placement, z, opening }];
        }),
  );
}

/** A plate's opening at both of its faces. */
function plateGates({ name, placement, z, opening }: Across, edge: readonly Point[]): readonly Gate[] {
  const half = edge.map((towards) => (opening === null ? 0 : reach(opening, AXIS, towards)));
  return z.map((face) => ({ name, z: face, half, placement }));
}

/** The rear box at both ends, its front edge only where it stands behind the lens: whether it passes the barrel is another rule's business. */
function boxGates(build: Build, edge: readonly Point[], rim: number): readonly Gate[] {
  const { inside: wall, front, rear } = rearBoxOf(build);
  const half = edge.map(({ x, y }) => {
    const scale = Math.sqrt(x * x + y * y);
    const across = x === 0 ? Infinity : ((x > 0 ? wall.right : -wall.left) * scale) / Math.abs(x);
    const up = y === 0 ? Infinity : ((y > 0 ? wall.top : -wall.bottom) * scale) / Math.abs(y);
    return Math.min(across, up);
  });
  return [
    { name: 'front edge of the rear box', z: front.least, half, placement: null },
    { name: 'rear end of the rear box', z: rear, half, placement: null },
  ].filter(({ z }) => z >= rim);
}

/** Glancing light on parallel walls veils pictures; common practice, no source. */
const WALL_ROOM = 6;

/** wall-flare: from the edge of the image to the nearest wall of the box; the back turns, so that its long side meets each. */
export const wallFlare: ProofRule = ({ format: { image } }, build) => {
  const { left, right, bottom, top } = rearBoxOf(build).inside;
  const wall = Math.min(-left, right, -bottom, top);
  const value = wall - image.long / 2;
  return unless(value >= WALL_ROOM - ROUNDING || isBaffled(build, wall), {
    rule: 'wall-flare',
    level: 'warning',
    value,
    limit: WALL_ROOM,
    unit: 'mm',
    about: 'format.image',
    message: `The edge of the image runs ${mm(tenth(value))} from the walls of the box: light that glances off them veils the shadows.`,
    hint: `Write baffle: true, or an image no longer than ${mm(tenth(2 * (wall - WALL_ROOM)))}, or line the walls with black velvet paper.`,
  });
};

/** Whether a baffle stands as far out of the walls as they should be from the image. */
function isBaffled(build: Build, wall: number): boolean {
  const baffle = build.parts.find(({ id }) => id === 'R8');
  const [place] = baffle?.placements ?? [];
  const opening = baffle && place && openingRound(baffle, place, 'z');
  return opening
    ? opening.every(({ x, y }) => wall - Math.max(Math.abs(x), Math.abs(y)) >= WALL_ROOM - ROUNDING)
    : false;
}
