import { isFelt, type Push, type Shift } from '../assembly/bodies.js';
import type { Setup, Station } from '../assembly/build.js';
import { edgePoints } from '../assembly/edge-points.js';
import type { Opaque } from '../assembly/screens.js';
import type { Point3 } from '../geometry/placement.js';
import { holds } from '../geometry/shadow.js';
import { type Cast, type Gate, type Scene, STATES, type Stance, wideGates } from './light-scene.js';
import { type Look, lookFrom, type Spot, type Watchman, type Witnesses, watchman } from './light-watch.js';

/** Light that reaches the film gate in a straight line past an edge of a part. */
export interface Glimpse {
  readonly stance: Stance;
  readonly solid: Opaque;
  /** Beside the solid's edge, as drawn at the closest station. */
  readonly point: Point3;
  /** What is lit of the gate through that point. */
  readonly spots: readonly Spot[];
}

/** Points stand this far apart along an edge, and this far off it, mm; see `searchLight`. */
const SPACING = 9;
const OFF = 0.15;

/**
 * Searches for straight lines from outside to the film gate, in every set-up, at every station, as drawn and worn.
 *
 * Why a slit of 0.3 mm × 10 mm between edges of parts is found wherever it is:
 *
 * 1. Light that comes through it and reaches the gate is a bundle of straight lines 0.3 mm by 10 mm thick. Push it towards
 *    its wide sides until wood stops it: it grazes an edge of a part along its 10 mm, or along as much as 10 mm / sin θ where
 *    the edge slants to it by θ. (Only edges that stick out can be grazed; a round side is an edge wherever it is.)
 * 2. Points stand no farther than `SPACING` apart along every such edge, so at least one stands along those 10 mm.
 * 3. It lies `OFF` into the air between the two faces that meet in the edge: whichever way light grazes the edge, between
 *    0.7 and 1 times that beside the grazing plane (0.11 … 0.15 of the 0.3). So a line of the bundle passes through it.
 * 4. Whether any line at all reaches the gate through a point is worked out exactly, in all directions at once
 *    (`light-watch.ts`): the whole gate, less the shadows of what stands between, less the shadows that what stands at the
 *    point's back would throw through it. If nothing is left, none does; if something is left, each of its points ends one.
 *
 * An opening larger than a slit, for which a part was left out, has such edges all round and is found all the more. Taken
 * for granted are: that nothing but the build's parts stops light; that a hole round a pin of its own body, with 0.25 mm
 * of air at most, is shut; that curves are chords to 0.02 mm; that gaps below 0.1 mm are shut by glue, paint and fibres; and
 * that between the stations nothing comes up that none of them has. What is found is tried once more with a computation of
 * another kind (`assembly/sight-line.ts`).
 *
 * Work is saved where it cannot matter: who hid the gate from a point (few screens, as a rule) is asked first in every
 * other stance, and not asked again where he, the point and the gate stand to each other as before. So the work grows
 * with the points, and with what differs from set-up to set-up.
 *
 * @param onGlimpse told of what is seen; false ends the search
 * @param seenEnough whether no more of what is seen past a solid's edges, as drawn or worn so, is of interest
 * @param onProgress told the share of the solids whose edges have been watched
 */
export function searchLight(
  scene: Scene,
  onGlimpse: (glimpse: Glimpse) => boolean,
  seenEnough: (solid: Opaque, push: Push) => boolean = () => false,
  onProgress: (share: number) => void = () => {},
): void {
  const watch = watchman(scene);
  const wide = wideGates(scene);
  for (const [i, solid] of scene.solids.entries()) {
    onProgress(i / scene.solids.length);
    const ways = waysToStand(scene, i);
    for (const point of pointsOf(scene, i))
      if (
        !watchPoint(
          scene,
          watch,
          { solid, point, proofs: [], wide: FAR.has(solid.piece.placement.group) ? wide : null },
          ways.filter((way) => !seenEnough(solid, way.push)),
          onGlimpse,
        )
      )
        return;
  }
}

/** Groups whose edges stand away from the gate. */
const FAR: ReadonlySet<unknown> = new Set(['front', 'rear']);

/** A point that is watched, and what once hid the gate from it: asked first wherever else it stands. */
interface Post {
  readonly solid: Opaque;
  readonly point: Point3;
  readonly proofs: Proof[];
  /** Beside the gate itself only its own size will do; from elsewhere a wider one is hidden as well. */
  readonly wide: ((gate: Gate) => Gate) | null;
}

/** Screens that hide the gate, and the places to each other in which that was found. */
interface Proof {
  readonly witnesses: Witnesses;
  readonly bodies: readonly number[];
  readonly solids: readonly number[];
  /** Whether all of it slides with the rear box. */
  readonly slides: boolean;
  readonly places: number[][];
}

function watchPoint(
  scene: Scene,
  watch: Watchman,
  post: Post,
  ways: readonly Way[],
  onGlimpse: (glimpse: Glimpse) => boolean,
): boolean {
  const { solid, point, proofs } = post;
  const { stations } = scene.build;
  const { slides } = solid.piece;
  const kin = ways.some(({ common }) => common.all[scene.solids.indexOf(solid)] === 1)
    ? slides
      ? 'sliding'
      : 'standing'
    : 'loose';
  for (const { push, setups, first, common } of ways) {
    const at = (setup: Setup, station: Station) => lookFrom(scene, point, solid.body, { push, setup, station });
    // what always stands hides the gate in all these set-ups alike, and what slides with the point at every station
    const through: Station[] = [];
    for (const station of stations) {
      const proof = known(watch, post, at(first, station), common.all);
      if (proof === null) through.push(station);
      else if (slides && proof.slides) break;
    }
    if (through.length === 0) continue;
    const settled = new Set<Station>();
    for (const setup of setups) {
      const cast = scene.standing(setup, push);
      for (const station of through) {
        if (settled.has(station)) continue;
        const look = at(setup, station);
        let proof = known(watch, post, look, cast.all);
        if (proof === null) {
          const sight = watch.look(look, cast.all, kin);
          if (sight.dark === null) {
            if (!onGlimpse({ stance: { push, setup, station }, solid, point, spots: sight.spots })) return false;
            continue;
          }
          proof = proofOf(scene, sight.dark);
          proof.places.push(places(look, solid.body, proof.bodies));
          proofs.push(proof);
        }
        const always = proof.solids.every((k) => common.all[k] === 1);
        const everywhere = slides && proof.slides;
        if (always) for (const one of everywhere ? through : [station]) settled.add(one);
        if (everywhere) break;
      }
    }
  }
  return true;
}

