import type { Shift } from '../assembly/bodies.js';
import type { Extent } from '../assembly/extent.js';
import type { Opaque } from '../assembly/screens.js';
import type { Point3 } from '../geometry/placement.js';
import { holds, leftOf, type Patch, type Screen, type Shadow, shadowMaker } from '../geometry/shadow.js';
import { type Gate, gateAt, type Scene, type Stance, shifted } from './light-scene.js';

/** A convex piece of the gate, its corners on the gate's plane. */
export type Spot = readonly Point3[];

/** An eye as near as this to the plane of the gate is moved off it, mm: seen edge on the gate would be nothing. */
const GRAZING = 0.01;
/** The screens that last hid something are looked at first: they mostly hide the gate from the edge's next point too. */
const REMEMBERED = 24;

export interface Candidate {
  readonly solid: number;
  readonly body: number;
  readonly screen: Screen;
  readonly box: Extent;
}

/** Screens that together hide the gate from a point: whoever doubts it takes away their shadows once more, and no others. */
export type Witnesses = readonly Candidate[];

/** What is seen of the gate: nothing, and who hides it, or something. */
export type Sight = { readonly dark: Witnesses } | { readonly dark: null; readonly spots: readonly Spot[] };

/** A look from a point as it stands in a stance. */
export interface Look {
  readonly eye: Point3;
  readonly gate: Gate;
  readonly shifts: readonly Shift[];
}

/**
 * A watchman who remembers what hid the gate the last time. He starts with the whole gate as seen from the point, and
 * takes away what each screen hides: one between the point and the gate by its shadow, one at the point's back by the
 * shadow that it throws through the point. What is left at the end is lit.
 */
export interface Watchman {
  /** Looks past everything that counts. */
  readonly look: (look: Look, cast: Uint8Array, whose: Kin) => Sight;
  /** Whether these alone hide the gate. */
  readonly confirm: (look: Look, witnesses: Witnesses) => boolean;
}

export function watchman(scene: Scene): Watchman {
  const { solids } = scene;
  const shadow = shadowMaker();
  const ranked = rankedScreens(scene);
  const bounds = solids.map(({ piece }) => piece.extent);
  const recent: Candidate[] = [];
  const passes = new Uint8Array(solids.length);
  const field: Field = { left: 0, right: 0, bottom: 0, top: 0, deep: 1 };
  let patches: readonly Patch[] = [];

  const start = ({ eye, gate }: Look): void => {
    field.deep = gate.z - eye.z;
    patches = [wholeGate(gate, eye)];
    bound(field, patches);
  };

  /** Takes away what one screen hides, and says whether that was anything. */
  const take = ({ eye, gate, shifts }: Look, { body, screen, box }: Candidate): boolean => {
    const shift = shifts[body] as Shift;
    const x = eye.x - shift[0];
    const y = eye.y - shift[1];
    const z = eye.z - shift[2];
    let found = false;
    for (let behind = 0; behind < 2; behind++) {
      if (!meets(field, box, x, y, z, behind === 1)) continue;
      const hidden = shadow(screen, { x, y, z, plane: gate.z - shift[2] }, behind === 1 ? 'behind' : 'before');
      if (hidden === 'nothing') continue;
      if (hidden === 'everything') {
        patches = [];
        return true;
      }
      const left = less(patches, hidden);
      if (left === patches) continue;
      patches = left;
      found = true;
      if (left.length === 0) return true;
      bound(field, patches);
    }
    return found;
  };

  const remember = (candidate: Candidate): void => {
    const known = recent.indexOf(candidate);
    if (known >= 0) recent.splice(known, 1);
    recent.unshift(candidate);
    if (recent.length > REMEMBERED) recent.pop();
  };

  /** A screen that the eye itself is in. */
  const around = ({ eye, shifts }: Look, cast: Uint8Array): Candidate | null => {
    for (let k = 0; k < solids.length; k++) {
      if (cast[k] !== 1) continue;
      const { body, screens, boxes } = solids[k] as Opaque;
      const shift = shifts[body] as Shift;
      const at = { x: eye.x - shift[0], y: eye.y - shift[1], z: eye.z - shift[2] };
      if (!isIn(bounds[k] as Extent, at)) continue;
      const s = screens.findIndex((screen) => holds(screen, at));
      if (s >= 0) return { solid: k, body, screen: screens[s] as Screen, box: boxes[s] as Extent };
    }
    return null;
  };

  return {
    confirm: (look, witnesses) => {
      start(look);
      for (const candidate of witnesses) {
        take(look, candidate);
        if (patches.length === 0) return true;
      }
      return false;
    },
    look: (look, cast, whose) => {
      const within = around(look, cast);
      if (within) return { dark: [within] };
      start(look);
      const used: Candidate[] = [];
      for (const candidate of [...recent]) {
        if (cast[candidate.solid] !== 1 || !take(look, candidate)) continue;
        used.push(candidate);
        if (patches.length === 0) return { dark: used };
      }
      passes.fill(0);
      for (const candidate of ranked[whose]) {
        const { solid, body } = candidate;
        if (cast[solid] !== 1) continue;
        if (passes[solid] === 0) {
          const shift = look.shifts[body] as Shift;
          const [x, y, z] = [look.eye.x - shift[0], look.eye.y - shift[1], look.eye.z - shift[2]];
          const box = bounds[solid] as Extent;
          passes[solid] = meets(field, box, x, y, z, false) || meets(field, box, x, y, z, true) ? 1 : 2;
        }
        if (passes[solid] === 2 || !take(look, candidate)) continue;
        used.push(candidate);
        remember(candidate);
        if (patches.length === 0) return { dark: used };
      }
      return { dark: null, spots: patches.map((patch) => spotOf(patch, look.eye, look.gate)) };
    },
  };
}

