import type { Build, Setup } from '../assembly/build.js';
import type { Extent } from '../assembly/extent.js';
import { type PlacedPart, placedIn } from '../assembly/placed-parts.js';
import { stands } from '../assembly/setups.js';
import { spanOf, spansOf } from '../assembly/span-of.js';
import type { Design, Holder } from '../design/design.js';
import { effectiveDepth } from '../optics/depth.js';

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
  /** Front box over rear box when drawn out to the farthest seat. */
  readonly overlap: number;
}

export function boxesIn(build: Build): Boxes {
  const edges = FRONT_WALLS.map((id) => spanOf(build, id).z[1]);
  const front = { least: Math.min(...edges), most: Math.max(...edges) };
  const rear = rearBoxOf(build);
  return { front, rear, overlap: front.least - (rear.front.most + travelOf(build)) };
}

export function rearBoxOf(build: Build): RearBox {
  const [left, right, bottom, top] = [
    spanOf(build, 'R1L'),
    spanOf(build, 'R1R'),
    spanOf(build, 'R2F'),
    spanOf(build, 'R2T'),
  ];
  const walls = [left, right, bottom, top];
  return {
    inside: { left: left.x[1], right: right.x[0], bottom: bottom.y[1], top: top.y[0] },
    width: right.x[1] - left.x[0],
    height: top.y[1] - bottom.y[0],
    front: { least: Math.min(...walls.map(({ z }) => z[0])), most: Math.max(...walls.map(({ z }) => z[0])) },
    rear: Math.min(...walls.map(({ z }) => z[1])),
  };
}

/** O: two felt bands 15 wide with room between them, and a fifth of the width. Common practice, no source. */
export function overlapNeeded({ width, height }: RearBox): { readonly value: number; readonly because: string } {
  const bands = 2 * 15 + 5;
  const fifth = Math.max(width, height) / 5;
  return fifth > bands
    ? { value: fifth, because: 'a fifth of the rear box’s width, so that it does not wobble' }
    : { value: bands, because: 'two felt bands and room between them' };
}

/** The set-ups in which a picture is taken, holder by holder. */
export const exposing = ({ setups }: Build, holder: Holder): readonly Setup[] =>
  setups.filter((setup) => !setup.focusing && setup.holder === holder.name);

/** The stand-in of a holder. */
export function standInOf(build: Build, holder: Holder): PlacedPart | undefined {
  const part = build.parts.find((one) => one.kind === 'bought' && one.role === 'holder' && one.name === holder.name);
  return part && placedIn(build, part.id);
}

/** The boxes of a part in a set-up, the back turned to the upright position if it is not in it. */
export const uprightBoxes = (placed: PlacedPart | undefined, setup: Setup): readonly Extent[] =>
  (placed?.boxes ?? [])
    .filter(({ placement }) => stands(placement, setup))
    .map(({ extent }) => asUpright(extent, setup));

/** A box as it would lie with the back upright: lengthwise the back is a quarter turn anticlockwise, seen from behind. */
export const asUpright = ({ x, y, z }: Extent, { orientation }: Setup): Extent =>
  orientation === 'upright' ? { x, y, z } : { x: y, y: [-x[1], -x[0]], z };

/** The way back: where a box that is known with the back upright stands in a set-up. */
export const asPlaced = ({ x, y, z }: Extent, { orientation }: Setup): Extent =>
  orientation === 'upright' ? { x, y, z } : { x: [-y[1], -y[0]], y: x, z };
