import type { Build, Setup } from '../assembly/build.js';
import { around, type Extent } from '../assembly/extent.js';
import { isHolderFace, isOfHolder, roleOf } from '../assembly/holders.js';
import { platesOf } from '../assembly/measure.js';
import { type PlacedPart, placedIn } from '../assembly/placed-parts.js';
import { stands } from '../assembly/setups.js';
import { spanOf, spansOf } from '../assembly/span-of.js';
import { type Design, filmStands, type Holder } from '../design/design.js';
import { effectiveDepth, glassShift } from '../optics/depth.js';

/** Where things stand that several rules ask for, measured on the placed parts. z of what slides: at the closest place. */

/** z_seat: the face that the lens bears on, that of its clamp, of the plug behind the panel, or of the board ahead of it. */
export function lensSeat({ lens: { mount } }: Design, build: Build): number {
  if (mount.by === 'clamp') return spanOf(build, 'lens-clamp').z[0];
  const board = ['F6', 'F7'].flatMap((id) => spansOf(build, id));
  return mount.side === 'inside' ? Math.max(...board.map(({ z }) => z[1])) : Math.min(...board.map(({ z }) => z[0]));
}

/** s: the holder seat, the rear face of the back plate. */
export const holderSeat = (build: Build): number => spanOf(build, 'B1').z[1];

/** How far the moving groups slide. */
export const travelOf = ({ stations }: Build): number => Math.max(...stations.map(({ rear }) => rear));

/** T_g: what the lens sees of the depth of the frosted face, as it was typed. */
export const typedGlassDepth = ({ groundGlass: { depth, frosted, thickness, refractiveIndex: n } }: Design): number =>
  frosted === 'lens' ? depth : effectiveDepth(depth, { thickness, n });

/** The four walls of the rear box: their inner and outer faces from the axis, front edge and rear end. */
export interface RearBox {
  readonly box: 'rear' | 'middle';
  readonly inside: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number };
  readonly width: number;
  readonly height: number;
  /** Where the foremost and the rearmost of its front edges stand. */
  readonly front: { readonly least: number; readonly most: number };
  readonly rear: number;
}

const FRONT_WALLS = ['F2L', 'F2R', 'F3', 'F4'];

/** Both boxes. */
export interface Boxes {
  /** z of the front box's rear edge: where it reaches least far, and where farthest. */
  readonly front: { readonly least: number; readonly most: number };
  readonly rear: RearBox;
  /** Front edges of a middle box, and the rear face of its frame. */
  readonly middle: { readonly front: RearBox['front']; readonly frame: Extent } | null;
  /** Of each box over the one in it, when drawn out to the farthest seat, or as far as its stop lets it. */
  readonly overlaps: readonly Overlap[];
  /** What all of them have together beyond what they need, at the farthest seat. */
  readonly slack: number;
}

interface Overlap {
  /** Of the boxes. */
  readonly of: string;
  readonly value: number;
  readonly needed: number;
  readonly because: string;
}

export function boxesIn(build: Build): Boxes {
  const edges = FRONT_WALLS.map((id) => spanOf(build, id).z[1]);
  const front = { least: Math.min(...edges), most: Math.max(...edges) };
  const rear = rearBoxOf(build);
  const travel = travelOf(build);
  if (spansOf(build, 'C1L').length === 0) {
    const { value: needed, because } = overlapNeeded(rear);
    const value = front.least - (rear.front.most + travel);
    return {
      front,
      rear,
      middle: null,
      overlaps: [{ of: 'the boxes', value, needed, because }],
      slack: value - needed,
    };
  }
  const middle = wallsOf(build, ['C1L', 'C1R', 'C2F', 'C2T'], 'middle');
  const frame = spanOf(build, 'C3');
  const { own, rear: ofRear } = middleRuns(build);
  const joints = [
    { of: 'front and middle box', value: front.least - (middle.front.most + own), box: middle },
    { of: 'middle and rear box', value: middle.rear - (rear.front.most + ofRear), box: rear },
  ];
  const overlaps = joints.map(({ of, value, box }): Overlap => {
    const { value: needed, because } = overlapNeeded(box);
    return { of, value, needed, because };
  });
  return {
    front,
    rear,
    middle: { front: middle.front, frame },
    overlaps,
    slack: overlaps.reduce((sum, { value, needed }) => sum + value - needed, own + ofRear - travel),
  };
}

/**
 * How far a middle box is drawn out of the front box, and the rear box out of it, before the stops hold: the hooks of its
 * bars at their blocks, and the batten at the tongue of its frame.
 */