/** A look from a point of a body in a stance. */
export function lookFrom(scene: Scene, point: Point3, body: number, stance: Stance): Look {
  const shifts = scene.shifts(stance);
  const gate = gateAt(scene, stance);
  const eye = shifted(point, body, shifts);
  return { gate, shifts, eye: Math.abs(gate.z - eye.z) < GRAZING ? { ...eye, z: gate.z - GRAZING } : eye };
}

const isIn = ({ x, y, z }: Extent, at: Point3): boolean =>
  at.x >= x[0] && at.x <= x[1] && at.y >= y[0] && at.y <= y[1] && at.z >= z[0] && at.z <= z[1];

/** What stands with the front box, what always slides with the rear box, and what comes and goes with a set-up. */
export type Kin = 'standing' | 'sliding' | 'loose';

/**
 * All screens, those that hide most first: large faces, few sides. For an eye on what always stands, its own kin come
 * first and what comes and goes last: the word of the former holds in more stances. For an eye on what comes and goes, its
 * own kin, which lie about it, come first.
 */
function rankedScreens({ solids, alike }: Scene): { readonly [K in Kin]: readonly Candidate[] } {
  const common = alike.map((one) => one.common('none').all);
  const all = solids.flatMap(({ piece, body, screens, boxes }, solid) =>
    screens.map((screen, k) => {
      const box = boxes[k] as Extent;
      const [long, wide] = [box.x, box.y, box.z].map(([from, to]) => to - from).sort((a, b) => b - a) as [
        number,
        number,
      ];
      const lasts = common.some((cast) => cast[solid] === 1);
      const kin: Kin = !lasts ? 'loose' : piece.slides ? 'sliding' : 'standing';
      return { solid, body, screen, box, kin, face: (long * wide) / (1 + screen.loop.length / 16) };
    }),
  );
  const by = (whose: Kin) => {
    const worth = { standing: 1 / 2, sliding: 1 / 2, loose: 1 / 4, [whose]: 1 };
    return [...all].sort((a, b) => worth[b.kin] * b.face - worth[a.kin] * a.face);
  };
  return { standing: by('standing'), sliding: by('sliding'), loose: by('loose') };
}

/** x and y from the eye's foot on the gate's plane. */
const wholeGate = ({ left, right, bottom, top }: Gate, { x, y }: Point3): Patch => [
  left - x,
  bottom - y,
  right - x,
  bottom - y,
  right - x,
  top - y,
  left - x,
  top - y,
];

/** The upright rectangle round what is still lit, from the eye's foot, and how far behind the eye the gate's plane lies. */
interface Field {
  left: number;
  right: number;
  bottom: number;
  top: number;
  deep: number;
}

function bound(field: Field, patches: readonly Patch[]): void {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const patch of patches)
    for (let i = 0; i < patch.length; i += 2) {
      const [x, y] = [patch[i] as number, patch[i + 1] as number];
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < bottom) bottom = y;
      if (y > top) top = y;
    }
  field.left = left;
  field.right = right;
  field.bottom = bottom;
  field.top = top;
}

/** Whether a box comes into the pyramid from the eye to the field: between the two, or in its mirror image behind the eye. */
function meets(field: Field, box: Extent, x: number, y: number, z: number, behind: boolean): boolean {
  const { deep } = field;
  const [a, b] = [(box.z[0] - z) / deep, (box.z[1] - z) / deep];
  let [from, to] = a < b ? [a, b] : [b, a];
  if (!behind) {
    if (to <= 0 || from >= 1) return false;
    if (from < 0) from = 0;
    if (to > 1) to = 1;
  } else {
    if (from >= 0) return false;
    if (to > 0) to = 0;
  }
  const [l0, l1, r0, r1] = [from * field.left, to * field.left, from * field.right, to * field.right];
  if (Math.max(l0, l1, r0, r1) < box.x[0] - x || Math.min(l0, l1, r0, r1) > box.x[1] - x) return false;
  const [b0, b1, t0, t1] = [from * field.bottom, to * field.bottom, from * field.top, to * field.top];
  return Math.max(b0, b1, t0, t1) >= box.y[0] - y && Math.min(b0, b1, t0, t1) <= box.y[1] - y;
}

/** The patches less a shadow; the same list where it touches none of them. */
function less(patches: readonly Patch[], hidden: Shadow): readonly Patch[] {
  let changed: Patch[] | null = null;
  for (let i = 0; i < patches.length; i++) {
    const patch = patches[i] as Patch;
    const left = leftOf(patch, hidden);
    if (left === 'all') {
      changed?.push(patch);
      continue;
    }
    changed ??= patches.slice(0, i);
    changed.push(...left);
  }
  return changed ?? patches;
}

function spotOf(patch: Patch, eye: Point3, gate: Gate): Spot {
  const spot: Point3[] = [];
  for (let i = 0; i < patch.length; i += 2)
    spot.push({ x: eye.x + (patch[i] as number), y: eye.y + (patch[i + 1] as number), z: gate.z });
  return spot;
}
