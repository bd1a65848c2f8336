import type { Build, Setup } from '../assembly/build.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { holeRound, plateOf } from '../assembly/measure.js';
import { placedIn } from '../assembly/placed-parts.js';
import { stands } from '../assembly/setups.js';
import { spanOf } from '../assembly/span-of.js';
import type { Design, Holder } from '../design/design.js';
import { inside } from '../geometry/path.js';
import { circleOfConfusion, glassShift, registerTolerance } from '../optics/depth.js';
import { diagonal } from '../optics/image-circle.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import { exposing, filmDepthIn, heldIn, holderSeat, typedGlassDepth, wholeHolder } from './landmarks.js';
import type { ProofRule } from './proof-rule.js';

/** Whether what is sharp on the glass is sharp on the film. */

/** z of the emulsion: the face of the holder where it lies, and its film depth. */
function filmIn(design: Design, build: Build, setup: Setup, holder: Holder): number | null {
  const held = heldIn(wholeHolder(build, holder), setup);
  return held === undefined ? null : held.z[0] + filmDepthIn(design, build, holder, setup);
}

/** z at which the glass works: its face towards the lens, or that towards the eye, to which the picture is drawn back through it. */
function glassIn({ groundGlass: { frosted, refractiveIndex } }: Design, build: Build, setup: Setup): number | null {
  const pane = build.parts.find((part) => part.kind === 'bought' && part.role === 'ground-glass');
  if (pane === undefined) return null;
  const box = placedIn(build, pane.id)?.boxes.find(({ placement }) => stands(placement, setup));
  if (box === undefined) return null;
  const [front, rear] = box.extent.z;
  return frosted === 'lens' ? front : rear - glassShift(rear - front, refractiveIndex);
}

/** register: where the glass stands as it is really made, against the film of each holder as it is really held, upright and lengthwise. */
export const register: ProofRule = (design, build) => {
  const { format, lens, holders, groundGlass } = design;
  const { short, long } = format.image;
  const limit = registerTolerance(lens.maxAperture, circleOfConfusion(diagonal({ width: short, height: long })));
  if (glassTooNear(design, build)) return [];
  return holders.flatMap((holder, i) => {
    // where something was measured, the register is that of the camera that stands
    if (
      groundGlass.measured !== undefined ||
      holder.measured !== undefined ||
      holder.spacer !== undefined ||
      spacerOut(design, build, holder, i, limit) ||
      depthOut(design, build, holder, limit)
    )
      return [];
    const off = exposing(build, holder).flatMap((setup) => {
      const film = filmIn(design, build, setup, holder);
      const focusing = build.setups.find(
        (other) => other.focusing && other.holder === holder.name && other.orientation === setup.orientation,
      );
      const glass = focusing && glassIn(design, build, focusing);
      return film === null || glass === null || glass === undefined ? [] : [{ setup, by: glass - film }];
    });
    const [first, ...others] = off;
    if (first === undefined) return [];
    const worst = others.reduce((most, one) => (Math.abs(one.by) > Math.abs(most.by) + ROUNDING ? one : most), first);
    const alike = off.every(({ by }) => Math.abs(by - worst.by) <= ROUNDING);
    return unless(Math.abs(worst.by) <= limit + ROUNDING, {
      rule: 'register',
      level: 'error',
      value: worst.by,
      limit,
      unit: 'mm',
      about: 'shims',
      message: `Sharp on the glass is soft in the picture: with ${alike ? holder.name : worst.setup.name} the glass stands ${mm(Math.abs(thousandth(worst.by)))} ${worst.by > 0 ? 'behind' : 'ahead of'} the film, ${plainNumber(Math.abs(worst.by) / limit, 1)} times the tolerance of ${mm(thousandth(limit))}.`,
      hint: `Add a shim of ${mm(Math.max(0.05, Math.round(Math.abs(worst.by) * 20) / 20))} to the list, or another sheet to the stock.`,
    });
  });
};

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/** A depth of the glass that lies inside the front ply of its frame: another rule says so, and every register is out by it. */
function glassTooNear({ groundGlass: { depth, frosted, thickness } }: Design, build: Build): boolean {
  const { z } = spanOf(build, 'G1', { setup: build.setups.find(({ focusing }) => focusing) as Setup });
  return (frosted === 'lens' ? depth : depth - thickness) < z[1] - z[0] - ROUNDING;
}

/** A holder that is made otherwise deep than it was asked for: its own rule says so. */
const depthOut = (design: Design, build: Build, holder: Holder, limit: number): boolean =>
  exposing(build, holder).some(
    (setup) => Math.abs(filmDepthIn(design, build, holder, setup) - holder.filmDepth) > limit / 2 + ROUNDING,
  );

/** A spacer whose layers alone are out of tolerance: its own rule says so. */
function spacerOut(design: Design, build: Build, holder: Holder, index: number, limit: number): boolean {
  const ply = `SP${index + 1}`;
  const layers = build.parts.filter(({ id }) => id === ply || id === `${ply}T` || id.startsWith(`${ply}-shim-`));
  const tops = layers.map(({ id }) => spanOf(build, id).z[1]);
  if (tops.length === 0) return false;
  const needed = Math.abs(holder.filmDepth - typedGlassDepth(design));
  return Math.abs(Math.max(...tops) - holderSeat(build) - needed) > limit + ROUNDING;
}

/** How much wider than its rib a groove must be; common practice, no source. */
const RIB_PLAY = 0.5;
/** A rib ends so far within its holder's edges; from memory. */
const END_PLAY = 1;

/** register: a lock rib finds its groove in the back; on a spacer, or on bare wood, the holder rocks on it. */
export const ribInGroove: ProofRule = ({ holders }, build) => {
  const seat = holderSeat(build);
  return holders.flatMap((holder, i) => {
    const { name, rib, filmDepth } = holder;
    const setup = exposing(build, holder).find(({ orientation }) => orientation === 'upright');
    if (rib === null || setup === undefined) return [];
    const held = heldIn(wholeHolder(build, holder), setup);
    if (held === undefined) return [];
    const raised = held.z[0] > seat + ROUNDING;
    const groove = holeRound(plateOf(build, 'B1', { setup }), { x: 0, y: rib.fromAxis });
    const half = (rib.width + RIB_PLAY) / 2;
    // the rib runs across the whole holder
    const ends = held.x.map((end) => end - END_PLAY * Math.sign(end));
    const enters =
      groove !== null &&
      [0, ...ends].every((x) => [-half, half].every((off) => inside(groove, { x, y: rib.fromAxis + off })));
    return unless(!raised && enters, {
      rule: 'register',
      level: 'error',
      value: rib.height,
      limit: 0,
      unit: 'mm',
      about: raised ? 'groundGlass.depth' : `holders[${i}].rib`,
      message: raised
        ? `The ${name} has a lock rib and would lie on a spacer, which has no groove: it rocks on its rib, and the film is ${mm(rib.height)} out.`
        : `The lock rib of the ${name}, ${mm(tenth(rib.fromAxis))} from the axis, meets no groove in the back that it enters: it rocks on its rib, and the film is ${mm(rib.height)} out.`,
      hint: raised
        ? `Write groundGlass.depth: ${mm(filmDepth)}; then this holder needs no spacer.`
        : 'Measure again from the middle of the picture to the middle of the rib, and its width; or plane the rib off and write locating: pins.',
    });
  });
};
