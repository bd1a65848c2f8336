import type { Matrix4, Point3 } from '../geometry/placement.js';
import type { Group, Join } from './part.js';

/** What a screen shows of the camera as solids: each part once, and each piece of it where it stands. */
export interface ShownSolids {
  readonly bodies: readonly ShownBody[];
  readonly pieces: readonly ShownPiece[];
  readonly stations: readonly { readonly name: string; readonly rear: number }[];
  readonly setups: readonly ShownSetup[];
  /** The steps of the assembly that this camera has, by number. */
  readonly steps: readonly { readonly number: number; readonly title: string }[];
  readonly light: ShownLight;
}

export interface ShownSetup {
  readonly name: string;
  readonly holder: string;
  readonly orientation: 'upright' | 'lengthwise';
  readonly focusing: boolean;
}

/** What a thing is made of, as far as one sees it. */
export type Stuff = 'plywood' | 'wood' | 'printed' | 'metal' | 'glass' | 'felt' | 'card' | 'lens' | 'holder';

/** A part in its own frame: corners three by three, once for each face that meets there; facets three by three. */
export interface ShownBody {
  readonly part: string;
  readonly name: string;
  readonly stuff: Stuff;
  /** The sheet that it is cut from, or what it is printed in; null of what is bought. */
  readonly material: string | null;
  /** Along its own axes, mm. */
  readonly size: readonly [number, number, number];
  /** The most that stand in one set-up. */
  readonly count: number;
  readonly joins: readonly Join[];
  readonly positions: Float32Array;
  /** Outward, of length 1, one for each corner. */
  readonly normals: Float32Array;
  readonly triangles: Uint32Array;
  /** Sharp edges, as pairs of corners. */
  readonly edges: Uint32Array;
  /** What is engraved: ends of strokes x, y, z, six numbers each. */
  readonly scribed: Float32Array;
  /** Thickness of one sheet, of what is cut from sheets; its veneers lie across the part's own z. */
  readonly thickness: number | null;
  /** Along which of its own axes the face grain runs. */
  readonly grain: 'x' | 'y';
}

export interface ShownPiece {
  readonly key: string;
  readonly part: string;
  readonly group: Group;
  /** Of a middle box: it is drawn along once the rear has slid so far. */
  readonly drawnFrom?: number;
  readonly matrix: Matrix4;
  /** Set-ups in which it stands here, by name. */
  readonly when: readonly string[];
  /** Middle of it at the closest station. */
  readonly middle: Point3;
  /** The step of the assembly that brings it; null where none does. */
  readonly step: number | null;
}

/** From the lens to the film: where light comes out, and the film that it falls on. */
export interface ShownLight {
  readonly pupil: { readonly z: number; readonly diameter: number };
  /** Sides of the image, upright. */
  readonly image: { readonly width: number; readonly height: number };
  /** Film behind the holder seat of the closest station, by holder: z with the rear not slid. */
  readonly films: readonly { readonly holder: string; readonly z: number }[];
}

/** How the pieces of each set-up come apart, by the name of the set-up. */
export type TakenOut = Readonly<Record<string, readonly TakenStep[]>>;

/** What an act of the assembly brought, taken back along the way that it came. */
export interface TakenStep {
  readonly step: number;
  readonly pieces: readonly string[];
  /** mm in the camera's frame. */
  readonly by: Point3;
}

/** The camera sawn along its axis and seen from the left: x is z of the camera, y is up; at the closest station. */
export interface ShownSection {
  /** What lies beyond first, from far to near. */
  readonly faces: readonly ShownFace[];
  readonly setups: readonly ShownSetup[];
  /** Sides of the image, upright. */
  readonly image: { readonly width: number; readonly height: number };
}

export interface ShownFace {
  readonly key: string;
  readonly part: string;
  readonly name: string;
  readonly stuff: Stuff;
  /** Cut by the saw; whole, by its outline, as bolts are; or what is seen beyond the saw. */
  readonly as: 'cut' | 'whole' | 'beyond';
  /** Whether it moves with the rear standard. */
  readonly slides: boolean;
  /** Of a middle box: it is drawn along once the rear has slid so far. */
  readonly drawnFrom?: number;
  /** It stands up over the camera and tells nothing of its focus, as a drawn dark slide does: a small picture leaves it out. */
  readonly over?: true;
  /** Set-ups in which it stands here, by name. */
  readonly when: readonly string[];
  /** Loops of x, y in turn; evenodd. */
  readonly loops: readonly (readonly number[])[];
}
