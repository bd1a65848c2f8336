import { bodiesOf, isFelt, loosened, PUSHES, type Push, type Shift } from '../assembly/bodies.js';
import type { Build, Setup, Station } from '../assembly/build.js';
import { slidBy } from '../assembly/extent.js';
import { roleOf } from '../assembly/holders.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { type Opaque, opaque } from '../assembly/screens.js';
import { stands } from '../assembly/setups.js';
import type { Point3 } from '../geometry/placement.js';

/** What stands how: one thing that the photographer does, drawn out so far, as drawn or worn towards one side. */
export interface Stance {
  readonly setup: Setup;
  readonly station: Station;
  readonly push: Push;
}

/** As drawn, and worn towards each side. */
export const STATES: readonly Push[] = ['none', ...PUSHES];

/** Which of the solids count: 1 where one does. */
export interface Cast {
  readonly all: Uint8Array;
  /** Of those, what slides with the rear box. */
  readonly sliding: Uint8Array;
}

/** A group of set-ups in which the back is turned alike, and what stands in all of them. */
interface Alike {
  readonly setups: readonly Setup[];
  readonly common: (push: Push) => Cast;
}

/** The camera as light meets it. */
export interface Scene {
  readonly build: Build;
  readonly solids: readonly Opaque[];
  /** For each solid, whether it stands in each set-up. */
  readonly stands: readonly (readonly boolean[])[];
  /** What counts in a set-up; once worn, without felt. */
  readonly standing: (setup: Setup, push: Push) => Cast;
  readonly alike: readonly Alike[];
  /** How far each body stands from its place as drawn at the closest station. */
  readonly shifts: (stance: Stance) => readonly Shift[];
  /** The body that carries the film gate. */
  readonly back: number;
}

export function sceneOf(build: Build): Scene {
  const bodies = bodiesOf(build.parts);
  // light passes the window of a holder
  const solids = opaque(piecesOf(build.parts.filter((part) => roleOf(part) !== 'window')), bodies);
  const loose = loosened(bodies, solids);
  const moving = new Map(
    solids.flatMap(({ body, piece: { placement, slides } }) =>
      slides || placement.drawnFrom !== undefined ? [[body, placement] as const] : [],
    ),
  );
  const known = new Map<Setup, Map<Push, Map<number, readonly Shift[]>>>();
  const { setups } = build;
  const orientations = [...new Set(setups.map(({ orientation }) => orientation))];
  const standing = new Map(setups.map((setup) => [setup, castOf(solids, (p) => stands(p.placement, setup))]));
  return {
    build,
    solids,
    stands: solids.map(({ piece }) => setups.map((setup) => stands(piece.placement, setup))),
    standing: (setup, push) => (standing.get(setup) ?? castOf(solids, () => false))(push),
    alike: orientations.map((turn) => {
      const together = setups.filter(({ orientation }) => orientation === turn);
      return {
        setups: together,
        common: castOf(solids, (p) => together.every((setup) => stands(p.placement, setup))),
      };
    }),
    shifts: ({ setup, station, push }) => {
      const pushes = known.get(setup) ?? new Map<Push, Map<number, readonly Shift[]>>();
      const drawn = pushes.get(push) ?? new Map<number, readonly Shift[]>();
      let shifts = drawn.get(station.rear);
      if (shifts) return shifts;
      known.set(setup, pushes.set(push, drawn));
      shifts = loose(setup, push).map(([x, y, z], body): Shift => {
        const placement = moving.get(body);
        return [x, y, placement === undefined ? z : z + slidBy(placement, station.rear)];
      });
      drawn.set(station.rear, shifts);
      return shifts;
    },
    back: bodies.of('B1'),
  };
}

function castOf(solids: readonly Opaque[], counts: (piece: Piece) => boolean): (push: Push) => Cast {
  const of = (worn: boolean): Cast => {
    const all = new Uint8Array(solids.length);
    const sliding = new Uint8Array(solids.length);
    solids.forEach(({ piece }, k) => {
      if (!counts(piece) || (worn && isFelt(piece.part))) return;
      all[k] = 1;
      if (piece.slides) sliding[k] = 1;
    });
    return { all, sliding };
  };
  const [asCut, worn] = [of(false), of(true)];
  return (push) => (push === 'none' ? asCut : worn);
}

/** The film gate in a stance: a level rectangle across the axis. */
export interface Gate {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly z: number;
}

export function gateAt({ build, shifts, back }: Scene, stance: Stance): Gate {
  const { gate } = build;
  const [x, y, z] = shifts(stance)[back] ?? [0, 0, stance.station.rear];
  const upright = stance.setup.orientation === 'upright';
  const [width, height] = upright ? [gate.width, gate.height] : [gate.height, gate.width];
  return {
    left: x - width / 2,
    right: x + width / 2,
    bottom: y - height / 2,
    top: y + height / 2,
    z: gate.z + z,
  };
}

/**
 * The upright rectangle round the gate in all stances in which it stands as deep: who hides this hides the gate however the
 * back is turned and pushed.
 */
export function wideGates(scene: Scene): (gate: Gate) => Gate {
  const { setups, stations } = scene.build;
  const known = new Map<number, Gate>();
  const level = (z: number) => Math.round(z * 1e6);
  for (const setup of setups)
    for (const station of stations)
      for (const push of STATES) {
        const gate = gateAt(scene, { setup, station, push });
        const before = known.get(level(gate.z)) ?? gate;
        known.set(level(gate.z), {
          left: Math.min(before.left, gate.left),
          right: Math.max(before.right, gate.right),
          bottom: Math.min(before.bottom, gate.bottom),
          top: Math.max(before.top, gate.top),
          z: gate.z,
        });
      }
  return (gate) => known.get(level(gate.z)) ?? gate;
}

/** A point of a body where it stands in a stance. */
export function shifted(point: Point3, body: number, shifts: readonly Shift[]): Point3 {
  const [x, y, z] = shifts[body] ?? [0, 0, 0];
  return { x: point.x + x, y: point.y + y, z: point.z + z };
}