function middleRuns(build: Build): { readonly own: number; readonly rear: number } {
  const block = spanOf(build, 'F14');
  const hooks = platesOf(build, 'C4').flatMap(({ outline }) =>
    outline.filter(({ y }) => y > block.y[0]).map(({ x }) => x),
  );
  return { own: block.z[0] - Math.max(...hooks), rear: spanOf(build, 'C3').z[0] - spanOf(build, 'R10').z[1] };
}

export const rearBoxOf = (build: Build): RearBox => wallsOf(build, ['R1L', 'R1R', 'R2F', 'R2T'], 'rear');

function wallsOf(build: Build, ids: readonly [string, string, string, string], box: RearBox['box']): RearBox {
  const [left, right, bottom, top] = ids.map((id) => spanOf(build, id)) as [Extent, Extent, Extent, Extent];
  const walls = [left, right, bottom, top];
  return {
    box,
    inside: { left: left.x[1], right: right.x[0], bottom: bottom.y[1], top: top.y[0] },
    width: right.x[1] - left.x[0],
    height: top.y[1] - bottom.y[0],
    front: { least: Math.min(...walls.map(({ z }) => z[0])), most: Math.max(...walls.map(({ z }) => z[0])) },
    rear: Math.min(...walls.map(({ z }) => z[1])),
  };
}

/** O: two felt bands 15 wide with room between them, and a fifth of the width. Common practice, no source. */
function overlapNeeded({ box, width, height }: RearBox): { readonly value: number; readonly because: string } {
  const bands = 2 * 15 + 5;
  const fifth = Math.max(width, height) / 5;
  return fifth > bands
    ? { value: fifth, because: `a fifth of the ${box} box’s width, so that it does not wobble` }
    : { value: bands, because: 'two felt bands and room between them' };
}

/** The set-ups in which a picture is taken, holder by holder. */
export const exposing = ({ setups }: Build, holder: Holder): readonly Setup[] =>
  setups.filter((setup) => !setup.focusing && setup.holder === holder.name);

/** A holder as a whole: what it bears on the camera with, and everything that it is made of; bought, both are one block. */
export interface WholeHolder {
  readonly face: PlacedPart;
  readonly all: readonly PlacedPart[];
}

export function wholeHolder(build: Build, { name }: Holder): WholeHolder | undefined {
  const own = build.parts.filter((part) => isOfHolder(part, name)).flatMap(({ id }) => placedIn(build, id) ?? []);
  const face = own.find(({ part }) => isHolderFace(part));
  return face && { face, all: own };
}

/**
 * The box round a holder where it lies in a set-up, as with the back upright: as wide and as long as its face, for a dark
 * slide may be drawn out of it, and from the foremost of its parts to the rearmost. Undefined where it does not lie there.
 */
export function heldIn(whole: WholeHolder | undefined, setup: Setup): Extent | undefined {
  const standing = ({ boxes }: PlacedPart) =>
    boxes.filter(({ placement }) => stands(placement, setup)).map(({ extent }) => asUpright(extent, setup));
  const [face] = whole === undefined ? [] : standing(whole.face);
  return face && whole && { ...face, z: around(whole.all.flatMap(standing)).z };
}

/**
 * From the face of a holder to where its film works: measured to the front of the sheet in one that is made, where that
 * stands in the set-up, less what a window before it brings the film forward; of one that is bought, or was measured by hand,
 * as it was typed.
 */
export function filmDepthIn({ groundGlass }: Design, build: Build, holder: Holder, setup: Setup): number {
  if (holder.measured !== undefined) return filmStands(holder, groundGlass);
  const whole = wholeHolder(build, holder);
  const held = heldIn(whole, setup);
  const withRole = (role: 'sheet' | 'window') =>
    (whole?.all ?? [])
      .filter(({ part }) => roleOf(part) === role)
      .flatMap(({ boxes }) => boxes.filter(({ placement }) => stands(placement, setup)))
      .map(({ extent }) => extent.z);
  const [sheet] = withRole('sheet');
  if (held === undefined || sheet === undefined) return holder.filmDepth;
  const panes = withRole('window').map(([front, rear]) => glassShift(rear - front, groundGlass.refractiveIndex));
  return sheet[0] - held.z[0] - panes.reduce((sum, one) => sum + one, 0);
}

/** A box as it would lie with the back upright: lengthwise the back is a quarter turn anticlockwise, seen from behind. */
export const asUpright = ({ x, y, z }: Extent, { orientation }: Setup): Extent =>
  orientation === 'upright' ? { x, y, z } : { x: y, y: [-x[1], -x[0]], z };

/** The way back: where a box that is known with the back upright stands in a set-up. */
export const asPlaced = ({ x, y, z }: Extent, { orientation }: Setup): Extent =>
  orientation === 'upright' ? { x, y, z } : { x: [-y[1], -y[0]], y: x, z };