/** A proof that holds in a look as well: heard in the same places before, or confirmed now. */
function known(watch: Watchman, { solid, proofs, wide }: Post, look: Look, cast: Uint8Array): Proof | null {
  for (const [i, proof] of proofs.entries()) {
    if (!proof.solids.every((k) => cast[k] === 1)) continue;
    const here = places(look, solid.body, proof.bodies);
    if (!proof.places.some((there) => covers(there, here))) {
      const widely = wide === null ? look : { ...look, gate: wide(look.gate) };
      if (wide !== null && watch.confirm(widely, proof.witnesses))
        proof.places.push(places(widely, solid.body, proof.bodies));
      else if (watch.confirm(look, proof.witnesses)) proof.places.push(here);
      else continue;
    }
    // what held last is asked first
    if (i > 0) {
      proofs.splice(i, 1);
      proofs.unshift(proof);
    }
    return proof;
  }
  return null;
}

/** Whether the gate lies within where it lay before, as deep, and all bodies stand where they stood. */
function covers(there: readonly number[], here: readonly number[]): boolean {
  for (let k = 0; k < here.length; k++) {
    const more = (here[k] as number) - (there[k] as number);
    const least =
      k === 0 || k === 2 ? more > -SAME_PLACE : k === 1 || k === 3 ? more < SAME_PLACE : Math.abs(more) < SAME_PLACE;
    if (!least) return false;
  }
  return true;
}

/** Places that differ by less are one, mm. */
const SAME_PLACE = 1e-9;

/** Where the gate and some bodies stand, from the eye. */
function places({ eye, gate, shifts }: Look, own: number, bodies: readonly number[]): number[] {
  const here = [gate.left - eye.x, gate.right - eye.x, gate.bottom - eye.y, gate.top - eye.y, gate.z - eye.z];
  const [x, y, z] = shifts[own] as Shift;
  for (const body of bodies) {
    const shift = shifts[body] as Shift;
    here.push(shift[0] - x, shift[1] - y, shift[2] - z);
  }
  return here;
}

function proofOf({ solids }: Scene, witnesses: Witnesses): Proof {
  const used = [...new Set(witnesses.map(({ solid }) => solid))];
  return {
    witnesses,
    bodies: [...new Set(witnesses.map(({ body }) => body))],
    solids: used,
    slides: used.every((k) => solids[k]?.piece.slides),
    places: [],
  };
}

interface Way {
  readonly push: Stance['push'];
  /** Set-ups in which the back is turned alike and the solid stands in the same place. */
  readonly setups: readonly Setup[];
  readonly first: Setup;
  readonly common: Cast;
}

/** How a solid stands, as drawn and worn: set-ups that differ neither in its place nor in the back's are taken together. */
function waysToStand(scene: Scene, i: number): readonly Way[] {
  const { build, solids, alike } = scene;
  const [station] = build.stations;
  const solid = solids[i];
  if (station === undefined || solid === undefined) return [];
  const pushes = isFelt(solid.piece.part) ? STATES.slice(0, 1) : STATES;
  return pushes.flatMap((push) =>
    alike.flatMap(({ setups, common }) => {
      const together = new Map<string, Setup[]>();
      for (const setup of setups) {
        if (!scene.stands[i]?.[build.setups.indexOf(setup)]) continue;
        const place = String(scene.shifts({ setup, station, push })[solid.body]);
        together.set(place, [...(together.get(place) ?? []), setup]);
      }
      return [...together.values()].map((mine) => ({
        push,
        setups: mine,
        first: mine[0] as Setup,
        common: common(push),
      }));
    }),
  );
}

/** A cord lies round and loose on what it holds: its sides bound no gap. */
const isCord = ({ piece: { part } }: Opaque): boolean =>
  part.kind === 'bought' &&
  part.shape.form === 'cylinder' &&
  part.joins.every(({ by }) => by === 'rest') &&
  part.joins.length > 0;

/** The points beside a solid's edges; where wood of the same body lies flush with both faces there is none. */
function pointsOf({ solids, stands }: Scene, i: number): readonly Point3[] {
  const solid = solids[i] as Opaque;
  if (isCord(solid)) return [];
  const mates = solids.filter(
    ({ body }, k) => k !== i && body === solid.body && (stands[i] ?? []).every((here, s) => !here || stands[k]?.[s]),
  );
  const wood = (point: Point3) => mates.some((mate) => isIn(mate, point));
  return edgePoints(solid.piece, { spacing: SPACING, off: OFF })
    .filter(({ at, beyond: [a, b] }) => !wood(at) && !wood(a) && !wood(b))
    .map(({ at }) => at);
}

function isIn({ piece, screens }: Opaque, point: Point3): boolean {
  const { x, y, z } = piece.extent;
  if (point.x < x[0] || point.x > x[1] || point.y < y[0] || point.y > y[1] || point.z < z[0] || point.z > z[1])
    return false;
  return screens.some((screen) => holds(screen, point));
}
